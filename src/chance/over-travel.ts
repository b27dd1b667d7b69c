/** One travel for all holes: how often it fails, over travels, and the best one. Lengths in mm. */
import type { Design } from "../design/design.js";
import { makeKeys } from "../drilling/plan.js";
import { type Neck, readNeck } from "../drilling/work.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import {
  between,
  readFields,
  readList,
  readNumber,
  readOptional,
  refuseAll,
  SIZE,
} from "../measured/read.js";
import { type FailingAt, failingNeck } from "./conformance.js";
import type { Grade } from "./spread.js";

/** The chance of failing at one travel for all holes. */
export interface FailingTravel {
  /** The travel, mm. */
  readonly travel: number;
  /** The chance that not all hold. */
  readonly fails: number;
  /** How far off that may be. */
  readonly numericalError: number;
}

const MOST = 1000;

/**
 * The chance that not all holes hold, over travels of one stop, with the work that is common to all done once: as
 * `conformanceProbability` gives for each, but only as near as a picture needs; `numericalError` tells how near.
 *
 * @param design the neck, of one stop
 * @param travels up to 1000 travels, mm, from 1e-6 to 1e6, each for all holes that are to be drilled
 * @returns each travel with its chance, in the order given
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the travels cannot, or the design has not one stop
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: "flat",
 *   sanding: 0.2,
 *   fill: { kind: "poured", keep: 0.8 },
 *   bit: { kind: "forstner", point: 1 },
 *   markers: [{ frets: [12], diameter: 6 }],
 *   tolerance: { stop: 0.1, point: 0, sanding: 0, thickness: 0.1 },
 * };
 * failingOverTravel(design, [2, 2.05, 2.1]).map(({ fails }) => fails.toFixed(3)).join() // "0.500,0.250,0.000"
 */
export function failingOverTravel(design: Design, travels: readonly number[]): FailingTravel[] {
  const neck = readNeck(design);
  const issues: DesignIssue[] = [];
  const counts = { least: 0, most: MOST, what: "travels" };
  const read = readList(travels, "travels", counts, issues, (item, path) =>
    readNumber(item, path, SIZE, issues),
  );
  mustHaveOneStop(neck, design, issues);
  refuseAll(issues);
  const at = atTravel(neck, WHILE_SOUGHT);
  return read.map((travel) => {
    const { fails, numericalError } = at(travel);
    return { travel, fails, numericalError };
  });
}

/** How sure the stretch of a best travel is to be. */
export interface BestTravelOptions {
  /** The chance that all hold, from 0.5 to 0.999999; 0.95 where left out. */
  readonly level?: number | undefined;
}

/** The travel at which all holes are likeliest to hold. */
export interface BestTravel {
  /** The travel, mm; the middle where several do equally well. */
  readonly travel: number;
  /** The chance that all hold there. */
  readonly holds: number;
  /** The chance that not all do. */
  readonly fails: number;
  /** The stretch round it where all hold with the level's chance at least, mm; null where they do at no travel. */
  readonly range: {
    /** The least travel of it, mm. */
    readonly min: number;
    /** The greatest travel of it, mm. */
    readonly max: number;
  } | null;
}

/**
 * The travel at which all holes are likeliest to hold, for the holes of one stop: one travel for all, not rounded to the
 * stop's step.
 *
 * @param design the neck, of one stop
 * @param options `level`, from 0.5 to 0.999999
 * @returns the travel, its chance, and the stretch round it where the level is kept
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the design has not one stop, or the options cannot be read
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: "flat",
 *   sanding: 0.2,
 *   fill: { kind: "poured", keep: 0.8 },
 *   bit: { kind: "forstner", point: 1 },
 *   markers: [{ frets: [12], diameter: 6 }],
 *   tolerance: { stop: 0.1, point: 0, sanding: 0, thickness: 0.1 },
 * };
 * // all travels from 2.1 to 4.8 keep everything
 * const best = bestTravel(design);
 * best.travel.toFixed(2) // "3.45"
 * best.range.min.toFixed(2) // "2.09"
 */
export function bestTravel(design: Design, options: BestTravelOptions = {}): BestTravel {
  const neck = readNeck(design);
  const issues: DesignIssue[] = [];
  const stated = readFields(options, "options", ["level"], issues)?.level;
  const level = readOptional(stated, "options.level", LEVEL, USUAL_LEVEL, issues);
  mustHaveOneStop(neck, design, issues);
  refuseAll(issues);
  return seekBest(neck, level);
}

const LEVEL = between(0.5, 0.999999, "");
/** What is asked for where nothing is said. */
export const USUAL_LEVEL = 0.95;

function mustHaveOneStop({ holes }: Neck, design: unknown, issues: DesignIssue[]): void {
  const { count } = makeKeys(holes.map(({ marker }) => marker));
  if (count === 1) return;
  issues.push(makeIssue("design", design, `holes that one stop drills; here ${count} do`));
}

/** The chance at one travel for all holes that are to be drilled. */
function atTravel(neck: Neck, grade?: Grade): FailingAt {
  const failing = failingNeck(neck, grade);
  const isDrilled = neck.holes.map(({ marker }) => marker.group.drilled);
  return (travel) => failing(isDrilled.map((drilled) => (drilled ? undefined : travel)));
}

/** How finely a chance is worked out while the best travel is sought. */
const WHILE_SOUGHT = 1;
/** Travels that do equally well differ by no more. */
const ALIKE = 1e-12;
/** How near the ends of a stretch are, mm: far below what a stop can be set to. */
const NEAR = 1e-3;

/** The best travel of a neck. */
export function seekBest(neck: Neck, level: number): BestTravel {
  const at = atTravel(neck, WHILE_SOUGHT);
  const known = new Map<number, number>();
  const fails = (travel: number) => {
    const found = known.get(travel) ?? at(travel).fails;
    known.set(travel, found);
    return found;
  };
  const [low, high] = findEnds(neck);
  const inside = lowest(fails, low, high);
  const most = 1 - level;
  // the nearest travels known to fail more often, on either side
  const edgesOf = (limit: number) => {
    const beyond = [...known].filter(([, failing]) => failing > limit).map(([travel]) => travel);
    const below = Math.max(low, ...beyond.filter((travel) => travel < inside));
    const above = Math.min(high, ...beyond.filter((travel) => travel > inside));
    return [below, above].map((end) => edge(fails, inside, end, limit)) as [number, number];
  };
  const [first, last] = edgesOf(fails(inside) + ALIKE);
  const travel = (first + last) / 2;
  const failing = atTravel(neck)(travel).fails;
  let range: BestTravel["range"] = null;
  if (failing <= most && fails(inside) <= most) {
    const [min, max] = edgesOf(most);
    range = { min, max };
  }
  return { travel, holds: 1 - failing, fails: failing, range };
}

/** Between these travels the best one lies: from the least that any window asks for to the greatest that one allows. */
function findEnds({ holes, spec }: Neck): [number, number] {
  const open = holes.filter(({ marker }) => !marker.group.drilled);
  const ends = open.flatMap(({ window, toTravel }) => [
    window.min + toTravel,
    window.max + toTravel,
  ]);
  const { stop, point, sanding, thickness, seat } = spec.tolerance;
  const more = [stop, point, sanding, thickness, seat].reduce(
    (sum, { limit }) => sum + 2 * limit,
    1,
  );
  return [Math.max(SHORTEST, Math.min(...ends) - more), Math.max(...ends) + more];
}

const SHORTEST = 1e-6;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where a function that falls and then rises is least: on a stretch without a change, somewhere in it. */
function lowest(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  // what is certain to fail on both sides says nothing: look for a place where it is not
  for (let count = 8; count <= 128; count *= 2) {
    const places = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
    const best = places.reduce((least, x) => (f(x) < f(least) ? x : least), (from + to) / 2);
    if (!(f(best) < 1)) continue;
    const step = (to - from) / count;
    [a, b] = [best - step, best + step];
    break;
  }
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  while (b - a > NEAR && f(c) > 0) {
    if (f(c) <= f(d)) {
      [b, d] = [d, c];
      c = b - GOLDEN * (b - a);
    } else {
      [a, c] = [c, d];
      d = a + GOLDEN * (b - a);
    }
  }
  return c;
}

/**
 * The end of the stretch, from a place toward another, on which a function is no more than so much. By false position on
 * its logarithm, halving the weight of an end that stays (the Illinois rule).
 */
function edge(f: (x: number) => number, inside: number, outside: number, most: number): number {
  const miss = (x: number) => Math.log(Math.max(f(x), LEAST)) - Math.log(Math.max(most, LEAST));
  let [a, b] = [inside, outside];
  let [atA, atB] = [Math.min(miss(a), -NEAR), miss(b)];
  if (!(atB > 0)) return b;
  let stays = 0;
  for (let i = 0; i < MOST_STEPS && Math.abs(b - a) > NEAR; i++) {
    const next = b - (atB * (b - a)) / (atB - atA);
    // never so near an end that the stretch would hardly shrink
    const least = Math.min(NEAR / 2, Math.abs(b - a) / 4) * Math.sign(b - a);
    const x = Math.abs(next - a) < Math.abs(least) ? a + least : next;
    const atX = miss(x);
    if (atX > 0) {
      [b, atB] = [x, atX];
      atA /= stays > 0 ? 2 : 1;
      stays = 1;
    } else {
      [a, atA] = [x, Math.min(atX, -NEAR)];
      atB /= stays < 0 ? 2 : 1;
      stays = -1;
    }
  }
  return a;
}

const LEAST = 1e-16;
const MOST_STEPS = 60;
