/**
 * A hole's window: the depths of its floor that keep the marker and the board. Depths in mm below the top at the hole's
 * centre. All bounds hold in the worst case of the stated tolerances, over the whole hole.
 */
import type { Board, Surfaces } from "../board/board.js";
import type { Bore } from "../board/markers.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import type { Footprint } from "../geometry/footprint.js";
import { greatestRemoval, leastRemoval } from "../geometry/removal.js";
import type { Surface } from "../geometry/surface.js";
import { leastOver, slopesOver } from "../geometry/track.js";
import { coneSlope, measureLead, measureSpur, pointError } from "./bits.js";
import {
  coverGround,
  farGround,
  greatestDrop,
  leastDrop,
  nearGround,
  splitLayout,
  spreadFootprint,
  wholeCell,
} from "./grounds.js";
import { deepestOverChannel } from "./over-channel.js";
import { measureRise, placeFoot, type Touch } from "./touches.js";

/** Depths that suit, and the rule that governs each side. min > max: no depth suits. */
export interface DepthWindow {
  /** Least depth of the floor, mm. */
  readonly min: number;
  /** Greatest depth of the floor, mm. */
  readonly max: number;
  /** The rule that sets the least: so much of the marker is kept. */
  readonly minBy: "keep";
  /** The rule that sets the greatest: the web under the bit, the web over the rod channel, or a flush dot. */
  readonly maxBy: "web" | "channel" | "flush";
}

/** A hole of a group: what the window hangs on. */
export type GroupBore = Bore & { readonly group: Pick<GroupSpec, "fill" | "bit" | "drilled"> };

/** The worst case of a hole, from which its window and what a depth leaves both follow. */
export interface Bounds {
  /** Greatest of F⁺ − P′: how far below the top at the hole the finished surface may come. */
  readonly removal: number;
  /** The tip's error: stop and seat. */
  readonly error: number;
  /** How much shallower the floor may be than meant: the tip's error, and the point's. */
  readonly shallower: number;
  /** How far the tip lies below the floor. */
  readonly lead: number;
  /** How much deeper below the top the tip lies than the travel says. */
  readonly rise: number;
  /** Deepest floor that leaves any wood under the bit. */
  readonly wood: number;
  /** The same over the rod channel; Infinity where no part of the bit lies over it. */
  readonly overChannel: number;
  /** Deepest floor at which a solid dot's top does not end below the finished surface; Infinity for a poured fill. */
  readonly flush: number;
}

/** What of the bounds hangs on the surfaces. */
export type SurfaceBounds = Omit<Bounds, "wood" | "overChannel">;
/** What of the bounds hangs on the wood. */
export type WoodBounds = Pick<Bounds, "wood" | "overChannel">;

/** What a window rests on, for one hole. */
export function findBounds(board: Board, spec: Spec, touch: Touch, hole: GroupBore): Bounds {
  const { removal, error, shallower, lead, rise, flush } = surfaceBounds(board, spec, touch, hole);
  const { wood, overChannel } = woodBounds(board, spec, touch, hole);
  return { removal, error, shallower, lead, rise, wood, overChannel, flush };
}

/** The bounds by the finished surface: what the radius removes, and where a dot's top still ends flush. */
export function surfaceBounds(
  board: Surfaces,
  spec: Spec,
  touch: Touch,
  hole: GroupBore,
): SurfaceBounds {
  const { drilled } = hole.group;
  const { lead, rise } = leadAndRise(board, touch, hole);
  const { tolerance } = spec;
  // of what is drilled the depth is measured: its touch has no error
  const { error } = touch;
  return {
    removal: greatestAbove(board, spec, touch, hole) + rise,
    error,
    shallower: drilled ? 0 : error + pointError(lead, tolerance.point.limit),
    lead,
    rise,
    flush: drilled ? Infinity : deepestFlush(board, spec, touch, hole) + rise,
  };
}

/** What a hole's least depth hangs on besides the sanded surface, on a blank and from the wood. */
export interface BlankHole {
  /** Over this ground the removal counts. */
  readonly ground: Footprint;
  readonly shallower: number;
  readonly lead: number;
}

/** The hole on a blank, drilled from the wood: `surfaceBounds` adds the greatest removal over its ground. */
export function blankHole(spec: Spec, hole: GroupBore): BlankHole {
  const { drilled, bit } = hole.group;
  const { stop, point, layout, crest } = spec.tolerance;
  const lead = drilled || hole.outline ? 0 : measureLead(bit, hole.width);
  return {
    ground: farGround(hole, layout.limit, crest.limit),
    shallower: drilled ? 0 : stop.limit + pointError(lead, point.limit),
    lead,
  };
}

/** How far the tip lies below the floor, and how much deeper below the top than the travel says. */
export function leadAndRise(
  { nominal }: Pick<Surfaces, "nominal">,
  touch: Touch,
  hole: GroupBore,
): Pick<Bounds, "lead" | "rise"> {
  const { bit, drilled } = hole.group;
  const lead = drilled || hole.outline ? 0 : measureLead(bit, hole.width);
  return { lead, rise: measureRise(touch, nominal.old, hole) };
}

/** The bounds by the wood under the bit. */
export function woodBounds(board: Surfaces, spec: Spec, touch: Touch, hole: GroupBore): WoodBounds {
  const { rise } = leadAndRise(board, touch, hole);
  return {
    wood: deepestInWood(board, spec, touch, hole) + rise,
    overChannel: hole.group.drilled
      ? Infinity
      : deepestOverChannel(board, spec, touch, hole) + rise,
  };
}

/** The window that follows: [removal + keep + errors, the least of web, channel and flush]. */
export function closeWindow(
  bounds: Bounds,
  { fill, drilled }: GroupBore["group"],
  web: number,
): DepthWindow {
  const { wood, overChannel, flush } = bounds;
  const min = leastDepth(bounds.removal, fill.keep, bounds.shallower);
  const left = drilled ? 0 : web;
  const max = Math.min(wood - left, overChannel - left, flush);
  const maxBy = max === flush ? "flush" : max === overChannel - left ? "channel" : "web";
  return { min, max, minBy: "keep", maxBy };
}

/** Least depth of the floor that keeps the marker. */
export function leastDepth(removal: number, keep: number, shallower: number): number {
  return removal + keep + shallower;
}

/** Least wood under every part of the bit, with the floor at `depth`. */
export function woodLeft({ wood, overChannel }: Bounds, depth: number): number {
  return Math.min(wood, overChannel) - depth;
}

/** Least marker left above the floor at `depth`, after the radius; negative where it is gone. */
export function markerLeft({ removal, shallower }: Bounds, depth: number): number {
  return depth - shallower - removal;
}

/** Greatest over c′ of [max over the hole of F⁺ − P′], less the rise. */
function greatestAbove(board: Surfaces, spec: Spec, touch: Touch, hole: GroupBore): number {
  const { sanded, old } = touch.deepest;
  const layout = spec.tolerance.layout.limit;
  const { crest } = board;
  if (old === undefined) return greatestRemoval(sanded, farGround(hole, layout, crest));
  if (touch.bears === "table") {
    return Math.max(
      greatestRemoval(sanded, farGround(hole, layout, crest)),
      greatestRemoval(old, farGround(hole, layout, 0)),
    );
  }
  const foot = placeFoot(touch, hole);
  const [steeper, flatter] = [old, touch.shallowest.old as Surface];
  // the new radius is off from the old one, which is one and the same under the hole and under the foot
  const cells = splitLayout(hole, layout).map((cell) => {
    const overNew = greatestRemoval(sanded, coverGround(hole, cell, crest));
    const overOld = greatestRemoval(steeper, coverGround(hole, cell, 0));
    return Math.max(
      overNew - leastDrop(flatter, cell, foot),
      overOld - leastDrop(steeper, cell, foot),
    );
  });
  return Math.max(...cells);
}

/** Deepest floor at which a solid dot's top still ends flush: dot + least over c′ of [min over the hole of F⁻ − P′]. */
function deepestFlush(board: Surfaces, spec: Spec, touch: Touch, hole: GroupBore): number {
  const { fill, bit } = hole.group;
  if (fill.kind === "poured") return Infinity;
  const { tolerance } = spec;
  const lead = hole.outline ? 0 : measureLead(bit, hole.width);
  const off = touch.error + pointError(lead, tolerance.point.limit);
  return fill.thickness - tolerance.fill.limit + leastAbove(board, spec, touch, hole) - off;
}

function leastAbove(board: Surfaces, spec: Spec, touch: Touch, hole: GroupBore): number {
  const { sanded, old } = touch.shallowest;
  const layout = spec.tolerance.layout.limit;
  const { crest } = board;
  if (old === undefined) return leastRemoval(sanded, nearGround(hole, layout, crest));
  if (touch.bears === "table") {
    return Math.max(
      leastRemoval(sanded, nearGround(hole, layout, crest)),
      leastRemoval(old, nearGround(hole, layout, 0)),
    );
  }
  const foot = placeFoot(touch, hole);
  const [steeper, flatter] = [touch.deepest.old as Surface, old];
  const cells = splitLayout(hole, layout).map((cell) => {
    const overNew = leastRemoval(sanded, coverGround(hole, cell, crest));
    const ground = coverGround(hole, cell, 0);
    // nearer the crest than the foot bears, the old radius falls less where it is flatter
    const [overFlat, overSteep] = [flatter, steeper].map(
      (each) => leastRemoval(each, ground) - greatestDrop(each, cell, foot),
    ) as [number, number];
    return Math.max(overNew - greatestDrop(steeper, cell, foot), Math.min(overFlat, overSteep));
  });
  return Math.min(...cells);
}

/** Deepest floor that leaves any wood: under the tip at the axis, and under floor and spurs over the whole hole. */
function deepestInWood(board: Surfaces, spec: Spec, touch: Touch, hole: GroupBore): number {
  const { tolerance } = spec;
  const { bit, drilled } = hole.group;
  const layout = tolerance.layout.limit;
  const { from, to } = spreadFootprint(hole, layout);
  const bearing = bearingDrop(board, touch, hole, layout);
  if (drilled) return leastOver(touch.whole, from, to) - bearing - tolerance.thickness.limit;
  const lead = hole.outline ? 0 : measureLead(bit, hole.width);
  const axis = leastOver(touch.whole, hole.along - layout, hole.along + layout) - lead;
  const off = pointError(lead, tolerance.point.limit);
  // wood that falls away faster than the bit's cone rises is thinnest beside the axis
  const isBlunt =
    bit.kind === "twist" &&
    !(
      Math.max(...slopesOver(touch.whole, from, to).map(Math.abs)) < coneSlope(bit, hole.width, off)
    );
  const around =
    leastOver(touch.whole, from, to) - (isBlunt ? Math.max(lead, off) : measureSpur(bit) + off);
  return Math.min(axis, around) - bearing - tolerance.thickness.limit - touch.error;
}

/** Greatest that the bearing of the stop may lie below the crest plane, within the layout error. */
function bearingDrop(board: Surfaces, touch: Touch, hole: GroupBore, layout: number): number {
  const { old } = board.deepest;
  if (old === undefined || touch.bears === "table") return 0;
  return greatestDrop(old, wholeCell(hole, layout), placeFoot(touch, hole));
}
