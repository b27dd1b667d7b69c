/** What the library finds for an expectation, and how far it lies from what was expected. Lengths in mm. */
import {
  checkDesign,
  type Design,
  diagonalCrossing,
  fretLines,
  fretPositions,
  holeWindow,
  profileAt,
  radiusFromSagitta,
  removalAt,
  sagitta,
  stopSettings,
} from "../../src/index.js";
import { length } from "../../src/units/index.js";
import type { Expectation } from "./format.js";
import type { Trial } from "./read.js";

/** One line of the table. */
export interface Row {
  readonly trial: string;
  readonly quantity: string;
  readonly expected: unknown;
  readonly found: unknown;
  /** Found less expected; undefined where they are no numbers. */
  readonly difference: number | undefined;
  /** How the expected value is known. */
  readonly mark: Trial["mark"];
  readonly passes: boolean;
  readonly remark: string;
}

type Block = (...args: readonly never[]) => unknown;

const BLOCKS: Readonly<Record<string, Block>> = {
  diagonalCrossing,
  fretLines,
  fretPositions,
  holeWindow,
  profileAt,
  radiusFromSagitta,
  removalAt,
  sagitta,
  stopSettings,
};

/** Every expectation of a trial, compared. */
export function rowsOf(trial: Trial): Row[] {
  const report = trial.design && checkDesign(trial.design);
  return trial.expect.map((expectation) => {
    const mark = expectation.mark ?? trial.mark;
    const row = { trial: trial.name, quantity: quantityOf(expectation), mark };
    try {
      const from = expectation.call === undefined ? report : called(expectation, trial.design);
      return { ...row, ...compared(expectation, valueAt(from, expectation.what)) };
    } catch (error) {
      const remark = error instanceof Error ? error.message : String(error);
      const { value } = expectation;
      return { ...row, expected: value, found: "–", difference: undefined, passes: false, remark };
    }
  });
}

function quantityOf({ call, with: args = [], what }: Expectation): string {
  if (call === undefined) return what ?? "the report";
  const written = `${call}(${args.map((arg) => JSON.stringify(arg)).join(", ")})`;
  return what === undefined ? written : `${written}.${what}`;
}

function called({ call = "", with: args = [] }: Expectation, design: Design | undefined): unknown {
  const block = Object.hasOwn(BLOCKS, call) ? BLOCKS[call] : undefined;
  if (block === undefined) {
    throw new RangeError(`no building block ${call}; known: ${Object.keys(BLOCKS).join(", ")}`);
  }
  return block(...(args.map((arg) => (arg === "design" ? design : inMillimetres(arg))) as never[]));
}

/** Lengths written with their unit as numbers of mm, "flat" as Infinity, anywhere within. */
function inMillimetres(value: unknown): unknown {
  if (typeof value === "string") return lengthOr(value);
  if (Array.isArray(value)) return value.map(inMillimetres);
  if (typeof value !== "object" || value === null) return value;
  const fields = Object.entries(value).map(([key, inner]) => [key, inMillimetres(inner)]);
  return Object.fromEntries(fields);
}

/** A text that begins as a number does is a length; any other is a word. */
function lengthOr(text: string): number | string {
  if (text === "flat") return Infinity;
  return /^\s*[-+−]?[.\d¼½¾⅐-⅞]/u.test(text) ? length(text) : text;
}

function valueAt(from: unknown, path: string | undefined): unknown {
  if (path === undefined) return from;
  return path.split(".").reduce<unknown>((at, key) => {
    if (typeof at !== "object" || at === null || !(key in at)) {
      throw new RangeError(`nothing at ${path}`);
    }
    return (at as Record<string, unknown>)[key];
  }, from);
}

function compared(
  expectation: Expectation,
  found: unknown,
): Omit<Row, "trial" | "quantity" | "mark"> {
  const { value } = expectation;
  const expected = typeof value === "string" ? lengthOr(value) : value;
  if (typeof expected !== "number" || typeof found !== "number") {
    const passes = Object.is(expected, found);
    return { expected, found, difference: undefined, passes, remark: "" };
  }
  const within = allowanceOf(expectation);
  const isNear = (to: number) => to === found || Math.abs(found - to) <= within * (1 + 1e-9);
  const misprint = misprintOf(expectation);
  const passes = isNear(expected) && !(misprint !== undefined && isNear(misprint));
  const remark = misprint === undefined ? "" : `printed as ${expectation.misprint}, a misprint`;
  const difference = found === expected ? 0 : found - expected;
  return { expected, found, difference, passes, remark };
}

/** How far off a found number may be: half of the last of so many decimals, or what is stated. */
function allowanceOf({ within, digits, value }: Expectation): number {
  const stated = typeof within === "string" ? lengthOr(within) : within;
  if (digits !== undefined && stated === undefined && typeof value === "number") {
    return 0.5 * 10 ** -digits;
  }
  if (digits === undefined && typeof stated === "number" && stated >= 0) return stated;
  throw new RangeError("expected within, 0 or more, or digits beside a value without a unit");
}

function misprintOf({ misprint }: Expectation): number | undefined {
  return typeof misprint === "string" ? Number(lengthOr(misprint)) : misprint;
}
