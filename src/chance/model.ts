/**
 * The chance that holes fail at given travels: the mean over what the whole board shares of what fails below the windows
 * and above them.
 */
import type { LawSpec } from "../design/spec.js";
import type { Neck } from "../drilling/work.js";
import { leastOver } from "../geometry/track.js";
import { type Bench, buildBenches, type State } from "./bench.js";
import { type Aim, finerThan, type Mean, meanOver, type Quantities } from "./expectation.js";
import { FARTHEST, type Law, type Laws } from "./law.js";
import { type Layout, readLayout } from "./layout.js";
import { integrateOverlap } from "./overlap.js";
import type { Rule } from "./rules.js";
import {
  ANY,
  type BitGroup,
  buildTree,
  FIRST,
  failingShares,
  HOLES,
  type HoleLimits,
  SECOND,
  type SharedLaws,
} from "./shares.js";
import { buildSpread, type Field, type Grade } from "./spread.js";

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
  /** How much the sanding's end at 0 may change, where it is left out. */
  readonly left: number;
  /** What is known already: limits by the state, nodes by grade and law. */
  readonly known: Map<string, readonly Limits[]>;
  readonly nodes: Map<Grade, Map<Law | undefined, Rule>>;
}

/** The limits of one hole under one state, wherever it is set. */
type Limits = Omit<HoleLimits, "set">;

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
  const { shared, board, left } = buildShared(neck, benches, reach, lawOf);
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
    left,
    known: new Map(),
    nodes: new Map(),
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
  const { shared, benches, left } = model;
  const at = makeTotals(model, plan, aim);
  const mean = meanOver(shared.existing, aim, (e) => {
    const existing = 1 + e;
    const overRadius = meanOver(shared.radius, aim, (r) => {
      const radius = 1 + r;
      const overSanding = meanOver(shared.sanding, aim, (sanding) => {
        const over = (crest: number) => at({ radius, existing, crest, sanding });
        // to either side of the middle another of two holes is the worse one
        return withError(meanOver(shared.crest, aim, over, true));
      });
      return withError(overSanding);
    });
    return withError(overRadius);
  });
  const value = (i: number) => Math.min(1, Math.max(0, mean.of[i] as number));
  const fails = value(TOTAL.fails);
  const hasDots = benches.some(({ flush }) => flush !== undefined);
  const inner = roughness(model, rough, plan, aim, at) * fails;
  return {
    fails,
    error: mean.error + (mean.of[TOTAL.error] as number) + inner + (hasDots ? left : 0),
    byRule: {
      keep: value(TOTAL.keep),
      web: value(TOTAL.web),
      channel: value(TOTAL.channel),
      flush: value(TOTAL.flush),
    },
    byHole: benches.map((_, i) => value(TOTAL.holes + i)),
  };
}

function withError({ of, error }: Mean): Quantities {
  of[TOTAL.error] = (of[TOTAL.error] as number) + error;
  return of;
}

/** How far a rough model is from a fine one, as a part of what fails: at a few states of the board. */
function roughness(
  model: Model,
  rough: Model,
  plan: Plan,
  aim: Aim,
  at: (state: State) => Quantities,
): number {
  const roughAt = makeTotals(rough, plan, aim);
  const states: State[] = [NOMINAL];
  for (const name of ["radius", "existing", "crest", "sanding"] as const) {
    const law = model.shared[name];
    if (law === undefined) continue;
    const off = law.sigma === undefined ? 0.7 * law.half : 1.5 * law.sigma;
    for (const by of [-off, off]) states.push({ ...NOMINAL, [name]: NOMINAL[name] + by });
  }
  let [apart, sum] = [0, 0];
  for (const state of states) {
    const fine = at(state)[TOTAL.fails] as number;
    apart += Math.abs((roughAt(state)[TOTAL.fails] as number) - fine);
    sum += fine;
  }
  return sum > 0 ? apart / sum : 0;
}

/** All chances under one state of the board. */
function makeTotals(model: Model, plan: Plan, aim: Aim): (state: State) => Quantities {
  const count = model.benches.length;
  const below = buildTree(plan.bits, belowLaws(model), model.lawOf);
  const above = makeAbove(model, plan, aim);
  return (state) => {
    const limits = placeLimits(model, plan, "below", state, 0);
    const low = failingShares(below, limits, aim, model.grade);
    const high = above(state);
    const overlap = integrateOverlap(model, plan, state, low.of, high.of);
    const all = new Float64Array(TOTAL.holes + count);
    all[TOTAL.fails] = (low.of[ANY] as number) + (high.of[ANY] as number) - overlap.any;
    all[TOTAL.keep] = low.of[FIRST] as number;
    all[TOTAL.flush] = low.of[SECOND] as number;
    all[TOTAL.web] = high.of[FIRST] as number;
    all[TOTAL.channel] = high.of[SECOND] as number;
    all[TOTAL.error] = low.error + high.error + overlap.error;
    for (let i = 0; i < count; i++) {
      const own = (low.of[HOLES + i] as number) + (high.of[HOLES + i] as number);
      all[TOTAL.holes + i] = own - (overlap.byHole[i] ?? 0);
    }
    return all;
  };
}

const TOTAL = { fails: 0, keep: 1, flush: 2, web: 3, channel: 4, error: 5, holes: 6 } as const;

function belowLaws({ neck, board }: Model): SharedLaws {
  const { point, stop } = neck.spec.tolerance;
  return { board, point: [point], stop: stop.per === "hole" ? [] : [stop] };
}

/** What fails above the windows; it hangs on the existing radius alone, and on the points of some bits. */
function makeAbove(model: Model, plan: Plan, aim: Aim): (state: State) => Mean {
  const { thickness, stop } = model.neck.spec.tolerance;
  const laws = { board: [thickness], point: [], stop: stop.per === "hole" ? [] : [stop] };
  const known = new Map<number, Mean>();
  const isPointed = plan.bits.map(({ settings }) =>
    settings.some(({ holes }) => holes.some((i) => model.pointed[i])),
  );
  const level = buildTree(plan.bits, laws, model.lawOf);
  return (state) => {
    const found = known.get(state.existing);
    if (found) return found;
    const mean = isPointed.some((each) => each)
      ? failingWithPoints(model, plan, state, isPointed, aim)
      : failingShares(level, placeLimits(model, plan, "above", state, 0), aim, model.grade);
    known.set(state.existing, mean);
    return mean;
  };
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
        all[i] = i < HOLES ? one + other * (1 - one) : one + other;
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
): HoleLimits[] {
  const { radius, existing, crest, sanding } = state;
  const key = side === "above" ? `${existing} ${p}` : `${radius} ${existing} ${crest} ${sanding} .`;
  let found = model.known.get(key);
  if (found === undefined) {
    const make = side === "above" ? aboveLimits : belowLimits;
    found = model.benches.map((bench, i) => make(model, bench, i, state, p));
    model.known.set(key, found);
  }
  return found.map((limits, i) => ({ ...limits, set: sets[i] as number }));
}

function belowLimits(model: Model, bench: Bench, i: number, state: State): Limits {
  const { layout, grade } = model;
  const [own, ownMost] = [model.tipErrors[i], model.dotErrors[i]] as [LawSpec[], LawSpec[]];
  const least = buildSpread(bench.keep(state), layout, model.tip[i], grade);
  const first = { least, own };
  if (bench.flush === undefined) return { first, second: undefined, either: first };
  const most = buildSpread(bench.flush(state), layout, model.dot[i], grade);
  return { first, second: { most, own, ownMost }, either: { least, most, own, ownMost } };
}

function aboveLimits(model: Model, bench: Bench, i: number, state: State, p: number): Limits {
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
