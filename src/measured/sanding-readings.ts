/** Thicknesses of the board as it is now. Lengths in mm. */
import { type Board, firstAlong, stationAlong } from "../board/board.js";
import type { Station } from "../design/design.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { valueAt } from "../geometry/track.js";
import { readFields, readList, readNumber, SIZE } from "./read.js";

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

/** A reading with its place along the board. */
export interface PlacedReading extends SandingReading {
  readonly along: number;
}

const COUNTS = { least: 1, most: 1000, what: "readings" };
/** Readings nearer than this are at one place, mm. */
const NEAR = 1e-6;

/** The readings of a board, placed along it. What is wrong is added to `issues`. */
export function readReadings(
  board: Board,
  readings: unknown,
  issues: DesignIssue[],
): PlacedReading[] {
  const placed = readList(readings, "readings", COUNTS, issues, (item, path) =>
    readReading(board, item, path, issues),
  );
  placed.forEach(({ along }, i) => {
    if (placed.slice(0, i).some((other) => Math.abs(other.along - along) < NEAR))
      issues.push(makeIssue(`readings.${i}.along`, along, "a place that was not read before"));
  });
  return placed;
}

function readReading(
  board: Board,
  item: unknown,
  path: string,
  issues: DesignIssue[],
): PlacedReading | undefined {
  const fields = readFields(item, path, ["along", "centre", "bass", "treble"], issues);
  if (fields === undefined) return undefined;
  const along = placeReading(board, fields.along, `${path}.along`, issues);
  const centre = readNumber(fields.centre, `${path}.centre`, SIZE, issues);
  const half = valueAt(board.width, along) / 2;
  const edge = (key: "bass" | "treble") => {
    if (fields[key] === undefined) return {};
    const thickness = readNumber(fields[key], `${path}.${key}`, SIZE, issues);
    if (Math.abs(centre - thickness) > half) {
      const expected = `a thickness within half the width, ${half} mm, of the centre's`;
      issues.push(makeIssue(`${path}.${key}`, thickness, expected));
    }
    return { [key]: thickness };
  };
  return { along, centre, ...edge("bass"), ...edge("treble") };
}

/** Where a reading lies along the board; NaN, with an issue, where that is off it. */
function placeReading(board: Board, along: unknown, path: string, issues: DesignIssue[]): number {
  const { alongs, length } = board;
  const last = alongs.filter((at) => at <= length).length - 1;
  const place = typeof along === "string" ? stationPlace(board, along) : along;
  const start = firstAlong(board);
  if (typeof place === "number" && place >= start && place <= length) return place + 0;
  const stations = last > 0 ? `"nut", "end", or "fret1" to "fret${last}"` : `"nut" or "end"`;
  issues.push(makeIssue(path, along, `a number from ${start} to ${length} mm, ${stations}`));
  return Number.NaN;
}

function stationPlace({ alongs, length }: Board, name: string): number | undefined {
  const isStation = /^(nut|end|fret[1-9]\d{0,2})$/.test(name);
  return isStation ? stationAlong(name as Station, alongs, length) : undefined;
}
