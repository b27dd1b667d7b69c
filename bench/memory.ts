/** What is kept of each design, and what many of them leave behind. */
import { checkDesign, checkMany, type Design, type Sweep, sweep } from "../src/index.js";
import { newRows } from "./bare.js";
import { axesOf, neckAt, randomNecks, sizeOf } from "./necks.js";
import { endsGrid } from "./windows.js";

/** What was measured, bytes. */
export interface Memory {
  /** Of columns, for each row kept. */
  readonly column: number;
  /** Of nested reports, for each one kept, its design let go. */
  readonly report: number;
  /** More in use after a large sweep into columns that were there than after a small one, for each row more. */
  readonly swept: number;
  /** How many rows the two sweeps had. */
  readonly sweeps: readonly [number, number];
  /** More heap in use after the last of many designs than after the first tenth, for each design between. */
  readonly growth: number;
  /** How many designs that was. */
  readonly streamed: number;
}

/** Both sweeps' axes have so many values each. */
export function measureMemory(
  kept: number,
  counts: readonly [number, number],
  streamed: number,
): Memory {
  return {
    column: columnBytes(),
    report: reportBytes(kept),
    ...sweptBytes(counts),
    growth: streamGrowth(streamed),
    streamed,
  };
}

function columnBytes(): number {
  const grid = endsGrid(300);
  sweep(grid.design, axesOf(grid, 1));
  const before = inUse();
  const rows: Sweep = sweep(grid.design, axesOf(grid, 0));
  const after = inUse();
  return (after - before) / rows.size;
}

/** What a sweep holds while its rows are at hand. */
function sweptBytes(counts: readonly [number, number]): Pick<Memory, "swept" | "sweeps"> {
  const grids = counts.map(endsGrid);
  const sizes = grids.map(sizeOf) as [number, number];
  const out = newRows(Math.max(...sizes));
  const held = grids.map((grid) => {
    const axes = axesOf(grid, 0);
    sweep(grid.design, axes, { out });
    const before = inUse();
    const rows = sweep(grid.design, axes, { out });
    const after = inUse();
    return rows.size > 0 ? after - before : Number.NaN;
  });
  const [small = 0, large = 0] = held;
  return { swept: (large - small) / (sizes[1] - sizes[0]), sweeps: sizes };
}

function reportBytes(count: number): number {
  const necks = randomNecks(count, 3);
  const check = (i: number) => checkDesign(neckAt(necks, i));
  check(0);
  const before = inUse();
  const reports = Array.from({ length: count }, (_, i) => check(i));
  const after = inUse();
  return (after - before) / reports.length;
}

/** Heap in use while `checkMany` still runs, its last report at hand. */
function streamGrowth(count: number): number {
  const necks = randomNecks(1000, 4);
  function* source(): Generator<Design> {
    for (let i = 0; i < count; i++) yield neckAt(necks, i % 1000);
  }
  const first = count / 10;
  let before = 0;
  let seen = 0;
  for (const { report } of checkMany(source())) {
    if (!report?.stops.common) throw new Error("the necks measured are to work");
    seen++;
    if (seen === first) before = inUse();
    if (seen === count) return (inUse() - before) / (count - first);
  }
  throw new Error(`${seen} designs of ${count}`);
}

/** Bytes in use, on the heap and in typed arrays, after what nobody holds has gone. */
function inUse(): number {
  if (globalThis.gc === undefined) throw new Error("run node with --expose-gc");
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
