/** What the radius takes from the board's edges, and what is left there. Lengths in mm. */
import { type Board, stationAlong } from "./board.js";
import type { Station } from "./design.js";
import { removalOn } from "./removal.js";
import { valueAt } from "./track.js";

/** One place along the edges: the nut, a fret, or the body end. */
export interface Edge {
  readonly station: Station;
  readonly along: number;
  /** What is removed at the very edge, as designed. */
  readonly removal: number;
  /** What is left there of the blank's thickness, as designed. */
  readonly thickness: number;
}

/** The edges at the nut, at each fret on the board, and at the end. */
export function edgesOf(board: Board): Edge[] {
  return stationsOf(board).map((station) => {
    const along = stationAlong(station, board.slots, board.length);
    const removal = removalOn(board.nominal, along, valueAt(board.width, along) / 2);
    return { station, along, removal, thickness: valueAt(board.thickness, along) - removal };
  });
}

/** Worst case of an edge: the greatest removal and the least thickness left within the tolerances. */
export function worstEdge(board: Board, along: number, tolerance: number) {
  const removal = removalOn(board.deepest, along, valueAt(board.width, along) / 2);
  return { removal, thickness: valueAt(board.thickness, along) - tolerance - removal };
}

/** The nut, each fret on the board, and the end. */
export function stationsOf(board: Board): Station[] {
  const frets = board.slots.slice(1).filter((along) => along <= board.length);
  return ["nut", ...frets.map((_, i): Station => `fret${i + 1}`), "end"];
}
