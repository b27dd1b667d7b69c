/** Chances in words: never better than they are. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { failsWords, holdsWords } from "../../src/text/chance-text.js";

test.each([
  [0, "less than one in a million", "more than 99.9999 %"],
  [9.99e-7, "less than one in a million", "more than 99.9999 %"],
  [1e-6, "0.00010 %", "99.99990 %"],
  [0.00421, "0.43 %", "99.57 %"],
  [0.0042, "0.42 %", "99.58 %"],
  [0.007, "0.70 %", "99.30 %"],
  [0.0999, "10.0 %", "90.0 %"],
  [0.301, "31 %", "69 %"],
  [0.9999, "100 %", "0 %"],
  [1, "100 %", "0 %"],
])("%f: %s fails, %s holds", (fails, failing, holding) => {
  expect([failsWords(fails), holdsWords(fails)]).toEqual([failing, holding]);
});

test("told on the safe side, by at most a tenth of it, and the two make one", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), (fails) => {
      const told = Number.parseFloat(failsWords(fails)) / 100;
      expect(told).toBeGreaterThanOrEqual(fails * (1 - 1e-7));
      expect(told).toBeLessThanOrEqual(fails * 1.1 + 1e-9);
      expect(told + Number.parseFloat(holdsWords(fails)) / 100).toBeCloseTo(1, 9);
    }),
  );
});
