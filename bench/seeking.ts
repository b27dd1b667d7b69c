/** What asks the check over and over: frontiers, and the remedies of designs that fail. */
import {
  checkDesign,
  type Design,
  type FindingCode,
  frontier,
  remediesFor,
  sweep,
} from "../src/index.js";
import { axesOf, COMPOUND, type Grid, SWEPT, sizeOf } from "./necks.js";
import type { Rival } from "./timing.js";

/** A sweep, and with it the frontier of its second axis: the thinnest board for each radius at the nut. */
export function frontierRivals(count: number): Rival[] {
  const grid: Grid = {
    design: COMPOUND,
    counts: { "radius.nut": count, "board.thickness": count },
  };
  const run = (turn: number) => sweep(grid.design, axesOf(grid, turn));
  const sweeps = Array.from({ length: 7 }, (_, turn) => run(turn));
  const repeats = Math.max(1, Math.round(2500 / sizeOf(grid)));
  return [
    { name: "`sweep`", run: (turn) => run(turn).size, repeats: 10 * repeats },
    {
      name: "`frontier` of it",
      run: (turn) => {
        const own = sweeps[turn % 7] as (typeof sweeps)[number];
        return frontier(own, "board.thickness").length > 0 ? own.size : 0;
      },
      repeats,
    },
  ];
}

const [SINGLES, DOUBLE] = [
  { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
  { frets: [12], diameter: 6.35, arrangement: "double" },
] as const;
const thin = (thickness: number): Design["board"] => ({ ...SWEPT.board, thickness });

/** A dozen designs, each with the finding that it is made for. */
export const FAILING: readonly (readonly [FindingCode, Design])[] = [
  ["no-depth", { ...COMPOUND, board: thin(3.2) }],
  ["nothing-left", { ...COMPOUND, depth: 0.2 }],
  ["below-keep", { ...COMPOUND, depth: 1.2 }],
  ["breaks-through", { ...COMPOUND, travel: 6 }],
  ["below-web", { ...COMPOUND, travel: 5.2 }],
  ["below-surface", { ...COMPOUND, fill: { kind: "solid", thickness: 1.6 }, depth: 2.6 }],
  ["thin-edge", { ...SWEPT, radius: 200, board: thin(2.6) }],
  ["near-slot", { ...SWEPT, markers: [SINGLES, { ...DOUBLE, diameter: 18.2 }] }],
  ["dots-overlap", { ...SWEPT, markers: [SINGLES, { ...DOUBLE, spread: 5 }] }],
  ["past-edge", { ...SWEPT, markers: [SINGLES, { ...DOUBLE, spread: 48 }] }],
  ["slot-too-shallow", { ...COMPOUND, slot: { tang: 1.6, depth: 2.2 } }],
  ["side-dot-tight", { ...COMPOUND, board: thin(4), sideDots: { diameter: 2.6 } }],
];

/** One check of each design, and all remedies of its finding. */
export function remedyRivals(): Rival[] {
  const cases = FAILING.map(([code, design]) => {
    const finding = checkDesign(design).findings.find((each) => each.code === code);
    if (finding === undefined) throw new Error(`no ${code}`);
    return { design, finding };
  });
  return [
    {
      name: "`checkDesign`",
      run: () => cases.filter(({ design }) => checkDesign(design)).length,
      repeats: 50,
    },
    {
      name: "`remediesFor` a finding of it",
      run: () => cases.filter(({ design, finding }) => remediesFor(design, finding)).length,
    },
  ];
}
