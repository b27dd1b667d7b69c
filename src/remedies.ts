/** For a finding, each single change that alone cures it, with its exact threshold. */
import { type Change, changesFor } from "./changes.js";
import { LIMITS } from "./design.js";
import { type Examined, examine } from "./examine.js";
import { ABOUT_MARKER, type FindingCode, type FindingFacts, findingsOf } from "./findings.js";
import type { Marker } from "./markers.js";
import { build } from "./neck.js";
import type { Spec } from "./spec.js";

/** One change that alone cures a finding; `change` is a path in the design. */
export interface Remedy {
  readonly change: string;
  readonly from: number;
  /** The threshold: the finding is gone with this value, and stands 0.01 short of it. */
  readonly to: number;
}

/**
 * The remedies for a finding: every change whose threshold exists and brings no new error with it. A design of more
 * holes than `LIMITS.remedyHoles` gets none, since each is found by asking the check over and over.
 */
export function remediesFor(finding: FindingFacts, examined: Examined): Remedy[] {
  const { markers } = examined.neck;
  if (markers.length > LIMITS.remedyHoles.value) return [];
  const { hole } = finding;
  const about = hole === undefined ? markers : markers.slice(hole, hole + 1);
  const known = new Set(findingsOf(examined).flatMap(namesUpTo));
  return changesFor(finding, examined, about).flatMap((change) => {
    const miss = (value: number) =>
      missBy(finding, findingsIn(narrowed(change.apply(value), finding, about)));
    const to = thresholdOf(change, miss);
    if (to === undefined || !isCure(finding, findingsIn(change.apply(to)), known)) return [];
    return [{ change: change.path, from: change.from, to }];
  });
}

/** What of a specification a finding can hang on: the less there is, the sooner its threshold is found. */
function narrowed(spec: Spec, { code }: FindingFacts, about: readonly Marker[]): Spec {
  if (ABOUT_BOARD.has(code)) return { ...spec, groups: [] };
  const [marker] = about;
  if (!ABOUT_MARKER.has(code) || marker === undefined) return spec;
  const path = marker.group.path.group;
  const groups = spec.groups
    .filter((group) => group.path.group === path)
    .map((group) => ({ ...group, frets: [marker.fret] }));
  return { ...spec, groups, slot: undefined, sideDots: undefined };
}

/** Findings that hang on no hole. */
const ABOUT_BOARD: ReadonlySet<FindingCode> = new Set([
  "thin-edge",
  "no-slot-depth",
  "slot-too-shallow",
  "slot-too-deep",
] as const);

/** How near a threshold is come to, as a part of the value that stands. */
const FINE = 1e-14;

/**
 * The nearest value to `from` at which the finding is gone, all but exactly; undefined where it stands even at
 * `far`. The way between is halved; where the last two failures tell by how much they miss, the straight line through
 * them says where to look, once a little before and once a little beyond, which is all that a linear rule needs.
 * A radius is sought by its curvature, so that `far` may be all but flat.
 */
function thresholdOf({ path, from, far }: Change, missAt: (value: number) => number) {
  const isRadius = path === "radius" || path.startsWith("radius.");
  const value = (t: number) => (isRadius ? 1 / t : t);
  let stands = value(from);
  let passes = value(far);
  if (missAt(value(passes)) > 0) return undefined;
  const near = FINE * Math.abs(stands);
  const fails = [{ t: stands, miss: missAt(from) }];
  for (let round = 0; ; round++) {
    const middle = stands + (passes - stands) / 2;
    const isNear = Math.abs(passes - stands) <= near || middle === stands || middle === passes;
    if (isNear) return value(passes);
    const aside = (round % 3 === 1 ? near : -near) / 4;
    const t = round % 3 === 0 ? middle : within(stands, passes, rootOf(fails, passes) + aside);
    const miss = missAt(value(t));
    if (miss > 0) {
      stands = t;
      fails.push({ t, miss });
    } else passes = t;
  }
}

/** Where the line through the last two failures meets zero. */
function rootOf(fails: readonly { t: number; miss: number }[], otherwise: number): number {
  const [a, b] = fails.slice(-2);
  if (a === undefined || b === undefined || a.miss === b.miss) return otherwise;
  return b.t - (b.miss * (b.t - a.t)) / (b.miss - a.miss);
}

/** A value strictly between two others: itself, or the middle where it lies outside. */
function within(a: number, b: number, t: number): number {
  return (t - a) * (t - b) < 0 ? t : a + (b - a) / 2;
}

/** By how much the finding's rule is broken; 0 where it is kept, Infinity where the design cannot be read. */
function missBy(finding: FindingFacts, found: readonly FindingFacts[] | undefined): number {
  if (found === undefined) return Infinity;
  const other = found.find((candidate) => ruleOf(candidate) === ruleOf(finding));
  if (other === undefined) return 0;
  return Math.abs(other.value - other.limit) || Number.MIN_VALUE;
}

/** The finding is gone, a planned depth fails at its hole in no other way, and no error is new or worse in degree. */
function isCure(
  finding: FindingFacts,
  found: readonly FindingFacts[] | undefined,
  known: ReadonlySet<string>,
): boolean {
  const failsStill = (other: FindingFacts) =>
    PLANNED.has(finding.code) && PLANNED.has(other.code) && placeOf(other) === placeOf(finding);
  const isNew = (other: FindingFacts) => other.severity === "error" && !known.has(nameOf(other));
  return found?.every((other) => !failsStill(other) && !isNew(other)) ?? false;
}

function findingsIn(spec: Spec): FindingFacts[] | undefined {
  const neck = build(spec, []);
  return neck && findingsOf(examine(neck));
}

function placeOf({ fret, side, station }: FindingFacts): string {
  return [fret, side, station].join(" ");
}

function nameOf(finding: FindingFacts): string {
  return `${finding.code} ${placeOf(finding)}`;
}

/** The rule that a finding breaks, whatever the degree, and its place. */
function ruleOf(finding: FindingFacts): string {
  return `${MILDER[finding.code] ?? finding.code} ${placeOf(finding)}`;
}

/** A finding's own name, and that of its milder degree. */
function namesUpTo(finding: FindingFacts): string[] {
  return [nameOf(finding), ruleOf(finding)];
}

/** Findings that are one rule broken in two degrees. */
const MILDER: Readonly<Partial<Record<FindingCode, FindingCode>>> = {
  "nothing-left": "below-keep",
  "breaks-through": "below-web",
  "cuts-slot": "near-slot",
};

/** The ways in which a planned depth fails. */
const PLANNED: ReadonlySet<FindingCode> = new Set([
  "nothing-left",
  "below-keep",
  "breaks-through",
  "below-web",
  "below-surface",
] as const);
