/** Medians of interleaved runs. */

/** One way to do the work. */
export interface Rival {
  readonly name: string;
  /** Does the work once, on other inputs for another turn; tells how many designs that were. */
  readonly run: (turn: number) => number;
  /** How often in one timed run; short work is repeated so that the clock can tell. */
  readonly repeats?: number;
}

/** What was measured of a rival. */
export interface Timed {
  readonly name: string;
  /** Designs in one timed run. */
  readonly designs: number;
  /** How many timed runs the medians are of. */
  readonly runs: number;
  /** Median of the runs, ns for a design. */
  readonly ns: number;
  /** Median of the ratios to the first rival in the same round. */
  readonly ratio: number;
}

/** Runs all rivals in turn, round after round, each round in another order; the first is the base of the ratios. */
export function interleaved(
  rivals: readonly Rival[],
  rounds: number,
  clock: Clock = CLOCK,
): Timed[] {
  const times = rivals.map((): number[] => []);
  const designs = rivals.map(() => 0);
  // two rounds more, to be thrown away: the compiler warms up
  for (let turn = -2; turn < rounds; turn++) {
    for (let k = 0; k < rivals.length; k++) {
      const i = (k + turn + 2) % rivals.length;
      const { ns, count } = timed(rivals[i] as Rival, turn + 2, clock);
      designs[i] = count;
      if (turn >= 0) times[i]?.push(ns);
    }
  }
  const base = times[0] ?? [];
  return rivals.map(({ name }, i) => {
    const own = times[i] ?? [];
    const ratios = own.map((ns, turn) => ns / (base[turn] as number));
    return {
      name,
      designs: designs[i] as number,
      runs: own.length,
      ns: median(own),
      ratio: median(ratios),
    };
  });
}

/** One timed run: ns for a design. */
function timed({ run, repeats = 1 }: Rival, turn: number, clock: Clock) {
  const start = now(clock);
  let count = 0;
  for (let k = 0; k < repeats; k++) count += run(turn * repeats + k);
  return { ns: (now(clock) - start) / count, count };
}

type Clock = "wall" | "processor";

/** Processor time on request, for a machine that has other work; it counts the collector's threads too. */
export const CLOCK: Clock = process.argv.includes("--cpu") ? "processor" : "wall";

function now(clock: Clock): number {
  if (clock === "wall") return performance.now() * 1e6;
  const { user, system } = process.cpuUsage();
  return (user + system) * 1e3;
}

/** The middle value; of an even count the mean of both. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const low = sorted[Math.ceil(half) - 1];
  const high = sorted[Math.floor(half)];
  if (low === undefined || high === undefined) throw new Error("no values, no median");
  return (low + high) / 2;
}
