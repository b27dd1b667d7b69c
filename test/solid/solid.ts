/**
 * Real solids for a judge: the board's wood, the finished surface and the bit, built of a design and of where its report
 * puts the holes. Nothing here is worked out by a sagitta: a surface is the body of a cylinder, or of a cone that lies so
 * that its top generator is level; sanding that changes along the board shears it, and so does a crest that is not level
 * on the table. What is round is a polygon within it, so fine that heights are right to 1e-4.
 * Axes: x along, y offset, z up from the level of the touch. Profiles are constant or run from nut to end. Lengths in mm.
 */
import Module, { type Manifold as Solid, type Vec2, type Vec3 } from "manifold-3d";
import { cleanup, garbageCollectManifold } from "manifold-3d/lib/garbage-collector.js";
import type { Channel, Design, Hole, RadiusProfile, Stop } from "../../src/index.js";

const wasm = await Module();
wasm.setup();
export const { Manifold } = garbageCollectManifold(wasm);
export type { Solid };

/** Frees every solid made so far. */
export const release = cleanup;

/** Chords of a surface, mm, and sides of a hole. */
const CHORD = 0.25;
const SIDES = 256;
const DEEP = 60;
const BEYOND = 20;

/** z = a + k · x. */
interface Line {
  readonly a: number;
  readonly k: number;
}

function lineOf(profile: RadiusProfile, length: number): Line {
  if (typeof profile !== "object") return { a: profile === "flat" ? Infinity : profile, k: 0 };
  const { nut, end } = profile as { nut: number; end: number };
  return { a: nut, k: (end - nut) / length };
}

/** A board on its bench. */
export interface Bench {
  readonly design: Design;
  readonly stop: Stop;
  /** All that lies under the top as it is, and under the finished surface. */
  readonly top: Solid;
  readonly finished: Solid;
  /** The underside, and the roof of the rod channel. */
  readonly under: Line;
  readonly roof: Line;
}

/** Lays a board out: from the wood with its crest level, from the table as it lies there. */
export function benchOf(design: Design, stop: Stop = {}): Bench {
  const { board, existing, radius, neck, scale } = design;
  const line = (profile: Design["radius"] = 0) => lineOf(profile, board.length);
  const own = line(board.thickness);
  const whole = sum(own, line(neck?.thickness));
  const depth = line(typeof board.channel === "object" ? board.channel.depth : 0);
  const table = stop.from === "table" ? stop : undefined;
  const { k } = table ? (table.height === undefined ? whole : line(table.height)) : line();
  const firstSlot = "length" in scale ? scale.length * (1 - 2 ** (-1 / 12)) : Number.NaN;
  const crest = { a: -k * (table?.zero ?? firstSlot / 2), k };
  const top = sheared(bodyUnder(line(existing?.radius ?? "flat"), board), crest);
  const fresh = bodyUnder(line(radius), board);
  const sanded = sandings(design).map((taken) => sheared(fresh, sum(crest, taken, -1)));
  const finished = Manifold.intersection([top, ...sanded]);
  const roof = sum(crest, sum(own, depth, -1), -1);
  return { design, stop, top, finished, under: sum(crest, whole, -1), roof };
}

function sum(one: Line, other: Line, sign = 1): Line {
  return { a: one.a + sign * other.a, k: one.k + sign * other.k };
}

/** Sanding as the greatest of its lines: level, or falling away from the twelfth fret, half way along the string. */
function sandings({ sanding = 0, scale, board }: Design): Line[] {
  if (typeof sanding === "number") return [{ a: sanding, k: 0 }];
  const { nut = 0, fret12 = 0, end = 0 } = sanding;
  const half = "length" in scale ? scale.length / 2 : Number.NaN;
  const k = (end - fret12) / (board.length - half);
  return [lineOf(nut, half), { a: fret12 - k * half, k }];
}

/** Raised by a line along the board. */
function sheared(body: Solid, { a, k }: Line): Solid {
  return body.transform([1, 0, k, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, a, 1]);
}

/** All that lies under a surface whose crest is level at z = 0, a little wider than the board. */
function bodyUnder({ a, k }: Line, { length, width }: Design["board"]): Solid {
  const [from, to] = [-BEYOND, length + BEYOND];
  const board = lineOf(width, length);
  const half = Math.max(board.a, board.a + board.k * length) / 2 + 1;
  if (a === Infinity) return block([from, -half, -DEEP], [to, half, 0]);
  if (k !== 0) return coneBody(a, k, from, to, half);
  const cylinder = Manifold.extrude([sectorOf(a, a, half)], to - from);
  return cylinder.transform(placed(0, 1, [from, 0, -a]));
}

/**
 * A cone with its apex on the crest line and half-angle α, tan α = |m|. A gauge square to the board, which is square to
 * the level generator, then reads R = |m| · (distance from the apex). A point at distance t along the axis lies t · tan α
 * from it.
 */
function coneBody(radius: number, slope: number, from: number, to: number, half: number): Solid {
  const apex = -radius / slope;
  const alpha = Math.atan(Math.abs(slope));
  const [near, far] = slope > 0 ? [from - apex, to - apex] : [apex - to, apex - from];
  const first = Math.max((near / 2) * Math.cos(alpha), near * Math.cos(alpha) - BEYOND);
  const last = far * Math.cos(alpha) + DEEP * Math.sin(alpha);
  const [small, large] = [first * Math.tan(alpha), last * Math.tan(alpha)];
  const grown: Vec2 = [large / small, large / small];
  const frustum = Manifold.extrude([sectorOf(small, large, half)], last - first, 0, 0, grown);
  return frustum.translate(0, 0, first).transform(placed(alpha, slope > 0 ? 1 : -1, [apex, 0, 0]));
}

/** Turns a body that stands on its axis z, its crest on −x, so that the crest lies level along ± x. */
function placed(alpha: number, sense: 1 | -1, [x, y, z]: [number, number, number]) {
  const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
  const down = [-sense * s, 0, -c, 0] as const;
  const across = [0, 1, 0, 0] as const;
  const axis = [sense * c, 0, -s, 0] as const;
  return [...down, ...across, ...axis, x, y, z, 1] satisfies number[] as Parameters<
    Solid["transform"]
  >[0];
}

/** A sector of a disc of radius r, its arc in chords no longer than CHORD where the radius has grown to `large`. */
function sectorOf(r: number, large: number, half: number): Vec2[] {
  const reach = Math.asin(half / r);
  const count = Math.ceil((2 * reach * large) / CHORD);
  const arc = Array.from({ length: count + 1 }, (_, i): Vec2 => {
    const angle = reach - (2 * reach * i) / count;
    return [-r * Math.cos(angle), r * Math.sin(angle)];
  });
  return [[0, -half], [0, half], ...arc];
}

function block(low: Vec3, high: Vec3): Solid {
  const size = high.map((v, i) => v - (low[i] as number)) as unknown as Vec3;
  return Manifold.cube(size).translate(low);
}

/** The flat, tapered blank with its rod channel, not drilled yet: level at z = 0. */
export function blankOf(bench: Bench): Solid {
  const { length, channel, width } = bench.design.board;
  const { a, k } = lineOf(width, length);
  const ends = [0, length].flatMap((x) =>
    [-1, 1].map((side): Vec2 => [x, (side * (a + k * x)) / 2]),
  );
  const wood = prism(ends, -DEEP, 0).subtract(below(bench.under));
  if (typeof channel !== "object") return wood;
  return wood.subtract(below(bench.roof).intersect(overChannel(bench, 0)));
}

/** A prism over a convex outline. */
function prism(outline: readonly Vec2[], low: number, high: number): Solid {
  return Manifold.hull(
    outline.flatMap(([x, y]) => [low, high].map((z) => [x, y, z] as const)) as Vec3[],
  );
}

/** All that lies below a line. */
function below(line: Line): Solid {
  return sheared(block([-BEYOND, -DEEP, -2 * DEEP], [900, DEEP, 0]), line);
}

/** All that lies within so much of the rod channel, seen from above. */
function overChannel({ design: { board } }: Bench, web: number): Solid {
  const { width, from = 0, to = board.length } = board.channel as Channel;
  return block([from - web, -width / 2 - web, -2 * DEEP], [to + web, width / 2 + web, DEEP]);
}

/** The ground of a hole, from z = `low` to `high`. */
export function columnOf(
  { along, offset, width, outline }: Hole,
  low: number,
  high: number,
): Solid {
  if (outline)
    return prism(
      outline.map((corner) => [corner.along, corner.offset]),
      low,
      high,
    );
  const r = width / 2;
  return Manifold.cylinder(high - low, r, r, SIDES).translate(along, offset, low);
}

/** Where the stop holds the tip, and where the floor then lies. What is drilled was measured from its own top. */
export function heightsOf({ stop, top }: Bench, hole: Hole): { tip: number; floor: number } {
  const { planned, recommended, bit, width, outline, along, offset } = hole;
  const { travel, depth = Number.NaN } = planned ?? recommended ?? {};
  if (travel === undefined) {
    const floor = heightAt(top, along, offset) - depth;
    return { tip: floor, floor };
  }
  const isMilled = bit?.kind === "end-mill" && outline === undefined;
  const foot = Math.max("foot" in stop ? (stop.foot ?? 0) : 0, isMilled ? width : 0);
  const bearing = Math.max(0, Math.abs(offset) - foot / 2);
  const touch = stop.from === "table" ? 0 : heightAt(top, along, bearing);
  const tip = touch - travel - (stop.correction ?? 0);
  if (bit?.kind === "twist") {
    return { tip, floor: tip + width / 2 / Math.tan((bit.angle * Math.PI) / 360) };
  }
  return { tip, floor: tip + (bit && "point" in bit ? bit.point : 0) };
}

/** A point and the spurs are thin: this share of the bit's radius. */
const THIN = 1e-5;

/** What the bit takes: down to its floor, and below that its point, its cone or its spurs. */
export function toolOf(bench: Bench, hole: Hole): Solid {
  const { tip, floor } = heightsOf(bench, hole);
  const { bit, outline } = hole;
  if (outline || bit === undefined || bit.kind === "end-mill") return columnOf(hole, floor, DEEP);
  const r = hole.width / 2;
  const spur = "spur" in bit ? bit.spur : 0;
  const point = [[0, tip], "spur" in bit ? [r * THIN, floor] : [0, tip], [r * (1 - THIN), floor]];
  const profile = [...point, [r, floor - spur], [r, DEEP], [0, DEEP]] as Vec2[];
  return Manifold.revolve([profile], SIDES).translate(hole.along, hole.offset, 0);
}

/** Where a line straight down meets a body. */
export function heightAt(body: Solid, along: number, offset: number): number {
  const hits = body.rayCast([along, offset, DEEP], [along, offset, -2 * DEEP]);
  return Math.max(...hits.map(({ position }) => position[2]));
}

/** The lowest and the highest place of the finished surface over a hole. */
export function finishedOver({ finished }: Bench, hole: Hole): { lowest: number; highest: number } {
  const column = columnOf(hole, -DEEP / 2, DEEP / 2);
  const [above, under] = [column.subtract(finished), column.intersect(finished)];
  return { lowest: above.boundingBox().min[2], highest: under.boundingBox().max[2] };
}

/** The least wood straight below the bit: above the underside, and above the channel for what comes within `web` of it. */
export function woodUnder(bench: Bench, hole: Hole, web: number): number {
  const tool = toolOf(bench, hole);
  const least = (solid: Solid, { a, k }: Line) => {
    return solid.isEmpty() ? Infinity : sheared(solid, { a: -a, k: -k }).boundingBox().min[2];
  };
  const under = least(tool, bench.under);
  if (typeof bench.design.board.channel !== "object" || hole.drilled) return under;
  return Math.min(under, least(tool.intersect(overChannel(bench, web)), bench.roof));
}
