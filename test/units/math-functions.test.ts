/** `mathFunctions` in mathjs instances of several kinds. */
import {
  all,
  create,
  divideDependencies,
  evaluateDependencies,
  type MathJsInstance,
  toDependencies,
  type Unit,
  unitDependencies,
} from "mathjs";
import { describe, expect, test } from "vitest";
import { mathFunctions } from "../../src/units/index.js";
import { isUnit } from "../../src/units/math-values.js";

function instance(config: Parameters<typeof create>[1] = {}): MathJsInstance {
  const math = create(all ?? {}, config);
  math.import(mathFunctions);
  return math;
}

const math = instance();

/** The value of an expression, in a unit. */
function measured(expression: string, unit: string, of: MathJsInstance = math): number {
  return (of.evaluate(expression) as Unit).toNumber(unit);
}

describe("against printed values", () => {
  test("circle segments, inches in and out", () => {
    // R = 12, depth 2: chord 13.27 (Machinery's Handbook, 31st ed., p. 50): the drop at half of it
    expect(measured("sagitta(12 in, 13.27 in / 2)", "in")).toBeCloseTo(2, 2);
    // r = 60, h = 8: chord 59.86652 (Machinery's Handbook, 31st ed., p. 79, print truncates)
    expect(measured("sagitta(60 in, 59.86652 in / 2)", "in")).toBeCloseTo(8, 4);
    // chord 16, h = 6: r = 8 1/3 (the same page)
    expect(measured("radiusFromSagitta(16 in / 2, 6 in)", "in")).toBeCloseTo(8 + 1 / 3, 12);
    // chord 21, h 6: R 12.1875 ("Circular Sections", manual of a mathematics program)
    expect(measured("radiusFromSagitta(21 in / 2, 6 in) to in", "in")).toBeCloseTo(12.1875, 12);
    // r = 100, R = 1332: 3.7590580019 (power series of the sagitta, telescope makers' list, Aug 2000)
    expect(measured("sagitta(1332 mm, 100 mm)", "mm")).toBeCloseTo(3.7590580019, 10);
  });

  test("a conic section, by its slope", () => {
    // "Radii of Curvature and Sagittal Depths of Conic Sections", Int. Contact Lens Clinic 19:76–83
    // (1992), Table 1: R = 7.8 mm, K = −.2025 (slope .45), 2x = 1 … 8 mm, seen in a transcription
    const printed = [0.016, 0.064, 0.145, 0.26, 0.409, 0.595, 0.82, 1.086];
    expect(printed).toHaveLength(8);
    printed.forEach((drop, i) => {
      expect(measured(`sagitta(7.8 mm, ${i + 1} mm / 2, 0.45)`, "mm")).toBeCloseTo(drop, 3);
    });
  });

  test("fret positions", () => {
    // L = 75.0 cm, frets 1–6 (physics textbook problem, 7th ed., ch. 12 Q43, to three digits)
    const printed = ["4.21", "8.18", "11.9", "15.5", "18.8", "22.0"];
    expect(printed).toHaveLength(6);
    printed.forEach((cm, i) => {
      expect(measured(`fretPosition(75 cm, ${i + 1})`, "cm").toPrecision(3)).toBe(cm);
    });
    // the octave halves the string
    expect(measured("fretPosition(25.5 in, 12)", "in")).toBeCloseTo(12.75, 12);
    expect(measured("fretPosition(25.5 in, 0)", "in")).toBe(0);
  });

  test("crossed diagonals", () => {
    // widths 44 and 56, length 450: 198 from the narrow end (PlanetMath, "Harmonic mean in trapezoid")
    expect(measured("diagonalCrossing(450 mm, 44 mm, 56 mm).along", "mm")).toBeCloseTo(198, 12);
    expect(measured("diagonalCrossing(45 cm, 4.4 cm, 56 mm).along to cm", "cm")).toBeCloseTo(
      19.8,
      12,
    );
    // a quarter of the harmonic mean 2ab/(a + b) = 49.28
    expect(measured("diagonalCrossing(450 mm, 44 mm, 56 mm).offset", "mm")).toBeCloseTo(12.32, 12);
  });
});

describe("in expressions", () => {
  test("the drop of a 12 in radius at 16 mm, against the same instance's own square root", () => {
    const oracle = create(all ?? {}, { number: "BigNumber", precision: 64 });
    const expected = oracle.evaluate("304.8 - sqrt(304.8^2 - 16^2)").toNumber();
    expect(measured("sagitta(12 in, 16 mm) to mm", "mm")).toBeCloseTo(expected, 12);
    expect(measured("sagitta(12 in, 16 mm) + 0.15 mm", "mm")).toBeCloseTo(expected + 0.15, 12);
  });

  test("inside a function of the user's own", () => {
    const [, drop] = math.evaluate(["f(r) = sagitta(r, 6 cm) + 1 mm", "f(100 mm)"], {});
    expect(drop.toNumber("mm")).toBeCloseTo(21, 12);
  });

  test("a result with a unit is in mm", () => {
    expect(math.evaluate("sagitta(12 in, 1 in)").formatUnits()).toBe("mm");
    expect(math.evaluate("fretPosition(25.5 in, 12)").formatUnits()).toBe("mm");
  });

  test("plain numbers give a plain number in their own unit", () => {
    expect(math.evaluate("radiusFromSagitta(8, 6)")).toBeCloseTo(8 + 1 / 3, 12);
    expect(math.evaluate("sagitta(100, 60)")).toBeCloseTo(20, 12); // 60, 80, 100: a right triangle
    expect(math.evaluate("fretPosition(648, 12)")).toBeCloseTo(324, 12);
    expect(math.evaluate("diagonalCrossing(450, 44, 56).along")).toBeCloseTo(198, 12);
  });

  test("a flat radius needs no unit, and comes back as an infinite one", () => {
    expect(measured("sagitta(Infinity, 16 mm)", "mm")).toBe(0);
    expect(measured("radiusFromSagitta(16 mm, 0 mm)", "mm")).toBe(Infinity);
  });

  test("a slope is a ratio: of lengths, or a number", () => {
    const number = measured("sagitta(10 in, 22 mm, 0.25)", "mm");
    expect(measured("sagitta(10 in, 22 mm, 1 in / 4 in)", "mm")).toBeCloseTo(number, 12);
    const strict = instance({ predictable: true });
    const ratio = strict.evaluate("1 in / 101.6 mm");
    expect(strict.typeOf(ratio)).toBe("Unit");
    expect(measured("sagitta(10 in, 22 mm, 1 in / 101.6 mm)", "mm", strict)).toBeCloseTo(
      number,
      12,
    );
    expect(number).not.toBeCloseTo(measured("sagitta(10 in, 22 mm)", "mm"), 4);
  });

  test("from TypeScript, the type of unit is kept", () => {
    const drop: Unit = mathFunctions.sagitta(math.unit(100, "mm"), math.unit(6, "cm"));
    expect(drop.toNumber("mm")).toBeCloseTo(20, 12);
    const plain: number = mathFunctions.sagitta(100, 60);
    expect(plain).toBeCloseTo(20, 12);
  });
});

describe("instances of other kinds", () => {
  const partly = {
    ...unitDependencies,
    ...divideDependencies,
    ...evaluateDependencies,
    ...toDependencies,
  };

  test("one made of parts", () => {
    const parts = create(partly);
    (parts.import as MathJsInstance["import"])(mathFunctions);
    const drop = (parts.evaluate as (text: string) => Unit)("sagitta(100 mm, 6 cm) to cm");
    expect(drop.toNumber("mm")).toBeCloseTo(20, 12);
  });

  test("big numbers give big numbers, which mix with others", () => {
    const big = instance({ number: "BigNumber", precision: 64 });
    expect(big.typeOf(big.evaluate("sagitta(100, 60)"))).toBe("BigNumber");
    expect(big.evaluate("sagitta(100, 61) + 1").toNumber()).toBeCloseTo(101 - Math.sqrt(6279), 12);
    expect(measured("sagitta(100 mm, 6 cm) + 1/3 mm", "mm", big)).toBeCloseTo(20 + 1 / 3, 12);
    expect(measured("sagitta(Infinity, 6 cm)", "mm", big)).toBe(0);
    expect(measured("fretPosition(648 mm, 12)", "mm", big)).toBeCloseTo(324, 12);
  });

  test.each(["Fraction", "bigint"] as const)("numbers of kind %s", (number) => {
    const other = instance({ number });
    expect(measured("sagitta(100 mm, 6 cm)", "mm", other)).toBeCloseTo(20, 12);
    expect(other.evaluate("sagitta(100, 60)")).toBeCloseTo(20, 12);
    expect(measured("fretPosition(648 mm, 12)", "mm", other)).toBeCloseTo(324, 12);
  });
});

describe("refusals", () => {
  test.each([
    // not a length
    ["sagitta(12 kg, 16 mm)", 'radius: expected a length with its unit, received "12 kg"'],
    ["sagitta(12 in, 16 s)", 'x: expected a length with its unit, received "16 s"'],
    ["sagitta(12 in^2, 16 mm)", 'radius: expected a length with its unit, received "12 in^2"'],
    ["sagitta(in, 16 mm)", 'radius: expected a length with its unit, received "in"'],
    ["sagitta(2i in, 16 mm)", 'radius: expected a length with its unit, received "(2i) in"'],
    ["radiusFromSagitta(8 in, 6 deg)", 'h: expected a length with its unit, received "6 deg"'],
    ["fretPosition(648 N, 1)", 'length: expected a length with its unit, received "648 N"'],
    [
      "diagonalCrossing(450 mm, 44 kg, 56 mm)",
      'widthA: expected a length with its unit, received "44 kg"',
    ],
    // a unit for some only
    ["sagitta(12 in, 16)", "x: expected a length with its unit, received 16"],
    ["sagitta(304.8, 16 mm)", "radius: expected a length with its unit, received 304.8"],
    ["sagitta(12 in)", "x: expected a length with its unit, received undefined"],
    // no number
    [
      'sagitta("12 in", 1)',
      'radius: expected a length, or a number in the unit of the others, received "12 in"',
    ],
    ["sagitta([1, 2], 1)", /^radius: expected a length, or a number in the unit of the others/],
    [
      "sagitta({isUnit: true, value: 1}, 1)",
      "radius: expected a length, or a number in the unit of the others, received an object",
    ],
    ["sagitta(true, 1)", /^radius: expected a length, or a number in the unit of the others/],
    // a slope has no unit
    ["sagitta(12 in, 16 mm, 5 deg)", 'slope: expected a number without a unit, received "5 deg"'],
    ["sagitta(12 in, 16 mm, 1 mm)", 'slope: expected a number without a unit, received "1 mm"'],
    // out of range: told in mm
    ["sagitta(-12 in, 16 mm)", /^radius: expected more than 0, received -304\.\d+$/],
    [
      "sagitta(12 in, 1 m)",
      /^x: expected a distance that a radius of 304\.\d+ reaches, received 1000$/,
    ],
    ["radiusFromSagitta(8 in, -1 mm)", "h: expected a finite drop of 0 or more, received -1"],
    ["fretPosition(0 mm, 1)", "length: expected a finite length greater than 0, received 0"],
    [
      "fretPosition(Infinity, 1)",
      "length: expected a finite length greater than 0, received Infinity",
    ],
    ["fretPosition(NaN, 1)", "length: expected a finite length greater than 0, received NaN"],
    [
      "fretPosition(1 m, 1.5)",
      "n: expected a fret's number, a whole number from 0 to 250, received 1.5",
    ],
    [
      "fretPosition(1 m, -1)",
      "n: expected a fret's number, a whole number from 0 to 250, received -1",
    ],
    [
      "fretPosition(1 m, 251)",
      "n: expected a fret's number, a whole number from 0 to 250, received 251",
    ],
    [
      "fretPosition(1 m, 1 mm)",
      'n: expected a fret\'s number, a whole number from 0 to 250, received "1 mm"',
    ],
    [
      "fretPosition(1 m)",
      "n: expected a fret's number, a whole number from 0 to 250, received undefined",
    ],
    [
      "diagonalCrossing(0 mm, 1 mm, 1 mm)",
      "gap: expected a finite length greater than 0, received 0",
    ],
  ])("%s", (expression, message) => {
    const call = () => math.evaluate(expression);
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message instanceof RegExp ? message : new RangeError(message));
  });
});

test("no object of a user's is a unit, nor one whose class cannot be read", () => {
  const odd = {
    get constructor(): never {
      throw new Error("locked");
    },
  };
  const none = [odd, null, 3, "1 in", {}, { isUnit: true }, Object.create(null)];
  expect(none.filter(isUnit)).toEqual([]);
});
