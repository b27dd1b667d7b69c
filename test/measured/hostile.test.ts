/** What is not a measurement: refused with path, value and bound, all at once; no NaN ever comes out. */
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  calibrateStop,
  dimensionalChange,
  equilibriumMoisture,
  fitCompound,
  fitRadius,
  leastSanding,
  radiusFromGauge,
} from "../../src/measured/index.js";
import { between } from "../outside/counted.js";
import { across } from "./boards.js";

const POINTS = across(254, 20, 5);
const NOTHING = undefined as never;
const LENGTH = "a number from -1000000 to 1000000 mm";

function revoked(): never {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy as never;
}

test.each<[string, () => unknown, readonly string[]]>([
  [
    "points of several faults, and options",
    () =>
      fitRadius(
        [{ offset: Number.NaN, height: 0 }, { offset: 1, height: "2" }, 3] as never,
        {
          uncertainty: 0,
          coverage: 11,
          sigma: 1,
        } as never,
      ),
    [
      `points.0.offset: expected ${LENGTH}, received NaN`,
      `points.1.height: expected ${LENGTH}, received "2"`,
      "points.2: expected an object with offset, height, received 3",
      "options.sigma: expected a known key: uncertainty, coverage, received 1",
      "options.uncertainty: expected a number from 0.000001 to 1000000 mm, received 0",
      "options.coverage: expected a number from 0.1 to 10 standard uncertainties, received 11",
    ],
  ],
  [
    "no points",
    () => fitRadius(NOTHING),
    ["points: expected an array of 3 to 1000 points, received undefined"],
  ],
  [
    "two points",
    () => fitRadius(POINTS.slice(0, 2)),
    ["points.length: expected an array of 3 to 1000 points, received 2"],
  ],
  [
    "more points than may be",
    () => fitRadius(Array.from({ length: 1001 }, () => ({ offset: 0, height: 0 }))),
    ["points: expected an array of 3 to 1000 points, received an array"],
  ],
  [
    "three points and no uncertainty",
    () => fitRadius(POINTS.slice(0, 3)),
    ["points: expected 4 points or more, or 3 and options.uncertainty, received an array"],
  ],
  [
    "offsets of which two differ",
    () => fitRadius([...POINTS.slice(0, 2), ...POINTS.slice(0, 2)]),
    ["points: expected 3 different offsets or more, over 0.001 mm or more, received an array"],
  ],
  [
    "offsets within less than a micrometre",
    () => fitRadius([0, 1, 2, 3].map((i) => ({ offset: i / 4000, height: 0 }))),
    ["points: expected 3 different offsets or more, over 0.001 mm or more, received an array"],
  ],
  [
    "options that are none",
    () => fitRadius(POINTS, null as never),
    ["options: expected an object with uncertainty, coverage, received null"],
  ],
  [
    "sections at one place, with too few points, and no length",
    () =>
      fitCompound(
        [5, 5].map((along) => ({ along, points: POINTS.slice(0, 3) })),
        480,
      ),
    [
      "sections: expected two different along or more, over 0.001 mm or more, received an array",
      "sections: expected 7 points or more, or options.uncertainty, received an array",
    ],
  ],
  [
    "a section's fault by its path, and a length of nothing",
    () =>
      fitCompound(
        [
          { along: Infinity, points: [] },
          { along: 1, points: [{}, {}, {}] },
        ] as never,
        0,
      ),
    [
      `sections.0.along: expected ${LENGTH}, received Infinity`,
      "sections.0.points.length: expected an array of 3 to 1000 points, received 0",
      ...[0, 1, 2].flatMap((i) => [
        `sections.1.points.${i}.offset: expected ${LENGTH}, received undefined`,
        `sections.1.points.${i}.height: expected ${LENGTH}, received undefined`,
      ]),
      "length: expected a number from 0.000001 to 1000000 mm, received 0",
    ],
  ],
  [
    "one section",
    () => fitCompound([{ along: 0, points: POINTS }], 480),
    ["sections.length: expected an array of 2 to 50 sections, received 1"],
  ],
  [
    "points so far from the centre line that no surface reaches them",
    () => {
      const points = POINTS.map(({ offset, height }) => ({ offset: offset + 1000, height }));
      return fitCompound(
        [
          { along: 0, points },
          { along: 400, points: across(300, 20, 5) },
        ],
        480,
      );
    },
    ["sections: expected points along one cone, received an array"],
  ],
  [
    "trials of several faults",
    () =>
      calibrateStop(
        [
          { travel: -1, tip: 3 },
          { travel: 3, floor: 2 },
          { travel: 3, floor: 2, tip: 3 },
          {},
        ] as never,
        { holes: 2.5, level: 1, resolution: -0.1, lead: undefined },
      ),
    [
      "trials.0.travel: expected a number from 0 to 1000000 mm, received -1",
      "trials.1.floor: expected options.lead beside it, received 2",
      "trials.2.tip: expected tip or floor, not both, received 3",
      "trials.2.floor: expected options.lead beside it, received 2",
      "trials.3.travel: expected a number from 0 to 1000000 mm, received undefined",
      "trials.3.tip: expected a number from 0 to 1000000 mm, received undefined",
      "options.holes: expected a whole number from 1 to 1000, received 2.5",
      "options.level: expected a number from 0.5 to 0.999999, received 1",
      "options.resolution: expected a number from 0 to 1000000 mm, received -0.1",
    ],
  ],
  [
    "floors that are none",
    () =>
      calibrateStop(
        [
          { travel: 3, floor: -2 },
          { travel: 3, floor: Number.NaN },
        ],
        { lead: 1 },
      ),
    [
      "trials.0.floor: expected a number from 0 to 1000000 mm, received -2",
      "trials.1.floor: expected a number from 0 to 1000000 mm, received NaN",
    ],
  ],
  [
    "one trial",
    () => calibrateStop([{ travel: 3, tip: 3 }]),
    ["trials.length: expected an array of 2 to 1000 trials, received 1"],
  ],
  [
    "a gauge of nothing",
    () => radiusFromGauge({ gauge: -254, span: Number.NaN, gap: -0.1, touches: "center" } as never),
    [
      "reading.gauge: expected a number from 0.000001 to 1000000000000 mm, or Infinity for flat, received -254",
      "reading.span: expected a number from 0.000001 to 1000000 mm, received NaN",
      "reading.gap: expected a number from 0 to 1000000 mm, received -0.1",
      'reading.touches: expected "centre" or "edges", received "center"',
    ],
  ],
  [
    "a gauge that does not reach the edges",
    () => radiusFromGauge({ gauge: 20, span: 44, gap: 0, touches: "centre" }),
    ["reading.gauge: expected 22 mm, half the span, or more, received 20"],
  ],
  [
    "a gap that no circle leaves",
    () => radiusFromGauge({ gauge: Infinity, span: 44, gap: 22.1, touches: "edges" }),
    [
      "reading.gap: expected a gap that leaves a drop of 22 mm, half the span, at most, received 22.1",
    ],
  ],
  [
    "radii that are none",
    () => leastSanding("Flat" as never, 0, 26),
    [
      'existing: expected a number from 0.000001 to 1000000000000 mm, or Infinity for flat, received "Flat"',
      "next: expected a number from 0.000001 to 1000000000000 mm, or Infinity for flat, received 0",
    ],
  ],
  [
    "a radius that does not reach the edge",
    () => leastSanding(20, 305, 26),
    ["existing: expected 26 mm, the half-width, or more, received 20"],
  ],
  [
    "a board of no width",
    () => leastSanding(184, 305, Infinity),
    ["halfWidth: expected a number from 0.000001 to 1000000 mm, received Infinity"],
  ],
  [
    "weather",
    () => equilibriumMoisture(131, 100.1),
    [
      "celsius: expected a number from -20 to 130 °C, received 131",
      "humidity: expected a number from 0 to 100 percent, received 100.1",
    ],
  ],
  [
    "movement",
    () => dimensionalChange(-1, 0.1, -1, 31),
    [
      "size: expected a number from 0 to 1000000 mm, received -1",
      "coefficient: expected a number from 0 to 0.03 per percent of moisture, received 0.1",
      "from: expected a number from 0 to 30 percent, received -1",
      "to: expected a number from 0 to 30 percent, received 31",
    ],
  ],
])("%s", (_, call, lines) => {
  expect(call).toThrow(new RangeError(lines.join("\n")));
});

test("a proxy that is revoked, and a getter that throws", () => {
  const locked = {
    get offset(): number {
      throw new Error("locked");
    },
    height: 0,
  };
  expect(() => fitRadius([locked, ...POINTS])).toThrow(
    /^points\.0\.offset: expected a value that can be read/,
  );
  for (const call of [fitRadius, calibrateStop, radiusFromGauge, fitCompound] as const) {
    expect(() => (call as (argument: never) => unknown)(revoked())).toThrow(RangeError);
  }
  expect(() => fitRadius(POINTS, revoked())).toThrow(RangeError);
});

test("of very many faults the first twenty are told, and how many more there are", () => {
  const points = Array.from({ length: 15 }, () => ({ offset: "1", height: "2" }));
  expect(() => fitRadius(points as never)).toThrow(/\npoints\.9\.height.+\n… and 10 more$/);
});

const odd = fc.oneof(fc.constantFrom(-0, Infinity, Number.NaN, "flat", null), fc.anything());

/** A number from `least` to `most`; now and then a tiny one, and seldom anything at all. */
function mostly(least: number, most: number) {
  const any = fc.double({ min: least, max: most, noNaN: true });
  return fc.oneof(
    { weight: 60, arbitrary: between(least, most) },
    { weight: 5, arbitrary: any },
    odd,
  );
}

function pointsWithin(height: number) {
  const point = fc.record({ offset: mostly(-30, 30), height: mostly(-height, height) });
  return fc.array(point, { minLength: 3, maxLength: 7 });
}

const points = fc.oneof(pointsWithin(30), pointsWithin(1));
const sections = fc.array(fc.record({ along: mostly(0, 500), points: pointsWithin(1) }), {
  minLength: 1,
  maxLength: 3,
});
const trials = fc.array(fc.record({ travel: mostly(0, 6), tip: mostly(0, 6) }), { maxLength: 7 });
const options = fc.oneof(
  fc.constant({}),
  fc.record({ uncertainty: mostly(1e-6, 9) }),
  fc.record({ coverage: mostly(0, 10) }),
);
const radius = mostly(20, 1e6);
const touches = fc.constantFrom("centre", "edges");

type Call = (...given: never) => unknown;
const CALLS: readonly (readonly [string, Call, fc.Arbitrary<readonly unknown[]>])[] = [
  ["calibrateStop", calibrateStop, fc.tuple(trials, fc.record({ resolution: mostly(0, 1) }))],
  ["dimensionalChange", dimensionalChange, fc.tuple(radius, mostly(0, 0.03), ...pair(-1, 31))],
  ["equilibriumMoisture", equilibriumMoisture, fc.tuple(...pair(-25, 135))],
  ["fitCompound", fitCompound, fc.tuple(sections, mostly(1, 500), fc.constant({ uncertainty: 1 }))],
  ["fitRadius", fitRadius, fc.tuple(points, options)],
  ["leastSanding", leastSanding, fc.tuple(radius, radius, mostly(0, 40))],
  [
    "radiusFromGauge",
    radiusFromGauge,
    fc.tuple(fc.record({ gauge: radius, span: mostly(0, 60), gap: mostly(0, 9), touches })),
  ],
];

function pair(least: number, most: number) {
  return [mostly(least, most), mostly(least, most)] as const;
}

test.each(CALLS)("%s: whatever comes in, a RangeError or numbers", (name, call, given) => {
  let [answers, refusals] = [0, 0];
  const property = fc.property(given, (all) => {
    try {
      expect(numbersIn(call(...(all as never))).filter(Number.isNaN)).toEqual([]);
      answers++;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      refusals++;
    }
  });
  // the factor of trial holes takes some hundredths of a second
  const wanted = fc.readConfigureGlobal().numRuns ?? 100;
  const numRuns = name === "calibrateStop" ? Math.ceil(wanted / 6) : wanted;
  fc.assert(property, { numRuns });
  expect(answers).toBeGreaterThan(0);
  expect(refusals).toBeGreaterThan(0);
});

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
