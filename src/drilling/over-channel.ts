/**
 * How deep the floor may lie over the rod channel: every part of the bit that comes within the web of it leaves the web.
 * Lengths in mm.
 */
import type { RodChannel, Surfaces } from "../board/board.js";
import type { Bore } from "../board/markers.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import { type Footprint, polygonAround } from "../geometry/footprint.js";
import { clipped, gapBetween } from "../geometry/polygon.js";
import { leastOver, slopesOver } from "../geometry/track.js";
import { bodyBeyond, coneSlope, leadOf } from "./bits.js";
import { type Cell, cellsOf, footprintOf, greatestDrop, groundOf, wholeCell } from "./grounds.js";
import { footOf, type Touch } from "./touches.js";

/** A hole and the bit that drills it. */
type Drilled = Bore & { readonly group: Pick<GroupSpec, "bit" | "drilled"> };

/**
 * Deepest floor that leaves any wood over the rod channel and within the web of it on every side; each part of the bit
 * that lies there counts at its own height. Infinity where none does.
 */
export function deepestOverChannel(
  board: Surfaces,
  spec: Spec,
  touch: Touch,
  hole: Drilled,
): number {
  const { channel, bears } = touch;
  const { layout, thickness } = spec.tolerance;
  if (channel === undefined) return Infinity;
  const fixed = thickness.limit + touch.error;
  const { old } = board.deepest;
  if (old === undefined || bears === "table") {
    const cell = wholeCell(hole, layout.limit);
    return underChannel(channel, spec, hole, cell, footprintOf(hole, layout.limit)) - fixed;
  }
  const foot = footOf(touch, hole);
  // where the hole lies nearer the channel, the stop bears nearer the crest
  const cells = cellsOf(hole, layout.limit).map((cell) => {
    const under = underChannel(channel, spec, hole, cell, groundOf(hole, cell, 0));
    return under - greatestDrop(old, cell, foot);
  });
  return Math.min(...cells) - fixed;
}

/** Deepest floor below the crest plane, for a centre in a cell and the ground that it then covers. */
function underChannel(
  channel: RodChannel,
  { tolerance, web }: Spec,
  hole: Drilled,
  cell: Cell,
  ground: Footprint,
): number {
  const over = (from: number, to: number) =>
    leastOver(channel.over, Math.max(from, channel.from - web), Math.min(to, channel.to + web));
  const within = stretchWithin(ground, channel.half + web);
  if (within === undefined) return Infinity;
  const around = over(...within);
  if (hole.outline) return isNear(channel, web, ground) ? around : Infinity;
  const { bit } = hole.group;
  const { layout, point } = tolerance;
  const distance = distanceTo(channel, web, hole, cell, layout.limit);
  const drop = bodyBeyond(bit, hole.width, distance, point.limit);
  if (drop === undefined) return Infinity;
  const tip = over(cell.from, cell.to) - leadOf(bit, hole.width);
  if (bit.kind !== "twist") return Math.min(around - drop, distance > 0 ? Infinity : tip);
  const steepest = Math.max(...slopesOver(channel.over, ...within).map(Math.abs));
  const slope = coneSlope(bit, hole.width, point.limit);
  return Math.max(around - drop, tip + riseOfCone(slope, steepest, besides(channel, web, cell)));
}

/** The stretch on which ground may lie within `reach` of the centre line; undefined where it does nowhere. */
function stretchWithin(ground: Footprint, reach: number): [number, number] | undefined {
  const turned = polygonAround(ground).map(({ along, offset }) => ({
    along: offset,
    offset: along,
  }));
  const alongs = clipped(turned, -reach, reach).map(({ offset }) => offset);
  return alongs.length > 0 ? [Math.min(...alongs), Math.max(...alongs)] : undefined;
}

/** A pocket comes within the web of the channel. */
function isNear({ half, from, to }: RodChannel, web: number, pocket: Footprint): boolean {
  const rectangle = [
    { along: from, offset: -half },
    { along: to, offset: -half },
    { along: to, offset: half },
    { along: from, offset: half },
  ];
  return gapBetween(polygonAround(pocket), rectangle) <= web;
}

/** From a dot's axis to what lies within the web of the channel, at the least. */
function distanceTo(
  channel: RodChannel,
  web: number,
  { along, offset }: Bore,
  cell: Cell,
  layout: number,
): number {
  const apart = (place: Cell) => {
    const { aside, before } = besides(channel, 0, place);
    return Math.hypot(aside, before);
  };
  // the cell is a box about places that lie on a disc
  const marked = { from: along, to: along, left: offset, right: offset };
  return Math.max(0, apart(cell) - web, apart(marked) - layout - web);
}

/** From an axis in a cell to so far from the channel's side, and from its end. */
function besides({ half, from, to }: RodChannel, reach: number, cell: Cell) {
  const near = Math.max(0, cell.left, -cell.right);
  return {
    aside: Math.max(0, near - half - reach),
    before: Math.max(0, from - reach - cell.to, cell.from - reach - to),
  };
}

/**
 * How far a cone of slope g lies above its tip at the least, against wood that falls away by k per mm from where it is
 * reached: least of g·ρ − k·(σ − before), ρ = hypot(aside, σ), σ ≥ before. −Infinity where the wood falls as fast.
 */
function riseOfCone(
  g: number,
  k: number,
  { aside, before }: { readonly aside: number; readonly before: number },
): number {
  if (!(k < g)) return -Infinity;
  const nearest = Math.hypot(aside, before);
  if (k * nearest <= g * before) return g * nearest;
  return aside * Math.sqrt((g - k) * (g + k)) + k * before;
}
