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
  const wood = keepSound(
    shape,
    on("wood", "stop", "layout", "frame"),
    specFor("wood", "stop", "layout", "frame"),
  );
  const onSurface = on("frame", "markers", "layout", "surface", "stop");
  const onWood = on("frame", "markers", "layout", "thickness", "wood", "stop");
  const fromSurface = { ground, source: surfaces, spec: stop };
  const fromWood = { ground, source: thickness, spec: wood };
  return {
    least: keepExtreme(shape, onSurface, fromSurface, leastDepthOf, isGreater),
    most: keepExtreme(shape, onWood, fromWood, mostOverWood, isLess),
    flush: keepExtreme(shape, onSurface, fromSurface, mostForFlush, isLess),
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

/** A specification whose rod channel ends after it begins. */
function keepSound(shape: Shape, axes: readonly number[], spec: Built<Spec>): Built<Spec> {
  return keep(shape, axes, (digits) => {
    const stated = spec.at(digits);
    return isBackward(stated?.channel) ? undefined : stated;
  });
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

/** What a hole's bounds rest on; a stage asks only for its own part. */
interface HoleAt<Source> {
  readonly marker: Marker;
  readonly footprint: Footprint;
  readonly source: Source;
  readonly spec: Spec;
}

/** A bound of every hole, from one source beside the ground, and the hole that governs. */
function keepExtreme<Source>(
  shape: Shape,
  axes: readonly number[],
  from: { ground: Built<Ground>; source: Built<Source>; spec: Built<Spec> },
  boundOf: (hole: HoleAt<Source>) => number,
  governs: (a: number, b: number) => boolean,
): Built<Extreme> {
  return keep(shape, axes, (digits) => {
    const ground = from.ground.at(digits);
    const source = from.source.at(digits);
    const spec = from.spec.at(digits);
    if (ground === undefined || source === undefined || spec === undefined) return undefined;
    const each = Float64Array.from(ground.markers, (marker, i) => {
      const footprint = ground.footprints[i] as Footprint;
      return boundOf({ marker, footprint, source, spec });
    });
    const extreme = governingOf(each, governs);
    // a hole that the finished surface does not reach cannot be read
    return governs === isGreater && !(extreme.value < Infinity) ? undefined : extreme;
  });
}

function leastDepthOf({ marker, footprint, source, spec }: HoleAt<Surfaces>): number {
  const removal = greatestRemoval(source.deepest, footprint);
  return leastDepth(removal, marker.group.fill.keep, spec.tolerance.stop);
}

function mostOverWood({ marker, footprint, source, spec }: HoleAt<Track>): number {
  return deepestForWeb(woodUnder({ thickness: source }, spec, marker, footprint), spec.web);
}

function mostForFlush({ marker, footprint, source, spec }: HoleAt<Surfaces>): number {
  return deepestFlush(source, spec, marker, footprint);
}

const isGreater = (a: number, b: number) => a > b;
const isLess = (a: number, b: number) => a < b;

function governingOf(each: Float64Array, governs: (a: number, b: number) => boolean): Extreme {
  let hole = each.length > 0 ? 0 : -1;
  for (let i = 1; i < each.length; i++) {
    if (governs(each[i] as number, each[hole] as number)) hole = i;
  }
  return { each, value: each[hole] ?? Number.POSITIVE_INFINITY, hole };
}
