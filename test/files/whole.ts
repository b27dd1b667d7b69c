/** Invented designs that together use every field and every kind. Lengths in mm. */
import type { Design } from "../../src/index.js";

const BOARD = { length: 482, width: { nut: 43, end: 57 }, thickness: 6 } as const;

const EVERYTHING: Design = {
  name: "invented",
  scale: { length: 648, frets: 22 },
  board: {
    length: 482,
    width: { nut: 43, fret12: 51, end: 57 },
    thickness: { nut: 6, fret12: 6, end: 5.8 },
    channel: { width: 6, depth: 1, from: 5, to: 470 },
  },
  radius: { nut: 254, fret12: 300, end: 406.4 },
  crown: { nut: 0.1, fret12: 0.1, end: 0.2 },
  markers: [
    {
      frets: [3, 5],
      diameter: 6,
      arrangement: "double",
      spread: 24,
      along: "midpoint",
      fill: { kind: "solid", thickness: 2, keep: 0.4 },
      bit: { kind: "twist", angle: 118 },
      depth: 2,
    },
    { frets: [7], diameter: 6, bit: { kind: "end-mill" }, fill: { kind: "poured", keep: 0.7 } },
    {
      frets: [9],
      shape: { kind: "rectangle", length: 6, width: 12 },
      arrangement: "double",
      spread: 25,
      along: "diagonals",
      fill: { kind: "poured" },
      bit: { kind: "end-mill" },
      depth: 2.2,
    },
    { frets: [12], shape: { kind: "trapezoid", slotGap: 4, edgeGap: 5 } },
  ],
  fill: { kind: "poured", keep: 0.8 },
  bit: { kind: "brad-point", point: 1.2 },
  depth: 2.5,
  web: 1,
  tolerance: { stop: 0.1, layout: 0.25, thickness: 0.1, crown: 0.05, radius: 0.02 },
  stopStep: 0.1,
  slot: { depth: 3.6, tang: 1.7, clearance: 0.2, web: 1.5 },
  sideDots: { diameter: 2, margin: 0.5, depth: 3 },
  pour: { waste: 0.5, ratio: [2, 1] },
};

const FANNED: Design = {
  scale: { bass: 686, treble: 648, perpendicular: 7.5, frets: 22 },
  board: { ...BOARD, length: 500 },
  radius: 406.4,
  crown: 0.1,
  markers: [{ frets: [3, 12], diameter: 6 }],
  bit: { kind: "forstner", point: 0.8 },
};

const LISTED: Design = {
  scale: { positions: [36.4, 70.7, 103.1] },
  board: { ...BOARD, length: 120, width: 44 },
  radius: 305,
  markers: [{ frets: [3], diameter: 5, bit: { kind: "brad-point", point: 1 } }],
  fill: { kind: "solid", thickness: 2 },
};

export const WHOLE: readonly Design[] = [EVERYTHING, FANNED, LISTED];
