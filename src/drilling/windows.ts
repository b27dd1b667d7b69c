/**
 * A hole's window: the depths of the bit's rim that keep the marker and the board. Depths in mm from the
 * flat top. All bounds hold in the worst case of the stated tolerances, over the whole disc.
 */

import type { Board } from "../board/board.js";
import type { DrilledHole } from "../board/markers.js";
import type { Spec } from "../design/spec.js";
import {
  discFootprint,
  type Footprint,
  outlineFootprint,
  polygonAround,
} from "../geometry/footprint.js";
import { clipped } from "../geometry/polygon.js";
import { greatestRemoval, leastRemoval } from "../geometry/removal.js";
import { leastOver, type Track } from "../geometry/track.js";
import { leadBeyond, leadOf } from "./bits.js";

/** Depths that suit, and the rule that governs each side. min > max: no depth suits. */
export interface Window {
  readonly min: number;
  readonly max: number;
  readonly minBy: "keep";
  readonly maxBy: "web" | "channel" | "flush";
}

/** The worst case of a hole, from which its window and what a planned depth leaves both follow. */
export interface Bounds {
  /** Greatest removal over the disc. */
  readonly removal: number;
  /** How far the bit's lowest part leads its rim. */
  readonly lead: number;
  /** Least board under the rim at depth 0, less what leads the rim, after the stop's error. */
  readonly board: number;
  /** The same over the rod channel; Infinity where no part of the bit lies over it. */
  readonly overChannel: number;
  /** Deepest rim at which a solid dot's top is not below the finished surface; Infinity for a poured fill. */
  readonly flush: number;
}

/** What a window rests on, for one marker. */
export function boundsOf(board: Board, spec: Spec, marker: DrilledHole): Bounds {
  const { tolerance } = spec;
  const footprint = footprintOf(marker, tolerance.layout);
  const under = woodUnder(board.thickness, spec, footprint);
  const lead = leadOf(marker.group.bit, marker.diameter);
  return {
    removal: greatestRemoval(board.deepest, footprint),
    lead,
    board: under - lead,
    overChannel: woodOverChannel(under, spec, marker, footprint),
    flush: deepestFlush(board, spec, marker, footprint),
  };
}

/** Least wood under the bit's rim at depth 0, after the stop's error. */
function woodUnder(thickness: Track, { tolerance }: Spec, { from, to }: Footprint): number {
  return leastOver(thickness, from, to) - tolerance.thickness - tolerance.stop;
}

/** Of so much wood, what is left over the rod channel; Infinity where no part of the bit lies over it. */
function woodOverChannel(
  under: number,
  { tolerance, channel }: Spec,
  marker: DrilledHole,
  footprint: Footprint,
): number {
  const lead = leadOverChannel(channel, marker, footprint, tolerance.layout);
  return channel === undefined || lead === undefined ? Infinity : under - channel.depth - lead;
}

/** Deepest rim that leaves the web, for a sweep: the same as from a hole's bounds, which it does not make. */
export function deepestOverWood(
  thickness: Track,
  spec: Spec,
  marker: DrilledHole,
  footprint: Footprint,
): number {
  const under = woodUnder(thickness, spec, footprint);
  const board = under - leadOf(marker.group.bit, marker.diameter);
  return deepestForWeb(board, woodOverChannel(under, spec, marker, footprint), spec.web);
}

/** Deepest rim at which a solid dot's top still ends flush; Infinity for a poured fill. */
export function deepestFlush(
  { shallowest }: Pick<Board, "shallowest">,
  { tolerance }: Spec,
  { group: { fill } }: DrilledHole,
  footprint: Footprint,
): number {
  return fill.kind === "solid"
    ? fill.thickness + leastRemoval(shallowest, footprint) - tolerance.stop
    : Infinity;
}

/** Least depth of the rim that keeps the marker. */
export function leastDepth(removal: number, keep: number, stop: number): number {
  return removal + keep + stop;
}

/** The window that follows: [removal + keep + stop error, the least of web, channel and flush]. */
export function windowOf(bounds: Bounds, keep: number, spec: Spec): Window {
  const min = leastDepth(bounds.removal, keep, spec.tolerance.stop);
  const web = bounds.board - spec.web;
  const channel = bounds.overChannel - spec.web;
  const max = Math.min(web, channel, bounds.flush);
  const maxBy = max === bounds.flush ? "flush" : max === channel ? "channel" : "web";
  return { min, max, minBy: "keep", maxBy };
}

/** Least wood under the bit's lowest part, with its rim at `depth`. */
export function webUnder(bounds: Bounds, depth: number): number {
  return Math.min(bounds.board, bounds.overChannel) - depth;
}

/** Deepest rim that leaves `web` under the bit's lowest part. */
export function deepestForWeb(board: number, overChannel: number, web: number): number {
  return Math.min(board, overChannel) - web;
}

/** Least marker left above the rim at `depth`, after the radius; negative where it is gone. */
export function markerLeft(bounds: Bounds, depth: number, spec: Spec): number {
  return depth - spec.tolerance.stop - bounds.removal;
}

/** The ground that a marker's hole may cover, off by as much as the layout may be. */
export function footprintOf(marker: DrilledHole, layout: number): Footprint {
  return marker.outline
    ? outlineFootprint(marker.outline, layout)
    : discFootprint(marker, marker.diameter / 2 + layout);
}

/** How far the part of the bit that may lie over the rod channel leads the rim; undefined: no part does. */
function leadOverChannel(
  channel: Spec["channel"],
  marker: DrilledHole,
  footprint: Footprint,
  layout: number,
): number | undefined {
  if (channel === undefined) return undefined;
  if (marker.outline) return liesOver(channel, footprint) ? 0 : undefined;
  const aside = Math.max(0, Math.abs(marker.offset) - channel.width / 2);
  const before = Math.max(0, channel.from - marker.along, marker.along - channel.to);
  // a layout error may carry the bit toward the channel by so much
  const distance = Math.max(0, Math.hypot(aside, before) - layout);
  return leadBeyond(marker.group.bit, marker.diameter, distance);
}

/** Some part of a footprint lies over the channel. */
function liesOver(channel: NonNullable<Spec["channel"]>, footprint: Footprint): boolean {
  const ground = clipped(polygonAround(footprint), channel.from, channel.to);
  const offsets = ground.map(({ offset }) => offset);
  const half = channel.width / 2;
  return Math.min(...offsets) < half && Math.max(...offsets) > -half;
}
