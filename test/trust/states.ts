/** Random true states of random holes, and the worst state that a search finds. */
import { checkDesign, type Design, type Hole } from "../../src/index.js";
import { drawDesign, type Source, sourceOf } from "../properties/necks.js";
import { type Bench, benchOf, type Errors, limitOf, type Rule, zeroOf } from "./truth.js";

/** A true state that asks for more than a bound gives, by so many mm; for less where negative. */
interface Found {
  readonly by: number;
  readonly hole: string;
  readonly rule: Rule;
  readonly errors: Errors;
}

/** What a run has tried: `lost` is to stay empty; `careful` has the most careful bound of each kind of ordinary hole. */
export interface Tally {
  states: number;
  holes: number;
  designs: number;
  refused: number;
  readonly lost: Found[];
  readonly careful: Map<string, { readonly count: number; readonly most: Found }>;
}

type Quantity = Exclude<keyof Errors, "along" | "offset">;
type Limits = Readonly<Record<Quantity | "layout", number>>;

/** Tries so many states, some of each hole; every third design is odd. */
export function tryStates(count: number, seed: number, each = 8): Tally {
  const tally = { states: 0, holes: 0, designs: 0, refused: 0, lost: [], careful: new Map() };
  for (let i = 0; tally.states < count; i++) {
    const isOdd = i % 3 === 2;
    const design = drawDesign(seed + i, isOdd);
    const holes = holesOf(design);
    tally[holes ? "designs" : "refused"]++;
    for (const hole of holes ?? []) {
      const name = `${isOdd ? "odd" : "ordinary"} ${seed + i} ${hole.path}`;
      const [bench, limits] = [benchOf(design, hole), design.tolerance as Limits];
      tryAny(tally, name, bench, limits, sourceOf(-seed - i), each);
      if (!isOdd) tryWorst(tally, name, bench, limits);
    }
  }
  return tally;
}

/** The holes that lie on the board whole: beyond its ends there is no surface to speak of. */
function holesOf(design: Design): Hole[] | undefined {
  const off = design.tolerance?.layout as number;
  try {
    return checkDesign(design).holes.filter(({ along, width, outline }) => {
      const alongs = outline?.map((corner) => corner.along) ?? [
        along - width / 2,
        along + width / 2,
      ];
      return Math.min(...alongs) >= off && Math.max(...alongs) + off <= design.board.length;
    });
  } catch {
    return undefined;
  }
}

/** By how much a true state asks for more than the window gives. */
function missOf({ hole: { window } }: Bench, rule: Rule, limit: number): number {
  return rule === "keep" ? limit - window.min : window.max - limit;
}

/** More than this is lost, mm. */
const LOST = 1e-9;

function tryAny(
  tally: Tally,
  hole: string,
  bench: Bench,
  limits: Limits,
  { chance, one, between }: Source,
  each: number,
): void {
  // each quantity at an end of its tolerance as likely as not
  const pushed = () => (chance(0.6) ? one(-1, 1) : between(-1, 1));
  tally.holes++;
  const none = { ...off(limits, () => 0), ...toward(0, 0) };
  const by = Math.abs(zeroOf(bench, none));
  if (!(by <= LOST)) tally.lost.push({ by, hole, rule: "keep", errors: none });
  for (let i = 0; i < each; i++, tally.states++) {
    const aside = limits.layout * Math.sqrt(Math.abs(pushed()));
    const errors = { ...off(limits, pushed), ...toward(between(-Math.PI, Math.PI), aside) };
    for (const rule of ["keep", "web", "channel", "flush"] as const) {
      const by = missOf(bench, rule, limitOf(bench, rule, errors));
      if (!(by <= LOST)) tally.lost.push({ by, hole, rule, errors });
    }
  }
}

function off(limits: Limits, share: (quantity: Quantity) => number): Errors {
  const { layout, ...rest } = limits;
  const shares = Object.entries(rest).map(([name, most]) => [name, most * share(name as Quantity)]);
  return Object.fromEntries(shares) as Errors;
}

function toward(angle: number, by: number) {
  return { along: by * Math.sin(angle), offset: by * Math.cos(angle) };
}

/** The bounds that govern, against the worst state that is found: how careful they are. */
function tryWorst(tally: Tally, name: string, bench: Bench, limits: Limits): void {
  const { hole, stop, old } = bench;
  for (const rule of [hole.window.minBy, hole.window.maxBy]) {
    const { by, errors } = worstState(bench, rule, limits);
    const most = { by: -by, hole: name, rule, errors };
    if (!(by <= LOST)) tally.lost.push({ ...most, by });
    const touch = hole.drilled ? "drilled" : (stop.from ?? "wood");
    const kind = `${rule} ${old ? "radiused" : "blank"} ${touch} ${hole.outline ? "pocket" : "dot"}`;
    const known = tally.careful.get(kind) ?? { count: 0, most };
    const isMore = most.by > known.most.by;
    tally.careful.set(kind, { count: known.count + 1, most: isMore ? most : known.most });
  }
}

const DIRECTIONS = 12;

/**
 * The worst state that a search finds: more sanding and a tighter radius take more; the crest and the old radius may
 * pull either way, and the hole anywhere; then each error and the direction in turn.
 */
function worstState(bench: Bench, rule: Rule, limits: Limits): { by: number; errors: Errors } {
  let worst = { by: -Infinity, errors: { ...off(limits, () => 1), along: 0, offset: 0 } };
  const look = (change: Partial<Errors>) => {
    const errors = { ...worst.errors, ...change };
    const by = missOf(bench, rule, limitOf(bench, rule, errors));
    if (by > worst.by) worst = { by, errors };
  };
  const turnTo = (angle: number) => look(toward(angle, limits.layout));
  const more = rule === "keep" ? 1 : -1;
  for (const [crest, existing] of [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ] as const) {
    const ends: Partial<Record<Quantity, number>> = {
      sanding: more,
      radius: -more,
      crest,
      existing,
    };
    const corner = off(limits, (name) => ends[name] ?? 1);
    for (let i = 0; i < DIRECTIONS; i++) {
      look({ ...corner, ...toward((2 * Math.PI * i) / DIRECTIONS, limits.layout) });
    }
  }
  const names = Object.keys(limits).filter((name) => name !== "layout") as Quantity[];
  for (let round = 0; round < 2; round++) {
    for (const name of names) for (const end of [-1, 1]) look({ [name]: end * limits[name] });
    for (let step = Math.PI / DIRECTIONS; step > 1e-3; step /= 2) {
      for (const turn of [-step, step])
        turnTo(Math.atan2(worst.errors.along, worst.errors.offset) + turn);
    }
  }
  return worst;
}
