/** Convex polygons on the flat top: corners in order, as along and offset in turn. Lengths in mm. */
import { elementAt } from "./element-at.js";

/** A point on the flat top. */
export interface Point {
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** Distance from the centre line, mm, bass negative. */
  readonly offset: number;
}

/** A convex polygon's corners in order around it. */
export type Polygon = readonly Point[];

/** The part of a convex polygon that lies on the stretch from `from` to `to`. */
export function clipped(polygon: Polygon, from: number, to: number): Polygon {
  return clippedBelow(clippedBelow(polygon, 1, to), -1, -from);
}

/** The part where sign · along ≤ bound. */
function clippedBelow(polygon: Polygon, sign: 1 | -1, bound: number): Polygon {
  const inside = ({ along }: Point) => sign * along <= bound;
  if (polygon.every(inside)) return polygon;
  const kept: Point[] = [];
  let last = polygon.at(-1) as Point;
  for (const point of polygon) {
    if (inside(last) !== inside(point)) kept.push(between(last, point, sign * bound));
    if (inside(point)) kept.push(point);
    last = point;
  }
  return kept;
}

/** The point of the line from a to b that lies at `along`. */
function between(a: Point, b: Point, along: number): Point {
  const share = (along - a.along) / (b.along - a.along);
  return { along, offset: a.offset + share * (b.offset - a.offset) };
}

/** The convex hull of points (monotone chain), corners in order. */
export function findHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a.along - b.along || a.offset - b.offset);
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(sorted: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of sorted) {
    while (kept.length > 1 && turn(kept.at(-2) as Point, kept.at(-1) as Point, point) <= 0) {
      kept.pop();
    }
    kept.push(point);
  }
  return kept;
}

/** Twice the area of a triangle, positive where it runs counter-clockwise. */
function turn(a: Point, b: Point, c: Point): number {
  return (b.along - a.along) * (c.offset - a.offset) - (b.offset - a.offset) * (c.along - a.along);
}

/** The corners go around a convex outline, in either direction, and enclose an area. */
export function isConvex(polygon: Polygon): boolean {
  const count = polygon.length;
  const turns = polygon.map((b, i) =>
    turn(elementAt(polygon, (i + count - 1) % count), b, elementAt(polygon, (i + 1) % count)),
  );
  const sameWay = turns.every((t) => t >= 0) || turns.every((t) => t <= 0);
  // a star turns one way too, but goes around more than once: it crosses its own fan
  const first = elementAt(polygon, 0);
  const fan = polygon.map((point, i) => turn(first, point, polygon[i + 1] ?? point));
  const oneWay = fan.every((t) => t >= 0) || fan.every((t) => t <= 0);
  return sameWay && oneWay && areaOf(polygon) > 0;
}

/** Area enclosed. */
export function areaOf(polygon: Polygon): number {
  const first = elementAt(polygon, 0);
  const fan = polygon.map((point, i) => turn(first, point, polygon[i + 1] ?? point));
  return Math.abs(fan.reduce((sum, area) => sum + area, 0)) / 2;
}

/** Where two infinite lines cross, each through two points; undefined where they are parallel. */
export function findCrossing(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const abx = b.along - a.along;
  const aby = b.offset - a.offset;
  const cdx = d.along - c.along;
  const cdy = d.offset - c.offset;
  const cross = abx * cdy - aby * cdx;
  const share = ((c.along - a.along) * cdy - (c.offset - a.offset) * cdx) / cross;
  return Number.isFinite(share)
    ? { along: a.along + share * abx, offset: a.offset + share * aby }
    : undefined;
}

/** Distance from a point to the infinite line through a and b, positive to its left seen from a to b. */
export function distanceToLine(point: Point, a: Point, b: Point): number {
  return turn(a, b, point) / Math.hypot(b.along - a.along, b.offset - a.offset);
}

/** Distance from a point to the segment from a to b. */
export function distanceToSegment(point: Point, a: Point, b: Point): number {
  const along = b.along - a.along;
  const offset = b.offset - a.offset;
  const square = along * along + offset * offset;
  const foot = (point.along - a.along) * along + (point.offset - a.offset) * offset;
  const share = square > 0 ? Math.min(1, Math.max(0, foot / square)) : 0;
  return Math.hypot(
    point.along - a.along - share * along,
    point.offset - a.offset - share * offset,
  );
}

/** Distance from a point to a convex polygon; negative within it. */
export function gapToPolygon(point: Point, polygon: Polygon): number {
  const sides = polygon.map((a, i) => [a, elementAt(polygon, (i + 1) % polygon.length)] as const);
  const turns = sides.map(([a, b]) => distanceToLine(point, a, b));
  const within = turns.every((d) => d > 0) || turns.every((d) => d < 0);
  const nearest = Math.min(...sides.map(([a, b]) => distanceToSegment(point, a, b)));
  return within ? -nearest : nearest;
}

/**
 * Distance between two convex polygons; where they overlap, less than 0 by how far they must be moved apart along the
 * normal of one of their sides.
 */
export function gapBetween(a: Polygon, b: Polygon): number {
  const apart = Math.max(separation(a, b), separation(b, a));
  if (apart < 0) return apart;
  return Math.min(
    ...a.map((corner) => gapToPolygon(corner, b)),
    ...b.map((corner) => gapToPolygon(corner, a)),
  );
}

/** The greatest distance at which a line along a side of `a` leaves all of `b` outside; negative where none does. */
function separation(a: Polygon, b: Polygon): number {
  const middle = centreOf(a);
  const gaps = a.map((start, i) => {
    const end = elementAt(a, (i + 1) % a.length);
    const inside = Math.sign(distanceToLine(middle, start, end));
    return Math.min(...b.map((corner) => -inside * distanceToLine(corner, start, end)));
  });
  return Math.max(...gaps);
}

/** The mean of the corners, which lies within. */
function centreOf(polygon: Polygon): Point {
  const share = 1 / polygon.length;
  return polygon.reduce(
    (sum, { along, offset }) => ({
      along: sum.along + along * share,
      offset: sum.offset + offset * share,
    }),
    { along: 0, offset: 0 },
  );
}
