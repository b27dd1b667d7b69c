/** Writes a design file. */
import type { Design } from "../design/design.js";
import { DESIGN } from "../design/fields.js";
import { type Field, fieldUnder, type NumberKind, type ObjectKind } from "../design/kinds.js";
import { DesignError, refused, tryRead } from "../errors/errors.js";
import { INCH, nearestFraction } from "../text/length-text.js";
import { type Quantity, scanQuantity } from "../units/scan.js";
import { lengthIn } from "./length.js";
import { readWhole } from "./read-whole.js";

/** How a design is written. */
export interface WriteOptions {
  /** Lengths as numbers of mm, or as texts such as "1/4 in". */
  readonly unit?: "mm" | "in" | undefined;
}

/**
 * Writes a design as JSON text, which `readDesign` reads back to an equal design: every number comes back to the last
 * bit, a flat radius is "flat". Keys keep their order; fields that are undefined are left out.
 *
 * In inches a length is a fraction to the 1/64 where that is exact, else the shortest decimal that comes back to it.
 *
 * @param design the neck, lengths in mm
 * @param options `unit`: "mm" where left out
 * @returns the file's text, ended by a line feed
 * @throws DesignError where `checkDesign` would refuse the design; RangeError for another unit
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 647.7, frets: 22 },
 *   board: { length: 508, width: 50.8, thickness: 6.35 },
 *   radius: Infinity,
 *   markers: [{ frets: [3, 5, 7], diameter: 6 }],
 * };
 * const lines = writeDesign(design, { unit: "in" }).split("\n");
 * lines[1] // '  "scale": { "length": "25 1/2 in", "frets": 22 },'
 * lines[3] // '  "radius": "flat",'
 * readDesign(writeDesign(design)).board.thickness // 6.35
 */
export function writeDesign(design: Design, options: WriteOptions = {}): string {
  const { unit = "mm" } = tryRead("options", options, () => ({ ...options }));
  if (unit !== "mm" && unit !== "in") throw refused("unit", unit, '"mm" or "in"');
  const { issues } = readWhole(design);
  if (issues.length > 0) throw new DesignError(issues);
  const write = unit === "in" ? inInches : (mm: number) => mm;
  return `${layOut(written(DESIGN, design, write), "", 0)}\n`;
}

/** A length as a file holds it. */
type WriteLength = (mm: number) => number | string;

/** As a fraction where that is exact, else as the shortest decimal that comes back. */
function inInches(mm: number): number | string {
  if (mm === 0) return 0;
  const fraction = `${nearestFraction(mm / INCH, 64)} in`;
  if (lengthIn(fraction) === mm) return fraction;
  for (let places = 1; places <= MOST_PLACES; places++) {
    const decimal = `${inchDecimal(mm, places)} in`;
    if (lengthIn(decimal) === mm) return decimal;
  }
  return mm;
}

const MOST_PLACES = 40;

/** Inches to so many decimals, by the decimals of the mm: 1 in = 25.4 mm = 127/5 mm. */
function inchDecimal(mm: number, places: number): string {
  const { numerator, denominator } = scanQuantity(String(Math.abs(mm))) as Quantity;
  const halves = (numerator * 10n ** BigInt(places + 1)) / (127n * denominator);
  const digits = String((halves + 1n) / 2n).padStart(places + 1, "0");
  return `${mm < 0 ? "-" : ""}${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/** A part of a design, as JSON holds it. */
function written(field: Part | undefined, value: unknown, write: WriteLength): unknown {
  if (value === Infinity) return "flat";
  if (typeof value === "number") return isLength(field) ? write(value) : value;
  if (Array.isArray(value))
    return value.map((item) => written(fieldUnder(field, "0"), item, write));
  if (typeof value !== "object" || value === null) return value;
  const stated = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return Object.fromEntries(
    stated.map(([key, inner]) => [key, written(fieldUnder(field, key), inner, write)]),
  );
}

type Part = Field | NumberKind | ObjectKind;

function isLength(field: Part | undefined): boolean {
  const kind = field && "of" in field ? field.of : field;
  return kind !== undefined && "unit" in kind && kind.unit === "mm";
}

/** The columns of a line. */
const WIDTH = 100;

/** JSON text: what fits on a line stands on one. */
function layOut(value: unknown, indent: string, before: number): string {
  const line = onOneLine(value);
  const isTop = before === 0;
  if (typeof value !== "object" || value === null || (!isTop && before + line.length <= WIDTH)) {
    return line;
  }
  const isList = Array.isArray(value);
  const inner = `${indent}  `;
  const items = Object.entries(value).map(([key, item]) => {
    const start = isList ? inner : `${inner}${JSON.stringify(key)}: `;
    return start + layOut(item, inner, start.length + 1);
  });
  const [open, close] = isList ? ["[", "]"] : ["{", "}"];
  return `${open}\n${items.join(",\n")}\n${indent}${close}`;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const items = Object.entries(value).map(
    ([key, item]) => `${JSON.stringify(key)}: ${onOneLine(item)}`,
  );
  return `{ ${items.join(", ")} }`;
}
