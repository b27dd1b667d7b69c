/** What the radius takes from the board's edges, and what is left there. Lengths in mm. */
import type { Board } from "./board.js";
import type { Station } from "./design.js";
import type { FretLine } from "./fret-lines.js";
import { removalOn } from "./removal.js";
import { valueAt } from "./track.js";

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
  return edgePlaces(board).map((place) => {
    const { offset, removal, thickness } = edgeAt(board, place.along);
    const edge = { ...place, offset, removal, thickness };
    return sideDots ? { ...edge, sideDotLine: thickness / 2 } : edge;
  });
}

/** The edge as designed, at a place along it. */
export function edgeAt(board: Board, along: number) {
  const offset = valueAt(board.width, along) / 2;
  const removal = removalOn(board.nominal, along, offset);
  return { offset, removal, thickness: valueAt(board.thickness, along) - removal };
}

/** The worst case there: the greatest removal and the least thickness left within the tolerances. */
export function worstEdgeAt(board: Board, along: number, tolerance: number) {
  const removal = removalOn(board.deepest, along, valueAt(board.width, along) / 2);
  return { removal, thickness: valueAt(board.thickness, along) - tolerance - removal };
}

/** Where the edges are looked at: both apart where frets are fanned, else both as one. */
export function edgePlaces(board: Board): Pick<Edge, "station" | "side" | "along">[] {
  const frets = board.slots.flatMap((line, n) => {
    return isOnBoard(board, line) ? placesOn(board, line, n === 0 ? "nut" : `fret${n}`) : [];
  });
  return [...frets, { station: "end", along: board.length }];
}

/** A slot lies on the board with both its ends. */
export function isOnBoard(board: Board, { bass, treble }: FretLine): boolean {
  return Math.max(bass, treble) <= board.length;
}

function placesOn(board: Board, { along, bass, treble }: FretLine, station: Station) {
  if (!board.fanned) return [{ station, along }];
  return [
    { station, side: "bass" as const, along: bass },
    { station, side: "treble" as const, along: treble },
  ];
}
