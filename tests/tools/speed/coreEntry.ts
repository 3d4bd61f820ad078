/** What the speed tools need of the program, for {@link bundledCore} to bundle. */
export { readSetup } from '../../../src/contract/setup.ts';
export { createTreadBand, unrollPicture } from '../../../src/measure/band/treadBand.ts';
export { blockProfiles, layoutBlocks } from '../../../src/measure/edge/blockProfiles.ts';
export { cameraFromPose } from '../../../src/measure/geometry/camera.ts';
export { findLaserLine } from '../../../src/measure/laser/laserLine.ts';
export { createSweepReader } from '../../../src/measure/sweepReader.ts';
