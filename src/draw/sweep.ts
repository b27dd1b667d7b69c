/** Where one stop setting does, over two numbers of a design, as a picture. */

import type { Sweep } from "../batch/sweep.js";
import type { Unit } from "../text/length-text.js";
import { ticks } from "./dimension.js";
import { MIDDLE, measure, text } from "./label.js";
import {
  circle,
  corners,
  cross,
  LETTER,
  line,
  lines,
  type Mark,
  outline,
  type Spot,
} from "./line.js";
import { readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { type Cell, readSweep, type SweepCells, type SweepPictureOptions } from "./sweep-cells.js";
import * as words from "./words.js";

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
 *   for any other axis the index of the value that it has in the picture: 0 where left out; `unit`, "mm" or "in"
 * @returns an SVG document, its size in mm
 * @throws RangeError where the sweep has no such axis, or one that is too long, or no such value, or for another unit
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
  const unit = readUnit(options);
  const cells = readSweep(sweep, options);
  const size = chooseSize(cells);
  const held = words.tellHeld(cells, unit);
  return writePage({
    title: words.titled("Stop settings", sweep.size > 0 ? sweep.at(0) : {}),
    heading: [words.WORDS.cells, ...held],
    marks: drawChart(cells, size, unit),
    legend: legend(cells, size.figures),
    notes: [words.tellCells(cells), words.WORDS.settingsAlone],
    spoken: [words.WORDS.spokenCells, ...words.tellSweep(cells, unit)],
  });
}

/** The room for the cells, and how small and how large one may be. */
const ROOM = { width: 140, height: 96 };
const LEAST = 1.7;
const MOST = { width: 20, height: 10 };

/** How large the cells are, and whether figures find room in them. */
type CellSize = ReturnType<typeof chooseSize>;

function chooseSize({ x, rows }: SweepCells) {
  const width = Math.min(MOST.width, Math.max(LEAST, ROOM.width / x.values.length));
  const height = Math.min(MOST.height, Math.max(LEAST, ROOM.height / rows.length));
  const widest = measure(rows.flat().map(({ settings }) => String(settings)));
  return { width, height, figures: width >= widest + 1.5 && height >= 1.4 * LETTER };
}

function drawChart({ x, y, rows }: SweepCells, size: CellSize, unit: Unit): Mark[] {
  const [columns, height] = [x.values.length, rows.length * size.height];
  // the corner between cells: columns from the left, rows from below
  const corner = (i: number, j: number): Spot => [i * size.width, height - j * size.height];
  return [
    ...rows.flatMap((row, j) => row.flatMap((cell, i) => drawCell(cell, corner(i, j + 1), size))),
    outline("narrow frame", corners(corner(0, 0), corner(columns, rows.length))),
    lines("wide frontier", traceFrontier(rows, corner)),
    ...drawAxis("across", x, size.width, height, unit),
    ...(y ? drawAxis("upright", y, size.height, 0, unit) : []),
  ];
}

/**
 * What a cell shows, from its top left corner: a dot, a figure or a rising stroke, a cross, a level stroke, nothing.
 * Each verdict has a mark of its own, so that shade alone never tells.
 */
function drawCell({ verdict, settings }: Cell, [x, y]: Spot, size: CellSize): Mark[] {
  const { width, height, figures } = size;
  const [cx, cy] = [x + width / 2, y + height / 2];
  const r = 0.3 * Math.min(width, height, 2 * LETTER);
  const stroke = (rise: number) =>
    line(`narrow cell ${verdict}`, [cx - r, cy + rise], [cx + r, cy - rise]);
  if (verdict === "one") {
    const tint = outline("tint region", corners([x, y], [x + width, y + height]));
    return [tint, circle("solid cell one", [cx, cy], Math.min(0.9, r))];
  }
  if (verdict === "none") return [cross("narrow cell none", [cx - r, cy - r], [cx + r, cy + r])];
  if (verdict === "unread") return [stroke(0)];
  if (verdict === "left out") return [];
  return [figures ? text(String(settings), [cx, cy + MIDDLE * LETTER], "middle") : stroke(r)];
}

/** The edge of the region in which one setting does: a line between each of its cells and what else it meets. */
function traceFrontier(rows: SweepCells["rows"], corner: (i: number, j: number) => Spot) {
  const isIn = (i: number, j: number) => rows[j]?.[i]?.verdict === "one";
  const sides: [Spot, Spot][] = [];
  for (let j = 0; j <= rows.length; j++) {
    for (let i = 0; i <= (rows[0]?.length ?? 0); i++) {
      if (isIn(i, j) !== isIn(i - 1, j)) sides.push([corner(i, j), corner(i, j + 1)]);
      if (isIn(i, j) !== isIn(i, j - 1)) sides.push([corner(i, j), corner(i + 1, j)]);
    }
  }
  return sides;
}

/** Values beside the cells, only every so many where they find no room, and the axis' name beyond them. */
function drawAxis(
  way: "across" | "upright",
  axis: SweepCells["x"],
  size: number,
  at: number,
  unit: Unit,
): Mark[] {
  const [labels, isAcross] = [words.labelValues(axis, unit), way === "across"];
  const step = Math.ceil((isAcross ? measure(labels) + 2.5 : 1.3 * LETTER) / size);
  const shown = labels.flatMap((label, i) => {
    const place = ((isAcross ? i : labels.length - i - 1) + 0.5) * size;
    return i % step === 0 ? [[place, label] as const] : [];
  });
  const name: Spot = isAcross
    ? [(labels.length * size) / 2, at + 2.5 + 2.8 * LETTER]
    : [-2.5 - measure(labels), -0.8 * LETTER];
  const said = text(words.labelAxis(axis.path, unit), name, isAcross ? "middle" : "start");
  return [...ticks(way, at, shown), said];
}

/** A sample of each verdict that there is, framed unless it is a figure. */
function legend({ rows }: SweepCells, figures: boolean): Entry[] {
  return (Object.keys(words.VERDICTS) as Cell["verdict"][]).flatMap((verdict): Entry[] => {
    const cell = rows.flat().find((other) => other.verdict === verdict);
    if (cell === undefined) return [];
    const counted = verdict === "several" && figures;
    const label = counted ? words.WORDS.counted : words.VERDICTS[verdict];
    const sample: Entry[2] = (from, to) => {
      const size = { width: to[0] - from[0], height: to[1] - from[1], figures };
      const frame = outline(verdict === "one" ? "wide" : "narrow", corners(from, to));
      return [...drawCell(cell, from, size), ...(counted ? [] : [frame])];
    };
    return [["frame", label, sample]];
  });
}
