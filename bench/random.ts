/** Random numbers that come out the same in every run. */
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";

/** Numbers from `from` to `to`, by the Mersenne Twister. */
export function seeded(seed: number): (from: number, to: number) => number {
  const generator = mersenne(seed);
  return (from, to) => from + (to - from) * uniformFloat64(generator);
}
