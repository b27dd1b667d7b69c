/** The rows of a sweep laid out over two of its axes: which cell stands for which row, and what it says. */

import type { Axis, Sweep } from "../batch/sweep.js";
import type { NumberPath } from "../design/paths.js";
import { refused, tryRead } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { PictureOptions } from "./options.js";

/** Which axes of a sweep are drawn. */
export interface SweepPictureOptions extends PictureOptions {
  /** The axis from left to right; the first one where left out. */
  readonly x?: NumberPath;
  /** The axis upward; the next one where left out. */
  readonly y?: NumberPath;
  /** For each other axis, which of its values is held, as an index into them; the first where left out. */
  readonly held?: { readonly [Path in NumberPath]?: number };
}

/** What is true of one combination. */
export type Verdict = "one" | "several" | "none" | "unread" | "left out";

/** A combination, and how many settings it needs. */
export interface Cell {
  readonly verdict: Verdict;
  readonly settings: number;
}

/** The picture's cells, columns to the right and rows upward; the values of both axes rise. */
export type SweepCells = ReturnType<typeof readSweep>;

/** The most values that an axis can show side by side. */
const MOST_VALUES = 100;

/** The cells of a sweep; throws RangeError where the axes do not suit it. */
export function readSweep(sweep: Sweep, asked: SweepPictureOptions) {
  const { axes } = sweep;
  const options = tryRead("options", asked, () => ({ ...asked, held: { ...asked.held } }));
  if (axes.length === 0) throw refused("sweep.axes", axes, "an axis or more");
  const [x, y] = chooseAxes(axes, options);
  const held = readHeld(axes, [x, y], options.held);
  const [columns, rows] = [sortDigits(axes[x]), sortDigits(axes[y])];
  const sort = ({ path, values }: Axis, digits: readonly number[]): Axis => {
    return { path, values: digits.map((digit) => elementAt(values, digit)) };
  };
  return {
    x: sort(elementAt(axes, x), columns),
    y: axes[y] && sort(axes[y], rows),
    /** The axes that are not drawn, the value that each has in the picture, and of how many. */
    held: [...held].map(([axis, digit]) => {
      const { path, values } = elementAt(axes, axis);
      return { path, value: elementAt(values, digit), of: values.length };
    }),
    rows: rows.map((row) =>
      columns.map((column) => {
        const digits = new Map([...held, [y, row], [x, column]]);
        // the last axis varies fastest
        const i = axes.reduce((sum, { values }, axis) => {
          return sum * values.length + (digits.get(axis) ?? 0);
        }, 0);
        return judge(sweep, i - sweep.from);
      }),
    ),
  };
}

/** The places of the two axes; the second is −1 where the sweep has but one. */
function chooseAxes(axes: readonly Axis[], asked: SweepPictureOptions): [x: number, y: number] {
  const paths: readonly string[] = axes.map(({ path }) => path);
  const find = (option: "x" | "y") => {
    const path = asked[option];
    const place = path === undefined ? undefined : paths.indexOf(path);
    if (place === -1) throw refused(option, path, `an axis of the sweep (${paths.join(", ")})`);
    return place;
  };
  const free = (other?: number) => axes.findIndex((_, axis) => axis !== other);
  const [first, second] = [find("x"), find("y")];
  const x = first ?? free(second);
  const y = second ?? free(x);
  if (x === y) throw refused("y", asked.y, "another axis than x");
  for (const axis of [axes[x], axes[y]]) {
    const count = axis?.values.length ?? 0;
    if (count > MOST_VALUES) throw refused(`${axis?.path}`, count, `${MOST_VALUES} values at most`);
  }
  return [x, y];
}

/** Which value each axis that is not drawn has, by its place. */
function readHeld(axes: readonly Axis[], drawn: readonly number[], asked: object) {
  const free = axes.map((_, axis) => axis).filter((axis) => !drawn.includes(axis));
  const held = new Map(free.map((axis) => [axis, 0]));
  for (const [path, index] of Object.entries(asked)) {
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

/** An axis' digits, by rising value; a single 0 where there is no axis. */
function sortDigits({ values }: Pick<Axis, "values"> = { values: [0] }): number[] {
  const value = (digit: number) => elementAt(values, digit);
  // not by subtraction, as two values may both be Infinity
  return values
    .map((_, digit) => digit)
    .sort((a, b) => Number(value(a) > value(b)) - Number(value(a) < value(b)));
}

function judge(sweep: Sweep, i: number): Cell {
  const { size, settings, min } = sweep;
  if (!(i >= 0 && i < size)) return { verdict: "left out", settings: 0 };
  const count = elementAt(settings, i);
  if (count > 0) return { verdict: count === 1 ? "one" : "several", settings: count };
  const none = elementAt(min, i) < Infinity || hasHoles(sweep, i);
  return { verdict: none ? "none" : "unread", settings: 0 };
}

/** A combination can be read, and has holes: of several stops, which have no common travels, the columns do not tell. */
function hasHoles(sweep: Sweep, i: number): boolean {
  try {
    return sweep.report(i).holes.length > 0;
  } catch {
    return false;
  }
}
