/** What is told of the error is true: a finer quadrature lies within it. All necks are invented. */
import { expect, test } from "vitest";
import { judgeConformance } from "../../src/chance/conformance.js";
import { readNeck } from "../../src/drilling/work.js";
import { CASES } from "./cases.js";

const FINER = 4;

test.each(CASES)("%s", (_, design, travels) => {
  const neck = readNeck(design);
  let next = 0;
  const each = neck.holes.map(({ marker }) => {
    if (marker.group.drilled) return undefined;
    return typeof travels === "number" ? travels : travels[next++];
  });
  const { fails, numericalError } = judgeConformance(neck, each);
  const fine = judgeConformance(neck, each, FINER);
  expect(Math.abs(fails - fine.fails)).toBeLessThanOrEqual(numericalError + 1e-9);
  expect(numericalError).toBeLessThan(1e-4);
});
