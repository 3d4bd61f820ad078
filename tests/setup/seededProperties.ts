import fc from 'fast-check';

/**
 * Property tests draw the same at every run, so that a change is judged by what it changes. Others by
 * TILTSWEEP_SEED=NUMBER; at night by a seed of its own, which a failure prints.
 */
const USUAL_SEED = 20_261;

fc.configureGlobal({ seed: Number(process.env['TILTSWEEP_SEED'] ?? USUAL_SEED) });
