/** How the time for a design changes with how many there are. */
import { checkMany, type Design, sweep } from "../src/index.js";
import { newRows } from "./bare.js";
import { axesOf, neckAt, randomNecks, SWEPT } from "./necks.js";
import { interleaved, type Rival, type Timed } from "./timing.js";

const GRIDS = [
  [10, 10, 10],
  [20, 20, 25],
  [40, 50, 50],
  [100, 100, 100],
] as const;

/** Sweeps of 10³ to 10⁶ combinations; short ones are repeated until as many are done. */
export function sweepGrowth(rounds: number, sizes: number): Timed[] {
  const grids = GRIDS.slice(0, sizes);
  const most = Math.max(...grids.map((counts) => counts[0] * counts[1] * counts[2]));
  const out = newRows(most);
  const rivals = grids.map((counts): Rival => {
    const axes = Array.from({ length: 7 }, (_, turn) => axesOf(counts, turn));
    const size = counts[0] * counts[1] * counts[2];
    const run = (turn: number) => sweep(SWEPT, axes[turn % 7] ?? {}, { out }).size;
    return {
      name: `\`sweep\` of ${size.toLocaleString("en-US")}`,
      run,
      repeats: Math.min(100, most / size),
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
