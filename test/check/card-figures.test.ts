/** Lengths as they are written: on their safe side, told apart, and what is set inside its range. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  fixed,
  INCHES,
  MILLIMETRES,
  nearestFraction,
  type Unit,
} from "../../src/text/length-text.js";

const UNITS = [
  ["mm", MILLIMETRES, 1],
  // 1 in = 25.4 mm, exact (NIST SP 811, memory)
  ["in", INCHES, 25.4],
] as const;

/** The length that a text says, mm: “1 3/8 (1.375) in”, “-.25”. */
function lengthIn(text: string, size: number): number {
  const [, sign, whole, over, under, decimal] =
    /^(-?)(?:(\d+)(?= ))? ?(?:(\d+)\/(\d+))?\s*(?:\(?([\d.]+)\)?)?(?: (?:mm|in))?$/.exec(text) ??
    [];
  const told = over ? Number(whole ?? 0) + Number(over) / Number(under) : Number(decimal);
  return (sign ? -told : told) * size;
}

const mm = fc.double({ min: -50, max: 50, noNaN: true });
const near = fc
  .tuple(mm, fc.double({ min: -12, max: 0, noNaN: true }))
  .map(([at, power]) => [at, at + 10 ** power] as const);
/** What rounding may come to, mm: a ten-thousandth of what a bench can hold. */
const HAIR = 1e-7;

describe.each(UNITS)("in %s", (short, unit: Unit, size) => {
  const read = (text: string) => lengthIn(text, size);

  test("a least is never written smaller than it is, a most never greater", () => {
    fc.assert(
      fc.property(mm, (length) => {
        expect(read(unit.least(length))).toBeGreaterThanOrEqual(length - HAIR);
        expect(read(unit.most(length))).toBeLessThanOrEqual(length + HAIR);
        expect(read(unit.least(length)) - read(unit.most(length))).toBeLessThan(0.0254 + HAIR);
      }),
    );
  });

  test("a value and the limit that it misses never read alike, each on its safe side", () => {
    fc.assert(
      fc.property(near, fc.boolean(), ([a, b], isSwapped) => {
        const [value, limit] = isSwapped ? [b, a] : [a, b];
        const [told, wanted] = unit.beside(value, limit).map(read) as [number, number];
        fc.pre(value !== limit);
        expect(Math.sign(wanted - told)).toBe(Math.sign(limit - value));
        expect(Math.abs(wanted - told)).toBeGreaterThanOrEqual(Math.abs(limit - value) - HAIR);
      }),
    );
  });

  test("a miss is never written as nothing, nor smaller than it is", () => {
    fc.assert(
      fc.property(near, ([a, b]) => {
        const missed = read(unit.miss(a - b));
        expect(missed).toBeGreaterThanOrEqual(Math.abs(a - b) - HAIR);
        expect(missed).toBeGreaterThan(0);
      }),
    );
  });

  test("a range's ends lie inside it, and what is set lies between its ends as they are", () => {
    const inside = fc.tuple(
      mm,
      fc.double({ min: 1e-4, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(inside, ([least, width, part]) => {
        const most = least + width;
        const [low, high] = unit.range(least, most).map(read) as [number, number];
        expect(low).toBeGreaterThanOrEqual(least - HAIR);
        expect(high).toBeLessThanOrEqual(most + HAIR);
        expect(low).toBeLessThan(high);
        const at = Math.min(most, least + part * width);
        const figure = unit.set(at, least, most);
        // the fraction, and the decimals in brackets, both
        const [, fraction = figure.text, decimals = figure.text] =
          /^(.*) \((.*)\)$/.exec(figure.text) ?? [];
        for (const told of [figure.mm, read(fraction), read(decimals)]) {
          expect(told).toBeGreaterThanOrEqual(least - HAIR);
          expect(told).toBeLessThanOrEqual(most + HAIR);
        }
        expect(Math.abs(figure.mm - read(fraction))).toBeLessThan(HAIR);
        const has64th = (hair: number) =>
          Math.floor((most / size + hair) * 64) >= Math.ceil((least / size - hair) * 64);
        // an end that is a 64th itself may be taken for either
        if (has64th(HAIR) === has64th(-HAIR)) {
          expect(figure.text.includes("(")).toBe(short === "in" && has64th(HAIR));
        }
      }),
    );
  });
});

describe("by hand", () => {
  test("millimetres", () => {
    expect([MILLIMETRES.bare(1.005), MILLIMETRES.full(-0.001)]).toEqual(["1.00", "0.00 mm"]);
    expect([MILLIMETRES.least(3.281), MILLIMETRES.most(3.289)]).toEqual(["3.29", "3.28"]);
    // 3.28 · 100 is 327.99999999999994 in binary
    expect([MILLIMETRES.least(3.28), MILLIMETRES.most(3.28)]).toEqual(["3.28", "3.28"]);
    expect(MILLIMETRES.beside(3.2796, 3.2804)).toEqual(["3.2796 mm", "3.2804 mm"]);
    expect(MILLIMETRES.beside(2, 1)).toEqual(["2.00 mm", "1.00 mm"]);
    expect(MILLIMETRES.beside(1, 1)).toEqual(["1.00 mm", "1.00 mm"]);
    expect(["miss", MILLIMETRES.miss(-0.0004), MILLIMETRES.miss(0)]).toEqual([
      "miss",
      "0.0004 mm",
      "0.00 mm",
    ]);
    expect(MILLIMETRES.range(3.001, 3.009)).toEqual(["3.001", "3.009"]);
    expect(MILLIMETRES.range(3.009, 3.001)).toEqual(["3.01", "3.00"]);
    // told apart from what is set between them, which may be an end itself
    expect(MILLIMETRES.range(2.4996, 2.6, 2.5)).toEqual(["2.4996", "2.6000"]);
    expect(MILLIMETRES.range(2.5, 2.6, 2.5)).toEqual(["2.50", "2.60"]);
    expect(MILLIMETRES.set(3.004, 3.001, 3.009)).toEqual({ text: "3.004", mm: 3.004 });
    expect(MILLIMETRES.bit(6.35)).toBe("6.35");
  });

  test("inches: 1/4 in is 6.35 mm, 5/64 in 1.984375 mm", () => {
    expect([INCHES.bare(6.35), INCHES.full(-6.35)]).toEqual([".250", "-.250 in"]);
    expect([INCHES.bit(6.35), INCHES.bit(38.1), INCHES.bit(6)]).toEqual([
      "1/4 (.250)",
      "1 1/2 (1.500)",
      ".236",
    ]);
    expect(INCHES.set(2, 1.9, 2.1)).toEqual({ text: "5/64 (.078)", mm: 1.984375 });
    // 64ths lie 0.397 mm apart: none is between 2.00 and 2.10 mm, .079 and .083 in
    expect(INCHES.set(2.05, 2, 2.1).text).toBe(".081");
    expect(INCHES.beside(6.35, 6.36)).toEqual([".2500 in", ".2504 in"]);
  });

  test("fractions in lowest terms, no minus before nothing", () => {
    expect([1.375, -5 / 64, 0, -1 / 200].map((value) => nearestFraction(value, 64))).toEqual([
      "1 3/8",
      "-5/64",
      "0",
      "0",
    ]);
    expect([fixed(-0.001, 2), fixed(-1.5, 1)]).toEqual(["0.00", "-1.5"]);
  });
});
