/**
 * A judge by chance itself: every error drawn from its law, the bench worked through as it truly is, and what fails is
 * counted. It knows the model's sentences alone (docs/formulas.md) and imports nothing from src but types: holes stand at
 * given places, profiles are numbers or { nut, end }. Lengths in mm, heights downward from the crest plane.
 */
import { randomNormal, randomUniform } from "d3-random";
import { seeded } from "../../bench/random.js";
import type { Bit, Design, Fill, Law, MarkerGroup, Stop, Tolerance } from "../../src/index.js";

/** What a run counted. */
export interface Counted {
  readonly draws: number;
  readonly fails: number;
  readonly byRule: Record<"keep" | "web" | "channel" | "flush", number>;
  readonly byHole: number[];
}

type Along = (s: number) => number;

interface Hole {
  readonly along: number;
  readonly offset: number;
  readonly reach: number;
  /** Half length and half width of a pocket. */
  readonly pocket: readonly [number, number] | undefined;
  readonly fill: Fill & { keep: number };
  readonly bit: Bit;
  readonly stop: Stop;
  readonly drilled: boolean;
  /** What goes down: a travel, or the measured depth. */
  readonly set: number;
  readonly bitKey: string;
  readonly settingKey: string;
}

const QUANTITIES = ["radius", "existing", "sanding", "thickness", "crest"] as const;

/** Counts what fails in so many draws. */
export function judge(
  design: Design,
  travels: number | readonly number[],
  draws: number,
  seed: number,
): Counted {
  const draw = drawing(design, seed);
  const holes = holesOf(design, travels);
  const rules = rulesOf(design);
  const byRule = { keep: 0, web: 0, channel: 0, flush: 0 };
  const byHole = holes.map(() => 0);
  let fails = 0;
  const isOwn = (law: unknown) =>
    typeof law === "object" && (law as { per?: string }).per === "hole";
  for (let n = 0; n < draws; n++) {
    const board = Object.fromEntries(QUANTITIES.map((name) => [name, draw.one(name)])) as Board;
    const shared = new Map<string, number>();
    const once = (key: string, name: "stop" | "point") => {
      if (!shared.has(key)) shared.set(key, draw.one(name));
      return shared.get(key) as number;
    };
    const broken = new Set<keyof typeof byRule>();
    holes.forEach((hole, i) => {
      const stop = isOwn(design.tolerance?.stop) ? draw.one("stop") : once(hole.settingKey, "stop");
      const errors = {
        ...board,
        stop,
        point: once(hole.bitKey, "point"),
        seat: draw.one("seat"),
        fill: draw.one("fill"),
        ...draw.place(),
      };
      const own = rules(hole, errors);
      for (const rule of own) broken.add(rule);
      if (own.length > 0) byHole[i] = (byHole[i] as number) + 1;
    });
    for (const rule of broken) byRule[rule]++;
    if (broken.size > 0) fails++;
  }
  return { draws, fails, byRule, byHole };
}

type Board = Record<(typeof QUANTITIES)[number], number>;
type Errors = Board & Record<"stop" | "point" | "seat" | "fill" | "ds" | "dx", number>;

/** Errors by their laws. */
function drawing({ tolerance }: Design, seed: number) {
  const between = seeded(seed);
  const source = () => between(0, 1);
  const uniform = randomUniform.source(source)(-1, 1);
  const normal = randomNormal.source(source)();
  const lawOf = (stated: Tolerance | undefined): Law =>
    typeof stated === "object" ? stated : { limit: stated ?? 0 };
  const from = (law: Law) => {
    if (law.shape === "normal") return (normal() * law.limit) / (law.coverage ?? 2);
    return law.shape === "triangular"
      ? (law.limit * (uniform() + uniform())) / 2
      : law.limit * uniform();
  };
  const one = (name: keyof NonNullable<Design["tolerance"]>) => from(lawOf(tolerance?.[name]));
  const place = () => {
    const law = lawOf(tolerance?.layout);
    if (law.shape === "normal") return { ds: from(law), dx: from(law) };
    for (;;) {
      const [ds, dx] = [uniform(), uniform()];
      const r = Math.hypot(ds, dx);
      // a cone: the likelier the nearer the middle
      if (r <= 1 && (law.shape !== "triangular" || (uniform() + 1) / 2 > r)) {
        return { ds: law.limit * ds, dx: law.limit * dx };
      }
    }
  };
  return { one, place };
}

function holesOf(design: Design, travels: number | readonly number[]): Hole[] {
  let next = 0;
  const holes = design.markers.flatMap((group: MarkerGroup): Hole[] => {
    if (!("places" in group)) throw new Error("the judge wants places");
    const shape = "shape" in group && group.shape.kind === "rectangle" ? group.shape : undefined;
    return group.places.map(({ along, offset, depth }) => {
      const bit = group.bit ?? (shape ? { kind: "end-mill" as const } : (design.bit as Bit));
      const stop = group.stop ?? design.stop ?? {};
      const drilled = group.drilled === true;
      const diameter = "diameter" in group ? group.diameter : 0;
      const set = drilled ? (depth ?? (group.depth as number)) : Number.NaN;
      const bitKey = drilled ? "none" : shape ? "pocket" : JSON.stringify([bit, diameter]);
      return {
        along,
        offset,
        reach: diameter / 2,
        pocket: shape && [shape.length / 2, shape.width / 2],
        fill: (group.fill ?? design.fill) as Hole["fill"],
        bit,
        stop,
        drilled,
        set,
        bitKey,
        settingKey: JSON.stringify(stop) + bitKey,
      };
    });
  });
  // the report's order: along the board
  return holes
    .sort((a, b) => a.along - b.along || a.offset - b.offset)
    .map((hole) => {
      if (hole.drilled) return hole;
      const set = typeof travels === "number" ? travels : (travels[next++] as number);
      return { ...hole, set, settingKey: hole.settingKey + set };
    });
}

function alongOf(profile: unknown, length: number): Along {
  if (profile === undefined) return () => 0;
  if (profile === "flat") return () => Infinity;
  if (typeof profile === "number") return () => profile;
  const { nut, end } = profile as { nut: number; end: number };
  return (s) => nut + ((end - nut) * s) / length;
}

/** The true conditions of a hole; which it breaks. */
function rulesOf(design: Design) {
  const { board, neck, existing, radius, sanding, web = 1 } = design;
  const { length } = board;
  const rod = typeof board.channel === "object" ? board.channel : undefined;
  const [R, R0] = [alongOf(radius, length), existing && alongOf(existing.radius, length)];
  const [taken, own, under] = [sanding, board.thickness, neck?.thickness].map((p) =>
    alongOf(p, length),
  ) as [Along, Along, Along];
  const carved = alongOf(rod?.depth, length);
  const wood = (s: number) => own(s) + under(s);
  const sag = (r: Along, part: number, s: number, x: number) => {
    const here = r(s) * part;
    if (here === Infinity) return 0;
    const m = (r(s + 1) - r(s)) * part;
    return (x * x) / (here + Math.sqrt(here * here - (1 - m * m) * x * x));
  };

  return (hole: Hole, e: Errors): (keyof Counted["byRule"])[] => {
    const { bit, stop, drilled, fill, pocket, reach } = hole;
    const [s0, x0] = [hole.along + e.ds, hole.offset + e.dx];
    const isTable = !drilled && stop.from === "table";
    const height = isTable
      ? stop.height === undefined
        ? wood
        : alongOf(stop.height, length)
      : () => 0;
    const zero = isTable ? height(stop.zero as number) : 0;
    /** How much higher the crest lies than at the touch: heights count from there. */
    const up = (s: number) => height(s) - zero;
    const old = (s: number, x: number) => (R0 ? sag(R0, 1 + e.existing, s, x) : 0);
    const fresh = (s: number, x: number) =>
      Math.max(0, taken(s) + e.sanding) + sag(R, 1 + e.radius, s, x - e.crest);
    const finished = (s: number, x: number) =>
      (R0 ? Math.max(fresh(s, x), old(s, x)) : fresh(s, x)) - up(s);

    const twist = bit.kind === "twist" ? reach / Math.tan(((bit.angle ?? 118) * Math.PI) / 360) : 0;
    const point = drilled || pocket ? 0 : "point" in bit ? bit.point : twist;
    const lead = point > 0 ? point + e.point : 0;
    const foot = drilled ? 0 : isTable ? 0 : ((stop as { foot?: number }).foot ?? 0);
    const bears = bit.kind === "end-mill" && !pocket && !drilled ? Math.max(foot, 2 * reach) : foot;
    const touch = isTable ? 0 : old(s0, Math.max(0, Math.abs(x0) - bears / 2));
    const tip = drilled
      ? hole.set + touch
      : hole.set + (stop.correction ?? 0) + e.stop + touch + (isTable ? e.seat : 0);
    const floor = tip - lead;
    const [half, broken]: [number, (keyof Counted["byRule"])[]] = [pocket?.[0] ?? reach, []];

    if (floor - deepest(finished, s0, x0, reach, pocket) < fill.keep) broken.push("keep");
    if (fill.kind === "solid" && !drilled) {
      const top = floor - fill.thickness - e.fill;
      if (top > shallowest(finished, s0, x0, reach, pocket)) broken.push("flush");
    }
    // what of the bit goes down how far, at a distance from its axis
    const spur = pocket || drilled ? 0 : "spur" in bit ? (bit.spur as number) : 0;
    const goes = (away: number) =>
      bit.kind === "twist" && !pocket && !drilled
        ? floor + lead * (1 - away / reach)
        : floor + spur;
    const left = drilled ? 0 : web;
    const room = (s: number) => wood(s) + e.thickness - up(s);
    const ends = [s0 - half, s0, s0 + half];
    if (ends.some((s) => room(s) - goes(Math.abs(s - s0)) < left) || room(s0) - tip < left)
      broken.push("web");

    if (rod && !drilled) {
      const { width, from = 0, to = length } = rod;
      const over = (s: number) => own(s) - carved(s) + e.thickness - up(s);
      const away = (s: number, x: number) =>
        Math.hypot(Math.max(0, Math.abs(x) - width / 2), Math.max(0, from - s, s - to));
      let isBroken = away(s0, x0) <= web && over(s0) - tip < web;
      const [a, b] = pocket ?? [reach, reach];
      // each part of the hole that lies within the web of the channel
      const STEPS = 24;
      for (let i = 0; i <= STEPS && !isBroken; i++) {
        const s = s0 + a * ((2 * i) / STEPS - 1);
        const chord = pocket ? b : Math.sqrt(Math.max(0, a * a - (s - s0) ** 2));
        const x = Math.min(
          x0 + chord,
          Math.max(x0 - chord, Math.min(Math.max(x0, -width / 2 - web), width / 2 + web)),
        );
        isBroken = away(s, x) <= web + 1e-9 && over(s) - goes(Math.hypot(s - s0, x - x0)) < web;
      }
      if (isBroken) broken.push("channel");
    }
    return broken;
  };
}

type Height = (s: number, x: number) => number;
type Pocket = readonly [number, number] | undefined;

function cornersOf([a, b]: readonly [number, number], s: number, x: number) {
  return [-a, a].flatMap((ds) => [-b, b].map((dx) => [s + ds, x + dx] as const));
}

/** Deepest over a hole: convex, so at a corner, or on the rim, where it runs almost as a cosine to either side. */
function deepest(height: Height, s: number, x: number, reach: number, pocket: Pocket): number {
  if (pocket) return Math.max(...cornersOf(pocket, s, x).map(([a, b]) => height(a, b)));
  const side = (sign: number) => {
    const at = (t: number) => height(s + reach * Math.sin(t), x + sign * reach * Math.cos(t));
    let peak = 0;
    for (const step of [0.5, 0.1]) {
      const [before, here, after] = [at(peak - step), at(peak), at(peak + step)];
      const bend = before - 2 * here + after;
      if (bend < 0) peak += Math.min(0.6, Math.max(-0.6, (step * (before - after)) / (2 * bend)));
    }
    return at(peak);
  };
  return Math.max(side(1), side(-1));
}

/** Least deep over a hole, by two searches, one in the other. */
function shallowest(height: Height, s: number, x: number, reach: number, pocket: Pocket): number {
  const [a, b] = pocket ?? [reach, reach];
  return least(
    (ds) => {
      const half = pocket ? b : Math.sqrt(Math.max(0, a * a - ds * ds));
      return least((dx) => height(s + ds, x + dx), -half, half);
    },
    -a,
    a,
  );
}

function least(f: (t: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  for (let i = 0; i < 22; i++) {
    const [c, d] = [b - 0.618034 * (b - a), a + 0.618034 * (b - a)];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  return Math.min(f((a + b) / 2), f(from), f(to));
}
