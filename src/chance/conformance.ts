/** How likely all holes hold. Lengths in mm. */
import type { Design } from "../design/design.js";
import { type Neck, readNeck } from "../drilling/work.js";
import type { DesignIssue } from "../errors/errors.js";
import { isArray } from "../errors/unknown.js";
import { readFields, readList, readNumber, refuseAll, SIZE } from "../measured/read.js";
import { keptLaws } from "./law.js";
import { buildModel, failingAt } from "./model.js";
import { readPlan, usualTravels } from "./plans.js";
import type { Grade } from "./spread.js";

/** What is drilled how. */
export interface ConformanceOptions {
  /**
   * Travels, mm, from 1e-6 to 1e6: one for all holes, or one for each that is to be drilled, in the report's order. Left
   * out: as planned (a planned depth is a travel of its own at each hole), else as recommended, else in the middle of the
   * hole's two bounds.
   */
  readonly travels?: number | readonly number[] | undefined;
}

/** How likely all holes hold. */
export interface Conformance {
  /** The chance that every hole holds. */
  readonly holds: number;
  /** The chance that at least one does not, accurate where it is small. */
  readonly fails: number;
  /** How far off `fails` may be, from the quadrature. */
  readonly numericalError: number;
  /** For each rule the chance that at least one hole breaks it; they overlap. */
  readonly byRule: {
    /** That some marker is left thinner than it is to keep. */
    readonly keep: number;
    /** That some hole leaves less wood under the bit than the web. */
    readonly web: number;
    /** That some hole leaves less over the rod channel. */
    readonly channel: number;
    /** That some solid dot ends below the finished surface. */
    readonly flush: number;
  };
  /** For each hole of the report the chance that it fails. */
  readonly byHole: readonly number[];
}

/**
 * The chance that all holes hold: that each true marker, web, channel and flush condition does, with each tolerance spread
 * as its law says (JCGM 101:2008; rectangular unless stated).
 *
 * Radius, existing radius, sanding, thickness and crest are shared by the whole board, the point by a bit, the stop by a
 * setting (one travel with one bit) unless it is `per: "hole"`; layout, fill and seat are each hole's own. Given what is
 * shared the holes are independent, so the chance is an integral of a product: by quadrature, with no sampling.
 *
 * @param design the neck; a normal tolerance may pass its limit, the others never do
 * @param options `travels`, mm: one for all holes, or one for each that is to be drilled
 * @returns the chances; with rectangular and triangular tolerances nothing fails inside the window
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the travels cannot
 * @example
 * // an invented neck; the stop's error takes more than half of its lower half
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
 * conformanceProbability(design, { travels: 2.05 }).fails.toFixed(6) // "0.250000"
 * conformanceProbability(design, { travels: 2.1 }).holds // 1
 */
export function conformanceProbability(
  design: Design,
  options: ConformanceOptions = {},
): Conformance {
  const neck = readNeck(design);
  return judgeConformance(neck, readTravels(neck, options));
}

/** The same, of a neck that is read. */
export function judgeConformance(
  neck: Neck,
  travels: readonly (number | undefined)[],
  grade: Grade = AS_MEANT,
): Conformance {
  return failingNeck(neck, grade)(travels);
}

/** What fails at a travel. */
export type FailingAt = (travel: number) => Pick<Conformance, "fails" | "numericalError">;

/** How finely all is worked out. */
const AS_MEANT = 2;
/** How near a mean is to be at grade 0, where it is of what is smooth, and of what has kinks. */
const [SMOOTH, KINKED] = [1.6e-5, 1.6e-4];

/** The chances of a neck at any travels; what does not hang on them is worked out once. */
export function failingNeck(neck: Neck, grade: Grade = AS_MEANT) {
  const laws = keptLaws();
  const [fine, rough] = [buildModel(neck, grade, laws), buildModel(neck, grade / 2, laws)];
  const absolute = (fine.isOldShowing ? KINKED : SMOOTH) / 4 ** grade;
  const aim = { absolute, relative: 1e-2 / 4 ** grade };
  return (travels: readonly (number | undefined)[]): Conformance => {
    const plan = readPlan(neck, travels);
    const { fails, error, byRule, byHole } = failingAt(fine, rough, plan, aim);
    const numericalError = error + ROUNDING * fails + CUT_OFF;
    return { holds: 1 - fails, fails, numericalError, byRule, byHole };
  };
}

/** What rounding may do to a part, and what is cut off of normal errors. */
const ROUNDING = 1e-13;
const CUT_OFF = 1e-17;

function readTravels(neck: Neck, options: unknown): (number | undefined)[] {
  const issues: DesignIssue[] = [];
  const stated = readFields(options, "options", ["travels"], issues)?.travels;
  const usual = usualTravels(neck);
  const path = "options.travels";
  if (stated === undefined) {
    refuseAll(issues);
    return usual;
  }
  const toDrill = usual.filter((travel) => travel !== undefined).length;
  let each: readonly number[];
  if (isArray(stated)) {
    const counts = {
      least: toDrill,
      most: toDrill,
      what: "travels, one for each hole that is to be drilled",
    };
    each = readList(stated, path, counts, issues, (item, at) => readNumber(item, at, SIZE, issues));
  } else {
    each = new Array(toDrill).fill(readNumber(stated, path, SIZE, issues));
  }
  refuseAll(issues);
  let next = 0;
  return usual.map((travel) => (travel === undefined ? undefined : each[next++]));
}
