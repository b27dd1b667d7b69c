/** Where one axis of a sweep starts or stops to work, for each combination of the others. */

import { accepts } from "../design/bounds.js";
import { kindAt, type NumberPath } from "../design/paths.js";
import { planNeck } from "../drilling/plan.js";
import { readNeck } from "../drilling/work.js";
import { DesignError, makeIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { countRows, splitIndex } from "./grid.js";
import { buildStages, isInProfile } from "./stages.js";
import { designWith, fillRun, newColumns, type Sweep } from "./sweep.js";

/** One combination of the other axes, and the reach of the one asked for. */
export interface FrontierRow {
  /** The values of the other axes, by path. */
  readonly others: Readonly<Partial<Record<NumberPath, number>>>;
  /** The least value that works, within the axis' own; null where none does. */
  readonly least: number | null;
  /** The greatest value that works. */
  readonly greatest: number | null;
}

/**
 * For each combination of a sweep's other axes, the least and the greatest value of one axis at which one stop
 * setting suits all holes: the thinnest board, the tightest radius, the largest dot.
 *
 * Between a value of the axis that works and its neighbour that does not, the threshold is halved down to the last bit
 * by the check itself. An end of the axis that works is given as it is: the true threshold lies beyond.
 *
 * @param sweep what `sweep` returned, of all its combinations
 * @param axis the path of one of its axes, two values or more
 * @returns a row for each combination of the other axes, in the order of the sweep
 * @throws DesignError where the sweep has no such axis, or holds only a range of its combinations
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const rows = frontier(sweep(design, { radius: [184, 254], "board.thickness": [3, 4, 6] }), "board.thickness");
 * rows.map(({ least }) => least.toFixed(2)) // ["4.17", "3.96"]
 */
export function frontier(sweep: Sweep, axis: NumberPath): FrontierRow[] {
  const at = sweep.axes.findIndex(({ path }) => path === axis);
  const chosen = sweep.axes[at];
  const shape = sweep.axes.map(({ values }) => values.length);
  if (chosen === undefined) {
    throw new DesignError([makeIssue("axis", axis, "the path of an axis of the sweep")]);
  }
  if (!chosen.values.every((value) => typeof value === "number" && !Number.isNaN(value))) {
    throw new DesignError([
      makeIssue("sweep.axes", chosen.values, "axes as `sweep` returned them"),
    ]);
  }
  if (sweep.from !== 0 || sweep.size !== countRows(shape)) {
    throw new DesignError([makeIssue("sweep", sweep.size, "a sweep of all its combinations")]);
  }
  const stride = countRows(shape.slice(at + 1));
  const count = chosen.values.length;
  const order = chosen.values.map((_, k) => k);
  order.sort((a, b) => elementAt(chosen.values, a) - elementAt(chosen.values, b));
  const worksAt = worksOn(sweep, at);
  const rows: FrontierRow[] = [];
  for (let i = 0; i < sweep.size; i++) {
    // the combinations of the others are those where the axis has its first value
    if (Math.floor(i / stride) % count === 0)
      rows.push(rowFrom(sweep, at, i, stride, order, worksAt));
  }
  return rows;
}

function rowFrom(
  sweep: Sweep,
  at: number,
  first: number,
  stride: number,
  order: readonly number[],
  worksAt: (first: number) => Works,
): FrontierRow {
  const rowOf = (k: number) => first + k * stride;
  const isCommonAt = (k: number) => sweep.settings[rowOf(k)] === 1;
  const values = elementAt(sweep.axes, at).values;
  const works = worksAt(first);
  const others = sweep.valuesAt(first);
  const named = sweep.axes.flatMap(({ path }, axis) => (axis === at ? [] : [[path, others[axis]]]));
  const edge = (turned: readonly number[]) => {
    const place = turned.findIndex(isCommonAt);
    if (place < 0) return null;
    const passes = elementAt(values, elementAt(turned, place));
    const before = turned[place - 1];
    if (before === undefined) return passes;
    const isRadius = kindAt(elementAt(sweep.axes, at).path)?.kind === "radius";
    return halved(elementAt(values, before), passes, isRadius, works);
  };
  return {
    others: Object.fromEntries(named),
    least: edge(order),
    greatest: edge([...order].reverse()),
  };
}

/**
 * The last value before `fails` that passes, to the last bit. A radius is halved in its curvature, so that flat is a
 * value like any other.
 */
function halved(
  fails: number,
  passes: number,
  isRadius: boolean,
  works: (value: number) => boolean,
): number {
  const turned = (value: number) => (isRadius ? 1 / value : value);
  let outside = turned(fails);
  let inside = turned(passes);
  let found = passes;
  for (;;) {
    const middle = outside + (inside - outside) / 2;
    if (middle === outside || middle === inside) return found;
    const value = turned(middle);
    if (works(value)) {
      inside = middle;
      found = value;
    } else outside = middle;
  }
}

/** Tells of a value of the axis whether one setting suits all holes. */
type Works = (value: number) => boolean;

/** By the stages of a sweep where the axis is a profile's, since any value between two of its own can be read. */
function worksOn(sweep: Sweep, at: number): (first: number) => Works {
  const { path } = elementAt(sweep.axes, at);
  const kind = isInProfile(path) ? kindAt(path) : undefined;
  if (kind === undefined) {
    return (first) => {
      const others = sweep.valuesAt(first);
      return (value) => isCommon(sweep, at, others, value);
    };
  }
  const tried: number[] = [elementAt(sweep.axes, at).values[0] as number];
  const axes = sweep.axes.map((axis, i) => (i === at ? { path, values: tried } : axis));
  // a last axis of one value, which nothing hangs on
  const shape = [...sweep.axes.map(({ values }, i) => (i === at ? MOST_TRIED : values.length)), 1];
  const stages = buildStages(sweep.at(0), axes, shape);
  const row = newColumns(1);
  let next = 0;
  const counts = sweep.axes.map(({ values }) => values.length);
  return (first) => {
    const digits = [...splitIndex(counts, first), 0];
    return (value) => {
      if (!accepts(kind, value)) return false;
      next = (next + 1) % MOST_TRIED;
      tried[next] = value;
      digits[at] = next;
      fillRun(row, 0, stages, digits, 0, 1);
      return row.settings[0] === 1 && (row.min[0] as number) <= (row.max[0] as number);
    };
  };
}

/** So many values are tried before a place is used again: more than the stages keep. */
const MOST_TRIED = 2 ** 20;

/** The same by the check of the design. */
function isCommon(sweep: Sweep, at: number, others: readonly number[], value: number): boolean {
  const values = others.map((other, axis) => (axis === at ? value : other));
  try {
    const neck = readNeck(designWith(sweep.at(0), sweep.axes, values));
    return planNeck(neck.holes, neck.board).common !== null;
  } catch (error) {
    if (error instanceof DesignError) return false;
    throw error;
  }
}
