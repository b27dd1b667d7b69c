/** Points measured across a board, as both fits read and take them. */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import type { Vector } from "./arc.js";
import { POSITION, readFields, readList, readNumber } from "./read.js";

/** A point across a board. */
export interface ProfilePoint {
  /** Across the board, mm; in `fitCompound` from the centre line. */
  readonly offset: number;
  /** Upward, from any level, mm. */
  readonly height: number;
}

const LEAST_POINTS = 3;
const MOST_POINTS = 1000;

/** From the first to the last, mm. */
const LEAST_BREADTH = 1e-3;

/** Reads the points of one section: three different offsets at least. */
export function readPoints(value: unknown, path: string, issues: DesignIssue[]): ProfilePoint[] {
  const before = issues.length;
  const counts = { least: LEAST_POINTS, most: MOST_POINTS, what: "points" };
  const points = readList(value, path, counts, issues, (item, at) => readPoint(item, at, issues));
  if (issues.length === before) refuseNarrow(points, path, issues);
  return points;
}

function readPoint(value: unknown, path: string, issues: DesignIssue[]): ProfilePoint | undefined {
  const fields = readFields(value, path, ["offset", "height"], issues);
  return (
    fields && {
      offset: readNumber(fields.offset, `${path}.offset`, POSITION, issues),
      height: readNumber(fields.height, `${path}.height`, POSITION, issues),
    }
  );
}

function refuseNarrow(points: readonly ProfilePoint[], path: string, issues: DesignIssue[]): void {
  const places = points.map(({ offset }) => offset);
  const breadth = Math.max(...places) - Math.min(...places);
  if (new Set(places).size >= LEAST_POINTS && breadth >= LEAST_BREADTH) return;
  const expected = `${LEAST_POINTS} different offsets or more, over ${LEAST_BREADTH} mm or more`;
  issues.push(makeIssue(path, points, expected));
}

/** Points about their mean, mm. */
export interface Centred {
  readonly mean: Vector;
  readonly points: readonly Vector[];
}

/** Counted from the first point, so that points at one height have exactly none about their mean. */
export function centred(points: readonly ProfilePoint[]): Centred {
  const [first = { offset: 0, height: 0 }] = points;
  const from = points.map((p) => ({ x: p.offset - first.offset, y: p.height - first.height }));
  const x = from.reduce((sum, point) => sum + point.x, 0) / from.length;
  const y = from.reduce((sum, point) => sum + point.y, 0) / from.length;
  return {
    mean: { x: first.offset + x, y: first.height + y },
    points: from.map((point) => ({ x: point.x - x, y: point.y - y })),
  };
}

/** How far the farthest lies from the mean. */
export function reach({ points }: Centred): number {
  return Math.max(...points.map(({ x, y }) => Math.hypot(x, y)));
}

/** In units of a length. */
export function scaled({ points }: Centred, unit: number): Vector[] {
  return points.map(({ x, y }) => ({ x: x / unit, y: y / unit }));
}
