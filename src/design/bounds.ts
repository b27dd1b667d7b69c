/** What a number may be: the bounds that many share, and the words for a number's own. */
import type { NumberKind } from "./kinds.js";

/** The sizes of a length, mm; 0 besides, where there may be none. */
export const LENGTHS = { least: 1e-12, most: 1e12 } as const;

/** The most frets, fret numbers of a group, places and corners. */
export const MANY = 250;

/** The number lies within its bounds. */
export function accepts(kind: NumberKind, value: number): boolean {
  if (value === Infinity && kind.kind === "radius") return true;
  if (value === 0 && kind.orZero) return true;
  if (!(value >= kind.least && value <= kind.most)) return false;
  if (value === kind.most && kind.below) return false;
  return Number.isInteger(value) || !kind.whole;
}

/** What is expected of a number. */
export function describeExpected(kind: NumberKind): string {
  const { least, most } = kind;
  const range = `(${least.toExponential()} to ${most.toExponential()} mm)`;
  switch (kind.kind) {
    case "length":
      return `a length of ${kind.orZero ? "0 mm or more" : "more than 0 mm"} ${range}`;
    case "radius":
      return `a radius of more than 0 mm ${range}, or "flat"`;
    case "position":
      return `a number of mm (${least.toExponential()} to ${most.toExponential()})`;
    case "angle":
      return `an angle from ${least} to ${most} degrees`;
    case "fraction":
      return `a fraction of ${least} or more and less than ${most}`;
    case "count":
      return kind.whole
        ? `a whole number from ${least} to ${most}`
        : `a fret from ${least} (the nut) to ${most}, fractions allowed`;
    case "fret":
      return `a whole number from ${least} to ${most}`;
    case "factor":
      return `a number from ${least} to ${most}`;
  }
}
