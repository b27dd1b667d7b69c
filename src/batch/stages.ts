/** The stages of a check, each kept for the values of a sweep that it hangs on. */
import {
  type Board,
  buildFrame,
  buildSurfaces,
  buildWood,
  type Frame,
  type Surfaces,
  type Wood,
} from "../board/board.js";
import { layOut, type Marker } from "../board/markers.js";
import type { Design } from "../design/design.js";
import { withNumber } from "../design/paths.js";
import type { Spec } from "../design/spec.js";
import { travelBeyond } from "../drilling/holes.js";
import { keysOf, type PlanKeys } from "../drilling/plan.js";
import { buildTouches, type Touch } from "../drilling/touches.js";
import { leadAndRise, leastDepth, surfaceBounds, woodBounds } from "../drilling/windows.js";
import { readSpec } from "../drilling/work.js";
import type { DesignIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { constantTrack } from "../geometry/track.js";
import { type Kept, type KeptRows, memoize, memoizeRows, type Shape } from "./grid.js";

/** A bound of every hole as a travel, and the first hole that governs; what is drilled has none. */
export interface Extreme {
  readonly each: readonly number[];
  readonly value: number;
  readonly hole: number;
}

/** The parts of which a row is made; undefined where the design cannot be read. */
export interface Stages {
  /** Least travels; the greatest governs. */
  readonly least: KeptRows<Extreme | undefined>;
  /** Most that the wood allows; the least governs. */
  readonly most: KeptRows<Extreme | undefined>;
  /** Most that flush dots allow; the least governs. */
  readonly flush: KeptRows<Extreme | undefined>;
  /** What tells the stops and tools of the holes apart. */
  readonly keys: Kept<PlanKeys | undefined>;
}

interface SweptAxis {
  readonly path: string;
  readonly values: readonly number[];
}

/** What of the work a number has a part in. */
type Part = "frame" | "wood" | "surfaces" | "groups" | "errors" | "none";

const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^(?:scale\.|board\.(?:length|width))/, "frame"],
  [/^(?:board\.(?:thickness|channel)|neck)/, "wood"],
  [/^(?:radius|existing|sanding|tolerance\.(?:radius|existing|sanding|crest))/, "surfaces"],
  [/^(?:markers|fill|bit|stop)/, "groups"],
  [/^(?:web|tolerance)/, "errors"],
];

function partOf(path: string): Part {
  return PARTS.find(([pattern]) => pattern.test(path))?.[1] ?? "none";
}

/** The stages of a design under some axes. */
export function buildStages(design: Design, axes: readonly SweptAxis[], shape: Shape): Stages {
  const on = (...parts: Part[]) =>
    axes.flatMap(({ path }, axis) => (parts.includes(partOf(path)) ? [axis] : []));
  const specOn = (chosen: readonly number[]) =>
    memoize(shape, chosen, (digits) => specWith(design, axes, chosen, digits));
  const frames = keepBuilt(shape, on("frame"), specOn(on("frame")), (spec, issues) =>
    buildFrame(spec, issues),
  );
  const boards = boardStages(shape, on, specOn, frames);
  const spec = specOn(on("groups", "errors"));
  const markers = memoize(shape, on("frame", "groups"), (digits) => {
    const frame = frames.at(digits);
    return frame && withoutIssues((issues) => layOut(frame, spec.at(digits).groups, issues));
  });
  const keys = memoize(shape, on("frame", "groups"), (digits) => {
    const laidOut = markers.at(digits);
    return laidOut && keysOf(laidOut);
  });
  const first = specWith(design, axes, [], []);
  const isOnTable = first.groups.some(({ stop }) => stop.from === "table");
  // from the table the crest's height is that of the wood; on an existing radius the stop bears on that
  const isCurved = first.existing !== undefined;
  const parts = { spec, markers, ...boards };
  const onSurface = on(
    "frame",
    "groups",
    "errors",
    "surfaces",
    ...(isOnTable ? (["wood"] as const) : []),
  );
  const onWood = on(
    "frame",
    "groups",
    "errors",
    "wood",
    ...(isCurved ? (["surfaces"] as const) : []),
  );
  const rows = (chosen: readonly number[], bound: BoundOf, sign: 1 | -1, takes: Takes) =>
    memoizeRows(shape, chosen, (digits) => extremeAt(parts, digits, bound, sign, takes));
  const surfaceTakes = { surfaces: true, wood: isOnTable };
  return {
    least: rows(onSurface, leastTravel, 1, surfaceTakes),
    most: rows(onWood, mostInWood, -1, { surfaces: isCurved, wood: true }),
    flush: rows(onSurface, mostFlush, -1, surfaceTakes),
    keys,
  };
}

/** Which parts of the board a bound takes; the others may be such as cannot be built. */
interface Takes {
  readonly surfaces: boolean;
  readonly wood: boolean;
}

type Built<T> = Kept<T | undefined>;

interface Parts {
  readonly spec: Kept<Spec>;
  readonly markers: Built<readonly Marker[]>;
  readonly frames: Built<Frame>;
  readonly woods: Built<Wood>;
  readonly surfaces: Built<Surfaces>;
}

function boardStages(
  shape: Shape,
  on: (...parts: Part[]) => number[],
  specOn: (chosen: readonly number[]) => Kept<Spec>,
  frames: Built<Frame>,
): Pick<Parts, "frames" | "woods" | "surfaces"> {
  const built = <T>(
    part: Part,
    build: (frame: Frame, spec: Spec, issues: DesignIssue[]) => T | undefined,
  ) => {
    // of the frame too: a channel that does not say where it ends runs as far as the board
    const spec = specOn(on("frame", part));
    return memoize(shape, on("frame", part), (digits) => {
      const frame = frames.at(digits);
      return frame && withoutIssues((issues) => build(frame, spec.at(digits), issues));
    });
  };
  return { frames, woods: built("wood", buildWood), surfaces: built("surfaces", buildSurfaces) };
}

function keepBuilt<T>(
  shape: Shape,
  axes: readonly number[],
  spec: Kept<Spec>,
  build: (spec: Spec, issues: DesignIssue[]) => T | undefined,
): Built<T> {
  return memoize(shape, axes, (digits) =>
    withoutIssues((issues) => build(spec.at(digits), issues)),
  );
}

/** What is built; undefined where an issue stands against it. */
function withoutIssues<T>(build: (issues: DesignIssue[]) => T | undefined): T | undefined {
  const issues: DesignIssue[] = [];
  const built = build(issues);
  return issues.length > 0 ? undefined : built;
}

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

/** A hole's bound as a travel. */
type BoundOf = (board: Board, spec: Spec, touch: Touch, marker: Marker) => number;

const leastTravel: BoundOf = (board, spec, touch, marker) => {
  const bounds = surfaceBounds(board, spec, touch, marker);
  return leastDepth(bounds, marker.group.fill.keep) + travelBeyond(bounds, marker.group);
};

const mostFlush: BoundOf = (board, spec, touch, marker) => {
  const bounds = surfaceBounds(board, spec, touch, marker);
  return bounds.flush + travelBeyond(bounds, marker.group);
};

const mostInWood: BoundOf = (board, spec, touch, marker) => {
  const { wood, overChannel } = woodBounds(board, spec, touch, marker);
  const max = Math.min(wood - spec.web, overChannel - spec.web);
  return max + travelBeyond(leadAndRise(board, touch, marker), marker.group);
};

/** A bound of every hole, and the hole that governs: with sign 1 the greatest does, with −1 the least. */
function extremeAt(
  { spec, markers, frames, woods, surfaces }: Parts,
  digits: readonly number[],
  boundOf: BoundOf,
  sign: 1 | -1,
  takes: Takes,
): Extreme | undefined {
  const frame = frames.at(digits);
  const laidOut = markers.at(digits);
  const wood = takes.wood ? woods.at(digits) : ANY_WOOD;
  const finish = takes.surfaces ? surfaces.at(digits) : ANY_SURFACES;
  if (!frame || !laidOut || !wood || !finish) return undefined;
  const board = { ...frame, ...finish, wood };
  const stated = spec.at(digits);
  const touches = withoutIssues((issues) => buildTouches(board, stated, issues));
  if (touches === undefined) return undefined;
  return governing(laidOut, sign, (marker) =>
    boundOf(board, stated, touches.get(marker.group.path.group) as Touch, marker),
  );
}

const ANY_WOOD: Wood = { thickness: constantTrack(1), whole: constantTrack(1), channel: undefined };
const FLAT = {
  sanded: { radius: constantTrack(Infinity), sanding: constantTrack(0) },
  old: undefined,
};
const ANY_SURFACES: Surfaces = { nominal: FLAT, deepest: FLAT, shallowest: FLAT, crest: 0 };

function governing(
  markers: readonly Marker[],
  sign: 1 | -1,
  boundOf: (marker: Marker) => number,
): Extreme | undefined {
  let hole = -1;
  const each: number[] = [];
  for (const [i, marker] of markers.entries()) {
    const bound = boundOf(marker);
    // a hole that the finished surface does not reach
    if (sign === 1 && !(bound < Infinity)) return undefined;
    each.push(bound);
    if (marker.group.drilled) continue;
    if (hole < 0 || sign * bound > sign * elementAt(each, hole)) hole = i;
  }
  return hole < 0 ? undefined : { each, value: elementAt(each, hole), hole };
}
