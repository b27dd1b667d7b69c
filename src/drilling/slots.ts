/** How deep the fret slots must and may be sawn, measured from the crest plane. Lengths in mm. */
import type { Board, RodChannel } from "../board/board.js";
import type { FretLine } from "../board/fret-lines.js";
import { measureLean, placeEnds } from "../board/slot-ends.js";
import type { Spec } from "../design/spec.js";
import { removalAt, type Surface, splitSurface } from "../geometry/surface.js";
import { leastOver } from "../geometry/track.js";
import { isOnBoard } from "./edges.js";

/** The saw depths that suit one fret's slot. */
export interface SlotDepth {
  readonly fret: number;
  /** tang + clearance + greatest F across the slot. */
  readonly min: number;
  /** Least thickness there, over the rod channel where it runs, less the slot's web. */
  readonly max: number;
}

/** The saw depths that suit the whole board, and the frets that govern them. */
export interface SlotPlan {
  /** Least saw depth, mm. */
  readonly min: number;
  /** Greatest saw depth, mm. */
  readonly max: number;
  /** The fret that sets the least. */
  readonly minAt: number;
  /** The fret that sets the greatest. */
  readonly maxAt: number;
}

/** The slots' saw depths in the worst case of the tolerances, fret by fret; none where the design states no slot. */
export function sawDepths(board: Board, spec: Spec): SlotDepth[] {
  const { slot } = spec;
  if (slot === undefined) return [];
  return board.slots.flatMap((line, fret) =>
    fret > 0 && isOnBoard(board, line) ? [sawDepth(board, spec, slot, line, fret)] : [],
  );
}

/** What suits the whole board; undefined where there is no slot on it. */
export function planSlots(depths: readonly SlotDepth[]): SlotPlan | undefined {
  const [first] = depths;
  if (first === undefined) return undefined;
  const deepest = depths.reduce((a, b) => (b.min > a.min ? b : a), first);
  const thinnest = depths.reduce((a, b) => (b.max < a.max ? b : a), first);
  return { min: deepest.min, max: thinnest.max, minAt: deepest.fret, maxAt: thinnest.fret };
}

function sawDepth(
  board: Board,
  { tolerance }: Spec,
  slot: NonNullable<Spec["slot"]>,
  line: FretLine,
  fret: number,
): SlotDepth {
  const { thickness, channel } = board.wood;
  const min = slot.tang + slot.clearance + greatestAcross(board, line);
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  const over = channel ? leastOverChannel(board, channel, line) : Infinity;
  const max = Math.min(leastOver(thickness, from, to), over) - tolerance.thickness.limit - slot.web;
  return { fret, min, max };
}

/** Least wood under the slot's part over the channel; Infinity where it runs beside it. */
function leastOverChannel(board: Board, channel: RodChannel, line: FretLine): number {
  const ends = placeEnds(board, line);
  const { bass, treble } = ends;
  const sides = [-channel.half, channel.half].map((side) => {
    const offset = within(side, bass.offset, treble.offset);
    return bass.along + measureLean(ends) * (offset - bass.offset);
  });
  const from = Math.max(channel.from, Math.min(...sides));
  const to = Math.min(channel.to, Math.max(...sides));
  return from <= to ? leastOver(channel.over, from, to) : Infinity;
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** Greatest F across a slot, within the tolerances; the crest may lie to either side. */
function greatestAcross(board: Board, line: FretLine): number {
  const { sanded, old } = board.deepest;
  const fresh = greatestAlong(board, sanded, line, board.crest);
  return old === undefined ? fresh : Math.max(fresh, greatestAlong(board, old, line, 0));
}

/**
 * Greatest on one surface. Between knots it is convex along the straight line, so it is greatest at an end or at a knot,
 * and there on either side of the bend.
 */
function greatestAlong(board: Board, surface: Surface, line: FretLine, crest: number): number {
  const { bass, treble } = placeEnds(board, line);
  const run = treble.along - bass.along;
  const offsetAt = (along: number) => {
    const offset = bass.offset + ((treble.offset - bass.offset) * (along - bass.along)) / run;
    return run === 0 ? treble.offset : within(offset, bass.offset, treble.offset);
  };
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  // a knot under the slot counts even where rounding puts it just beside
  const slack = 1e-9 * board.length;
  let greatest = -Infinity;
  for (const piece of splitSurface(surface, from - slack, to + slack)) {
    for (const end of [piece.from, piece.to]) {
      const along = within(end, from, to);
      const removal = removalAt(piece, along, Math.abs(offsetAt(along)) + crest);
      greatest = Math.max(greatest, removal);
    }
  }
  return greatest;
}
