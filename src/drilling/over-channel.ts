/**
 * How deep the floor may lie over the rod channel: every part of the bit that comes within the web of it leaves the web.
 * Lengths in mm.
 */
import type { RodChannel, Surfaces } from "../board/board.js";
import type { Bore } from "../board/markers.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import { type Footprint, polygonAround } from "../geometry/footprint.js";
import { clipped, gapBetween, type Polygon } from "../geometry/polygon.js";
import { leastOver, slopesOver } from "../geometry/track.js";
import { bodyBeyond, coneSlope, measureLead } from "./bits.js";
import {
  type Cell,
  coverGround,
  greatestDrop,
  splitLayout,
  spreadFootprint,
  wholeCell,
} from "./grounds.js";
import { placeFoot, type Touch } from "./touches.js";

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
    const ground = spreadFootprint(hole, layout.limit);
    return underHole(channel, spec, hole, wholeCell(hole, layout.limit), ground) - fixed;
  }
  const foot = placeFoot(touch, hole);
  // where the hole lies nearer the channel, the stop bears nearer the crest
  const cells = splitLayout(hole, layout.limit).map((cell) => {
    const under = underHole(channel, spec, hole, cell, coverGround(hole, cell, 0));
    return under - greatestDrop(old, cell, foot);
  });
  return Math.min(...cells) - fixed;
}

/** Deepest floor below the crest plane, for a centre in a cell and the ground that it then covers. */
function underHole(
  channel: RodChannel,
  spec: Spec,
  hole: Drilled,
  cell: Cell,
  ground: Footprint,
): number {
  const { web } = spec;
  if (hole.outline === undefined) return underDot(channel, spec, hole, cell);
  const within = stretchWithin(ground, channel.half + web);
  return within && isNear(channel, web, ground) ? leastWithin(channel, web, ...within) : Infinity;
}

function underDot(
  channel: RodChannel,
  { tolerance, web }: Spec,
  hole: Drilled,
  cell: Cell,
): number {
  const { width, group } = hole;
  const { bit } = group;
  const { layout, point } = tolerance;
  const distance = distanceTo(channel, web, hole, cell, layout.limit);
  const drop = bodyBeyond(bit, width, distance, point.limit);
  if (drop === undefined) return Infinity;
  const apart = besides(channel, web, cell);
  // half of the hole's chord that far from its axis
  const half = Math.sqrt(Math.max(0, (width / 2 - apart.aside) * (width / 2 + apart.aside)));
  const [from, to] = [cell.from - half, cell.to + half];
  const around = leastWithin(channel, web, from, to) - drop;
  const tip = leastWithin(channel, web, cell.from, cell.to) - measureLead(bit, width);
  if (bit.kind !== "twist") return Math.min(around, distance > 0 ? Infinity : tip);
  const steepest = Math.max(...slopesOver(channel.over, from, to).map(Math.abs));
  const slope = coneSlope(bit, width, point.limit);
  return Math.max(around, tip + riseOfCone(slope, steepest, apart));
}

/** Least wood over the channel on a stretch, as far as the channel's web goes. */
export function leastWithin(
  { over, from, to }: RodChannel,
  web: number,
  start: number,
  end: number,
): number {
  return leastOver(over, Math.max(start, from - web), Math.min(end, to + web));
}

/** The stretch on which a pocket may lie within `reach` of the centre line; undefined where it does nowhere. */
function stretchWithin(pocket: Footprint, reach: number): [number, number] | undefined {
  const turned = polygonAround(pocket).map(({ along, offset }) => ({
    along: offset,
    offset: along,
  }));
  const alongs = clipped(turned, -reach, reach).map(({ offset }) => offset);
  return alongs.length > 0 ? [Math.min(...alongs), Math.max(...alongs)] : undefined;
}

/** A pocket comes within the web of the channel. */
function isNear(channel: RodChannel, web: number, pocket: Footprint): boolean {
  return gapBetween(polygonAround(pocket), outlineChannel(channel)) <= web;
}

/** The channel seen from above. */
export function outlineChannel({ half, from, to }: RodChannel): Polygon {
  return [
    { along: from, offset: -half },
    { along: to, offset: -half },
    { along: to, offset: half },
    { along: from, offset: half },
  ];
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
