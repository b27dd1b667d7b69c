/** The board: where its slots lie, and its profiles as tracks, as stated and in the worst cases. */
import type { Station } from "./design.js";
import { type DesignIssue, issueOf } from "./errors.js";
import { type FretLine, fretLines, type WidthAt } from "./fret-lines.js";
import type { PartialSpec, ProfileSpec, ScaleSpec, Spec } from "./spec.js";
import {
  constantTrack,
  flooredAtZero,
  knot,
  leastOver,
  scaled,
  shifted,
  type Track,
  trackThrough,
  valueAt,
} from "./track.js";

/** The surface that the radius leaves: removal at (along, offset) is the crown and the sagitta there. */
export interface Surface {
  readonly crown: Track;
  readonly radius: Track;
}

/** A board, ready for arithmetic. */
export interface Board {
  readonly length: number;
  /** The nut and frets 1, 2, … */
  readonly slots: readonly FretLine[];
  /** Frets are fanned: bass and treble edges differ. */
  readonly fanned: boolean;
  readonly width: Track;
  readonly thickness: Track;
  readonly channel: Spec["channel"];
  /** As designed. */
  readonly nominal: Surface;
  /** The most that is removed within the tolerances. */
  readonly deepest: Surface;
  /** The least that is removed within the tolerances; the crown is at least 0. */
  readonly shallowest: Surface;
}

/** Builds the board; issues where its parts do not suit each other. */
export function buildBoard(spec: PartialSpec, issues: DesignIssue[]): Board | undefined {
  const { scale, length, width, thickness, radius, crown, tolerance } = spec;
  if (scale === undefined || length === undefined || width === undefined) return undefined;
  const lines = placeFrets(scale, width, length, issues);
  if (lines === undefined) return undefined;
  const slots = lines.map(({ along }) => along);
  const before = issues.length;
  const track = (profile: ProfileSpec | undefined, path: string) =>
    profile === undefined ? undefined : profileTrack(profile, path, slots, length, issues);
  const widths = track(width, "board.width");
  const thicknesses = track(thickness, "board.thickness");
  const radii = track(radius, "radius");
  const crowns = track(crown, "crown");
  if (widths) mustExceedOnBoard("board.width", widths, 0, length, issues);
  if (thicknesses) mustExceedOnBoard("board.thickness", thicknesses, 0, length, issues);
  if (crowns) mustNotFallBelowZero("crown", crowns, length, issues);
  if (radii && widths) {
    mustExceedHalfWidth(radii, widths, length, tolerance?.radius, issues);
  }
  if (issues.length > before || !widths || !thicknesses || !radii || !crowns || !tolerance) {
    return undefined;
  }
  return {
    length,
    slots: lines,
    fanned: scale.kind === "fanned",
    width: widths,
    thickness: thicknesses,
    channel: spec.channel,
    ...surfaces(radii, crowns, tolerance),
  };
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

/** The three surfaces between which the finished one lies. */
function surfaces(radius: Track, crown: Track, tolerance: Spec["tolerance"]) {
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

/** Where a station lies along the board, mm. */
export function stationAlong(station: Station, slots: readonly number[], length: number): number {
  if (station === "nut") return 0;
  return station === "end" ? length : knot(slots, Number(station.slice(4)));
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
  let previous = knots[0];
  // equal values are one constant, and Infinity minus Infinity never arises
  if (knots.every(({ value }) => value === previous?.value)) {
    return constantTrack(previous?.value as number);
  }
  for (const here of knots.slice(1)) {
    if (previous && !(here.along - previous.along >= 1e-9 * length)) {
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

function mustExceedOnBoard(
  path: string,
  track: Track,
  bound: number,
  length: number,
  issues: DesignIssue[],
): void {
  const least = leastOver(track, 0, length);
  if (!(least > bound)) {
    issues.push(issueOf(path, least, `more than ${bound} mm everywhere on the board`));
  }
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
function withinHalfWidth(radius: Track, width: Track, length: number): Clash | undefined {
  const isClash = (along: number) => !(valueAt(radius, along) > valueAt(width, along) / 2);
  const along = [0, length, ...radius.at, ...width.at].find(
    (s) => s >= 0 && s <= length && isClash(s),
  );
  return along === undefined ? undefined : { along, half: valueAt(width, along) / 2 };
}

interface Clash {
  readonly along: number;
  readonly half: number;
}

function mustExceedHalfWidth(
  radius: Track,
  width: Track,
  length: number,
  tolerance: number | undefined,
  issues: DesignIssue[],
): void {
  const clash = withinHalfWidth(radius, width, length);
  if (clash) {
    const expected = `more than half the width everywhere on the board, ${clash.half} mm at ${clash.along} mm from the nut`;
    issues.push(issueOf("radius", valueAt(radius, clash.along), expected));
    return;
  }
  const least = scaled(radius, 1 - (tolerance ?? 0));
  const worst = withinHalfWidth(least, width, length);
  if (worst === undefined) return;
  const expected = `a fraction within which the radius exceeds half the width, ${worst.half} mm at ${worst.along} mm from the nut`;
  issues.push(issueOf("tolerance.radius", tolerance, expected));
}
