/** Where lines cross, by a library: mathjs `intersect`. */
import { intersect } from "mathjs";
import type { Spot } from "./fan.js";

/** Where two lines cross, by the library; each through two points. */
export function crossing(a: Spot, b: Spot, c: Spot, d: Spot): Spot {
  const found: unknown = intersect([...a], [...b], [...c], [...d]);
  if (!Array.isArray(found)) throw new Error("parallel lines");
  const [along, offset]: unknown[] = found;
  return [Number(along), Number(offset)];
}

/** Where a line meets the centre line. */
export function onCentre(a: Spot, b: Spot): Spot {
  return crossing(a, b, [0, 0], [1, 0]);
}
