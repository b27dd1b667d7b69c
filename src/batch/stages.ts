/** The stages of a check, each kept for the values of a sweep that it hangs on. */
import {
  buildFrame,
  buildSurfaces,
  buildThickness,
  type Frame,
  isBackward,
  type Surfaces,
} from "../board/board.js";
import { layOut, type Marker } from "../board/markers.js";
import type { Design } from "../design/design.js";
import { type Part, partOf, withNumber } from "../design/paths.js";
import { readSpec } from "../design/read-design.js";
import type { Spec } from "../design/spec.js";
import { deepestFlush, deepestOverWood, footprintOf, leastDepth } from "../drilling/windows.js";
import type { DesignIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Footprint } from "../geometry/footprint.js";
import { greatestRemoval } from "../geometry/removal.js";
import { type Kept, type KeptRows, keep, keepRows, type Shape } from "./grid.js";

/** A bound of every hole, the one that governs, and the first hole that sets it. */
export interface Extreme {
  readonly each: readonly number[];
  readonly value: number;
  readonly hole: number;
}

/** The three bounds of which a row is made; undefined where the design cannot be read. */
export interface Stages {
  /** Least depths; the greatest governs. */
  readonly least: Rows;
  /** Most that the wood allows; the least governs. */
  readonly most: Rows;
  /** Most that flush dots allow; the least governs. */
  readonly flush: Rows;
}

type Rows = KeptRows<Extreme | undefined>;

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
    axes.flatMap(({ path }, axis) => (parts.includes(partOf(path) as Part) ? [axis] : []));
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
    least: keepExtreme(shape, onSurface, fromSurface, leastDepthOf, 1),
    most: keepExtreme(shape, onWood, fromWood, deepestOverWood, -1),
    flush: keepExtreme(shape, onSurface, fromSurface, deepestFlush, -1),
  };
}

type Built<T> = Kept<T | undefined>;

/** Each value can be read, as a sweep's axes are, and so can all of them together. */
function specWith(
  design: Design,
  axes: readonly SweptAxis[],
  chosen: readonly number[],
  digits: readonly number[],
): Spec {
  const stated = axes.reduce((now, { path, values }, axis) => {
    // axes of other parts stand at their first value: the design itself may leave them open
    const digit = chosen.includes(axis) ? elementAt(digits, axis) : 0;
    return withNumber(now, path, elementAt(values, digit));
  }, design);
  return readSpec(stated, []) as Spec;
}

/** A specification whose rod channel ends after it begins. */
function keepSound(shape: Shape, axes: readonly number[], spec: Kept<Spec>): Built<Spec> {
  return keep(shape, axes, (digits) => {
    const stated = spec.at(digits);
    return isBackward(stated.channel) ? undefined : stated;
  });
}

function keepFrame(shape: Shape, axes: readonly number[], spec: Kept<Spec>): Built<Frame> {
  return keep(shape, axes, (digits) => buildFrame(spec.at(digits), []));
}

function keepBuilt<T>(
  shape: Shape,
  axes: readonly number[],
  frame: Built<Frame>,
  spec: Kept<Spec>,
  build: (frame: Frame, spec: Spec, issues: DesignIssue[]) => T | undefined,
): Built<T> {
  return keep(shape, axes, (digits) => {
    const outline = frame.at(digits);
    const issues: DesignIssue[] = [];
    const built = outline && build(outline, spec.at(digits), issues);
    return issues.length > 0 ? undefined : built;
  });
}

function keepGround(
  shape: Shape,
  axes: readonly number[],
  frame: Built<Frame>,
  markerSpec: Kept<Spec>,
  layoutSpec: Kept<Spec>,
): Built<Ground> {
  return keep(shape, axes, (digits) => {
    const outline = frame.at(digits);
    if (outline === undefined) return undefined;
    const { layout } = layoutSpec.at(digits).tolerance;
    const issues: DesignIssue[] = [];
    const markers = layOut(outline, markerSpec.at(digits).groups, issues);
    const footprints = markers.map((marker) => footprintOf(marker, layout));
    return issues.length > 0 ? undefined : { markers, footprints };
  });
}

/** A hole's bound from one source beside the ground; a stage asks only for its own part. */
type BoundOf<Source> = (source: Source, spec: Spec, marker: Marker, footprint: Footprint) => number;

/** A bound of every hole, and the hole that governs: with sign 1 the greatest does, with −1 the least. */
function keepExtreme<Source>(
  shape: Shape,
  axes: readonly number[],
  from: { ground: Built<Ground>; source: Built<Source>; spec: Built<Spec> },
  boundOf: BoundOf<Source>,
  sign: 1 | -1,
): Rows {
  return keepRows(shape, axes, (digits) => {
    const ground = from.ground.at(digits);
    const source = from.source.at(digits);
    const spec = from.spec.at(digits);
    if (ground === undefined || source === undefined || spec === undefined) return undefined;
    const each: number[] = [];
    for (let i = 0; i < ground.markers.length; i++) {
      each.push(
        boundOf(source, spec, elementAt(ground.markers, i), elementAt(ground.footprints, i)),
      );
    }
    const extreme = governingOf(each, sign);
    // no hole, or one that the finished surface does not reach
    return sign === 1 && !(extreme.value < Infinity) ? undefined : extreme;
  });
}

function leastDepthOf(source: Surfaces, spec: Spec, marker: Marker, footprint: Footprint): number {
  const removal = greatestRemoval(source.deepest, footprint);
  return leastDepth(removal, marker.group.fill.keep, spec.tolerance.stop);
}

function governingOf(each: readonly number[], sign: 1 | -1): Extreme {
  let hole = 0;
  for (let i = 1; i < each.length; i++) {
    if (sign * elementAt(each, i) > sign * elementAt(each, hole)) hole = i;
  }
  return { each, value: each[hole] ?? Number.POSITIVE_INFINITY, hole };
}
