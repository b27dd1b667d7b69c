/** How far the sanding has come, from thicknesses of the board as it is now. Lengths in mm. */
import type { Board } from "../board/board.js";
import type { Design } from "../design/design.js";
import { finishedAt, topAt } from "../drilling/edges.js";
import { spreadFootprint } from "../drilling/grounds.js";
import type { CheckedHole } from "../drilling/holes.js";
import { buildTouches } from "../drilling/touches.js";
import { type Neck, readNeck, workOut } from "../drilling/work.js";
import type { DesignIssue } from "../errors/errors.js";
import { greatestRemoval } from "../geometry/removal.js";
import type { Surface } from "../geometry/surface.js";
import { combined, constantTrack, type Track, valueAt } from "../geometry/track.js";
import { cautionsFor } from "../report/cautions.js";
import { holeNames } from "../text/plain-words.js";
import { refuseAll } from "./read.js";
import { findSandingFaults, type SandingFinding } from "./sanding-findings.js";
import { type PlacedReading, readReadings, type SandingReading } from "./sanding-readings.js";
import {
  type AcrossNow,
  acrossNow,
  greatestNow,
  heldTrack,
  type SurfaceNow,
} from "./sanding-surface.js";

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
  /** The hole's name, as on the card: "fret 12, bass". */
  readonly name: string;
  /** What is left of the marker, mm; negative where it is gone. */
  readonly markerLeft: {
    /** Under the surface now, mm. */
    readonly now: number;
    /** Under the finished surface, or the one now where that is lower, mm. */
    readonly finished: number;
  };
}

/** How far the sanding has come. */
export interface SandingProgress {
  /** The design's. */
  readonly name?: string;
  /** What each reading tells, in the order read. */
  readonly readings: readonly ReadSanding[];
  /** What is left of each marker whose depth is known. */
  readonly holes: readonly MarkerLeft[];
  /** Errors first, then by how far past the limit. */
  readonly findings: readonly SandingFinding[];
  /** What to mind while sanding. */
  readonly cautions: readonly string[];
}

/**
 * How far the sanding has come: at each reading what is off and what is still to go, what is left of each marker now and
 * at the end, and where the sanding has gone past.
 *
 * Through three thicknesses goes one circle (intersecting chords); with one edge it is centred, and where no edge was
 * read at all it is of the finished radius, about the centre line. What is off on the centre line, curvature and tilt are linear between the readings that have them and constant beyond. A block of the
 * finished radius leaves the middle flat at first: the circle lies below such a surface, so no more is told than is left.
 *
 * @param design the neck
 * @param readings 1 to 1000, at different places: `along`, mm from the nut and on the board, or a station; `centre`, `bass` and
 *   `treble`, the board's own thickness there, mm, from 1e-6 to 1e6, the edges within half the width of the centre's
 * @returns the readings, the markers at the depth planned (or drilled), else recommended, findings and cautions
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the readings cannot, with every path
 * @example
 * // an invented neck, half way down on the centre line at the nut
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
  const neck = readNeck(design);
  const issues: DesignIssue[] = [];
  const placed = readReadings(neck.board, readings, issues);
  refuseAll(issues);
  return assessProgress(neck, placed);
}

/** The same, of what was read. */
export function assessProgress(neck: Neck, placed: readonly PlacedReading[]): SandingProgress {
  const { spec, board, holes } = neck;
  const { recommended } = workOut(neck);
  const across = placed.map((reading) => crossBoard(board, reading));
  const read = placed.map((reading, i) => tellReading(board, reading, across[i]));
  const surface = surfaceNow(board, read, across);
  const names = holeNames(holes.map(({ marker }) => marker));
  const touches = buildTouches(board, spec, []);
  const told = holes.flatMap((hole, i) => {
    const { path, group } = hole.marker;
    const depth = hole.planned ?? recommended[i];
    if (depth === undefined) return [];
    const height = touches.get(group.path.group)?.height ?? LEVEL;
    const markerLeft = measureLeft(board, hole, depth, surface, height);
    return [{ keep: group.fill.keep, left: { path, name: names[i] as string, markerLeft } }];
  });
  const left = told.map((each) => each.left);
  const keeps = told.map(({ keep }) => keep);
  // nothing is drilled any more
  const groups = spec.groups.map(({ fill, bit }) => ({ fill, bit, drilled: true }));
  return {
    ...(spec.name === undefined ? {} : { name: spec.name }),
    readings: read,
    holes: left,
    findings: findSandingFaults(read, left, keeps),
    cautions: cautionsFor({ groups }),
  };
}

const LEVEL = constantTrack(0);
const FLAT: Surface = { sanding: LEVEL, radius: constantTrack(Infinity) };

function crossBoard(
  { width }: Board,
  { along, centre, bass, treble }: PlacedReading,
): AcrossNow | undefined {
  return acrossNow(valueAt(width, along) / 2, centre, bass, treble);
}

function tellReading(
  { width, wood, nominal }: Board,
  { along, centre, bass, treble }: PlacedReading,
  across: AcrossNow | undefined,
): ReadSanding {
  const half = valueAt(width, along) / 2;
  const whole = valueAt(wood.thickness, along);
  const toGo = (offset: number, now: number) => finishedAt(nominal, along, offset) - (whole - now);
  const hasCrest = bass !== undefined && treble !== undefined && across?.curvature !== 0;
  return {
    along,
    sanding: whole - centre,
    ...(across && { radius: across.radius }),
    ...(across && hasCrest && { crest: across.crest }),
    toGo: {
      centre: toGo(0, centre),
      ...(bass === undefined ? {} : { bass: toGo(half, bass) }),
      ...(treble === undefined ? {} : { treble: toGo(half, treble) }),
    },
  };
}

/** The surface as it is now; where no edge was read, of the finished radius: no block leaves it rounder. */
function surfaceNow(
  { nominal }: Board,
  read: readonly ReadSanding[],
  across: readonly (AcrossNow | undefined)[],
): SurfaceNow | Surface {
  const sanding = heldTrack(read.map(({ along, sanding }) => ({ along, value: sanding })));
  if (across.every((each) => each === undefined)) {
    return { sanding, radius: nominal.sanded.radius };
  }
  const track = (of: "curvature" | "tilt") =>
    heldTrack(
      read.flatMap(({ along }, i) => {
        const value = across[i]?.[of];
        return value === undefined ? [] : [{ along, value }];
      }),
    );
  return { sanding, curvature: track("curvature"), tilt: track("tilt") };
}

/**
 * Least marker that is left over a hole, at a depth that may be shallower by stop, seat and point. Its floor is level
 * where the stop was zeroed on the table, and what lies over it counts less where the crest line lies higher.
 */
function measureLeft(
  { nominal }: Board,
  { marker, bounds }: CheckedHole,
  depth: number,
  surface: SurfaceNow | Surface,
  height: Track,
): MarkerLeft["markerLeft"] {
  const { along, offset } = marker;
  const { old = FLAT, sanded } = nominal;
  const ground = spreadFootprint(marker, 0);
  const below = <S extends { readonly sanding: Track }>(what: S): S => ({
    ...what,
    sanding: combined(what.sanding, height, -1),
  });
  const floor = depth - bounds.shallower + topAt(nominal, along, offset) - valueAt(height, along);
  const now =
    "radius" in surface
      ? greatestRemoval(below(surface), ground)
      : greatestNow(below(surface), marker);
  // sanding adds no wood
  const gone = Math.max(now, greatestRemoval(below(old), ground));
  const finished = Math.max(gone, greatestRemoval(below(sanded), ground));
  return { now: floor - gone, finished: floor - finished };
}
