/** Where one stop setting does, over two numbers of a design, as a picture. */

import type { Sweep } from "../batch/sweep.js";
import { elementAt } from "../geometry/element-at.js";
import { type Entry, farFrom, SAMPLE, withLegend } from "./legend.js";
import { rectangle } from "./marks.js";
import { svgOf } from "./page.js";
import { axisWords, cellMarks, cellSizeOf, runs, sweepChart, valueWords } from "./sweep-chart.js";
import {
  type Cell,
  type DrawnAxis,
  gridOf,
  type SweepGrid,
  type SweepPictureOptions,
  type Verdict,
} from "./sweep-grid.js";
import { titled } from "./words.js";

/**
 * A sweep: each combination of two of its axes as a cell, as SVG text. Cells where one stop setting suits all holes
 * are shaded and bear a dot, and a wide line goes around them; the others bear the number of settings needed, or a
 * cross where some hole has no depth at all. Values rise to the right and upward, and stand side by side however far
 * apart they are.
 *
 * The picture tells of stop settings alone: the report on a combination may find more that is wrong.
 *
 * @param sweep what `sweep` returned; of a range of its combinations, the others are left empty
 * @param options `x` and `y`, the axes to draw, of at most 100 values each: the first two where left out; `held`,
 *   for any other axis the index of the value that it has in the picture: 0 where left out
 * @returns an SVG document, its size in mm
 * @throws RangeError where the sweep has no such axis, or one that is too long, or no such value
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const rows = sweep(design, { radius: [184, 254], "board.thickness": [3, 4, 6] });
 * drawSweep(rows).includes("One stop setting suits all holes in 3 of 6 combinations.") // true
 * drawSweep(rows, { x: "board.thickness" }).match(/class="cell none"/g).length // 3
 */
export function drawSweep(sweep: Sweep, options: SweepPictureOptions = {}): string {
  const grid = gridOf(sweep, options);
  return svgOf({
    title: titled("Stop settings", sweep.size > 0 ? sweep.at(0) : {}),
    lines: [HEADING, ...heldWords(grid)],
    marks: withLegend(sweepChart(grid), legend(grid)),
    notes: notesOn(grid),
    description: [...heldWords(grid), ...notesOn(grid), ...rowWords(grid)].join(" "),
  });
}

const HEADING = "Each cell is one combination of two numbers of the design.";

const LEGEND: Readonly<Record<Verdict, string>> = {
  one: "one setting suits all holes",
  several: "more settings are needed",
  none: "no depth suits some hole",
  unread: "cannot be made, or has no hole",
  "left out": "not worked out",
};
const VERDICTS = Object.keys(LEGEND) as Verdict[];

function legend(grid: SweepGrid): Entry[] {
  const { figures } = cellSizeOf(grid);
  const size = { ...SAMPLE, figures };
  return VERDICTS.flatMap((verdict): Entry[] => {
    const cell = grid.cells.find((other) => other.verdict === verdict);
    if (cell === undefined) return [];
    const words =
      verdict === "several" && figures ? "so many settings are needed" : LEGEND[verdict];
    const frame = verdict === "one" ? "wide" : "narrow";
    const sample: Entry["sample"] = (corner) => [
      ...cellMarks(verdict, cell.settings, corner, size),
      ...(verdict === "several" && figures ? [] : [rectangle(frame, corner, farFrom(corner))]),
    ];
    return [{ words, sample }];
  });
}

function heldWords({ held }: SweepGrid): string[] {
  if (held.length === 0) return [];
  const each = held.map(({ path, value, count }) => {
    const others = count > 1 ? ` (one of ${count} values)` : "";
    return `${axisWords(path)}: ${valueWords(value)}${others}`;
  });
  return [`Held: ${each.join("; ")}.`];
}

function notesOn({ cells }: SweepGrid): string[] {
  const count = (verdict: Verdict) => cells.filter((cell) => cell.verdict === verdict).length;
  const known = cells.length - count("left out");
  const words = known === 1 ? "combination" : "combinations";
  const which = known < cells.length ? `${words} worked out` : words;
  return [
    `One stop setting suits all holes in ${count("one")} of ${known} ${which}.`,
    "This tells of stop settings alone: a report may find more that is wrong.",
  ];
}

/** The picture in words: for each row, where along it one setting does, and where more are needed. */
function rowWords({ x, y, cells }: SweepGrid): string[] {
  const columns = x.values.length;
  const rows = y?.values ?? [Number.NaN];
  return rows.map((value, row) => {
    const line = cells.slice(row * columns, (row + 1) * columns);
    const parts = VERDICTS.flatMap((verdict) => partWords(verdict, line, x));
    return `${y ? `${y.path} ${valueWords(value)}: ` : ""}${parts.join("; ")}.`;
  });
}

/** “one setting suits all holes at radius 184 to 254”. */
function partWords(verdict: Verdict, line: readonly Cell[], { path, values }: DrawnAxis): string[] {
  const word = (i: number) => valueWords(elementAt(values, i));
  const found = runs(line.length, (i) => elementAt(line, i).verdict === verdict).map(
    ([from, to]) => {
      return to - from === 1 ? word(from) : `${word(from)} to ${word(to - 1)}`;
    },
  );
  return found.length === 0 ? [] : [`${LEGEND[verdict]} at ${path} ${found.join(", ")}`];
}
