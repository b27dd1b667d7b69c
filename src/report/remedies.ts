/** For a finding, each single change that alone cures it, with its exact threshold. */

import type { Marker } from "../board/markers.js";
import { LIMITS } from "../design/design.js";
import type { Spec } from "../design/spec.js";
import { type Examined, examine } from "../drilling/examine.js";
import { build } from "../drilling/neck.js";
import { type Change, changesFor } from "./changes.js";
import { ABOUT_MARKER, type FindingCode, type FindingFacts, findingsOf } from "./findings.js";
import { thresholdBetween } from "./threshold.js";

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

/** The threshold of one change. A radius is sought by its curvature, so that `far` may be all but flat. */
function thresholdOf({ path, from, far }: Change, missAt: (value: number) => number) {
  if (!path.startsWith("radius")) return thresholdBetween(from, far, missAt);
  const curvature = thresholdBetween(1 / from, 1 / far, (t) => missAt(1 / t));
  return curvature === undefined ? undefined : 1 / curvature;
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
