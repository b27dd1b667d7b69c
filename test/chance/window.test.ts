/** The worst case and the chance are one model. */
import { expect, test } from "vitest";
import { bestTravel, conformanceProbability, failingOverTravel } from "../../src/chance/index.js";
import { checkDesign, type Design, type Hole } from "../../src/index.js";

const LIMITS = {
  stop: 0.12,
  point: 0.08,
  seat: 0.1,
  layout: 0.3,
  thickness: 0.1,
  sanding: 0.06,
  crest: 0.4,
};
const laws = (shape: "rectangular" | "triangular") =>
  Object.fromEntries(Object.entries(LIMITS).map(([name, limit]) => [name, { limit, shape }]));

/** One dot aside on boards of several kinds. */
const KINDS: readonly (readonly [string, Partial<Design>])[] = [
  ["one radius", {}],
  [
    "a compound radius and fall-away",
    { radius: { nut: 200, end: 400 }, sanding: { nut: 0.2, end: 0.6 } },
  ],
  ["a stop from the table", { stop: { from: "table", zero: 18, height: { nut: 30, end: 28 } } }],
  ["a solid dot", { fill: { kind: "solid", thickness: 2.2, keep: 0.8 } }],
];

test.each(
  KINDS.flatMap(([name, rest]) =>
    (["rectangular", "triangular"] as const).map((shape) => [name, shape, rest] as const),
  ),
)(
  "nothing fails inside the window, and 0.05 outside its ends something does: %s, %s",
  (_, shape, rest) => {
    const design: Design = {
      scale: { length: 648, frets: 22 },
      board: { length: 482, width: 50, thickness: 6 },
      radius: 254,
      sanding: 0.2,
      bit: { kind: "brad-point", point: 1.4, spur: 0.5 },
      markers: [{ places: [{ along: 210, offset: 11 }], diameter: 6 }],
      tolerance: laws(shape),
      ...rest,
    };
    const { window, lead, rise } = checkDesign(design).holes[0] as Hole;
    expect(window.max).toBeGreaterThan(window.min);
    const at = (depth: number) => conformanceProbability(design, { travels: depth + lead - rise });
    for (const share of [0, 0.5, 1]) {
      const depth = window.min + 1e-9 + share * (window.max - window.min - 2e-9);
      const { fails, numericalError } = at(depth);
      expect(fails).toBe(0);
      expect(numericalError).toBeLessThan(1e-5);
    }
    expect(at(window.min - 0.05).fails).toBeGreaterThan(0);
    expect(at(window.max + 0.05).fails).toBeGreaterThan(0);
  },
);

/** One hole that holds from 2.1 on and down to 4.8: stop ±0.1, thickness ±0.1, sanding 0.2, keep 0.8, point 1, web 1. */
const ONE: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: 50, thickness: 6 },
  radius: "flat",
  sanding: 0.2,
  fill: { kind: "poured", keep: 0.8 },
  bit: { kind: "forstner", point: 1 },
  markers: [{ frets: [12], diameter: 6 }],
  tolerance: { stop: 0.1, point: 0, sanding: 0, thickness: 0.1 },
};

test("the best travel is the middle of those that do equally well, in the stretch that holds at the level", () => {
  const { travel, holds, fails, range } = bestTravel(ONE, { level: 0.75 });
  expect(travel).toBeCloseTo((2.1 + 4.8) / 2, 3);
  expect([holds, fails]).toEqual([1, 0]);
  // 3/4 of the stop's errors are enough for the keep
  expect(range?.min).toBeCloseTo(2.05, 3);
  // two errors ±0.1 pass x above 5 with the chance (0.2 − x)²/0.08, 1/4 where x is 0.2 − √0.02
  expect(range?.max).toBeCloseTo(5 - 0.2 + Math.sqrt(0.02), 3);
});

test("no travel holds at the level on a board that is too thin", () => {
  // the keep asks for 2.0 at least, the web for as much at most
  const { range, holds } = bestTravel({ ...ONE, board: { ...ONE.board, thickness: 3 } });
  expect(range).toBeNull();
  expect(holds).toBeGreaterThan(0);
  expect(holds).toBeLessThan(0.95);
});

test("over travels the chance is the same as at each", () => {
  for (const { travel, fails } of failingOverTravel(ONE, [2, 2.05, 4.9])) {
    expect(conformanceProbability(ONE, { travels: travel }).fails).toBe(fails);
  }
});

test("what is planned is judged, else what is recommended", () => {
  const shallow = conformanceProbability({ ...ONE, travel: 2.05 });
  expect(shallow.fails).toBeCloseTo(0.25, 9);
  // a depth of 1.05 is a travel of 2.05
  expect(conformanceProbability({ ...ONE, depth: 1.05 }).fails).toBeCloseTo(0.25, 9);
  expect(conformanceProbability(ONE).fails).toBe(0);
});

const NUMBER = "a number from 0.000001 to 1000000 mm";
test.each<[string, () => unknown, string]>([
  [
    "a travel of nothing",
    () => conformanceProbability(ONE, { travels: 0 }),
    `options.travels: expected ${NUMBER}, received 0`,
  ],
  [
    "travels of another number",
    () => conformanceProbability(ONE, { travels: [3, 3] }),
    "options.travels: expected an array of 1 to 1 travels, one for each hole that is to be drilled, received an array",
  ],
  [
    "a travel that is none",
    () => conformanceProbability(ONE, { travels: [Number.NaN] }),
    `options.travels.0: expected ${NUMBER}, received NaN`,
  ],
  [
    "an unknown option",
    () => conformanceProbability(ONE, { travel: 3 } as never),
    "options.travel: expected a known key: travels, received 3",
  ],
  [
    "a level of 1",
    () => bestTravel(ONE, { level: 1 }),
    "options.level: expected a number from 0.5 to 0.999999, received 1",
  ],
  [
    "two stops",
    () =>
      bestTravel({
        ...ONE,
        markers: [...ONE.markers, { frets: [5], diameter: 6, stop: { foot: 4 } }],
      }),
    "design: expected holes that one stop drills; here 2 do, received an object",
  ],
  [
    "travels that are no list",
    () => failingOverTravel(ONE, 3 as never),
    "travels: expected an array of 0 to 1000 travels, received 3",
  ],
])("%s", (_, call, line) => {
  expect(call).toThrow(new RangeError(line));
});
