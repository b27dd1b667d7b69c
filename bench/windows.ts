/** The common travels of many combinations: sweeps, and other ways to work them out. */
import { checkDesign, type SweepColumns, sweep } from "../src/index.js";
import { bareWindows, hoistedWindows, newRows, type Rows } from "./bare.js";
import { mustEqual } from "./equal.js";
import { expressionWindows } from "./expressions.js";
import { axesOf, COMPOUND, columnsOf, type Grid, SWEPT, sizeOf } from "./necks.js";
import { sampledWindows } from "./sampling.js";
import { SOLID_ERROR, solidWindows } from "./solids.js";
import type { Rival } from "./timing.js";

const { holes } = checkDesign(SWEPT);
const PLACES = holes.map(({ along }) => along);
const OFFSETS = holes.map(({ offset }) => offset);
const ASIDE = OFFSETS.map(Math.abs);
const TURNS = 7;
/** How far two safe bounds on a cone may lie apart, mm. */
const BOUND_ERROR = 0.005;

/** One radius, thickness and a dot's diameter, so many values of each. */
export function singleGrid(count: number): Grid {
  const counts = { radius: count, "board.thickness": count, "markers.1.diameter": count };
  return { design: SWEPT, counts };
}

/** The same on a compound radius, whose nut end varies. */
export function compoundGrid(count: number): Grid {
  const counts = { "radius.nut": count, "board.thickness": count, "markers.1.diameter": count };
  return { design: COMPOUND, counts };
}

/** Both ends of a compound radius. */
export function endsGrid(count: number): Grid {
  return { design: COMPOUND, counts: { "radius.nut": count, "radius.end": count } };
}

/** The bare loop first, then the sweep, over the same combinations. */
export function sweepRivals(grid: Grid, repeats = 1): Rival[] {
  const axes = Array.from({ length: TURNS }, (_, turn) => axesOf(grid, turn));
  const columns = axes.map((each) => columnsOf(grid, each));
  const out = newRows(sizeOf(grid));
  const axesAt = (turn: number) => axes[turn % TURNS] as (typeof axes)[number];
  const bare = (turn: number) =>
    bareWindows(columns[turn % TURNS] as (typeof columns)[number], out);
  const { design } = grid;
  return [
    { name: "bare loop over columns", run: bare, repeats },
    {
      name: "`sweep`, columns used again",
      run: (t) => sweep(design, axesAt(t), { out }).size,
      repeats,
    },
    { name: "`sweep`, new columns", run: (t) => sweep(design, axesAt(t)).size, repeats },
  ];
}

/** The bare loop with all that an axis does not touch taken out by hand. */
export function hoistedRival(grid: Grid, repeats = 1): Rival {
  const out = newRows(sizeOf(grid));
  const axes = Array.from({ length: TURNS }, (_, turn) => axesOf(grid, turn));
  const run = (turn: number) => hoist(axes[turn % TURNS] as (typeof axes)[number], out);
  return { name: "bare loop over the grid, hoisted by hand", run, repeats };
}

function hoist(axes: ReturnType<typeof axesOf>, out: Rows): number {
  const { radius = [], "board.thickness": thickness = [] } = axes;
  return hoistedWindows(radius, thickness, axes["markers.1.diameter"] ?? [], out);
}

/** Ways that are too slow for a whole grid, each over its first so many combinations. */
export function slowRivals(grid: Grid, few: number): Rival[] {
  const columns = columnsOf(grid, axesOf(grid, 0));
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
export function checkWindows(count: number, few: number): number {
  let compared = checkSlow(few);
  for (let turn = 0; turn < TURNS; turn++) {
    compared += checkGrid(singleGrid(count), turn);
    compared += checkGrid(compoundGrid(count), turn, BOUND_ERROR);
    compared += checkGrid(endsGrid(count), turn, BOUND_ERROR);
    const single = singleGrid(count);
    const axes = axesOf(single, turn);
    const bare = newRows(sizeOf(single));
    const hoisted = newRows(sizeOf(single));
    bareWindows(columnsOf(single, axes), bare);
    hoist(axes, hoisted);
    compared += mustAgree("hoisted", hoisted, bare);
  }
  return compared;
}

/** The sweep against the bare loop; by a safe bound each may judge otherwise at the very edge of a window. */
function checkGrid(grid: Grid, turn: number, error?: number): number {
  const axes = axesOf(grid, turn);
  const bare = newRows(sizeOf(grid));
  bareWindows(columnsOf(grid, axes), bare);
  const ours = sweep(grid.design, axes);
  if (error === undefined) return mustAgree("sweep", ours, bare);
  let compared = mustEqual("sweep, min", ours.min, bare.min, error);
  compared += mustEqual("sweep, minHole", ours.minHole, bare.minHole);
  compared += mustEqual("sweep, max", ours.max, bare.max);
  compared += mustEqual("sweep, maxHole", ours.maxHole, bare.maxHole);
  const isNear = (i: number) =>
    Math.abs((bare.min[i] as number) - (bare.max[i] as number)) <= error;
  const settings = ours.settings.map((own, i) => (isNear(i) ? (bare.settings[i] as number) : own));
  return compared + mustEqual("sweep, settings", settings, bare.settings);
}

function checkSlow(few: number): number {
  const grid = singleGrid(5);
  const columns = columnsOf(grid, axesOf(grid, 0));
  const bare = newRows(sizeOf(grid));
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
