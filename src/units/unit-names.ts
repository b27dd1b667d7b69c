/** The units of length that a builder writes, and every way to write them. */
import { measuredBy } from "./mathjs.js";

/** `unit` is its name in mathjs, and the one used in messages. */
const UNITS = [
  { unit: "mm", names: ["mm", "millimeter", "millimeters", "millimetre", "millimetres"] },
  { unit: "cm", names: ["cm", "centimeter", "centimeters", "centimetre", "centimetres"] },
  { unit: "m", names: ["m", "meter", "meters", "metre", "metres"] },
  // the marks: quotation mark, double prime, curly quotation mark, and each as two single ones
  { unit: "in", names: ["in", "in.", "inch", "inches", '"', "″", "”", "''", "′′", "’’"] },
  { unit: "ft", names: ["ft", "ft.", "foot", "feet"] },
] as const;

/** The units, for a message. */
export const KNOWN_UNITS = "mm, cm, m, in or ft";

/** The mathjs name of a unit as written, or undefined. */
export function unitNamed(word: string): string | undefined {
  // capitals are read as small letters, but never into another unit: "Mm" is a megametre
  return find(word) ?? (measuredBy(word) === undefined ? find(word.toLowerCase()) : undefined);
}

/** What was expected in place of a word that names no unit here. */
export function unitExpected(word: string): string {
  const measured = measuredBy(word);
  return measured === undefined || measured === "length"
    ? `a length in ${KNOWN_UNITS}, with nothing else after the number`
    : `a length in ${KNOWN_UNITS} ("${word}" is a unit of ${measured})`;
}

function find(word: string): string | undefined {
  return UNITS.find(({ names }) => names.some((name) => name === word))?.unit;
}
