/** What the radius takes from the board's edges, and what is left there. Lengths in mm. */
import { type Board, type Finish, type Frame, firstAlong } from "../board/board.js";
import type { FretLine } from "../board/fret-lines.js";
import type { Station } from "../design/design.js";
import { removalOn } from "../geometry/removal.js";
import { valueAt } from "../geometry/track.js";

/** One place along the edges: the nut, a fret, or the body end. */
export interface Edge {
  /** Which place it is. */
  readonly station: Station;
  /** Which edge, where frets are fanned and the two differ. */
  readonly side?: "bass" | "treble";
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** From the centre line to the edge: half the width, mm. */
  readonly offset: number;
  /** What is removed on the centre line there, as designed, mm. */
  readonly sanding: number;
  /** What is removed at the very edge, as designed, mm. */
  readonly removal: number;
  /** What is left there of the board's thickness, as designed, mm. */
  readonly thickness: number;
  /** Height above the board's underside at which to scribe the side dots' line: the middle of the edge face, mm. */
  readonly sideDotLine?: number;
}

/** The edges at the nut, at each fret on the board, and at the end. */
export function buildEdges(board: Board, sideDots: boolean): Edge[] {
  return edgePlaces(board).map(({ station, side, along }): Edge => {
    const offset = valueAt(board.width, along) / 2;
    const finished = finishedAt(board.nominal, along, offset);
    const removal = finished - topAt(board.nominal, along, offset);
    const sanding = finishedAt(board.nominal, along, 0);
    const thickness = valueAt(board.wood.thickness, along) - finished;
    const sideDotLine = thickness / 2;
    // four plain literals: objects of a known shape are made ten times faster than spread ones
    if (side) {
      return sideDots
        ? { station, side, along, offset, sanding, removal, thickness, sideDotLine }
        : { station, side, along, offset, sanding, removal, thickness };
    }
    return sideDots
      ? { station, along, offset, sanding, removal, thickness, sideDotLine }
      : { station, along, offset, sanding, removal, thickness };
  });
}

/** The finished surface below the crest plane: F = max(S + sag(R, x), sag(R0, x)). */
export function finishedAt({ sanded, old }: Finish, along: number, offset: number): number {
  const fresh = removalOn(sanded, along, offset);
  return old === undefined ? fresh : Math.max(fresh, removalOn(old, along, offset));
}

/** The top as it is, below the crest plane: P = sag(R0, x). */
export function topAt({ old }: Finish, along: number, offset: number): number {
  return old === undefined ? 0 : removalOn(old, along, offset);
}

/** Height of the edge face as designed: what is left there of the board's thickness. */
export function faceAt({ nominal, width, wood }: Board, along: number): number {
  return valueAt(wood.thickness, along) - finishedAt(nominal, along, valueAt(width, along) / 2);
}

/** The least that is left there within the tolerances. */
export function worstFaceAt(
  { deepest, crest, width, wood }: Board,
  along: number,
  tolerance: number,
): number {
  const offset = valueAt(width, along) / 2;
  const fresh = removalOn(deepest.sanded, along, offset + crest);
  const lost = Math.max(fresh, topAt(deepest, along, offset));
  return valueAt(wood.thickness, along) - lost - tolerance;
}

/** Where an edge is looked at. */
type EdgePlace = Pick<Edge, "station" | "side" | "along">;

/** Where the edges are looked at: both apart where frets are fanned, else both as one. */
function edgePlaces(board: Frame): EdgePlace[] {
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
export function isOnBoard(board: Frame, { bass, treble }: FretLine): boolean {
  return Math.max(bass, treble) <= board.length;
}

/** How much sanding the change of radius takes, and where. */
export interface Reach {
  readonly along: number;
  /** The sanding there, as designed. */
  readonly sanding: number;
  /** The least that reaches the new radius at the edge: sag(R0, b) − sag(R, b). */
  readonly needed: number;
}

const STEPS = 64;

/** Where the sanding falls shortest of the new radius; undefined where it reaches it all over the board. */
export function shortestReach(board: Board): Reach | undefined {
  const { sanded, old } = board.nominal;
  if (old === undefined) return undefined;
  const { length, width } = board;
  const start = firstAlong(board);
  const even = Array.from({ length: STEPS + 1 }, (_, i) => start + ((length - start) * i) / STEPS);
  const knots = [sanded.sanding, sanded.radius, old.radius, width].flatMap(({ at }) => at);
  const places = [...even, ...knots.filter((s) => start <= s && s <= length)];
  const reaches = places.map((along): Reach => {
    const half = valueAt(width, along) / 2;
    const sanding = valueAt(sanded.sanding, along);
    const needed = removalOn(old, along, half) - (removalOn(sanded, along, half) - sanding);
    return { along, sanding, needed };
  });
  const worst = reaches.reduce((a, b) => (b.needed - b.sanding > a.needed - a.sanding ? b : a));
  return worst.needed - worst.sanding > HAIR ? worst : undefined;
}

/** What rounding may make of a sanding that just reaches. */
const HAIR = 1e-9;
