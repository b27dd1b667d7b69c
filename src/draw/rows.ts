/** Rows with a plot: an axis below them, names and figures beside. Lengths in mm on paper, values in mm. */
import type { Unit } from "../text/length-text.js";
import { ticks } from "./dimension.js";
import { line, type Mark } from "./line.js";
import { chooseTicks } from "./scale.js";
import { sizeOf, tickFigure } from "./words.js";

/** The height of a row, and of the bar in it. */
export const [ROW, BAR] = [6.4, 3.4];

/** A plot beside its rows: where a value lies across, and the axis below. */
export interface Plot {
  readonly across: (value: number) => number;
  readonly axis: readonly Mark[];
}

/** The middle of a row, the first one's upper edge lying at `top`. */
export function middleOfRow(row: number, top = 0): number {
  return top + (row + 0.5) * ROW;
}

/** A plot over `rows` from `top` on, `width` wide from `left` on, that shows all values and a little more either way. */
export function layPlot(
  values: readonly number[],
  {
    rows,
    left = 0,
    top = 0,
    width,
  }: Record<"rows" | "width", number> & { left?: number; top?: number },
  unit: Unit,
): Plot {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const more = Math.max(MORE.least, (most - least) * MORE.share);
  const [from, to] = [least - more, most + more];
  const across = (value: number) => left + ((value - from) / (to - from)) * width;
  const [size, bottom] = [sizeOf(unit), top + rows * ROW];
  const { places, decimals } = chooseTicks(
    from / size,
    to / size,
    Math.max(LEAST_TICKS, Math.floor(width / TICK)),
  );
  const labels = places.map((at) => [across(at * size), tickFigure(at, decimals)] as const);
  const axis = line("narrow axis", [left, bottom], [left + width, bottom]);
  return { across, axis: [axis, ...ticks("across", bottom, labels)] };
}

/** What is shown beyond the values, mm and as a share of their range; the room for a step of the axis, and the least of them. */
const MORE = { least: 0.1, share: 0.06 };
const [TICK, LEAST_TICKS] = [14, 4];
