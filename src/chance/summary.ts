/** The chances of a design in short: what a card says of them. Lengths in mm. */
import type { Design } from "../design/design.js";
import { makeKeys } from "../drilling/plan.js";
import { readNeck } from "../drilling/work.js";
import { holeNames } from "../text/plain-words.js";
import { type Conformance, judgeConformance } from "./conformance.js";
import { type BestTravel, seekBest, USUAL_LEVEL } from "./over-travel.js";
import { usualTravels } from "./plans.js";

/** How likely all goes well, in short. */
export interface ChanceSummary {
  /** How many holes there are. */
  readonly count: number;
  /** The chance that all hold, at the travels planned or recommended. */
  readonly holds: number;
  /** The chance that not all do. */
  readonly fails: number;
  /** The hole that is likeliest to fail; null where none may. */
  readonly worst: {
    /** Its index in the report. */
    readonly hole: number;
    /** Its name, as on the card. */
    readonly name: string;
    /** The rule that is likeliest to be broken anywhere. */
    readonly rule: keyof Conformance["byRule"];
    /** The chance that it fails. */
    readonly fails: number;
  } | null;
  /** The chance that is held by the stretch of the best travel. */
  readonly level: number;
  /** The best travel, where one stop drills all; null where several do, or none. */
  readonly best: BestTravel | null;
}

/**
 * The chances of a design in short, at the travels planned, else recommended.
 *
 * @param design the neck
 * @returns how likely all hold, which hole is likeliest to fail, and the best travel with the stretch that holds at 0.95
 * @throws DesignError where the design cannot be read
 * @example
 * // an invented neck, drilled too shallow
 * const { worst } = summarizeChance({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 *   travel: 2.6,
 * });
 * worst.rule // "keep"
 */
export function summarizeChance(design: Design): ChanceSummary {
  const neck = readNeck(design);
  const markers = neck.holes.map(({ marker }) => marker);
  const { holds, fails, byRule, byHole } = judgeConformance(neck, usualTravels(neck));
  const hole = byHole.reduce((worst, own, i) => (own > (byHole[worst] as number) ? i : worst), 0);
  const rules = Object.entries(byRule) as [keyof typeof byRule, number][];
  const [rule] = rules.reduce((worst, own) => (own[1] > worst[1] ? own : worst));
  const most = byHole[hole] ?? 0;
  const isOne = makeKeys(markers).count === 1;
  return {
    count: markers.length,
    holds,
    fails,
    worst: most > 0 ? { hole, name: holeNames(markers)[hole] as string, rule, fails: most } : null,
    level: USUAL_LEVEL,
    best: isOne ? seekBest(neck, USUAL_LEVEL) : null,
  };
}
