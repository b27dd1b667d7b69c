/** The parts of the check, one function each, for tools that need only one. Lengths in mm. */
import { placeFrets, profileTrack } from "../board/board.js";
import { type FretLine, straightFrets } from "../board/fret-lines.js";
import { completeBit, completeFill, completeStop } from "../design/complete.js";
import type { Bit, Design, Fill, Profile, Scale, Stop } from "../design/design.js";
import { DESIGN } from "../design/fields.js";
import { newReading, type Reading, readField } from "../design/read.js";
import { DesignError, type DesignIssue, makeIssue, refused } from "../errors/errors.js";
import { isObject, readKey } from "../errors/unknown.js";
import { valueAt } from "../geometry/track.js";
import { finishedAt, topAt } from "./edges.js";
import { buildTouch } from "./touches.js";
import { closeWindow, type DepthWindow, findBounds } from "./windows.js";
import { readDesigned, readNeck } from "./work.js";

const { fields } = DESIGN;
const PLACE = fields.markers.item.variants[0].cases.places.fields.places.item.fields;
const SIZE = fields.board.fields.length;
const QUANTITY = {
  kind: "profile",
  of: { ...SIZE, orZero: true },
  says: "A quantity along the board.",
} as const;

/** A field of what may be no object, read by its row of the table. */
function readAt(
  reading: Reading,
  path: readonly string[],
  field: Parameters<typeof readField>[0],
  value: unknown,
): unknown {
  reading.keys.push(...path);
  const read = readField(field, value, reading);
  reading.keys.length -= path.length;
  return read;
}

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
  const read = readAt(newReading(issues), ["scale"], fields.scale, scale) as Scale | undefined;
  if (read && "bass" in read) {
    const expected = "frets square to the centre line; fanned ones are in `fretLines`";
    issues.push(makeIssue("scale", scale, expected));
  }
  if (issues.length > 0) throw new DesignError(issues);
  return [...straightFrets(read as Exclude<Scale, { bass: number }>)];
}

/**
 * Where the nut and each fret meet the centre line and either edge; on fanned boards the three differ.
 *
 * @param design the neck, lengths in mm
 * @returns the nut first, then frets 1, 2, …: distances from the nut along the centre line, mm
 * @throws DesignError where the design cannot be read
 * @example
 * const lines = fretLines({
 *   scale: { bass: 686, treble: 648, square: 7, frets: 24 },
 *   board: { length: 510, width: { nut: 45, end: 62 }, thickness: 6 },
 *   radius: 400,
 *   markers: [],
 * });
 * lines[0].along // 0
 * (lines[7].bass - lines[7].treble).toFixed(9) // "0.000000000"
 */
export function fretLines(design: Design): FretLine[] {
  return [...readNeck(design).board.slots];
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
    /** The frets, which stations name. */
    readonly scale: Scale;
    /** The board, on which they lie. */
    readonly board: {
      /** From the nut to the body end, mm. */
      readonly length: number;
      /** Of the board, mm; fanned frets alone hang on it. */
      readonly width?: Profile;
    };
  },
): number {
  const issues: DesignIssue[] = [];
  const reading = newReading(issues);
  const part = (value: unknown, key: string, path: string) =>
    isObject(value) ? readKey(value, key, path, issues) : undefined;
  const place = readAt(reading, ["along"], PLACE.along, along) as number;
  const scale = readAt(reading, ["scale"], fields.scale, part(design, "scale", "")) as Scale;
  const board = part(design, "board", "");
  const length = readAt(
    reading,
    ["board", "length"],
    SIZE,
    part(board, "length", "board"),
  ) as number;
  const isFanned = scale !== undefined && "bass" in scale;
  const width = isFanned
    ? (readAt(
        reading,
        ["board", "width"],
        fields.board.fields.width,
        part(board, "width", "board"),
      ) as Profile)
    : 1;
  const stated = readAt(reading, ["profile"], QUANTITY, profile) as Profile;
  const slots = issues.length > 0 ? undefined : placeFrets(scale, width, length, issues);
  const alongs = slots?.map((line) => line.along);
  const track = alongs && profileTrack(stated, "profile", alongs, length, issues);
  if (track === undefined) throw new DesignError(issues);
  return valueAt(track, place);
}

/**
 * Removal at a place, without tolerances: how far the finished surface lies below the top as it is.
 *
 * max(S + sag(R, x), sag(R0, x)) − sag(R0, x), with R0 the existing radius.
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
 *   sanding: 0.15,
 *   markers: [],
 * };
 * removalAt(design, 324, 20).toFixed(4) // "0.9386"
 */
export function removalAt(design: Design, along: number, offset: number): number {
  const { board } = readNeck(design);
  const issues: DesignIssue[] = [];
  const reading = newReading(issues);
  const s = readAt(reading, ["along"], PLACE.along, along) as number;
  const x = readAt(reading, ["offset"], PLACE.offset, offset) as number;
  if (issues.length > 0) throw new DesignError(issues);
  const removal = finishedAt(board.nominal, s, x) - topAt(board.nominal, s, x);
  if (!(removal < Infinity)) {
    throw refused("offset", offset, "a place that the finished surface reaches");
  }
  return removal;
}

/** A hole anywhere on a board. */
export interface HoleAt {
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** Distance from the centre line, mm, bass negative. */
  readonly offset: number;
  /** Diameter of the hole, mm. */
  readonly diameter: number;
  /** What fills it; where left out the design's own, or epoxy with the usual keep. */
  readonly fill?: Fill | undefined;
  /** What drills it; where left out the design's own, or a Forstner bit with the usual point. */
  readonly bit?: Bit | undefined;
  /** What the travel is counted from; where left out the design's own, or the wood at the hole. */
  readonly stop?: Stop | undefined;
}

const HOLE = {
  kind: "object",
  fields: {
    along: PLACE.along,
    offset: PLACE.offset,
    diameter: SIZE,
    fill: fields.fill,
    bit: fields.bit,
    stop: fields.stop,
  },
} as const;

/**
 * A hole's window: the depths of its floor that keep the marker and the board, in the worst case of the design's
 * tolerances, over the whole disc.
 *
 * @param design the neck; its own markers do not matter
 * @param hole place and diameter, mm
 * @returns the window, mm; the bit's lead and the stop's rise, mm: travel = depth + lead − rise − correction; min > max: no depth suits
 * @throws DesignError where the design or the hole cannot be read, or the finished surface does not reach the hole
 * @example
 * // an invented board
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: "flat",
 *   markers: [],
 * };
 * holeWindow(design, { along: 300, offset: 0, diameter: 6 }).min.toFixed(2) // "1.20"
 * holeWindow(design, { along: 300, offset: 0, diameter: 6 }).max.toFixed(2) // "3.80"
 */
export function holeWindow(
  design: Design,
  hole: HoleAt,
): DepthWindow & {
  /** How far the tip lies below the floor, mm. */
  readonly lead: number;
  /** How much deeper below the top the tip lies than the travel says, mm. */
  readonly rise: number;
} {
  const { stated, neck } = readDesigned(design);
  const { spec, board } = neck;
  const issues: DesignIssue[] = [];
  const read = readAt(newReading(issues), ["hole"], HOLE, hole) as HoleAt;
  if (issues.length > 0) throw new DesignError(issues);
  const fill = completeFill(read.fill ?? stated.fill, "hole.fill", {});
  const bit = completeBit(read.bit ?? stated.bit, "hole.bit", {});
  const stop = completeStop(read.stop ?? stated.stop, "hole.stop", {});
  const touch = buildTouch(board, spec, stop, "hole.stop", issues);
  if (touch === undefined || issues.length > 0) throw new DesignError(issues);
  const { along, offset, diameter } = read;
  const group = { fill, bit, drilled: false };
  const bounds = findBounds(board, spec, touch, { along, offset, width: diameter, group });
  if (!(bounds.removal < Infinity)) {
    const expected = "a place that the finished surface reaches, within the tolerances";
    throw new DesignError([makeIssue("hole.offset", offset, expected)]);
  }
  return { ...closeWindow(bounds, group, spec.web), lead: bounds.lead, rise: bounds.rise };
}
