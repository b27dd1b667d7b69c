/**
 * What fails below its window and above it at once, at one hole or at two: it is in both chances, and is to count once.
 */
import type { LawSpec } from "../design/spec.js";
import type { State } from "./bench.js";
import { edgesOnBothSides, evenNodes, type Law, measureSmoothness } from "./law.js";
import { type Model, type Plan, placeLimits } from "./model.js";
import { nodesOn, type Rule } from "./rules.js";
import {
  type BitGroup,
  either,
  failingAny,
  type HoleLimits,
  integrateOver,
  keepNear,
  nodesOnPanels,
  type Placed,
  panelsBetween,
  placeOn,
  type SettingGroup,
  type Side,
} from "./shares.js";
import { chanceAbove, chanceBelow, type Grade, type Spread, spreadAround } from "./spread.js";

/** What fails on both sides: of any hole, and of each by itself. */
export interface Overlap {
  readonly any: number;
  readonly byHole: readonly number[];
  /** How far off `any` may be. */
  readonly error: number;
}

/** What fails on either side under one state. */
export interface Sides {
  readonly below: number;
  readonly above: number;
  readonly keep: number;
  readonly flush: number;
}

/** Below this, and below this part of what fails, both at once is left out. */
const SELDOM = 1e-7;
const PART = 1e-4;
/** So much an overlap may be off before it is worked out node by node. */
const NEAR = 5e-6;
/** Nodes that count less are left out: their sum is far below what is worked out. */
const HARDLY = 1e-11;

/**
 * Errors that let a hole fail below make it fail less above, so that keep and web fail together at most as often as if
 * they were independent; flush and web may go together.
 */
export function integrateOverlap(model: Model, plan: Plan, state: State, sides: Sides): Overlap {
  const { below, above, keep, flush } = sides;
  const together = Math.min(above, keep * above + flush);
  const most = Math.min(SELDOM, PART * (below + above));
  if (together <= most) return { any: 0, byHole: [], error: together };
  const byHole = model.benches.map(() => 0);
  let apart = 0;
  forEachHole(plan, (i, stops, pointed) => {
    const twice = failingTwice(model, plan, state, i, stops, pointed);
    byHole[i] = twice.alone;
    apart += twice.alone - twice.asIfApart;
  });
  if (!model.pointed.some((each) => each)) {
    const { any, error } = bySettings(model, plan, state, sides, apart);
    if (error <= NEAR) return { any, byHole, error };
    const [one, other, ...more] = listUnits(plan);
    if (one && other && more.length === 0 && apart === 0) {
      const [rough, fine] = [model.grade / 2, model.grade].map((grade) =>
        ofTwo(model, plan, state, [one, other], sides, grade),
      ) as [number, number];
      return { any: fine, byHole, error: Math.abs(fine - rough) };
    }
  }
  return { ...workedOut(model, plan, state), byHole };
}

function forEachHole(
  { bits }: Plan,
  use: (hole: number, stops: boolean, pointed: boolean) => void,
): void {
  for (const { settings, pointed } of bits) {
    for (const { holes, stops } of settings) for (const i of holes) use(i, stops, pointed);
  }
}

/**
 * That one hole fails on both sides: given how far its tip is off, what moves either side is independent. And the same as
 * if the tip's own errors were another on each side.
 */
function failingTwice(
  model: Model,
  plan: Plan,
  state: State,
  i: number,
  stops: boolean,
  pointed: boolean,
): { alone: number; asIfApart: number } {
  const { neck, board, lawOf, grade } = model;
  const { point, thickness, stop, fill } = neck.spec.tolerance;
  const own = model.tipErrors[i] as readonly LawSpec[];
  const shared = stops && stop.per !== "hole" ? [stop] : [];
  const isSeen = pointed && (model.pointed[i] as boolean);
  const nodes = isSeen ? placeNodes(model.point, 0, grade / 2) : ONE;
  const under = pointed && !isSeen ? [...board, point] : board;
  const low = placeLimits(model, plan, "below", state, 0);
  const twice = (tip: readonly LawSpec[], more: readonly LawSpec[], p: number) => {
    const high = placeLimits(model, plan, "above", state, p);
    const set = low.sets[i] as number;
    const { least, most } = (low.limits[i] as HoleLimits).either;
    const wood = (high.limits[i] as HoleLimits).either.most as Spread;
    const sides = {
      least: least && spreadAround(least.atoms(), lawOf([...under, ...more])),
      flat: most && spreadAround(most.atoms(), lawOf([...under, ...more, fill])),
      wood: spreadAround(wood.atoms(), lawOf([thickness, ...more])),
    };
    return onBothSides(lawOf(tip), sides, set, p, grade);
  };
  let [alone, asIfApart] = [0, 0];
  nodes.at.forEach((p, k) => {
    const weight = nodes.weight[k] as number;
    const together = twice([...shared, ...own], [], p);
    alone += weight * together;
    asIfApart += weight * (own.length > 0 ? twice(shared, own, p) : together);
  });
  return { alone, asIfApart };
}

function onBothSides(
  law: Law | undefined,
  { least, flat, wood }: { least?: Spread | undefined; flat?: Spread | undefined; wood: Spread },
  set: number,
  p: number,
  grade: Grade,
): number {
  const at = (x: number) => {
    const m = x + set;
    const under = least ? chanceAbove(least, m - p) : 0;
    const over = flat ? chanceBelow(flat, m - p) : 0;
    return (under + over) * chanceBelow(wood, m);
  };
  if (law === undefined) return at(0);
  const limits: Placed[] = [
    { least, most: flat, set: set - p, own: [] },
    { most: wood, set, own: [] },
  ];
  return integrateOver(law, panelsBetween(law, limits, -law.half, law.half, 0), grade, at);
}

/**
 * Given the stop's error of a setting, what fails below and above is independent but for errors of a hole's own; settings
 * are independent but for what the board shares, which is another error on each side. With a and b the chances below and
 * above, both at once have the chance a·b, but in each setting E[a(s)·b(s)], and what single holes have more than that.
 */
function bySettings(
  model: Model,
  plan: Plan,
  state: State,
  { below, above }: Sides,
  own: number,
): Omit<Overlap, "byHole"> {
  const { neck, board, stop, grade, lawOf } = model;
  const { point, thickness } = neck.spec.tolerance;
  const low = placeLimits(model, plan, "below", state, 0);
  const high = placeLimits(model, plan, "above", state, 0);
  const over = lawOf([thickness]);
  let any = below * above + own;
  const each: { apart: number; fails: number }[] = [];
  for (const { settings, pointed } of plan.bits) {
    const under = lawOf(pointed ? [...board, point] : board);
    for (const { holes, stops } of settings) {
      const [deep, shallow] = [placeOn(low, holes, "either"), placeOn(high, holes, "either")];
      const law = stops ? stop : undefined;
      // without other errors the chances jump
      const nodes =
        law && !(under && over)
          ? nodesBetween(law, [...smoothedBy(under, deep), ...smoothedBy(over, shallow)], grade)
          : placeNodes(law, leastWidth([under, over]), grade);
      const mean = { a: 0, b: 0, both: 0 };
      nodes.at.forEach((s, k) => {
        const weight = nodes.weight[k] as number;
        const a = failingAny(under, deep, grade, s);
        const b = failingAny(over, shallow, grade, s);
        mean.a += weight * a;
        mean.b += weight * b;
        mean.both += weight * a * b;
      });
      any += mean.both - mean.a * mean.b;
      each.push({ apart: Math.abs(mean.both - mean.a * mean.b), fails: mean.a + mean.b });
    }
  }
  // what is left out: that another setting may fail too
  const all = each.reduce((sum, { fails }) => sum + fails, 0);
  const error = each.reduce((sum, { apart, fails }) => sum + apart * (all - fails), 0);
  return { any, error: error + Math.abs(own) * (below + above) };
}

/** Settings that may stop elsewhere, and whether the point's error is theirs alone; none where it is shared by some. */
function listUnits({ bits }: Plan): Unit[] {
  if (bits.length > 1 && bits.some(({ settings }) => settings.length > 1)) return [];
  return bits.flatMap(({ settings, pointed }) =>
    settings.map(({ holes, stops }) => ({ holes, stops, pointed })),
  );
}

interface Unit {
  readonly holes: readonly number[];
  readonly stops: boolean;
  readonly pointed: boolean;
}

/** Given how far off the stops of both settings are, all that fails below is independent of all that fails above. */
function ofTwo(
  model: Model,
  plan: Plan,
  state: State,
  units: readonly [Unit, Unit],
  { below, above }: Sides,
  grade: Grade,
): number {
  const { neck, board, stop, lawOf } = model;
  const { point, thickness } = neck.spec.tolerance;
  const low = placeLimits(model, plan, "below", state, 0);
  const high = placeLimits(model, plan, "above", state, 0);
  const isOneBit = plan.bits.length === 1;
  const over = lawOf([thickness]);
  const [deep, shallow] = [low, high].map((side) =>
    units.map(({ holes }) => placeOn(side, holes, "either")),
  ) as [Placed[][], Placed[][]];
  const failsAt = (law: Law | undefined, limits: readonly Placed[][], stops: readonly number[]) =>
    failingAny(
      law,
      limits.flatMap((each, j) =>
        each.map((limit) => ({ ...limit, set: limit.set + (stops[j] as number) })),
      ),
      grade,
      0,
    );
  // with two bits each has a point of its own
  const under = lawOf(isOneBit && units[0].pointed ? [...board, point] : board);
  const points = units.map(({ pointed }) => (pointed ? lawOf([point]) : undefined));
  const parts = points.map((law, j) =>
    keepNear((x) => failingAny(law, deep[j] as Placed[], grade, x)),
  );
  const boards = placeNodes(under, leastWidth(points), grade);
  const belowAt = (stops: readonly number[]) => {
    if (isOneBit) return failsAt(under, deep, stops);
    return boards.at.reduce((sum, y, k) => {
      const [a, b] = parts.map((part, j) => part(y + (stops[j] as number))) as [number, number];
      return sum + (boards.weight[k] as number) * either(a, b);
    }, 0);
  };
  const [first, second] = units.map(({ stops }) =>
    placeNodes(stops ? stop : undefined, leastWidth([under, over]), grade),
  ) as [Rule, Rule];
  const mean = { a: 0, b: 0, both: 0 };
  first.at.forEach((s, i) => {
    second.at.forEach((t, j) => {
      const weight = (first.weight[i] as number) * (second.weight[j] as number);
      if (weight < HARDLY) return;
      const [a, b] = [belowAt([s, t]), failsAt(over, shallow, [s, t])];
      mean.a += weight * a;
      mean.b += weight * b;
      mean.both += weight * a * b;
    });
  });
  return below * above + mean.both - mean.a * mean.b;
}

/** Limits by the place alone, with the errors of one law in place of a hole's own: where these have kinks. */
function smoothedBy(law: Law | undefined, limits: readonly Placed[]): Placed[] {
  const by = (spread: Spread | undefined) => spread && spreadAround(spread.atoms(), law);
  return law === undefined
    ? [...limits]
    : limits.map((limit) => ({ ...limit, least: by(limit.least), most: by(limit.most) }));
}

function nodesBetween(law: Law, limits: readonly Placed[], grade: Grade): Rule {
  const panels = panelsBetween(law, limits, -law.half, law.half, 0);
  const { at, weight } = nodesOnPanels(panels, grade);
  return { at, weight: weight.map((w, k) => w * law.density(at[k] as number)) };
}

/** How smooth a mean over any of some laws is at the least; 0 with kinks. */
function leastWidth(laws: readonly (Law | undefined)[]): number {
  return Math.min(...laws.map(measureSmoothness));
}

/** Nodes for what is as smooth as a normal chance of so much, or has kinks where that is 0. */
function placeNodes(law: Law | undefined, smoothness: number, grade: Grade): Rule {
  if (law === undefined) return ONE;
  const even = evenNodes(law, smoothness, grade);
  if (even) return even;
  if (law.sigma !== undefined) return law.rule(4 + 4 * grade);
  const edges = edgesOnBothSides(law);
  const all = grade < 1 ? 4 + 8 * grade : 8 + 8 * grade;
  const n = Math.max(2, Math.ceil(all / (edges.length - 1)));
  return nodesOn(edges, n, law.density);
}

const ONE: Rule = { at: [0], weight: [1] };

function workedOut(model: Model, plan: Plan, state: State): Omit<Overlap, "byHole"> {
  // while a travel is only sought, half as finely
  const grade = model.grade < 2 ? model.grade / 2 : model.grade;
  const rough = onNodes(model, plan, state, grade / 2);
  const any = onNodes(model, plan, state, grade);
  return { any, error: Math.abs(any - rough) };
}

function onNodes(model: Model, plan: Plan, state: State, grade: Grade): number {
  const { thickness, point } = model.neck.spec.tolerance;
  const [only] = plan.bits;
  const isSeen = model.pointed.some((each) => each);
  const isMerged = plan.bits.length === 1 && only !== undefined && !isSeen;
  const merged = isMerged && only.pointed ? [...model.board, point] : model.board;
  const sanding = placeNodes(model.lawOf(merged), 0, grade);
  const thick = placeNodes(model.lawOf([thickness]), 0, grade);
  const points = placeNodes(isMerged ? undefined : model.point, 0, grade);
  const low = placeLimits(model, plan, "below", state, 0);
  const bits = plan.bits.map((bit) => {
    const nodes = bit.pointed ? points : ONE;
    const highs = nodes.at.map((p) => placeLimits(model, plan, "above", state, isSeen ? p : 0));
    return { bit, nodes, highs };
  });
  let overlap = 0;
  sanding.at.forEach((y, i) => {
    thick.at.forEach((z, j) => {
      const all: Three = { any: 0, below: 0, above: 0 };
      for (const { bit, nodes, highs } of bits) {
        const own: Three = { any: 0, below: 0, above: 0 };
        nodes.at.forEach((p, k) => {
          const of = inBit(model, bit, low, highs[k] as Side, y - p, z, grade);
          addTo(own, of, nodes.weight[k] as number);
        });
        join(all, own);
      }
      const share = (sanding.weight[i] as number) * (thick.weight[j] as number);
      overlap += share * (all.below + all.above - all.any);
    });
  });
  return overlap;
}

interface Three {
  any: number;
  below: number;
  above: number;
}

function addTo(sum: Three, more: Three, weight: number): void {
  sum.any += weight * more.any;
  sum.below += weight * more.below;
  sum.above += weight * more.above;
}

function join(all: Three, more: Three): void {
  all.any = either(all.any, more.any);
  all.below = either(all.below, more.below);
  all.above = either(all.above, more.above);
}

function inBit(
  model: Model,
  { settings }: BitGroup,
  low: Side,
  high: Side,
  m: number,
  n: number,
  grade: Grade,
): Three {
  const all: Three = { any: 0, below: 0, above: 0 };
  for (const setting of settings) {
    join(all, inSetting(setting.stops ? model.stop : undefined, setting, low, high, m, n, grade));
  }
  return all;
}

function inSetting(
  law: Law | undefined,
  { holes }: SettingGroup,
  low: Side,
  high: Side,
  m: number,
  n: number,
  grade: Grade,
): Three {
  const [deep, shallow] = [placeOn(low, holes, "either"), placeOn(high, holes, "either")];
  const at = (x: number): Three => {
    const all: Three = { any: 0, below: 0, above: 0 };
    for (let i = 0; i < deep.length; i++) {
      const { least, most: flat, set } = deep[i] as Placed;
      const { most } = shallow[i] as Placed;
      const keep = least ? chanceAbove(least, m + x + set) : 0;
      const flush = flat ? chanceBelow(flat, m + x + set) : 0;
      const wood = most ? chanceBelow(most, n + x + set) : 0;
      all.any = either(all.any, Math.min(1, keep + either(flush, wood)));
      all.below = either(all.below, Math.min(1, keep + flush));
      all.above = either(all.above, wood);
    }
    return all;
  };
  if (law === undefined) return at(0);
  const placed = [
    ...deep.map((each) => ({ ...each, set: each.set + m })),
    ...shallow.map((each) => ({ ...each, set: each.set + n })),
  ];
  const sum: Three = { any: 0, below: 0, above: 0 };
  const nodes = nodesBetween(law, placed, grade);
  nodes.at.forEach((x, k) => {
    addTo(sum, at(x), nodes.weight[k] as number);
  });
  return sum;
}
