/** What trial holes in scrap tell of a depth stop. Lengths in mm. */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { isWhole } from "../errors/unknown.js";
import { predictionFactor } from "./prediction-factor.js";
import {
  type Bound,
  between,
  readFields,
  readList,
  readNumber,
  readOptional,
  refuseAll,
  SIZE_OR_ZERO,
} from "./read.js";

/** A trial hole, the stop zeroed anew for it. */
export type Trial = {
  /** The travel that was set, mm. */
  readonly travel: number;
} & (
  | {
      /** How deep the deepest mark lies, which the bit's tip left, mm. */
      readonly tip: number;
    }
  | {
      /** How deep the floor lies, mm. */
      readonly floor: number;
    }
);

/** What the trials are measured with, and what they are to answer for. */
export interface CalibrateStopOptions {
  /** How far the tip goes below the floor, mm; needed where a floor was measured. */
  readonly lead?: number | undefined;
  /** How many holes are to be drilled; 10 where left out. */
  readonly holes?: number | undefined;
  /** The chance that all of them stay within the tolerance, from 0.5 to 0.999999; 0.95 where left out. */
  readonly level?: number | undefined;
  /** The smallest step of what the depth was read on, mm; 0.05 where left out. */
  readonly resolution?: number | undefined;
}

/** A depth stop as the trials show it. */
export interface StopCalibration {
  /** How much farther the tip goes than set, mm: a design's `stop.correction`. */
  readonly correction: number;
  /** Standard deviation of one hole, mm, the reading's resolution included. */
  readonly spread: number;
  /** A design's `tolerance.stop`: the limit that all further holes keep at the level. */
  readonly tolerance: {
    /** r · spread, mm. */
    readonly limit: number;
    /** The law of the errors. */
    readonly shape: "normal";
    /** r: how many standard deviations the limit is. */
    readonly coverage: number;
    /** Each hole has an error of its own. */
    readonly per: "hole";
  };
  /** How many trials there were. */
  readonly trials: number;
}

/**
 * Correction and tolerance of a depth stop from trial holes in scrap, the stop zeroed anew for each.
 *
 * The correction is the mean of tip − travel; the spread √(s² + resolution²/12), with s of n − 1: equal readings do
 * not mean no error. The limit is r · spread, r the two-sided prediction factor for all further holes (G. J. Hahn,
 * J. Am. Stat. Assoc. 64, 1969), which stands in the tolerance as its coverage.
 *
 * @param trials two to 1000, each with `travel` and `tip`, or `travel` and `floor`; lengths within ±1e6 mm
 * @param options `lead` (mm, 0 or more), `holes` (1 to 1000), `level`, `resolution` (mm, 0 or more)
 * @returns correction, spread, tolerance and the number of trials
 * @throws RangeError where trials or options cannot be read, with every path
 * @example
 * // invented readings
 * const trials = [{ travel: 3, tip: 3.05 }, { travel: 3, tip: 3.1 }, { travel: 3, tip: 3.15 }];
 * const { correction, tolerance } = calibrateStop(trials);
 * correction.toFixed(2) // "0.10"
 * tolerance.coverage.toFixed(2) // "9.67"
 * tolerance.limit.toFixed(2) // "0.50"
 */
export function calibrateStop(
  trials: readonly Trial[],
  options: CalibrateStopOptions = {},
): StopCalibration {
  const { errors, holes, level, resolution } = readArguments(trials, options);
  const n = errors.length;
  const correction = errors.reduce((sum, error) => sum + error, 0) / n;
  const squares = errors.reduce((sum, error) => sum + (error - correction) ** 2, 0);
  const spread = Math.sqrt(squares / (n - 1) + resolution ** 2 / 12);
  const coverage = predictionFactor(1 - level, n, holes);
  return {
    correction,
    spread,
    tolerance: { limit: coverage * spread, shape: "normal", coverage, per: "hole" },
    trials: n,
  };
}

const KEYS = ["lead", "holes", "level", "resolution"] as const;
const HOLES: Bound = {
  what: "a whole number from 1 to 1000",
  accepts: (value) => isWhole(value, 1, 1000),
};
const LEVEL = between(0.5, 0.999999, "");

/** The trials as errors of the tip, and the options with what is left out. */
function readArguments(trials: unknown, options: unknown) {
  const issues: DesignIssue[] = [];
  const stated = readFields(options, "options", KEYS, issues);
  const option = (key: (typeof KEYS)[number], bound: Bound, usual: number) =>
    readOptional(stated?.[key], `options.${key}`, bound, usual, issues);
  const lead = option("lead", SIZE_OR_ZERO, Number.NaN);
  const counts = { least: 2, most: 1000, what: "trials" };
  const read = {
    errors: readList(trials, "trials", counts, issues, (item, path) =>
      readTrial(item, path, lead, issues),
    ),
    holes: option("holes", HOLES, 10),
    level: option("level", LEVEL, 0.95),
    resolution: option("resolution", SIZE_OR_ZERO, 0.05),
  };
  refuseAll(issues);
  return read;
}

/** How much farther the tip went than set. */
function readTrial(
  value: unknown,
  path: string,
  lead: number,
  issues: DesignIssue[],
): number | undefined {
  const fields = readFields(value, path, ["travel", "tip", "floor"], issues);
  if (!fields) return undefined;
  const { travel, tip, floor } = fields;
  const set = readNumber(travel, `${path}.travel`, SIZE_OR_ZERO, issues);
  if (floor === undefined) return readNumber(tip, `${path}.tip`, SIZE_OR_ZERO, issues) - set;
  if (tip !== undefined) issues.push(makeIssue(`${path}.tip`, tip, "tip or floor, not both"));
  if (Number.isNaN(lead)) issues.push(makeIssue(`${path}.floor`, floor, "options.lead beside it"));
  return readNumber(floor, `${path}.floor`, SIZE_OR_ZERO, issues) + lead - set;
}
