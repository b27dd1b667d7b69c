/** How deep the fret slots must and may be sawn from the flat. Lengths in mm. */
import type { Board } from "../board/board.js";
import type { FretLine } from "../board/fret-lines.js";
import { endsOf, leanOf } from "../board/slot-ends.js";
import type { Spec } from "../design/spec.js";
import { piecesOf, removalOf } from "../geometry/surface.js";
import { leastOver } from "../geometry/track.js";
import { isOnBoard } from "./edges.js";

/** The saw depths that suit one fret's slot. */
export interface SlotDepth {
  readonly fret: number;
  /** tang + clearance + greatest removal across the slot. */
  readonly least: number;
  /** Least thickness there, over the rod channel where it runs, less the slot's web. */
  readonly most: number;
  readonly mostBy: "web" | "channel";
}

/** The saw depths that suit the whole board, from the flat, and the frets that govern them. */
export interface SlotPlan {
  readonly least: number;
  readonly most: number;
  readonly leastAt: number;
  readonly mostAt: number;
  /** Every fret by itself. */
  readonly frets: readonly SlotDepth[];
}

/** The slots' saw depths in the worst case of the tolerances; undefined where the design states no slot. */
export function slotsOf(board: Board, spec: Spec): SlotPlan | undefined {
  const { slot } = spec;
  if (slot === undefined) return undefined;
  const frets: SlotDepth[] = [];
  board.slots.forEach((line, fret) => {
    if (fret > 0 && isOnBoard(board, line)) frets.push(slotDepth(board, spec, slot, line, fret));
  });
  const [first] = frets;
  if (first === undefined) return undefined;
  const deepest = frets.reduce((a, b) => (b.least > a.least ? b : a), first);
  const thinnest = frets.reduce((a, b) => (b.most < a.most ? b : a), first);
  return {
    least: deepest.least,
    most: thinnest.most,
    leastAt: deepest.fret,
    mostAt: thinnest.fret,
    frets,
  };
}

function slotDepth(
  board: Board,
  { tolerance, channel }: Spec,
  slot: NonNullable<Spec["slot"]>,
  line: FretLine,
  fret: number,
): SlotDepth {
  const least = slot.tang + slot.clearance + removalAcross(board, line);
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  const beside = leastOver(board.thickness, from, to);
  const over = channel ? thicknessOverChannel(board, channel, line) : Infinity;
  const most = Math.min(beside, over) - tolerance.thickness - slot.web;
  return { fret, least, most, mostBy: over < beside ? "channel" : "web" };
}

/** Least thickness along the slot's part over the channel, less its depth; Infinity where it runs beside it. */
function thicknessOverChannel(
  board: Board,
  channel: NonNullable<Spec["channel"]>,
  line: FretLine,
): number {
  const ends = endsOf(board, line);
  const { bass, treble } = ends;
  const sides = [-1, 1].map((side) => {
    const offset = within((side * channel.width) / 2, bass.offset, treble.offset);
    return bass.along + leanOf(ends) * (offset - bass.offset);
  });
  const from = Math.max(channel.from, Math.min(...sides));
  const to = Math.min(channel.to, Math.max(...sides));
  return from <= to ? leastOver(board.thickness, from, to) - channel.depth : Infinity;
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/**
 * Greatest removal along a slot, within the tolerances. Between knots the removal is convex along the straight line, so
 * it is greatest at an end or at a knot, and there on either side of the bend.
 */
function removalAcross(board: Board, line: FretLine): number {
  const { bass, treble } = endsOf(board, line);
  const run = treble.along - bass.along;
  const offsetAt = (along: number) => {
    const offset = bass.offset + ((treble.offset - bass.offset) * (along - bass.along)) / run;
    return run === 0 ? treble.offset : within(offset, bass.offset, treble.offset);
  };
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  // a knot under the slot counts even where rounding puts it just beside
  const slack = 1e-9 * board.length;
  const removals = piecesOf(board.deepest, from - slack, to + slack).flatMap((piece) =>
    [within(piece.from, from, to), within(piece.to, from, to)].map((along) =>
      removalOf(piece, along, offsetAt(along)),
    ),
  );
  return Math.max(...removals);
}
