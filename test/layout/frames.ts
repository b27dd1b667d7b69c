/** Boards set down by hand, on squared paper. Lengths in mm. */
import type { Board, Frame } from "../../src/board/board.js";
import type { FretLine } from "../../src/board/fret-lines.js";
import type { GroupSpec } from "../../src/design/spec.js";
import type { Point } from "../../src/geometry/polygon.js";
import { constantTrack, type Track } from "../../src/geometry/track.js";

/** A slot square to the centre line. */
export const square = (along: number): FretLine => ({ along, bass: along, treble: along });

/** A slot from one edge to the other of a board with parallel edges. */
export const leaning = (bass: number, treble: number): FretLine => ({
  along: (bass + treble) / 2,
  bass,
  treble,
});

/** The frame that these slots make; fanned where one of them leans. */
export function frameOf(slots: readonly FretLine[], width: number | Track, length = 500): Frame {
  return {
    length,
    slots,
    alongs: slots.map(({ along }) => along),
    fanned: slots.some(({ bass, treble }) => bass !== treble),
    width: typeof width === "number" ? constantTrack(width) : width,
  };
}

/** 16 thick, radius 25 (15-20-25: 10 off at 20 from the crest); 1 off the middle, 1.5 at the most. Length 500 where nothing else is said. */
export function boardOf(
  slots: readonly FretLine[],
  width: number | Track,
  stated: Partial<Board> = {},
): Board {
  const radius = constantTrack(25);
  return {
    ...frameOf(slots, width),
    thickness: constantTrack(16),
    nominal: { crown: constantTrack(1), radius },
    deepest: { crown: constantTrack(1.5), radius },
    shallowest: { crown: constantTrack(0.5), radius },
    ...stated,
  };
}

/** A group of markers: single dots of 6 mm between the nut and fret 1 where nothing else is said. */
export function groupOf(stated: Partial<GroupSpec> = {}): GroupSpec {
  return {
    frets: [1],
    diameter: 6,
    shape: undefined,
    arrangement: "single",
    spread: undefined,
    along: "diagonals",
    fill: { kind: "poured", keep: 1 },
    bit: { kind: "end-mill" },
    depth: undefined,
    path: { group: "markers.4", fill: "fill", bit: "bit", depth: "depth" },
    ...stated,
  };
}

/** Points as pairs, rounding of the last bits taken off. */
export function pairs(points: readonly Point[] | undefined): number[][] | undefined {
  const rounded = (v: number) => Number(v.toFixed(9));
  return points?.map(({ along, offset }) => [rounded(along), rounded(offset)]);
}
