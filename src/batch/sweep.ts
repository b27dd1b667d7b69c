/**
 * Every combination of some numbers of a design, at the cost of the bare arithmetic: each part of the work is done
 * once for the numbers that it hangs on, by the same functions as the check of one design.
 */
import { accepts } from "../design/bounds.js";
import type { Design } from "../design/design.js";
import { kindAt, listPaths, missingItem, type NumberPath, withNumber } from "../design/paths.js";
import type { PlanKeys } from "../drilling/plan.js";
import { nextStab } from "../drilling/stops.js";
import { readSpec } from "../drilling/work.js";
import { DesignError, type DesignIssue, makeIssue, refused, tryRead } from "../errors/errors.js";
import { isWhole, listNames, readItems, readKey } from "../errors/unknown.js";
import { elementAt } from "../geometry/element-at.js";
import { checkDesign, type Report } from "../report/report.js";
import { didYouMean, nearestName } from "../text/nearest-name.js";
import { advanceRow, countRows, type Shape, splitIndex } from "./grid.js";
import { buildStages, type Extreme, isInProfile, type Stages } from "./stages.js";

/** Values for each path, tried in every combination; the last path varies fastest. */
export type Axes = { readonly [Path in NumberPath]?: readonly number[] };

/** One axis of a sweep. */
export interface Axis {
  /** The number of the design that varies. */
  readonly path: NumberPath;
  /** What it takes in turn: mm, degrees or fractions, as in the design. */
  readonly values: readonly number[];
}

/** One row for each combination, as columns. */
export interface SweepColumns {
  /** The greatest least travel, mm; one setting suits all holes where it is not above `max`. */
  readonly min: Float64Array;
  /** The least greatest travel, mm. */
  readonly max: Float64Array;
  /** The hole that sets `min`, as an index into the report's; −1 where there is none. */
  readonly minHole: Int32Array;
  /** The hole that sets `max`; −1 where there is none. */
  readonly maxHole: Int32Array;
  /** How many stop settings are needed; 0: no depth suits some hole, there is none, or the design cannot be read. */
  readonly settings: Int32Array;
}

/** What `sweep` finds. Row i stands for combination `from + i`. */
export interface Sweep extends SweepColumns {
  /** How many rows there are; columns that were handed in may be longer. */
  readonly size: number;
  /** The combination of row 0. */
  readonly from: number;
  /** What varies, the last one fastest. */
  readonly axes: readonly Axis[];
  /** The values of row i, in the order of the axes. */
  readonly valuesAt: (i: number) => number[];
  /** The design of row i. */
  readonly at: (i: number) => Design;
  /** The full report on it; throws DesignError where it cannot be read. */
  readonly report: (i: number) => Report;
}

/** Which rows to work out, and where to put them. */
export interface SweepOptions {
  /** The first combination; 0 where left out. */
  readonly from?: number;
  /** The one after the last; all of them where left out. */
  readonly to?: number;
  /** Columns to write to, long enough for the rows; new ones where left out. */
  readonly out?: SweepColumns;
}

const MOST_ROWS = 2 ** 31;
const MOST_VALUES = 1_000_000;
const MOST_AXES = 100;

/**
 * Checks every combination of some numbers of a design.
 *
 * Rows come as columns: `min` and `max` of the travels that suit every hole, who governs them, and how many stop
 * settings are needed, to the last bit those of `checkDesign`. A combination that cannot be read (a radius tighter than half the width, say)
 * has min `Infinity`, max `-Infinity` and 0 settings; holes of several stops have no common travels either.
 *
 * @param design the neck; what the axes do not name is as it says
 * @param axes values for each path; the last path varies fastest; 2^31 combinations at most
 * @param options `from` and `to`, a range of combinations, and `out`, columns to use again
 * @returns the columns, and for each row its values, its design and its report
 * @throws DesignError where the design, a path or a value cannot be read
 * @throws RangeError where the range or the columns do not fit
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const rows = sweep(design, { radius: [184, 254], "board.thickness": [3, 4, 6] });
 * rows.size // 6
 * [...rows.settings] // [0, 0, 1, 0, 1, 1]
 * rows.valuesAt(4) // [254, 4]
 */
export function sweep(design: Design, axes: Axes, options: SweepOptions = {}): Sweep {
  if (typeof options !== "object" || options === null) {
    throw refused("options", options, "an object with from, to and out");
  }
  const list = readAxes(design, axes);
  const shape = list.map(({ values }) => values.length);
  const all = countRows(shape);
  const { from = 0, to = all, out } = tryRead("options", options, () => ({ ...options }));
  if (!isWhole(to, 0, all)) throw refused("to", to, `a whole number from 0 to ${all}`);
  if (!isWhole(from, 0, to)) throw refused("from", from, `a whole number from 0 to ${to}`);
  const size = to - from;
  const columns = out ?? newColumns(size);
  checkColumns(columns, size);
  fill(columns, design, list, shape, from, size);
  const valuesAt = (i: number) => {
    if (!isWhole(i, 0, size - 1)) {
      throw refused("i", i, `a whole number from 0 to ${size - 1}`);
    }
    return splitIndex(shape, from + i).map((digit, axis) =>
      elementAt((list[axis] as Axis).values, digit),
    );
  };
  const at = (i: number) => designWith(design, list, valuesAt(i));
  const report = (i: number) => checkDesign(at(i));
  const { min, max, minHole, maxHole, settings } = columns;
  return { size, from, axes: list, min, max, minHole, maxHole, settings, valuesAt, at, report };
}

/** The design with these values, one for each axis. */
export function designWith(
  design: Design,
  axes: readonly Axis[],
  values: readonly number[],
): Design {
  return axes.reduce(
    (now, { path }, axis) => withNumber(now, path, values[axis] as number),
    design,
  );
}

/** Works out the rows, a run along the last axis at a time. */
function fill(
  columns: SweepColumns,
  design: Design,
  axes: readonly Axis[],
  shape: Shape,
  from: number,
  size: number,
): void {
  const stages = buildStages(design, axes, shape);
  const count = shape[shape.length - 1] ?? 1;
  const digits = splitIndex(shape, from);
  let start = digits[digits.length - 1] ?? 0;
  for (let i = 0; i < size; ) {
    const end = Math.min(count, start + size - i);
    fillRun(columns, i, stages, digits, start, end);
    i += end - start;
    digits[digits.length - 1] = 0;
    advanceRow(digits, shape);
    start = 0;
  }
}

/** The rows of one run, from `start` to `end` along the last axis. */
export function fillRun(
  columns: SweepColumns,
  first: number,
  { least, complete, most, flush, keys }: Stages,
  digits: readonly number[],
  start: number,
  end: number,
): void {
  const lows = least.along(digits, start, end);
  const highs = most.along(digits, start, end);
  const levels = flush.along(digits, start, end);
  const told = keys.along(digits, start, end);
  for (let digit = start, i = first; digit < end; digit++, i++) {
    const low = lows[digit] as Extreme;
    const high = highs[digit] as Extreme;
    const level = levels[digit] as Extreme;
    const key = told[digit];
    if (low.hole >= 0 && high.hole >= 0 && level.hole >= 0 && key !== undefined) {
      if (!isSettled(low, high, level, key)) complete(digits, digit, low);
      writeRow(columns, i, low, high, level, key);
    } else writeNone(columns, i, 0);
  }
}

/** One setting serves all holes of one stop, or the hole that governs has no travel: the others tell nothing new. */
function isSettled(least: Extreme, most: Extreme, flush: Extreme, { count }: PlanKeys): boolean {
  const { value, hole } = least;
  if (count === 1 && value <= most.value && value <= flush.value) return true;
  return !(value <= (most.each[hole] as number)) || !(value <= (flush.each[hole] as number));
}

/** One row, from the least travel of each hole, the most that the wood allows, and the most that flush dots allow. */
function writeRow(
  columns: SweepColumns,
  i: number,
  least: Extreme,
  most: Extreme,
  flush: Extreme,
  keys: PlanKeys,
): void {
  if (keys.count !== 1) {
    writeNone(columns, i, countSettings(least, most, flush, keys));
    return;
  }
  const { min, max, minHole, maxHole, settings } = columns;
  const highest = Math.min(most.value, flush.value);
  min[i] = least.value;
  max[i] = highest;
  minHole[i] = least.hole;
  maxHole[i] = lesserExtreme(most, flush);
  settings[i] = least.value <= highest ? 1 : countSettings(least, most, flush, keys);
}

function writeNone(
  { min, max, minHole, maxHole, settings }: SweepColumns,
  i: number,
  count: number,
) {
  min[i] = Infinity;
  max[i] = -Infinity;
  minHole[i] = -1;
  maxHole[i] = -1;
  settings[i] = count;
}

/** How many settings the holes need, stop by stop; 0 where some hole has no travel. */
function countSettings(
  least: Extreme,
  most: Extreme,
  flush: Extreme,
  { stops, tools }: PlanKeys,
): number {
  const mins = least.each;
  const isEmpty = (i: number) =>
    !((mins[i] as number) <= (most.each[i] as number)) ||
    !((mins[i] as number) <= (flush.each[i] as number));
  // most often the hole that governs has none
  if (isEmpty(least.hole)) return 0;
  for (let i = 0; i < mins.length; i++) {
    if (stops[i] !== undefined && isEmpty(i)) return 0;
  }
  const maxs = most.each.map((max, i) => Math.min(max, flush.each[i] as number));
  const kinds = [...new Set(stops)].filter((stop) => stop !== undefined);
  return kinds.reduce((sum, stop) => {
    const held = [...mins.keys()].filter((i) => stops[i] === stop);
    const greatest = Math.max(...held.map((i) => mins[i] as number));
    if (greatest <= Math.min(...held.map((i) => maxs[i] as number))) return sum + 1;
    const bits = [...new Set(held.map((i) => tools[i]))];
    const counts = bits.map((bit) => {
      const own = held.filter((i) => tools[i] === bit);
      return countStabs(
        own.map((i) => mins[i] as number),
        own.map((i) => maxs[i] as number),
      );
    });
    return sum + counts.reduce((all, count) => all + count, 0);
  }, 0);
}

function countStabs(mins: readonly number[], maxs: readonly number[]): number {
  let count = 0;
  for (let stab = nextStab(mins, maxs, -Infinity); stab < Infinity; count++) {
    stab = nextStab(mins, maxs, stab);
  }
  return count;
}

/** The first hole that has the lesser of two leasts. */
function lesserExtreme(a: Extreme, b: Extreme): number {
  if (a.value === b.value) return Math.min(a.hole, b.hole);
  return a.value < b.value ? a.hole : b.hole;
}

/** Columns of so many rows. */
export function newColumns(size: number): SweepColumns {
  return {
    min: new Float64Array(size),
    max: new Float64Array(size),
    minHole: new Int32Array(size),
    maxHole: new Int32Array(size),
    settings: new Int32Array(size),
  };
}

function checkColumns(columns: SweepColumns, size: number): void {
  for (const name of ["min", "max", "minHole", "maxHole", "settings"] as const) {
    const kind = name === "min" || name === "max" ? Float64Array : Int32Array;
    const column: unknown = tryRead("out", columns, () => columns?.[name]);
    if (!tryRead(`out.${name}`, column, () => column instanceof kind && column.length >= size)) {
      throw refused(`out.${name}`, column, `${kind.name}, length ${size} or more`);
    }
  }
}

/** Reads the axes, and every value by itself in the place that it is for. */
function readAxes(design: Design, axes: unknown): Axis[] {
  const issues: DesignIssue[] = [];
  if (typeof axes !== "object" || axes === null) {
    throw new DesignError([makeIssue("axes", axes, "an object of paths with their values")]);
  }
  const paths = listNames(axes, "axes", issues);
  if (!(paths.length <= MOST_AXES)) {
    throw new DesignError([makeIssue("axes", axes, `an object of ${MOST_AXES} paths at most`)]);
  }
  const list = paths.flatMap((path) => {
    const where = `axes.${path}`;
    const given = readKey(axes, path, "axes", issues);
    if (given === undefined) return [];
    const kind = kindAt(path);
    if (kind === undefined || kind.whole) {
      const near = didYouMean(nearestName(path, listPaths()));
      issues.push(makeIssue(where, given, `a path to a number that a sweep can vary${near}`));
      return [];
    }
    const missing = tryRead("design", design, () => missingItem(design, path));
    if (missing !== undefined) {
      issues.push(makeIssue(where, given, `a path into the design, which has no ${missing}`));
      return [];
    }
    const expected = `an array of numbers, ${MOST_VALUES} at most`;
    const values = readItems(given, where, expected, MOST_VALUES, issues);
    if (values?.length === 0) issues.push(makeIssue(where, given, "one value or more"));
    return values ? [{ path: path as NumberPath, values: values as number[] }] : [];
  });
  if (issues.length > 0) throw new DesignError(issues);
  checkValues(design, list, issues);
  const rows = countRows(list.map(({ values }) => values.length));
  if (!(rows <= MOST_ROWS))
    issues.push(makeIssue("axes", rows, `${MOST_ROWS} combinations at most`));
  if (issues.length > 0) throw new DesignError(issues);
  return list;
}

function checkValues(design: Design, axes: readonly Axis[], issues: DesignIssue[]): void {
  const first = tryRead("design", design, () => {
    const values = axes.map((axis) => axis.values[0] as number);
    return designWith(design, axes, values);
  });
  readSpec(first, issues);
  for (const { path, values } of axes) {
    const kind = isInProfile(path) ? kindAt(path) : undefined;
    for (let i = 1; i < values.length; i++) {
      const value = values[i] as number;
      // what stands in a profile makes sense beside anything else
      if (kind && Number.isFinite(value) && value > 0 && accepts(kind, value)) continue;
      readSpec(withNumber(first, path, value), issues);
    }
  }
}
