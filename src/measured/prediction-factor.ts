/** How far further values may lie from the mean of a few normal ones, in units of their standard deviation s. */

import { rootBetween } from "../geometry/root-between.js";
import { normalDistribution } from "./normal.js";

/**
 * Two-sided prediction factor for all of `holes` further values after `trials` of them (Hahn, J. Am. Stat. Assoc. 64,
 * 1969): all lie within mean ± r·s but with the chance `fails`. With one further value it is t · √(1 + 1/n).
 */
export function predictionFactor(fails: number, trials: number, holes: number): number {
  return factor({ fails, dof: trials - 1, meanError: 1 / Math.sqrt(trials), values: holes });
}

/** Student's t with `dof` degrees of freedom, exceeded in size with the chance `fails`. */
export function studentFactor(fails: number, dof: number): number {
  return factor({ fails, dof, meanError: 0, values: 1 });
}

interface Prediction {
  readonly fails: number;
  readonly dof: number;
  /** Standard deviation of the mean, where that of a value is 1. */
  readonly meanError: number;
  readonly values: number;
}

/** A possible truth: where it lies, and how likely it is. */
interface Node {
  readonly at: number;
  readonly weight: number;
}

/** The r with 1 − E[(1 − q)^m] = fails, q the chance that one value lies outside; solved in ln r. */
function factor(prediction: Prediction): number {
  const { fails, meanError } = prediction;
  const deviations = deviationNodes(prediction);
  const means = meanError > 0 ? meanNodes(fails) : [{ at: 0, weight: 1 }];
  const excess = (logR: number) =>
    Math.log(failing(Math.exp(logR), prediction, deviations, means) / fails);
  return Math.exp(crossing(excess));
}

/** 1 − E[Φ(z/√n + ru) − Φ(z/√n − ru)]^m over z standard normal and u = s/σ; exact where it is small. */
function failing(
  r: number,
  { meanError, values }: Prediction,
  deviations: readonly Node[],
  means: readonly Node[],
): number {
  let sum = 0;
  for (const u of deviations) {
    for (const z of means) {
      const aside = meanError * z.at;
      const outside = normalDistribution(aside - r * u.at) + normalDistribution(-aside - r * u.at);
      sum -= u.weight * z.weight * Math.expm1(values * Math.log1p(-outside));
    }
  }
  return sum;
}

// Both integrands fall off on either side faster than any power, where equal steps (the trapezoid rule) do best.

/** Nodes for u = s/σ, evenly spaced in ln u: the density of ln u is u^ν · e^(−νu²/2), up to a factor. */
function deviationNodes({ fails, dof }: Prediction): Node[] {
  const step = Math.min(0.1, 0.4 / Math.sqrt(dof));
  return nodes(step, fails, (y) => dof * (y - Math.expm1(2 * y) / 2)).map(({ at, weight }) => ({
    at: Math.exp(at),
    weight,
  }));
}

/** Nodes for z; those below 0 do as their counterparts above. */
function meanNodes(fails: number): Node[] {
  return nodes(0.25, fails, (z) => (-z * z) / 2)
    .filter(({ at }) => at >= 0)
    .map(({ at, weight }) => ({ at, weight: at > 0 ? 2 * weight : weight }));
}

/** Nodes to either side of 0, the highest place, until what is left is nothing beside `fails`. */
function nodes(step: number, fails: number, logDensity: (at: number) => number): Node[] {
  const least = Math.log(fails) - 37;
  const found: Node[] = [];
  for (const side of [-step, step]) {
    for (let i = side < 0 ? 1 : 0; logDensity(i * side) > least; i++) {
      found.push({ at: i * side, weight: Math.exp(logDensity(i * side)) });
    }
  }
  const sum = found.reduce((total, { weight }) => total + weight, 0);
  return found.map(({ at, weight }) => ({ at, weight: weight / sum }));
}

/** Where a function crosses zero, in a bracket that is walked to from 0. */
function crossing(f: (x: number) => number): number {
  let [place, value] = [0, f(0)];
  const step = value > 0 ? 1 : -1;
  for (;;) {
    const next = f(place + step);
    if (next > 0 !== value > 0) return rootBetween(f, place, place + step, value, next);
    [place, value] = [place + step, next];
  }
}
