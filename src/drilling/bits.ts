/** How far parts of a bit go below the floor that it cuts. Lengths in mm. */
import type { BitSpec } from "../design/spec.js";

/**
 * Lead: how far the tip, the bit's lowest part, lies below the floor. A point's own length for a Forstner or brad-point
 * bit, (D/2) / tan(angle/2) for a twist bit's cone, nothing for an end mill.
 */
export function measureLead(bit: BitSpec, diameter: number): number {
  if (bit.kind === "end-mill") return 0;
  if (bit.kind === "twist") return diameter / 2 / Math.tan((bit.angle * Math.PI) / 360);
  return bit.point;
}

/** How far the rim or the spurs cut below the floor. */
export function measureSpur(bit: BitSpec): number {
  return "spur" in bit ? bit.spur : 0;
}

/** The error of the point's length, which a bit without a lead does not have. */
export function pointError(lead: number, error: number): number {
  return lead > 0 ? error : 0;
}

/**
 * The most that parts at a distance from the axis, or farther out, go below the floor, where the point may be longer or
 * shorter than stated by `error`: the tip is held by the stop, the floor is not. Undefined where the bit does not reach
 * so far out.
 */
export function dropBeyond(
  bit: BitSpec,
  diameter: number,
  distance: number,
  error: number,
): number | undefined {
  const body = bodyBeyond(bit, diameter, distance, error);
  return body === undefined || distance > 0 ? body : Math.max(measureLead(bit, diameter), body);
}

/** The same for all of the bit but a point that stands on its axis. */
export function bodyBeyond(
  bit: BitSpec,
  diameter: number,
  distance: number,
  error: number,
): number | undefined {
  if (!(distance < diameter / 2)) return undefined;
  const lead = measureLead(bit, diameter);
  const off = pointError(lead, error);
  if (bit.kind !== "twist") return measureSpur(bit) + off;
  return Math.max(lead - coneSlope(bit, diameter, error) * distance, off);
}

/** How much a twist bit's cone rises per mm from its axis at the least, its point so much shorter than stated. */
export function coneSlope(bit: BitSpec, diameter: number, error: number): number {
  return (2 * (measureLead(bit, diameter) - error)) / diameter;
}
