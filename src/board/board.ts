/** The board: where its slots lie, and its profiles as tracks, as stated and in the worst cases. */
import type { Station } from "../design/design.js";
import type { PartialSpec, ProfileSpec, ScaleSpec } from "../design/spec.js";
import { type DesignIssue, issueOf } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Surface } from "../geometry/surface.js";
import {
  constantTrack,
  flooredAtZero,
  leastOver,
  scaled,
  shifted,
  type Track,
  trackThrough,
  valueAt,
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

/** The surfaces between which the finished one lies, within the tolerances. */
export interface Surfaces {
  /** As designed. */
  readonly nominal: Surface;
  /** The most that is removed. */
  readonly deepest: Surface;
  /** The least that is removed; the crown is at least 0. */
  readonly shallowest: Surface;
}

/** A board, ready for arithmetic. */
export interface Board extends Frame, Surfaces {
  readonly thickness: Track;
}

/** Builds the board; issues where its parts do not suit each other. */
export function buildBoard(spec: PartialSpec, issues: DesignIssue[]): Board | undefined {
  const frame = buildFrame(spec, issues);
  if (frame === undefined) return undefined;
  if (isBackward(spec.channel)) {
    const { from, to } = spec.channel;
    const expected = `less than where the channel ends, ${to} mm`;
    issues.push(issueOf("board.channel.from", from, expected));
  }
  const thickness = buildThickness(frame, spec, issues);
  const surfaces = buildSurfaces(frame, spec, issues);
  if (thickness === undefined || surfaces === undefined) return undefined;
  const { length, slots, alongs, fanned, width } = frame;
  const { nominal, deepest, shallowest } = surfaces;
  return { length, slots, alongs, fanned, width, thickness, nominal, deepest, shallowest };
}

/** The channel ends before it begins. */
export function isBackward(
  channel: PartialSpec["channel"],
): channel is NonNullable<PartialSpec["channel"]> {
  return channel !== undefined && !(channel.from < channel.to);
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
  const fanned = scale.kind === "fanned";
  const frame = { length, slots, alongs, fanned, width: widths };
  const isPositive = mustExceedZero("board.width", widths, frame, issues);
  return isPositive ? frame : undefined;
}

/** Where the board begins: at the nut, whose further end lies before 0 on a fanned board. */
function startOf({ slots }: Frame): number {
  const { bass, treble } = elementAt(slots, 0);
  return Math.min(0, bass, treble);
}

/** The flat blank's thickness. */
export function buildThickness(
  frame: Frame,
  spec: PartialSpec,
  issues: DesignIssue[],
): Track | undefined {
  const track = trackOf(frame, spec.thickness, "board.thickness", issues);
  if (track === undefined) return undefined;
  return mustExceedZero("board.thickness", track, frame, issues) ? track : undefined;
}

/** The three surfaces. */
export function buildSurfaces(
  frame: Frame,
  spec: PartialSpec,
  issues: DesignIssue[],
): Surfaces | undefined {
  const { tolerance } = spec;
  const radius = trackOf(frame, spec.radius, "radius", issues);
  const stated = trackOf(frame, spec.crown, "crown", issues);
  if (stated) mustNotFallBelowZero("crown", stated, frame.length, issues);
  if (radius) mustExceedHalfWidth(radius, frame, tolerance?.radius, issues);
  if (!radius || !stated || !tolerance) return undefined;
  // no station lies before the nut, where a fanned board begins: there a falling crown ends at 0
  const crown = leastOver(stated, startOf(frame), 0) < 0 ? flooredAtZero(stated) : stated;
  return {
    nominal: { radius, crown },
    deepest: {
      radius: scaled(radius, 1 - tolerance.radius),
      crown: shifted(crown, tolerance.crown),
    },
    shallowest: {
      radius: scaled(radius, 1 + tolerance.radius),
      crown: flooredAtZero(shifted(crown, -tolerance.crown)),
    },
  };
}

function trackOf(
  { alongs, length }: Frame,
  profile: ProfileSpec | undefined,
  path: string,
  issues: DesignIssue[],
): Track | undefined {
  return profile === undefined ? undefined : profileTrack(profile, path, alongs, length, issues);
}

/** The frets, with an issue where fanned ones cannot be placed on this width. */
export function placeFrets(
  scale: ScaleSpec,
  width: ProfileSpec,
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
    issues.push(issueOf("scale", scale, "fanned frets that meet both edges of the board"));
  }
  return lines;
}

/** Where a station lies along the board, mm. */
export function stationAlong(station: Station, slots: readonly number[], length: number): number {
  if (station === "nut") return 0;
  return station === "end" ? length : elementAt(slots, Number(station.slice(4)));
}

/** A profile as a track; an issue where two stations meet. */
export function profileTrack(
  profile: ProfileSpec,
  path: string,
  slots: readonly number[],
  length: number,
  issues: DesignIssue[],
): Track | undefined {
  if (typeof profile === "number") return constantTrack(profile);
  const knots = profile
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
      issues.push(issueOf(`${path}.${here.station}`, here.value, expected));
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
  const least = leastOver(track, startOf(frame), frame.length);
  if (least > 0) return true;
  issues.push(issueOf(path, least, "more than 0 mm everywhere on the board"));
  return false;
}

function mustNotFallBelowZero(
  path: string,
  track: Track,
  length: number,
  issues: DesignIssue[],
): void {
  const least = leastOver(track, 0, length);
  if (!(least >= 0)) issues.push(issueOf(path, least, "0 mm or more everywhere on the board"));
}

/** Where a radius does not exceed half the width, or undefined: the worst is at a knot or at an end. */
function withinHalfWidth(radius: Track, frame: Frame): Clash | undefined {
  const { width, length } = frame;
  const start = startOf(frame);
  const isClash = (along: number) => !(valueAt(radius, along) > valueAt(width, along) / 2);
  // no knot lies before the start
  const along = [start, 0, length, ...radius.at, ...width.at].find(
    (s) => s <= length && isClash(s),
  );
  return along === undefined ? undefined : { along, half: valueAt(width, along) / 2 };
}

interface Clash {
  readonly along: number;
  readonly half: number;
}

function mustExceedHalfWidth(
  radius: Track,
  frame: Frame,
  tolerance: number | undefined,
  issues: DesignIssue[],
): void {
  const clash = withinHalfWidth(radius, frame);
  if (clash) {
    const expected = `more than half the width everywhere on the board, ${clash.half} mm at ${clash.along} mm from the nut`;
    issues.push(issueOf("radius", valueAt(radius, clash.along), expected));
    return;
  }
  if (tolerance === 0) return;
  const least = scaled(radius, 1 - (tolerance ?? 0));
  const worst = withinHalfWidth(least, frame);
  if (worst === undefined) return;
  const expected = `a fraction within which the radius exceeds half the width, ${worst.half} mm at ${worst.along} mm from the nut`;
  issues.push(issueOf("tolerance.radius", tolerance, expected));
}
