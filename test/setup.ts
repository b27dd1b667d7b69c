import fc from "fast-check";

/** One seed for every property of a run: set SEED to try another, CASES to try more. */
const seed = Number(process.env.SEED ?? 20261125);
const numRuns = Number(process.env.CASES ?? 300);

fc.configureGlobal({ seed, numRuns, verbose: fc.VerbosityLevel.Verbose });
console.log(`properties: SEED=${seed} CASES=${numRuns}`);
