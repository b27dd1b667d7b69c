/**
 * Who shares which error: the board has bits, each bit its settings, each setting its holes. What lies to one side of a
 * hole's window hangs on one sum of errors (keep and flush on stop − point − sanding, web and channel on stop − thickness),
 * so its chance is a mean over the board's error of a product over bits of means over the bit's, and so on. Errors that
 * only one setting has are added up first.
 */
import type { LawSpec } from "../design/spec.js";
import { type Aim, finerThan, type Mean, meanOver, type Quantities } from "./expectation.js";
import type { Law, Laws } from "./law.js";
import { legendreRule, type Rule } from "./rules.js";
import { chanceAbove, chanceBelow, type Grade, type Spread } from "./spread.js";

/** One setting: the holes that it drills. */
export interface SettingGroup {
  readonly holes: readonly number[];
  /** Whether the stop's error is shared; what is drilled has none, and each hole may have its own. */
  readonly stops: boolean;
}

/** One bit: its settings, and whether its point may be off. */
export interface BitGroup {
  readonly settings: readonly SettingGroup[];
  readonly pointed: boolean;
}

/** What may break a hole's rules, as errors add up to m. */
export interface HoleLimits {
  /** Broken where m is less, or where it is more. */
  readonly first: Limit;
  readonly second: Limit | undefined;
  /** Either. */
  readonly either: Limit;
  /** Travel and correction, or the depth of what is drilled. */
  readonly set: number;
}

/** Broken where m is less than the one, or more than the other. */
export interface Limit {
  readonly least?: Spread | undefined;
  readonly most?: Spread | undefined;
  /** The errors that are added to either. */
  readonly own: readonly LawSpec[];
  readonly ownMost?: readonly LawSpec[];
}

/** Errors that add up, in the order in which they are shared. */
export interface SharedLaws {
  readonly board: readonly LawSpec[];
  readonly point: readonly LawSpec[];
  readonly stop: readonly LawSpec[];
}

/** Where the chance that any hole fails stands, the chances of the two rules of this side, and the first hole's. */
export const ANY = 0;
export const FIRST = 1;
export const SECOND = 2;
export const HOLES = 3;

/** A level of the tree: an error, and what shares it; a setting knows the errors of its own. */
export type Level = { readonly law: Law | undefined; readonly under: readonly Level[] } | Setting;

export interface Setting {
  readonly law: Law | undefined;
  readonly holes: readonly number[];
  /** The same law with a hole's own errors added. */
  readonly with: (own: readonly LawSpec[]) => Law | undefined;
}

/** The tree of a side; an error that one setting has by itself is added to the setting's. */
export function buildTree(bits: readonly BitGroup[], laws: SharedLaws, lawOf: Laws): Level {
  const inBoard = bits.length === 1;
  const under = bits.map(({ settings, pointed }): Level => {
    const point = pointed ? laws.point : [];
    const inBit = settings.length === 1;
    const shared = inBoard ? laws.board : [];
    const children = settings.map(({ holes, stops }): Level => {
      const own = stops ? laws.stop : [];
      return settingShares(inBit ? [...shared, ...point, ...own] : own, holes, lawOf);
    });
    const [only] = children;
    return inBit && only ? only : { law: lawOf([...shared, ...point]), under: children };
  });
  const [only] = under;
  return inBoard && only ? only : { law: lawOf(laws.board), under };
}

export function settingShares(
  errors: readonly LawSpec[],
  holes: readonly number[],
  lawOf: Laws,
): Setting {
  const known = new Map<readonly LawSpec[], Law | undefined>();
  const law = lawOf(errors);
  const sum = (own: readonly LawSpec[]) => {
    if (own.length === 0) return law;
    if (!known.has(own)) known.set(own, lawOf([...errors, ...own]));
    return known.get(own);
  };
  return { law, holes, with: sum };
}

/** The chances of one side of all windows. */
export function failingShares(
  level: Level,
  limits: readonly HoleLimits[],
  aim: Aim,
  grade: Grade,
  shift = 0,
): Mean {
  if ("holes" in level) {
    return { of: failingInSetting(level, limits, grade, shift), error: 0 };
  }
  const reach = measureReach(level);
  if (!isAnyWithin(level, limits, shift - reach, shift + reach)) {
    return { of: new Float64Array(HOLES + limits.length), error: 0 };
  }
  let error = 0;
  const inner = level.law === undefined ? aim : finerThan(aim);
  const mean = meanOver(level.law, aim, (x) => {
    const all = new Float64Array(HOLES + limits.length);
    for (const under of level.under) {
      const { of, error: own } = failingShares(under, limits, inner, grade, shift + x);
      error = Math.max(error, own);
      joinTo(all, of);
    }
    return all;
  });
  return { of: mean.of, error: mean.error + error };
}

/** Farthest that the errors of a level may add up to. */
function measureReach(level: Level): number {
  const own = level.law?.half ?? 0;
  return "holes" in level ? own : own + Math.max(0, ...level.under.map(measureReach));
}

/** Whether any hole may fail where the errors add up to something between two sums. */
function isAnyWithin(
  level: Level,
  limits: readonly HoleLimits[],
  from: number,
  to: number,
): boolean {
  if (!("holes" in level)) {
    return level.under.some((under) => isAnyWithin(under, limits, from, to));
  }
  return level.holes.some((i) => {
    const { either, set } = limits[i] as HoleLimits;
    const { least, most } = either;
    return (least && from + set < least.high) || (most && to + set > most.low);
  });
}

/** Adds the failing of other holes, which are independent of these. */
function joinTo(all: Quantities, more: Quantities): void {
  for (let i = 0; i < HOLES; i++) all[i] = either(all[i] as number, more[i] as number);
  for (let i = HOLES; i < all.length; i++) all[i] = (all[i] as number) + (more[i] as number);
}

/** The chance of either of two independent events: 1 − (1 − a)(1 − b), right where both are small. */
export function either(a: number, b: number): number {
  return a + b * (1 - a);
}

const ROUGH = legendreRule(6);
const RULES = [8, 16, 24].map(legendreRule);

/** Nodes for one panel. */
export function panelRule(grade: Grade): Rule {
  return (grade < 2 ? ROUGH : RULES[Math.min(2, Math.floor(grade / 2) - 1)]) as Rule;
}

/** The mean over what the holes of one setting share. */
export function failingInSetting(
  setting: Setting,
  limits: readonly HoleLimits[],
  grade: Grade,
  shift: number,
): Quantities {
  const { holes, law } = setting;
  const sum = new Float64Array(HOLES + limits.length);
  const placed = (pick: (limits: HoleLimits) => Limit | undefined) =>
    holes.flatMap((i): Placed[] => {
      const each = limits[i] as HoleLimits;
      const limit = pick(each);
      return limit ? [{ ...limit, set: each.set + shift }] : [];
    });
  const first = placed((each) => each.first);
  const second = placed((each) => each.second);
  sum[FIRST] = failingAny(law, first, grade);
  sum[SECOND] = second.length > 0 ? failingAny(law, second, grade) : 0;
  sum[ANY] =
    second.length > 0
      ? failingAny(
          law,
          placed((each) => each.either),
          grade,
        )
      : (sum[FIRST] as number);
  for (const i of holes) {
    const { either, set } = limits[i] as HoleLimits;
    sum[HOLES + i] = failingAlone(setting, { ...either, set: set + shift }, grade);
  }
  return sum;
}

/** A limit, and how far its hole is set. */
export interface Placed extends Limit {
  readonly set: number;
}

/** The chance that one hole fails, all its errors added up. */
function failingAlone(setting: Setting, limit: Placed, grade: Grade): number {
  const { with: sum } = setting;
  const { least, most, own, ownMost = own, set } = limit;
  // it may fail on both sides at once
  const isTwice = least && most && least.high > most.low;
  if (isTwice || most?.isBroken) return failingAny(setting.law, [limit], grade);
  const chance = (spread: Spread, law: Law | undefined, sign: 1 | -1) => {
    if (law === undefined) {
      return sign > 0 ? chanceAbove(spread, set) : chanceBelow(spread, set);
    }
    let total = 0;
    for (const { at, weight } of spread.atoms) total += weight * law.upper(sign * (set - at));
    return total;
  };
  const under = least ? chance(least, sum(own), 1) : 0;
  return Math.min(1, under + (most ? chance(most, sum(ownMost), -1) : 0));
}

/** The chance that any hole of a setting fails: for certain below `from` and above `to`, and between as they come. */
function failingAny(law: Law | undefined, limits: readonly Placed[], grade: Grade): number {
  if (law === undefined) return anyAt(limits, 0);
  const { half } = law;
  let [from, to] = [-Infinity, Infinity];
  for (const { least, most, set } of limits) {
    if (least) from = Math.max(from, least.low - set);
    if (most) to = Math.min(to, most.high - set);
  }
  if (!(from < to)) return 1;
  const certain = (from > -half ? law.upper(-from) : 0) + (to < half ? law.upper(to) : 0);
  return Math.min(
    1,
    certain + failingBetween(law, limits, grade, Math.max(from, -half), Math.min(to, half)),
  );
}

function failingBetween(
  law: Law,
  limits: readonly Placed[],
  grade: Grade,
  from: number,
  to: number,
): number {
  const open = limits.filter(
    ({ least, most, set }) => (least && least.high - set > from) || (most && most.low - set < to),
  );
  if (open.length === 0 || !(from < to)) return 0;
  const { at, weight } = panelRule(grade);
  let sum = 0;
  for (const [start, end] of panelsBetween(law, open, from, to)) {
    const [middle, half] = [(start + end) / 2, (end - start) / 2];
    for (let k = 0; k < at.length; k++) {
      const x = middle + half * (at[k] as number);
      sum += 2 * half * (weight[k] as number) * law.density(x) * anyAt(open, x);
    }
  }
  return sum;
}

/** The chance that any fails, the shared errors adding up to x. */
function anyAt(limits: readonly Placed[], x: number): number {
  let any = 0;
  for (let i = 0; i < limits.length; i++) {
    const { least, most, set } = limits[i] as Placed;
    const m = x + set;
    const under = least ? chanceAbove(least, m) : 0;
    any = either(any, most ? Math.min(1, under + chanceBelow(most, m)) : under);
  }
  return any;
}

/** Panels on which the law and every chance are smooth, where any may fail. */
export function panelsBetween(
  law: Law,
  limits: readonly Placed[],
  from: number,
  to: number,
): readonly (readonly [number, number])[] {
  const edges = [from, to];
  const add = (x: number) => {
    if (from < x && x < to) edges.push(x);
  };
  for (const edge of law.edges) {
    add(edge);
    add(-edge);
  }
  const spans: Span[] = [];
  for (const { least, most, set } of limits) {
    for (const spread of [least, most]) {
      if (spread === undefined) continue;
      const course = spread.course();
      for (const at of course.edges) add(at - set);
      add(spread.low - set);
      add(spread.high - set);
      spans.push({ from: spread.low - set, to: spread.high - set, width: course.width });
    }
  }
  edges.sort((a, b) => a - b);
  return edges.slice(1).flatMap((end, i) => {
    const start = edges[i] as number;
    if (!(end - start > 1e-13 * law.half)) return [];
    const middle = (start + end) / 2;
    if (!isAnyOpen(limits, middle)) return [];
    const width = spans.reduce(
      (least, span) =>
        span.from < middle && middle < span.to ? Math.min(least, span.width) : least,
      1.5 * law.width,
    );
    const count = Math.max(1, Math.ceil((end - start) / width));
    return Array.from({ length: count }, (_, k) => {
      const step = (end - start) / count;
      return [start + k * step, start + (k + 1) * step] as const;
    });
  });
}

interface Span {
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

function isAnyOpen(limits: readonly Placed[], x: number): boolean {
  return limits.some(
    ({ least, most, set }) => (least && x + set < least.high) || (most && x + set > most.low),
  );
}
