/** The compound radius that points across several sections lie on. Lengths in mm, heights upward. */
import { type DesignIssue, makeIssue, refused } from "../errors/errors.js";
import { fitCone, type Section } from "./cone.js";
import { readPoints } from "./points.js";
import { radiusUncertainty, readUncertainty } from "./radius-uncertainty.js";
import { POSITION, readFields, readList, readNumber, refuseAll, SIZE } from "./read.js";

/** What is known of the readings. */
export interface FitCompoundOptions {
  /** Standard uncertainty of one reading, mm (a limit ±a is a/√3); left out, the points' own scatter tells. */
  readonly uncertainty?: number | undefined;
}

/** A value at either end of the board, mm. */
export interface BothEnds {
  /** At the nut. */
  readonly nut: number;
  /** At the body end. */
  readonly end: number;
}

/** The cone that lies nearest to the points. */
export interface FittedCompound {
  /** As a design takes it; Infinity where flat, negative where hollow. */
  readonly radius: BothEnds;
  /** Root of the mean square of the points' distances from the surface, mm. */
  readonly rms: number;
  /** Standard uncertainty of each radius, to first order. */
  readonly uncertainty: BothEnds;
}

/**
 * Compound radius with the least sum of squared distances from the points of several sections, measured square to the
 * surface within each section.
 *
 * The radius is linear along the board, so the surface is a cone and each section a conic with K = −(dR/ds)² (sag
 * equation of ISO 10110-12), whose crest lies on the centre line. Level and tilt are free for each section. The fit is
 * of the curvatures at the first and the last section, by Gauss–Newton from parabolas; a conic, which on usual boards
 * differs from its crest's circle by a few micrometres at most, is fitted as that circle from points raised by the
 * difference. Near flat the points tell little of how the radius runs: see the uncertainties.
 *
 * @param sections two or more different `along`, 50 at most; in each three different offsets or more, 1000 at most
 * @param length of the board, nut to body end, mm
 * @param options `uncertainty` of one reading, mm (a limit ±a is a/√3); left out, it is the square root of
 *   SS/(N − 2 − 2 · sections), and the N points of all sections must be more than that
 * @returns the radius at the nut and at the end, the root mean square of the distances, standard uncertainties
 * @throws RangeError where an argument cannot be read, with every path, or no one cone lies nearest
 * @example
 * // invented readings
 * const section = (along, step, heights) => {
 *   const points = heights.map((height, i) => ({ offset: step * (i - 2), height }));
 *   return { along, points };
 * };
 * const nut = section(0, 10, [5.21, 5.8, 6, 5.8, 5.21]);
 * const twelfth = section(324, 12, [5.02, 5.75, 6, 5.75, 5.02]);
 * const { radius } = fitCompound([nut, twelfth], 480);
 * [radius.nut.toFixed(0), radius.end.toFixed(0)] // ["254", "315"]
 */
export function fitCompound(
  sections: readonly Section[],
  length: number,
  options: FitCompoundOptions = {},
): FittedCompound {
  const { read, end, uncertainty } = readArguments(sections, length, options);
  const points = read.reduce((sum, section) => sum + section.points.length, 0);
  const freedom = points - 2 - 2 * read.length;
  const cone = fitCone(read);
  const [nut, last] = [cone.at(0), cone.at(end)];
  if (!(Math.max(nut.uncertainty, last.uncertainty) < Infinity)) {
    throw refused("sections", sections, "points along one cone");
  }
  const reading = uncertainty ?? Math.sqrt(cone.sumOfSquares / freedom);
  return {
    radius: { nut: 1 / nut.curvature, end: 1 / last.curvature },
    rms: Math.sqrt(cone.sumOfSquares / points),
    uncertainty: {
      nut: radiusUncertainty(nut.curvature, nut.uncertainty * reading),
      end: radiusUncertainty(last.curvature, last.uncertainty * reading),
    },
  };
}

function readArguments(sections: unknown, length: unknown, options: unknown) {
  const issues: DesignIssue[] = [];
  const counts = { least: 2, most: 50, what: "sections" };
  const read = readList(sections, "sections", counts, issues, (item, path) =>
    readSection(item, path, issues),
  );
  const end = readNumber(length, "length", SIZE, issues);
  const stated = readFields(options, "options", ["uncertainty"], issues);
  const uncertainty = readUncertainty(stated?.uncertainty, issues);
  if (issues.length === 0) refuseTooFew(read, uncertainty, issues);
  refuseAll(issues);
  return { read, end, uncertainty };
}

function readSection(value: unknown, path: string, issues: DesignIssue[]): Section | undefined {
  const fields = readFields(value, path, ["along", "points"], issues);
  return (
    fields && {
      along: readNumber(fields.along, `${path}.along`, POSITION, issues),
      points: readPoints(fields.points, `${path}.points`, issues),
    }
  );
}

/** The least way between the first and the last section, mm. */
const LEAST_WAY = 1e-3;

function refuseTooFew(
  sections: readonly Section[],
  uncertainty: number | undefined,
  issues: DesignIssue[],
): void {
  const places = sections.map(({ along }) => along);
  if (!(Math.max(...places) - Math.min(...places) >= LEAST_WAY)) {
    issues.push(
      makeIssue("sections", sections, `two different along or more, over ${LEAST_WAY} mm or more`),
    );
  }
  const points = sections.flatMap((section) => section.points).length;
  const least = 3 + 2 * sections.length;
  if (uncertainty === undefined && points < least) {
    issues.push(makeIssue("sections", sections, `${least} points or more, or options.uncertainty`));
  }
}
