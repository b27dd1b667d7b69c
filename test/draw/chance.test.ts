/** The curve of chances, read back against chances counted by hand. Lengths in mm. */
import { expect, test } from "vitest";
import { drawChance } from "../../src/draw/index.js";
import type { Design } from "../../src/index.js";
import { read, wordsIn } from "./svg.js";

const EXACT = { stop: 0, point: 0, seat: 0, layout: 0, thickness: 0, sanding: 0, crest: 0 };
/** Flat: from 2 to 5 the travel does, and the stop alone is off, by up to 0.1 either way, each as likely. */
const FLAT: Design = {
  name: "flat (invented)",
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: 50, thickness: 6 },
  radius: "flat",
  sanding: 0.2,
  fill: { kind: "poured", keep: 0.8 },
  bit: { kind: "forstner", point: 1, spur: 0 },
  web: 1,
  stop: { from: "wood", foot: 0 },
  markers: [{ frets: [12], diameter: 6 }],
  tolerance: { ...EXACT, stop: 0.1 },
};

/** The curve's spots on paper. */
function curveIn(svg: string): [number, number][] {
  const curve = read(svg).elements.find(({ attributes }) => attributes.class === "chance");
  const spots = (curve?.attributes.d ?? "").slice(1).split("L");
  return spots.map((spot) => spot.split(" ").map(Number) as [number, number]);
}

/** What of the window's shade lies where, on paper. */
function windowIn(svg: string): number[] {
  const shade = read(svg).elements.find(({ attributes }) => attributes.class === "window");
  const xs = [...(shade?.attributes.d ?? "").matchAll(/(-?[\d.]+) -?[\d.]+/g)].map(([, x]) =>
    Number(x),
  );
  return [Math.min(...xs), Math.max(...xs)];
}

test("the chance falls from certain to none over the stop's error, a tenth of the paper's height for each ten", () => {
  const svg = drawChance(FLAT);
  const curve = curveIn(svg);
  const [low, high] = windowIn(svg) as [number, number];
  // the window is 2.1 to 4.9, which gives the scale of the paper
  const perMm = (high - low) / (4.9 - 2.1);
  const travelAt = (x: number) => 2.1 + (x - low) / perMm;
  expect(curve.length).toBeGreaterThan(50);
  for (const [x, y] of curve) {
    const travel = travelAt(x);
    // short of 2 by more than the stop may be off, it always fails; beyond 5 likewise
    const short = Math.max(2.1 - travel, travel - 4.9) / 0.2;
    const fails = Math.min(1, Math.max(1e-6, short));
    expect(-y / 14).toBeCloseTo(Math.log10(fails), 1);
  }
});

test("the curve goes a quarter of the window beyond its ends; about a dozen of its chances are told", () => {
  const svg = drawChance(FLAT);
  const [low, high] = windowIn(svg) as [number, number];
  const xs = curveIn(svg).map(([x]) => (x - low) / (high - low));
  expect(Math.min(...xs)).toBeCloseTo(-0.25, 2);
  expect(Math.max(...xs)).toBeCloseTo(1.25, 2);
  // told for those who do not see it: from the first travel on, 2.1 − 0.7, where every hole fails
  const { text = "" } = read(svg).elements.find(({ tag }) => tag === "desc") ?? {};
  const told = [...text.matchAll(/(\d\.\d\d)(?: mm)?: /g)].map(([, travel]) => Number(travel));
  expect(told[0]).toBe(1.4);
  expect(told.length).toBeGreaterThanOrEqual(8);
  expect(told.length).toBeLessThanOrEqual(16);
});

test("a window that is none is crossed out; what is set and the likeliest travel are marked", () => {
  const classes = (svg: string) => read(svg).elements.map(({ attributes }) => attributes.class);
  expect(classes(drawChance(FLAT))).toContain("setting");
  const thin = { ...FLAT, board: { ...FLAT.board, thickness: 3.1 } };
  expect(classes(drawChance(thin))).toContain("window none");
  expect(wordsIn(drawChance(thin))).toContain("no window: the worst case refuses every travel");
  expect(wordsIn(drawChance(FLAT))).not.toContain("no window: the worst case refuses every travel");
  expect(classes(drawChance(thin))).toContain("best");
});

test("in inches the axis is in inches, and the curve is the same", () => {
  const inches = drawChance(FLAT, { unit: "in" });
  expect(curveIn(inches)).toEqual(curveIn(drawChance(FLAT)));
  expect(wordsIn(inches)).toContain("Lengths in inches.");
});

test("several stops, nothing to drill, another unit: refused", () => {
  const [own] = FLAT.markers;
  const two = { ...FLAT, markers: [own, { ...own, frets: [5], stop: { correction: 0.1 } }] };
  const none = { ...FLAT, markers: [] };
  for (const [design, options] of [[two], [none], [FLAT, { unit: "cm" }]] as const) {
    expect(() => drawChance(design as Design, options as object)).toThrow(RangeError);
  }
});
