/** What the radius takes from the board's edges, and what is left there. Lengths in mm. */
import type { Board } from "../board/board.js";
import type { FretLine } from "../board/fret-lines.js";
import type { Station } from "../design/design.js";
import { removalOn } from "../geometry/removal.js";
import type { Surface } from "../geometry/surface.js";
import { valueAt } from "../geometry/track.js";

/** One place along the edges: the nut, a fret, or the body end. */
export interface Edge {
  readonly station: Station;
  /** Which edge, where frets are fanned and the two differ. */
  readonly side?: "bass" | "treble";
  readonly along: number;
  /** From the centre line to the edge: half the width. */
  readonly offset: number;
  /** What is removed at the very edge, as designed. */
  readonly removal: number;
  /** What is left there of the blank's thickness, as designed. */
  readonly thickness: number;
  /** Height above the underside at which to scribe the side dots' line: the middle of the edge face. */
  readonly sideDotLine?: number;
}

/** The edges at the nut, at each fret on the board, and at the end. */
export function edgesOf(board: Board, sideDots: boolean): Edge[] {
  return edgePlaces(board).map(({ station, side, along }): Edge => {
    const offset = halfWidthAt(board, along);
    const removal = removalOn(board.nominal, along, offset);
    const thickness = faceAt(board, along);
    const sideDotLine = thickness / 2;
    // four plain literals: objects of a known shape are made ten times faster than spread ones
    if (side) {
      return sideDots
        ? { station, side, along, offset, removal, thickness, sideDotLine }
        : { station, side, along, offset, removal, thickness };
    }
    return sideDots
      ? { station, along, offset, removal, thickness, sideDotLine }
      : { station, along, offset, removal, thickness };
  });
}

/** From the centre line to the edge. */
function halfWidthAt(board: Board, along: number): number {
  return valueAt(board.width, along) / 2;
}

/** Height of the edge face as designed: what is left there of the blank's thickness. */
export function faceAt(board: Board, along: number): number {
  return faceUnder(board.nominal, board, along);
}

/** The least that is left there within the tolerances. */
export function worstFaceAt(board: Board, along: number, tolerance: number): number {
  return faceUnder(board.deepest, board, along) - tolerance;
}

function faceUnder(surface: Surface, board: Board, along: number): number {
  return valueAt(board.thickness, along) - removalOn(surface, along, halfWidthAt(board, along));
}

/** Where an edge is looked at. */
type EdgePlace = Pick<Edge, "station" | "side" | "along">;

/** Where the edges are looked at: both apart where frets are fanned, else both as one. */
export function edgePlaces(board: Board): EdgePlace[] {
  const places: EdgePlace[] = [];
  board.slots.forEach((line, n) => {
    if (!isOnBoard(board, line)) return;
    const station: Station = n === 0 ? "nut" : `fret${n}`;
    if (board.fanned) {
      places.push({ station, side: "bass", along: line.bass });
      places.push({ station, side: "treble", along: line.treble });
    } else places.push({ station, along: line.along });
  });
  places.push({ station: "end", along: board.length });
  return places;
}

/** A slot lies on the board with both its ends. */
export function isOnBoard(board: Board, { bass, treble }: FretLine): boolean {
  return Math.max(bass, treble) <= board.length;
}
