/**
 * How a quantity of a hole is spread by the hole's own errors: its place, and errors that add to it (stop, seat, the
 * fill's thickness). A quantity over the places is given as a function of how far off the hole is; along chords across
 * the board it is taken as a parabola piece by piece. Lengths in mm.
 */
import { type Law, upperTail } from "./law.js";
import type { Coordinate, Layout } from "./layout.js";
import { fewFor, legendreRule } from "./rules.js";

/** A quantity that is spread: within [low, high], and the chance that it is more, or less, than m there. */
export interface Spread {
  readonly low: number;
  readonly high: number;
  readonly above: (m: number) => number;
  readonly below: (m: number) => number;
  /** Where the chance changes its course, and the widest panel that shows what it is like between. */
  readonly course: () => Course;
  /** Some of its values by the place alone, with their weights. */
  readonly atoms: () => readonly Atom[];
  /** It has jumps, which atoms tell only roughly. */
  readonly isBroken?: boolean;
}

export interface Course {
  readonly edges: readonly number[];
  readonly width: number;
}

/** A quantity over the places of a hole. */
export interface Field {
  readonly at: (along: number, across: number) => number;
  /** It does not change along the board. */
  readonly isLevel: boolean;
  /** Where across the board it has kinks or jumps. */
  readonly kinks: readonly number[];
  /** It has jumps. */
  readonly isBroken?: boolean;
}

/** How finely all is worked out: 1 is rough, 2 as it is meant to be, more for a judge. */
export type Grade = number;

/** The chance that a spread quantity exceeds m. */
export function chanceAbove(spread: Spread, m: number): number {
  return m >= spread.high ? 0 : m < spread.low ? 1 : spread.above(m);
}

/** The chance that it lies below m. */
export function chanceBelow(spread: Spread, m: number): number {
  return m <= spread.low ? 0 : m > spread.high ? 1 : spread.below(m);
}

/** The spread of a field over the layout, plus errors of its own. */
export function buildSpread(
  field: Field,
  layout: Layout | undefined,
  own: Law | undefined,
  grade: Grade,
): Spread {
  if (layout === undefined) return spreadAround([{ at: field.at(0, 0), weight: 1 }], own);
  const [low, high] = roughRange(field, layout);
  if (!(high > low)) return spreadAround([{ at: low, weight: 1 }], own);
  if (own !== undefined) {
    const count = countAtoms(high - low, layout, own, grade);
    // jumps are told by many alone
    if (field.isBroken) return spreadAround(placeAtoms(field, layout, Math.ceil(20 * grade)), own);
    const atoms = placeAtoms(field, layout, Math.min(MOST_ROWS, count + 1));
    return spreadAround(own.width < Infinity ? few(atoms, count) : atoms, own);
  }
  return overLayout(field, layout, grade, low, high);
}

/** How much farther than its values at the rim a quantity may reach, as a part of its range. */
const MARGIN = 0.02;
const DIRECTIONS = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);

/** From a little below its least to a little above its greatest, as its values at the rim and at kinks tell. */
function roughRange({ at, kinks, isLevel }: Field, layout: Layout): [number, number] {
  const { reach, isEndless } = layout;
  let [low, high] = [Infinity, -Infinity];
  const look = (along: number, across: number) => {
    const value = at(along, across);
    low = Math.min(low, value);
    high = Math.max(high, value);
  };
  look(0, 0);
  // what is missed between six is beyond seven standard deviations
  const all = isEndless ? DIRECTIONS.filter((_, i) => i % 2 === 0) : DIRECTIONS;
  for (const angle of isLevel ? [0, Math.PI] : all) {
    look(reach * Math.sin(angle), reach * Math.cos(angle));
  }
  for (const kink of kinks) {
    if (!(Math.abs(kink) < reach)) continue;
    const half = isLevel ? 0 : Math.sqrt((reach - kink) * (reach + kink));
    for (const x of [kink - INSIDE * reach, kink + INSIDE * reach]) {
      for (const s of isLevel ? [0] : [-half, 0, half]) look(s, x);
    }
  }
  const margin = high < Infinity ? MARGIN * (high - low) : 0;
  return [low - margin, high + margin];
}

export interface Atom {
  readonly at: number;
  readonly weight: number;
}

/** Some values, each with errors about it. */
export function spreadAround(atoms: readonly Atom[], own: Law | undefined): Spread {
  let [first, last] = [Infinity, -Infinity];
  for (const { at } of atoms) {
    first = Math.min(first, at);
    last = Math.max(last, at);
  }
  const half = own?.half ?? 0;
  const course = (): Course => {
    if (own === undefined) return { edges: atoms.map(({ at }) => at), width: Infinity };
    const ends = own.width < Infinity ? [0, own.half] : own.edges;
    const edges = ends.flatMap((edge) => [first - edge, first + edge, last - edge, last + edge]);
    return { edges, width: 1.5 * own.width };
  };
  const upper = upperTail(own);
  const sum = (m: number, sign: 1 | -1) => {
    let chance = 0;
    for (const { at, weight } of atoms) chance += weight * upper(sign * (m - at));
    return chance;
  };
  return {
    low: first - half,
    high: last + half,
    above: (m) => sum(m, 1),
    below: (m) => sum(m, -1),
    course,
    atoms: () => atoms,
  };
}

/** Fewer values with the same first moments. */
function few(atoms: readonly Atom[], count: number): Atom[] {
  const all = { at: atoms.map(({ at }) => at), weight: atoms.map(({ weight }) => weight) };
  const { at, weight } = fewFor(all, count);
  return at.map((value, i) => ({ at: value, weight: weight[i] as number }));
}

const MOST_ROWS = 40;
/** Standard deviations in the range of a place that does not end, and of one that does. */
const [ENDLESS, ENDING] = [18, 4];
/** How far out a chance is to be right to a small part of itself, in standard deviations. */
const FAR = 7.5;

/**
 * How many values stand for the whole. About so many of standard deviation s, errors as smooth as a normal one of σ give
 * a chance that is off by (s/σ)^(2n) · n!/(2n)! at the middle, and by (z·s/σ)^(2n) · n!/(2n)! of itself z·σ out.
 */
function countAtoms(range: number, { isEndless }: Layout, own: Law, grade: Grade): number {
  if (!(own.width < Infinity)) return Math.ceil(grade * (1 + (2 * range) / own.half));
  const ratio = (range / (isEndless ? ENDLESS : ENDING) / own.width) ** 2;
  let [n, middle, out] = [0, 1, 1];
  while (n < MOST_ROWS && (middle > 1e-6 / 4 ** grade || out > 1e-2 / 4 ** grade)) {
    n++;
    const part = n / (2 * n * (2 * n - 1));
    middle *= ratio * part;
    out *= FAR * FAR * ratio * part;
  }
  return n;
}

function placeAtoms({ at, isLevel, kinks }: Field, layout: Layout, count: number): Atom[] {
  // a kink costs digits
  const n = kinks.some((kink) => Math.abs(kink) < layout.reach) ? 2 * count : count;
  if (isLevel) {
    const { at: places, weight } = layout.rule(n);
    return places.map((x, i) => ({ at: at(0, x), weight: weight[i] as number }));
  }
  const rows = layout.rule(count);
  return rows.at.flatMap((s, i) => {
    const row = layout.ruleAt(s, n);
    return row.at.map((x, j) => ({
      at: at(s, x),
      weight: (rows.weight[i] as number) * (row.weight[j] as number),
    }));
  });
}

/**
 * The chance that m, with errors of the tip's own, lies below one quantity and above another of the same place, which has
 * an error of its own besides: a dot that is too thin at one end and too low at the other.
 */
export function countTwice(
  least: Spread,
  deep: Field,
  flat: Field,
  layout: Layout | undefined,
  tip: Law | undefined,
  fill: Law | undefined,
  grade: Grade,
): (m: number) => number {
  const count = Math.ceil(JUMPS * grade);
  const both = {
    ...deep,
    isLevel: deep.isLevel && flat.isLevel,
    kinks: [...deep.kinks, ...flat.kinks],
  };
  const [lows, highs] = [deep, flat].map(({ at }) =>
    layout === undefined
      ? [{ at: at(0, 0), weight: 1 }]
      : placeAtoms({ ...both, at }, layout, count),
  ) as [Atom[], Atom[]];
  const upper = upperTail(fill);
  const nodes = legendreRule(count);
  /** Between the one quantity, less what the dot may be off, and the other. */
  const between = (m: number, low: number, high: number) => {
    if (tip === undefined) return m < low ? upper(high - m) : 0;
    const from = Math.max(-tip.half, high - (fill?.half ?? 0) - m);
    const to = Math.min(tip.half, low - m);
    let sum = 0;
    for (let k = 0; k < nodes.at.length && from < to; k++) {
      const v = (from + to) / 2 + ((to - from) / 2) * (nodes.at[k] as number);
      sum += (to - from) * (nodes.weight[k] as number) * tip.density(v) * upper(high - m - v);
    }
    return sum;
  };
  return (m) => {
    let [chance, below] = [0, 0];
    for (let i = 0; i < lows.length; i++) {
      const { at, weight } = lows[i] as Atom;
      chance += weight * between(m, at, (highs[i] as Atom).at);
      if (m < at) below += weight;
    }
    // places tell a chance that jumps in steps, but what part of it also ends too low smoothly
    return tip === undefined && below > 0 ? (chance / below) * chanceAbove(least, m) : chance;
  };
}

/** Nodes for what jumps, to a grade. */
const JUMPS = 6;

/** By the place alone; worked out where it is asked for. */
function overLayout(field: Field, layout: Layout, grade: Grade, low: number, high: number): Spread {
  let strips: readonly Strip[] | undefined;
  let atoms: readonly Atom[] | undefined;
  const sum = (m: number, sign: 1 | -1) => {
    strips ??= cutStrips(field, layout, grade, high - low);
    let chance = 0;
    for (const { weight, upper, parts } of strips) {
      let own = 0;
      for (const part of parts) own += shareBeyond(part, upper, m, sign);
      chance += weight * own;
    }
    return Math.min(1, chance);
  };
  const course = (): Course => {
    const { reach } = layout;
    const isSmooth = layout.isEndless && !field.kinks.some((x) => Math.abs(x) < reach);
    // it begins and ends so gently that it has no edge there
    if (isSmooth) return { edges: [], width: (high - low) / 4 };
    const places = field.isLevel ? [-reach, ...field.kinks, reach] : [];
    const edges = places
      .filter((x) => Math.abs(x) <= reach)
      .flatMap((x) => [field.at(0, x - INSIDE * reach), field.at(0, x + INSIDE * reach)])
      .filter(Number.isFinite);
    const width = layout.isEndless ? (high - low) / 9 : (high - low) / 2;
    return { edges: [low, ...edges, high], width };
  };
  return {
    low,
    high,
    above: (m) => sum(m, 1),
    below: (m) => sum(m, -1),
    course,
    atoms: () => (atoms ??= placeAtoms(field, layout, Math.ceil(grade) + 1)),
    isBroken: field.isBroken === true,
  };
}

/** A chord across the board, in parts on which the quantity is a parabola: v = a + (b + c·t)·t, t from 0 to 1. */
interface Strip {
  readonly weight: number;
  /** Chance of lying farther across than so much. */
  readonly upper: (x: number) => number;
  readonly parts: readonly Part[];
}

interface Part {
  readonly from: number;
  readonly to: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly low: number;
  readonly high: number;
  /** Chance of what lies beyond its first end, beyond its last, and between. */
  readonly beyond: number;
  readonly rest: number;
  readonly share: number;
}

function cutStrips(field: Field, layout: Layout, grade: Grade, range: number): Strip[] {
  const { at, kinks, isLevel } = field;
  const near = (range * NEAR) / grade ** 2;
  const { isTurned, count } = layChords(field, layout, grade, range);
  const strip = (off: number, weight: number, { half, upper }: Coordinate): Strip => {
    const f = isTurned ? (s: number) => at(s, off) : (x: number) => at(off, x);
    const inside = isTurned ? [] : kinks.filter((x) => -half < x && x < half);
    const ends = [-half, ...inside.sort((a, b) => a - b), half];
    const parts = ends
      .slice(1)
      .flatMap((to, i) => cutParts(f, ends[i] as number, to, upper, near, grade + 1));
    return { weight, upper, parts };
  };
  if (isLevel) return [strip(0, 1, layout.across)];
  const rows = layout.rule(count);
  return rows.at.map((off, i) => strip(off, rows.weight[i] as number, layout.acrossAt(off)));
}

/** How near a parabola is to be, as a part of the range. */
const NEAR = 4e-5;

/**
 * Chords lie the way in which the quantity changes most; where it has kinks across the board, across, and more of them.
 * Few are enough where there is no end and hardly any change from chord to chord.
 */
function layChords(
  { at, kinks, isLevel }: Field,
  { reach, isEndless }: Layout,
  grade: Grade,
  range: number,
): { isTurned: boolean; count: number } {
  const most = 4 + 6 * grade;
  const change = (s: number, x: number) =>
    Math.max(Math.abs(at(s, x) - at(0, 0)), Math.abs(at(-s, -x) - at(0, 0)));
  const [along, across] = [change(reach, 0), change(0, reach)];
  const isKinked = kinks.some((x) => Math.abs(x) < reach);
  const isTurned = !isLevel && !isKinked && along > across;
  const rest = Math.min(1, (isTurned ? across : along) / range);
  if (isKinked && !(rest < SLIGHT)) return { isTurned, count: MANY * most };
  if (!isEndless) return { isTurned, count: most };
  return { isTurned, count: Math.min(most, Math.ceil((2 + grade) * (1 + 8 * rest))) };
}

/** Less of the change than this is nothing much; so many times as many chords where it is more beside a kink. */
const SLIGHT = 0.1;
const MANY = 3;

/** Just inside the ends, which may be jumps. */
const INSIDE = 1e-9;

/** Halved until each part is near enough to a parabola. */
function cutParts(
  f: (x: number) => number,
  from: number,
  to: number,
  upper: (x: number) => number,
  near: number,
  cuts: number,
): Part[] {
  if (!(to > from)) return [];
  const [first, last] = [f(from + INSIDE * (to - from)), f(to - INSIDE * (to - from))];
  if (Number.isFinite(first) !== Number.isFinite(last)) {
    const between = seekEdge(f, from, to, Number.isFinite(first));
    const isNear = !(between - from > INSIDE) || !(to - between > INSIDE);
    if (!isNear) {
      const both = [from, between, to] as const;
      return [0, 1].flatMap((i) =>
        cutParts(f, both[i] as number, both[i + 1] as number, upper, near, cuts),
      );
    }
  }
  const middle = f((from + to) / 2);
  const beyond = upper(from);
  const rest = upper(to);
  const share = beyond - rest;
  if (!Number.isFinite(first) || !Number.isFinite(last) || !Number.isFinite(middle)) {
    return [{ from, to, a: middle, b: 0, c: 0, low: middle, high: middle, beyond, rest, share }];
  }
  const c = 2 * (first + last - 2 * middle);
  const b = last - first - c;
  const isOff = (t: number) => Math.abs(f(from + t * (to - from)) - first - (b + c * t) * t) > near;
  if (cuts > 0 && (isOff(0.25) || isOff(0.75))) {
    const half = (from + to) / 2;
    return [
      ...cutParts(f, from, half, upper, near, cuts - 1),
      ...cutParts(f, half, to, upper, near, cuts - 1),
    ];
  }
  const turn = -b / (2 * c);
  const peak = turn > 0 && turn < 1 ? first + (b / 2) * turn : first;
  const [low, high] = [Math.min(first, last, peak), Math.max(first, last, peak)];
  return [{ from, to, a: first, b, c, low, high, beyond, rest, share }];
}

/** Where a quantity ends: beyond it there is none. */
function seekEdge(f: (x: number) => number, from: number, to: number, isFirst: boolean): number {
  let [a, b] = [from, to];
  for (let i = 0; i < 50; i++) {
    const middle = (a + b) / 2;
    if (Number.isFinite(f(middle)) === isFirst) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** The chance of the part of a parabola that lies above m, or with sign −1 below it. */
function shareBeyond(part: Part, upper: (x: number) => number, m: number, sign: 1 | -1): number {
  const { from, to, a, b, c, low, high, share } = part;
  if (sign > 0 ? low > m : high < m) return share;
  if (sign > 0 ? high <= m : low >= m) return 0;
  const root = Math.sqrt(Math.max(0, b * b - 4 * c * (a - m)));
  // of both roots the form that does not cancel
  const q = -(b + (b < 0 ? -root : root)) / 2;
  const one = c === 0 ? Number.NaN : q / c;
  const other = (a - m) / q;
  const [t1, t2] = one < other ? [one, other] : [other, one];
  let chance = 0;
  let start = 0;
  let before = part.beyond;
  for (let k = 0; k < 3; k++) {
    const t = k === 0 ? t1 : k === 1 ? t2 : 1;
    if (!(t > start) || t > 1) continue;
    const middle = (start + t) / 2;
    const after = t === 1 ? part.rest : upper(from + t * (to - from));
    if (sign * (a + (b + c * middle) * middle - m) > 0) chance += before - after;
    start = t;
    before = after;
  }
  return chance;
}
