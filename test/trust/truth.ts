/**
 * The true state of a bench: a hole drilled while everything is off by something within its tolerance. Each rule then
 * says how deep the floor must or may have been meant to be; a window is sound where no true state asks for more. The
 * physics stands here a second time, from docs/formulas.md: heights above a level table (or below the crest, where the
 * stop is zeroed on the wood), the true surfaces, the true bit. It takes nothing from the code under test but each hole's
 * place, fill, bit, lead and rise. Lengths in mm; heights count downward from the level of the touch.
 */
import type { Design, Hole, Stop, Tolerances } from "../../src/index.js";
import { crossing, greatest, least, stretchBelow } from "./search.js";

/** How far each quantity is off, the radii by a fraction; and the hole's centre. */
export type Errors = Readonly<
  Record<Exclude<keyof Tolerances, "layout"> | "along" | "offset", number>
>;
/** What a window rests on. */
export type Rule = "keep" | "web" | "channel" | "flush";

/** A quantity along the board. */
type Along = (s: number) => number;

/** A stretch of the board on which everything is straight, and the slopes of the radii there. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly cone: number;
  readonly oldCone: number;
}

/** A hole on its bench. */
export interface Bench {
  readonly hole: Hole;
  readonly stop: Stop;
  readonly web: number;
  readonly stretches: readonly Stretch[];
  readonly sanding: Along;
  readonly radius: Along;
  readonly old: Along | undefined;
  /** Wood below the crest, of board and neck; the same over the rod channel; height of the crest above the touch. */
  readonly wood: Along;
  readonly over: Along;
  readonly crest: Along;
  readonly channel: { half: number; from: number; to: number } | undefined;
}

/** The bench that a design describes, for one of its report's holes. */
export function benchOf(design: Design, hole: Hole): Bench {
  const { board, neck, existing, sanding = 0, web = 0, markers } = design;
  // what is drilled was measured from its own top
  const given = markers[Number(hole.path.split(".")[1])]?.stop ?? design.stop ?? {};
  const stop: Stop = hole.drilled ? {} : given;
  const rod = typeof board.channel === "object" ? board.channel : undefined;
  const knots = new Set<number>();
  const along = (profile: Design["radius"] = 0) => alongOf(profile, design, knots);
  const [own, under, depth] = [along(board.thickness), along(neck?.thickness), along(rod?.depth)];
  const wood = (s: number) => own(s) + under(s);
  const table = stop.from === "table" ? stop : undefined;
  const height = table?.height === undefined ? wood : along(table.height);
  const level = height(table?.zero ?? 0);
  const [radius, taken] = [along(design.radius), along(sanding)];
  const old = existing && along(existing.radius);
  const ends = [-BEYOND, ...[...knots].sort((a, b) => a - b), board.length + BEYOND];
  const stretches = ends.slice(1).map((to, i) => {
    const from = ends[i] as number;
    return { from, to, cone: slopeOf(radius, from, to), oldCone: old ? slopeOf(old, from, to) : 0 };
  });
  const { width = 0, from = 0, to = board.length } = rod ?? {};
  return {
    hole,
    stop,
    web,
    stretches,
    sanding: taken,
    radius,
    old,
    wood,
    over: (s) => own(s) - depth(s),
    crest: table ? (s) => height(s) - level : () => 0,
    channel: rod && { half: width / 2, from, to },
  };
}

const BEYOND = 100;

function slopeOf(along: Along, from: number, to: number): number {
  return along(from) === Infinity ? 0 : (along(to) - along(from)) / (to - from);
}

/** A profile as a function; its knots are added to the others. Twelve-tone equal temperament, or listed frets. */
function alongOf(profile: Design["radius"], { scale, board }: Design, knots: Set<number>): Along {
  if (typeof profile !== "object") return () => (profile === "flat" ? Infinity : profile);
  const placeOf = (station: string) => {
    const fret = Number(station.slice(4));
    if (station === "nut" || station === "end") return station === "nut" ? 0 : board.length;
    return "positions" in scale
      ? (scale.positions[fret - 1] as number)
      : (scale as { length: number }).length * (1 - 2 ** (-fret / 12));
  };
  const at = Object.entries(profile as Record<string, number>)
    .map(([station, value]) => [placeOf(station), value] as const)
    .sort(([a], [b]) => a - b);
  for (const [place] of at.slice(1, -1)) knots.add(place);
  return (s) => {
    let i = 1;
    while (i < at.length - 1 && s > (at[i] as Knot)[0]) i++;
    const [[a, low], [b, high]] = [at[i - 1], at[i]] as [Knot, Knot];
    return low + ((high - low) * (s - a)) / (b - a);
  };
}

type Knot = readonly [place: number, value: number];

/** A bench, a hole's true ground, and how far everything else is off. */
interface Truth {
  readonly bench: Bench;
  readonly ground: Ground;
  readonly errors: Errors;
}

/** A hole's ground: a disc, or a pocket's outline; `slice` is what it covers across the board at a place. */
interface Ground {
  readonly along: number;
  readonly offset: number;
  readonly disc: number;
  readonly corners: readonly Spot[];
  readonly from: number;
  readonly to: number;
  readonly slice: (s: number) => readonly [number, number];
}

interface Spot {
  readonly along: number;
  readonly offset: number;
}

/** The least depth that a rule asks for (`keep`), or the greatest that it allows, where everything is off by so much. */
export function limitOf(bench: Bench, rule: Rule, errors: Errors): number {
  const truth = { bench, ground: groundOf(bench.hole, errors), errors };
  const { fill, drilled } = bench.hole;
  const floor = floorOf(truth);
  if (rule === "keep") return deepestOver(truth) + fill.keep - floor;
  if (rule === "web") return inWood(truth) - floor;
  if (rule === "channel") return overChannel(truth) - floor;
  if (fill.kind === "poured" || drilled) return Infinity;
  return fill.thickness + errors.fill + shallowestOver(truth) - floor;
}

/** With nothing off, by how much the floor of a hole that is meant to be 0 deep misses the top at its centre. */
export function zeroOf(bench: Bench, none: Errors): number {
  const truth = { bench, ground: groundOf(bench.hole, none), errors: none };
  const { along, offset } = bench.hole;
  return floorOf(truth) - oldAt(truth, stretchAt(bench, along), along, offset);
}

/** Where the floor lies of a hole that is meant to be 0 deep: what the stop holds is the tip. */
function floorOf(truth: Truth): number {
  const { bench, ground, errors } = truth;
  const { hole, stop } = bench;
  const { along, offset } = ground;
  const aside = Math.abs(offset);
  const stretch = stretchAt(bench, along);
  if (hole.drilled) return oldAt(truth, stretch, along, aside);
  const correction = stop.correction ?? 0;
  const travel = hole.lead - hole.rise - correction;
  const floor = travel + correction + errors.stop - leadOf(truth);
  // a top that lies higher than is said is cut deeper
  if (stop.from === "table") return floor + errors.seat;
  const milled = hole.bit?.kind === "end-mill" ? (hole.diameter ?? 0) : 0;
  const foot = Math.max(stop.foot ?? 0, milled);
  return floor + oldAt(truth, stretch, along, Math.max(0, aside - foot / 2));
}

/** From the true bit's floor down to its tip. */
function leadOf({ bench, errors }: Truth): number {
  const { bit, diameter = 0 } = bench.hole;
  if (bit === undefined || bit.kind === "end-mill") return 0;
  const tan = bit.kind === "twist" ? Math.tan((bit.angle * Math.PI) / 360) : 0;
  const lead = bit.kind === "twist" ? diameter / 2 / tan : bit.point;
  return lead > 0 ? lead + errors.point : 0;
}

/** How far below the floor, so far from its axis, the true bit goes: a twist bit's cone, or the rim of another. */
function dropAt(truth: Truth, away: number): number {
  const { bit, diameter = 0 } = truth.bench.hole;
  if (bit?.kind === "twist") return leadOf(truth) * (1 - (2 * away) / diameter);
  return bit && "spur" in bit ? bit.spur : 0;
}

/** Sag of a cone: h = x² / (R + √(R² − (1 − m²) x²)), m the slope of R. */
function sagOf(r: number, m: number, x: number): number {
  return r === Infinity ? 0 : (x * x) / (r + Math.sqrt(r * r - (1 - m * m) * x * x));
}

/** The sanded surface, its crest aside. A radius that is off is so everywhere. */
function freshAt({ bench, errors }: Truth, { cone }: Stretch, s: number, x: number): number {
  const by = 1 + errors.radius;
  const taken = Math.max(0, bench.sanding(s) + errors.sanding);
  return taken + sagOf(bench.radius(s) * by, cone * by, x - errors.crest) - bench.crest(s);
}

/** The top as it is. */
function oldAt({ bench, errors }: Truth, { oldCone }: Stretch, s: number, x: number): number {
  const by = 1 + errors.existing;
  const sag = bench.old ? sagOf(bench.old(s) * by, oldCone * by, x) : 0;
  return sag - bench.crest(s);
}

function stretchAt({ stretches }: Bench, s: number): Stretch {
  return stretches.find(({ to }) => s < to) as Stretch;
}

/** The parts of a ground that lie on one stretch each. */
function partsOf({ stretches }: Bench, from: number, to: number) {
  return stretches
    .filter((stretch) => stretch.from <= to && from <= stretch.to)
    .map((stretch) => ({
      stretch,
      a: Math.max(from, stretch.from),
      b: Math.min(to, stretch.to),
    }));
}

/** Where the finished surface lies deepest over a hole: both that it may be are convex, so at the rim or at a corner. */
function deepestOver(truth: Truth): number {
  const { bench, ground } = truth;
  const deepest = partsOf(bench, ground.from, ground.to).flatMap(({ stretch, a, b }) =>
    (bench.old ? [freshAt, oldAt] : [freshAt]).map((surface) =>
      onRim(ground, a, b, (s, x) => surface(truth, stretch, s, x)),
    ),
  );
  return Math.max(...deepest);
}

function onRim(
  ground: Ground,
  a: number,
  b: number,
  surface: (s: number, x: number) => number,
): number {
  const { along, offset, disc, corners, slice } = ground;
  if (disc > 0) {
    const angleAt = (s: number) => Math.asin(Math.min(1, Math.max(-1, (s - along) / disc)));
    const sides = [-disc, disc].map((r) =>
      greatest(
        (t) => surface(along + disc * Math.sin(t), offset + r * Math.cos(t)),
        angleAt(a),
        angleAt(b),
      ),
    );
    return Math.max(...sides);
  }
  const inside = corners.filter((corner) => a <= corner.along && corner.along <= b);
  const cut = [a, b].flatMap((s) => slice(s).map((x) => surface(s, x)));
  return Math.max(...inside.map((corner) => surface(corner.along, corner.offset)), ...cut);
}

/** Where it lies least deep: convex on each stretch, so it has one valley there. */
function shallowestOver(truth: Truth): number {
  const { bench, ground, errors } = truth;
  const { from, to, slice } = ground;
  const valleys = partsOf(bench, from, to).map(({ stretch, a, b }) => {
    const across = (s: number) => {
      const within = (x: number) => Math.min(slice(s)[1], Math.max(slice(s)[0], x));
      const [mid, crest] = [within(errors.crest), within(0)];
      const above = (x: number) => freshAt(truth, stretch, s, x) - oldAt(truth, stretch, s, x);
      if (bench.old === undefined || above(mid) >= 0) return freshAt(truth, stretch, s, mid);
      if (above(crest) <= 0) return oldAt(truth, stretch, s, crest);
      // from the new crest to the old one the new surface falls and the old one rises: they meet between
      return freshAt(truth, stretch, s, crossing(above, mid, crest));
    };
    return least(across, a, b);
  });
  return Math.min(...valleys);
}

/** Deepest floor that leaves the web in the wood: all of it straight, so least at an end, a knot or the axis. */
function inWood(truth: Truth): number {
  const { bench, ground, errors } = truth;
  const { hole, wood, crest, web } = bench;
  const { along, from, to } = ground;
  // the place that a pocket is laid out by need not lie in it
  const middle = hole.outline ? [] : [along];
  const places = partsOf(bench, from, to).flatMap(({ a, b }) => [a, b, ...middle]);
  const rooms = places.map((s) => wood(s) - crest(s) - dropAt(truth, Math.abs(s - along)));
  const tip = hole.outline ? Infinity : wood(along) - crest(along) - leadOf(truth);
  return Math.min(...rooms, tip) + errors.thickness - (hole.drilled ? 0 : web);
}

/** The same over the rod channel and within the web of it, for the parts of the bit that lie there. */
function overChannel(truth: Truth): number {
  const { bench, ground, errors } = truth;
  const { hole, channel, over, crest, web } = bench;
  const { along, offset, slice } = ground;
  if (channel === undefined || hole.drilled) return Infinity;
  const reach = (s: number) => {
    const beside = Math.max(0, channel.from - s, s - channel.to);
    return channel.half + Math.sqrt(Math.max(0, web * web - beside * beside));
  };
  const from = Math.max(ground.from, channel.from - web);
  const to = Math.min(ground.to, channel.to + web);
  const apart = (s: number) => Math.max(slice(s)[0] - reach(s), -reach(s) - slice(s)[1]) + TOUCH;
  const shared = from < to ? stretchBelow(apart, from, to) : undefined;
  if (shared === undefined) return Infinity;
  const room = (s: number) => {
    const nearest = Math.min(slice(s)[1], reach(s), Math.max(slice(s)[0], -reach(s), offset));
    return over(s) - crest(s) - dropAt(truth, Math.hypot(s - along, nearest - offset));
  };
  const rooms = partsOf(bench, ...shared).map(({ a, b }) => least(room, a, b));
  const isOver = !hole.outline && from <= along && along <= to && Math.abs(offset) <= reach(along);
  const tip = isOver ? over(along) - crest(along) - leadOf(truth) : Infinity;
  return Math.min(...rooms, tip) + errors.thickness - web;
}

/** Less than this of a hole over the channel counts as beside it, mm. */
const TOUCH = 1e-9;

function groundOf(hole: Hole, errors: Errors): Ground {
  const moved = (spot: Spot) => ({
    along: spot.along + errors.along,
    offset: spot.offset + errors.offset,
  });
  const { along, offset } = moved(hole);
  const disc = (hole.diameter ?? 0) / 2;
  const corners = (hole.outline ?? []).map(moved);
  const alongs = hole.outline
    ? corners.map((corner) => corner.along)
    : [along - disc, along + disc];
  const slice = (s: number): readonly [number, number] => {
    if (hole.outline) return sliceOf(corners, s);
    const half = Math.sqrt(Math.max(0, (disc - s + along) * (disc + s - along)));
    return [offset - half, offset + half];
  };
  return {
    along,
    offset,
    disc,
    corners,
    from: Math.min(...alongs),
    to: Math.max(...alongs),
    slice,
  };
}

/** What an outline covers across the board at a place. */
function sliceOf(corners: readonly Spot[], s: number): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] as Spot;
    if (Math.min(a.along, b.along) > s || Math.max(a.along, b.along) < s) return;
    const share = a.along === b.along ? 0 : (s - a.along) / (b.along - a.along);
    const x = a.offset + share * (b.offset - a.offset);
    [low, high] = [Math.min(low, x), Math.max(high, x)];
  });
  return [low, high];
}
