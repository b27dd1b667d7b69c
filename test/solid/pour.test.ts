/**
 * The poured volume of a twist hole by a library's quadrature: mathjs `solveODE` (Runge–Kutta with step control)
 * integrates the shells of the hole, dV/dr = 2πr · (depth + lead at r). The library knows no cylinder and no cone.
 */
import fc from "fast-check";
import { evaluate } from "mathjs";
import { expect, it } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { EXACT } from "./necks.js";

/** ∫ f from 0 to `end`. */
function integral(f: (x: number) => number, end: number): number {
  const solved: unknown = evaluate("solveODE(f, span, start, options)", {
    start: [0],
    f: (x: number, _: unknown) => [f(x)],
    span: [0, end],
    options: { method: "RK45", tol: 1e-10, maxIter: 1e5 },
  });
  const { y } = solved as { y: number[][] };
  return y.at(-1)?.[0] ?? Number.NaN;
}

/** One twist hole on a flat board, drilled to its setting; without waste. */
function twistHole(diameter: number, angle: number, thickness: number): Design {
  return {
    scale: { length: 648, frets: 12 },
    board: { length: 330, width: 50, thickness },
    radius: Infinity,
    crown: 0,
    markers: [{ frets: [5], diameter, bit: { kind: "twist", angle } }],
    web: 0.5,
    tolerance: EXACT,
    pour: { waste: 0 },
  };
}

it("the quadrature gives the printed volumes", () => {
  // Machinery's Handbook, 31st ed., p. 89: cylinder d 2.5, h 20; p. 90: cone r 3, h 4
  const shells = (height: (r: number) => number) => (r: number) => 2 * Math.PI * r * height(r);
  expect(
    integral(
      shells(() => 20),
      1.25,
    ).toFixed(2),
  ).toBe("98.17");
  expect(
    integral(
      shells((r) => 4 * (1 - r / 3)),
      3,
    ).toFixed(1),
  ).toBe("37.7");
});

it("the epoxy poured into a twist hole is the integral of its shells", () => {
  let count = 0;
  const tenths = (min: number, max: number) =>
    fc.noBias(fc.integer({ min: min * 10, max: max * 10 })).map((n) => n / 10);
  const holes = fc.sample(fc.tuple(tenths(2, 10), tenths(90, 150), tenths(8, 12)), 60);
  for (const [diameter, angle, thickness] of holes) {
    const { stops, pour } = checkDesign(twistHole(diameter, angle, thickness));
    const depth = stops.settings[0]?.depth ?? Number.NaN;
    const slope = Math.tan(((90 - angle / 2) * Math.PI) / 180);
    const shell = (r: number) => 2 * Math.PI * r * (depth + (diameter / 2 - r) * slope);
    const volume = integral(shell, diameter / 2);
    expect(((pour?.volume ?? Number.NaN) * 1000) / volume).toBeCloseTo(1, 8);
    count++;
  }
  expect(count).toBe(60);
});
