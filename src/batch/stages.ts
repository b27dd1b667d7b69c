/** The stages of a check, each kept for the values of a sweep that it hangs on. */
import {
  assembleBoard,
  type Board,
  buildFrame,
  buildSurfaces,
  buildWood,
  type Frame,
  type RadiusSetter,
  radiusSetter,
  type Surfaces,
  type Wood,
} from "../board/board.js";
import { layOut, type Marker } from "../board/markers.js";
import type { Design, Station } from "../design/design.js";
import { withNumber } from "../design/paths.js";
import type { Spec } from "../design/spec.js";
import { travelBeyond } from "../drilling/holes.js";
import { makeKeys, type PlanKeys } from "../drilling/plan.js";
import { buildTouches, type Touch } from "../drilling/touches.js";
import {
  blankHole,
  leadAndRise,
  leastDepth,
  surfaceBounds,
  woodBounds,
} from "../drilling/windows.js";
import { readSpec } from "../drilling/work.js";
import type { DesignIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Footprint } from "../geometry/footprint.js";
import { EXCESS, greatestUnderTangent } from "../geometry/greatest-removal.js";
import { greatestRemoval } from "../geometry/removal.js";
import type { Surface } from "../geometry/surface.js";
import { constantTrack, leastOver, solePiece, valueOnPiece } from "../geometry/track.js";
import { type Kept, type KeptRows, memoize, memoizeRows, type Shape } from "./grid.js";

/** A bound of the holes as a travel, and the first hole that governs; what is drilled governs nothing. */
export interface Extreme {
  /** Each hole's bound. */
  readonly each: number[];
  /** False: of some holes it was seen that they do not govern, and their bounds are not worked out. */
  isWhole: boolean;
  value: number;
  /** −1 where no hole does, or the design cannot be read. */
  hole: number;
}

/** The parts of which a row is made. */
export interface Stages {
  /** Least travels; the greatest governs. */
  readonly least: KeptRows<Extreme>;
  /** Works out the least travels that were left out. */
  readonly complete: (digits: readonly number[], last: number, least: Extreme) => void;
  /** Most that the wood allows; the least governs. */
  readonly most: KeptRows<Extreme>;
  /** Most that flush dots allow; the least governs. */
  readonly flush: KeptRows<Extreme>;
  /** What tells the stops and tools of the holes apart. */
  readonly keys: KeptRows<PlanKeys | undefined>;
}

interface SweptAxis {
  readonly path: string;
  readonly values: readonly number[];
}

/** What of the work a number has a part in. */
type Part = "frame" | "wood" | "surfaces" | "stops" | "groups" | "errors" | "none";

const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^(?:scale\.|board\.(?:length|width))/, "frame"],
  [/^(?:board\.(?:thickness|channel)|neck)/, "wood"],
  [/^(?:radius|existing|sanding|tolerance\.(?:radius|existing|sanding|crest))/, "surfaces"],
  [/^(?:markers\.\d+\.)?stop\b/, "stops"],
  [/^(?:markers|fill|bit)/, "groups"],
  [/^(?:web|tolerance)/, "errors"],
];

function choosePart(path: string): Part {
  return PARTS.find(([pattern]) => pattern.test(path))?.[1] ?? "none";
}

/** The stages of a design under some axes. */
export function buildStages(design: Design, axes: readonly SweptAxis[], shape: Shape): Stages {
  const isOn = (parts: readonly Part[], part: Part) =>
    // a group is what it is stopped by, too
    parts.includes(part) || (part === "stops" && parts.includes("groups"));
  const on = (...parts: Part[]) =>
    axes.flatMap(({ path }, axis) => (isOn(parts, choosePart(path)) ? [axis] : []));
  const read = specReader(design, axes);
  const specOn = (chosen: readonly number[]) =>
    memoize(shape, chosen, (digits) => read(chosen, digits));
  const frames = keepBuilt(shape, on("frame"), specOn(on("frame")), (spec, issues) =>
    buildFrame(spec, issues),
  );
  const boards = boardStages(shape, on, specOn, frames);
  const spec = specOn(on("groups", "errors"));
  const markers = memoize(shape, on("frame", "groups"), (digits) => {
    const frame = frames.at(digits);
    return frame && withoutIssues((issues) => layOut(frame, spec.at(digits).groups, issues));
  });
  const keys = memoizeRows(shape, on("frame", "groups"), (digits) => {
    const laidOut = markers.at(digits);
    return laidOut && makeKeys(laidOut);
  });
  const first = read([], []);
  const { existing, groups } = first;
  const isOnTable = groups.some(({ stop, drilled }) => stop.from === "table" && !drilled);
  const isSolid = groups.some(({ fill, drilled }) => fill.kind === "solid" && !drilled);
  // from the table the crest's height is that of the wood; on an existing radius the stop bears on that
  const isCurved = existing !== undefined;
  const parts = { spec, markers, ...boards };
  const always = on("frame", "groups", "errors");
  const onSurface = [...always, ...on("surfaces"), ...(isOnTable ? on("wood") : [])];
  const onWood = [...always, ...on("wood"), ...(isCurved ? on("surfaces") : [])];
  const rows = (chosen: readonly number[], bound: BoundOf, sign: 1 | -1, takes: Takes) => {
    const boards = memoize(shape, on("frame", ...takes), (digits) => boardAt(parts, digits, takes));
    const touches = memoize(shape, on("frame", "stops", "errors", ...takes), (digits) => {
      const board = boards.at(digits);
      return board && withoutIssues((issues) => buildTouches(board, spec.at(digits), issues));
    });
    const grounds = { spec, markers, boards, touches };
    return memoizeRows<Extreme>(shape, chosen, (digits, old) =>
      extremeAt(grounds, digits, bound, sign, old),
    );
  };
  const surfaceTakes: Takes = isOnTable ? ["surfaces", "wood"] : ["surfaces"];
  const leastOn =
    isOnTable || isCurved ? undefined : radiusSweep(parts, axes, shape, on("surfaces"), first);
  return {
    least: leastOn
      ? memoizeRows(shape, onSurface, (digits, old) => leastOn(digits, old, false))
      : rows(onSurface, leastTravel, 1, surfaceTakes),
    complete: (digits, last, least) => {
      if (!least.isWhole) leastOn?.([...digits.slice(0, -1), last], least, true);
    },
    most: rows(onWood, mostInWood, -1, isCurved ? ["surfaces", "wood"] : ["wood"]),
    flush: isSolid ? rows(onSurface, mostFlush, -1, surfaceTakes) : rows(always, anyDepth, -1, []),
    keys,
  };
}

/**
 * Least travels on a blank and from the wood, where of the surfaces the radius alone is swept: it is set anew in place
 * for each row. Undefined for other sweeps.
 */
function radiusSweep(
  { spec, markers, frames }: Parts,
  axes: readonly SweptAxis[],
  shape: Shape,
  swept: readonly number[],
  first: Spec,
): LeastTravels | undefined {
  const { radius } = first;
  const isWhole = typeof radius === "number";
  const stations: Station[] = isWhole ? ["nut"] : (Object.keys(radius) as Station[]);
  const paths = isWhole ? ["radius"] : stations.map((station) => `radius.${station}`);
  const places = swept.map((axis) => paths.indexOf((axes[axis] as SweptAxis).path));
  if (places.includes(-1)) return undefined;
  const radii = swept.map((axis) => (axes[axis] as SweptAxis).values);
  const values = isWhole ? [radius] : (Object.values(radius) as number[]);
  const setters = memoize(shape, frames.axes, (digits) => {
    const frame = frames.at(digits);
    return frame && radiusSetter(frame, first, stations);
  });
  const holes = memoize(shape, [...new Set([...markers.axes, ...spec.axes])], (digits) => {
    const laidOut = markers.at(digits);
    const setter = setters.at(digits);
    return laidOut && setter && blankTravels(spec.at(digits), laidOut, setter.varying);
  });
  // along a run, which has its own digits, the radius alone may vary
  const last = shape.length - 1;
  const isAlone = swept.includes(last) && !holes.axes.includes(last);
  const place = places[swept.indexOf(last)] as number;
  const along = axes[last]?.values ?? [];
  let run: readonly number[] | undefined;
  let setter: RadiusSetter | undefined;
  let own: BlankTravels | undefined;
  return (digits, old, isWhole) => {
    if (!isAlone || digits !== run) {
      run = digits;
      setter = setters.at(digits);
      own = holes.at(digits);
      for (let i = 0; i < swept.length; i++) {
        const digit = digits[swept[i] as number] as number;
        values[places[i] as number] = (radii[i] as readonly number[])[digit] as number;
      }
    }
    if (isAlone) values[place] = along[digits[last] as number] as number;
    const surface = setter?.set(values);
    if (surface === undefined || own === undefined) return noneIn(old);
    const extreme = old ?? newExtreme(own.pieces.length);
    return findGreatest(own, surface, surface === setter?.varying, extreme, isWhole);
  };
}

/** The least travels of a row; all of them, or those alone that may govern. */
type LeastTravels = (
  digits: readonly number[],
  old: Extreme | undefined,
  isWhole: boolean,
) => Extreme;

/** Holes on a blank, drilled from the wood: what their least travels hang on besides the radius. */
interface BlankTravels {
  readonly grounds: readonly Footprint[];
  /** `STRIDE` numbers for each hole, as `blankTravels` writes them; the sanding where one piece holds the hole. */
  readonly numbers: Float64Array;
  /** The piece of the varying radius that holds each hole; −1 where there are more than one, or the sanding bends. */
  readonly pieces: Int32Array;
  readonly drilled: readonly boolean[];
  /** An earlier dot of the same numbers, as the other of a pair is; −1 where there is none, and for pockets. */
  readonly twins: Int32Array;
  /** All grounds lie between these, along the board. */
  readonly from: number;
  readonly to: number;
  /** How far from the crest the farthest of them reaches. */
  readonly far: number;
}

const STRIDE = 11;

function blankTravels(spec: Spec, markers: readonly Marker[], surface: Surface): BlankTravels {
  const { sanding, radius } = surface;
  const numbers = new Float64Array(markers.length * STRIDE);
  const pieces = new Int32Array(markers.length).fill(-1);
  const grounds = markers.map((marker, i) => {
    const { group } = marker;
    const { ground, shallower, lead } = blankHole(spec, marker);
    const { from, to, along, offset, far, radius: reach } = ground;
    const c = reach > 0 ? solePiece(sanding, from, to) : -1;
    if (c >= 0) pieces[i] = solePiece(radius, from, to);
    const sanded = c < 0 ? Number.NaN : valueOnPiece(sanding, c, along);
    const slope = c < 0 ? Number.NaN : (sanding.slope[c] as number);
    const beyond = travelBeyond({ lead, rise: 0 }, group);
    const { keep } = group.fill;
    const known = [along, offset, far, reach, sanded, slope, keep, shallower, beyond];
    const apart = sanded + Math.abs(slope) * reach + keep + shallower + beyond + SURELY;
    numbers.set([...known, apart, GENTLE_DROP * far * far], i * STRIDE);
    return ground;
  });
  const drilled = markers.map(({ group }) => group.drilled);
  const keys = markers.map((_, i) =>
    [drilled[i], ...numbers.subarray(i * STRIDE, (i + 1) * STRIDE)].join(),
  );
  return {
    grounds,
    numbers,
    pieces,
    drilled,
    twins: Int32Array.from(keys, (key, i) =>
      markers[i]?.outline ? -1 : keys.slice(0, i).indexOf(key),
    ),
    from: Math.min(...grounds.map(({ from }) => from)),
    to: Math.max(...grounds.map(({ to }) => to)),
    far: Math.max(...grounds.map(({ far }) => far)),
  };
}

/** Up to this part of the radius a circle drops by less than `GENTLE_DROP` x²/R: 1 / (1 + √(1 − 0.2²)) is 0.5051. */
const GENTLE = 0.2;
const GENTLE_DROP = 0.506;
/** More than a bound exceeds the greatest on a disc, and than rounding adds. */
const SURELY = 2 * EXCESS;

/**
 * The greatest least travel; each removal is that of `greatestRemoval`, its pieces being known. Unless all are asked for,
 * a hole is left out whose sanding and whose drop under the tightest radius come nowhere near: the hole that governed
 * before is looked at first.
 */
function findGreatest(
  { grounds, numbers, pieces, drilled, twins, from, to, far }: BlankTravels,
  surface: Surface,
  isVarying: boolean,
  extreme: Extreme,
  isWhole: boolean,
): Extreme {
  const { radius } = surface;
  const { each } = extreme;
  const count = pieces.length;
  const first = Math.max(0, extreme.hole);
  const tightest = leastOver(radius, from, to);
  // NaN: nothing is left out
  const bend = !isWhole && far <= GENTLE * tightest ? 1 / tightest : Number.NaN;
  let value = -Infinity;
  let governs = -1;
  let leftOut = false;
  for (let k = 0; k < count; k++) {
    // the one that governed before, then the others in order
    const i = k === 0 ? first : k <= first ? k - 1 : k;
    const o = i * STRIDE;
    if ((numbers[o + 9] as number) + (numbers[o + 10] as number) * bend < value) {
      leftOut = true;
      continue;
    }
    const twin = twins[i] as number;
    if (twin >= 0 && k > 0) {
      // seen already: it has the same bound, and does not govern
      each[i] = each[twin] as number;
      continue;
    }
    const piece = isVarying ? (pieces[i] as number) : -1;
    let removal = Number.NaN;
    if (piece >= 0) {
      removal = greatestUnderTangent(
        numbers[o + 4] as number,
        numbers[o + 5] as number,
        valueOnPiece(radius, piece, numbers[o] as number),
        radius.slope[piece] as number,
        numbers[o + 1] as number,
        numbers[o + 2] as number,
        numbers[o + 3] as number,
      );
    }
    if (!(removal < Infinity)) removal = greatestRemoval(surface, grounds[i] as Footprint);
    const least = leastDepth(removal, numbers[o + 6] as number, numbers[o + 7] as number);
    const bound = least + (numbers[o + 8] as number);
    if (!(bound < Infinity)) return noneIn(extreme);
    each[i] = bound;
    if ((bound > value || (bound === value && i < governs)) && !drilled[i]) {
      value = bound;
      governs = i;
    }
  }
  extreme.isWhole = !leftOut;
  extreme.value = value;
  extreme.hole = governs;
  return extreme;
}

function newExtreme(holes: number): Extreme {
  const each = new Array<number>(holes).fill(Number.NaN);
  return { each, isWhole: true, value: Number.NaN, hole: -1 };
}

/** No hole governs. */
function noneIn(old: Extreme | undefined): Extreme {
  const extreme = old ?? newExtreme(0);
  extreme.hole = -1;
  return extreme;
}

/** Which parts of the board a bound takes; the others may be such as cannot be built. */
type Takes = readonly ("surfaces" | "wood")[];

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

/** A profile's path, and the profile's own. */
const PROFILE = /^(radius|sanding|board\.thickness|neck\.thickness)(?:\.(nut|end|fret\d+))?$/;
const FIELDS = {
  radius: "radius",
  sanding: "sanding",
  "board.thickness": "thickness",
  "neck.thickness": "neck",
} as const;

/** A path whose number stands in the specification as it does in the design, whatever its value. */
export function isInProfile(path: string): boolean {
  return PROFILE.test(path);
}

/**
 * Reads the specification with the values of chosen axes; the others stand at their first value, since the design itself
 * may leave them open. Each value can be read, as a sweep's axes are, and so can all of them together.
 */
function specReader(design: Design, axes: readonly SweptAxis[]) {
  const read = (chosen: readonly number[], digits: readonly number[]) => {
    const stated = axes.reduce((now, { path, values }, axis) => {
      const digit = chosen.includes(axis) ? (digits[axis] as number) : 0;
      return withNumber(now, path, values[digit] as number);
    }, design);
    return readSpec(stated, []) as Spec;
  };
  const first = read([], []);
  const names = axes.map(({ path }) => PROFILE.exec(path));
  // a whole profile and a station of it would each undo the other
  const isMixed = (axis: number) =>
    names[axis]?.[2] === undefined &&
    names.filter((name) => name?.[1] === names[axis]?.[1]).length > 1;
  const canWrite = names.map((name, axis) => name !== null && !isMixed(axis));
  return (chosen: readonly number[], digits: readonly number[]): Spec => {
    if (chosen.length === 0) return first;
    if (!chosen.every((axis) => canWrite[axis])) return read(chosen, digits);
    const spec = { ...first } as Record<string, unknown>;
    for (const axis of chosen) {
      const [, profile, station] = names[axis] as RegExpExecArray;
      const field = FIELDS[profile as keyof typeof FIELDS];
      const value = elementAt((axes[axis] as SweptAxis).values, digits[axis] as number);
      spec[field] =
        station === undefined ? value : { ...(spec[field] as object), [station]: value };
    }
    return spec as unknown as Spec;
  };
}

/** A hole's bound as a travel. */
type BoundOf = (board: Board, spec: Spec, touch: Touch, marker: Marker) => number;

const leastTravel: BoundOf = (board, spec, touch, marker) => {
  const bounds = surfaceBounds(board, spec, touch, marker);
  const { removal, shallower } = bounds;
  const least = leastDepth(removal, marker.group.fill.keep, shallower);
  return least + travelBeyond(bounds, marker.group);
};

const mostFlush: BoundOf = (board, spec, touch, marker) => {
  const bounds = surfaceBounds(board, spec, touch, marker);
  return bounds.flush + travelBeyond(bounds, marker.group);
};

/** A poured fill may be as deep as it will. */
const anyDepth: BoundOf = () => Infinity;

const mostInWood: BoundOf = (board, spec, touch, marker) => {
  const { wood, overChannel } = woodBounds(board, spec, touch, marker);
  const max = Math.min(wood - spec.web, overChannel - spec.web);
  return max + travelBeyond(leadAndRise(board, touch, marker), marker.group);
};

/** What the bounds of a row's holes rest on. */
interface Grounds {
  readonly spec: Kept<Spec>;
  readonly markers: Built<readonly Marker[]>;
  readonly boards: Built<Board>;
  readonly touches: Built<ReadonlyMap<string, Touch>>;
}

function boardAt(
  { frames, woods, surfaces }: Parts,
  digits: readonly number[],
  takes: Takes,
): Board | undefined {
  const frame = frames.at(digits);
  const wood = takes.includes("wood") ? woods.at(digits) : ANY_WOOD;
  const finish = takes.includes("surfaces") ? surfaces.at(digits) : ANY_SURFACES;
  return frame && wood && finish && assembleBoard(frame, finish, wood);
}

/** A bound of every hole, and the hole that governs: with sign 1 the greatest does, with −1 the least. */
function extremeAt(
  { spec, markers, boards, touches: kept }: Grounds,
  digits: readonly number[],
  boundOf: BoundOf,
  sign: 1 | -1,
  old: Extreme | undefined,
): Extreme {
  const board = boards.at(digits);
  const laidOut = markers.at(digits);
  const touches = kept.at(digits);
  if (!board || !laidOut || !touches) return noneIn(old);
  const stated = spec.at(digits);
  const extreme = old ?? newExtreme(laidOut.length);
  let hole = -1;
  for (let i = 0; i < laidOut.length; i++) {
    const marker = laidOut[i] as Marker;
    const touch = touches.get(marker.group.path.group) as Touch;
    const bound = boundOf(board, stated, touch, marker);
    // a hole that the finished surface does not reach
    if (sign === 1 && !(bound < Infinity)) return noneIn(old);
    extreme.each[i] = bound;
    if (marker.group.drilled) continue;
    if (hole < 0 || sign * bound > sign * (extreme.each[hole] as number)) hole = i;
  }
  extreme.hole = hole;
  if (hole >= 0) extreme.value = extreme.each[hole] as number;
  return extreme;
}

const ANY_WOOD: Wood = { thickness: constantTrack(1), whole: constantTrack(1), channel: undefined };
const FLAT = {
  sanded: { radius: constantTrack(Infinity), sanding: constantTrack(0) },
  old: undefined,
};
const ANY_SURFACES: Surfaces = { nominal: FLAT, deepest: FLAT, shallowest: FLAT, crest: 0 };
