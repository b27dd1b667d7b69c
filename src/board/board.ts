/** The board: its outline and slots, its wood, and the surfaces it has and will have, as tracks. Lengths in mm. */
import type { Profile, Scale, Station } from "../design/design.js";
import type { PartialSpec, Spec } from "../design/spec.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Surface } from "../geometry/surface.js";
import {
  combined,
  constantTrack,
  flooredAtZero,
  leastOver,
  pieceAt,
  scaled,
  shifted,
  type Track,
  trackThrough,
  valueAt,
  valueOnPiece,
  writeSlopes,
} from "../geometry/track.js";
import { type FretLine, fretLines, type WidthAt } from "./fret-lines.js";

/** The board's outline seen from above, and its frets. */
export interface Frame {
  readonly length: number;
  /** The nut and frets 1, 2, … */
  readonly slots: readonly FretLine[];
  /** Where they cross the centre line. */
  readonly alongs: readonly number[];
  /** Frets are fanned: bass and treble edges differ. */
  readonly fanned: boolean;
  readonly width: Track;
}

/** The wood below the crest plane. */
export interface Wood {
  /** The board alone. */
  readonly thickness: Track;
  /** The board, and the neck under it where one is stated. */
  readonly whole: Track;
  readonly channel: RodChannel | undefined;
}

/** The rod channel, and the wood over it. */
export interface RodChannel {
  readonly half: number;
  readonly from: number;
  readonly to: number;
  /** The board alone less the channel's depth. */
  readonly over: Track;
}

/** A finished surface below the crest plane: where the new radius is not reached the old one stays. */
export interface Finish {
  readonly sanded: Surface;
  /** The top as it is, where it is not flat. */
  readonly old: Surface | undefined;
}

/** The surfaces between which the finished one lies, within the tolerances. */
export interface Surfaces {
  /** As designed. */
  readonly nominal: Finish;
  /** The most that is removed, but for the crest. */
  readonly deepest: Finish;
  /** The least that is removed, but for the crest; its sanding is at least 0. */
  readonly shallowest: Finish;
  /** How far to either side the crest of the sanded surface may lie. */
  readonly crest: number;
}

/** A board, ready for arithmetic. */
export interface Board extends Frame, Surfaces {
  readonly wood: Wood;
}

/** Builds the board; issues where its parts do not suit each other. */
export function buildBoard(spec: PartialSpec, issues: DesignIssue[]): Board | undefined {
  const frame = buildFrame(spec, issues);
  if (frame === undefined) return undefined;
  const wood = buildWood(frame, spec, issues);
  const surfaces = buildSurfaces(frame, spec, issues);
  return wood && surfaces && assembleBoard(frame, surfaces, wood);
}

/** The parts as one; a literal, since objects of a known shape are made many times faster than spread ones. */
export function assembleBoard(frame: Frame, surfaces: Surfaces, wood: Wood): Board {
  const { length, slots, alongs, fanned, width } = frame;
  const { nominal, deepest, shallowest, crest } = surfaces;
  return {
    length,
    slots,
    alongs,
    fanned,
    width,
    nominal,
    deepest,
    shallowest,
    crest,
    wood,
  };
}

/** The outline and the frets. */
export function buildFrame(spec: PartialSpec, issues: DesignIssue[]): Frame | undefined {
  const { scale, length, width } = spec;
  if (scale === undefined || length === undefined || width === undefined) return undefined;
  const slots = placeFrets(scale, width, length, issues);
  if (slots === undefined) return undefined;
  const alongs = slots.map(({ along }) => along);
  const widths = profileTrack(width, "board.width", alongs, length, issues);
  if (widths === undefined) return undefined;
  const frame = { length, slots, alongs, fanned: "bass" in scale, width: widths };
  return mustExceedZero("board.width", widths, frame, issues) ? frame : undefined;
}

/** Where the board begins: at the nut, whose further end lies before 0 on a fanned board. */
export function firstAlong({ slots }: Frame): number {
  const { bass, treble } = elementAt(slots, 0);
  return Math.min(0, bass, treble);
}

/** The wood of board and neck, and the rod channel in it. */
export function buildWood(
  frame: Frame,
  spec: PartialSpec,
  issues: DesignIssue[],
): Wood | undefined {
  const thickness = trackOn(frame, spec.thickness, "board.thickness", issues);
  const neck = trackOn(frame, spec.neck, "neck.thickness", issues);
  if (thickness === undefined || (spec.neck !== undefined && neck === undefined)) return undefined;
  const sound = mustExceedZero("board.thickness", thickness, frame, issues);
  const soundNeck = neck === undefined || mustExceedZero("neck.thickness", neck, frame, issues);
  const channel = buildChannel(frame, spec.channel, thickness, issues);
  if (!sound || !soundNeck || (spec.channel && !channel)) return undefined;
  return { thickness, whole: neck ? combined(thickness, neck, 1) : thickness, channel };
}

function buildChannel(
  frame: Frame,
  channel: PartialSpec["channel"],
  thickness: Track,
  issues: DesignIssue[],
): RodChannel | undefined {
  if (channel === undefined) return undefined;
  const { width, from, to } = channel;
  if (!(from < to)) {
    const expected = `less than where the channel ends, ${to} mm`;
    issues.push(makeIssue("board.channel.from", from, expected));
    return undefined;
  }
  const depth = trackOn(frame, channel.depth, "board.channel.depth", issues);
  if (depth === undefined) return undefined;
  if (!mustNotFallBelowZero("board.channel.depth", depth, from, to, issues)) return undefined;
  return { half: width / 2, from, to, over: combined(thickness, depth, -1) };
}

/** The three surfaces. */
export function buildSurfaces(
  frame: Frame,
  spec: PartialSpec,
  issues: DesignIssue[],
): Surfaces | undefined {
  const { tolerance } = spec;
  const radius = trackOn(frame, spec.radius, "radius", issues);
  const existing = trackOn(frame, spec.existing, "existing.radius", issues);
  const stated = trackOn(frame, spec.sanding, "sanding", issues);
  if (stated) mustNotFallBelowZero("sanding", stated, 0, frame.length, issues);
  if (tolerance === undefined) return undefined;
  const crest = tolerance.crest.limit;
  if (radius) mustExceedHalfWidth(radius, frame, "radius", tolerance.radius.limit, crest, issues);
  if (existing) {
    mustExceedHalfWidth(existing, frame, "existing", tolerance.existing.limit, 0, issues);
  }
  if (!radius || !stated || (spec.existing !== undefined && !existing)) return undefined;
  // no station lies before the nut, where a fanned board begins: there a falling sanding ends at 0
  const sanding = leastOver(stated, firstAlong(frame), 0) < 0 ? flooredAtZero(stated) : stated;
  const finish = (sign: 1 | 0 | -1): Finish => {
    const taken = shifted(sanding, sign * tolerance.sanding.limit);
    return {
      sanded: {
        radius: scaled(radius, 1 - sign * tolerance.radius.limit),
        sanding: sign < 0 ? flooredAtZero(taken) : taken,
      },
      old: existing && {
        radius: scaled(existing, 1 - sign * tolerance.existing.limit),
        sanding: NONE,
      },
    };
  };
  return { nominal: finish(0), deepest: finish(1), shallowest: finish(-1), crest };
}

/** A radius at some stations that is set anew, in place. */
export interface RadiusSetter {
  /** The deepest sanded surface where the radius varies; the same object each time. */
  readonly varying: Surface;
  /** Sets the radii, in the order of the stations; undefined where they do not suit the board. */
  readonly set: (values: readonly number[]) => Surface | undefined;
}

/**
 * The deepest sanded surface under radii that are set anew, each time as `buildSurfaces` would build it. Undefined where
 * the board has none whatever the radius, or two stations meet.
 */
export function radiusSetter(
  frame: Frame,
  spec: Spec,
  stations: readonly Station[],
): RadiusSetter | undefined {
  const flat = buildSurfaces(frame, { ...spec, radius: Infinity }, []);
  const knots = stations
    .map((station, i) => ({ i, along: stationAlong(station, frame.alongs, frame.length) }))
    .sort((a, b) => a.along - b.along);
  const isApart = knots.every(({ along }, i) => {
    const before = knots[i - 1];
    return before === undefined || along - before.along >= 1e-9 * frame.length;
  });
  if (flat === undefined || !isApart) return undefined;
  const { sanding } = flat.deepest.sanded;
  const factor = 1 - spec.tolerance.radius.limit;
  const order = knots.map(({ i }) => i);
  const one = writableRadius(frame, flat.crest, [0]);
  const many = writableRadius(
    frame,
    flat.crest,
    knots.map(({ along }) => along),
  );
  const constant = { sanding, radius: one.track };
  const varying = { sanding, radius: many.track };
  const set = (values: readonly number[]) => {
    const isOne = isOneValue(values);
    const { write, reaches } = isOne ? one : many;
    write(values, order, factor);
    if (!reaches()) return undefined;
    return isOne ? constant : varying;
  };
  return { varying, set };
}

/** A radius with fixed knots, and whether it exceeds half the width and `beyond` wherever `firstClash` looks. */
function writableRadius(frame: Frame, beyond: number, at: readonly number[]) {
  const value = at.map(() => Number.NaN);
  const slope = at.map(() => Number.NaN);
  const track: Track = { at, value, slope };
  const places = [...new Set(placesToClear(frame, at))].map((along) => ({
    along,
    piece: pieceAt(track, along),
    least: valueAt(frame.width, along) / 2 + beyond,
  }));
  const write = (values: readonly number[], order: readonly number[], factor: number) => {
    for (let k = 0; k < at.length; k++) value[k] = values[order[k] as number] as number;
    writeSlopes(at, value, slope);
    if (factor === 1) return;
    // as `scaled` does
    for (let k = 0; k < at.length; k++) {
      value[k] = (value[k] as number) * factor;
      slope[k] = (slope[k] as number) * factor;
    }
  };
  const reaches = () => {
    for (const { along, piece, least } of places) {
      if (!(valueOnPiece(track, piece, along) > least)) return false;
    }
    return true;
  };
  return { track, write, reaches };
}

function isOneValue(values: readonly number[]): boolean {
  for (let i = 1; i < values.length; i++) if (values[i] !== values[0]) return false;
  return true;
}

const NONE = constantTrack(0);

/** A profile as a track on a board. */
export function trackOn(
  { alongs, length }: Frame,
  profile: Profile | undefined,
  path: string,
  issues: DesignIssue[],
): Track | undefined {
  return profile === undefined ? undefined : profileTrack(profile, path, alongs, length, issues);
}

/** The frets, with an issue where fanned ones cannot be placed on this width. */
export function placeFrets(
  scale: Scale,
  width: Profile,
  length: number,
  issues: DesignIssue[],
): FretLine[] | undefined {
  let known: readonly number[] | undefined;
  let track: Track | undefined;
  const widthAt: WidthAt = (along, slots) => {
    if (slots !== known) track = profileTrack(width, "board.width", slots, length, []);
    known = slots;
    const here = track === undefined ? Number.NaN : valueAt(track, along);
    return here > 0 ? here : Number.NaN;
  };
  const lines = fretLines(scale, widthAt);
  if (lines === undefined) {
    issues.push(makeIssue("scale", scale, "fanned frets that meet both edges of the board"));
  }
  return lines;
}

/** Where a station lies along the board. */
export function stationAlong(station: Station, slots: readonly number[], length: number): number {
  if (station === "nut") return 0;
  return station === "end" ? length : elementAt(slots, Number(station.slice(4)));
}

/** A profile as a track; an issue where two stations meet. */
export function profileTrack(
  profile: Profile,
  path: string,
  slots: readonly number[],
  length: number,
  issues: DesignIssue[],
): Track | undefined {
  if (typeof profile === "number") return constantTrack(profile);
  const knots = (Object.entries(profile) as [Station, number][])
    .map(([station, value]) => ({ station, value, along: stationAlong(station, slots, length) }))
    .sort((a, b) => a.along - b.along);
  let previous = elementAt(knots, 0);
  // equal values are one constant, and Infinity minus Infinity never arises
  if (knots.every(({ value }) => value === previous.value)) {
    return constantTrack(previous.value);
  }
  for (const here of knots.slice(1)) {
    if (!(here.along - previous.along >= 1e-9 * length)) {
      const expected = `a place of its own, but "${previous.station}" lies there too`;
      issues.push(makeIssue(`${path}.${here.station}`, here.value, expected));
      return undefined;
    }
    previous = here;
  }
  return trackThrough(
    knots.map(({ along }) => along),
    knots.map(({ value }) => value),
  );
}

function mustExceedZero(path: string, track: Track, frame: Frame, issues: DesignIssue[]): boolean {
  const least = leastOver(track, firstAlong(frame), frame.length);
  if (least > 0) return true;
  issues.push(makeIssue(path, least, "more than 0 mm everywhere on the board"));
  return false;
}

function mustNotFallBelowZero(
  path: string,
  track: Track,
  from: number,
  to: number,
  issues: DesignIssue[],
): boolean {
  const least = leastOver(track, from, to);
  if (least >= 0) return true;
  issues.push(makeIssue(path, least, "0 mm or more everywhere on the board"));
  return false;
}

/** Where a radius does not exceed half the width and so much more, or undefined: the worst is at a knot or an end. */
function findClash(radius: Track, frame: Frame, beyond: number) {
  const along = firstClash(radius, frame, beyond);
  return along === undefined ? undefined : { along, half: valueAt(frame.width, along) / 2 };
}

function firstClash(radius: Track, frame: Frame, beyond: number): number | undefined {
  const { width } = frame;
  return placesToClear(frame, radius.at).find(
    (s) => !(valueAt(radius, s) > valueAt(width, s) / 2 + beyond),
  );
}

/** Where a radius with these knots may come nearest to half the width. */
function placesToClear(frame: Frame, knots: readonly number[]): number[] {
  const { width, length } = frame;
  // no knot lies before the start
  return [firstAlong(frame), 0, length, ...knots, ...width.at].filter((s) => s <= length);
}

function mustExceedHalfWidth(
  radius: Track,
  frame: Frame,
  name: "radius" | "existing",
  tolerance: number,
  crest: number,
  issues: DesignIssue[],
): void {
  const worst = findClash(scaled(radius, 1 - tolerance), frame, crest);
  // what clears the most that the tolerances take clears all less
  if (worst === undefined) return;
  const clash = findClash(radius, frame, 0);
  if (clash) {
    const path = name === "radius" ? name : "existing.radius";
    const expected = `more than half the width everywhere on the board, ${clash.half} mm at ${clash.along} mm from the nut`;
    issues.push(makeIssue(path, valueAt(radius, clash.along), expected));
    return;
  }
  const isCrest = findClash(scaled(radius, 1 - tolerance), frame, 0) === undefined;
  const [path, value, what] = isCrest
    ? ["tolerance.crest", crest, "a crest so near the centre line that"]
    : [`tolerance.${name}`, tolerance, "a fraction within which"];
  const expected = `${what} the radius reaches both edges, ${worst.half} mm aside at ${worst.along} mm from the nut`;
  issues.push(makeIssue(path, value, expected));
}
