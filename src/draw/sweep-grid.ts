/** The rows of a sweep laid out over two of its axes: which cell stands for which row, and what it says. */

import { sizeOf } from "../batch/grid.js";
import type { Axis, Sweep } from "../batch/sweep.js";
import type { SweepPath } from "../design/paths.js";
import { refused, touched } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";

/** Which axes of a sweep are drawn. */
export interface SweepPictureOptions {
  /** The axis from left to right; the first one where left out. */
  readonly x?: SweepPath;
  /** The axis upward; the next one where left out. */
  readonly y?: SweepPath;
  /** For each other axis, which of its values is held, as an index into them; the first where left out. */
  readonly held?: { readonly [Path in SweepPath]?: number };
}

/** What is true of one combination. */
export type Verdict = "one" | "several" | "none" | "unread" | "left out";

/** A combination; both places are counted from the least value on. */
export interface Cell {
  readonly column: number;
  readonly row: number;
  readonly verdict: Verdict;
  readonly settings: number;
}

/** An axis that is drawn: its values rise. */
export interface DrawnAxis {
  readonly path: SweepPath;
  readonly values: readonly number[];
}

/** An axis that is not drawn, and the value that it has in the picture. */
export interface HeldAxis {
  readonly path: SweepPath;
  readonly value: number;
  readonly count: number;
}

/** The picture's cells, row by row. */
export interface SweepGrid {
  readonly x: DrawnAxis;
  readonly y: DrawnAxis | undefined;
  readonly held: readonly HeldAxis[];
  readonly cells: readonly Cell[];
}

/** The most values that an axis can show side by side. */
const MOST_VALUES = 100;

/** The cells of a sweep; throws RangeError where the axes do not suit it. */
export function gridOf(sweep: Sweep, asked: SweepPictureOptions): SweepGrid {
  const { axes } = sweep;
  const options = touched("options", asked, () => ({ ...asked, held: { ...asked.held } }));
  const [x, y] = drawnOf(axes, options);
  const held = heldOf(axes, [x, y], options.held ?? {});
  const columns = risingOrder(axes[x]);
  const rows = risingOrder(axes[y]);
  const digits = axes.map((_, axis) => held.get(axis) ?? 0);
  const cells = rows.flatMap((yDigit, row) =>
    columns.map((xDigit, column) => {
      const place = digits.map((digit, axis) =>
        axis === x ? xDigit : axis === y ? yDigit : digit,
      );
      return { column, row, ...verdictAt(sweep, indexOf(axes, place) - sweep.from) };
    }),
  );
  return {
    x: drawnAxis(axes, x, columns) as DrawnAxis,
    y: drawnAxis(axes, y, rows),
    held: [...held].flatMap(([axis, digit]) => heldAxis(axes[axis], digit)),
    cells,
  };
}

/** The places of the two axes; the second is −1 where the sweep has but one. */
function drawnOf(axes: readonly Axis[], options: SweepPictureOptions): [number, number] {
  if (axes.length === 0) throw new RangeError("sweep: expected an axis or more, received none");
  const asked = { x: placeOf(axes, "x", options.x), y: placeOf(axes, "y", options.y) };
  const free = (other: number | undefined) => axes.findIndex((_, axis) => axis !== other);
  const x = asked.x ?? free(asked.y);
  const y = asked.y ?? free(x);
  if (x === y || x < 0) {
    throw new RangeError(`y: expected another axis than x, received ${axes[y]?.path}`);
  }
  checkLength(axes[x], "x");
  checkLength(axes[y], "y");
  return [x, y];
}

function placeOf(axes: readonly Axis[], option: string, path: unknown): number | undefined {
  if (path === undefined) return undefined;
  const place = axes.findIndex((axis) => axis.path === path);
  if (place >= 0) return place;
  const paths = axes.map((axis) => axis.path).join(", ");
  throw refused(option, path, `an axis of the sweep (${paths})`);
}

function checkLength(axis: Axis | undefined, option: string): void {
  if (axis && !(axis.values.length <= MOST_VALUES)) {
    throw new RangeError(
      `${option}: expected an axis of ${MOST_VALUES} values at most, received ${axis.path} with ${axis.values.length}`,
    );
  }
}

/** Which value each axis that is not drawn has, by its place. */
function heldOf(
  axes: readonly Axis[],
  drawn: readonly number[],
  asked: NonNullable<SweepPictureOptions["held"]>,
): Map<number, number> {
  const held = new Map(axes.flatMap((_, axis) => (drawn.includes(axis) ? [] : [[axis, 0]])));
  for (const [path, index = Number.NaN] of Object.entries(asked)) {
    const axis = axes.findIndex((other) => other.path === path);
    const count = axes[axis]?.values.length ?? 0;
    if (!held.has(axis)) {
      throw refused(`held.${path}`, index, "an axis of the sweep that is not drawn");
    }
    if (!(Number.isInteger(index) && index >= 0 && index < count)) {
      throw refused(`held.${path}`, index, `a whole number from 0 to ${count - 1}`);
    }
    held.set(axis, index);
  }
  return held;
}

function heldAxis(axis: Axis | undefined, digit: number): HeldAxis[] {
  if (axis === undefined) return [];
  return [{ path: axis.path, value: elementAt(axis.values, digit), count: axis.values.length }];
}

/** An axis' digits, by rising value; a single 0 where there is no axis. */
function risingOrder(axis: Axis | undefined): number[] {
  if (axis === undefined) return [0];
  const value = (digit: number) => elementAt(axis.values, digit);
  // not by subtraction, as two values may both be Infinity
  return axis.values
    .map((_, digit) => digit)
    .sort((a, b) => (value(a) < value(b) ? -1 : value(a) > value(b) ? 1 : a - b));
}

function drawnAxis(
  axes: readonly Axis[],
  place: number,
  order: readonly number[],
): DrawnAxis | undefined {
  const axis = axes[place];
  return axis && { path: axis.path, values: order.map((k) => elementAt(axis.values, k)) };
}

/** The combination's number in a sweep of all of them; the last axis varies fastest. */
function indexOf(axes: readonly Axis[], digits: readonly number[]): number {
  const shape = axes.map(({ values }) => values.length);
  return digits.reduce((sum, digit, axis) => sum + digit * sizeOf(shape.slice(axis + 1)), 0);
}

function verdictAt({ size, settings, min }: Sweep, i: number): Pick<Cell, "verdict" | "settings"> {
  if (!(i >= 0 && i < size)) return { verdict: "left out", settings: 0 };
  const count = elementAt(settings, i);
  if (count > 0) return { verdict: count === 1 ? "one" : "several", settings: count };
  return { verdict: min[i] === Infinity ? "unread" : "none", settings: 0 };
}
