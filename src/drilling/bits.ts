/** How far parts of a drill bit lead its rim. Lengths in mm. */
import type { BitSpec } from "../design/spec.js";

/**
 * Lead: how far the bit's lowest part leads its rim. A point's own length for a Forstner or brad-point
 * bit, (D/2) / tan(angle/2) for a twist bit's cone, nothing for an end mill.
 */
export function leadOf(bit: BitSpec, diameter: number): number {
  return leadWithin(bit, diameter, 0);
}

/**
 * How far the bit leads its rim at `distance` from its axis or farther out: the cone tapers, a point
 * stands on the axis alone. Undefined where the bit does not reach so far.
 */
export function leadBeyond(bit: BitSpec, diameter: number, distance: number): number | undefined {
  return distance < diameter / 2 ? leadWithin(bit, diameter, distance) : undefined;
}

function leadWithin(bit: BitSpec, diameter: number, distance: number): number {
  if (bit.kind === "end-mill") return 0;
  if (bit.kind === "twist") {
    return (diameter / 2 - distance) / Math.tan((bit.angle * Math.PI) / 360);
  }
  return distance === 0 ? bit.point : 0;
}
