/** One good call or more for every public function of every entry. */
import fc from "fast-check";
import { all, create } from "mathjs";
import * as card from "../../src/card/index.js";
import * as draw from "../../src/draw/index.js";
import * as files from "../../src/files/index.js";
import * as core from "../../src/index.js";
import * as measured from "../../src/measured/index.js";
import * as notebook from "../../src/notebook/index.js";
import * as units from "../../src/units/index.js";
import { designs } from "../design/arbitrary.js";

/** A good call. */
export interface Call {
  /** Fresh arguments, of the design that the number picks. */
  readonly args: (variant: number) => unknown[];
  /** Arguments that, by the docstring, another function of this package gave: they are left as they are. */
  readonly given?: readonly number[];
  /** What is asked of the result before it is judged. */
  readonly spend?: (result: never) => unknown;
  /** A text may stand where the good call has a number, or a part of an argument is not read. */
  readonly isLoose?: true;
  /** What its caller's own objects throw is thrown on. */
  readonly passesOn?: true;
  /** A radius without end may come out, or goes through. */
  readonly mayBeFlat?: true;
  /** It takes so long that it is called a tenth as often. */
  readonly isSlow?: true;
}

export type AnyFunction = (...args: readonly unknown[]) => unknown;
export const MODULES = { core, card, draw, files, measured, notebook, units };

/** Invented, all that can be stated among them. */
const DESIGNS = fc.sample(designs, { numRuns: 6, seed: 1 });
const any = (variant: number) => structuredClone(DESIGNS[variant % DESIGNS.length] as core.Design);
const SMALL: core.Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 4 },
  radius: 254,
  markers: [{ frets: [5, 12], diameter: 6 }],
};
const small = () => structuredClone(SMALL);
const reportOf = (variant: number) => structuredClone(core.checkDesign(any(variant)));
const AXES: core.Axes = { radius: [184, 254], "board.thickness": [3, 4, 6] };
const swept = () => core.sweep(small(), structuredClone(AXES));
const repair = () => core.repairHole(small(), { fret: 5, error: 0.4 }, [6, 7, 8]);
const finding = () => structuredClone(core.checkDesign(small()).findings[0]);
const readings = () => [
  { along: "nut", centre: 3.8 },
  { along: 300, centre: 3.9, bass: 3.3, treble: 3.2 },
];
const points = () =>
  [-20, -8, 3, 12, 22].map((offset) => ({ offset, height: -(offset ** 2) / 508 }));

const math = create({ ...all });
const mm = (value: number) => math.unit(value, "mm");
const hole = () => ({
  along: 60,
  offset: -10,
  diameter: 6,
  fill: { kind: "poured" },
  bit: { kind: "twist" },
});

/** The first results of an iterator. */
async function take(results: AsyncIterable<unknown> | Iterable<unknown>): Promise<unknown[]> {
  const taken: unknown[] = [];
  for await (const result of results) {
    taken.push(result);
    if (taken.length === 50) break;
  }
  return taken;
}

async function* stream(items: readonly unknown[]) {
  yield* items;
}

const display = (result: object) =>
  (result as Record<symbol, () => unknown>)[Symbol.for("Jupyter.display")]?.();
const onReport: Call = { args: (v) => [reportOf(v)], given: [0] };
const withUnits = (...values: readonly number[]): Call[] => [
  { args: () => [...values], isLoose: true, mayBeFlat: true },
  { args: () => values.map((value) => (value > 1 ? mm(value) : value)), given: [0, 1, 2] },
];

export const CALLS: Readonly<Record<string, readonly Call[]>> = {
  "core.checkDesign": [{ args: (v) => [any(v)] }],
  "core.checkMany": [
    { args: (v) => [[small(), any(v)]], spend: take, isLoose: true, passesOn: true },
    { args: (v) => [stream([small(), any(v)])], given: [0], spend: take },
  ],
  "core.diagonalCrossing": [{ args: () => [450, 44, 56] }],
  "core.fretLines": [{ args: (v) => [any(v)] }],
  "core.fretPositions": [
    { args: () => [{ length: 648, frets: 22 }] },
    { args: () => [{ positions: [36.4, 70.7, 103.1] }] },
  ],
  "core.frontier": [{ args: () => [swept(), "board.thickness"], given: [0] }],
  "core.holeWindow": [{ args: (v) => [any(v), hole()] }],
  "core.profileAt": [
    {
      args: () => [
        { nut: 43, fret1: 57 },
        30,
        { scale: { length: 648, frets: 1 }, board: { length: 99 } },
      ],
    },
  ],
  "core.radiusFromSagitta": [{ args: () => [8, 6], mayBeFlat: true }],
  "core.remediesFor": [{ args: () => [small(), finding()], isLoose: true, isSlow: true }],
  "core.remedyPairFor": [{ args: () => [small(), finding()], isLoose: true, isSlow: true }],
  "core.removalAt": [{ args: (v) => [any(v), 100, 10] }],
  "core.repairHole": [
    { args: () => [small(), { fret: 5, side: "centre", error: 0.4 }, [6, 7, 8]] },
  ],
  "core.sagitta": [{ args: () => [254, 20, 0.3] }],
  "core.stopSettings": [
    {
      args: () => [
        [
          { min: 1, max: 2 },
          { min: 3, max: 4, tool: "a" },
        ],
        { step: 0.1 },
      ],
    },
  ],
  "core.sweep": [
    {
      args: () => [small(), structuredClone(AXES), { from: 1, to: 2 }],
      spend: (rows: core.Sweep) => ({
        ...rows,
        first: rows.size > 0 && [rows.valuesAt(0), rows.at(0)],
      }),
      isLoose: true,
      mayBeFlat: true,
    },
  ],
  "core.sweep().at": [{ args: () => [4] }],
  "core.sweep().report": [{ args: () => [4] }],
  "core.sweep().valuesAt": [{ args: () => [4] }],
  "card.drillCard": [
    { args: (v) => [reportOf(v), { unit: "in", design: any(v) }], given: [0], isSlow: true },
  ],
  "card.repairNote": [{ args: () => [repair(), { unit: "in" }], given: [0] }],
  "card.sandingNote": [
    {
      args: () => [measured.sandingProgress(small(), readings() as never), { unit: "in" }],
      given: [0],
    },
  ],
  "draw.drawBoard": [onReport],
  "draw.drawSection": [{ args: (v) => [reportOf(v), 0, { exaggeration: 2 }], given: [0] }],
  "draw.drawSweep": [{ args: () => [swept(), { x: "board.thickness" }], given: [0] }],
  "draw.drawWindows": [onReport],
  "files.designSchema.validate": [
    {
      args: (v) => [any(v)],
      spend: ({ value }: { value?: unknown }) => value,
      isLoose: true,
      mayBeFlat: true,
    },
  ],
  "files.readDesign": [{ args: (v) => [JSON.stringify(any(v))], mayBeFlat: true }],
  "files.writeDesign": [{ args: (v) => [any(v), { unit: "in" }] }],
  "measured.calibrateStop": [
    {
      args: () => [
        [
          { travel: 4, tip: 4.1 },
          { travel: 4, floor: 3 },
        ],
        { lead: 1, holes: 10, level: 0.95 },
      ],
    },
  ],
  "measured.dimensionalChange": [{ args: () => [57, 0.00353, 8, 6] }],
  "measured.equilibriumMoisture": [{ args: () => [21, 45] }],
  "measured.fitCompound": [
    {
      args: () => [
        [100, 400].map((along) => ({ along, points: points() })),
        482,
        { uncertainty: 0.01 },
      ],
    },
  ],
  "measured.fitRadius": [
    { args: () => [points(), { uncertainty: 0.01, coverage: 2 }], mayBeFlat: true },
  ],
  "measured.leastSanding": [{ args: () => [184, 305, 26] }],
  "measured.radiusFromGauge": [
    { args: () => [{ gauge: 254, span: 40, gap: 0.2, touches: "edges" }] },
  ],
  "measured.sandingProgress": [{ args: () => [small(), readings()] }],
  "notebook.checkDesign": [{ args: (v) => [any(v)], spend: display, isSlow: true }],
  "notebook.html": [onReport],
  "notebook.show": [{ ...onReport, spend: display }],
  "units.formatLength": [{ args: () => [38.1, { unit: "in", denominator: 16 }] }],
  "units.length": [{ args: () => ["1 1/2 in"] }, { args: () => [38.1], isLoose: true }],
  "units.mathFunctions.diagonalCrossing": withUnits(450, 44, 56),
  "units.mathFunctions.fretPosition": withUnits(648, 12),
  "units.mathFunctions.radiusFromSagitta": withUnits(8, 6),
  "units.mathFunctions.sagitta": withUnits(254, 20, 0.3),
};

/** Functions that a result brings along. */
const METHODS: Readonly<Record<string, AnyFunction>> = {
  "core.sweep().at": (i) => swept().at(i as number),
  "core.sweep().report": (i) => swept().report(i as number),
  "core.sweep().valuesAt": (i) => swept().valuesAt(i as number),
};

/** The functions by `entry.name`; those within an exported object by `entry.object.name`; classes left out. */
export function publicFunctions(): Map<string, AnyFunction> {
  const found = new Map(Object.entries(METHODS));
  const collect = (name: string, value: unknown): void => {
    if (typeof value === "function") {
      if (!(value.prototype instanceof Error)) found.set(name, value as AnyFunction);
    } else if (typeof value === "object" && value !== null && !Array.isArray(value)) {
      for (const [key, inner] of Object.entries(value)) {
        const isWrapped = key === "~standard";
        if (isWrapped || typeof inner === "function")
          collect(isWrapped ? name : `${name}.${key}`, inner);
      }
    }
  };
  for (const [entry, module] of Object.entries(MODULES)) {
    for (const [name, value] of Object.entries(module)) collect(`${entry}.${name}`, value);
  }
  return found;
}
