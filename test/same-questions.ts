import fc from 'fast-check';

// The same questions on every run, so that a red run is red again; SEED=random (or a number) asks others.
const given = process.env['SEED'] ?? '1';
if (given !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(given) });
