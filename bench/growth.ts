/** How the time for a design changes with how many there are. */
import { checkMany, type Design, sweep } from "../src/index.js";
import { newRows } from "./bare.js";
import { axesOf, type Grid, neckAt, randomNecks, sizeOf } from "./necks.js";
import { interleaved, type Rival, type Timed } from "./timing.js";
import { endsGrid } from "./windows.js";

/** Sweeps over both ends of a compound radius, of 10⁴ to 10⁶ combinations; short ones are repeated until as many are done. */
export function sweepGrowth(rounds: number, counts: readonly number[]): Timed[] {
  const grids = counts.map(endsGrid);
  const most = Math.max(...grids.map(sizeOf));
  const out = newRows(most);
  const rivals = grids.map((grid: Grid): Rival => {
    const axes = Array.from({ length: 7 }, (_, turn) => axesOf(grid, turn));
    const size = sizeOf(grid);
    const run = (turn: number) => sweep(grid.design, axes[turn % 7] ?? {}, { out }).size;
    return {
      name: `\`sweep\` of ${size.toLocaleString("en-US")}`,
      run,
      repeats: Math.min(100, Math.round(most / size)),
    };
  });
  return interleaved(rivals, rounds);
}

/** Streams of designs, each made when it is asked for. */
export function streamGrowth(rounds: number, sizes: readonly number[]): Timed[] {
  const necks = randomNecks(1000, 5);
  function* source(count: number): Generator<Design> {
    for (let i = 0; i < count; i++) yield neckAt(necks, i % 1000);
  }
  const rivals = sizes.map((size): Rival => {
    const run = () => {
      let count = 0;
      for (const { report } of checkMany(source(size))) if (report) count++;
      return count;
    };
    return {
      name: `\`checkMany\` over ${size.toLocaleString("en-US")}`,
      run,
      repeats: Math.min(10, Math.max(...sizes) / size),
    };
  });
  return interleaved(rivals, rounds);
}
