/** The factor for all further holes, and Student's t. */
import quantile from "@stdlib/stats-base-dists-t-quantile";
import { all, create } from "mathjs";
import { expect, test } from "vitest";
import { predictionFactor, studentFactor } from "../../src/measured/prediction-factor.js";

// r(0.95; n, 10) (Hahn, J. Am. Stat. Assoc. 64, 1969: the definition; figures computed by another quadrature)
test.each([
  [3, 9.665],
  [5, 5.229],
  [10, 3.717],
])("all of 10 further values after %d: %d standard deviations", (n, print) => {
  expect(Math.abs(predictionFactor(0.05, n, 10) - print)).toBeLessThan(6e-4);
});

const FREEDOMS = [1, 2, 3, 5, 12, 40, 200, 997];
const CHANCES = [0.5, 0.05, 0.0455, 1e-4, 1e-9];

test.each(FREEDOMS)(
  "%d degrees of freedom: the t of a library, alone and for one further value",
  (dof) => {
    // @stdlib/stats-base-dists-t-quantile; with one value the factor is t · √(1 + 1/n)
    for (const fails of CHANCES) {
      const t = -quantile(fails / 2, dof);
      expect(Math.abs(studentFactor(fails, dof) / t - 1)).toBeLessThan(1e-12);
      const one = t * Math.sqrt(1 + 1 / (dof + 1));
      expect(Math.abs(predictionFactor(fails, dof + 1, 1) / one - 1)).toBeLessThan(1e-12);
    }
  },
);

test("far out on one degree of freedom, where t = cot(π · fails / 2)", () => {
  expect(studentFactor(1e-20, 1) * Math.PI * 1e-20).toBeCloseTo(2, 12);
});

test.each([
  [4, 10, 0.5],
  [3, 10, 0.05],
  [5, 40, 0.2],
  [10, 3, 0.001],
  [60, 200, 0.05],
])("%d trials, %d holes, a chance of %d: by Simpson's rule and a library's erf", (n, m, fails) => {
  expect(failing(predictionFactor(fails, n, m), n, m) / fails).toBeCloseTo(1, 5);
});

const { erf } = create({ ...all });

/** 1 − E[(Φ(z/√n + ru) − Φ(z/√n − ru))^m], u and z in equal steps by Simpson's rule. */
function failing(r: number, n: number, m: number): number {
  const [steps, most] = [800, 4];
  let [sum, whole] = [0, 0];
  for (let i = 0; i <= steps; i++) {
    const u = (most * i) / steps;
    const density = u ** (n - 2) * Math.exp((-(n - 1) * u * u) / 2);
    for (let j = 0; j <= 60; j++) {
      const z = (8 * j) / 60;
      const weight = density * simpson(i, steps) * simpson(j, 60) * Math.exp((-z * z) / 2);
      const [low, high] = [z / Math.sqrt(n) - r * u, z / Math.sqrt(n) + r * u];
      const inside = (erf(high / Math.SQRT2) - erf(low / Math.SQRT2)) / 2;
      whole += weight;
      sum += weight * (1 - inside ** m);
    }
  }
  return sum / whole;
}

function simpson(i: number, steps: number): number {
  if (i === 0 || i === steps) return 1;
  return i % 2 === 1 ? 4 : 2;
}
