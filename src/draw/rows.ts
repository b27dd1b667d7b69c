/** Rows with a plot: bars, an axis below them, names and figures beside. Lengths in mm on paper, values in mm. */
import type { Unit } from "../text/length-text.js";
import { ticks } from "./dimension.js";
import { type Column, measure, table } from "./label.js";
import { line, type Mark, type Spot, type Style } from "./line.js";
import { chooseTicks } from "./scale.js";
import { millimetresIn, tickFigure } from "./words.js";

/** The height of a row, of the bar in it, and how far a stroke goes past the bar. */
const [ROW, BAR, PAST] = [6.4, 3.4, 0.9];
/** What is shown beyond the values, mm and as a share of their range; the room for a step of the axis, and the least of them. */
const MORE = { least: 0.1, share: 0.06 };
const [TICK, LEAST_TICKS] = [14, 4];

/** Where a plot lies. */
interface Place {
  readonly rows: number;
  readonly width: number;
  readonly left?: number;
  readonly top?: number;
}

/** A plot. */
export type Plot = ReturnType<typeof layPlot>;

/** A plot over rows, that shows all values and a little more either way. */
export function layPlot(
  values: readonly number[],
  { rows, left = 0, top = 0, width }: Place,
  unit: Unit,
) {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const more = Math.max(MORE.least, (most - least) * MORE.share);
  const [from, to] = [least - more, most + more];
  const across = (value: number) => left + ((value - from) / (to - from)) * width;
  const middle = (row: number) => top + (row + 0.5) * ROW;
  const bottom = top + rows * ROW;
  return {
    /** Where a value lies across. */
    across,
    bottom,
    /** A value in a row. */
    spot: (row: number, value: number): Spot => [across(value), middle(row)],
    /** Two corners of a bar in a row. */
    bar: (row: number, low: number, high: number): [Spot, Spot] => [
      [across(low), middle(row) - BAR / 2],
      [across(high), middle(row) + BAR / 2],
    ],
    axis: [
      line("narrow axis", [left, bottom], [left + width, bottom]),
      ...lengthTicks([from, to], { across, width, at: bottom }, unit),
    ],
    /** A line at a value through all rows. */
    through: (style: Style, value: number) =>
      line(style, [across(value), top], [across(value), bottom]),
    /** The names of the rows, left of the plot, and figures on its right, `gap` away. */
    names: (names: readonly string[]) =>
      table([["", names, "end"]], left - 3 - measure(names), middle, top),
    figures: (columns: readonly Column[], gap: number) =>
      table(columns, left + width + gap, middle, top),
  };
}

/** Marks across the paper at round lengths from one to another, with their figures. */
export function lengthTicks(
  [from, to]: readonly [number, number],
  axis: {
    readonly across: (value: number) => number;
    readonly width: number;
    readonly at: number;
  },
  unit: Unit,
): Mark[] {
  const size = millimetresIn(unit);
  const count = Math.max(LEAST_TICKS, Math.floor(axis.width / TICK));
  const { places, decimals } = chooseTicks(from / size, to / size, count);
  const labels = places.map((at) => [axis.across(at * size), tickFigure(at, decimals)] as const);
  return ticks("across", axis.at, labels);
}

/** An upright stroke through a spot, longer than a bar. */
export function stroke(style: Style, [x, y]: Spot): Mark {
  const half = BAR / 2 + PAST;
  return line(style, [x, y - half], [x, y + half]);
}
