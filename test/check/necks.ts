/** Invented necks for the tests. Lengths in mm. */
import type { Design } from "../../src/index.js";

/** No tolerances, no crown: what is left is the bare geometry. */
export const EXACT = { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 } as const;

/** A plain neck: one radius, singles and a double. */
export const PLAIN: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};

/** A flat, parallel board with one dot at fret 5: every bound is a sum. */
export const FLAT: Design = {
  scale: { length: 600, frets: 12 },
  board: { length: 320, width: 50, thickness: 6 },
  radius: Infinity,
  crown: 0.2,
  markers: [{ frets: [5], diameter: 6 }],
  fill: { kind: "poured", keep: 0.7 },
  bit: { kind: "forstner", point: 0.9 },
  web: 1.1,
  tolerance: { stop: 0.1, layout: 0.25, thickness: 0.15, crown: 0.05, radius: 0 },
};

/** A flat board, 64 wide and 8 thick, slots every 32 mm, one dot between the first and the second. */
export const SQUARED: Design = {
  scale: { positions: [32, 64, 96, 128] },
  board: { length: 160, width: 64, thickness: 8 },
  radius: Infinity,
  crown: 0.5,
  fill: { kind: "poured", keep: 1 },
  bit: { kind: "forstner", point: 1 },
  web: 1,
  tolerance: EXACT,
  markers: [{ frets: [2], diameter: 8 }],
};
