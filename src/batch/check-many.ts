/** Checks of many designs, one after the other, in constant memory. */
import type { Design } from "../design/design.js";
import { refused, tryRead } from "../errors/errors.js";
import { checkDesign, type Report } from "../report/report.js";

/** What came of one design: its report, or the error that it was refused with. */
export type Checked =
  | {
      /** Which of the designs it is, from 0. */
      readonly index: number;
      /** What the check found. */
      readonly report: Report;
      readonly error?: undefined;
    }
  | {
      /** Which of the designs it is, from 0. */
      readonly index: number;
      readonly report?: undefined;
      /** Why it was refused: a DesignError, or what its own getters threw. */
      readonly error: Error;
    };

/**
 * Checks any number of designs, in order and one at a time: nothing is kept of those that went before.
 *
 * A design that cannot be read yields its error with its index, and stops nothing. An error of the source itself
 * (a stream that breaks off) is thrown on.
 *
 * @param designs designs, from anything that can be iterated, a stream of them too
 * @returns an iterator of results, asynchronous where the source is
 * @throws RangeError where `designs` cannot be iterated
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const results = [...checkMany([design, { ...design, radius: -1 }])];
 * results[0].report.ok // true
 * results[1].error.name // "DesignError"
 */
export function checkMany(designs: Iterable<Design>): Generator<Checked, void, undefined>;
/**
 * The same over a stream.
 *
 * @param designs a stream of designs
 * @returns an asynchronous iterator of results
 * @throws RangeError where `designs` cannot be iterated
 * @example
 * const stream = (async function* () {})();
 * typeof checkMany(stream)[Symbol.asyncIterator] // "function"
 */
export function checkMany(designs: AsyncIterable<Design>): AsyncGenerator<Checked, void, undefined>;
export function checkMany(
  designs: Iterable<Design> | AsyncIterable<Design>,
): Generator<Checked, void, undefined> | AsyncGenerator<Checked, void, undefined> {
  const has = (symbol: symbol) =>
    tryRead("designs", designs, () => isObject(designs) && symbol in designs);
  if (has(Symbol.asyncIterator)) return checkStream(designs as AsyncIterable<Design>);
  if (has(Symbol.iterator) || typeof designs === "string") {
    return checkEach(designs as Iterable<Design>);
  }
  throw refused("designs", designs, "something that can be iterated");
}

function* checkEach(designs: Iterable<Design>): Generator<Checked, void, undefined> {
  let index = 0;
  for (const design of designs) yield checkOne(design, index++);
}

async function* checkStream(
  designs: AsyncIterable<Design>,
): AsyncGenerator<Checked, void, undefined> {
  let index = 0;
  for await (const design of designs) yield checkOne(design, index++);
}

function checkOne(design: Design, index: number): Checked {
  try {
    return { index, report: checkDesign(design) };
  } catch (error) {
    return { index, error: error instanceof Error ? error : new Error(String(error)) };
  }
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
