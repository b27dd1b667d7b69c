/** Two changes that cure a finding together, where no single one does. */
import type { Design } from "../design/design.js";
import { withNumber } from "../design/paths.js";
import { type Change, listChanges } from "./changes.js";
import type { FindingFacts } from "./findings.js";
import { openCase, type Remedy, seek } from "./remedies.js";

/** A small step of each number, as a part of it, that builders take before any larger one. */
const SMALL_STEPS: readonly (readonly [RegExp, number])[] = [
  [/^board\.thickness$/, 1.15],
  [/^board\.channel\.depth$/, 0.75],
  [/^radius$/, 1.3],
  [/^sanding$/, 1.5],
  [/^web$/, 0.75],
  [/(^|\.)fill\.keep$/, 0.7],
  [/(^|\.)fill\.thickness$/, 1.25],
  [/(^|\.)bit\.point$/, 0.7],
  [/\.diameter$/, 0.85],
  [/\.spread$/, 0.9],
  [/^slot\.(tang|clearance|web)$/, 0.8],
];

/**
 * Two changes that together cure a finding: the first by a small step, the second as far as its threshold. They are
 * sought among a short list of numbers: thickness, channel, radius, sanding, web, keep, dot, point, size, spread, slot.
 *
 * @param design the design that was checked
 * @param finding one of the findings of its report
 * @returns both changes; undefined where no pair of the list does
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the design has no such finding
 * @example
 * // an invented neck, far too thin for its marker
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 3 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 *   bit: { kind: "forstner", point: 1.2 },
 * };
 * const [finding] = checkDesign(design).findings;
 * remedyPairFor(design, finding).length // 2
 */
export function remedyPairFor(
  design: Design,
  finding: FindingFacts,
): readonly [Remedy, Remedy] | undefined {
  const opened = openCase(design, finding);
  if (opened === undefined) return undefined;
  const changes = listChanges(design, opened.neck, opened.scope).filter(({ path }) =>
    readStep(path),
  );
  for (const first of changes) {
    const to = first.from * (readStep(first.path) ?? 1);
    const stepped = withNumber(design, first.path, to);
    for (const second of changes) {
      if (isOneThing(first, second)) continue;
      const missAt = (value: number, all: boolean) =>
        opened.missAt(withNumber(stepped, second.path, value), all);
      const found = seek(second, missAt);
      if (found === undefined) continue;
      return [
        { change: first.path, from: first.from, to },
        { change: second.path, from: second.from, to: found },
      ];
    }
  }
  return undefined;
}

function readStep(path: string): number | undefined {
  return SMALL_STEPS.find(([pattern]) => pattern.test(path))?.[1];
}

/** The group's own number and the design's are one. */
function isOneThing({ path: a }: Change, { path: b }: Change): boolean {
  return a.endsWith(b) || b.endsWith(a);
}
