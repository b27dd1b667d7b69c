/** The common window by brute force: the removal at many points of each hole's disc. */
import type { Rows } from "./bare.js";
import { HOLES, type SweptColumns } from "./necks.js";

const RINGS = 16;
const ANGLES = 64;
const UNIT = Array.from({ length: RINGS * ANGLES }, (_, k) => {
  const [ring, turn] = [1 + Math.floor(k / ANGLES), k % ANGLES];
  return (ring / RINGS) * Math.cos((2 * Math.PI * turn) / ANGLES);
});
/** Points across the disc of radius 1: how far outward each lies. One board's removal hangs on that alone. */
const OUTWARD = Float64Array.from(UNIT);

export const SAMPLES = OUTWARD.length;

/** The first `count` rows; `offsets` are the holes' distances from the centre line. */
export function sampledWindows(
  { nut: radius, thickness, diameter }: SweptColumns,
  offsets: ArrayLike<number>,
  count: number,
  out: Rows,
): number {
  for (let i = 0; i < count; i++) {
    const R = radius[i] as number;
    let min = -Infinity;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = offsets[hole] as number;
      const reach = (aside === 0 ? 6.35 : (diameter[i] as number)) / 2 + 0.25;
      // the crest may lie half a millimetre aside
      const least = 0.15 + 0.05 + greatestOver(R, aside + 0.5, reach) + 0.8 + 0.1 + 0.1 + 1;
      if (!(least > min)) continue;
      min = least;
      out.minHole[i] = hole;
    }
    const max = (thickness[i] as number) - 0.1 - 0.1 - 1;
    out.min[i] = min;
    out.max[i] = max;
    out.maxHole[i] = 0;
    out.settings[i] = min <= max ? 1 : 0;
  }
  return count;
}

function greatestOver(R: number, aside: number, reach: number): number {
  let greatest = 0;
  for (let k = 0; k < SAMPLES; k++) {
    const x = aside + reach * (OUTWARD[k] as number);
    const h = (x * x) / (R + Math.sqrt(R * R - x * x));
    if (h > greatest) greatest = h;
  }
  return greatest;
}
