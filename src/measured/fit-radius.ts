/** The radius that points across a board lie on. Lengths in mm, heights upward. */
import { type DesignIssue, makeIssue, refused } from "../errors/errors.js";
import { type Arc, distanceTo, LEVEL, movedArc, type Vector } from "./arc.js";
import { leastSquares } from "./least-squares.js";
import { normalDistribution } from "./normal.js";
import { centred, type ProfilePoint, reach, readPoints, scaled } from "./points.js";
import { studentFactor } from "./prediction-factor.js";
import { radiusUncertainty, readUncertainty } from "./radius-uncertainty.js";
import { between, readFields, readOptional, refuseAll } from "./read.js";

/** What is known of the readings, and how sure the range should be. */
export interface FitRadiusOptions {
  /** Standard uncertainty of one reading, mm (a limit ±a is a/√3); left out, the points' own scatter tells. */
  readonly uncertainty?: number | undefined;
  /** Coverage factor k of `range`, from 0.1 to 10; 2 where left out, which is 95.4 %. */
  readonly coverage?: number | undefined;
}

/** The circle that lies nearest to the points. */
export interface FittedRadius {
  /** mm; Infinity where flat, negative where hollow (the centre above the points). */
  readonly radius: number;
  /** Standard uncertainty of the radius, mm, to first order; on a board near flat the curvature's says more. */
  readonly uncertainty: number;
  /** Of the circle: 1/radius. */
  readonly curvature: {
    /** Per mm; 0 where flat, negative where hollow. */
    readonly value: number;
    /** Standard uncertainty, per mm. */
    readonly uncertainty: number;
  };
  /** Centre of the circle, in the points' frame; infinitely far where flat. */
  readonly centre: ProfilePoint;
  /** Root of the mean square of the points' distances from the circle, mm. */
  readonly rms: number;
  /** Radii whose curvature lies within the coverage of the fitted one. */
  readonly range: {
    /** mm; where flat lies inside, the tightest on the side that was fitted. */
    readonly min: number;
    /** mm; Infinity where flat lies inside. */
    readonly max: number;
  };
}

/**
 * Radius of the circle with the least sum of squared distances from the points, measured square to the circle.
 *
 * The points may be read in any turned frame and from any level. The fit is of the curvature, so that flat and hollow
 * boards are ordinary points of it: Gauss–Newton from a parabola (as W. Gander, G. H. Golub and R. Strebel,
 * "Least-squares fitting of circles and ellipses", BIT 34, 1994, fit the geometric distance; the parameters differ).
 * `range` takes k standard uncertainties of the curvature to either side; where `uncertainty` is left out, that of a
 * reading is √(SS/(n − 3)) and Student's t for n − 3 degrees of freedom, at k's probability, stands in place of k.
 *
 * @param points at least three different offsets; four points, or three with `uncertainty`; 1000 at most, each
 *   coordinate within ±1e6 mm
 * @param options `uncertainty` of one reading, mm, and `coverage` of the range
 * @returns the radius with its uncertainty, curvature, centre, root mean square of the distances, and range
 * @throws RangeError where points or options cannot be read, with every path, or no one circle lies nearest
 * @example
 * // invented readings
 * const heights = [0, 0.39, 0.62, 0.7, 0.62, 0.4, 0.01];
 * const points = heights.map((height, i) => ({ offset: 7 * i - 21, height }));
 * const { radius, range } = fitRadius(points, { uncertainty: 0.01 });
 * radius.toFixed(0) // "318"
 * [range.min.toFixed(0), range.max.toFixed(0)] // ["310", "328"]
 */
export function fitRadius(
  points: readonly ProfilePoint[],
  options: FitRadiusOptions = {},
): FittedRadius {
  const { read, uncertainty, coverage } = readArguments(points, options);
  const frame = centred(read);
  const unit = reach(frame);
  const fit = fitCircle(scaled(frame, unit));
  if (!fit) throw refused("points", points, "points along one arc");
  const value = fit.curvature / unit;
  const freedom = read.length - 3;
  const reading = uncertainty ?? unit * Math.sqrt(fit.sumOfSquares / freedom);
  const spread = (fit.spread * reading) / unit / unit;
  const factor = uncertainty === undefined ? studentAt(coverage, freedom) : coverage;
  return {
    radius: 1 / value,
    uncertainty: radiusUncertainty(value, spread),
    curvature: { value, uncertainty: spread },
    centre: {
      offset: frame.mean.x + unit * fit.centre.x,
      height: frame.mean.y + unit * fit.centre.y,
    },
    rms: unit * Math.sqrt(fit.sumOfSquares / read.length),
    range: makeRange(value, factor * spread),
  };
}

function readArguments(points: unknown, options: unknown) {
  const issues: DesignIssue[] = [];
  const read = readPoints(points, "points", issues);
  const stated = readFields(options, "options", ["uncertainty", "coverage"], issues);
  const uncertainty = readUncertainty(stated?.uncertainty, issues);
  const coverage = readOptional(stated?.coverage, "options.coverage", COVERAGE, 2, issues);
  if (stated?.uncertainty === undefined && read.length === 3) {
    issues.push(makeIssue("points", points, "4 points or more, or 3 and options.uncertainty"));
  }
  refuseAll(issues);
  return { read, uncertainty, coverage };
}

const COVERAGE = between(0.1, 10, "standard uncertainties");

/** The circle nearest to points about (0, 0); its curvature's standard uncertainty where that of a reading is 1. */
function fitCircle(points: readonly Vector[]) {
  const fit = leastSquares<Circle>({
    start: { arc: LEVEL, curvature: 0 },
    parameters: 3,
    residuals: ({ arc, curvature }) =>
      points.map((point) => {
        const { value, move, turn, bend } = distanceTo(arc, curvature, point);
        return { value, slopes: [move, turn, bend].map((slope, i) => [i, slope] as const) };
      }),
    moved: ({ arc, curvature }, [move = 0, turn = 0, bend = 0]) => ({
      arc: movedArc(arc, move, turn),
      curvature: curvature + bend,
    }),
  });
  const spread = Math.sqrt(fit.variance([0, 0, 1]));
  if (!(spread < Infinity)) return undefined;
  const { arc, curvature } = fit.state;
  const centre = {
    x: beyond(arc.foot.x, arc.normal.x, curvature),
    y: beyond(arc.foot.y, arc.normal.y, curvature),
  };
  const size = Math.abs(curvature);
  const isHollow = centre.y > 0;
  return { sumOfSquares: fit.sumOfSquares, spread, curvature: isHollow ? -size : size, centre };
}

interface Circle {
  readonly arc: Arc;
  readonly curvature: number;
}

/** From the foot to the centre along one axis: infinitely far on a flat board, but for an axis along it. */
function beyond(foot: number, normal: number, curvature: number): number {
  return normal === 0 ? foot : foot - normal / curvature;
}

/** Student's t at the probability of k standard deviations of a normal. */
function studentAt(coverage: number, freedom: number): number {
  return studentFactor(2 * normalDistribution(-coverage), freedom);
}

function makeRange(value: number, half: number): { min: number; max: number } {
  const [low, high] = [value - half, value + half];
  if (low > 0 || high < 0) return { min: 1 / high, max: 1 / low };
  return { min: 1 / (value < 0 ? low : high), max: Infinity };
}
