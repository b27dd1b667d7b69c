/** The board from above, as a picture. */

import type { Hole, Report } from "../report/report.js";
import { holeName } from "../text/plain-words.js";
import { boardDimensions, markerPlaces } from "./board-dimensions.js";
import { type BoardPaper, boardPaperFor, ringAround, ringReach } from "./board-paper.js";
import { type Entry, farFrom, middled, SAMPLE, withLegend } from "./legend.js";
import { circle, line, type Mark, outline, type Spot, strokes } from "./marks.js";
import { type Plan, planOf } from "./outline.js";
import { svgOf } from "./page.js";
import { planWords } from "./plan-words.js";
import { scaleWords } from "./scale.js";
import { figure, governed, hasWindow, titled } from "./words.js";

/**
 * The plan: the board seen from above, in true proportions, as SVG text. It shows the outline, the frets, the markers
 * with their distances from the nut and the centre line, the rod channel hidden below, and marks the holes that govern a
 * stop setting and those that no depth suits.
 *
 * @param report what `checkDesign` returned
 * @returns an SVG document, its size in mm
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
export function drawBoard(report: Report): string {
  const plan = planOf(report);
  const places = markerPlaces(report);
  const paper = boardPaperFor(plan, report.holes, places.length + 2);
  const marks = [
    ...boardMarks(report, plan, paper),
    ...report.holes.flatMap((hole, i) => holeMarks(report, hole, i, paper)),
    ...boardDimensions(report, plan, paper, places),
  ];
  return svgOf({
    title: titled("Plan", report),
    lines: [headingOf(paper, report)],
    marks: withLegend(marks, legend(report)),
    notes: planWords(report),
    description: descriptionOf(report, plan),
  });
}

function headingOf({ scale }: BoardPaper, { holes }: Report): string {
  const scaled = `Seen from above, the nut on the left. Scale ${scaleWords(scale)}. Lengths in mm`;
  return holes.length === 0
    ? `${scaled}. No holes.`
    : `${scaled}; below: each marker's distance from the nut, then from the centre line.`;
}

function boardMarks({ board }: Report, plan: Plan, { spot, left, right }: BoardPaper): Mark[] {
  const { channel } = board;
  const frets = plan.frets.filter(({ name }) => name !== "nut");
  return [
    outline("wide", plan.corners.map(spot), "board"),
    ...frets.map(({ bass, treble }) => line("wide", [spot(bass), spot(treble)], "fret")),
    line("centre", [
      [left - 3, 0],
      [right + 3, 0],
    ]),
    ...(channel ? [outline("hidden", channelCorners(channel, plan).map(spot), "channel")] : []),
  ];
}

function channelCorners(channel: NonNullable<Report["board"]["channel"]>, plan: Plan) {
  const { from } = channel;
  const to = Math.min(channel.to, plan.end.bass.along);
  const half = Math.min(channel.width / 2, plan.half);
  return [
    { along: from, offset: -half },
    { along: to, offset: -half },
    { along: to, offset: half },
    { along: from, offset: half },
  ];
}

/** A marker; a ring around it where it governs, a cross through it where no depth suits. */
function holeMarks(report: Report, hole: Hole, i: number, paper: BoardPaper): Mark[] {
  const centre = paper.spot(hole);
  const reach = ringReach(hole, paper.scale);
  const corners = hole.outline?.map(paper.spot);
  const shape = corners
    ? outline("wide", corners, "marker")
    : circle("wide", centre, (hole.diameter / 2) * paper.scale, "marker");
  const ring = corners
    ? outline("narrow", ringAround(corners, centre), "governs")
    : circle("narrow", centre, reach, "governs");
  return [
    shape,
    ...(governed(report, i).length > 0 ? [ring] : []),
    ...(hasWindow(hole) ? [] : [cross(corners ?? squareIn(centre, reach))]),
  ];
}

/** The corners of the square in a circle. */
function squareIn([x, y]: Spot, radius: number): Spot[] {
  const r = radius * Math.SQRT1_2;
  return [
    [x - r, y - r],
    [x + r, y - r],
    [x + r, y + r],
    [x - r, y + r],
  ];
}

/** Lines between opposite corners. */
function cross(corners: readonly Spot[]): Mark {
  const half = Math.floor(corners.length / 2);
  const ends = corners.slice(0, half).flatMap((corner, i): [Spot, Spot][] => {
    const opposite = corners[i + half];
    return opposite ? [[corner, opposite]] : [];
  });
  return strokes("narrow", ends, "none");
}

function legend(report: Report): Entry[] {
  const { holes, board } = report;
  const middle = ([x, y]: Spot): Spot => [x + SAMPLE.width / 2, y + SAMPLE.height / 2];
  const r = SAMPLE.height / 2;
  const entries: [boolean, Entry][] = [
    [
      holes.some((_, i) => governed(report, i).length > 0),
      {
        words: "governs a stop setting",
        sample: (c) => [circle("wide", middle(c), r - 0.6), circle("narrow", middle(c), r + 0.4)],
      },
    ],
    [
      !holes.every(hasWindow),
      {
        words: "no depth suits",
        sample: (c) => [circle("wide", middle(c), r - 0.6), cross(squareIn(middle(c), r + 0.4))],
      },
    ],
    [
      board.channel !== undefined,
      { words: "rod channel", sample: (c) => [line("hidden", [c, farFrom(c)].map(middled))] },
    ],
  ];
  return entries.flatMap(([shown, entry]) => (shown ? [entry] : []));
}

/** The picture in words. */
function descriptionOf(report: Report, { frets, end }: Plan): string {
  const [nut] = frets;
  const widthOf = (fret: typeof end) => figure(fret.treble.offset - fret.bass.offset);
  const rows = report.holes.map((hole, i) => {
    const remarks = governed(report, i).map(({ words }) => words);
    if (!hasWindow(hole)) remarks.push("no depth suits");
    const aside =
      hole.offset === 0 ? "" : `, ${figure(Math.abs(hole.offset))} from the centre line`;
    return `${holeName(hole)}: ${figure(hole.along)} from the nut${[aside, ...remarks].join("; ")}.`;
  });
  return [
    `The board is ${figure(report.board.length)} long, ${nut ? widthOf(nut) : ""} wide at the nut and ${widthOf(end)} at the body end, with ${frets.length - 1} frets.`,
    ...planWords(report),
    ...rows,
  ].join(" ");
}
