/**
 * The chance that holes fail at given travels: the mean over what the whole board shares of what fails below the windows
 * and above them.
 */
import type { LawSpec } from "../design/spec.js";
import type { Neck } from "../drilling/work.js";
import { leastOver } from "../geometry/track.js";
import { type Bench, buildBenches, type State } from "./bench.js";
import {
  type Aim,
  finerThan,
  type Mean,
  meanOver,
  newHabit,
  type Quantities,
} from "./expectation.js";
import { FARTHEST, type Law, type Laws } from "./law.js";
import { type Layout, readLayout } from "./layout.js";
import { integrateOverlap } from "./overlap.js";
import {
  ANY,
  type BitGroup,
  buildTree,
  ERROR,
  either,
  FIRST,
  failingShares,
  HOLES,
  type HoleLimits,
  SECOND,
  type SharedLaws,
  type Side,
} from "./shares.js";
import { buildSpread, countTwice, type Field, type Grade } from "./spread.js";

/** The chance that not all holes hold, by rule and by hole. */
export interface Failing {
  readonly fails: number;
  readonly error: number;
  readonly byRule: Readonly<Record<"keep" | "web" | "channel" | "flush", number>>;
  readonly byHole: readonly number[];
}

/** What a set of travels comes to. */
export interface Plan {
  readonly bits: readonly BitGroup[];
  /** Travel and correction of each hole, or the depth of what is drilled. */
  readonly sets: readonly number[];
}

/** A neck made ready for chances. */
export interface Model {
  readonly neck: Neck;
  readonly benches: readonly Bench[];
  readonly grade: Grade;
  readonly lawOf: Laws;
  readonly layout: Layout | undefined;
  /** Errors of each hole's own: of its tip, and of its dot with it. */
  readonly tipErrors: readonly (readonly LawSpec[])[];
  readonly dotErrors: readonly (readonly LawSpec[])[];
  readonly tip: readonly (Law | undefined)[];
  readonly dot: readonly (Law | undefined)[];
  readonly shared: Readonly<Record<keyof State, Law | undefined>>;
  readonly board: readonly LawSpec[];
  /** For which holes the point's error moves what lies under the bit. */
  readonly pointed: readonly boolean[];
  /** How far the point may be off, and the stop where its error is shared. */
  readonly point: Law | undefined;
  readonly stop: Law | undefined;
  readonly fill: Law | undefined;
  /** How much the sanding's end at 0 may change, where it is left out. */
  readonly left: number;
  /** Whether the old surface may show: then chances have kinks over any of the board's errors. */
  readonly isOldShowing: boolean;
  /** What is known already: limits by the state. */
  readonly known: Map<string, readonly HoleLimits[]>;
}

/** Makes a neck ready. */
export function buildModel(neck: Neck, grade: Grade, lawOf: Laws): Model {
  const { tolerance } = neck.spec;
  const layout = readLayout(tolerance.layout);
  const reach = layout?.reach ?? 0;
  const benches = buildBenches(neck, reach);
  const isOwn = tolerance.stop.per === "hole";
  const tips = benches.map(({ drilled, bears }) =>
    drilled
      ? []
      : [...(isOwn ? [tolerance.stop] : []), ...(bears === "table" ? [tolerance.seat] : [])],
  );
  // one list for all holes with the same errors, so that what follows from it is worked out once
  const lists = new Map<string, readonly LawSpec[]>();
  const same = (errors: readonly LawSpec[]) => {
    const key = JSON.stringify(errors);
    const found = lists.get(key) ?? errors;
    lists.set(key, found);
    return found;
  };
  const tipErrors = tips.map(same);
  const dotErrors = tips.map((errors) => same([...errors, tolerance.fill]));
  const laws = new Map([...lists.values()].map((errors) => [errors, lawOf(errors)]));
  const point = lawOf([tolerance.point]);
  const { shared, board, left, isOldShowing } = buildShared(neck, benches, reach, lawOf);
  return {
    neck,
    benches,
    grade,
    lawOf,
    layout,
    tipErrors,
    dotErrors,
    tip: tipErrors.map((errors) => laws.get(errors)),
    dot: dotErrors.map((errors) => laws.get(errors)),
    shared,
    board,
    pointed: benches.map((bench) => isPointed(bench, layout, point)),
    point,
    stop: isOwn ? undefined : lawOf([tolerance.stop]),
    fill: lawOf([tolerance.fill]),
    left,
    isOldShowing,
    known: new Map(),
  };
}

const NOMINAL: State = { radius: 1, existing: 1, crest: 0, sanding: 0 };

/** Chances below this are nothing beside those that are worked out. */
const SELDOM = 2e-9;

function buildShared(
  { spec, board, holes }: Neck,
  benches: readonly Bench[],
  reach: number,
  lawOf: Laws,
) {
  const { tolerance } = spec;
  const { sanded, old } = board.nominal;
  const isFlat = sanded.radius.value.every((radius) => radius === Infinity);
  const radius = isFlat ? undefined : lawOf([tolerance.radius]);
  const crest = isFlat ? undefined : lawOf([tolerance.crest]);
  const existing = old && lawOf([tolerance.existing]);
  const sanding = lawOf([tolerance.sanding]);
  const least = Math.min(
    ...holes.map(({ marker: { along, width } }) =>
      leastOver(sanded.sanding, along - width - reach, along + width + reach),
    ),
  );
  const clamps = sanding?.upper(least) ?? 0;
  // within 5 σ of normal errors
  const far = (law: Law | undefined) => {
    if (law === undefined) return 0;
    return law.sigma === undefined ? law.half : (5 / FARTHEST) * law.half;
  };
  const showing = [-far(crest), far(crest)].map((aside) => ({
    radius: 1 + far(radius),
    existing: 1 - far(existing),
    crest: aside,
    sanding: -far(sanding),
  }));
  const isShowing = benches.some((bench) => showing.some((state) => bench.isOldShowing(state)));
  const byItself = clamps > SELDOM || isShowing;
  return {
    shared: { radius, existing, crest, sanding: byItself ? sanding : undefined },
    board: byItself ? [] : [tolerance.sanding],
    left: byItself ? 0 : clamps,
    isOldShowing: isShowing,
  };
}

/** A longer point is seen only where something other than the tip governs: looked at where a hole may lie farthest off. */
function isPointed(
  { drilled, lead, web, channel }: Bench,
  layout: Layout | undefined,
  point: Law | undefined,
): boolean {
  if (drilled || !(lead > 0) || point === undefined) return false;
  const reach = layout?.reach ?? 0;
  const places = [0, -reach, reach].flatMap((s) => [0, -reach, reach].map((x) => [s, x] as const));
  return [web, channel].some((room) =>
    places.some(([s, x]) => {
      const [short, long] = [-point.half, point.half].map((p) => room?.(NOMINAL, p).at(s, x));
      return short !== long;
    }),
  );
}

/** The chance that not all hold; `rough` is the same neck made ready less finely, to tell what that is worth. */
export function failingAt(model: Model, rough: Model, plan: Plan, aim: Aim): Failing {
  const { benches, left } = model;
  const sides = buildSides(model, plan, aim);
  const low = overStates(model, aim, sides.below);
  const high = meanOver(model.shared.existing, aim, (e) => {
    return sides.above({ ...NOMINAL, existing: 1 + e });
  });
  const most = (low.of[ANY] as number) + (high.of[ANY] as number);
  const absolute = Math.min(TWICE * aim.absolute, aim.relative * most);
  const twice = overStates(model, { absolute, relative: Number.MAX_VALUE }, sides.overlap);
  const fails = clamped(most - (twice.of[ANY] as number));
  const hasDots = benches.some(({ flush }) => flush !== undefined);
  const hasJumps = benches.some(({ channel }) => channel !== undefined);
  const roughly = buildSides(rough, plan, aim);
  const inner = roughness(model, sides, roughly) * fails * (hasJumps ? JUMPY : 1);
  const errors = [low, high, twice].map(({ of, error }) => error + (of[ERROR] as number));
  return {
    fails,
    error: errors.reduce((sum, error) => sum + error, inner + (hasDots ? left : 0)),
    byRule: {
      keep: clamped(low.of[FIRST] as number),
      web: clamped(high.of[FIRST] as number),
      channel: clamped(high.of[SECOND] as number),
      flush: clamped(low.of[SECOND] as number),
    },
    byHole: benches.map((_, i) => {
      const at = (of: Quantities) => of[HOLES + i] as number;
      return clamped(at(low.of) + at(high.of) - at(twice.of));
    }),
  };
}

/** Over a channel chances jump from place to place, and two ways may be nearer to each other than to the truth. */
const JUMPY = 10;

/** What fails on both sides is a small part of it, and may be told as much less finely. */
const TWICE = 5;

function clamped(chance: number): number {
  return Math.min(1, Math.max(0, chance));
}

/** The mean over what the whole board shares, of quantities with an error of their own. */
function overStates({ shared }: Model, aim: Aim, at: (state: State) => Quantities): Mean {
  if (!listCorners(shared).some((state) => (at(state)[ANY] as number) > 0)) {
    return { of: at(NOMINAL), error: 0 };
  }
  // what asks for most nodes stands outside: those within soon know how few they need
  const mean = (names: readonly (keyof State)[], state: State): Mean => {
    const [name, ...rest] = names;
    if (name === undefined) return { of: at(state), error: 0 };
    const over = (by: number) => withError(mean(rest, { ...state, [name]: state[name] + by }));
    // to either side of the middle another of two holes is the worse one
    return meanOver(shared[name], aim, over, habits[name], name === "crest");
  };
  const habits = {
    crest: newHabit(),
    sanding: newHabit(),
    radius: newHabit(),
    existing: newHabit(),
  };
  return mean(["crest", "sanding", "radius", "existing"], NOMINAL);
}

/** The states as far off as can be: where nothing fails at any of them it does nowhere. */
function listCorners(shared: Model["shared"]): State[] {
  return (["radius", "existing", "crest", "sanding"] as const).reduce<State[]>(
    (states, name) => {
      const far = shared[name]?.half ?? 0;
      if (far === 0) return states;
      return [-far, far].flatMap((by) =>
        states.map((state) => ({ ...state, [name]: state[name] + by })),
      );
    },
    [NOMINAL],
  );
}

function withError({ of, error }: Mean): Quantities {
  const all = of.slice();
  all[ERROR] = (all[ERROR] as number) + error;
  return all;
}

/** How far a rough model is from a fine one, as a part of what fails: at a few states of the board. */
function roughness({ shared }: Model, fine: Sides, rough: Sides): number {
  const states: State[] = [NOMINAL];
  for (const name of ["radius", "existing", "crest", "sanding"] as const) {
    const law = shared[name];
    if (law === undefined) continue;
    const off = law.sigma === undefined ? 0.7 * law.half : 1.5 * law.sigma;
    for (const by of [-off, off]) states.push({ ...NOMINAL, [name]: NOMINAL[name] + by });
  }
  const failing = ({ below, above }: Sides, state: State) =>
    (below(state)[ANY] as number) + (above(state)[ANY] as number);
  let [apart, sum] = [0, 0];
  for (const state of states) {
    const fails = failing(fine, state);
    apart += Math.abs(failing(rough, state) - fails);
    sum += fails;
  }
  return sum > 0 ? apart / sum : 0;
}

/** The chances under one state of the board: below the windows, above them, and on both sides at once. */
type Sides = ReturnType<typeof buildSides>;

function buildSides(model: Model, plan: Plan, aim: Aim) {
  const level = buildTree(plan.bits, belowLaws(model), model.lawOf);
  const below = keptByState((state) =>
    withError(failingShares(level, placeLimits(model, plan, "below", state, 0), aim, model.grade)),
  );
  const above = makeAbove(model, plan, aim);
  const overlap = (state: State) => {
    const [low, high] = [below(state), above(state)];
    const { any, byHole, error } = integrateOverlap(model, plan, state, {
      below: low[ANY] as number,
      above: high[ANY] as number,
      keep: low[FIRST] as number,
      flush: low[SECOND] as number,
    });
    const all = new Float64Array(low.length);
    all[ANY] = any;
    all[ERROR] = error;
    all.set(byHole, HOLES);
    return all;
  };
  return { below, above, overlap };
}

function keptByState(make: (state: State) => Quantities): (state: State) => Quantities {
  const known = new Map<string, Quantities>();
  return (state) => {
    const key = nameState(state);
    const found = known.get(key) ?? make(state);
    known.set(key, found);
    return found;
  };
}

function nameState({ radius, existing, crest, sanding }: State): string {
  return `${radius} ${existing} ${crest} ${sanding}`;
}

function belowLaws({ neck, board }: Model): SharedLaws {
  const { point, stop } = neck.spec.tolerance;
  return { board, point: [point], stop: stop.per === "hole" ? [] : [stop] };
}

/** What fails above the windows; it hangs on the existing radius alone, and on the points of some bits. */
function makeAbove(model: Model, plan: Plan, aim: Aim): (state: State) => Quantities {
  const { thickness, stop } = model.neck.spec.tolerance;
  const laws = { board: [thickness], point: [], stop: stop.per === "hole" ? [] : [stop] };
  const isPointed = plan.bits.map(({ settings }) =>
    settings.some(({ holes }) => holes.some((i) => model.pointed[i])),
  );
  const level = buildTree(plan.bits, laws, model.lawOf);
  const above = keptByState((state) =>
    withError(
      isPointed.some((each) => each)
        ? failingWithPoints(model, plan, state, isPointed, aim)
        : failingShares(level, placeLimits(model, plan, "above", state, 0), aim, model.grade),
    ),
  );
  return ({ existing }) => above({ ...NOMINAL, existing });
}

/** The same where points are off too: the thickness first, then each bit's point, then its settings. */
function failingWithPoints(
  model: Model,
  plan: Plan,
  state: State,
  isPointed: readonly boolean[],
  aim: Aim,
): Mean {
  const { thickness, stop } = model.neck.spec.tolerance;
  const own = { board: [], point: [], stop: stop.per === "hole" ? [] : [stop] };
  const isOnly = plan.bits.length === 1;
  const levels = plan.bits.map((bit) =>
    buildTree([bit], { ...own, board: isOnly ? [thickness] : [] }, model.lawOf),
  );
  const count = model.benches.length;
  const within = isOnly ? aim : finerThan(aim);
  return meanOver(isOnly ? undefined : model.lawOf([thickness]), aim, (tau) => {
    const all = new Float64Array(HOLES + count);
    levels.forEach((level, b) => {
      const of = meanOver(isPointed[b] ? model.point : undefined, within, (p) => {
        const limits = placeLimits(model, plan, "above", state, p);
        return failingShares(level, limits, finerThan(within), model.grade, tau).of;
      }).of;
      for (let i = 0; i < all.length; i++) {
        const [one, other] = [all[i] as number, of[i] as number];
        all[i] = i < ERROR ? either(one, other) : one + other;
      }
    });
    return all;
  });
}

/** The limits of all holes on one side, under one state. */
export function placeLimits(
  model: Model,
  { sets }: Plan,
  side: "below" | "above",
  state: State,
  p: number,
): Side {
  const key = side === "above" ? `${state.existing} ${p}` : `${nameState(state)} .`;
  let limits = model.known.get(key);
  if (limits === undefined) {
    const make = side === "above" ? aboveLimits : belowLimits;
    limits = model.benches.map((bench, i) => make(model, bench, i, state, p));
    model.known.set(key, limits);
  }
  return { limits, sets };
}

function belowLimits(model: Model, bench: Bench, i: number, state: State): HoleLimits {
  const { layout, grade } = model;
  const [own, ownMost] = [model.tipErrors[i], model.dotErrors[i]] as [LawSpec[], LawSpec[]];
  const keep = bench.keep(state);
  const least = buildSpread(keep, layout, model.tip[i], grade);
  const first = { least, own };
  if (bench.flush === undefined) return { first, second: undefined, either: first };
  const flush = bench.flush(state);
  const most = buildSpread(flush, layout, model.dot[i], grade);
  const twice =
    least.high > most.low
      ? countTwice(least, keep, flush, layout, model.tip[i], model.fill, grade)
      : undefined;
  return { first, second: { most, own, ownMost }, either: { least, most, twice, own, ownMost } };
}

function aboveLimits(model: Model, bench: Bench, i: number, state: State, p: number): HoleLimits {
  const { layout, grade } = model;
  const own = model.tipErrors[i] as LawSpec[];
  const limit = (field: Field) => ({ most: buildSpread(field, layout, model.tip[i], grade), own });
  const web = bench.web(state, p);
  const first = limit(web);
  const channel = bench.channel?.(state, p);
  if (channel === undefined) return { first, second: undefined, either: first };
  const both = {
    at: (s: number, x: number) => Math.min(web.at(s, x), channel.at(s, x)),
    isLevel: web.isLevel && channel.isLevel,
    kinks: channel.kinks,
    isBroken: true,
  };
  return { first, second: limit(channel), either: limit(both) };
}
