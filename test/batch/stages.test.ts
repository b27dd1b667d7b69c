/** Each number that a sweep can vary, by itself and beside each other: nothing that hangs on it stays as it was. */
import { describe, expect, test } from "vitest";
import { type Axes, type Design, sweep } from "../../src/index.js";
import { holdRows } from "./rows.js";

/** Invented; the channel runs to the board's end, its sides lie under the dots' rims. */
const NECK: Design = {
  scale: { length: 640, frets: 20 },
  board: {
    length: 450,
    width: { nut: 43, end: 56 },
    thickness: { nut: 6.5, end: 6.2 },
    channel: { width: 5, depth: 2, from: 30 },
  },
  radius: { nut: 240, end: 320 },
  crown: { nut: 0.1, fret12: 0.1, end: 0.4 },
  markers: [
    { frets: [3, 19, 20], diameter: 6, arrangement: "double", spread: 10 },
    { frets: [12], diameter: 5, arrangement: "double", spread: 9 },
  ],
  fill: { kind: "solid", thickness: 2.2 },
  bit: { kind: "twist", angle: 118 },
};

const VALUES: Readonly<Record<string, readonly number[]>> = {
  "scale.length": [600, 640, 630],
  "board.length": [450, 462, 455],
  "board.width.end": [52, 56, 60],
  "board.thickness.end": [5, 6.2, 6.6],
  "board.channel.width": [4, 5, 8],
  "board.channel.depth": [1, 2, 3],
  "board.channel.from": [30, 90, 60],
  "board.channel.to": [100, 450, 300],
  "radius.end": [260, 320, 400],
  "crown.end": [0.1, 0.4, 1],
  "fill.keep": [0.5, 0.8, 1],
  "fill.thickness": [1.5, 2.2, 3],
  "bit.angle": [90, 118, 135],
  "markers.0.diameter": [4, 6, 8],
  "markers.1.spread": [9, 12, 20],
  web: [0.5, 1, 1.5],
  "tolerance.stop": [0, 0.1, 0.3],
  "tolerance.layout": [0, 0.25, 0.9],
  "tolerance.thickness": [0, 0.1, 0.3],
  "tolerance.crown": [0, 0.05, 0.2],
  "tolerance.radius": [0, 0.02, 0.05],
};
const PATHS = Object.keys(VALUES);

describe.each(PATHS)("%s", (path) => {
  test("before each other number, and behind it", () => {
    let differ = 0;
    for (const other of PATHS) {
      if (other === path) continue;
      const axes = { [path]: VALUES[path], [other]: VALUES[other]?.slice(0, 2) } as Axes;
      const rows = sweep(NECK, axes);
      expect(rows.size).toBe(6);
      expect(holdRows(rows).unread).toBe(0);
      for (let i = 0; i < rows.size; i++) {
        if (rows.min[i] !== rows.min[0] || rows.max[i] !== rows.max[0]) differ++;
      }
    }
    expect(differ).toBeGreaterThan(0);
  });
});
