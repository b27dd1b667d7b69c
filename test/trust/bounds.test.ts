/** Whatever the true values within the tolerances, a depth of the window keeps the marker and the board. */
import { expect, test } from "vitest";
import { tryStates } from "./states.js";

const SEED = Number(process.env.SEED ?? 20261125);
const STATES = Number(process.env.STATES ?? 10_000);
/** How careful a bound may be on an ordinary board, and on one that has a radius already, mm, as docs/formulas.md says. */
const CAREFUL = { blank: 0.01, radiused: 0.023 };

test(`${STATES} true states lose nothing`, { timeout: 7_200_000 }, () => {
  const { careful, lost, ...counts } = tryStates(STATES, SEED);
  const rows = [...careful].sort().map(([kind, { count, most }]) => ({ kind, count, most }));
  console.log(JSON.stringify(counts));
  for (const { kind, count, most } of rows) {
    console.log(kind.padEnd(30), String(count).padStart(7), most.by.toFixed(6), most.hole);
  }
  expect(counts.states).toBeGreaterThanOrEqual(STATES);
  expect(lost.slice(0, 3), `SEED=${SEED}`).toEqual([]);
  const limit = (kind: string) => (kind.includes("radiused") ? CAREFUL.radiused : CAREFUL.blank);
  expect(rows.filter(({ kind, most }) => !(most.by <= limit(kind)))).toEqual([]);
});
