/** The finished surface of a neck in the worst cases of its tolerances, sampled. Lengths in mm. */
import { DEFAULTS, type Design } from "../../src/index.js";
import { bends, profileValue, surfaceOf } from "../properties/oracle.js";
import type { Fan, Spot } from "./fan.js";

export type Tolerances = Required<NonNullable<Design["tolerance"]>>;

export function tolerancesOf({ tolerance }: Design): Tolerances {
  return {
    stop: tolerance?.stop ?? DEFAULTS.stopTolerance.value,
    layout: tolerance?.layout ?? DEFAULTS.layoutTolerance.value,
    thickness: tolerance?.thickness ?? DEFAULTS.thicknessTolerance.value,
    crown: tolerance?.crown ?? DEFAULTS.crownTolerance.value,
    radius: tolerance?.radius ?? DEFAULTS.radiusTolerance.value,
  };
}

/** Removal at a point at its most and at its least, where profiles bend on either side. */
export function worstCases(design: Design, { layout }: Fan) {
  const { radius, crown = DEFAULTS.crown.value } = design;
  const by = tolerancesOf(design);
  const most = surfaceOf(radius, crown, layout, { crown: by.crown, radius: 1 - by.radius });
  const least = surfaceOf(radius, crown, layout, { crown: -by.crown, radius: 1 + by.radius });
  return {
    most: ([along, offset]: Spot) => most(along, offset).greatest,
    least: ([along, offset]: Spot) => least(along, offset).least,
  };
}

/** Where the radius or the crown bends, also where the crown less its tolerance meets zero, between two places. */
export function bendsWithin(design: Design, { layout }: Fan, from: number, to: number): number[] {
  const { radius, crown = DEFAULTS.crown.value } = design;
  const knots = [...bends(radius, layout), ...bends(crown, layout)];
  const { crown: by } = tolerancesOf(design);
  const ends = [from, ...bends(crown, layout), to].sort((a, b) => a - b);
  const floors = ends.slice(1).map((b, i) => {
    const a = ends[i] ?? b;
    const [atA, atB] = [a, b].map((s) => profileValue(crown, layout, s) - by);
    return a + ((b - a) * (atA ?? 0)) / ((atA ?? 0) - (atB ?? 0));
  });
  return [...knots, ...floors].filter((s) => from < s && s < to);
}

/** Points on the line from a to b, both ends among them. */
export function pointsBetween(a: Spot, b: Spot, count: number): Spot[] {
  return Array.from({ length: count + 1 }, (_, i): Spot => {
    const t = i / count;
    return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  });
}

/** The point of the line from a to b that lies so far along. */
export function pointAt(a: Spot, b: Spot, along: number): Spot {
  return [along, a[1] + ((along - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
}

/** Thickness least and greatest between two places. */
export function thicknessOver(design: Design, { layout }: Fan, from: number, to: number) {
  const { thickness } = design.board;
  const knots = bends(thickness, layout).filter((s) => from < s && s < to);
  const values = [from, to, ...knots].map((s) => profileValue(thickness, layout, s));
  return { least: Math.min(...values), most: Math.max(...values) };
}
