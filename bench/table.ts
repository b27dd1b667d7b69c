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
  readonly windows: readonly Timed[];
  readonly reports: readonly Timed[];
  readonly sweepGrowth: readonly Timed[];
  readonly streamGrowth: readonly Timed[];
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
  const { windows, reports, memory, entries } = results;
  const lines = [
    `Measured on ${results.date}: ${results.machine}, ${CLOCK} time. ${grouped(results.compared)} numbers agreed with the bare loops first.`,
    "",
    "| what | designs in a run | for each design | ratio | goal |",
    "|---|--:|--:|--:|--:|",
    heading("The common window of a sweep: min, max, who governs, settings", "to the bare loop"),
    ...windows.map((row) => timedRow(row, GOALS[row.name])),
    heading("Every number of a report's holes, edges and stops", "to the bare loop"),
    ...reports.map((row) => timedRow(row, GOALS[row.name])),
    heading("Growth", "to the fewest designs"),
    ...[...results.sweepGrowth, ...results.streamGrowth].map(growthRow),
    heading("Memory", "to columns"),
    keptRow("kept as columns", memory.column, memory.column),
    keptRow("kept as reports", memory.report, memory.column),
    streamRow(memory),
    heading("Entries, with all that they import", "minified and gzipped"),
    ...entries.map(entryRow),
    `| packages that an installation brings along | | ${results.packages} | | ${atMost(results.packages, 0)} |`,
  ];
  return lines.join("\n");
}

const GOALS: Readonly<Record<string, number>> = {
  "`sweep`, columns used again": 1.5,
  "`sweep`, new columns": 1.5,
  "`checkDesign`": 8,
};
/** Growth that counts as linear: the time for a design, against that with the fewest. */
const LINEAR = 1.25;
/** Bytes for a design that count as none: the collector's own coming and going. */
const FLAT = 64;
const MOST_LOAD = 10;
const MOST_GZIPPED = 12_000;

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

function keptRow(name: string, bytes: number, base: number): string {
  return `| ${name} | | ${grouped(Math.round(bytes))} B | ${figures(bytes / base)} | |`;
}

function streamRow({ growth, streamed }: Memory): string {
  const goal = judged("flat", growth <= FLAT);
  const bytes = `${grouped(Math.round(growth))} B`;
  return `| left behind by \`checkMany\` | ${grouped(streamed)} | ${bytes} | | ${goal} |`;
}

function entryRow({ name, gzipped, load }: Entry): string {
  const isCore = !name.includes("/");
  const time = isCore ? judged(`≤ ${MOST_LOAD} ms`, load <= MOST_LOAD) : "";
  const size = isCore ? judged(`≤ ${MOST_GZIPPED / 1000} kB`, gzipped <= MOST_GZIPPED) : "";
  const goal = [time, size].filter((part) => part !== "").join(", ");
  const kilobytes = `${(gzipped / 1000).toFixed(1)} kB`;
  return `| \`${name}\` | | ${load.toFixed(1)} ms to load | ${kilobytes} | ${goal} |`;
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
