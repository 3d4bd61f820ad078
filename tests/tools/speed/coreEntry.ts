/** What the speed tools need of the program, for {@link bundledCore} to bundle. */
export { readSetup } from '../../../src/contract/setup.ts';
export { createSweepReader } from '../../../src/measure/sweepReader.ts';
