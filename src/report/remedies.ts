/** For a finding, each single change that alone cures it, with its exact threshold. */
import type { Design, Station } from "../design/design.js";
import { withNumber } from "../design/paths.js";
import type { GroupSpec, PartialSpec } from "../design/spec.js";
import { missPlan } from "../drilling/plan.js";
import { buildNeck, type Neck, readNeck, readSpec, type Work, workOut } from "../drilling/work.js";
import { type DesignIssue, refused } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { type Change, listChanges, type Scope } from "./changes.js";
import {
  ABOUT_HOLE_ALONE,
  type FindingCode,
  type FindingFacts,
  findAll,
  findByCode,
  measureMiss,
  SLOT_GAP,
} from "./findings.js";
import { leastBetween, thresholdBetween } from "./threshold.js";

/** One change that alone cures a finding. */
export interface Remedy {
  /** The path of the number in the design. */
  readonly change: string;
  /** What it is now, in the unit of its path. */
  readonly from: number;
  /** The threshold: the finding is gone with this value, and stands a little short of it. */
  readonly to: number;
}

/** A design of more holes than this gets no remedies: each is found by asking the check over and over. */
const MOST_HOLES = 500;

/**
 * The single changes that cure a finding, each by itself: one number of the design, as far as its threshold.
 *
 * A change is offered where it cures the finding and brings no new error. What is settled is left alone: scale, length
 * and width of the board, the existing radius and the tolerances. Designs of more than 500 holes get none.
 *
 * @param design the design that was checked
 * @param finding one of the findings of its report
 * @returns the remedies in the order of the design's fields; none where no single change does
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the design has no such finding
 * @example
 * // an invented neck, too thin for its marker
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 3.5 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const [finding] = checkDesign(design).findings;
 * const remedy = remediesFor(design, finding).find(({ change }) => change === "board.thickness");
 * remedy.to > 3.5 // true
 * checkDesign({ ...design, board: { ...design.board, thickness: remedy.to } }).ok // true
 */
export function remediesFor(design: Design, finding: FindingFacts): readonly Remedy[] {
  const case_ = openCase(design, finding);
  return case_ === undefined
    ? []
    : listChanges(design, case_.neck, case_.scope).flatMap((change) => {
        const to = seek(change, (value, all) =>
          case_.missAt(withNumber(design, change.path, value), all),
        );
        return to === undefined ? [] : [{ change: change.path, from: change.from, to }];
      });
}

/** A finding to be cured. */
interface Case {
  readonly neck: Neck;
  readonly scope: Scope;
  /**
   * By how much a design misses: 0 where the finding is gone and no error is new. Unless `all` is asked for, new errors
   * count where the finding is gone.
   */
  readonly missAt: (design: Design, all: boolean) => number;
}

/** What is asked of a design over and over; undefined where it has too many holes. */
export function openCase(design: Design, finding: FindingFacts): Case | undefined {
  const work = workOut(readNeck(design));
  const all = findAll(work);
  const known = all.find((facts) => isSame(facts, finding));
  if (known === undefined) throw refused("finding", finding, "a finding of the design");
  if (work.holes.length > MOST_HOLES) return undefined;
  const sought = identify(work, known);
  const errors = new Set(
    all.flatMap((facts) => [nameFinding(work, facts), identify(work, facts).join(" ")]),
  );
  const narrow = narrowing(work, known);
  const missAt = (changed: Design, all: boolean) => {
    const issues: DesignIssue[] = [];
    const spec = readSpec(changed, issues);
    if (spec === undefined || issues.length > 0) return Infinity;
    const near = missIn(narrow(spec), known.code, sought);
    return near > 0 && !all ? near : near + errorsIn(spec, errors, sought);
  };
  return { neck: work, scope: findScope(work, known), missAt };
}

/** Both are one finding: the same code, place and numbers. */
function isSame(a: FindingFacts, b: FindingFacts): boolean {
  const fields = [
    "code",
    "hole",
    "other",
    "fret",
    "side",
    "station",
    "path",
    "value",
    "limit",
  ] as const;
  return typeof b === "object" && b !== null && fields.every((field) => a[field] === b[field]);
}

function findScope({ holes, spec }: Work, { hole, other, fret, suits, code }: FindingFacts): Scope {
  const about = [hole, other].flatMap((i) => (i === undefined ? [] : [holes[i]?.marker]));
  const paths =
    about.length > 0
      ? about.map((marker) => marker?.group.path.group)
      : spec.groups.map((g) => g.path.group);
  const groups = spec.groups.flatMap(({ path }, i) => (paths.includes(path.group) ? [i] : []));
  const own: Station[] = fret === undefined ? [] : [`fret${fret}`];
  return {
    groups,
    stations: ["nut", ...own, "end"],
    hints: code === "unlikely-value" ? (suits ?? []) : hintsIn(suits),
    oneStop: MILDER[code] === "several-travels" || code === "several-travels",
  };
}

/** A range that suits is tried in its middle. */
function hintsIn(suits: readonly number[] = []): number[] {
  const [least, most] = suits;
  return least === undefined || most === undefined ? [...suits] : [least, (least + most) / 2, most];
}

/** What of a specification a finding can hang on: the less there is, the sooner it is checked. */
function narrowing(
  { holes }: Work,
  { code, hole }: FindingFacts,
): (spec: PartialSpec) => PartialSpec {
  if (ABOUT_BOARD.has(code)) return (spec) => ({ ...spec, groups: [] });
  const marker = hole === undefined ? undefined : holes[hole]?.marker;
  if (marker === undefined || !ABOUT_HOLE_ALONE.has(code)) return (spec) => spec;
  const { path, fret, group } = marker;
  return (spec) => {
    const own = spec.groups?.filter((each) => each.path.group === group.path.group);
    return { ...spec, groups: own?.map((each) => onlyAt(each, path, fret)) };
  };
}

/** The group with one of its frets or places alone. */
function onlyAt(group: GroupSpec, path: string, fret: number): GroupSpec {
  const { where } = group;
  if ("places" in where) return group;
  const index = Number(path.split(".")[3]);
  // what stood at an index stands there still: the others go
  const frets = where.frets.map((each, i) => (i === index ? each : undefined));
  return frets[index] === fret
    ? { ...group, where: { ...where, frets: frets as number[] } }
    : group;
}

/** Findings that hang on no hole. */
const ABOUT_BOARD: ReadonlySet<FindingCode> = new Set([
  "thin-edge",
  "no-slot-depth",
  "slot-too-shallow",
  "slot-too-deep",
  "radius-not-reached",
  "fret-past-end",
] as const);

/** By how much the rule is broken at its place; a planned depth may not fail at its hole in any other way instead. */
function missIn(spec: PartialSpec, code: FindingCode, sought: readonly string[]): number {
  const neck = buildNeck(spec, []);
  if (neck === undefined) return Infinity;
  let sum = 0;
  for (const facts of findByCode(code, neck)) {
    if (isSought(neck, facts, sought)) sum += measureFailure(neck, facts) || Number.MIN_VALUE;
  }
  return sum;
}

/** By how much a finding misses, such that it tells the way to its cure, through all degrees of its rule. */
function measureFailure({ holes, spec }: Neck, facts: FindingFacts): number {
  const { code, hole = -1 } = facts;
  switch (code) {
    case "several-settings":
    case "several-travels":
      return missPlan(holes);
    case "nothing-left":
      return measureMiss(facts) + (holes[hole]?.marker.group.fill.keep ?? 0);
    case "breaks-through":
      return measureMiss(facts) + spec.web;
    case "cuts-slot":
      return measureMiss(facts) + SLOT_GAP;
    default:
      return measureMiss(facts);
  }
}

/** By how much the errors miss that are new, and what was sought where it stands still. */
function errorsIn(
  spec: PartialSpec,
  known: ReadonlySet<string>,
  sought: readonly string[],
): number {
  const neck = buildNeck(spec, []);
  if (neck === undefined) return Infinity;
  const work = workOut(neck);
  const isBad = (facts: FindingFacts) =>
    isSought(work, facts, sought) ||
    (facts.severity === "error" && !known.has(nameFinding(work, facts)));
  const misses = findAll(work)
    .filter(isBad)
    .map((facts) => measureFailure(work, facts) || Number.MIN_VALUE);
  return misses.reduce((sum, miss) => sum + miss, 0);
}

function isSought(neck: Neck, facts: FindingFacts, [rule, place]: readonly string[]): boolean {
  const [otherRule, otherPlace] = identify(neck, facts);
  if (place !== otherPlace) return false;
  return rule === otherRule || (PLANNED.has(rule as FindingCode) && PLANNED.has(facts.code));
}

/** The rule that a finding breaks, whatever the degree, and its place, whatever the order of holes. */
function identify(
  { holes }: Neck,
  { code, hole, other, fret, side, station, path }: FindingFacts,
): [string, string] {
  const name = (i: number | undefined) => (i === undefined ? "" : holes[i]?.marker.path);
  const place = hole === undefined ? [fret, side, station, path] : [name(hole), name(other)];
  return [MILDER[code] ?? code, place.join(" ")];
}

function nameFinding(work: Work, facts: FindingFacts): string {
  return `${facts.code} ${identify(work, facts)[1]}`;
}

/** Findings that are one rule broken in two degrees. */
const MILDER: Readonly<Partial<Record<FindingCode, FindingCode>>> = {
  "nothing-left": "below-keep",
  "breaks-through": "below-web",
  "cuts-slot": "near-slot",
  // a hair's difference makes another tool of a bit: that is no cure
  "several-settings": "several-travels",
};

/** The ways in which a planned depth fails. */
const PLANNED: ReadonlySet<FindingCode> = new Set([
  "nothing-left",
  "below-keep",
  "breaks-through",
  "below-web",
  "below-surface",
] as const);

/** By how much a value misses, by itself or with all that it brings. */
export type MissAt = (value: number, all: boolean) => number;

/** The value nearest to what stands at which nothing is missed, to the last digits; undefined where none was found. */
export function seek({ kind, from, tries }: Change, missAt: MissAt): number | undefined {
  // a radius is sought by its curvature, so that flat is a value like any other
  const isRadius = kind.kind === "radius";
  const to = (value: number) => (isRadius ? 1 / value : value);
  const miss: MissAt = (t, all) => missAt(to(t), all);
  const places = (isRadius ? [...tries, Infinity] : tries).map(to).sort((a, b) => a - b);
  const found = [-1, 1].flatMap((way) => outward(places, to(from), way, miss));
  const [nearest] = found.sort((a, b) => Math.abs(a - to(from)) - Math.abs(b - to(from)));
  return nearest === undefined ? undefined : to(nearest);
}

/** Seeks from what stands to one side. */
function outward(places: readonly number[], from: number, way: number, miss: MissAt): number[] {
  const ahead = places.filter((t) => way * (t - from) > 0).sort((a, b) => way * (a - b));
  const path = [from, ...ahead];
  const known = new Map<number, number>();
  const missOnWay = (t: number) => {
    const told = known.get(t) ?? miss(t, false);
    known.set(t, told);
    return told;
  };
  // what changes nothing in the middle of the way nor at its end is no way at all
  const far = [0, path.length >> 1, path.length - 1].map((i) => missOnWay(elementAt(path, i)));
  if (far[0] !== 0 && far.every((each) => each === far[0])) return [];
  const misses: number[] = [];
  for (const [i, t] of path.entries()) {
    misses.push(missOnWay(t));
    if (misses[i] !== 0) continue;
    return [i === 0 ? t : thresholdBetween(elementAt(path, i - 1), t, missOnWay)];
  }
  return dips(path, misses, miss);
}

/** A value between those that were tried, where the least is missed of all. */
function dips(path: readonly number[], misses: readonly number[], miss: MissAt): number[] {
  const low = misses.indexOf(Math.min(...misses));
  if (low < 1 || !(elementAt(misses, low) < elementAt(misses, 0))) return [];
  const before = elementAt(path, low - 1);
  const dip = leastBetween(before, path[low + 1] ?? elementAt(path, low), (t) => miss(t, true));
  return dip === undefined ? [] : [thresholdBetween(before, dip, (t) => miss(t, false))];
}
