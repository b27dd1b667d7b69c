/** Point height of a twist bit: the handbook's share of the diameter, through `lead`. */
import { expect, test } from "vitest";
import type { Bit } from "../../src/design/design.js";
import { checkDesign } from "../../src/index.js";
import { between, forAll } from "./counted.js";
import { evaluated64 } from "./exact.js";
import { expectPrinted } from "./printed.js";

// drill point height / diameter (handbook table: memory; formula D/2 · cot(φ/2))
const POINTS = [
  [118, ".3004"],
  [135, ".2071"],
  [90, ".5"],
] as const;

test.each(POINTS)("%d°: %s of the diameter", (angle, share) => {
  forAll(between(3, 12), (diameter) => {
    expectPrinted(leadOf({ kind: "twist", angle }, diameter) / diameter, share);
  });
});

test.each(POINTS)("%d°: half the diameter times a library's cotangent", (angle) => {
  // the table is from memory, so also mathjs at 64 digits
  const share = evaluated64(`cot(${angle / 2} deg) / 2`);
  forAll(between(3, 12), (diameter) => {
    const lead = leadOf({ kind: "twist", angle }, diameter);
    expect(Math.abs(lead / (share * diameter) - 1)).toBeLessThan(1e-14);
  });
});

test("a twist bit of no stated angle has the usual 118°", () => {
  // common practice, no source
  expectPrinted(leadOf({ kind: "twist" }, 6.35) / 6.35, ".3004");
});

test("135° leads by (√2 − 1)/2 of the diameter, 90° by half of it", () => {
  // cot 67.5° = √2 − 1, cot 45° = 1
  expect(leadOf({ kind: "twist", angle: 135 }, 8)).toBeCloseTo(4 * (Math.SQRT2 - 1), 13);
  expect(leadOf({ kind: "twist", angle: 90 }, 8)).toBeCloseTo(4, 13);
});

/** Lead of the one hole of a plain board. */
function leadOf(bit: Bit, diameter: number): number {
  const { holes } = checkDesign({
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: 50, thickness: 12 },
    radius: 254,
    markers: [{ frets: [7], diameter, bit }],
  });
  expect(holes.length).toBe(1);
  return holes[0]?.lead ?? Number.NaN;
}
