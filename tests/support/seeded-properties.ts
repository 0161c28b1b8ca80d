import fc from 'fast-check';

// One seed for every property: what fails once fails again, on every machine. ONECHANGE_SEED tries another.
fc.configureGlobal({ seed: Number(process.env.ONECHANGE_SEED ?? 1) });
