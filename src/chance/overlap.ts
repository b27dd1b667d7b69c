/**
 * What fails below its window and above it at once, at one hole or at two: it is in both chances, and is to count once.
 */
import type { State } from "./bench.js";
import type { Quantities } from "./expectation.js";
import { edgesOnBothSides, type Law } from "./law.js";
import { type Model, type Plan, placeLimits } from "./model.js";
import { nodesOn, type Rule } from "./rules.js";
import {
  ANY,
  type BitGroup,
  either,
  FIRST,
  failingInSetting,
  HOLES,
  type HoleLimits,
  panelRule,
  panelsBetween,
  type SettingGroup,
  settingShares,
} from "./shares.js";
import { chanceAbove, chanceBelow, type Grade } from "./spread.js";

/** The overlap, and what it may be off by. */
export interface Overlap {
  readonly any: number;
  readonly byHole: readonly number[];
  readonly error: number;
}

/** Below this, and below this part of what fails, both at once is left out. */
const SELDOM = 1e-7;
const PART = 1e-4;
/** So much an overlap may be off before it is worked out node by node. */
const NEAR = 1e-6;

/**
 * Errors that let a hole fail below make it fail less above, so that keep and web fail together at most as often as if
 * they were independent; flush and web may go together.
 */
export function integrateOverlap(
  model: Model,
  plan: Plan,
  state: State,
  low: Quantities,
  high: Quantities,
): Overlap {
  const [below, above] = [low[ANY] as number, high[ANY] as number];
  const hasDots = model.benches.some(({ flush }) => flush !== undefined);
  const together = hasDots
    ? Math.min(above, (low[FIRST] as number) * above + (low[FIRST + 1] as number))
    : below * above;
  const most = Math.min(SELDOM, PART * (below + above));
  if (together <= most) return { any: 0, byHole: [], error: together };
  const quick = model.pointed.some((each) => each)
    ? undefined
    : bySettings(model, plan, state, below, above);
  return quick && quick.error <= NEAR ? quick : workedOut(model, plan, state);
}

/**
 * Given the stop's error of a setting, what fails below and above is independent but for errors of a hole's own; settings
 * are independent but for what the board shares, which is another error on each side. With a and b the chances below and
 * above, both at once have the chance a·b, but in each setting E[a(s)·b(s)], less the holes that would fail on both sides.
 */
function bySettings(model: Model, plan: Plan, state: State, below: number, above: number): Overlap {
  const { neck, board, stop, grade, lawOf } = model;
  const { point, thickness } = neck.spec.tolerance;
  const low = placeLimits(model, plan, "below", state, 0);
  const high = placeLimits(model, plan, "above", state, 0);
  const byHole = new Float64Array(low.length);
  let [any, apart, own] = [below * above, 0, 0];
  for (const { settings, pointed } of plan.bits) {
    for (const { holes, stops } of settings) {
      const under = settingShares(pointed ? [...board, point] : board, holes, lawOf);
      const over = settingShares([thickness], holes, lawOf);
      const nodes = kept(model, stops ? stop : undefined, grade);
      const mean = { a: 0, b: 0, both: 0, own: 0 };
      nodes.at.forEach((s, k) => {
        const weight = nodes.weight[k] as number;
        const [a, b] = [
          failingInSetting(under, low, grade, s),
          failingInSetting(over, high, grade, s),
        ];
        const [anyA, anyB] = [a[ANY] as number, b[ANY] as number];
        mean.a += weight * anyA;
        mean.b += weight * anyB;
        mean.both += weight * anyA * anyB;
        for (const i of holes) {
          const pair = weight * (a[HOLES + i] as number) * (b[HOLES + i] as number);
          const isOwn = (model.tipErrors[i]?.length ?? 0) > 0;
          if (isOwn) mean.own += pair;
          else byHole[i] = (byHole[i] as number) + pair;
        }
      });
      any += mean.both - mean.a * mean.b - mean.own;
      apart += Math.abs(mean.both - mean.a * mean.b);
      own += mean.own;
    }
  }
  const isOne = plan.bits.length === 1 && plan.bits[0]?.settings.length === 1;
  const error = (isOne ? 0 : apart * (below + above)) + own * (below + above);
  const hasDots = low.some(({ second }) => second !== undefined);
  return { any, byHole: [...byHole], error: error + (hasDots ? own : 0) };
}

type Nodes = Rule;

function kept({ nodes }: Model, law: Law | undefined, grade: Grade): Nodes {
  const known = nodes.get(grade) ?? new Map<Law | undefined, Nodes>();
  nodes.set(grade, known);
  const found = known.get(law) ?? placeNodes(law, grade);
  known.set(law, found);
  return found;
}

function placeNodes(law: Law | undefined, grade: Grade): Nodes {
  if (law === undefined) return { at: [0], weight: [1] };
  if (law.sigma !== undefined) return law.rule(4 + 4 * grade);
  const edges = edgesOnBothSides(law);
  const all = grade < 1 ? 4 + 8 * grade : 8 + 8 * grade;
  const n = Math.max(2, Math.ceil(all / (edges.length - 1)));
  return nodesOn(edges, n, law.density);
}

function workedOut(model: Model, plan: Plan, state: State): Overlap {
  // while a travel is only sought, half as finely
  const grade = model.grade < 2 ? model.grade / 2 : model.grade;
  const rough = onNodes(model, plan, state, grade / 2);
  const fine = onNodes(model, plan, state, grade);
  return { ...fine, error: Math.abs(fine.any - rough.any) };
}

function onNodes(model: Model, plan: Plan, state: State, grade: Grade): Omit<Overlap, "error"> {
  const { thickness, point } = model.neck.spec.tolerance;
  const [only] = plan.bits;
  const isMerged =
    plan.bits.length === 1 && only !== undefined && !model.pointed.some((each) => each);
  const merged = isMerged && only.pointed ? [...model.board, point] : model.board;
  const sanding = kept(model, model.lawOf(merged), grade);
  const thick = kept(model, model.lawOf([thickness]), grade);
  const points = kept(model, isMerged ? undefined : model.point, grade);
  const count = model.benches.length;
  const byHole = new Float64Array(count);
  let any = 0;
  for (let i = 0; i < sanding.at.length; i++) {
    for (let j = 0; j < thick.at.length; j++) {
      const share = (sanding.weight[i] as number) * (thick.weight[j] as number);
      let [all, below, above] = [0, 0, 0];
      for (const bit of plan.bits) {
        const nodes = bit.pointed ? points : ONE;
        const of = inBit(
          model,
          plan,
          state,
          bit,
          nodes,
          sanding.at[i] as number,
          thick.at[j] as number,
          share,
          byHole,
          grade,
        );
        all = either(all, of.any);
        below = either(below, of.below);
        above = either(above, of.above);
      }
      any += share * (below + above - all);
    }
  }
  return { any, byHole: [...byHole] };
}

const ONE: Nodes = { at: [0], weight: [1] };

interface Three {
  any: number;
  below: number;
  above: number;
}

function inBit(
  model: Model,
  plan: Plan,
  state: State,
  bit: BitGroup,
  points: Nodes,
  sanding: number,
  thick: number,
  share: number,
  byHole: Float64Array,
  grade: Grade,
): Three {
  const sum = { any: 0, below: 0, above: 0 };
  points.at.forEach((p, k) => {
    const weight = points.weight[k] as number;
    const low = placeLimits(model, plan, "below", state, 0);
    const isPointed = model.pointed.some((each) => each);
    const high = placeLimits(model, plan, "above", state, isPointed ? p : 0);
    const own = { any: 0, below: 0, above: 0 };
    for (const setting of bit.settings) {
      const law = setting.stops ? model.stop : undefined;
      const of = inSetting(
        law,
        setting,
        low,
        high,
        sanding - p,
        thick,
        share * weight,
        byHole,
        grade,
      );
      own.any = either(own.any, of.any);
      own.below = either(own.below, of.below);
      own.above = either(own.above, of.above);
    }
    sum.any += weight * own.any;
    sum.below += weight * own.below;
    sum.above += weight * own.above;
  });
  return sum;
}

function inSetting(
  law: Law | undefined,
  { holes }: SettingGroup,
  low: readonly HoleLimits[],
  high: readonly HoleLimits[],
  m: number,
  n: number,
  share: number,
  byHole: Float64Array,
  grade: Grade,
): Three {
  const sum = { any: 0, below: 0, above: 0 };
  const add = (x: number, weight: number) => {
    let [any, below, above] = [0, 0, 0];
    for (const i of holes) {
      const [first, second] = [low[i] as HoleLimits, high[i] as HoleLimits];
      const { set } = first;
      const { least, most: flat } = first.either;
      const keep = least ? chanceAbove(least, m + x + set) : 0;
      const flush = flat ? chanceBelow(flat, m + x + set) : 0;
      const { most } = second.either;
      const wood = most ? chanceBelow(most, n + x + set) : 0;
      const under = Math.min(1, keep + flush);
      const own = Math.min(1, keep + either(flush, wood));
      byHole[i] = (byHole[i] as number) + share * weight * (under + wood - own);
      any = either(any, own);
      below = either(below, under);
      above = either(above, wood);
    }
    sum.any += weight * any;
    sum.below += weight * below;
    sum.above += weight * above;
  };
  if (law === undefined) {
    add(0, 1);
    return sum;
  }
  const { at, weight } = panelRule(grade);
  const placed = holes.flatMap((i) => [
    { ...(low[i] as HoleLimits).either, set: (low[i] as HoleLimits).set + m },
    { ...(high[i] as HoleLimits).either, set: (high[i] as HoleLimits).set + n },
  ]);
  for (const [from, to] of panelsBetween(law, placed, -law.half, law.half)) {
    for (let k = 0; k < at.length; k++) {
      const x = (from + to) / 2 + ((to - from) / 2) * (at[k] as number);
      add(x, (to - from) * (weight[k] as number) * law.density(x));
    }
  }
  return sum;
}
