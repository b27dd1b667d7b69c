/** Properties that must have run on samples. Seed and number of cases come from test/setup.ts. */
import fc from "fast-check";
import { expect } from "vitest";

/** Checks every sample, `times` as many as usual, and that none was left out. */
export function forAll<Sample>(
  samples: fc.Arbitrary<Sample>,
  check: (sample: Sample) => void,
  times = 1,
): void {
  const numRuns = times * (fc.readConfigureGlobal().numRuns ?? 100);
  let ran = 0;
  const property = fc.property(samples, (sample) => {
    ran++;
    check(sample);
  });
  fc.assert(property, { numRuns });
  expect(ran).toBeGreaterThan(0);
  expect(ran).toBe(numRuns);
}

/** A double from `min` to `max`, spread evenly by value; both ends come up more often. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  const share = fc.maxSafeNat().map((n) => n / Number.MAX_SAFE_INTEGER);
  return share.map((t) => Math.min(max, min + (max - min) * t));
}
