/** The normal distribution function, tails included. */
import type { BigNumber } from "mathjs";
import { expect, test } from "vitest";
import { normalDistribution } from "../../src/measured/normal.js";
import { between, forAll } from "../outside/counted.js";
import { big, exactOf, math64 } from "../outside/exact.js";
import { expectPrinted } from "../outside/printed.js";

test.each([
  // computed at 50 digits
  [-5, "2.866516e-7"],
  [-7.5, "3.190892e-14"],
  [-Math.SQRT2, "0.0786496"],
  // JCGM 106:2012 7.3 (memory; recomputed): 0.92
  [1.4, "0.92"],
])("Φ(%d) = %s", (z, print) => {
  expectPrinted(normalDistribution(z), print);
});

test("either side of 0 at 64 digits, to the last few", () => {
  forAll(between(0, 9), (x) => {
    const tail = tail64(x);
    expect(Math.abs(normalDistribution(-x) / tail - 1)).toBeLessThan(2e-14);
    expect(Math.abs(normalDistribution(x) - (1 - tail))).toBeLessThan(5e-16);
  });
});

test("the ends of the line", () => {
  expect(normalDistribution(-Infinity)).toBe(0);
  expect(normalDistribution(Infinity)).toBe(1);
  expect(normalDistribution(0)).toBe(0.5);
});

/** Φ(−x) = ½ − φ(x)(x + x³/3 + x⁵/(3·5) + …) in mathjs's numbers of 64 digits, of which x = 9 takes some twenty. */
function tail64(x: number): number {
  const square = exactOf(x).pow(2);
  let term = exactOf(x);
  let sum = big(0);
  for (let odd = 3; term.gt("1e-60"); odd += 2) {
    sum = sum.plus(term);
    term = term.times(square).div(odd);
  }
  const root = (math64.pi as unknown as BigNumber).times(2).sqrt();
  return big("0.5").minus(square.div(-2).exp().div(root).times(sum)).toNumber();
}
