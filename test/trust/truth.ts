/**
 * One true state of a bench: a design whose stop, layout, thickness, crown and radius are off by something within their
 * tolerances, and a hole drilled at some depth of its window. Then interval arithmetic proves, over every point of the
 * hole, that the marker keeps `keep`, the wood keeps `web` and a solid dot ends flush, or finds a point where it does not.
 * The geometry is written again from docs/formulas.md. Lengths in mm.
 */

import type { Bit, Fill, Hole } from "../../src/index.js";
import type { Line } from "../properties/oracle.js";
import { add, div, Interval, mul, point, sqrt, square, sub } from "./interval.js";

/** How each true value differs from the stated one. */
export interface Errors {
  readonly stop: number;
  readonly along: number;
  readonly offset: number;
  readonly thickness: number;
  readonly crown: number;
  /** A factor. */
  readonly radius: number;
}

/** A board with every default written out, its profiles as straight pieces. */
export interface Bench {
  /** Where there is wood at all. */
  readonly from: number;
  readonly to: number;
  readonly radius: readonly Line[];
  readonly crown: readonly Line[];
  readonly thickness: readonly Line[];
  readonly web: number;
  readonly channel?: { width: number; depth: number; from: number; to: number } | undefined;
}

/** A hole as it was drilled. */
export interface Drilled {
  readonly hole: Hole;
  readonly fill: Fill & { readonly keep: number };
  readonly bit: Bit;
  /** Depth of the rim as set on the stop. */
  readonly depth: number;
  readonly errors: Errors;
}

/** What is not so, by so many mm or more. */
export interface Miss {
  readonly rule: "keep" | "web" | "flush";
  readonly by: number;
  readonly along: number;
  readonly offset: number;
}

/** A stretch of the board without a knot or a channel's border. */
interface Box {
  readonly along: Interval;
  readonly offset: Interval;
}

/** What is judged nearer than this is taken as just touching, mm. */
export const TOUCH = 1e-6;
/** A box as small as this is not split again, mm. */
const FINEST = 1e-8;

/** Every rule over the whole of a hole: the misses, none of them where it is proved. */
export function missesOf(bench: Bench, drilled: Drilled): Miss[] {
  const { hole, fill, depth, errors } = drilled;
  if (!(hole.window.min <= hole.window.max)) throw new Error("no depth of this hole is safe");
  const rim = depth + errors.stop;
  const misses = [
    proved(bench, drilled, "keep", (box) =>
      sub(add(removalOver(bench, errors, box), point(fill.keep)), point(rim)),
    ),
    proved(bench, drilled, "web", (box) => {
      const under = sub(woodOver(bench, errors, box), add(point(rim), leadOver(drilled, box)));
      return sub(point(bench.web), under);
    }),
    pointThrough(bench, drilled, rim),
  ];
  if (fill.kind === "solid") {
    const top = rim - fill.thickness;
    misses.push(
      proved(bench, drilled, "flush", (box) => sub(point(top), removalOver(bench, errors, box))),
    );
  }
  return misses.filter((miss) => miss !== undefined);
}

/** Proves that an excess is nowhere above 0 on the hole, by splitting the box around it; else where it is. */
function proved(
  bench: Bench,
  drilled: Drilled,
  rule: Miss["rule"],
  excess: (box: Box) => Interval,
): Miss | undefined {
  const boxes = startingBoxes(bench, drilled);
  for (let box = boxes.pop(); box !== undefined; box = boxes.pop()) {
    if (liesOutside(drilled, box)) continue;
    const over = excess(box);
    if (over.hi <= TOUCH) continue;
    const middle = middleOf(box);
    const isSmall = widthOf(box.along) < FINEST && widthOf(box.offset) < FINEST;
    if (isSmall || (contains(drilled, middle) && excess(middle).lo > TOUCH)) {
      return { rule, by: over.hi, along: middle.along.lo, offset: middle.offset.lo };
    }
    boxes.push(...halved(box));
  }
  return undefined;
}

/** A Forstner bit's or a brad's point stands on the axis alone. */
function pointThrough(bench: Bench, drilled: Drilled, rim: number): Miss | undefined {
  const { hole, bit, errors } = drilled;
  if (bit.kind !== "forstner" && bit.kind !== "brad-point") return undefined;
  const along = hole.along + errors.along;
  const offset = hole.offset + errors.offset;
  if (!(along >= bench.from && along <= bench.to)) return undefined;
  const axis = { along: point(along), offset: point(offset) };
  const under = sub(woodOver(bench, errors, axis), add(point(rim), point(bit.point)));
  const over = sub(point(bench.web), under);
  return over.lo > TOUCH ? { rule: "web", by: over.lo, along, offset } : undefined;
}

/** Crown and sag: h = x² / (R + √(R² − (1 − m²) x²)), over a box within one piece of each profile. */
function removalOver(bench: Bench, errors: Errors, box: Box): Interval {
  const radius = pieceOf(bench.radius, box.along);
  const crown = pieceOf(bench.crown, box.along);
  const fall = atLeastZero(add(atLeastZero(valueOver(crown, box.along)), point(errors.crown)));
  const R = mul(valueOver(radius, box.along), point(errors.radius));
  if (R.lo === Infinity) return fall;
  const m = radius.slope * errors.radius;
  const x2 = square(box.offset);
  const root = sqrt(sub(square(R), mul(point(1 - m * m), x2)));
  return add(fall, div(x2, add(R, root)));
}

/** The wood from the flat down to the underside, or to the rod channel. */
function woodOver(bench: Bench, errors: Errors, box: Box): Interval {
  const line = pieceOf(bench.thickness, box.along);
  const thickness = add(valueOver(line, box.along), point(errors.thickness));
  const { channel } = bench;
  if (channel === undefined) return thickness;
  const s = (box.along.lo + box.along.hi) / 2;
  const x = (box.offset.lo + box.offset.hi) / 2;
  const isOver = s > channel.from && s < channel.to && Math.abs(x) < channel.width / 2;
  return isOver ? sub(thickness, point(channel.depth)) : thickness;
}

/** How far the bit's body leads its rim: a twist bit's cone, (D/2 − r) / tan(angle/2) at r from the axis. */
function leadOver({ hole, bit, errors }: Drilled, box: Box): Interval {
  if (bit.kind !== "twist") return point(0);
  const radius = hole.diameter / 2;
  const away = sqrt(distanceSquared(hole, errors, box));
  const slope = 1 / Math.tan((((bit.angle ?? 118) / 2) * Math.PI) / 180);
  return atLeastZero(mul(sub(point(radius), away), point(slope)));
}

function distanceSquared(hole: Hole, errors: Errors, box: Box): Interval {
  const along = sub(box.along, point(hole.along + errors.along));
  const offset = sub(box.offset, point(hole.offset + errors.offset));
  return add(square(along), square(offset));
}

/** The box around the hole, cut at every knot and at the channel's borders, as far as there is wood. */
function startingBoxes(bench: Bench, { hole, errors }: Drilled): Box[] {
  const corners = hole.outline ?? discBox(hole);
  const alongs = corners.map(({ along }) => along + errors.along);
  const offsets = corners.map(({ offset }) => offset + errors.offset);
  const pieces = [...bench.radius, ...bench.crown, ...bench.thickness];
  const knots = pieces.flatMap(({ from, to }) => [from, to]);
  const { channel } = bench;
  if (channel) knots.push(channel.from, channel.to);
  const sides = channel ? [-channel.width / 2, channel.width / 2] : [];
  const rows = cut(
    Math.max(bench.from, Math.min(...alongs)),
    Math.min(bench.to, Math.max(...alongs)),
    knots,
  );
  const columns = cut(Math.min(...offsets), Math.max(...offsets), sides);
  return rows.flatMap((along) => columns.map((offset) => ({ along, offset })));
}

function discBox({ along, offset, diameter }: Hole) {
  const radius = diameter / 2;
  return [
    { along: along - radius, offset: offset - radius },
    { along: along + radius, offset: offset + radius },
  ];
}

/** The stretch from a to b, cut at these places. */
function cut(a: number, b: number, places: readonly number[]): Interval[] {
  if (!(a < b)) return [];
  const inside = places.filter((place) => a < place && place < b).sort((p, q) => p - q);
  const ends = [a, ...inside, b];
  return ends.slice(1).map((end, i) => new Interval(ends[i] ?? end, end));
}

/** The box surely lies outside the hole. */
function liesOutside({ hole, errors }: Drilled, box: Box): boolean {
  if (hole.outline === undefined) {
    return distanceSquared(hole, errors, box).lo > (hole.diameter / 2) ** 2 + 1e-12;
  }
  const corners = [box.along.lo, box.along.hi].flatMap((along) =>
    [box.offset.lo, box.offset.hi].map((offset) => ({ along, offset })),
  );
  return sidesOf(hole, errors).some((side) => corners.every((corner) => side(corner) < -1e-9));
}

/** The point surely lies within the hole. */
function contains({ hole, errors }: Drilled, at: Box): boolean {
  if (hole.outline === undefined) {
    return distanceSquared(hole, errors, at).hi <= (hole.diameter / 2) ** 2;
  }
  const spot = { along: at.along.lo, offset: at.offset.lo };
  return sidesOf(hole, errors).every((side) => side(spot) >= 0);
}

/** For each side of a pocket, how far within it a point lies. */
function sidesOf({ outline = [] }: Hole, errors: Errors) {
  type Spot = { readonly along: number; readonly offset: number };
  const corners = outline.map(({ along, offset }) => ({
    along: along + errors.along,
    offset: offset + errors.offset,
  }));
  const middle = {
    along: corners.reduce((sum, { along }) => sum + along, 0) / corners.length,
    offset: corners.reduce((sum, { offset }) => sum + offset, 0) / corners.length,
  };
  return corners.map((a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    const length = Math.hypot(b.along - a.along, b.offset - a.offset);
    const turn = (p: Spot) =>
      ((b.along - a.along) * (p.offset - a.offset) - (b.offset - a.offset) * (p.along - a.along)) /
      length;
    const sign = Math.sign(turn(middle));
    return (p: Spot) => sign * turn(p);
  });
}

function halved({ along, offset }: Box): [Box, Box] {
  if (widthOf(along) >= widthOf(offset)) {
    const [a, b] = halves(along);
    return [
      { along: a, offset },
      { along: b, offset },
    ];
  }
  const [a, b] = halves(offset);
  return [
    { along, offset: a },
    { along, offset: b },
  ];
}

function halves({ lo, hi }: Interval): [Interval, Interval] {
  const middle = lo + (hi - lo) / 2;
  return [new Interval(lo, middle), new Interval(middle, hi)];
}

function middleOf({ along, offset }: Box): Box {
  return {
    along: point(along.lo + (along.hi - along.lo) / 2),
    offset: point(offset.lo + (offset.hi - offset.lo) / 2),
  };
}

function widthOf({ lo, hi }: Interval): number {
  return hi - lo;
}

/** The straight piece that holds a stretch without a knot. */
function pieceOf(lines: readonly Line[], { lo, hi }: Interval): Line {
  const middle = lo + (hi - lo) / 2;
  const line = lines.find(({ from, to }) => from <= middle && middle <= to);
  if (line === undefined) throw new Error("a profile covers the whole board");
  return line;
}

/** A straight piece over a stretch; widened by far more than the rounding of its own two operations. */
function valueOver({ at }: Line, { lo, hi }: Interval): Interval {
  const [a, b] = [at(lo), at(hi)];
  if (a === Infinity || b === Infinity) return new Interval(Infinity, Infinity);
  const slack = 1e-13 * (Math.abs(a) + Math.abs(b) + 1);
  return new Interval(Math.min(a, b) - slack, Math.max(a, b) + slack);
}

function atLeastZero({ lo, hi }: Interval): Interval {
  return new Interval(Math.max(0, lo), Math.max(0, hi));
}
