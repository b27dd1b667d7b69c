/** Whatever the true values within the tolerances, a depth of the window keeps the marker and the board. */
import { expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { linesOf as piecesOf } from "../properties/oracle.js";
import { tryStates } from "./cases.js";
import { type Bench, type Drilled, missesOf } from "./truth.js";

const SEED = Number(process.env.SEED ?? 20261125);
const STATES = Number(process.env.STATES ?? 10_000);

test(`${STATES} true states, proved by interval arithmetic`, { timeout: 3_600_000 }, () => {
  const { cases, closed, refused, misses } = tryStates(STATES, SEED);
  console.log(`states ${cases}, holes without a depth ${closed}, designs refused ${refused}`);
  expect(cases).toBeGreaterThanOrEqual(STATES);
  expect(misses.slice(0, 3), `SEED=${SEED}`).toEqual([]);
});

const design: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: { nut: 254, end: 406 },
  crown: 0.15,
  markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
  fill: { kind: "solid", thickness: 2, keep: 0.5 },
  bit: { kind: "twist", angle: 118 },
};
const report = checkDesign(design);
const [hole] = report.holes;
const layout = { scale: design.scale, positions: [], length: 482 };
const bench: Bench = {
  from: 0,
  to: 482,
  radius: piecesOf(design.radius, layout),
  crown: piecesOf(0.15, layout),
  thickness: piecesOf(6, layout),
  web: 1,
};
const NONE = { stop: 0, along: 0, offset: 0, thickness: 0, crown: 0, radius: 1 };

/** The hole, drilled to a depth. */
function drilledTo(depth: number): Drilled {
  if (hole === undefined) throw new Error("the design has holes");
  return {
    hole,
    fill: { kind: "solid", thickness: 2, keep: 0.5 },
    bit: hole.bit,
    depth,
    errors: NONE,
  };
}

test("the judge tells a depth that is off by a hundredth of what the tolerances leave", () => {
  const { min, max } = hole?.window ?? { min: Number.NaN, max: Number.NaN };
  const rules = (depth: number) => missesOf(bench, drilledTo(depth)).map(({ rule }) => rule);
  expect(rules((min + max) / 2)).toEqual([]);
  // stop 0.1, crown 0.05 and the layout error are not used up by the true values here
  expect(rules(min - 0.17)).toEqual(["keep"]);
  expect(rules(max + 0.2)).toContain("flush");
  expect(rules(6)).toEqual(["web", "flush"]);
});
