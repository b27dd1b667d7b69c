/** Chances against a count of draws: within four standard errors. All necks are invented. */
import { expect, test } from "vitest";
import { conformanceProbability } from "../../src/chance/index.js";
import { CASES } from "./cases.js";
import { judge } from "./judge.js";

const DRAWS = Number(process.env.DRAWS ?? 20_000);
const SEED = Number(process.env.SEED ?? 20261125);

test.each(CASES)("%s", (_, design, travels) => {
  const told = conformanceProbability(design, { travels });
  const counted = judge(design, travels, DRAWS, SEED);
  const { draws, fails, byRule, byHole } = counted;
  const near = (chance: number, count: number, what: string) => {
    const error = Math.sqrt(Math.max(chance * (1 - chance), 1 / draws) / draws);
    const by = Math.abs(count / draws - chance) / error;
    expect(by, `SEED=${SEED} ${what}: ${chance} against ${count}`).toBeLessThan(4);
  };
  expect(told.numericalError).toBeLessThan(1e-4);
  expect(fails).toBeGreaterThan(0);
  near(told.fails, fails, "any");
  for (const rule of ["keep", "web", "channel", "flush"] as const)
    near(told.byRule[rule], byRule[rule], rule);
  told.byHole.forEach((chance, i) => {
    near(chance, byHole[i] as number, `hole ${i}`);
  });
});
