/** For a finding, each single change that alone cures it, with its exact threshold. */
import { type Change, changesFor } from "./changes.js";
import { type Examined, examine } from "./examine.js";
import { type FindingCode, type FindingFacts, findingsOf } from "./findings.js";
import { build } from "./neck.js";
import type { Spec } from "./spec.js";

/** One change that alone cures a finding; `change` is a path in the design. */
export interface Remedy {
  readonly change: string;
  readonly from: number;
  /** The threshold: the finding is gone with this value, and stands 0.01 short of it. */
  readonly to: number;
}

/** The remedies for a finding: every change whose threshold exists and brings no new error with it. */
export function remediesFor(finding: FindingFacts, examined: Examined): Remedy[] {
  const { markers } = examined.neck;
  const { hole } = finding;
  const about = hole === undefined ? markers : markers.slice(hole, hole + 1);
  const known = new Set(findingsOf(examined).map(nameOf));
  return changesFor(finding, examined, about).flatMap((change) => {
    const to = thresholdOf(change, (value) => isGone(finding, change.apply(value)));
    if (to === undefined || bringsErrors(change.apply(to), known)) return [];
    return [{ change: change.path, from: change.from, to }];
  });
}

/**
 * The nearest value to `from` at which the finding is gone, to the last bit; undefined where it stands even at
 * `far`. A radius is halved by its curvature, so that `far` may be all but flat.
 */
function thresholdOf({ path, from, far }: Change, gone: (value: number) => boolean) {
  const isRadius = path === "radius" || path.startsWith("radius.");
  const value = (t: number) => (isRadius ? 1 / t : t);
  let stands = value(from);
  let passes = value(far);
  if (!gone(value(passes))) return undefined;
  for (;;) {
    const middle = stands + (passes - stands) / 2;
    if (middle === stands || middle === passes) return value(passes);
    if (gone(value(middle))) passes = middle;
    else stands = middle;
  }
}

function isGone(finding: FindingFacts, spec: Spec): boolean {
  const found = findingsIn(spec);
  return found?.every((other) => nameOf(other) !== nameOf(finding)) ?? false;
}

function bringsErrors(spec: Spec, known: ReadonlySet<string>): boolean {
  const errors = findingsIn(spec)?.filter(({ severity }) => severity === "error") ?? [];
  return errors.some((error) => !known.has(nameOf(error)));
}

function findingsIn(spec: Spec): FindingFacts[] | undefined {
  const neck = build(spec, []);
  return neck && findingsOf(examine(neck));
}

/** A finding's rule and place. Degrees of one failing are one rule. */
function nameOf({ code, fret, side, station }: FindingFacts): string {
  return [DEGREES[code] ?? code, fret, side, station].join(" ");
}

const DEGREES: Readonly<Partial<Record<FindingCode, FindingCode>>> = {
  "nothing-left": "below-keep",
  "breaks-through": "below-web",
  "cuts-slot": "near-slot",
};
