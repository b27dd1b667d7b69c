/** Boards seen from above, set down by hand on squared paper. Lengths in mm. */
import type { Frame } from "../../src/board/board.js";
import type { FretLine } from "../../src/board/fret-lines.js";
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

/** Points as “along offset, along offset, …”, rounding of the last bits taken off. */
export function told(points: readonly Point[] | undefined): string | undefined {
  const rounded = (v: number) => Number(v.toFixed(9));
  return points?.map(({ along, offset }) => `${rounded(along)} ${rounded(offset)}`).join(", ");
}
