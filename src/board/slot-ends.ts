/** Where the nut and the fret slots meet the edges and the centre line. Lengths in mm. */

import type { Point } from "../geometry/polygon.js";
import { valueAt } from "../geometry/track.js";
import type { Frame } from "./board.js";
import type { FretLine } from "./fret-lines.js";

/** One half of the board. */
export type Half = "bass" | "treble";

/** Where a slot meets the edges; of one half, its edge and the centre line. */
export function placeEnds(
  board: Frame,
  line: FretLine,
  half?: Half,
): { bass: Point; treble: Point } {
  const centre = { along: line.along, offset: 0 };
  const bass = { along: line.bass, offset: -valueAt(board.width, line.bass) / 2 };
  const treble = { along: line.treble, offset: valueAt(board.width, line.treble) / 2 };
  return {
    bass: half === "treble" ? centre : bass,
    treble: half === "bass" ? centre : treble,
  };
}

/** How far a line moves along the board per mm across it. */
export function measureLean({
  bass,
  treble,
}: {
  readonly bass: Point;
  readonly treble: Point;
}): number {
  return (treble.along - bass.along) / (treble.offset - bass.offset);
}

/** The nut (0) or a fret. */
export function lineAt(board: Frame, fret: number): FretLine {
  return board.slots[fret] as FretLine;
}
