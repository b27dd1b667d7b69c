/** Invented necks for the tests. Lengths in mm. */
import type { Design } from "../../src/index.js";

/** No tolerances: what is left is the bare geometry. */
export const EXACT = {
  stop: 0,
  point: 0,
  seat: 0,
  layout: 0,
  thickness: 0,
  sanding: 0,
  crest: 0,
  fill: 0,
  radius: 0,
  existing: 0,
} as const;

/** A plain neck: one radius, singles and a double. */
export const PLAIN: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
  bit: { kind: "forstner", point: 1 },
};

/** A flat, parallel board with one dot at fret 5: every bound is a sum. */
export const FLAT: Design = {
  scale: { length: 600, frets: 12 },
  board: { length: 320, width: 50, thickness: 6 },
  radius: Infinity,
  sanding: 0.2,
  markers: [{ frets: [5], diameter: 6 }],
  fill: { kind: "poured", keep: 0.7 },
  bit: { kind: "forstner", point: 0.9, spur: 0 },
  stop: { from: "wood", foot: 0 },
  web: 1.1,
  tolerance: { ...EXACT, stop: 0.1, layout: 0.25, thickness: 0.15, sanding: 0.05 },
};

/** A flat board, 64 wide and 8 thick, slots every 32 mm, one dot between the first and the second. */
export const SQUARED: Design = {
  scale: { positions: [32, 64, 96, 128] },
  board: { length: 160, width: 64, thickness: 8 },
  radius: Infinity,
  sanding: 0.5,
  fill: { kind: "poured", keep: 1 },
  bit: { kind: "forstner", point: 1, spur: 0 },
  stop: { from: "wood", foot: 0 },
  web: 1,
  tolerance: EXACT,
  markers: [{ frets: [2], diameter: 8 }],
};
