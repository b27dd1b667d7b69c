/** How far the sanding has come, from thicknesses of the board as it is now. Lengths in mm. */
import { stationAlong } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import type { Design, Station } from "../design/design.js";
import { finishedAt, topAt } from "../drilling/edges.js";
import { footprintOf } from "../drilling/grounds.js";
import type { CheckedHole } from "../drilling/holes.js";
import { readNeck, type Work, workOut } from "../drilling/work.js";
import { type DesignIssue, issueOf } from "../errors/errors.js";
import { greatestRemoval } from "../geometry/removal.js";
import { constantTrack, type Track, trackThrough, valueAt } from "../geometry/track.js";
import { MILLIMETRES } from "../text/length-text.js";
import { POSITION, readFields, readList, readNumber, refuseAll, SIZE } from "./read.js";

/** The board's own thickness at one place, as it is now. */
export interface SandingReading {
  /** Distance from the nut along the centre line, mm, or a station. */
  readonly along: number | Station;
  /** Thickness on the centre line, mm. */
  readonly centre: number;
  /** Thickness at the bass edge, mm. */
  readonly bass?: number | undefined;
  /** Thickness at the treble edge, mm. */
  readonly treble?: number | undefined;
}

/** Three places across the board, mm; the edges where they were read. */
export interface Across {
  /** On the centre line. */
  readonly centre: number;
  /** At the bass edge. */
  readonly bass?: number;
  /** At the treble edge. */
  readonly treble?: number;
}

/** What a reading tells. */
export interface ReadSanding {
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** What is off on the centre line, mm. */
  readonly sanding: number;
  /** Offset of the crest, mm, where both edges were read and the board is not flat. */
  readonly crest?: number;
  /** Radius of the surface now, mm, where an edge was read: Infinity is flat, negative hollow. */
  readonly radius?: number;
  /** What the finished surface still asks for, mm; negative where the sanding has gone past it. */
  readonly toGo: Across;
}

/** What is left of a marker, mm, in the worst case of its depth alone. */
export interface MarkerLeft {
  /** The hole's path, as in the report. */
  readonly path: string;
  /** Under the surface now, and under the finished one or the one now, whichever is lower. */
  readonly markerLeft: { readonly now: number; readonly finished: number };
}

/** What is wrong with the sanding. */
export interface SandingFinding {
  /** The sanding is past the finished surface, the marker is below its keep, or it is gone. */
  readonly code: "past-surface" | "below-keep" | "nothing-left";
  /** An error costs a marker. */
  readonly severity: "error" | "warning";
  /** How far past, or what is left, mm. */
  readonly value: number;
  /** What it is held against, mm. */
  readonly limit: number;
  /** Index of the reading, where it is about one. */
  readonly reading?: number;
  /** Where across the board. */
  readonly place?: "centre" | "bass" | "treble";
  /** The hole's path, where it is about one. */
  readonly path?: string;
  /** One plain sentence, lengths in mm. */
  readonly message: string;
}

/** How far the sanding has come. */
export interface SandingProgress {
  /** What each reading tells, in the order read. */
  readonly readings: readonly ReadSanding[];
  /** What is left of each marker whose depth is known. */
  readonly holes: readonly MarkerLeft[];
  /** Errors first. */
  readonly findings: readonly SandingFinding[];
}

/** Farther past than this is told, mm: nearer no one measures. */
const PAST = 0.01;

/**
 * How far the sanding has come: at each reading what is off and what is still to go, what is left of each marker now and
 * at the end, and where the sanding has gone past.
 *
 * Through three thicknesses goes one circle (intersecting chords); with one edge it is centred. Sanding, curvature and
 * crest are linear between the readings that have them and constant beyond. A block of the finished radius leaves the
 * middle flat at first: the circle lies below such a surface, so no more is told than is left.
 *
 * @param design the neck
 * @param readings one or more, at different places: `along`, mm from the nut or a station; `centre`, `bass` and `treble`, the board's own thickness there, mm
 * @returns the readings, the markers at the depth planned (or drilled), else recommended, and findings
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the readings cannot, with every path
 * @example
 * // an invented neck, half way down at the nut
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: 254,
 *   sanding: 0.2,
 *   depth: 2.5,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const { readings } = sandingProgress(design, [{ along: "nut", centre: 5.9, bass: 5.2, treble: 5.2 }]);
 * readings[0].sanding.toFixed(2) // "0.10"
 * readings[0].toGo.bass.toFixed(2) // "0.63"
 */
export function sandingProgress(
  design: Design,
  readings: readonly SandingReading[],
): SandingProgress {
  const work = workOut(readNeck(design));
  const places = readReadings(work, readings);
  const read = places.map((place) => tellReading(work, place));
  const surface = surfaceNow(read);
  const left = work.holes.flatMap((hole, i) => {
    const depth = hole.planned ?? work.recommended[i];
    return depth === undefined ? [] : [leftOf(work, hole, depth, surface)];
  });
  const holes = left.map(({ path, markerLeft }) => ({ path, markerLeft }));
  return { readings: read, holes, findings: findWrong(read, left) };
}

/** A reading with its place along the board. */
interface Placed extends Omit<SandingReading, "along"> {
  readonly along: number;
}

const COUNTS = { least: 1, most: 1000, what: "readings" };

function readReadings({ board }: Work, readings: unknown): Placed[] {
  const issues: DesignIssue[] = [];
  const placed = readList(
    readings,
    "readings",
    COUNTS,
    issues,
    (item, path): Placed | undefined => {
      const fields = readFields(item, path, ["along", "centre", "bass", "treble"], issues);
      if (fields === undefined) return undefined;
      const thickness = (key: "centre" | "bass" | "treble") =>
        readNumber(fields[key], `${path}.${key}`, SIZE, issues);
      const edge = (key: "bass" | "treble") =>
        fields[key] === undefined ? {} : { [key]: thickness(key) };
      const along = placeOf(board, fields.along, `${path}.along`, issues);
      return { along, centre: thickness("centre"), ...edge("bass"), ...edge("treble") };
    },
  );
  placed.forEach(({ along }, i) => {
    const isTwice = placed.slice(0, i).some((other) => Math.abs(other.along - along) < NEAR);
    if (isTwice)
      issues.push(issueOf(`readings.${i}.along`, along, "a place that was not read before"));
  });
  refuseAll(issues);
  return placed;
}

/** Readings nearer than this are at one place, mm. */
const NEAR = 1e-6;

function placeOf(
  { alongs, length }: Work["board"],
  along: unknown,
  path: string,
  issues: DesignIssue[],
): number {
  if (typeof along !== "string") return readNumber(along, path, POSITION, issues);
  const station = /^(nut|end|fret[1-9]\d{0,2})$/.test(along) ? (along as Station) : undefined;
  const place = station && stationAlong(station, alongs, length);
  if (place !== undefined) return place;
  issues.push(
    issueOf(path, along, `mm from the nut, "nut", "end", or "fret1" to "fret${alongs.length - 1}"`),
  );
  return Number.NaN;
}

function tellReading({ board }: Work, { along, centre, bass, treble }: Placed): ReadSanding {
  const half = valueAt(board.width, along) / 2;
  const whole = valueAt(board.wood.thickness, along);
  const sanding = whole - centre;
  const toGoAt = (offset: number, now: number) =>
    finishedAt(board.nominal, along, offset) - (whole - now);
  const toGo = {
    centre: toGoAt(0, centre),
    ...(bass === undefined ? {} : { bass: toGoAt(half, bass) }),
    ...(treble === undefined ? {} : { treble: toGoAt(half, treble) }),
  };
  const circle = circleThrough(half, centre, bass, treble);
  return { along, sanding, ...circle, toGo };
}

/** The circle through the thicknesses on the centre line and at the edges; with one edge it is centred. */
function circleThrough(
  half: number,
  centre: number,
  bass = Number.NaN,
  treble = Number.NaN,
): { readonly radius?: number; readonly crest?: number } {
  const [left, right] = [centre - bass, centre - treble];
  if (Number.isNaN(left) && Number.isNaN(right)) return {};
  if (Number.isNaN(left) || Number.isNaN(right)) {
    const drop = Number.isNaN(left) ? right : left;
    return { radius: drop === 0 ? Infinity : (half * half + drop * drop) / (2 * drop) };
  }
  // the circle x² + y² + 2gx + 2fy = 0 through (0, 0), (−b, −left), (b, −right)
  const sum = left + right;
  if (sum === 0) return { radius: Infinity };
  const squares = (2 * half * half + left * left + right * right) / 2;
  const f = squares / sum;
  const g = (2 * f * right - half * half - right * right) / (2 * half);
  return { radius: Math.sign(sum) * Math.hypot(f, g), crest: -g + 0 };
}

/** The surface as it is now: what is off on the centre line, its curvature, and its crest, along the board. */
interface SurfaceNow {
  readonly sanding: Track;
  readonly curvature: Track;
  readonly crest: Track;
}

function surfaceNow(read: readonly ReadSanding[]): SurfaceNow {
  const track = (of: (reading: ReadSanding) => number | undefined) => {
    const knots = read.flatMap((reading) => {
      const value = of(reading);
      return value === undefined ? [] : [{ along: reading.along, value }];
    });
    return heldTrack(knots);
  };
  return {
    sanding: track(({ sanding }) => sanding),
    curvature: track(({ radius }) => (radius === undefined ? undefined : 1 / radius)),
    crest: track(({ crest }) => crest),
  };
}

/** A track through knots, constant beyond the first and the last; 0 where there are none. */
function heldTrack(knots: { readonly along: number; readonly value: number }[]): Track {
  const sorted = knots.sort((a, b) => a.along - b.along);
  const [first] = sorted;
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return constantTrack(0);
  if (first === last) return constantTrack(first.value);
  const before = { along: first.along - 1, value: first.value };
  const after = { along: last.along + 1, value: last.value };
  const held = [before, ...sorted, after];
  return trackThrough(
    held.map(({ along }) => along),
    held.map(({ value }) => value),
  );
}

interface Left extends MarkerLeft {
  readonly hole: CheckedHole;
}

/** Least marker that is left over a hole, at a depth that may be shallower by stop, seat and point. */
function leftOf({ board }: Work, hole: CheckedHole, depth: number, surface: SurfaceNow): Left {
  const { marker, bounds } = hole;
  const ground = footprintOf(marker, 0);
  const { old, sanded } = board.nominal;
  const floor = depth - bounds.shallower + topAt(board.nominal, marker.along, marker.offset);
  const gone = greatestNow(surface, marker);
  const finished = Math.max(
    greatestRemoval(sanded, ground),
    old === undefined ? 0 : greatestRemoval(old, ground),
    gone,
  );
  return { path: marker.path, hole, markerLeft: { now: floor - gone, finished: floor - finished } };
}

/** The most that is off over a hole, never too little: each part of the surface at its worst within the hole's box. */
function greatestNow({ sanding, curvature, crest }: SurfaceNow, marker: Marker): number {
  const { from, to } = footprintOf(marker, 0);
  const knots = [...sanding.at, ...curvature.at, ...crest.at].filter((s) => from < s && s < to);
  const ends = [from, to, ...knots];
  const greatest = (track: Track) => Math.max(...ends.map((s) => valueAt(track, s)));
  const offsets = marker.outline?.map(({ offset }) => offset) ?? [
    marker.offset - marker.width / 2,
    marker.offset + marker.width / 2,
  ];
  const crests = ends.map((s) => valueAt(crest, s));
  const left = Math.min(...offsets) - Math.max(...crests);
  const right = Math.max(...offsets) - Math.min(...crests);
  const bend = greatest(curvature);
  const worst = bend > 0 ? Math.max(-left, right) : Math.max(0, left, -right);
  const atCentre = ends.map((s, i) => dropFor(valueAt(curvature, s), crests[i] as number));
  return greatest(sanding) + dropFor(bend, worst) - Math.min(...atCentre);
}

/** Sagitta by its curvature: κx² / (1 + √(1 − κ²x²)), negative where hollow. */
function dropFor(curvature: number, x: number): number {
  const share = curvature * x;
  return (curvature * x * x) / (1 + Math.sqrt(Math.max(0, 1 - share * share)));
}

function findWrong(read: readonly ReadSanding[], left: readonly Left[]): SandingFinding[] {
  const lost = left.flatMap(({ path, markerLeft: { now }, hole }): SandingFinding[] => {
    const { keep } = hole.marker.group.fill;
    if (now >= keep) return [];
    const code = now > 0 ? "below-keep" : "nothing-left";
    const limit = now > 0 ? keep : 0;
    return [
      { code, severity: "error", value: now, limit, path, message: tellLoss(path, now, keep) },
    ];
  });
  const past = read.flatMap(({ toGo, along }, reading) =>
    (["centre", "bass", "treble"] as const).flatMap((place): SandingFinding[] => {
      const beyond = -(toGo[place] ?? 0);
      if (!(beyond > PAST)) return [];
      const where = place === "centre" ? "on the centre line" : `at the ${place} edge`;
      const message = `At ${MILLIMETRES.full(along)} from the nut ${where} the sanding is ${MILLIMETRES.miss(beyond)} past the finished surface.`;
      return [
        {
          code: "past-surface",
          severity: "warning",
          value: beyond,
          limit: PAST,
          reading,
          place,
          message,
        },
      ];
    }),
  );
  return [...lost, ...past];
}

function tellLoss(path: string, now: number, keep: number): string {
  if (!(now > 0)) return `The marker ${path} may be sanded away already.`;
  const [told, wanted] = MILLIMETRES.beside(now, keep);
  return `As little as ${told} may be left of the marker ${path}; keep ${wanted}.`;
}
