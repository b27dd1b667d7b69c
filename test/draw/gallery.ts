/** Designs to draw: the examples, and necks (all invented) that strain a drawing. Lengths in mm. */
import { readdirSync, readFileSync } from "node:fs";
import { checkDesign, type Design, type Report } from "../../src/index.js";

const EXAMPLES = new URL("../../docs/examples/", import.meta.url);

const NECK: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};

const EVERY = (frets: number) => Array.from({ length: frets }, (_, i) => i + 1);

const STRAINED: Readonly<Record<string, Design>> = {
  "no window": { ...NECK, board: { ...NECK.board, thickness: 3 }, radius: 184 },
  "breaks through": { ...NECK, board: { ...NECK.board, thickness: 4 }, depth: 4.5 },
  "web thicker than the board": { ...NECK, web: 9 },
  "sanded away": { ...NECK, depth: 0.3 },
  "several settings": {
    ...NECK,
    board: { ...NECK.board, thickness: { nut: 6.5, end: 4.2 } },
    fill: { kind: "solid", thickness: 1.4 },
    markers: [
      { frets: [3, 5, 7, 9], diameter: 6.35 },
      { frets: [12, 17], diameter: 6.35, arrangement: "double", spread: 36 },
      { frets: [15, 19, 21], diameter: 6.35, bit: { kind: "brad-point", point: 2 } },
    ],
  },
  "many holes": {
    ...NECK,
    scale: { length: 648, frets: 36 },
    board: { length: 575, width: { nut: 43, end: 60 }, thickness: 6 },
    markers: [{ frets: EVERY(36), diameter: 3, arrangement: "double" }],
  },
  "many settings": {
    ...NECK,
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 20 },
    markers: EVERY(20).map((fret) => ({
      frets: [fret],
      diameter: 6,
      fill: { kind: "solid", thickness: 0.9 + fret * 0.75, keep: 0.4 + fret * 0.75 },
    })),
  },
  "huge dot": { ...NECK, markers: [{ frets: [5, 12], diameter: 42 }] },
  "dot past the edge": {
    ...NECK,
    markers: [{ frets: [12], diameter: 9, arrangement: "double", spread: 46 }],
  },
  "dots overlap": {
    ...NECK,
    markers: [{ frets: [12], diameter: 9, arrangement: "double", spread: 7 }],
  },
  "tiny dots": {
    ...NECK,
    markers: [
      { frets: [5], diameter: 1 },
      { frets: [12], diameter: 1, arrangement: "double", spread: 2.4 },
    ],
  },
  "flat board": { ...NECK, radius: Infinity, crown: 0 },
  "names with markup": {
    ...NECK,
    name: `<b onload="x()">Tom's & "Jerry's"</b>\n ]]> &amp; \u0000\u0007 \ud800 ${"very long ".repeat(40)}`,
  },
  "a name without spaces": { ...NECK, name: "W".repeat(400) },
  "a name in other letters": { ...NECK, name: "指板 Ελάτη гриф 🎸 لوحة" },
  "no holes": { ...NECK, markers: [] },
  "one hole": { ...NECK, markers: [{ frets: [12], diameter: 6.35 }] },
  fanned: {
    ...NECK,
    name: "Fanned (invented)",
    scale: { bass: 686, treble: 648, perpendicular: 7, frets: 24 },
    board: { length: 530, width: { nut: 48, end: 66 }, thickness: 6.5 },
    radius: { nut: 305, end: 508 },
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6 },
      { frets: [12, 24], diameter: 6, arrangement: "double" },
    ],
    depth: 2.6,
  },
  pockets: {
    ...NECK,
    name: "Blocks (invented)",
    board: { ...NECK.board, channel: { width: 6, depth: 1.2, from: 8, to: 420 } },
    bit: { kind: "end-mill" },
    fill: { kind: "solid", thickness: 2 },
    markers: [
      { frets: [3, 5, 7], shape: { kind: "trapezoid", slotGap: 3, edgeGap: 6 } },
      { frets: [9, 15], shape: { kind: "rectangle", length: 8, width: 24 } },
      {
        frets: [12],
        arrangement: "double",
        shape: { kind: "rectangle", length: 10, width: 12 },
      },
    ],
  },
  "fanned pockets": {
    ...NECK,
    scale: { bass: 864, treble: 838, perpendicular: 5, frets: 20 },
    board: { length: 600, width: { nut: 45, end: 70 }, thickness: 7 },
    bit: { kind: "end-mill" },
    markers: [{ frets: [3, 5, 7, 12], shape: { kind: "trapezoid", slotGap: 4, edgeGap: 8 } }],
  },
  "wide channel": {
    ...NECK,
    board: { ...NECK.board, channel: { width: 30, depth: 2.5 } },
    bit: { kind: "twist" },
  },
  "fall-away": {
    ...NECK,
    crown: { nut: 0.1, fret14: 0.1, end: 1.2 },
    radius: { nut: 184, end: 508 },
  },
  "three frets": {
    scale: { length: 648, frets: 3 },
    board: { length: 106, width: { nut: 43, end: 46 }, thickness: 6 },
    radius: 254,
    markers: [{ frets: [3], diameter: 6, arrangement: "double" }],
  },
  "doubles on every fret": {
    ...NECK,
    name: "Doubles (invented)",
    scale: { length: 648, frets: 24 },
    board: { length: 500, width: { nut: 43, end: 58 }, thickness: 6 },
    depth: 2.2,
    markers: [{ frets: EVERY(24), diameter: 5, arrangement: "double" }],
  },
  "a doll's neck": {
    scale: { length: 40, frets: 15 },
    board: { length: 24, width: { nut: 3, end: 4 }, thickness: 1.5 },
    radius: 20,
    crown: 0.01,
    web: 0.2,
    tolerance: { stop: 0.01, layout: 0.01, thickness: 0.01, crown: 0.01, radius: 0 },
    fill: { kind: "poured", keep: 0.2 },
    bit: { kind: "end-mill" },
    markers: [{ frets: [3, 5, 7, 9, 12], diameter: 0.5 }],
  },
  "a giant's neck": {
    scale: { length: 9000, frets: 24 },
    board: { length: 6800, width: { nut: 600, end: 800 }, thickness: 90 },
    radius: 3600,
    markers: [{ frets: [3, 12], diameter: 88, arrangement: "double" }],
  },
  "a thick stub": {
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

/** The reports of the examples. */
export const examples: readonly Piece[] = readdirSync(EXAMPLES)
  .filter((file) => file.endsWith(".json"))
  .sort()
  .map((file) => {
    const design = JSON.parse(readFileSync(new URL(file, EXAMPLES), "utf8"));
    return { name: file.replace(".json", ""), report: checkDesign(design) };
  });

/** Every report to draw. */
export const gallery: readonly Piece[] = [
  ...examples,
  ...Object.entries(STRAINED).map(([name, design]) => ({ name, report: checkDesign(design) })),
];

/** The report of one design. */
export function reportOf(name: string): Report {
  const piece = gallery.find((other) => other.name === name);
  if (piece === undefined) throw new Error(`no design is called ${name}`);
  return piece.report;
}
