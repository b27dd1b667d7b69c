/**
 * Measures what checks and sweeps cost, as ratios to bare loops that write the same numbers, and prints one Markdown
 * table. It goes to bench/results.json and, between the markers, into docs/batch.md. Run from the repository's root;
 * `--quick` does a little of everything and writes nothing; `--part NAME` measures one part and keeps the others as they
 * stand; `--cpu` counts processor time, for a machine that is not quiet.
 */
import { chanceRivals } from "./chance.js";
import { measureEntries, packages } from "./entries.js";
import { streamGrowth, sweepGrowth } from "./growth.js";
import { measureJobs } from "./jobs.js";
import { measureMemory } from "./memory.js";
import { checkReports, reportRivals } from "./reports.js";
import { frontierRivals, remedyRivals } from "./seeking.js";
import { machine, readResults, rounded, tableOf, write } from "./table.js";
import { interleaved, type Timed } from "./timing.js";
import {
  checkWindows,
  compoundGrid,
  endsGrid,
  hoistedRival,
  singleGrid,
  slowRivals,
  sweepRivals,
} from "./windows.js";

const QUICK = {
  grid: 10,
  ends: 30,
  few: 2,
  reports: 50,
  rounds: 3,
  frontier: 10,
  sizes: [10, 30],
  memory: [30, 100],
  stream: [100, 1000],
  kept: 500,
  streamed: 2000,
  loads: 3,
  lines: 500,
} as const;
const FULL = {
  grid: 100,
  ends: 1000,
  few: 30,
  reports: 2000,
  rounds: 5,
  frontier: 50,
  sizes: [100, 316, 1000],
  memory: [100, 1000],
  stream: [1000, 5000, 10_000],
  kept: 2000,
  streamed: 20_000,
  loads: 9,
  lines: 32_000,
} as const;

const quick = process.argv.includes("--quick");
const plan = quick ? QUICK : FULL;
/** The slow ways are timed over fewer combinations, in rounds of their own with the bare loop as their base. */
function singleTimes(): Timed[] {
  const repeats = quick ? 5 : 1;
  const grid = singleGrid(plan.grid);
  const rivals = sweepRivals(grid, repeats);
  const fast = interleaved([...rivals, hoistedRival(grid, repeats)], plan.rounds);
  const base = rivals[0];
  if (base === undefined) throw new Error("no base");
  const slow = interleaved([base, ...slowRivals(grid, plan.few)], Math.min(plan.rounds, 5));
  return [...fast, ...slow.slice(1)];
}

/** Each part of the results, and how it is measured. */
const PARTS = {
  single: singleTimes,
  compound: () => interleaved(sweepRivals(compoundGrid(plan.grid)), plan.rounds),
  ends: () => interleaved(sweepRivals(endsGrid(plan.ends)), plan.rounds),
  reports: () => interleaved(reportRivals(plan.reports), plan.rounds),
  frontiers: () => interleaved(frontierRivals(plan.frontier), plan.rounds),
  chance: () => interleaved(chanceRivals(), Math.min(plan.rounds, 3)),
  remedies: () => interleaved(remedyRivals(), Math.min(plan.rounds, 7)),
  sweepGrowth: () => sweepGrowth(Math.min(plan.rounds, 5), plan.sizes),
  streamGrowth: () => streamGrowth(Math.min(plan.rounds, 3), plan.stream),
  jobs: () => measureJobs(plan.rounds, plan.lines),
  memory: () => measureMemory(plan.kept, plan.memory, plan.streamed),
  entries: () => measureEntries(plan.loads),
  packages,
};

const wanted = argument("--part");
if (wanted !== undefined && !Object.hasOwn(PARTS, wanted)) throw new Error(`no part ${wanted}`);
const measured: Record<string, unknown> =
  wanted === undefined
    ? {
        date: new Date().toISOString().slice(0, 10),
        machine: machine(),
        compared: checkWindows(10, 12) + checkReports(50),
      }
    : {};
for (const [name, measure] of Object.entries(PARTS)) {
  if (wanted === undefined || wanted === name) measured[name] = await measure();
}
const results = rounded({ ...readResults(), ...measured });
const table = tableOf(results);
console.log(table);
if (!quick) write(results, table);

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(name);
  return at < 0 ? undefined : process.argv[at + 1];
}
