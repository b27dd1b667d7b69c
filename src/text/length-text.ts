/** Lengths as a person at the bench reads them. The only place where lengths are rounded. */

/** 1 inch, in mm; exact (NIST SP 811). */
export const INCH = 25.4;

/** Writes a length, given in mm, for a reader. */
export type LengthWriter = (mm: number) => string;

/** What to set: how it is written, and the very length that is written, mm. */
export interface Figure {
  readonly text: string;
  readonly mm: number;
}

/** A unit that a card is written in. */
export interface Unit {
  /** Its name, for a heading. */
  readonly name: string;
  /** Its sign. */
  readonly short: "mm" | "in";
  /** A length without its unit, for a table. */
  readonly bare: LengthWriter;
  /** A length with its unit, for a sentence. */
  readonly full: LengthWriter;
  /** A least: never written smaller than it is. Without its unit. */
  readonly least: LengthWriter;
  /** A most: never written greater than it is. Without its unit. */
  readonly most: LengthWriter;
  /**
   * The two ends of a range, inside it, told apart from each other and from lengths beside them; of ends that clash, each
   * still on its safe side. Without their unit.
   */
  readonly range: (
    least: number,
    most: number,
    ...beside: readonly number[]
  ) => readonly [least: string, most: string];
  /** A value beside the limit that it misses: digits enough to tell them apart, each to its safe side. With its unit. */
  readonly beside: (value: number, limit: number) => readonly [value: string, limit: string];
  /** By how much a limit is missed: never written as nothing. With its unit. */
  readonly miss: LengthWriter;
  /** What to set, near a length and between two: what is written lies between them. Without its unit. */
  readonly set: (mm: number, least: number, most: number) => Figure;
  /** A bit's size, as bits are sold. Without its unit. */
  readonly bit: LengthWriter;
}

/** Millimetres to two decimals. */
export const MILLIMETRES: Unit = /* @__PURE__ */ makeUnit({
  name: "mm",
  short: "mm",
  size: 1,
  decimals: 2,
});

/** Inches to three decimals; what is set, and a bit, as a fraction where one serves. */
export const INCHES: Unit = /* @__PURE__ */ makeUnit({
  name: "inches",
  short: "in",
  size: INCH,
  decimals: 3,
  parts: 64,
});

/** How a unit is written. */
interface Writing extends Pick<Unit, "name" | "short"> {
  /** One of it, in mm. */
  readonly size: number;
  readonly decimals: number;
  /** The finest fraction of it that a rule shows. */
  readonly parts?: number;
}

function makeUnit({ name, short, size, decimals, parts }: Writing): Unit {
  const write = (value: number, digits = decimals) => {
    const text = fixed(value, digits);
    return parts === undefined ? text : text.replace(/^(-?)0\./, "$1.");
  };
  const both = ([a, b]: readonly [number, number], digits: number) =>
    [write(a, digits), write(b, digits)] as const;
  const full = (text: string) => `${text} ${short}`;
  const apart = (value: number, limit: number) => {
    const isTold = (d: number) => value.toFixed(d) !== limit.toFixed(d);
    const digits = value === limit ? decimals : digitsFor(decimals, isTold);
    return both(outward(value, limit, digits), digits);
  };
  const inside = (least: number, most: number, others: readonly number[]) => {
    const ends = (d: number): Pair => [notBelow(least, d), notAbove(most, d)];
    const isTold = (d: number) => {
      const [low, high] = ends(d);
      const isApart = (end: number, shown: number) =>
        others.every((at) => Math.abs(at - end) < TINY || write(at, d) !== write(shown, d));
      return low < high && isApart(least, low) && isApart(most, high);
    };
    const digits = least === most ? decimals : digitsFor(decimals, isTold);
    return both(ends(digits), digits);
  };
  return {
    name,
    short,
    bare: (mm) => write(mm / size),
    full: (mm) => full(write(mm / size)),
    least: (mm) => write(notBelow(mm / size, decimals)),
    most: (mm) => write(notAbove(mm / size, decimals)),
    range: (least, most, ...others) => {
      const [low, high] = [least / size, most / size];
      return low <= high
        ? inside(
            low,
            high,
            others.map((mm) => mm / size),
          )
        : apart(low, high);
    },
    beside: (value, limit) => {
      const [told, wanted] = apart(value / size, limit / size);
      return [full(told), full(wanted)];
    },
    miss: (mm) => {
      const missed = Math.abs(mm / size);
      const digits = missed === 0 ? decimals : digitsFor(decimals, (d) => missed >= 10 ** -d);
      return full(write(notBelow(missed, digits), digits));
    },
    set: (mm, least, most) => {
      const range = [least / size, most / size] as const;
      const fraction = parts && nearestWithin(mm / size, parts, range);
      const value = fraction ?? decimalWithin(mm / size, decimals, range);
      const digits = digitsFor(decimals, (d) => isWithin(Number(value.toFixed(d)), range));
      const text = write(value, digits);
      const mixed =
        fraction !== undefined && parts ? `${nearestFraction(fraction, parts)} (${text})` : text;
      return { text: mixed, mm: value * size };
    },
    bit: (mm) => {
      const value = mm / size;
      const isFraction = parts && Math.abs(value * parts - Math.round(value * parts)) < SOLD;
      return isFraction ? `${nearestFraction(value, parts)} (${write(value)})` : write(value);
    },
  };
}

/** The most decimals that a reader is asked to compare. */
const FINEST = 6;
/** How near a bit comes to the size that it is sold as, in the finest parts. */
const SOLD = 1e-3;
/** A step's rounding error, in steps: far below what a bench can hold. */
const TINY = 1e-9;

type Pair = readonly [number, number];

/** The fewest decimals that will do. */
function digitsFor(least: number, isEnough: (digits: number) => boolean): number {
  let digits = least;
  while (digits < FINEST && !isEnough(digits)) digits++;
  return digits;
}

/** A value and its limit, each rounded away from the other; where both would read alike, the limit by one step more. */
function outward(value: number, limit: number, digits: number): Pair {
  if (value > limit)
    return outward(-value, -limit, digits).map((each) => -each) as [number, number];
  const told = notAbove(value, digits);
  const wanted = notBelow(limit, digits);
  return [told, told === wanted && value < limit ? wanted + 10 ** -digits : wanted];
}

/** The next decimal at or above a length, so that a least is never read too small. */
export function notBelow(length: number, digits: number): number {
  const step = 10 ** -digits;
  return Number.isFinite(length) ? Math.ceil(length / step - TINY) * step : length;
}

/** The next decimal at or below a length, so that a most is never read too great. */
function notAbove(length: number, digits: number): number {
  return -notBelow(-length, digits);
}

/** The nearest whole number of parts that lies within a range; undefined where none does. */
function nearestWithin(value: number, parts: number, range: Pair): number | undefined {
  const near = [Math.round, Math.floor, Math.ceil].map((round) => round(value * parts) / parts);
  return near.find((each) => isWithin(each, range));
}

/** The value with the fewest decimals that keep it within a range; itself where none do. */
function decimalWithin(value: number, decimals: number, range: Pair): number {
  for (let digits = decimals; digits <= FINEST; digits++) {
    const near = nearestWithin(value, 10 ** digits, range);
    if (near !== undefined) return near;
  }
  return value;
}

function isWithin(value: number, [least, most]: Pair): boolean {
  return least - TINY <= value && value <= most + TINY;
}

/** A number to the nearest fraction, in lowest terms: “1 3/8”, “-5/64”, “0”. */
export function nearestFraction(value: number, denominator: number): string {
  const parts = Math.round(Math.abs(value) * denominator);
  const whole = Math.floor(parts / denominator);
  const rest = parts % denominator;
  const common = greatestCommonDivisor(rest, denominator);
  const fraction = rest === 0 ? "" : `${rest / common}/${denominator / common}`;
  const text = [whole > 0 ? String(whole) : "", fraction].filter(Boolean).join(" ") || "0";
  return value < 0 && text !== "0" ? `-${text}` : text;
}

/** Fixed decimals, without a minus before nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
