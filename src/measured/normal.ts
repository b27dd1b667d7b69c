/** The standard normal distribution, right in its tails to the last digits. */

const ROOT_2_PI = Math.sqrt(2 * Math.PI);

/** Density: φ(z) = e^(−z²/2) / √(2π). */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / ROOT_2_PI;
}

/**
 * Distribution function Φ(z): the chance that a standard normal is z or less.
 * Both of its forms hold only terms of one sign, so nothing cancels: Φ(−5) is as exact as Φ(0).
 */
export function normalDistribution(z: number): number {
  if (z > 0) return 1 - lowerTail(z);
  return lowerTail(-z);
}

/** Φ(−x), x ≥ 0. */
function lowerTail(x: number): number {
  return x < TAIL ? 0.5 - normalDensity(x) * series(x) : normalDensity(x) / continuedFraction(x);
}

/** Where the series ends: 0.5 − … loses less than two digits before, and the fraction is short beyond. */
const TAIL = 2;

/** (Φ(x) − ½)/φ(x) = x + x³/3 + x⁵/(3·5) + x⁷/(3·5·7) + … */
function series(x: number): number {
  let sum = 0;
  let term = x;
  for (let odd = 3; sum + term !== sum; odd += 2) {
    sum += term;
    term *= (x * x) / odd;
  }
  return sum;
}

/** φ(x)/Φ(−x) = x + 1/(x + 2/(x + 3/(x + …))), from the inside outward (Laplace). */
function continuedFraction(x: number): number {
  let value = x;
  for (let k = Math.ceil(12 + 320 / (x * x)); k >= 1; k--) value = x + k / value;
  return value;
}
