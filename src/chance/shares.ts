/**
 * Who shares which error: the board has bits, each bit its settings, each setting its holes. What lies to one side of a
 * hole's window hangs on one sum of errors (keep and flush on stop − point − sanding, web and channel on stop − thickness),
 * so its chance is a mean over the board's error of a product over bits of means over the bit's, and so on. Errors that
 * only one setting has are added up first; of one hole by itself all are.
 */
import type { LawSpec } from "../design/spec.js";
import { type Aim, finerThan, type Mean, meanOver } from "./expectation.js";
import { evenNodes, type Law, type Laws, measureSmoothness } from "./law.js";
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
}

/** Broken where m is less than the one, or more than the other. */
export interface Limit {
  readonly least?: Spread | undefined;
  readonly most?: Spread | undefined;
  /** Chance of both, by how far the errors add up, where one hole may break both. */
  readonly twice?: ((m: number) => number) | undefined;
  /** The errors that are added to either. */
  readonly own: readonly LawSpec[];
  readonly ownMost?: readonly LawSpec[];
}

/** The limits of all holes, and how far each is set: travel and correction, or the depth of what is drilled. */
export interface Side {
  readonly limits: readonly HoleLimits[];
  readonly sets: readonly number[];
}

/** Errors that add up, in the order in which they are shared. */
export interface SharedLaws {
  readonly board: readonly LawSpec[];
  readonly point: readonly LawSpec[];
  readonly stop: readonly LawSpec[];
}

/** Where the chance that any hole fails stands, the chances of the two rules of this side, an error, the first hole's. */
export const ANY = 0;
export const FIRST = 1;
export const SECOND = 2;
export const ERROR = 3;
export const HOLES = 4;

/** A level of the tree: an error, and what shares it; a setting knows the errors of its own. */
export type Level = { readonly law: Law | undefined; readonly under: readonly Level[] } | Setting;

export interface Setting {
  readonly law: Law | undefined;
  readonly holes: readonly number[];
  /** Errors that others share as well are told by how far off all already is. */
  readonly isShared: boolean;
  /** The law of all that is shared, from the board down, with a hole's own errors added. */
  readonly alone: (own: readonly LawSpec[]) => Law | undefined;
}

/** The tree of a side; an error that one setting has by itself is added to the setting's. */
export function buildTree(bits: readonly BitGroup[], laws: SharedLaws, lawOf: Laws): Level {
  const inBoard = bits.length === 1;
  const under = bits.map(({ settings, pointed }): Level => {
    const shared = pointed ? [...laws.board, ...laws.point] : laws.board;
    const inBit = settings.length === 1;
    const ofBit = inBoard ? shared : pointed ? laws.point : [];
    const children = settings.map(({ holes, stops }): Level => {
      const own = stops ? laws.stop : [];
      const alone = keepLaws([...shared, ...own], lawOf);
      const isShared = !(inBoard && inBit);
      return { law: lawOf(inBit ? [...ofBit, ...own] : own), holes, isShared, alone };
    });
    const [only] = children;
    return inBit && only ? only : { law: lawOf(ofBit), under: children };
  });
  const [only] = under;
  return inBoard && only ? only : { law: lawOf(laws.board), under };
}

/** Errors with others added, by the list of these. */
function keepLaws(errors: readonly LawSpec[], lawOf: Laws) {
  const known = new Map<readonly LawSpec[], Law | undefined>();
  return (own: readonly LawSpec[]) => {
    if (!known.has(own)) known.set(own, lawOf([...errors, ...own]));
    return known.get(own);
  };
}

/** The chances of one side of all windows. */
export function failingShares(level: Level, side: Side, aim: Aim, grade: Grade, shift = 0): Mean {
  const of = new Float64Array(HOLES + side.limits.length);
  const [any, error] = failingUnder(level, side, "either", aim, grade)(shift);
  of[ANY] = any;
  // where all holes have one rule, it is the first
  const hasTwo = side.limits.some(({ second }) => second !== undefined);
  of[FIRST] = hasTwo ? failingUnder(level, side, "first", aim, grade)(shift)[0] : any;
  of[SECOND] = hasTwo ? failingUnder(level, side, "second", aim, grade)(shift)[0] : 0;
  for (const setting of listSettings(level)) {
    for (const i of setting.holes) of[HOLES + i] = failingAlone(setting, side, i, grade, shift);
  }
  return { of, error };
}

function listSettings(level: Level): readonly Setting[] {
  return "holes" in level ? [level] : level.under.flatMap(listSettings);
}

/** The chance that any hole under a level fails, and its error, by how far the errors above it add up. */
type Failing = (shift: number) => readonly [chance: number, error: number];

function failingUnder(
  level: Level,
  side: Side,
  which: keyof HoleLimits,
  aim: Aim,
  grade: Grade,
): Failing {
  if ("holes" in level) {
    const limits = placeOn(side, level.holes, which);
    const isEven = level.isShared && measureSmoothness(level.law) > 0;
    if (isEven) return keepNear(failingOverShifts(level.law as Law, limits, grade));
    return keepNear((shift) => [failingAny(level.law, limits, grade, shift), 0]);
  }
  const { law } = level;
  const grid = law && evenNodes(law, leastSmoothness(level.under), grade);
  const inner = law === undefined ? aim : finerThan(aim);
  const parts = level.under.map((under) => failingUnder(under, side, which, inner, grade));
  const all = (shift: number): readonly [number, number] => {
    let [chance, error] = [0, 0];
    for (const part of parts) {
      const [own, off] = part(shift);
      chance = either(chance, own);
      error = Math.max(error, off);
    }
    return [chance, error];
  };
  if (law === undefined) return all;
  if (grid) return meanOn(grid, all);
  return (shift) => {
    let worst = 0;
    const { of, error } = meanOver(law, aim, (x) => {
      const [chance, off] = all(shift + x);
      worst = Math.max(worst, off);
      return Float64Array.of(chance);
    });
    return [of[0] as number, error + worst];
  };
}

function meanOn({ at, weight }: Rule, f: Failing): Failing {
  return keepNear((shift) => {
    let sum = 0;
    for (let k = 0; k < at.length; k++) {
      sum += (weight[k] as number) * f(shift + (at[k] as number))[0];
    }
    return [Math.min(1, sum), 0];
  });
}

/** What was worked out is kept: on a grid the same sums come again and again. */
export function keepNear<Result>(f: (shift: number) => Result): (shift: number) => Result {
  const known = new Map<number, Result>();
  return (shift) => {
    const key = Math.round(shift / HAIR);
    const found = known.get(key) ?? f(shift);
    known.set(key, found);
    return found;
  };
}

const HAIR = 1e-10;

/** How smooth the chances under a level are at the least: as a normal error of this standard deviation; 0 with kinks. */
function leastSmoothness(levels: readonly Level[]): number {
  const each = levels.map((level) => {
    const own = measureSmoothness(level.law);
    return "holes" in level ? own : Math.hypot(own, leastSmoothness(level.under));
  });
  return Math.min(...each);
}

/** The chance of either of two independent events: 1 − (1 − a)(1 − b), right where both are small. */
export function either(a: number, b: number): number {
  return a + b * (1 - a);
}

const ROUGH = legendreRule(6);
const RULES = [8, 16, 24].map(legendreRule);

/** Nodes for one panel. */
function panelRule(grade: Grade): Rule {
  return (grade < 2 ? ROUGH : RULES[Math.min(2, Math.floor(grade / 2) - 1)]) as Rule;
}

/** A limit, and how far its hole is set. */
export interface Placed extends Limit {
  readonly set: number;
}

/** The limits of some holes. */
export function placeOn(
  { limits, sets }: Side,
  holes: readonly number[],
  which: keyof HoleLimits,
): Placed[] {
  return holes.flatMap((i) => {
    const limit = limits[i]?.[which];
    return limit ? [{ ...limit, set: sets[i] as number }] : [];
  });
}

/** The chance that one hole fails, all its errors added up. */
function failingAlone(setting: Setting, side: Side, i: number, grade: Grade, shift: number) {
  const [limit] = placeOn(side, [i], "either");
  const { least, most, own, ownMost = own, set } = limit as Placed;
  // it may fail on both sides at once
  const isTwice = least && most && least.high > most.low;
  if (isTwice || most?.isBroken) {
    return failingAny(setting.alone(NONE), [limit as Placed], grade, shift);
  }
  const under = least ? chanceAlone(least, setting.alone(own), set + shift, 1) : 0;
  const over = most ? chanceAlone(most, setting.alone(ownMost), set + shift, -1) : 0;
  return Math.min(1, under + over);
}

const NONE: readonly LawSpec[] = [];

/** The chance that a quantity by its place exceeds an error and m, or with sign −1 lies below them. */
function chanceAlone(spread: Spread, law: Law | undefined, m: number, sign: 1 | -1): number {
  if (law === undefined) return sign > 0 ? chanceAbove(spread, m) : chanceBelow(spread, m);
  let chance = 0;
  for (const { at, weight } of spread.atoms()) chance += weight * law.upper(sign * (m - at));
  return chance;
}

/** Some hole fails for certain where errors add up to less than `first` or more than `last`; none between `under` and `over`. */
function findEnds(limits: readonly Placed[]) {
  let [first, last] = [-Infinity, Infinity];
  let [under, over] = [-Infinity, Infinity];
  for (const { least, most, set } of limits) {
    if (least) {
      first = Math.max(first, least.low - set);
      under = Math.max(under, least.high - set);
    }
    if (most) {
      last = Math.min(last, most.high - set);
      over = Math.min(over, most.low - set);
    }
  }
  return { first, last, under, over };
}

/** The chance that any hole of a setting fails: for certain below `from` and above `to`, and between as they come. */
export function failingAny(
  law: Law | undefined,
  limits: readonly Placed[],
  grade: Grade,
  shift: number,
): number {
  if (law === undefined) return anyAt(limits, shift);
  const { half } = law;
  const ends = findEnds(limits);
  const [from, to] = [ends.first - shift, ends.last - shift];
  if (!(from < to)) return 1;
  const certain = (from > -half ? law.upper(-from) : 0) + (to < half ? law.upper(to) : 0);
  const [start, end] = [Math.max(from, -half), Math.min(to, half)];
  return Math.min(1, certain + failingBetween(law, limits, grade, start, end, shift));
}

/**
 * The same for many shifts, of a law without kinks: where the errors add up to a sum, as many fail whatever the shift, so
 * that only the density changes.
 */
function failingOverShifts(law: Law, limits: readonly Placed[], grade: Grade): Failing {
  const { first, last, under, over } = findEnds(limits);
  if (!(first < last)) return () => [1, 0];
  const from = first > -Infinity ? first : over;
  const to = last < Infinity ? last : under;
  const { at, weight } = nodesOnPanels(panelsBetween(law, limits, from, to, 0), grade);
  const fails = at.map((m, k) => (weight[k] as number) * anyAt(limits, m));
  return (shift) => {
    let sum = law.upper(shift - first) + law.upper(last - shift);
    for (let k = 0; k < at.length; k++) {
      sum += (fails[k] as number) * law.density((at[k] as number) - shift);
    }
    return [Math.min(1, sum), 0];
  };
}

function failingBetween(
  law: Law,
  limits: readonly Placed[],
  grade: Grade,
  from: number,
  to: number,
  shift: number,
): number {
  const open = limits.filter(
    ({ least, most, set }) =>
      (least && least.high - set - shift > from) || (most && most.low - set - shift < to),
  );
  if (open.length === 0 || !(from < to)) return 0;
  return integrateOver(law, panelsBetween(law, open, from, to, shift), grade, (x) =>
    anyAt(open, x + shift),
  );
}

/** The chance that one limit is broken, the shared errors adding up to x. */
function chanceBeyond({ least, most, twice, set }: Placed, x: number): number {
  const m = x + set;
  const under = least ? chanceAbove(least, m) : 0;
  if (most === undefined) return under;
  const both = under + chanceBelow(most, m);
  return Math.min(1, twice ? both - twice(m) : both);
}

type Panels = readonly (readonly [from: number, to: number])[];

/** Nodes on panels. */
export function nodesOnPanels(panels: Panels, grade: Grade): Rule {
  const { at, weight } = panelRule(grade);
  const nodes: { at: number[]; weight: number[] } = { at: [], weight: [] };
  for (const [from, to] of panels) {
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    for (let k = 0; k < at.length; k++) {
      nodes.at.push(middle + half * (at[k] as number));
      nodes.weight.push(2 * half * (weight[k] as number));
    }
  }
  return nodes;
}

/** The integral of a function by a law's density over panels. */
export function integrateOver(
  { density }: Law,
  panels: Panels,
  grade: Grade,
  f: (x: number) => number,
): number {
  const { at, weight } = nodesOnPanels(panels, grade);
  let sum = 0;
  for (let k = 0; k < at.length; k++) {
    const x = at[k] as number;
    sum += (weight[k] as number) * density(x) * f(x);
  }
  return sum;
}

/** The chance that any fails, the shared errors adding up to x. */
function anyAt(limits: readonly Placed[], x: number): number {
  let any = 0;
  for (let i = 0; i < limits.length; i++) {
    any = either(any, chanceBeyond(limits[i] as Placed, x));
  }
  return any;
}

/** Panels on which the law and every chance are smooth, where any may fail. */
export function panelsBetween(
  law: Law,
  limits: readonly Placed[],
  from: number,
  to: number,
  shift: number,
): Panels {
  const edges = [from, to];
  const add = (x: number) => {
    if (from < x && x < to) edges.push(x);
  };
  for (const edge of law.edges) {
    add(edge);
    add(-edge);
  }
  const spans: Span[] = [];
  const ends = findEnds(limits);
  const [under, over] = [ends.under - shift, ends.over - shift];
  for (const { least, most, set: own } of limits) {
    const set = own + shift;
    for (const spread of [least, most]) {
      if (spread === undefined) continue;
      const course = spread.course();
      for (const at of course.edges) add(at - set);
      spans.push({ from: spread.low - set, to: spread.high - set, width: course.width });
    }
  }
  add(under);
  add(over);
  edges.sort((a, b) => a - b);
  return edges.slice(1).flatMap((end, i) => {
    const start = edges[i] as number;
    if (!(end - start > 1e-13 * law.half)) return [];
    const middle = (start + end) / 2;
    if (middle > under && middle < over) return [];
    const width = spans.reduce(
      (least, span) => (span.from < end && start < span.to ? Math.min(least, span.width) : least),
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
