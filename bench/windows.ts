/** The common window of many combinations: a sweep, and other ways to work it out. */
import { checkDesign, type SweepColumns, sweep } from "../src/index.js";
import { bareWindows, hoistedWindows, newRows, type Rows } from "./bare.js";
import { mustEqual } from "./equal.js";
import { expressionWindows } from "./expressions.js";
import { axesOf, columnsOf, SWEPT } from "./necks.js";
import { sampledWindows } from "./sampling.js";
import { SOLID_ERROR, solidWindows } from "./solids.js";
import type { Rival } from "./timing.js";

type Counts = readonly [number, number, number];

const { holes } = checkDesign(SWEPT);
const PLACES = holes.map(({ along }) => along);
const OFFSETS = holes.map(({ offset }) => offset);
const ASIDE = OFFSETS.map(Math.abs);
const TURNS = 7;

/** The sweep and the bare loops, all over the same combinations. */
export function sweepRivals(counts: Counts, repeats = 1): Rival[] {
  const axes = Array.from({ length: TURNS }, (_, turn) => axesOf(counts, turn));
  const columns = axes.map(columnsOf);
  const out = newRows(counts[0] * counts[1] * counts[2]);
  const axesAt = (turn: number) => axes[turn % TURNS] as (typeof axes)[number];
  const bare = (turn: number) =>
    bareWindows(columns[turn % TURNS] as (typeof columns)[number], out);
  const hoisted = (turn: number) => {
    const { radius, "board.thickness": thickness, "markers.1.diameter": diameter } = axesAt(turn);
    return hoistedWindows(radius, thickness, diameter, out);
  };
  return [
    { name: "bare loop over columns", run: bare, repeats },
    { name: "bare loop over the grid, hoisted by hand", run: hoisted, repeats },
    {
      name: "`sweep`, columns used again",
      run: (t) => sweep(SWEPT, axesAt(t), { out }).size,
      repeats,
    },
    { name: "`sweep`, new columns", run: (t) => sweep(SWEPT, axesAt(t)).size, repeats },
  ];
}

/** Ways that are too slow for a whole grid, each over its first so many combinations. */
export function slowRivals(counts: Counts, few: number): Rival[] {
  const columns = columnsOf(axesOf(counts, 0));
  const out = newRows(few * 10);
  return [
    {
      name: "mathjs, compiled expressions",
      run: () => expressionWindows(columns, ASIDE, few * 10, out),
    },
    {
      name: "brute force, 1,024 points a disc",
      run: () => sampledWindows(columns, ASIDE, few * 10, out),
    },
    {
      name: "manifold-3d, within 0.01 mm",
      run: () => solidWindows(columns, PLACES, OFFSETS, few, out),
    },
  ];
}

/** Holds every way against the bare loop; tells how many numbers were compared. */
export function checkWindows(counts: Counts, few: number): number {
  let compared = 0;
  for (let turn = 0; turn < TURNS; turn++) {
    const axes = axesOf(counts, turn);
    const columns = columnsOf(axes);
    const bare = newRows(columns.radius.length);
    bareWindows(columns, bare);
    compared += mustAgree("sweep", sweep(SWEPT, axes), bare);
    const { radius, "board.thickness": thickness, "markers.1.diameter": diameter } = axes;
    const hoisted = newRows(columns.radius.length);
    hoistedWindows(radius, thickness, diameter, hoisted);
    compared += mustAgree("hoisted", hoisted, bare);
    if (turn === 0) compared += checkSlow(axes, few);
  }
  return compared;
}

function checkSlow(axes: ReturnType<typeof axesOf>, few: number): number {
  const columns = columnsOf(axes);
  const bare = newRows(columns.radius.length);
  bareWindows(columns, bare);
  const out = newRows(few);
  expressionWindows(columns, ASIDE, few, out);
  let compared = mustAgree("expressions", out, firstOf(bare, few));
  sampledWindows(columns, ASIDE, few, out);
  compared += mustAgree("sampling", out, firstOf(bare, few));
  // the modeller's polygons only come near; where it stands at the edge of a window it may judge otherwise
  solidWindows(columns, PLACES, OFFSETS, few, out);
  compared += mustEqual("solids, min", bare.min.slice(0, few), out.min, SOLID_ERROR);
  compared += mustEqual("solids, max", bare.max.slice(0, few), out.max);
  return compared;
}

function firstOf(rows: Rows, count: number): Rows {
  const { min, max, minHole, maxHole, settings } = rows;
  return {
    min: min.slice(0, count),
    max: max.slice(0, count),
    minHole: minHole.slice(0, count),
    maxHole: maxHole.slice(0, count),
    settings: settings.slice(0, count),
  };
}

function mustAgree(what: string, ours: SweepColumns, bare: Rows): number {
  let compared = 0;
  for (const column of ["min", "max", "minHole", "maxHole", "settings"] as const) {
    compared += mustEqual(`${what}, ${column}`, ours[column], bare[column]);
  }
  return compared;
}
