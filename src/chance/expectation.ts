/** Means over one error, of several quantities at once. */
import { edgesOnBothSides, type Law, placeEvenly } from "./law.js";
import type { Rule } from "./rules.js";

/** Quantities at one value of an error. The first decides how finely they are worked out. */
export type Quantities = Float64Array;

/** How near a mean is to be: to so much, and to such a part of itself. */
export interface Aim {
  readonly absolute: number;
  readonly relative: number;
}

/** What the means within a mean are to be: so near that their own errors do not hold the outer one up. */
export function finerThan({ absolute, relative }: Aim): Aim {
  return { absolute: absolute / FINER, relative: relative / FINER };
}

const FINER = 8;

/** The first quantity's error that is to be feared, beside the means. */
export interface Mean {
  readonly of: Quantities;
  readonly error: number;
}

const SMOOTH = [2, 3, 5, 8, 12];
const KINKED = [3, 5, 8, 12];
/** Steps of even nodes, in standard deviations: what a normal error has smoothed needs no Gauss rule. */
const EVEN = [1 / 2, 1 / 4];

/** Rules for a law, each finer than the one before; where the error is 0 there may be a kink. */
function listRules(law: Law, isKinked: boolean): (() => Rule)[] {
  const { sigma } = law;
  const gauss = isKinked
    ? KINKED.map((n) => () => law.halfRule(n))
    : SMOOTH.map((n) => () => law.rule(n));
  if (sigma === undefined) return gauss;
  return [...gauss.slice(0, -1), ...EVEN.map((step) => () => placeEvenly(law, step * sigma))];
}

/** What the means over one error have shown so far: the rule that was enough, and what part of the value it may miss. */
export interface Habit {
  seen: number;
  rule: number;
  part: number;
}

export function newHabit(): Habit {
  return { seen: 0, rule: 0, part: 0 };
}

/** So many means make a habit. */
const ENOUGH = 2;

/** The mean of quantities over an error; where it is 0 they may have a kink. */
export function meanOver(
  law: Law | undefined,
  aim: Aim,
  f: (x: number) => Quantities,
  habit = newHabit(),
  isKinked = false,
): Mean {
  if (law === undefined) return { of: f(0), error: 0 };
  const rules = listRules(law, isKinked);
  const by = (i: number) => byRule((rules[i] as () => Rule)(), f);
  let [rough, first]: [Quantities | undefined, number] = [undefined, 0];
  if (habit.seen >= ENOUGH) {
    const usual = by(habit.rule);
    const value = usual[0] as number;
    const error = habit.part * value;
    if (value > 0 && error <= allowed(aim, value)) return { of: usual, error };
    [rough, first] = [usual, habit.rule + 1];
  }
  for (let i = first; i < rules.length; i++) {
    const fine = by(i);
    const value = fine[0] as number;
    const error = Math.abs(value - (rough?.[0] ?? Infinity));
    // where nothing fails at any node it may still at the ends, unless they are as seldom as a normal error's
    const isNothing = error === 0 && value === 0 && law.width === Infinity;
    if (isNothing && [-law.half, law.half].some((x) => (f(x)[0] as number) > 0)) break;
    if (error <= allowed(aim, value)) {
      if (value > NOTHING) learn(habit, i - 1, error / value);
      return { of: fine, error };
    }
    rough = fine;
  }
  habit.seen = -Infinity;
  return byParts(law, aim, f);
}

/** What two rules differ by is what the rougher one misses. */
function learn(habit: Habit, rule: number, part: number): void {
  habit.seen++;
  if (rule > habit.rule) Object.assign(habit, { rule, part });
  else if (rule === habit.rule) habit.part = Math.max(habit.part, part);
}

/** Less than this is nothing whatever it is a part of. */
const NOTHING = 1e-17;

function allowed({ absolute, relative }: Aim, value: number): number {
  return Math.max(NOTHING, Math.min(absolute, relative * Math.abs(value)));
}

function byRule({ at, weight }: Rule, f: (x: number) => Quantities): Quantities {
  let sum: Quantities | undefined;
  for (let i = 0; i < at.length; i++) {
    sum = addTo(sum, f(at[i] as number), weight[i] as number);
  }
  return sum as Quantities;
}

/** Adds so much of quantities to a sum. */
export function addTo(sum: Quantities | undefined, more: Quantities, weight: number): Quantities {
  const into = sum ?? new Float64Array(more.length);
  for (let i = 0; i < more.length; i++) {
    into[i] = (into[i] as number) + weight * (more[i] as number);
  }
  return into;
}

// Gauss–Lobatto with four nodes, and Kronrod's seven that hold them (W. Gander and W. Gautschi, BIT 40, 2000)
const INNER = [0, Math.sqrt(1 / 5), Math.sqrt(2 / 3), 1];
const SEVEN = [16 / 35, 125 / 294, 72 / 245, 11 / 210];
const FOUR = [0, 5 / 6, 0, 1 / 6];

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly first: Quantities;
  readonly last: Quantities;
  readonly of: Quantities;
  readonly error: number;
}

const MOST_STRETCHES = 60;

/** Stretch by stretch, the worst halved until it is near enough. */
function byParts(law: Law, aim: Aim, f: (x: number) => Quantities): Mean {
  const wide =
    law.sigma === undefined
      ? edgesOnBothSides(law)
      : [-9, -6, -4, -2, 0, 2, 4, 6, 9].map((z) => z * (law.sigma as number));
  const ends = wide.map(f);
  const stretches = wide
    .slice(1)
    .map((to, i) =>
      over(law, f, wide[i] as number, to, ends[i] as Quantities, ends[i + 1] as Quantities),
    );
  for (;;) {
    let [value, error, worst] = [0, 0, 0];
    stretches.forEach((stretch, i) => {
      value += stretch.of[0] as number;
      error += stretch.error;
      if (stretch.error > (stretches[worst] as Stretch).error) worst = i;
    });
    if (error <= allowed(aim, value) || stretches.length >= MOST_STRETCHES) {
      const sum = stretches.reduce<Quantities | undefined>(
        (all, { of }) => addTo(all, of, 1),
        undefined,
      );
      return { of: sum as Quantities, error };
    }
    const { from, to, first, last } = stretches[worst] as Stretch;
    const middle = (from + to) / 2;
    const between = f(middle);
    stretches.splice(
      worst,
      1,
      over(law, f, from, middle, first, between),
      over(law, f, middle, to, between, last),
    );
  }
}

function over(
  law: Law,
  f: (x: number) => Quantities,
  from: number,
  to: number,
  first: Quantities,
  last: Quantities,
): Stretch {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let seven: Quantities | undefined;
  let four = 0;
  for (let k = 0; k < INNER.length; k++) {
    for (const side of k === 0 ? [1] : [-1, 1]) {
      const x = middle + side * half * (INNER[k] as number);
      const of = k < 3 ? f(x) : side < 0 ? first : last;
      // just inside the ends, which may be jumps of the density
      const weight = half * 2 * law.density(k < 3 ? x : x - side * half * 1e-12);
      seven = addTo(seven, of, (weight * (SEVEN[k] as number)) / 2);
      four += (weight * (FOUR[k] as number) * (of[0] as number)) / 2;
    }
  }
  const of = seven as Quantities;
  const apart = Math.abs((of[0] as number) - four);
  return { from, to, first, last, of, error: apart };
}
