/** The stages of a check, each kept for the values of a sweep that it hangs on. */
import {
  buildFrame,
  buildSurfaces,
  buildThickness,
  type Frame,
  isBackward,
  type Surfaces,
} from "./board.js";
import type { Design } from "./design.js";
import type { DesignIssue } from "./errors.js";
import type { Footprint } from "./footprint.js";
import { type Kept, keep, type Shape } from "./grid.js";
import { layOut, type Marker } from "./markers.js";
import { type Part, partOf, withNumber } from "./paths.js";
import { readSpec } from "./read/design.js";
import { greatestRemoval } from "./removal.js";
import type { Spec } from "./spec.js";
import type { Track } from "./track.js";
import { deepestFlush, deepestForWeb, footprintOf, leastDepth, woodUnder } from "./windows.js";

/** A bound of every hole, the one that governs, and the first hole that sets it (−1 where there is no hole). */
export interface Extreme {
  readonly each: Float64Array;
  readonly value: number;
  readonly hole: number;
}

/** The three bounds of which a row is made; undefined where the design cannot be read. */
export interface Stages {
  /** Least depths; the greatest governs. */
  readonly least: Kept<Extreme | undefined>;
  /** Most that the wood allows; the least governs. */
  readonly most: Kept<Extreme | undefined>;
  /** Most that flush dots allow; the least governs. */
  readonly flush: Kept<Extreme | undefined>;
}

interface SweptAxis {
  readonly path: string;
  readonly values: readonly number[];
}

/** Holes laid out, with the ground that each may cover. */
interface Ground {
  readonly markers: readonly Marker[];
  readonly footprints: readonly Footprint[];
}

/** The stages of a design under some axes. */
export function stagesOf(design: Design, axes: readonly SweptAxis[], shape: Shape): Stages {
  const on = (...parts: Part[]) =>
    axes.flatMap(({ path }, axis) => (parts.includes(partOf(path) ?? "none") ? [axis] : []));
  const specFor = (...parts: Part[]) => {
    const chosen = on(...parts);
    return keep(shape, chosen, (digits) => specWith(design, axes, chosen, digits));
  };
  const frame = keepFrame(shape, on("frame"), specFor("frame"));
  const surfaces = keepBuilt(
    shape,
    on("frame", "surface"),
    frame,
    specFor("surface"),
    buildSurfaces,
  );
  const thickness = keepBuilt(
    shape,
    on("frame", "thickness"),
    frame,
    specFor("thickness"),
    buildThickness,
  );
  const ground = keepGround(
    shape,
    on("frame", "markers", "layout"),
    frame,
    specFor("markers"),
    specFor("layout"),
  );
  const stop = specFor("stop");
  const wood = specFor("wood", "stop", "layout", "frame");
  return {
    least: keepLeast(
      shape,
      on("frame", "markers", "layout", "surface", "stop"),
      ground,
      surfaces,
      stop,
    ),
    most: keepMost(
      shape,
      on("frame", "markers", "layout", "thickness", "wood", "stop"),
      ground,
      thickness,
      wood,
    ),
    flush: keepFlush(
      shape,
      on("frame", "markers", "layout", "surface", "stop"),
      ground,
      surfaces,
      stop,
    ),
  };
}

type Built<T> = Kept<T | undefined>;

function specWith(
  design: Design,
  axes: readonly SweptAxis[],
  chosen: readonly number[],
  digits: readonly number[],
): Spec | undefined {
  const stated = axes.reduce((now, { path, values }, axis) => {
    // axes of other parts stand at their first value: the design itself may leave them open
    const digit = chosen.includes(axis) ? (digits[axis] as number) : 0;
    return withNumber(now, path, values[digit] as number);
  }, design);
  const issues: DesignIssue[] = [];
  const spec = readSpec(stated, issues);
  // without an issue every field is there
  return issues.length > 0 ? undefined : (spec as Spec);
}

function keepFrame(shape: Shape, axes: readonly number[], spec: Built<Spec>): Built<Frame> {
  return keep(shape, axes, (digits) => {
    const issues: DesignIssue[] = [];
    const stated = spec.at(digits);
    const frame = stated && buildFrame(stated, issues);
    return issues.length > 0 ? undefined : frame;
  });
}

function keepBuilt<T>(
  shape: Shape,
  axes: readonly number[],
  frame: Built<Frame>,
  spec: Built<Spec>,
  build: (frame: Frame, spec: Spec, issues: DesignIssue[]) => T | undefined,
): Built<T> {
  return keep(shape, axes, (digits) => {
    const outline = frame.at(digits);
    const stated = spec.at(digits);
    const issues: DesignIssue[] = [];
    const built = outline && stated && build(outline, stated, issues);
    return issues.length > 0 ? undefined : built;
  });
}

function keepGround(
  shape: Shape,
  axes: readonly number[],
  frame: Built<Frame>,
  markerSpec: Built<Spec>,
  layoutSpec: Built<Spec>,
): Built<Ground> {
  return keep(shape, axes, (digits) => {
    const outline = frame.at(digits);
    const groups = markerSpec.at(digits)?.groups;
    const layout = layoutSpec.at(digits)?.tolerance.layout;
    if (outline === undefined || groups === undefined || layout === undefined) return undefined;
    const issues: DesignIssue[] = [];
    const markers = layOut(outline, groups, issues);
    const footprints = markers.map((marker) => footprintOf(marker, layout));
    return issues.length > 0 ? undefined : { markers, footprints };
  });
}

function keepLeast(
  shape: Shape,
  axes: readonly number[],
  ground: Built<Ground>,
  surfaces: Built<Surfaces>,
  spec: Built<Spec>,
): Built<Extreme> {
  return keep(shape, axes, (digits) => {
    const holes = ground.at(digits);
    const surface = surfaces.at(digits);
    const stop = spec.at(digits)?.tolerance.stop;
    if (holes === undefined || surface === undefined || stop === undefined) return undefined;
    const each = Float64Array.from(holes.markers, ({ group }, i) => {
      const removal = greatestRemoval(surface.deepest, holes.footprints[i] as Footprint);
      return leastDepth(removal, group.fill.keep, stop);
    });
    const governing = governingOf(each, (a, b) => a > b);
    // a hole that the finished surface does not reach cannot be read
    return governing.value < Infinity ? governing : undefined;
  });
}

function keepMost(
  shape: Shape,
  axes: readonly number[],
  ground: Built<Ground>,
  thickness: Built<Track>,
  spec: Built<Spec>,
): Built<Extreme> {
  return keep(shape, axes, (digits) => {
    const holes = ground.at(digits);
    const track = thickness.at(digits);
    const stated = spec.at(digits);
    if (holes === undefined || track === undefined || stated === undefined) return undefined;
    if (isBackward(stated.channel)) return undefined;
    const each = Float64Array.from(holes.markers, (marker, i) => {
      const footprint = holes.footprints[i] as Footprint;
      const wood = woodUnder({ thickness: track }, stated, marker, footprint);
      return deepestForWeb(wood, stated.web);
    });
    return governingOf(each, (a, b) => a < b);
  });
}

function keepFlush(
  shape: Shape,
  axes: readonly number[],
  ground: Built<Ground>,
  surfaces: Built<Surfaces>,
  spec: Built<Spec>,
): Built<Extreme> {
  return keep(shape, axes, (digits) => {
    const holes = ground.at(digits);
    const surface = surfaces.at(digits);
    const stated = spec.at(digits);
    if (holes === undefined || surface === undefined || stated === undefined) return undefined;
    const each = Float64Array.from(holes.markers, (marker, i) =>
      deepestFlush(surface, stated, marker, holes.footprints[i] as Footprint),
    );
    return governingOf(each, (a, b) => a < b);
  });
}

function governingOf(each: Float64Array, governs: (a: number, b: number) => boolean): Extreme {
  let hole = each.length > 0 ? 0 : -1;
  for (let i = 1; i < each.length; i++) {
    if (governs(each[i] as number, each[hole] as number)) hole = i;
  }
  return { each, value: each[hole] ?? Number.POSITIVE_INFINITY, hole };
}
