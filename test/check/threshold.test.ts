/** Where a rule begins to be kept, and how often it is asked: counted, since a slow search is right as well. */
import { expect, test } from "vitest";
import { leastBetween, thresholdBetween } from "../../src/report/threshold.js";

/** What the search finds, and how often it asks. */
function sought(from: number, far: number, missAt: (value: number) => number) {
  let asked = 0;
  const found = thresholdBetween(from, far, (value) => {
    asked++;
    return Math.max(0, missAt(value));
  });
  return { found, asked };
}

// from 2 apart to 1e-13 of 3: 43 halvings, and the two ends
test.each<[string, number, number, number, (value: number) => number, number]>([
  ["linear, upward", 1, 3, 1.75, (v) => 7 * (1.75 - v), 12],
  ["linear, downward", 3, 1, 2.25, (v) => v - 2.25, 12],
  ["linear, near where it begins", 6, 18, 6.3, (v) => 6.3 - v, 12],
  ["bending less and less", 4, 9, 5, (v) => Math.sqrt(5) - Math.sqrt(v), 20],
  ["bending more and more", 4, 9, 5, (v) => 25 - v ** 2, 75],
  ["no more than broken", 1, 3, 2.3, (v) => (v < 2.3 ? 1 : 0), 48],
  ["not to be read before", 1, 3, 2.3, (v) => (v < 2.3 ? Infinity : 0), 48],
  ["all but touching its limit", 1, 3, 1.75, (v) => (1.75 - v) ** 5, 140],
  ["from nothing", 0, 1, 0.3, (v) => (v < 0.3 ? 1 : 0), 58],
  ["kept at the end alone", 1, 3, 3, (v) => 3 - v, 60],
])("a rule %s: kept from the threshold on, to 1e-12", (_, from, far, limit, missAt, most) => {
  const { found, asked } = sought(from, far, missAt);
  expect(Math.max(0, missAt(found))).toBe(0);
  expect(Math.abs(found - limit)).toBeLessThan(1e-12 * limit);
  expect(asked).toBeLessThanOrEqual(most);
});

test("a stretch in the middle is met where the rule is broken least; none is none", () => {
  const dip = leastBetween(0, 10, (v) => Math.max(0, Math.abs(v - 7) - 0.01));
  expect(Math.abs((dip ?? 0) - 7)).toBeLessThanOrEqual(0.01);
  expect(leastBetween(10, 0, (v) => Math.max(0, Math.abs(v - 7) - 0.01))).toBe(dip);
  expect(leastBetween(0, 10, (v) => Math.abs(v - 7) + 1e-3)).toBeUndefined();
});
