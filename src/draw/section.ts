/** The board cut across at a marker, as a picture. */

import { refused, tryRead } from "../errors/errors.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import * as cuts from "./cut.js";
import { ABOVE, dimension, ROW, runningDimension } from "./dimension.js";
import { measure, text } from "./label.js";
import { arrow, bar, corners, hatched, line, type Mark, type Spot } from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { chooseScale } from "./scale.js";
import * as words from "./words.js";

/** How a section is drawn. */
export interface SectionOptions extends PictureOptions {
  /** How many times larger heights are drawn than widths: 1 is true proportions; 4 where left out. */
  readonly exaggeration?: number;
}

/** Bounds of the exaggeration. */
const [LEAST, MOST] = [1, 100];

/**
 * A section: the board cut across at a marker, square to the centre line, as SVG text. It shows the flat blank and
 * what the radius removes, the hole with the bit's point, its filling, the rod channel, the hole's window and the
 * depth to drill: the planned one, else that of its stop setting. Heights are drawn larger than widths by a factor
 * that the picture states.
 *
 * The drawing is as designed, without tolerances; the window holds in the worst case. Line weights and
 * dimensions follow ISO 128 and ISO 129. Colours follow the page: dark on light, light on dark, black in print.
 *
 * @param report what `checkDesign` returned
 * @param holeIndex index into `report.holes`
 * @param options `exaggeration` from 1 (true proportions) to 100, 4 where left out; `unit`, "mm" or "in"
 * @returns an SVG document, its size in mm
 * @throws RangeError where there is no such hole, the exaggeration is out of range, or for another unit
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * drawSection(report, 0).includes("Vertical scale ×4.") // true
 * drawSection(report, 1, { exaggeration: 1 }).includes("True proportions.") // true
 */
export function drawSection(
  report: Report,
  holeIndex: number,
  options: SectionOptions = {},
): string {
  const { exaggeration = 4 } = tryRead("options", options, () => ({ ...options }));
  const unit = readUnit(options);
  const cut = Number.isInteger(holeIndex) ? cuts.cutThrough(report, holeIndex, unit) : undefined;
  if (cut === undefined) {
    const expected = `an index into the report's ${report.holes.length} holes`;
    throw refused("holeIndex", holeIndex, expected);
  }
  if (!(typeof exaggeration === "number" && exaggeration >= LEAST && exaggeration <= MOST)) {
    throw refused("exaggeration", exaggeration, `a number from ${LEAST} to ${MOST}`);
  }
  const sheet = layOut(cut, exaggeration);
  const labels = words.labelDepths(cut, unit);
  return writePage({
    title: words.titled(`Section at ${cut.main.name}`, report),
    heading: words.tellCut(cut, sheet.x(1), exaggeration, unit),
    marks: [
      ...drawBoard(cut, sheet),
      ...drawWidths(cut, sheet, unit),
      ...drawEdge(cut, sheet, unit),
      ...drawDepths(cut, labels, sheet),
    ],
    legend: legend(cut),
    notes: words.tellLeft(cut, unit),
    spoken: [words.speakWidths(cut, unit), `${labels.map(([, , label]) => label).join("; ")}.`],
  });
}

/** The room for the board. */
const ROOM = { width: 130, height: 120 };

/** Where the cut lies on paper. */
type Sheet = ReturnType<typeof layOut>;

/** Lays out the paper; its origin is the middle of the flat top. */
function layOut(cut: cuts.Cut, exaggeration: number) {
  const { half, main, holes, channel, lowest, surface } = cut;
  const reach = Math.max(half, ...holes.flatMap(({ walls }) => [-walls[0], walls[1]]));
  const glued = main.start + main.depth - (main.dot ?? 0);
  const window = [main.start + main.window.min, main.start + main.window.max];
  const top = Math.min(0, channel?.roof ?? 0, glued, ...window);
  const bottom = Math.max(lowest, surface(half));
  const room = ROOM.height / ((bottom - top) * exaggeration);
  const across = chooseScale(Math.min(ROOM.width / (2 * reach), room));
  const x = (offset: number) => offset * across;
  const y = (depth: number) => depth * across * exaggeration;
  return {
    x,
    y,
    spot: ([offset, depth]: cuts.Place): Spot => [x(offset), y(depth)],
    /** The side on which the depths are written, the hole's own: 1 is treble. */
    side: main.offset < 0 ? -1 : 1,
    /** From the centre line to the farthest of all that is drawn, and the highest and the lowest of it. */
    reach: x(reach),
    top: y(top),
    bottom: y(bottom),
  };
}

/** Between hatching lines; the filling's run the other way, and closer. */
const [WOOD, FILLING] = [3, 1.2];

/** The wood, what fills its holes, the top that it had, and the bits, which show where no wood is left. */
function drawBoard(cut: cuts.Cut, { spot, x, y }: Sheet): Mark[] {
  const { half, thickness, neck, channel } = cut;
  const wood = cuts.traceWood(cut).map(spot);
  const fillings = cut.holes.flatMap((hole) => {
    const area = cuts.traceFilling(cut, hole).map(spot);
    const style = hole === cut.main ? "wide marker" : "wide marker other";
    if (area.length < 3) return [];
    return hatched(area, 1, FILLING, ["narrow filling", style]);
  });
  // where board and neck are glued, on either side of the channel
  const joint = [-1, 1].map((side) => [side * half, side * (channel?.half ?? 0)].map(x));
  return [
    ...hatched(wood, -1, WOOD, ["narrow wood", "wide board"]),
    ...fillings,
    line("wide finished", ...cuts.traceSurface(cut).map(spot)),
    line("before blank", ...cuts.traceTop(cut).map(spot)),
    ...cut.holes.map((hole) => line("before bit", ...cuts.traceBit(hole).map(spot))),
    ...(neck > 0
      ? joint.map(([a = 0, b = 0]) => line("wide", [a, y(thickness)], [b, y(thickness)]))
      : []),
  ];
}

/** How far a centre line goes past the board. */
const PAST = 3;

/** The centre lines; the hole's width above; below, its distance from the centre line and the board's width. */
function drawWidths(cut: cuts.Cut, { x, top, bottom }: Sheet, unit: Unit): Mark[] {
  const { main, half } = cut;
  const [axis, below] = [x(main.offset), bottom + PAST];
  const [aside, width] = [Math.abs(main.offset), 2 * half].map((mm) => words.figure(mm, unit)) as [
    string,
    string,
  ];
  // where it finds no room, the heading alone says it
  const fits = Math.abs(axis) > measure(aside) && Math.abs(main.offset) < half;
  const last = below + (fits ? 2 : 1) * ROW;
  const edges: Spot = [below, below];
  const centres = [...new Set([0, axis])];
  const sides = [
    text("bass", [-x(half) - 6, last + 1], "end"),
    text("treble", [x(half) + 6, last + 1]),
  ];
  return [
    ...centres.map((at) => line("centre", [at, top - PAST], [at, below])),
    ...dimension(
      "across",
      [x(main.walls[0]), x(main.walls[1])],
      top - ROW,
      [0, 0],
      words.tellWidth(cut, unit),
    ),
    ...(fits ? dimension("across", [0, axis], below + ROW, edges, aside) : []),
    ...dimension("across", [-x(half), x(half)], last, edges, width),
    ...sides,
  ];
}

/** On the side away from the hole: what is left of the edge, and an arrow to the finished arc. */
function drawEdge(cut: cuts.Cut, { spot, x, y, side, reach, top }: Sheet, unit: Unit): Mark[] {
  const { half, thickness, surface } = cut;
  const edge = -side * x(half);
  const ends: Spot = [y(surface(half)), y(thickness)];
  const left = words.figure(thickness - surface(half), unit);
  const radius = words.tellRadius(cut, unit);
  const tip = spot([-0.8 * side * half, surface(0.8 * half)]);
  const foot: Spot = [-side * (reach + 6), top - 0.7 * ROW];
  return [
    ...dimension("upright", ends, -side * (reach + ROW), [edge, edge], left),
    line("narrow", tip, foot, [foot[0] - side * measure(radius), foot[1]]),
    arrow(tip, foot),
    text(radius, [foot[0], foot[1] - ABOVE], side > 0 ? "end" : "start"),
  ];
}

/** On the hole's side: its window, and every depth that matters with its words. */
function drawDepths(
  { main, lowest }: cuts.Cut,
  labels: readonly words.PlaceLabel[],
  sheet: Sheet,
): Mark[] {
  const { x, y, side, reach } = sheet;
  const { min, max } = main.window;
  const from: Spot = [side * (reach + 4), y(main.start + Math.min(min, max))];
  const to: Spot = [side * (reach + 8), y(Math.min(lowest, main.start + Math.max(min, max)))];
  const levels = labels.map(([at, depth, label]) => [y(depth), side * x(at), label] as const);
  const place = (along: number, out: number): Spot => [side * out, along];
  const anchor = side > 0 ? "start" : "end";
  return [
    ...bar(from, to, main.open),
    ...runningDimension(levels, reach + 13, place, anchor, false),
  ];
}

function legend({ main }: cuts.Cut): Entry[] {
  const { WORDS } = words;
  const area = (slope: 1 | -1, apart: number) => (from: Spot, to: Spot) =>
    hatched(corners(from, to), slope, apart, ["narrow", "wide"]);
  return [
    ["wood", WORDS.wood, area(-1, WOOD)],
    ["filling", words.tellFill(main), area(1, FILLING)],
    ["blank", WORDS.before, ([x1], [x2], [, y]) => [line("before", [x1, y], [x2, y])]],
    ["window", WORDS.window, (from, to) => bar(from, to, true)],
    ["window none", WORDS.noWindow, (from, to) => bar(from, to, false)],
  ];
}
