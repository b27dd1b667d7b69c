/** One good call or more for every public function of every entry. */
import fc from "fast-check";
import * as card from "../../src/card/index.js";
import * as chance from "../../src/chance/index.js";
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
export const MODULES = { core, card, chance, draw, files, measured, notebook, units };

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
const progress = () => measured.sandingProgress(small(), readings() as never);
const level = (along: number | "nut") => ({ along, centre: 3.9, bass: 3.3, treble: 3.2 });
const readings = () => [level("nut"), level(300)];
const points = () => [-20, -8, 3, 12].map((offset) => ({ offset, height: -(offset ** 2) / 508 }));
const mark = () => ({ along: 60, offset: -10, diameter: 6, bit: { kind: "twist" } });
const frame = () => ({ scale: { length: 648, frets: 1 }, board: { length: 99 } });
const travels = () => [1, 3].map((min) => ({ min, max: min + 1, tool: "a" }));
const trials = () => [4, 5].map((travel) => ({ travel, tip: travel + 0.1 }));
const sections = () => [100, 400].map((along) => ({ along, points: points() }));

/** The first results of an iterator. */
async function take(results: AsyncIterable<unknown> | Iterable<unknown>): Promise<unknown[]> {
  const taken: unknown[] = [];
  for await (const result of results) if (taken.push(result) === 50) break;
  return taken;
}

async function* stream(items: readonly unknown[]) {
  yield* items;
}

const firstRow = (rows: core.Sweep) => [rows, rows.size > 0 && [rows.valuesAt(0), rows.at(0)]];
const display = (result: object) =>
  (result as Record<symbol, () => unknown>)[Symbol.for("Jupyter.display")]?.();

const good = (args: Call["args"], more: Omit<Call, "args"> = {}): Call[] => [{ args, ...more }];
const onDesign = good((v) => [any(v)]);
const fifth = good(() => [4]);
const numbers = (...values: readonly number[]) =>
  good(() => [...values], { isLoose: true, mayBeFlat: true });
const rack = [6, 7, 8];
const inches = { unit: "in" };

export const CALLS: Readonly<Record<string, readonly Call[]>> = {
  "core.checkDesign": onDesign,
  "core.checkMany": [
    ...good((v) => [[small(), any(v)]], { spend: take, isLoose: true, passesOn: true }),
    ...good((v) => [stream([small(), any(v)])], { given: [0], spend: take }),
  ],
  "core.diagonalCrossing": good(() => [450, 44, 56]),
  "core.fretLines": onDesign,
  "core.fretPositions": [
    ...good(() => [{ length: 648, frets: 22 }]),
    ...good(() => [{ positions: [36.4, 70.7, 103.1] }]),
  ],
  "core.frontier": good(() => [swept(), "board.thickness"], { given: [0] }),
  "core.holeWindow": good((v) => [any(v), mark()]),
  "core.profileAt": good(() => [{ nut: 43, fret1: 57 }, 30, frame()]),
  "core.radiusFromSagitta": good(() => [8, 6], { mayBeFlat: true }),
  "core.remediesFor": good(() => [small(), finding()], { isLoose: true, isSlow: true }),
  "core.remedyPairFor": good(() => [small(), finding()], { isLoose: true, isSlow: true }),
  "core.removalAt": good((v) => [any(v), 100, 10]),
  "core.repairHole": good(() => [small(), { fret: 5, side: "centre", error: 0.4 }, [...rack]]),
  "core.sagitta": good(() => [254, 20, 0.3]),
  "core.stopSettings": good(() => [travels(), { step: 0.1 }]),
  "core.sweep": good(() => [small(), structuredClone(AXES), { from: 1, to: 2 }], {
    spend: firstRow,
    isLoose: true,
    mayBeFlat: true,
  }),
  "core.sweep().at": fifth,
  "core.sweep().report": fifth,
  "core.sweep().valuesAt": fifth,
  "card.drillCard": good((v) => [reportOf(v), { ...inches, design: any(v) }], {
    given: [0],
    isSlow: true,
  }),
  "card.repairNote": good(() => [repair(), { ...inches }], { given: [0] }),
  "card.sandingNote": good(() => [progress(), { ...inches }], { given: [0] }),
  "draw.drawBoard": good((v) => [reportOf(v), { ...inches }], { given: [0] }),
  "draw.drawChance": good((v) => [any(v), { ...inches }], { isSlow: true }),
  "draw.drawSanding": good(() => [small(), readings(), { ...inches }]),
  "draw.drawSection": good((v) => [reportOf(v), 0, { exaggeration: 2 }], { given: [0] }),
  "draw.drawSweep": good(() => [swept(), { x: "board.thickness" }], { given: [0] }),
  "draw.drawTemplate": good((v) => [reportOf(v), { paper: "letter" }], { given: [0] }),
  "draw.drawWindows": good((v) => [reportOf(v), { ...inches }], { given: [0] }),
  "files.designSchema.validate": good((v) => [any(v)], {
    spend: ({ value }: { value?: unknown }) => value,
    isLoose: true,
    mayBeFlat: true,
  }),
  "files.readDesign": good((v) => [JSON.stringify(any(v))], { mayBeFlat: true }),
  "files.writeDesign": good((v) => [any(v), { ...inches }]),
  "chance.bestTravel": good(() => [small(), { level: 0.9 }], { isSlow: true }),
  "chance.conformanceProbability": good(() => [small(), { travels: [3, 3.1] }], { isSlow: true }),
  "chance.failingOverTravel": good(() => [small(), [2.5, 3]], { isSlow: true }),
  "chance.summarizeChance": good(() => [small()], { isSlow: true }),
  "measured.calibrateStop": good(() => [trials(), { lead: 1, holes: 10, level: 0.95 }]),
  "measured.dimensionalChange": good(() => [57, 0.00353, 8, 6]),
  "measured.equilibriumMoisture": good(() => [21, 45]),
  "measured.fitCompound": good(() => [sections(), 482, { uncertainty: 0.01 }]),
  "measured.fitRadius": good(() => [points(), { uncertainty: 0.01 }], { mayBeFlat: true }),
  "measured.leastSanding": good(() => [184, 305, 26]),
  "measured.radiusFromGauge": good(() => [{ gauge: 254, span: 40, gap: 0.2, touches: "edges" }]),
  "measured.sandingProgress": good(() => [small(), readings()]),
  "notebook.checkDesign": good((v) => [any(v)], { spend: display, isSlow: true }),
  "notebook.html": good((v) => [reportOf(v), { ...inches, design: any(v) }], {
    given: [0],
    isSlow: true,
  }),
  "notebook.show": good((v) => [reportOf(v)], { given: [0], spend: display }),
  "units.formatLength": good(() => [38.1, { unit: "in", denominator: 16 }]),
  "units.length": [...good(() => ["1 1/2 in"]), ...good(() => [38.1], { isLoose: true })],
  "units.mathFunctions.diagonalCrossing": numbers(450, 44, 56),
  "units.mathFunctions.fretPosition": numbers(648, 12),
  "units.mathFunctions.radiusFromSagitta": numbers(8, 6),
  "units.mathFunctions.sagitta": numbers(254, 20, 0.3),
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
