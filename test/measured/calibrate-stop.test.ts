/** Trial holes: the mean, the spread, and the limit for all further holes. */
import { expect, test } from "vitest";
import { calibrateStop } from "../../src/measured/index.js";
import { expectPrinted } from "../outside/printed.js";

// JCGM 100:2008 4.4.3, second-hand (quoted in a discussion; recomputed): readings, mean, s and s/√20
const READINGS = [
  ...[96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07],
  ...[100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57, 101.84, 102.36, 102.72],
];

test("the guide's twenty readings", () => {
  const trials = READINGS.map((tip) => ({ travel: 0, tip }));
  const { correction, spread, trials: count } = calibrateStop(trials, { resolution: 0 });
  expectPrinted(correction, "100.145");
  expectPrinted(spread, "1.489");
  expectPrinted(spread / Math.sqrt(count), "0.333");
});

test("only the error counts, whatever was set; a floor is the lead above the tip", () => {
  // by hand: errors 0.1, 0.2, 0.3, so a mean of 0.2 and s = 0.1
  const tips = [
    { travel: 2, tip: 2.1 },
    { travel: 3, tip: 3.2 },
    { travel: 2.5, tip: 2.8 },
  ];
  const floors = [{ travel: 2, floor: 1.1 }, { travel: 3, floor: 2.2 }, ...tips.slice(2)];
  for (const trials of [tips, floors]) {
    const { correction, spread } = calibrateStop(trials, { lead: 1, resolution: 0 });
    expect(correction).toBeCloseTo(0.2, 12);
    expect(spread).toBeCloseTo(0.1, 12);
  }
  const below = calibrateStop([
    { travel: 3, tip: 2.9 },
    { travel: 3, tip: 2.9 },
  ]);
  expect(below.correction).toBeCloseTo(-0.1, 12);
});

test("equal readings do not mean no error: the resolution is a rectangle's, a²/12 (JCGM 100:2008 F.2.2.1, memory)", () => {
  const trials = [
    { travel: 3, tip: 3.1 },
    { travel: 3, tip: 3.1 },
    { travel: 3, tip: 3.1 },
  ];
  expect(calibrateStop(trials).spread).toBeCloseTo(0.05 / Math.sqrt(12), 12);
  expect(calibrateStop(trials, { resolution: 0.1 }).spread).toBeCloseTo(0.1 / Math.sqrt(12), 12);
  expect(calibrateStop(trials, { resolution: 0 }).spread).toBe(0);
});

test("the tolerance is a design's: r · spread, its coverage r, for each hole anew", () => {
  // r(0.95; 3, 10) = 9.665 (Hahn 1969: the definition); with one hole t(0.975; 2) · √(4/3) = 4.303 · 1.1547 (t: table, memory)
  const trials = [
    { travel: 3, tip: 3 },
    { travel: 3, tip: 3.1 },
    { travel: 3, tip: 3.2 },
  ];
  const { tolerance, spread } = calibrateStop(trials, { resolution: 0 });
  expect(tolerance).toMatchObject({ shape: "normal", per: "hole" });
  expect(tolerance.coverage).toBeCloseTo(9.665, 3);
  expect(tolerance.limit).toBeCloseTo(9.665 * spread, 4);
  expect(calibrateStop(trials, { holes: 1 }).tolerance.coverage).toBeCloseTo(4.303 * 1.1547, 3);
  // 0.99 for one hole: t(0.995; 2) = 9.925 (table, memory)
  const surer = calibrateStop(trials, { holes: 1, level: 0.99 });
  expect(surer.tolerance.coverage).toBeCloseTo(9.925 * 1.1547, 2);
});
