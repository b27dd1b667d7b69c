/** How deep the fret slots must and may be sawn from the flat. Lengths in mm. */
import type { Board } from "./board.js";
import { isOnBoard } from "./edges.js";
import type { FretLine } from "./fret-lines.js";
import { piecesOf, removalOf } from "./piece.js";
import { endsOf } from "./slot-ends.js";
import type { Spec } from "./spec.js";
import { leastOver } from "./track.js";

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
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  const least = slot.tang + slot.clearance + removalAcross(board, line);
  const thickness = leastOver(board.thickness, from, to) - tolerance.thickness;
  // the slot crosses the channel on the centre line, a fanned one somewhat before or after
  const overChannel = channel !== undefined && channel.from <= to && from <= channel.to;
  const most = thickness - slot.web - (overChannel ? channel.depth : 0);
  return { fret, least, most, mostBy: overChannel ? "channel" : "web" };
}

/**
 * Greatest removal along a slot, within the tolerances. Between knots the removal is convex along the straight line, so
 * it is greatest at an end or at a knot, and there on either side of the bend.
 */
function removalAcross(board: Board, line: FretLine): number {
  const { bass, treble } = endsOf(board, line, "whole");
  const run = treble.along - bass.along;
  const offsetAt = (along: number) =>
    run === 0
      ? treble.offset
      : bass.offset + ((treble.offset - bass.offset) * (along - bass.along)) / run;
  const from = Math.min(line.bass, line.treble);
  const to = Math.max(line.bass, line.treble);
  const removals = piecesOf(board.deepest, from, to).flatMap((piece) => [
    removalOf(piece, piece.from, offsetAt(piece.from)),
    removalOf(piece, piece.to, offsetAt(piece.to)),
  ]);
  return Math.max(...removals);
}
