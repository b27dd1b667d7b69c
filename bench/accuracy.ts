/**
 * Measures the library's errors and prints them as a Markdown table; README.md takes it in between the
 * markers `<!-- accuracy:begin -->` and `<!-- accuracy:end -->`, where it has them. Run from the
 * repository's root. The seed is fixed, so every run measures the same samples.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import type { BigNumber } from "mathjs";
import {
  checkDesign,
  type Design,
  diagonalCrossing,
  fretPositions,
  type Report,
  radiusFromSagitta,
  sagitta,
} from "../src/index.js";
import {
  crossing64,
  exactOf,
  fretShare64,
  radius64,
  sagitta64,
  ulpsBetween,
} from "../test/outside/exact.js";
import { seeded } from "./random.js";

interface Row {
  readonly quantity: string;
  readonly range: string;
  readonly reference: string;
  readonly samples: number;
  readonly error: number;
  readonly unit: string;
}

const SEED = 20261125;
const SAMPLES = 20_000;
const BIG = "mathjs BigNumber, 64 digits";
const README = "README.md";
const BEGIN = "<!-- accuracy:begin -->";
const END = "<!-- accuracy:end -->";

const uniform = seeded(SEED);
// ---- formulas: rounding error in units in the last place

function formulaRows(): Row[] {
  const lengths = "R 100–2000 mm, x 0.1–35 mm";
  return [
    rounding("`sagitta`, circle", lengths, () => {
      const [radius, x] = [uniform(100, 2000), uniform(0.1, 35)];
      return [sagitta(radius, x), sagitta64(radius, x, 0)];
    }),
    rounding("`sagitta`, cone", `${lengths}, slope ±0.5`, () => {
      const [radius, x, slope] = [uniform(100, 2000), uniform(0.1, 35), uniform(-0.5, 0.5)];
      return [sagitta(radius, x, slope), sagitta64(radius, x, slope)];
    }),
    rounding("`radiusFromSagitta`", "x 0.1–35 mm, h 0.0001–20 mm", () => {
      const [x, h] = [uniform(0.1, 35), uniform(1e-4, 20)];
      return [radiusFromSagitta(x, h), radius64(x, h)];
    }),
    fretRow(),
    rounding("`diagonalCrossing`, along", "gap 5–60 mm, widths 20–90 mm", () => {
      const sides = trapezoid();
      return [diagonalCrossing(...sides).along, crossing64(...sides).along];
    }),
    rounding("`diagonalCrossing`, offset", "gap 5–60 mm, widths 20–90 mm", () => {
      const sides = trapezoid();
      return [diagonalCrossing(...sides).offset, crossing64(...sides).offset];
    }),
  ];
}

function fretRow(): Row {
  const shares = Array.from({ length: 36 }, (_, i) => fretShare64(i + 1));
  return rounding("`fretPositions`", "length 300–1200 mm, frets 1–36", () => {
    const length = uniform(300, 1200);
    const i = Math.floor(uniform(0, shares.length));
    const share = shares[i] as BigNumber;
    const position = fretPositions({ length, frets: i + 1 })[i] as number;
    return [position, exactOf(length).times(share)];
  });
}

function trapezoid(): [number, number, number] {
  return [uniform(5, 60), uniform(20, 90), uniform(20, 90)];
}

/** The greatest error over the samples of one quantity: what we return, and the exact value. */
function rounding(quantity: string, range: string, sample: () => [number, BigNumber]): Row {
  let error = 0;
  for (let i = 0; i < SAMPLES; i++) error = Math.max(error, ulpsBetween(...sample()));
  return { quantity, range, reference: BIG, samples: SAMPLES, error, unit: "ulp" };
}

// ---- windows: how far the bounds stay on the safe side of the true extremes over the disc

const BOARDS = 60;
const RINGS = 24;
const ANGLES = 720;
const FLUSH_DOT = 1.5;
const KEEP = 0.5;
const WEB = 1;
const TOLERANCE = { stop: 0.1, layout: 0.25, thickness: 0.1, sanding: 0.05, radius: 0.02 } as const;

/** An ordinary board: straight profiles, but for sanding that goes deeper from fret 12 on. */
interface Shape {
  readonly scale: number;
  readonly length: number;
  readonly width: readonly [number, number];
  readonly thickness: readonly [number, number];
  readonly radius: readonly [number, number];
  readonly sanding: readonly [number, number];
}

/** Greatest gap of each bound on one kind of board. */
interface Gaps {
  holes: number;
  min: number;
  flush: number;
  web: number;
}

function boundRows(): Row[] {
  return [
    ...rowsFor("cylinder", "R 184–508 mm, sanding constant", cylinder),
    ...rowsFor(
      "compound, fall-away",
      "R 184–305 to 305–508 mm, sanding + 0.1–0.5 mm past fret 12",
      compound,
    ),
  ];
}

function rowsFor(kind: string, range: string, shape: () => Shape): Row[] {
  const gaps: Gaps = { holes: 0, min: 0, flush: 0, web: 0 };
  for (let i = 0; i < BOARDS; i++) measure(shape(), gaps);
  if (!(gaps.holes > 0)) throw new Error(`${kind}: no hole was measured`);
  const reference = `${RINGS * ANGLES} points over each disc`;
  const row = (quantity: string, error: number): Row => ({
    quantity: `${quantity}, ${kind}`,
    range: `${range}, dots 4–10 mm`,
    reference,
    samples: gaps.holes,
    error,
    unit: "mm",
  });
  return [
    row("`window.min` above the true bound", gaps.min),
    row("`window.max` by flush below it", gaps.flush),
    row("`window.max` by web below it", gaps.web),
  ];
}

function cylinder(): Shape {
  const [radius, sanding, thickness] = [uniform(184, 508), uniform(0.1, 0.3), uniform(5.5, 7.5)];
  return {
    ...outline(),
    thickness: [thickness, thickness],
    radius: [radius, radius],
    sanding: [sanding, sanding],
  };
}

function compound(): Shape {
  const sanding = uniform(0.1, 0.3);
  const thickness = uniform(5.5, 6.5);
  return {
    ...outline(),
    thickness: [thickness, thickness + uniform(0, 1)],
    radius: [uniform(184, 305), uniform(305, 508)],
    sanding: [sanding, sanding + uniform(0.1, 0.5)],
  };
}

function outline(): Pick<Shape, "scale" | "length" | "width"> {
  const scale = uniform(610, 690);
  return { scale, length: scale * 0.745, width: [uniform(41, 46), uniform(54, 60)] };
}

/** Compares the windows of every hole with the extremes found by sampling its disc. */
function measure(shape: Shape, gaps: Gaps): void {
  const diameter = uniform(4, 10);
  const thin = checkDesign(designOf(shape, diameter, FLUSH_DOT));
  const tall = checkDesign(designOf(shape, diameter, 100));
  thin.holes.forEach((hole, i) => {
    const found = extremes(shape, hole, diameter / 2 + TOLERANCE.layout);
    const web = windowOf(tall, i, "web").max;
    const flush = windowOf(thin, i, "flush").max;
    const { stop, thickness } = TOLERANCE;
    const gap = {
      min: hole.window.min - (found.removed.most + KEEP + stop),
      flush: FLUSH_DOT + found.removed.least - stop - flush,
      web: found.thickness - thickness - stop - WEB - web,
    };
    for (const [name, value] of Object.entries(gap)) {
      // a hair for rounding
      if (!(value > -1e-12))
        throw new Error(`fret ${hole.fret}: ${name} is unsafe by ${-value} mm`);
    }
    gaps.min = Math.max(gaps.min, gap.min);
    gaps.flush = Math.max(gaps.flush, gap.flush);
    gaps.web = Math.max(gaps.web, gap.web);
    gaps.holes++;
  });
}

function windowOf(report: Report, i: number, by: string) {
  const window = report.holes[i]?.window;
  if (window?.maxBy !== by)
    throw new Error(`hole ${i}: governed by ${window?.maxBy}, not by ${by}`);
  return window;
}

function designOf(shape: Shape, diameter: number, dot: number): Design {
  const { scale, length, width, thickness, radius, sanding } = shape;
  return {
    scale: { length: scale, frets: 22 },
    board: { length, width: ends(width), thickness: ends(thickness) },
    radius: ends(radius),
    sanding: { nut: sanding[0], fret12: sanding[0], end: sanding[1] },
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter },
      { frets: [12], diameter, arrangement: "double" },
    ],
    fill: { kind: "solid", thickness: dot, keep: KEEP },
    bit: { kind: "end-mill" },
    web: WEB,
    tolerance: TOLERANCE,
  };
}

function ends([nut, end]: readonly [number, number]) {
  return { nut, end };
}

/** The extremes over a disc, by sampling rings of it from the middle to the rim. */
function extremes(shape: Shape, at: { along: number; offset: number }, reach: number) {
  const removed = { least: Infinity, most: -Infinity };
  let thickness = Infinity;
  for (let ring = 0; ring < RINGS; ring++) {
    const r = (reach * ring) / (RINGS - 1);
    for (let k = 0; k < ANGLES; k++) {
      const angle = (2 * Math.PI * k) / ANGLES;
      const along = at.along + r * Math.cos(angle);
      const offset = at.offset + r * Math.sin(angle);
      removed.most = Math.max(removed.most, removedAt(shape, along, offset, 1));
      removed.least = Math.min(removed.least, removedAt(shape, along, offset, -1));
      thickness = Math.min(thickness, straight(shape.thickness, along / shape.length));
    }
  }
  return { removed, thickness };
}

/** The removal at a place in the worst case: the most with sign 1, the least with sign −1. */
function removedAt(shape: Shape, along: number, offset: number, sign: 1 | -1): number {
  const { scale, length, radius, sanding } = shape;
  const factor = 1 - sign * TOLERANCE.radius;
  const here = straight(radius, along / length) * factor;
  const slope = ((radius[1] - radius[0]) / length) * factor;
  const fall = straight(sanding, Math.max(0, (along - scale / 2) / (length - scale / 2)));
  return Math.max(0, fall + sign * TOLERANCE.sanding) + sagitta(here, offset, slope);
}

function straight([from, to]: readonly [number, number], share: number): number {
  return from + (to - from) * share;
}

// ---- the table

function tableOf(rows: readonly Row[]): string {
  const head = "| quantity | range | reference | samples | greatest error | unit |";
  const lines = rows.map(
    ({ quantity, range, reference, samples, error, unit }) =>
      `| ${quantity} | ${range} | ${reference} | ${samples} | ${errorText(error, unit)} | ${unit} |`,
  );
  return [head, "|---|---|---|---:|---:|---|", ...lines].join("\n");
}

/** Errors rounded up, never down; in mm to a ten-thousandth, and nothing but rounding as "< 1e-12". */
function errorText(error: number, unit: string): string {
  if (unit === "ulp") return (Math.ceil(error * 100) / 100).toFixed(2);
  return error < 1e-12 ? "< 1e-12" : (Math.ceil(error * 1e4) / 1e4).toFixed(4);
}

/** Puts the table between the README's markers; tells what it did. */
function putInReadme(table: string): string {
  const text = existsSync(README) ? readFileSync(README, "utf8") : "";
  const [from, to] = [text.indexOf(BEGIN), text.indexOf(END)];
  if (!(from >= 0 && to > from)) return `${README} has no markers; the table is only printed`;
  const before = text.slice(0, from + BEGIN.length);
  writeFileSync(README, `${before}\n${table}\n${text.slice(to)}`);
  return `${README} holds the table`;
}

// the run stands last, after every constant that it uses
const table = tableOf([...formulaRows(), ...boundRows()]);
console.log(table);
console.error(putInReadme(table));
