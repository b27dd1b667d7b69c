/** The board from above, as a picture. */

import { elementAt } from "../geometry/element-at.js";
import type { Point } from "../geometry/polygon.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { APART, dimension, type Level, ROW, runningDimension } from "./dimension.js";
import { drawRim, measureExtent } from "./from-above.js";
import { text } from "./label.js";
import { circle, cross, LETTER, line, type Mark, outline, type Spot } from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import {
  type DrawnBoard,
  type DrawnHole,
  readBoard,
  readChannel,
  readHoles,
  readSettings,
} from "./reading.js";
import { chooseScale, spread } from "./scale.js";
import * as words from "./words.js";

/**
 * The plan: the board seen from above, in true proportions, as SVG text. It shows the outline, the frets with their
 * numbers, the markers with their distances from the nut and the centre line, the rod channel hidden below, and marks
 * the holes that govern a stop setting and those that no depth suits.
 *
 * @param report what `checkDesign` returned
 * @param options `unit`, "mm" or "in"
 * @returns an SVG document, its size in mm
 * @throws RangeError for another unit
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * drawBoard(report).match(/class="fret"/g).length // 22
 * drawBoard(report).includes("Scale 1 : 2.") // true
 */
export function drawBoard(report: Report, options: PictureOptions = {}): string {
  const unit = readUnit(options);
  const [board, holes] = [readBoard(report), readHoles(report, unit)];
  const groups = groupByPlace(holes);
  const sheet = layOut(board, holes);
  const { scale, reach } = sheet;
  // distances from the nut, below the board, so that no line runs through it
  const levels = [
    ...groups.map((group) => [elementAt(group, 0).along, words.labelPlace(group, unit)] as const),
    [board.length, words.labelEnd(board.length, unit)] as const,
  ].map(([along, label]): Level => [along * scale, reach + 1, label]);
  return writePage({
    title: words.titled("Plan", report),
    heading: [words.tellView(scale, holes.length, unit)],
    marks: [
      ...drawLines(board, sheet),
      outline("hidden channel", readChannel(report).map(sheet.spot)),
      ...holes.flatMap((hole) => drawHole(hole, sheet)),
      ...drawWidths(board, sheet, unit),
      ...numberFrets(board, holes, sheet),
      ...runningDimension(levels, reach + 6, (along, out) => [along, out], "end", true),
    ],
    legend: LEGEND,
    notes: words.tellPlan(holes, readSettings(report, unit), unit),
    spoken: [`${levels.map(([, , label]) => label).join("; ")}.`],
  });
}

/** Markers of one fret that lie equally far from the nut. */
function groupByPlace(holes: readonly DrawnHole[]): DrawnHole[][] {
  const groups = new Map<string, DrawnHole[]>();
  for (const hole of holes) {
    const key = `${hole.fret} ${hole.along.toFixed(2)}`;
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()];
}

/** The room for the board. */
const ROOM = { length: 245, width: 120 };

/** Where the plan lies on paper. */
type Sheet = ReturnType<typeof layOut>;

/** Lays out the paper; its origin is where the nut crosses the centre line, treble is up. */
function layOut(board: DrawnBoard, holes: readonly DrawnHole[]) {
  const { from, to, reach } = measureExtent(board, holes);
  const scale = chooseScale(Math.min(ROOM.length / (to - from), ROOM.width / (2 * reach)));
  const spot = ({ along, offset }: Point): Spot => [along * scale, -offset * scale];
  return { scale, spot, left: from * scale, right: to * scale, reach: reach * scale };
}

function drawLines({ lines }: DrawnBoard, { spot, left, right }: Sheet): Mark[] {
  const edge = [...lines.map(({ bass }) => bass), ...lines.map(({ treble }) => treble).reverse()];
  const frets = lines.slice(1, -1).map(({ bass, treble }) => [spot(bass), spot(treble)] as const);
  return [
    outline("wide board", edge.map(spot)),
    ...frets.map(([bass, treble]) => line("wide fret", bass, treble)),
    line("centre", [left - 3, 0], [right + 3, 0]),
  ];
}

/** A marker; a dot in its middle where it governs, a cross through it where no depth suits. */
function drawHole(hole: DrawnHole, { spot, scale }: Sheet): Mark[] {
  const centre = spot(hole);
  const shape = drawRim("wide marker", hole, spot, scale);
  const governs = hole.governs.length > 0 ? [drawDot(centre)] : [];
  return [shape, ...governs, ...(hole.open ? [] : [crossOut(shape)])];
}

const drawDot = (centre: Spot) => circle("solid governs", centre, 0.8);
const crossOut = ({ box: { left, top, right, bottom } }: Mark) =>
  cross("narrow none", [left - 1, top - 1], [right + 1, bottom + 1]);

/** The widths at both ends, and which side is which. */
function drawWidths({ lines }: DrawnBoard, { spot, left, right }: Sheet, unit: Unit): Mark[] {
  const [nut, end] = [elementAt(lines, 0), elementAt(lines, lines.length - 1)];
  const width = ({ bass, treble }: typeof end, at: number) => {
    const [upper, lower] = [spot(treble), spot(bass)];
    const figure = words.figure(treble.offset - bass.offset, unit);
    return dimension("upright", [upper[1], lower[1]], at, [upper[0], lower[0]], figure);
  };
  const sides = spread([spot(end.treble)[1], spot(end.bass)[1]], APART);
  const names = ["treble", "bass"].map((name, i) =>
    text(name, [right + ROW + 2 * LETTER, elementAt(sides, i) + 0.4 * LETTER]),
  );
  return [...width(nut, left - ROW), ...width(end, right + ROW), ...names];
}

/**
 * Numbers above the frets, those with markers first; where they would meet they go to a row above, and those that find
 * no room in three are left out.
 */
function numberFrets({ lines }: DrawnBoard, holes: readonly DrawnHole[], sheet: Sheet): Mark[] {
  const marked = new Set(["nut", ...holes.map(({ fret }) => String(fret))]);
  const frets = lines.slice(0, -1);
  const rows: [Mark[], Mark[], Mark[]] = [[], [], []];
  for (const { name, treble } of new Set([...frets.filter((f) => marked.has(f.name)), ...frets])) {
    const x = sheet.spot(treble)[0];
    const numbers = rows.map((kept, row) => {
      const number = text(name, [x, -sheet.reach - 2 - 1.3 * row * LETTER], "middle");
      return { kept, number };
    });
    const free = numbers.find(({ kept, number }) => kept.every((other) => isBeside(number, other)));
    free?.kept.push(free.number);
  }
  return rows.flat();
}

function isBeside({ box: { left, right } }: Mark, { box }: Mark): boolean {
  return left > box.right + 0.8 || right < box.left - 0.8;
}

const SAMPLE_RADIUS = LETTER / 2 - 0.1;
const drawSample = (middle: Spot) => circle("wide", middle, SAMPLE_RADIUS);

const LEGEND: readonly Entry[] = [
  ["governs", words.WORDS.governs, (_from, _to, at) => [drawSample(at), drawDot(at)]],
  [
    "none",
    words.WORDS.nothingSuits,
    (_from, _to, at) => [drawSample(at), crossOut(drawSample(at))],
  ],
  ["channel", words.WORDS.channel, ([x1], [x2], [, y]) => [line("hidden", [x1, y], [x2, y])]],
];
