/** One good call or more for every public function. The fuzzer replaces its arguments, and what is inside them. */
import { all, create } from "mathjs";
import {
  type Axes,
  checkDesign,
  type Design,
  type Repair,
  type Report,
  repairHole,
  type Sweep,
  sweep,
} from "../../src/index.js";
import { WHOLE } from "../files/whole.js";

/** A good call. */
export interface Call {
  /** Fresh arguments; the number picks a design. */
  readonly args: (variant: number) => unknown[];
  /**
   * Arguments that, by the docstring, come from another function of this package. What happens with others is
   * not promised; they must still end, and change nothing.
   */
  readonly trusted?: readonly number[];
  /** Uses the result up, and returns all that came of it. */
  readonly spend?: (result: unknown, variant: number) => unknown;
  /** Trusted ones that are left as they are: as no call of `sweep` gives them. */
  readonly sealed?: readonly number[];
  /** Arguments of another library's classes: only replaced as a whole. */
  readonly isWhole?: boolean;
  /** What its caller's own objects throw is thrown on. */
  readonly passesOn?: boolean;
  /** Text and other kinds may stand where the good call has a number. */
  readonly isLoose?: boolean;
}

const math = create({ ...all });

/** Invented, with many holes and all that can be stated; one is fanned, one has listed frets. */
export function designOf(variant: number): Design {
  return structuredClone(WHOLE[variant % WHOLE.length] as Design);
}

/** Invented. */
const SMALL: Design = {
  name: "invented",
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [{ frets: [5, 12], diameter: 6 }],
};
const AXES: Axes = { radius: [184, 254], "board.thickness": [3, 4, 6] };

function small(): Design {
  return structuredClone(SMALL);
}

/** Only what `profileAt` reads. */
function frameOf(variant: number) {
  const { scale, board } = designOf(variant);
  const { length, width } = board;
  return { scale, board: "bass" in scale ? { length, width } : { length } };
}

const made = new Map<number, Report>();

/** A report as plain data, all of it read; a copy of its own each time. */
function reportOf(variant: number): Report {
  const report = made.get(variant) ?? plainReport(variant);
  made.set(variant, report);
  return structuredClone(report);
}

function plainReport(variant: number): Report {
  const { findings, ...rest } = checkDesign(designOf(variant));
  const told = findings.slice(0, 3).map((finding) => ({
    ...finding,
    remedies: finding.remedies ?? [],
  }));
  return { ...rest, findings: told };
}

function repairOf(): Repair {
  const { report, ruledOut, ...rest } = repairHole(small(), { fret: 5, error: 0.4 }, [6, 7, 8]);
  const told = ruledOut.map(({ findings, ...other }) => ({ ...other, findings: [...findings] }));
  return structuredClone({ ...rest, report: report && { ...report }, ruledOut: told }) as Repair;
}

function sweepOf(): Sweep {
  return { ...sweep(small(), structuredClone(AXES)) };
}

const MOST_TAKEN = 50;

/** The first results of an iterator, which is then closed. */
function take(results: unknown): unknown[] {
  const taken: unknown[] = [];
  for (const result of results as Iterable<unknown>) {
    taken.push(result);
    if (taken.length === MOST_TAKEN) break;
  }
  return taken;
}

async function takeAsync(results: unknown): Promise<unknown[]> {
  const taken: unknown[] = [];
  for await (const result of results as AsyncIterable<unknown>) {
    taken.push(result);
    if (taken.length === MOST_TAKEN) break;
  }
  return taken;
}

function stream(designs: readonly unknown[]): AsyncIterable<unknown> {
  async function* each() {
    yield* designs;
  }
  return { [Symbol.asyncIterator]: each };
}

/** What a sweep says of its first row. */
function firstRow(result: unknown): unknown {
  const rows = result as Sweep;
  if (rows.size === 0) return rows;
  return { ...rows, values: rows.valuesAt(0), design: rows.at(0) };
}

/** The report's first remedies as well, which are sought when they are read. */
function wholeReport(result: unknown): unknown {
  const report = result as Report;
  const few = report.holes.length <= 8 ? report.findings.slice(0, 1) : [];
  return { ...report, remedies: few.map(({ remedies }) => remedies) };
}

/** What a validation tells, without the input that it tells again. */
function messages(result: unknown): unknown {
  const { issues, value } = result as { issues?: readonly { message: string }[]; value: unknown };
  return issues === undefined ? value : issues.map(({ message }) => message);
}

function displayed(result: unknown): unknown {
  const display = (result as Record<symbol, unknown>)[Symbol.for("Jupyter.display")];
  return (display as () => unknown)();
}

const HOLE = {
  along: 60,
  offset: -10,
  diameter: 6,
  fill: { kind: "poured" },
  bit: { kind: "twist" },
};
const mm = (value: number) => math.unit(value, "mm");

/** The calls by `entry.name`. */
export const CALLS: Readonly<Record<string, readonly Call[]>> = {
  "core.fretPositions": [
    { args: () => [{ length: 648, frets: 22 }] },
    { args: () => [{ positions: [36.4, 70.7, 103.1] }] },
  ],
  "core.holeWindow": [{ args: (v) => [designOf(v), structuredClone(HOLE)] }],
  "core.profileAt": [
    { args: (v) => [{ nut: 43, end: 57 }, 241, frameOf(v)] },
    {
      args: () => [
        { nut: 43, fret1: 57 },
        30,
        { scale: { length: 648, frets: 1 }, board: { length: 99 } },
      ],
    },
  ],
  "core.removalAt": [{ args: (v) => [designOf(v), 100, 10] }],
  "core.fretLines": [{ args: (v) => [designOf(v)] }],
  "core.checkMany": [
    { args: (v) => [[small(), designOf(v)]], spend: take, passesOn: true, isLoose: true },
    {
      args: (v) => [stream([small(), designOf(v)])],
      spend: takeAsync,
      passesOn: true,
      isLoose: true,
    },
  ],
  "core.frontier": [{ args: () => [sweepOf(), "board.thickness"], sealed: [0] }],
  "core.diagonalCrossing": [{ args: () => [450, 44, 56] }],
  "core.repairHole": [
    {
      args: () => [small(), { fret: 5, side: "centre", error: 0.4 }, [6, 7, 8]],
      spend: (repair) => wholeReport((repair as Repair).report ?? { holes: [], findings: [] }),
    },
  ],
  "core.checkDesign": [{ args: (v) => [designOf(v)], spend: wholeReport }],
  "core.radiusFromSagitta": [{ args: () => [8, 6] }],
  "core.sagitta": [{ args: () => [254, 20] }, { args: () => [254, 20, 0.3] }],
  "core.stopSettings": [
    {
      args: () => [
        [
          { min: 1, max: 2, lead: 1 },
          { min: 3, max: 4 },
          { min: 1.5, max: 3.5 },
        ],
        { step: 0.1 },
      ],
    },
  ],
  "core.sweep": [
    {
      args: () => [small(), structuredClone(AXES)],
      spend: firstRow,
      isLoose: true,
    },
    {
      args: (v) => [designOf(v), { web: [0.5, 1], depth: [2] }, { from: 1, to: 2 }],
      spend: firstRow,
    },
  ],
  "core.sweep().valuesAt": [{ args: () => [4] }],
  "core.sweep().at": [{ args: () => [4] }],
  "core.sweep().report": [{ args: () => [4] }],
  "card.drillCard": [{ args: (v) => [reportOf(v), { unit: "in" }], trusted: [0] }],
  "card.repairNote": [{ args: () => [repairOf(), { unit: "in" }], trusted: [0] }],
  "units.formatLength": [{ args: () => [38.1, { unit: "in", denominator: 16 }] }],
  "units.length": [{ args: () => ["1 1/2 in"] }, { args: () => [38.1], isLoose: true }],
  "units.mathFunctions.sagitta": [
    { args: () => [254, 20, 0.3], isLoose: true },
    { args: () => [mm(254), mm(20), 0], isLoose: true, isWhole: true },
  ],
  "units.mathFunctions.radiusFromSagitta": [
    { args: () => [8, 6], isLoose: true },
    { args: () => [mm(8), mm(6)], isLoose: true, isWhole: true },
  ],
  "units.mathFunctions.fretPosition": [
    { args: () => [648, 12], isLoose: true },
    { args: () => [mm(648), 12], isLoose: true, isWhole: true },
  ],
  "units.mathFunctions.diagonalCrossing": [
    { args: () => [450, 44, 56], isLoose: true },
    { args: () => [mm(450), mm(44), mm(56)], isLoose: true, isWhole: true },
  ],
  "files.readDesign": [{ args: (v) => [JSON.stringify(designOf(v))] }],
  "files.designSchema.validate": [
    { args: (v) => [designOf(v)], spend: messages, passesOn: true, isLoose: true },
  ],
  "draw.drawBoard": [{ args: (v) => [reportOf(v)], trusted: [0] }],
  "draw.drawSection": [{ args: (v) => [reportOf(v), 0, { exaggeration: 2 }], trusted: [0] }],
  "draw.drawSweep": [
    { args: () => [sweepOf(), { x: "board.thickness" }], trusted: [0] },
    {
      args: () => [
        { ...sweep(small(), { radius: [184, 254], web: [0.5, 1], "board.thickness": [3, 4] }) },
        { x: "web", y: "radius", held: { "board.thickness": 1 } },
      ],
      trusted: [0],
    },
  ],
  "draw.drawWindows": [{ args: (v) => [reportOf(v)], trusted: [0] }],
  "notebook.checkDesign": [{ args: () => [small()], spend: displayed }],
  "notebook.html": [{ args: (v) => [reportOf(v)], trusted: [0] }],
  "notebook.show": [{ args: (v) => [reportOf(v)], trusted: [0], spend: displayed }],
};

/** Functions that a result brings along. */
export const METHODS: Readonly<Record<string, (...args: readonly unknown[]) => unknown>> = {
  "core.sweep().valuesAt": (i) => sweepOf().valuesAt(i as number),
  "core.sweep().at": (i) => sweepOf().at(i as number),
  "core.sweep().report": (i) => sweepOf().report(i as number),
};
