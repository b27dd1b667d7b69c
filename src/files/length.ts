/**
 * Reads a length written in a design file, without mathjs: its 16 kB are more than the rest of this entry.
 * It agrees with `length` of the units entry, text for text; a test holds the two against each other.
 */
import { nearestNumber } from "../units/nearest-number.js";
import { scanQuantity } from "../units/scan.js";

/** A unit, with a pattern of every way that a builder writes it; in mm it is numerator / denominator. */
interface Unit {
  readonly written: string;
  readonly numerator: bigint;
  readonly denominator: bigint;
}

// 1 in = 25.4 mm exactly (NIST SP 811, memory)
const UNITS: readonly Unit[] = [
  { written: "mm|millimet(?:er|re)s?", numerator: 1n, denominator: 1n },
  { written: "cm|centimet(?:er|re)s?", numerator: 10n, denominator: 1n },
  { written: "m|met(?:er|re)s?", numerator: 1000n, denominator: 1n },
  // the marks: quotation mark, double prime, curly quotation mark, and each as two single ones
  { written: "in[.]?|inch(?:es)?|[\"″”]|''|′′|’’", numerator: 127n, denominator: 5n },
  { written: "ft[.]?|foot|feet", numerator: 1524n, denominator: 5n },
];

/** Capitals are read as small letters, but not into another unit: a megametre, a femtotesla. */
const OTHER_UNITS: readonly string[] = ["Mm", "fT"];

/**
 * The length in mm, or what was expected in its place.
 *
 * @param text one number and one unit, as "1 1/2 in"; a decimal number without a unit is mm
 */
export function lengthIn(text: string): number | string {
  const quantity = scanQuantity(text);
  if (typeof quantity === "string") return quantity;
  const { numerator, denominator, unit, isFraction } = quantity;
  if (unit === "" && isFraction) return 'a unit after a fraction, as in "1/4 in"';
  const known = unitNamed(unit === "" ? "mm" : unit);
  if (known === undefined) return "a length in mm, cm, m, in or ft, with nothing else after it";
  return nearestNumber(numerator * known.numerator, denominator * known.denominator);
}

function unitNamed(word: string): Unit | undefined {
  if (OTHER_UNITS.includes(word)) return undefined;
  return UNITS.find(({ written }) => new RegExp(`^(?:${written})$`, "i").test(word));
}

/**
 * A pattern that every length of 0 or more fits, for editors; with `sign` those of either sign. It lets a few more
 * through: what it cannot tell is a size out of range, a denominator of 0, and `Mm`.
 */
export function lengthPattern(sign = "[+]"): string {
  const character = "[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]";
  const stroke = "[0-9]+[/⁄][0-9]+";
  const fraction = `(?:[0-9]+(?:\\s+|-))?${stroke}|(?:[0-9]+(?:\\s+|-)?)?${character}`;
  const decimal = "(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?";
  const unit = UNITS.map(({ written }) => caseless(written)).join("|");
  return `^\\s*${sign}?(?:(?:${fraction}|${decimal})\\s*(?:${unit})|${decimal})\\s*$`;
}

/** The pattern for small letters and capitals, since a JSON Schema has no flags. */
function caseless(pattern: string): string {
  return pattern.replace(/[a-z]/g, (letter) => `[${letter}${letter.toUpperCase()}]`);
}
