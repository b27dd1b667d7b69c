/**
 * Real solids for a judge: the blank and its rod channel, each hole with its bit, each filling, and the finished
 * surface, built of a design and of where its report puts the holes. Nothing here is worked out by a sagitta: a
 * finished surface is the body of a cylinder, or of a cone that lies so that its top generator is level, and
 * fall-away shears it. What is round becomes a polygon, once within the true shape and once around it, so that two
 * readings hold the true one between them.
 * Axes: x along, y offset, z up from the flat top. Lengths in mm.
 */
import Module, { type Manifold as Solid, type Vec2 } from "manifold-3d";
import { cleanup, garbageCollectManifold } from "manifold-3d/lib/garbage-collector.js";
import type { Design, Hole, Profile } from "../../src/index.js";

const wasm = await Module();
wasm.setup();
export const { Manifold } = garbageCollectManifold(wasm);
export type { Solid };

/** Frees every solid made so far. */
export const release = cleanup;

/** Frees every solid that the work made. */
export function judged<Result>(work: () => Result): Result {
  try {
    return work();
  } finally {
    cleanup();
  }
}

/** How fine the polygons are: chords of the finished surface, mm, and sides of a hole. */
export interface Mesh {
  readonly chord: number;
  readonly sides: number;
}

/** The polygon lies within the true shape, or around it. */
export type Fit = "within" | "around";

/** The same mesh with twice as many chords and sides. */
export function finer({ chord, sides }: Mesh): Mesh {
  return { chord: chord / 2, sides: sides * 2 };
}

/** A linear piece of a profile. */
interface Line {
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
}

/** Where the nut, the frets and the end lie: twelve-tone equal temperament, or the listed positions. */
export function placesOf({ scale, board }: Design): ReadonlyMap<string, number> {
  if ("bass" in scale) throw new Error("a straight board is expected");
  const frets =
    "positions" in scale
      ? scale.positions
      : Array.from({ length: scale.frets }, (_, i) => scale.length * (1 - 2 ** (-(i + 1) / 12)));
  const named = frets.map((along, i) => [`fret${i + 1}`, along] as const);
  return new Map([["nut", 0], ...named, ["end", board.length]]);
}

/** A profile's linear pieces; the outer ones run past the nut and the end by `beyond`. */
export function linesOf(profile: Profile, design: Design, beyond = 0): Line[] {
  const first = -beyond;
  const last = design.board.length + beyond;
  const knots = knotsOf(profile, placesOf(design));
  const inner = knots.slice(1, -1).map(([at]) => at);
  const cuts = [first, ...inner.filter((at) => first < at && at < last), last];
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i] ?? first;
    return { from, to, ...endsOn(knots, from, to) };
  });
}

function knotsOf(profile: Profile, places: ReadonlyMap<string, number>): Vec2[] {
  if (typeof profile === "number") return [[0, profile]];
  const knots = Object.entries(profile).map(([name, value]): Vec2 => {
    return [places.get(name) ?? Number.NaN, value ?? Number.NaN];
  });
  return knots.sort((a, b) => a[0] - b[0]);
}

/** Values at both ends of a stretch without a knot inside. */
function endsOn(knots: readonly Vec2[], from: number, to: number) {
  const middle = (from + to) / 2;
  const after = Math.max(
    1,
    knots.findIndex(([at], i) => i > 0 && (middle <= at || i === knots.length - 1)),
  );
  const [a, b] = [knots[after - 1], knots[after] ?? knots[after - 1]];
  if (a === undefined || b === undefined) throw new Error("a profile without a value");
  const slope = a === b || a[1] === b[1] ? 0 : (b[1] - a[1]) / (b[0] - a[0]);
  const at = (s: number) => (slope === 0 ? a[1] : a[1] + slope * (s - a[0]));
  return { start: at(from), end: at(to) };
}

/** Value of a profile at a place. */
export function valueAt(profile: Profile, design: Design, along: number): number {
  const lines = linesOf(profile, design, 100);
  const line = lines.find(({ to }) => along <= to) ?? lines.at(-1);
  if (line === undefined) throw new Error("a profile without a piece");
  if (line.start === line.end) return line.start;
  return line.start + ((line.end - line.start) * (along - line.from)) / (line.to - line.from);
}

/** A stretch of the finished board: everything under the surface there. It runs a little past its ends. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly body: Solid;
}

const BEYOND = 30;
const DEEP = 40;
const RIM = 6;

/** The finished surface as bodies, one for each stretch where the radius and the crown are linear. */
export function finished(design: Design, mesh: Mesh, fit: Fit): Stretch[] {
  const { radius, crown = 0.15, board } = design;
  const crowns = linesOf(crown, design, BEYOND);
  const radii = linesOf(radius, design, BEYOND);
  const widths = linesOf(board.width, design).flatMap(({ start, end }) => [start, end]);
  const half = Math.max(...widths) / 2 + 1;
  return radii.flatMap((r) =>
    crowns.flatMap((c) => {
      const [from, to] = [Math.max(r.from, c.from), Math.min(r.to, c.to)];
      if (!(from < to)) return [];
      const round = roundBody(r, from - RIM, to + RIM, half, mesh.chord, fit);
      return [{ from, to, body: lowered(round, c) }];
    }),
  );
}

/** Falls away with the crown: z − crown(x). */
function lowered(body: Solid, { from, to, start, end }: Line): Solid {
  const k = (end - start) / (to - from);
  return body.transform([1, 0, -k, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, k * from - start, 1]);
}

/** Everything under a round surface with a level crest at z = 0. */
function roundBody(
  radius: Line,
  from: number,
  to: number,
  half: number,
  chord: number,
  fit: Fit,
): Solid {
  const slope =
    radius.start === radius.end ? 0 : (radius.end - radius.start) / (radius.to - radius.from);
  if (radius.start === Infinity) return block([from, -half, -DEEP], [to, half, 0]);
  if (slope !== 0) return coneBody(radius, slope, from, to, half, chord, fit);
  const R = radius.start;
  const sector = sectorOf(R, half, R, chord, fit);
  return Manifold.extrude([sector], to - from).transform(placed(0, 1, [from, 0, -R]));
}

/**
 * A cone with its apex on the crest line and half-angle α, tan α = |m|. A gauge square to the board, which is square
 * to the level generator, then reads R = |m| · (distance from the apex). A point at distance t along the axis lies
 * t · tan α from it.
 */
function coneBody(
  radius: Line,
  slope: number,
  from: number,
  to: number,
  half: number,
  chord: number,
  fit: Fit,
): Solid {
  const apex = radius.from - radius.start / slope;
  const alpha = Math.atan(Math.abs(slope));
  const [near, far] = slope > 0 ? [from - apex, to - apex] : [apex - to, apex - from];
  const first = Math.max((near / 2) * Math.cos(alpha), near * Math.cos(alpha) - RIM);
  const last = far * Math.cos(alpha) + DEEP * Math.sin(alpha);
  const [small, large] = [first * Math.tan(alpha), last * Math.tan(alpha)];
  const sector = sectorOf(small, half, large, chord, fit);
  const frustum = Manifold.extrude([sector], last - first, 0, 0, [large / small, large / small]);
  return frustum.translate(0, 0, first).transform(placed(alpha, slope > 0 ? 1 : -1, [apex, 0, 0]));
}

/** Turns a body that stands on its axis z, its crest on −x, so that the crest lies level along ± x. */
function placed(alpha: number, sense: 1 | -1, [x, y, z]: [number, number, number]) {
  const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
  const down = [-sense * s, 0, -c, 0] as const;
  const across = [0, 1, 0, 0] as const;
  const axis = [sense * c, 0, -s, 0] as const;
  return [...down, ...across, ...axis, x, y, z, 1] satisfies number[] as Matrix;
}
type Matrix = Parameters<Solid["transform"]>[0];

/**
 * A sector of a disc of radius r, as wide as `half` to either side, its arc in chords that are at most `chord` long
 * where the radius has grown to `large`; down to the axis.
 */
function sectorOf(r: number, half: number, large: number, chord: number, fit: Fit): Vec2[] {
  const reach = Math.asin(half / r);
  const count = Math.ceil((2 * reach * large) / chord);
  const turn = (2 * reach) / count;
  const R = fit === "within" ? r : r / Math.cos(turn / 2);
  const arc = Array.from({ length: count + 1 }, (_, i): Vec2 => {
    const angle = reach - i * turn;
    return [-R * Math.cos(angle), R * Math.sin(angle)];
  });
  return [[0, -R * Math.sin(reach)], [0, R * Math.sin(reach)], ...arc];
}

/** A box between two corners. */
export function block(low: [number, number, number], high: [number, number, number]): Solid {
  const size = high.map((v, i) => v - (low[i] ?? 0)) as [number, number, number];
  return Manifold.cube(size).translate(low);
}

/** A prism over a convex outline in the plane of the flat top, from z = `low` to `high`. */
function prism(outline: readonly Vec2[], low: number, high: number): Solid {
  const area = outline.reduce((sum, [x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] ?? [0, 0];
    return sum + x * v - u * y;
  }, 0);
  const corners = area > 0 ? [...outline] : [...outline].reverse();
  return Manifold.extrude([corners], high - low).translate(0, 0, low);
}

/** A prism along y over an outline in the x–z plane, `half` to either side. */
function slabAlong(outline: readonly Vec2[], half: number): Solid {
  const flat = prism(outline, -half, half);
  // x → x, y → z, z → −y
  return flat.transform([1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1]);
}

/** The flat, tapered blank with its rod channel, not drilled yet. */
export function blankOf(design: Design): Solid {
  const { width, thickness, channel } = design.board;
  const widths = linesOf(width, design);
  const side = cornersOf(widths).map(([s, w]): Vec2 => [s, w / 2]);
  const plan = [...side, ...side.map(([s, y]): Vec2 => [s, -y]).reverse()];
  const floor = cornersOf(linesOf(thickness, design)).map(([s, t]): Vec2 => [s, -t]);
  const profile: Vec2[] = [...floor, [design.board.length, 0], [0, 0]];
  const whole = prism(plan, -DEEP, 1).intersect(slabAlong(profile, DEEP));
  return channel === undefined ? whole : whole.subtract(channelOf(design, channel, -DEEP));
}

function cornersOf(lines: readonly Line[]): Vec2[] {
  const last = lines.at(-1);
  const starts = lines.map(({ from, start }): Vec2 => [from, start]);
  return last === undefined ? starts : [...starts, [last.to, last.end]];
}

/** The rod channel: its roof follows the underside at the channel's depth. */
function channelOf(
  design: Design,
  { width, depth, from = 0, to = design.board.length }: NonNullable<Design["board"]["channel"]>,
  bottom: number,
): Solid {
  const roof = cornersOf(linesOf(design.board.thickness, design)).map(([s, t]): Vec2 => {
    return [s, depth - t];
  });
  const profile: Vec2[] = [...roof, [design.board.length, bottom], [0, bottom]];
  return slabAlong(profile, width / 2).intersect(block([from, -DEEP, -DEEP], [to, DEEP, DEEP]));
}

/** The ground of a hole, from z = `low` to `high`. */
export function columnOf(hole: Hole, low: number, high: number, mesh: Mesh, fit: Fit): Solid {
  if (hole.outline) {
    return prism(
      hole.outline.map(({ along, offset }): Vec2 => [along, offset]),
      low,
      high,
    );
  }
  const r = hole.diameter / 2;
  return turned(
    hole,
    [
      [0, low],
      [r, low],
      [r, high],
      [0, high],
    ],
    mesh,
    fit,
  );
}

/** What the bit takes, its rim at `depth`: the point of a Forstner or brad-point bit is a thin spike on the axis. */
export function toolOf(hole: Hole, depth: number, top: number, mesh: Mesh, fit: Fit): Solid {
  if (hole.outline) return columnOf(hole, -depth, top, mesh, fit);
  const { bit } = hole;
  const r = hole.diameter / 2;
  const wall: Vec2[] = [
    [r, -depth],
    [r, top],
    [0, top],
  ];
  if (bit.kind === "end-mill") return turned(hole, [[0, -depth], ...wall], mesh, fit);
  if (bit.kind === "twist") {
    const cone = r / Math.tan((bit.angle * Math.PI) / 360);
    return turned(hole, [[0, -depth - cone], ...wall], mesh, fit);
  }
  const spike: Vec2[] =
    bit.point > 0
      ? [
          [0, -depth - bit.point],
          [r * SPIKE, -depth],
        ]
      : [[0, -depth]];
  return turned(hole, [...spike, ...wall], mesh, fit);
}

const SPIKE = 1e-4;

/** An outline in (distance from the axis, z), turned about the hole's axis. */
function turned(hole: Hole, outline: Vec2[], mesh: Mesh, fit: Fit): Solid {
  const half = Math.PI / mesh.sides;
  const grown = outline.map(([r, z]): Vec2 => [fit === "around" ? r / Math.cos(half) : r, z]);
  // flats toward the edges within, corners around: both the farthest from the true reach
  const phase = fit === "around" ? 0 : 180 / mesh.sides;
  return Manifold.revolve([grown], mesh.sides)
    .rotate(0, 0, phase)
    .translate(hole.along, hole.offset, 0);
}

/** The filling of a hole whose rim is at `depth`: poured flush with the flat top, or a dot that stands on the floor. */
export function fillingOf(hole: Hole, depth: number, mesh: Mesh, fit: Fit): Solid {
  return hole.fill.kind === "poured"
    ? toolOf(hole, depth, 0, mesh, fit)
    : columnOf(hole, -depth, hole.fill.thickness - depth, mesh, fit);
}

/** A true value lies between the two. */
export interface Reading {
  readonly low: number;
  readonly high: number;
}

/** Both finished surfaces of a mesh. */
export interface Surfaces {
  readonly mesh: Mesh;
  readonly within: readonly Stretch[];
  readonly around: readonly Stretch[];
}

export function surfacesOf(design: Design, mesh: Mesh): Surfaces {
  const [within, around] = [finished(design, mesh, "within"), finished(design, mesh, "around")];
  return { mesh, within, around };
}

/** The greatest removal over a hole's ground: the lowest place of what stands above the finished surface there. */
export function greatestRemoval(hole: Hole, { mesh, within, around }: Surfaces): Reading {
  const lowest = (fit: Fit, stretches: readonly Stretch[]) => {
    const column = columnOf(hole, -DEEP / 2, 1, mesh, fit);
    const above = parts(column, stretches).map(({ part, body }) => part.subtract(body));
    return -Math.min(...above.map((solid) => solid.boundingBox().min[2]));
  };
  return { low: lowest("within", around), high: lowest("around", within) };
}

/** The least removal there: the highest place of what stands below the finished surface. */
export function leastRemoval(hole: Hole, { mesh, within, around }: Surfaces): Reading {
  const highest = (fit: Fit, stretches: readonly Stretch[]) => {
    const column = columnOf(hole, -DEEP / 2, 1, mesh, fit);
    const below = parts(column, stretches).map(({ part, body }) => part.intersect(body));
    return -Math.max(...below.map((solid) => solid.boundingBox().max[2]));
  };
  return { low: highest("around", around), high: highest("within", within) };
}

/** Removal at a point: where a line straight down meets the finished surface. */
export function removalAtPoint(
  { within, around }: Surfaces,
  along: number,
  offset: number,
): Reading {
  const [low, high] = [around, within].map((stretches) => {
    const stretch = stretches.find(({ to }) => along <= to) ?? stretches.at(-1);
    const hits = stretch?.body.rayCast([along, offset, 5], [along, offset, -15]) ?? [];
    return -Math.max(...hits.map(({ position }) => position[2]));
  });
  return { low: low ?? Number.NaN, high: high ?? Number.NaN };
}

/** A solid cut where the stretches meet, each part with the body of its stretch. */
function parts(solid: Solid, stretches: readonly Stretch[]): { part: Solid; body: Solid }[] {
  const found = stretches.map(({ from, to, body }) => ({ part: cut(solid, from, to), body }));
  return found.filter(({ part }) => !part.isEmpty());
}

function cut(solid: Solid, from: number, to: number): Solid {
  const { min, max } = solid.boundingBox();
  if (from <= min[0] && max[0] <= to) return solid;
  return solid.trimByPlane([1, 0, 0], from).trimByPlane([-1, 0, 0], -to);
}

/** How far straight down the bit is from open air, its rim at `depth`: from the underside, and from the channel. */
export function webUnder(design: Design, hole: Hole, depth: number, mesh: Mesh): Reading {
  const web = (fit: Fit) => {
    const tool = toolOf(hole, depth, 1, mesh, fit);
    const { channel } = design.board;
    const under = heightAbove(tool, design);
    if (channel === undefined) return under;
    const { width, from = 0, to = design.board.length } = channel;
    const over = tool.intersect(block([from, -width / 2, -DEEP], [to, width / 2, DEEP]));
    return Math.min(under, heightAbove(over, design) - channel.depth);
  };
  return { low: web("around"), high: web("within") };
}

/** Least height of a solid above the underside: sheared until the underside is level, its lowest place. */
function heightAbove(solid: Solid, design: Design): number {
  const heights = linesOf(design.board.thickness, design, BEYOND).map((line) => {
    const part = cut(solid, line.from, line.to);
    if (part.isEmpty()) return Infinity;
    const k = (line.end - line.start) / (line.to - line.from);
    const level = part.transform([
      1,
      0,
      k,
      0,
      0,
      1,
      0,
      0,
      0,
      0,
      1,
      0,
      0,
      0,
      line.start - k * line.from,
      1,
    ]);
    return level.boundingBox().min[2];
  });
  return Math.min(...heights);
}

/** What the radius takes of a solid: all of it that stands above the finished surface. */
export function removedFrom(solid: Solid, stretches: readonly Stretch[]): Solid {
  return Manifold.union(parts(solid, stretches).map(({ part, body }) => part.subtract(body)));
}

/** What the radius leaves of a solid. */
export function leftOf(solid: Solid, stretches: readonly Stretch[]): Solid {
  return Manifold.union(parts(solid, stretches).map(({ part, body }) => part.intersect(body)));
}
