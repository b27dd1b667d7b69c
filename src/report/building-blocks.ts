/** The parts of the check, one function each, for tools that need only one. Lengths in mm. */
import { placeFrets, profileTrack } from "../board/board.js";
import type { FretLine } from "../board/fret-lines.js";
import type { Bit, Design, Fill, Profile, Scale } from "../design/design.js";
import { type Bound, fieldOf, readFields, readNumber, SIZE } from "../design/read-fields.js";
import { readBit, readFill } from "../design/read-markers.js";
import { readProfile } from "../design/read-profile.js";
import { readScale } from "../design/read-scale.js";
import { fretCount } from "../design/spec.js";
import { prepare } from "../drilling/neck.js";
import { boundsOf, type Window, windowOf } from "../drilling/windows.js";
import { DesignError, type DesignIssue, issueOf, refused, whole } from "../errors/errors.js";
import { removalOn } from "../geometry/removal.js";
import { valueAt } from "../geometry/track.js";

const FINITE: Bound = { what: "a finite number of mm", accepts: Number.isFinite };
const QUANTITY: Bound = { what: "a number of 0 or more", accepts: (value) => value >= 0 };

/**
 * Positions of frets 1, 2, … from the nut along the centre line.
 *
 * Twelve-tone equal temperament, s_n = L(1 − 2^(−n/12)), or the positions as given.
 *
 * @param scale scale length in mm and number of frets (1 to 250), or a list of rising positions in mm
 * @returns the positions, mm
 * @throws DesignError where the scale cannot be read
 * @example
 * fretPositions({ length: 648, frets: 12 })[11] // 324
 */
export function fretPositions(scale: Scale): number[] {
  const issues: DesignIssue[] = [];
  const read = readScale(scale, issues);
  if (read?.kind === "fanned") {
    issues.push(
      issueOf("scale", scale, "frets square to the centre line; fanned ones are in `fretLines`"),
    );
  }
  const positions = read?.kind === "straight" ? read.positions : undefined;
  return [...whole({ positions }, issues).positions];
}

/**
 * Where the nut and each fret meet the centre line and either edge; on fanned boards the three differ.
 *
 * @param design the neck, lengths in mm
 * @returns the nut first, then frets 1, 2, …: distances from the nut along the centre line, mm
 * @throws DesignError where the design cannot be read
 * @example
 * const lines = fretLines({
 *   scale: { bass: 686, treble: 648, perpendicular: 7, frets: 24 },
 *   board: { length: 510, width: { nut: 45, end: 62 }, thickness: 6 },
 *   radius: 400,
 *   markers: [],
 * });
 * lines[0].along // 0
 * (lines[7].bass - lines[7].treble).toFixed(9) // "0.000000000"
 */
export function fretLines(design: Design): FretLine[] {
  return [...prepare(design).board.slots];
}

/**
 * Value of a profile at a place along the board.
 *
 * Linear between neighbouring stations; the first and last pieces extend outward, one station alone is a
 * constant.
 *
 * @param profile a number, or values at stations; 0 or more
 * @param along distance from the nut along the centre line, mm
 * @param design where its stations lie: its scale and its board's length are read, and its width where frets are fanned
 * @returns the value there, in the profile's own unit
 * @throws DesignError where an argument cannot be read
 * @example
 * profileAt({ nut: 43, end: 57 }, 241, {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482 },
 * }) // 50
 */
export function profileAt(
  profile: Profile,
  along: number,
  design: {
    readonly scale: Scale;
    readonly board: { readonly length: number; readonly width?: Profile };
  },
): number {
  const issues: DesignIssue[] = [];
  const place = readNumber(along, "along", FINITE, issues);
  const stated = partOf(design, "scale", "", issues);
  const board = partOf(design, "board", "", issues);
  const scale = readScale(stated, issues);
  const count = scale && fretCount(scale);
  const length = readNumber(partOf(board, "length", "board", issues), "board.length", SIZE, issues);
  const fanned = scale?.kind === "fanned";
  const width = fanned
    ? readProfile(partOf(board, "width", "board", issues), "board.width", SIZE, count, issues)
    : 1;
  const spec = readProfile(profile, "profile", QUANTITY, count, issues);
  const read = whole({ scale, width, length, spec, place }, issues);
  const slots = placeFrets(read.scale, read.width, read.length, issues);
  const alongs = slots?.map((line) => line.along);
  const track = alongs && profileTrack(read.spec, "profile", alongs, read.length, issues);
  return valueAt(whole({ track }, issues).track, read.place);
}

/** A field of what may be no object at all. */
function partOf(value: unknown, key: string, path: string, issues: DesignIssue[]): unknown {
  const isObject = typeof value === "object" && value !== null;
  return isObject ? fieldOf(value, key, path, issues) : undefined;
}

/**
 * Removal at a place: the crown there and the sagitta of the finished radius, without tolerances.
 *
 * @param design the neck
 * @param along distance from the nut along the centre line, mm
 * @param offset distance from the centre line, mm, bass negative
 * @returns what is removed there, mm, downward from the flat top
 * @throws DesignError where the design, `along` or `offset` cannot be read
 * @throws RangeError where the finished surface does not reach the place
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   crown: 0.15,
 *   markers: [],
 * };
 * removalAt(design, 324, 20).toFixed(4) // "0.9386"
 */
export function removalAt(design: Design, along: number, offset: number): number {
  const { board } = prepare(design);
  const issues: DesignIssue[] = [];
  const place = {
    s: readNumber(along, "along", FINITE, issues),
    x: readNumber(offset, "offset", FINITE, issues),
  };
  const { s, x } = whole(place, issues);
  const removal = removalOn(board.nominal, s, x);
  if (!(removal < Infinity)) {
    throw refused("offset", offset, "a place that the finished surface reaches");
  }
  return removal;
}

/** A hole anywhere on a board. */
export interface HoleAt {
  readonly along: number;
  readonly offset: number;
  readonly diameter: number;
  /** Where left out: the design's own, or epoxy with the usual keep. */
  readonly fill?: Fill;
  /** Where left out: the design's own, or a Forstner bit with the usual point. */
  readonly bit?: Bit;
}

/**
 * A hole's window: the depths of the bit's rim that keep the marker and the board, in the worst case of
 * the design's tolerances, over the whole disc.
 *
 * @param design the neck; its own markers do not matter
 * @param hole place and diameter, mm
 * @returns the window, mm, and the bit's lead, mm; min > max: no depth suits
 * @throws DesignError where the design or the hole cannot be read, or the finished surface does not reach the hole
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: Infinity,
 *   markers: [],
 * };
 * holeWindow(design, { along: 300, offset: 0, diameter: 6 }).min.toFixed(2) // "1.10"
 * holeWindow(design, { along: 300, offset: 0, diameter: 6 }).max.toFixed(2) // "3.80"
 */
export function holeWindow(design: Design, hole: HoleAt): Window & { readonly lead: number } {
  const { spec, board } = prepare(design);
  const issues: DesignIssue[] = [];
  const context = { issues, assumed: {} };
  const fields = readFields(hole, "hole", ["along", "offset", "diameter", "fill", "bit"], issues);
  const read = {
    along: readNumber(fields?.along, "hole.along", FINITE, issues),
    offset: readNumber(fields?.offset, "hole.offset", FINITE, issues),
    diameter: readNumber(fields?.diameter, "hole.diameter", SIZE, issues),
    fill: readFill(fields?.fill ?? design.fill, "hole.fill", context),
    bit: readBit(fields?.bit ?? design.bit, "hole.bit", context),
  };
  const { along, offset, diameter, fill, bit } = whole(read, issues);
  const bounds = boundsOf(board, spec, { along, offset, diameter, group: { fill, bit } });
  if (!(bounds.removal < Infinity)) {
    const expected = "a place that the finished surface reaches, within the tolerances";
    throw new DesignError([issueOf("hole.offset", offset, expected)]);
  }
  return { ...windowOf(bounds, fill.keep, spec), lead: bounds.lead };
}
