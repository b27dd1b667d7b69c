/** The results as one Markdown table, and where it stands. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { arch, cpus } from "node:os";
import type { Entry } from "./entries.js";
import type { Memory } from "./memory.js";
import { CLOCK, type Timed } from "./timing.js";

/** All that was measured. */
export interface Results {
  readonly date: string;
  readonly machine: string;
  /** Numbers held against the bare loops before anything was timed. */
  readonly compared: number;
  /** One radius, thickness and a dot's diameter; other ways too. */
  readonly single: readonly Timed[];
  /** The same on a compound radius. */
  readonly compound: readonly Timed[];
  /** Both ends of a compound radius. */
  readonly ends: readonly Timed[];
  readonly frontiers: readonly Timed[];
  readonly remedies: readonly Timed[];
  readonly chance: readonly Timed[];
  readonly reports: readonly Timed[];
  readonly sweepGrowth: readonly Timed[];
  readonly streamGrowth: readonly Timed[];
  /** The command over a stream, by how many threads; wall time. */
  readonly jobs: readonly Timed[];
  readonly memory: Memory;
  readonly entries: readonly Entry[];
  readonly packages: number;
}

const PAGE = "docs/batch.md";
const BEGIN = "<!-- bench:begin -->";
const END = "<!-- bench:end -->";

/** The machine by what matters, and by no maker's name: architecture, cores, Node. */
export function machine(): string {
  return `${arch()}, ${cpus().length} cores, Node ${process.versions.node}`;
}

/** What was measured last. */
export function readResults(): Results {
  return JSON.parse(readFileSync("bench/results.json", "utf8"));
}

/** Puts the results into the file and the table into the page, between its markers. */
export function write(results: Results, table: string): void {
  writeFileSync("bench/results.json", `${JSON.stringify(results, null, 2)}\n`);
  const text = existsSync(PAGE) ? readFileSync(PAGE, "utf8") : "";
  const from = text.indexOf(BEGIN);
  const to = text.indexOf(END);
  if (!(from >= 0 && to > from)) throw new Error(`${PAGE} has no markers for the table`);
  const before = text.slice(0, from + BEGIN.length);
  writeFileSync(PAGE, `${before}\n${table}\n${text.slice(to)}`);
}

/** The results with four digits of each fraction: what lies beyond is noise. */
export function rounded(results: Results): Results {
  const digits = (_: string, value: unknown) =>
    typeof value === "number" && !Number.isInteger(value) ? Number(value.toPrecision(4)) : value;
  return JSON.parse(JSON.stringify(results, digits));
}

/** One table for all of it. */
export function tableOf(results: Results): string {
  const { memory, entries } = results;
  const timed = (what: string, base: string, rows: readonly Timed[], goals: Goals) => [
    heading(what, `to ${base}`),
    ...rows.map((row) => timedRow(row, goals[row.name])),
  ];
  const bare = "the bare loop";
  const lines = [
    `Measured on ${results.date}: ${results.machine}, ${CLOCK} time. ${grouped(results.compared)} numbers agreed with the bare loops first.`,
    "",
    "| what | designs in a run | for each design | ratio | goal |",
    "|---|--:|--:|--:|--:|",
    ...timed("Radius × thickness × a dot's diameter", bare, results.single, sweeps(1.5)),
    ...timed(
      "A compound radius at the nut × thickness × a dot's diameter",
      bare,
      results.compound,
      sweeps(1.5),
    ),
    ...timed("A compound radius at the nut × at the end", bare, results.ends, sweeps(2)),
    ...timed("Every number of a report", bare, results.reports, { "`checkDesign`": 20 }),
    ...timed("A compound radius at the nut × thickness", "the sweep", results.frontiers, {
      "`frontier` of it": 60,
    }),
    ...timed("A dozen designs that fail", "one check", results.remedies, {
      "`remediesFor` a finding of it": 500,
    }),
    ...timed("How likely all goes well", bare, results.chance, {
      "`conformanceProbability`, all normal, nearly all hold": 100_000,
      "`conformanceProbability`, all normal, half of them hold": 100_000,
    }),
    heading("Growth", "to the fewest designs"),
    ...[...results.sweepGrowth, ...results.streamGrowth].map(growthRow),
    heading("The command over designs of NDJSON, wall time", "to one thread"),
    ...results.jobs.map(jobsRow),
    heading("Memory", "to columns"),
    keptRow("kept as columns", memory.column, memory.column),
    keptRow("kept as reports", memory.report, memory.column),
    leftRow(
      `for each row of a \`sweep\` beyond ${grouped(memory.sweeps[0])}`,
      memory.sweeps[1],
      memory.swept,
    ),
    leftRow("left behind by `checkMany`", memory.streamed, memory.growth),
    heading("Entries, with all that they import; minified and gzipped", "to one file by itself"),
    ...entries.map(entryRow),
    `| packages that an installation brings along | | ${results.packages} | | ${atMost(results.packages, 0)} |`,
  ];
  return lines.join("\n");
}

type Goals = Readonly<Record<string, number>>;

function sweeps(most: number): Goals {
  return { "`sweep`, columns used again": most, "`sweep`, new columns": most };
}

/** Growth that counts as linear: the time for a design, against that with the fewest. */
const LINEAR = 1.25;
/** Bytes for a design that count as none: the collector's own coming and going. */
const FLAT = 8;
/** The load of an entry against that of the same in one file by itself: what sharing parts may cost. */
const MOST_LOAD = 1.5;

/** A goal, and whether it is met. */
function judged(goal: string, isMet: boolean): string {
  return `${goal}: ${isMet ? "met" : "**not met**"}`;
}

function atMost(value: number, limit: number | undefined): string {
  return limit === undefined ? "" : judged(`≤ ${limit}`, value <= limit);
}

function heading(what: string, ratio: string): string {
  return `| **${what}** | | | *${ratio}* | |`;
}

function timedRow({ name, designs, ns, ratio }: Timed, limit: number | undefined): string {
  const goal = atMost(ratio, limit);
  return `| ${name} | ${grouped(designs)} | ${timeOf(ns)} | ${figures(ratio)} | ${goal} |`;
}

function growthRow({ name, designs, ns, ratio }: Timed): string {
  const goal = judged("linear", ratio <= LINEAR);
  return `| ${name} | ${grouped(designs)} | ${timeOf(ns)} | ${figures(ratio)} | ${goal} |`;
}

function jobsRow({ name, designs, ns, ratio }: Timed): string {
  const cost = `${timeOf(ns)}: ${grouped(Number((1e9 / ns).toPrecision(2)))} designs a second`;
  return `| ${name} | ${grouped(designs)} | ${cost} | ${figures(ratio)} | |`;
}

function keptRow(name: string, bytes: number, base: number): string {
  return `| ${name} | | ${grouped(Math.round(bytes))} B | ${figures(bytes / base)} | |`;
}

function leftRow(name: string, designs: number, left: number): string {
  const bytes = `${grouped(Math.round(left))} B`;
  return `| ${name} | ${grouped(designs)} | ${bytes} | | ${judged("flat", left <= FLAT)} |`;
}

function entryRow({ name, gzipped, load, ratio }: Entry): string {
  const size = `${(gzipped / 1000).toFixed(1)} kB`;
  const goal = atMost(ratio, MOST_LOAD);
  return `| \`${name}\` | | ${size}, ${load.toFixed(1)} ms to load | ${figures(ratio)} | ${goal} |`;
}

function timeOf(ns: number): string {
  if (ns >= 1e6) return `${figures(ns / 1e6)} ms`;
  return ns >= 1e4 ? `${figures(ns / 1e3)} µs` : `${figures(ns)} ns`;
}

/** Two figures, or all before the point. */
function figures(value: number): string {
  if (!(value > 0)) return String(value);
  const digits = Math.max(0, 1 - Math.floor(Math.log10(value)));
  return grouped(Number(value.toFixed(digits)));
}

function grouped(value: number): string {
  return value.toLocaleString("en-US", { maximumFractionDigits: 6 });
}
