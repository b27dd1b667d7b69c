/** Where a rule begins to be kept, and how often it is asked: counted, since a slow search is right as well. */
import { describe, expect, test } from "vitest";
import { thresholdBetween } from "../../src/report/threshold.js";

/** What the search finds, and every value that it asked about. */
function sought(from: number, far: number, missAt: (value: number) => number) {
  const asked: number[] = [];
  const found = thresholdBetween(from, far, (value) => {
    asked.push(value);
    return missAt(value);
  });
  return { found, asked };
}

/** A rule that is kept from a value on, upward or downward, and misses by the distance. */
const upTo = (limit: number) => (value: number) => Math.max(0, limit - value);
const downTo = (limit: number) => (value: number) => Math.max(0, value - limit);

describe("a linear rule", () => {
  test("is found by halving twice and by the line, a little to either side", () => {
    const { found, asked } = sought(1, 3, upTo(1.75));
    // both ends; two halves, for a second failure; the line; a half; the line again
    expect(asked.map((value) => Number(value.toFixed(12)))).toEqual([
      3, 1, 2, 1.5, 1.75, 1.875, 1.75,
    ]);
    expect(asked[4]).toBeLessThan(1.75);
    expect(asked[4]).toBeGreaterThanOrEqual(1.75 - 5e-15);
    expect(found).toBe(asked[6]);
    expect(found).toBeGreaterThan(1.75);
    expect(found).toBeLessThanOrEqual(1.75 + 5e-15);
  });

  test("downward as upward", () => {
    const { found, asked } = sought(3, 1, downTo(2.25));
    expect(asked.map((value) => Number(value.toFixed(12)))).toEqual([
      1, 3, 2, 2.5, 2.25, 2.375, 2.25,
    ]);
    expect(asked[6]).toBeGreaterThan(2.25);
    expect(found).toBe(asked[4]);
    expect(found).toBeLessThan(2.25);
    expect(found).toBeGreaterThanOrEqual(2.25 - 1.5e-14);
  });

  // the slope does not matter, nor where the first half falls
  test.each([
    [1, 3, 1.01],
    [1, 3, 2.99],
    [6, 18, 6.3],
    [8, 64, 17],
  ])("from %d as far as %d, kept from %d on", (from, far, limit) => {
    const { found, asked } = sought(from, far, (value) => 7 * upTo(limit)(value));
    expect(found).toBeGreaterThanOrEqual(limit);
    expect((found ?? 0) - limit).toBeLessThanOrEqual(2e-14 * limit);
    expect(asked.length).toBeLessThanOrEqual(16);
  });
});

describe("any other rule", () => {
  test("that is kept nowhere is asked about once", () => {
    expect(sought(1, 3, upTo(4))).toEqual({ found: undefined, asked: [3] });
  });

  test("that is just kept at the end", () => {
    const { found } = sought(1, 3, upTo(3));
    expect(found).toBe(3);
  });

  // from 2 apart to 1e-14: 47.5 halvings
  test.each([
    ["tells nothing but that it is broken", (value: number) => (value < 2.3 ? 1 : 0)],
    ["cannot be read before", (value: number) => (value < 2.3 ? Infinity : 0)],
  ])("that %s, by halving alone", (_, missAt) => {
    const { found, asked } = sought(1, 3, missAt);
    expect(found).toBeGreaterThanOrEqual(2.3);
    expect((found ?? 0) - 2.3).toBeLessThanOrEqual(1e-14);
    expect(asked.length).toBe(2 + 48);
  });

  // the line falls short of the one and beyond the other
  test.each([
    ["less and less", 14, (value: number) => Math.sqrt(5) - Math.sqrt(value), 5],
    ["more and more", 75, (value: number) => 25 - value ** 2, 5],
  ])("that bends %s", (_, most, missAt, limit) => {
    const { found, asked } = sought(4, 9, (value) => Math.max(0, missAt(value)));
    expect(found).toBeGreaterThanOrEqual(limit - 1e-15);
    expect((found ?? 0) - limit).toBeLessThanOrEqual(4.1e-14);
    expect(asked.length).toBeLessThanOrEqual(most);
  });

  test("that all but touches its limit, by no more than thrice the halvings", () => {
    // there the line says little: it comes but a part nearer each time
    const { found, asked } = sought(1, 3, (value) => Math.max(0, 1.75 - value) ** 5);
    expect(found).toBeGreaterThanOrEqual(1.75);
    expect((found ?? 0) - 1.75).toBeLessThanOrEqual(1e-14);
    expect(asked.length).toBeLessThanOrEqual(2 + 3 * 48);
  });

  test("that is sought from nothing, down to the last bit", () => {
    const { found, asked } = sought(0, 1, (value) => (value < 0.3 ? 1 : 0));
    expect(found).toBe(0.3);
    expect(asked.length).toBeLessThanOrEqual(2 + 56);
    expect(sought(0, -1, (value) => (value > -0.3 ? 1 : 0)).found).toBe(-0.3);
  });
});
