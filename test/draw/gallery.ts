/** Necks to draw, all invented: ordinary ones, and such as strain a drawing. Lengths in mm. */
import { checkDesign, type Design, type MarkerGroup, type Report } from "../../src/index.js";

/** An ordinary neck. */
export const NECK: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};
const BLOCK: MarkerGroup = {
  frets: [3, 5, 7],
  shape: { kind: "trapezoid", slotGap: 3, edgeGap: 6 },
  bit: { kind: "end-mill" },
};
const FAN = { bass: 686, treble: 648, square: 7, frets: 24 };
const EVERY = (frets: number) => Array.from({ length: frets }, (_, i) => i + 1);

const DESIGNS: Readonly<Record<string, Design>> = {
  plain: { ...NECK, name: "Plain (invented)", depth: 2.4, stop: { step: 0.25 } },
  "twist bit": {
    ...NECK,
    name: "Twist (invented)",
    scale: { length: 864, frets: 21 },
    board: { length: 612, width: { nut: 40, end: 62.5 }, thickness: 7.5 },
    radius: 241.3,
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19], diameter: 7 },
      { frets: [12], diameter: 7, arrangement: "double", spread: 26 },
    ],
    bit: { kind: "twist", angle: 118 },
    depth: 2.9,
  },
  "one setting does not do": {
    ...NECK,
    board: { ...NECK.board, thickness: { nut: 6.5, end: 4.2 } },
    fill: { kind: "solid", thickness: 1.4 },
    markers: [
      { frets: [3, 5, 7, 9], diameter: 6.35 },
      { frets: [12, 17], diameter: 6.35, arrangement: "double", spread: 36 },
      { frets: [15, 19, 21], diameter: 6.35, bit: { kind: "brad-point", point: 2 } },
    ],
  },
  "no window": { ...NECK, board: { ...NECK.board, thickness: 3 }, radius: 184 },
  "breaks through": { ...NECK, board: { ...NECK.board, thickness: 4 }, travel: 5.5 },
  "zeroed on the table": {
    ...NECK,
    board: { ...NECK.board, thickness: { nut: 7, end: 6 } },
    stop: { from: "table", zero: 0, correction: 0.05 },
  },
  "many holes": {
    ...NECK,
    scale: { length: 648, frets: 36 },
    board: { length: 575, width: { nut: 43, end: 60 }, thickness: 6 },
    markers: [{ frets: EVERY(36), diameter: 3, arrangement: "double" }],
  },
  "many settings": {
    ...NECK,
    board: { ...NECK.board, thickness: 20 },
    markers: EVERY(20).map((fret) => ({
      frets: [fret],
      diameter: 6,
      fill: { kind: "solid", thickness: 0.9 + fret * 0.75, keep: 0.4 + fret * 0.75 },
    })),
  },
  "huge dot": { ...NECK, markers: [{ frets: [5, 12], diameter: 42 }] },
  "past the edge": {
    ...NECK,
    markers: [{ frets: [12], diameter: 9, arrangement: "double", spread: 46 }],
  },
  tiny: { ...NECK, markers: [{ frets: [12], diameter: 1, arrangement: "double", spread: 2.4 }] },
  flat: { ...NECK, radius: "flat", sanding: 0 },
  "fall-away": {
    ...NECK,
    sanding: { nut: 0.1, fret14: 0.1, end: 1.2 },
    radius: { nut: 184, end: 508 },
  },
  "drilled already": {
    ...NECK,
    markers: [{ frets: [5, 7], diameter: 6, drilled: true, depth: 2 }, ...NECK.markers],
  },
  "at one edge": {
    ...NECK,
    markers: [
      { frets: [3, 5, 7, 9], diameter: 4, arrangement: "edge", side: "bass", gap: 2 },
      { frets: [12], diameter: 4, arrangement: "lengthwise", spread: 9 },
    ],
  },
  "at places": {
    ...NECK,
    markers: [
      {
        places: [
          { along: 60, offset: -8 },
          { along: 60, offset: 11, depth: 2 },
          { along: 200, offset: 0 },
        ],
        shape: {
          kind: "polygon",
          corners: [
            { x: -5, y: -4 },
            { x: 6, y: 0 },
            { x: -5, y: 4 },
          ],
        },
        bit: { kind: "end-mill" },
      },
    ],
  },
  markup: {
    ...NECK,
    name: `<b onload="x()">Tom's & "Jerry's"</b>\n ]]> &amp; \u0000\u0007 \ud800 ${"very long ".repeat(40)}`,
  },
  "no holes": { ...NECK, markers: [] },
  fanned: {
    ...NECK,
    name: "Fanned (invented)",
    scale: FAN,
    board: { length: 530, width: { nut: 48, end: 66 }, thickness: 6.5 },
    radius: { nut: 305, end: 508 },
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6 },
      { frets: [12, 24], diameter: 6, arrangement: "double" },
    ],
  },
  blocks: {
    ...NECK,
    name: "Blocks (invented)",
    fill: { kind: "solid", thickness: 2 },
    markers: [
      BLOCK,
      {
        frets: [12],
        arrangement: "double",
        shape: { kind: "rectangle", length: 10, width: 12 },
        bit: { kind: "end-mill" },
      },
    ],
  },
  "a doll's neck": {
    ...NECK,
    scale: { length: 40, frets: 15 },
    board: { length: 24, width: { nut: 3, end: 4 }, thickness: 1.5 },
    radius: 20,
    sanding: 0.01,
    web: 0.2,
    tolerance: { stop: 0.01, layout: 0.01, thickness: 0.01, sanding: 0.01, crest: 0.01 },
    fill: { kind: "poured", keep: 0.2 },
    bit: { kind: "end-mill" },
    markers: [{ frets: [3, 5, 7, 9, 12], diameter: 0.5 }],
  },
  "a thick stub": {
    ...NECK,
    scale: { length: 648, frets: 5 },
    board: { length: 170, width: 12, thickness: 60 },
    radius: 40,
    markers: [{ frets: [3, 5], diameter: 4 }],
  },
};

/** A design's report, by name. */
export interface Piece {
  readonly name: string;
  readonly report: Report;
}

/** Every report to draw. */
export const gallery: readonly Piece[] = [
  ...Object.entries(DESIGNS).map(([name, design]) => ({ name, report: checkDesign(design) })),
  { name: "on a neck, under an old radius", report: toldReport() },
];

/** The report of one design. */
export function reportOf(name: string): Report {
  const piece = gallery.find((other) => other.name === name);
  if (piece === undefined) throw new Error(`no design is called ${name}`);
  return piece.report;
}

/** A report that tells of the board as it is, of the neck under it and of the rod channel. */
function toldReport(): Report {
  const report = checkDesign({
    ...NECK,
    existing: { radius: 184 },
    radius: 305,
    sanding: 0.8,
    neck: { thickness: 12 },
    board: { ...NECK.board, channel: { width: 6, depth: 1, from: 8, to: 420 } },
    stop: { foot: 0 },
  });
  const more = { neck: 12, channel: { width: 6, depth: 1 } };
  const holes = report.holes.map((hole) => ({ ...hole, ...more }));
  return { ...report, holes, ...{ channel: { width: 6, from: 8, to: 420 } } };
}
