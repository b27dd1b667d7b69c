/** Remedies are exact: the finding is gone at the threshold, stands a little short of it, and no error is new. */
import { describe, expect, test } from "vitest";
import { withNumber } from "../../src/design/paths.js";
import {
  checkDesign,
  type Design,
  type Finding,
  type NumberPath,
  type Remedy,
  remediesFor,
  remedyPairFor,
} from "../../src/index.js";
import { designOf } from "../windows/bench.js";
import { BROKEN } from "./broken.js";
import { FLAT, SQUARED } from "./necks.js";

/** The thresholds for the first finding of a code, by path. */
function remediesOf(design: Design, code = checkDesign(design).findings[0]?.code) {
  const finding = checkDesign(design).findings.find((each) => each.code === code);
  const remedies = remediesFor(design, finding as Finding);
  return new Map(remedies.map(({ change, to }) => [change, to]));
}

const namesIn = (design: Design) => {
  const { findings, holes } = checkDesign(design);
  return findings.map(({ code, severity, hole, other = hole, fret, station, path }) => {
    const place =
      hole === undefined ? [fret, station, path] : [holes[hole]?.path, holes[other ?? hole]?.path];
    return { severity, name: [code, ...place].join(" ") };
  });
};

/** Holds a remedy against the check itself. */
function holdExact(design: Design, index: number, { change, from, to }: Remedy): void {
  const at = (value: number) => namesIn(withNumber(design, change as NumberPath, value));
  const [before, after] = [namesIn(design), at(to)];
  const { name } = before[index] as { name: string };
  expect(after.map((each) => each.name)).not.toContain(name);
  for (const each of after.filter(({ severity }) => severity === "error")) {
    expect(before).toContainEqual(each);
  }
  // in curvature, where flat lies at 0
  const isRadius = change.includes("radius");
  const turned = (value: number) => (isRadius ? 1 / value : value);
  // what was assumed is stated, whatever it is; and any other stop is another
  if (/^assumed-/.test(name) || (/^several-/.test(name) && change.includes("stop"))) return;
  const short = turned(turned(to) + (turned(from) - turned(to)) * 1e-6);
  const milder = name.replace("nothing-left", "below-keep").replace("breaks-through", "below-web");
  expect(
    at(short).map((each) => each.name),
    `${change}: ${to}`,
  ).toSatisfy((names: string[]) =>
    names.some((each) => each === name || each === milder.replace("cuts-slot", "near-slot")),
  );
}

test.each(BROKEN)(
  "$code: each remedy is exact, and there is one where one number can do",
  ({ code, broken }) => {
    const { findings } = checkDesign(broken);
    const remedies = remediesFor(broken, findings[0] as Finding);
    // what is settled, as where the frets lie, no number makes up for
    const has = code !== "fret-past-end";
    expect(remedies.length > 0).toBe(has);
    for (const remedy of remedies) holdExact(broken, 0, remedy);
  },
);

describe("by hand", () => {
  test("a flat board that is 0.3 too thin: at least 1.05, at most 0.75", () => {
    const found = remediesOf({ ...FLAT, board: { ...FLAT.board, thickness: 3 } });
    const to = ["board.thickness", "bit.point", "web", "fill.keep"].map((path) => found.get(path));
    expect(to).toEqual([3.3, 0.6, 0.8, 0.4].map((value) => expect.closeTo(value, 9)));
    // nut and end keep 3: before fret 5 there is less than at it
    expect(found.get("board.thickness.fret5")).toBeGreaterThan(3.3);
    // a flat board's window does not hang on the dot or the radius
    expect([...found.keys()].filter((path) => /diameter|radius/.test(path))).toEqual([]);
  });

  test("a planned depth: all holes deeper, or these alone; a planned travel; what fails wholly", () => {
    const found = remediesOf({ ...FLAT, depth: 1 });
    expect(found.get("depth")).toBeCloseTo(1.05, 9);
    expect(found.get("markers.0.depth")).toBeCloseTo(1.05, 9);
    // 1.05 and a point of 0.9
    expect(remediesOf({ ...FLAT, travel: 1.9 }).get("travel")).toBeCloseTo(1.95, 9);
    expect(remediesOf({ ...FLAT, depth: 5.5 }, "breaks-through").get("depth")).toBeCloseTo(3.75, 9);
  });

  test("an edge too thin hangs on the radius: 16 aside a drop of 1.5 where r² = (r − 1.5)² + 16²", () => {
    const board = { length: 400, width: 32, thickness: 3 };
    const thin = designOf({ board, radius: 65, sanding: 0, web: 1.5, markers: [] });
    expect(remediesOf(thin, "thin-edge").get("radius")).toBeCloseTo((16 ** 2 + 1.5 ** 2) / 3, 9);
    expect(remediesOf(thin, "thin-edge").get("board.thickness")).toBeCloseTo(3.5, 9);
  });

  test("a radius a thousand times as flat is not the end: flat is a value like any other", () => {
    // its rim at 16, and 0.001 to spare: R = (16² + h²) / 2h
    const aside = { places: [{ along: 48, offset: 12 }], diameter: 8 };
    const board = { ...SQUARED.board, thickness: 3.501 };
    const design = { ...SQUARED, radius: 65, board, markers: [aside] };
    const found = remediesOf(design, "no-depth");
    expect(found.get("radius")).toBeCloseTo((16 ** 2 + 0.001 ** 2) / 0.002, 3);
  });

  test("the marker's own place: a pair closer together, a place nearer the middle", () => {
    const pair = { frets: [2], diameter: 8, arrangement: "double", spread: 60 } as const;
    expect(remediesOf({ ...SQUARED, markers: [pair] }).get("markers.0.spread")).toBeCloseTo(56, 9);
    const aside = { places: [{ along: 48, offset: -29 }], diameter: 8 };
    const found = remediesOf({ ...SQUARED, markers: [aside] });
    expect(found.get("markers.0.places.0.offset")).toBeCloseTo(-28, 9);
    expect(found.get("markers.0.diameter")).toBeCloseTo(6, 9);
  });

  test("a stretch in the middle, though the far end fails: lengthwise between its slots", () => {
    // 32 between slots: two of 8 clear them by 0.5 as far as 23 apart, and each other from 8 on
    const pair = { frets: [2], diameter: 8, by: "midpoint", arrangement: "lengthwise" } as const;
    const apart = (spread: number) => remediesOf({ ...SQUARED, markers: [{ ...pair, spread }] });
    expect(apart(4).get("markers.0.spread")).toBeCloseTo(8, 9);
    expect(apart(23.5).get("markers.0.spread")).toBeCloseTo(23, 9);
  });

  test("the existing radius is not reached: the least sanding, or a new radius as tight as the old", () => {
    const curved = { existing: { radius: 325 }, board: { width: 72 }, sanding: 0, markers: [] };
    const found = remediesOf(designOf({ ...curved, radius: 650 }));
    const drop = 650 - Math.sqrt(650 ** 2 - 36 ** 2);
    expect(found.get("sanding")).toBeCloseTo(2 - drop, 8);
    expect(found.get("radius")).toBeCloseTo(325, 5);
  });

  test("two holes at one fret and side are two: each is cured by its own group", () => {
    const markers = [40, 56].map((along) => ({
      places: [{ along, offset: 0 }],
      diameter: 6,
      depth: 1,
    }));
    const { findings } = checkDesign({ ...SQUARED, markers });
    const changes = findings.map((finding) =>
      remediesFor({ ...SQUARED, markers }, finding).map(
        ({ change }) => change.match(/.*depth/)?.[0],
      ),
    );
    expect(findings.map(({ hole }) => hole)).toEqual([0, 1]);
    expect(changes.map((each) => each.filter(Boolean))).toEqual([
      ["markers.0.depth"],
      ["markers.1.depth"],
    ]);
  });

  test("no remedy that brings a new error, or fails at its hole in another way", () => {
    // too shallow by 0.15, and all that deepens it goes through the web
    const design: Design = { ...FLAT, board: { ...FLAT.board, thickness: 3 }, depth: 0.9 };
    expect(remediesOf(design, "below-keep").has("depth")).toBe(false);
    expect(remediesOf(design, "below-web").has("depth")).toBe(false);
  });
});

describe("what has none", () => {
  test("a finding that the design does not have", () => {
    const design = { ...FLAT, depth: 1 };
    const [finding] = checkDesign(design).findings;
    expect(remediesFor(design, structuredClone(finding as Finding)).length).toBeGreaterThan(0);
    expect(remediesFor(design, { ...(finding as Finding) }).length).toBeGreaterThan(0);
    const strange = [
      { ...finding, value: 0.6 },
      { ...finding, hole: 1 },
      undefined,
      null,
      "below-keep",
    ];
    for (const other of strange) {
      expect(() => remediesFor(design, other as Finding)).toThrow(
        /^finding: expected a finding of /,
      );
    }
    expect(() => remediesFor(FLAT, finding as Finding)).toThrow(RangeError);
    expect(() => remediesFor({} as Design, finding as Finding)).toThrow(
      /^\d problems in the design/,
    );
  });

  test("more holes than 500: two at each of 250 frets, and one", () => {
    const frets = Array.from({ length: 250 }, (_, i) => i + 1);
    const pairs = { frets, diameter: 1, arrangement: "double", spread: 20 } as const;
    const design: Design = {
      ...SQUARED,
      scale: { positions: frets.map((n) => 4 * n) },
      board: { length: 1000, width: 50, thickness: 6 },
      depth: 0.5,
      markers: [pairs, { frets: [125], diameter: 1 }],
    };
    expect(remediesOf(design).size).toBe(0);
  });
});

test("two changes together: the first by its small step, another as far as is left to go", () => {
  // of 3 mm a floor of 1.5, a point of 1 and a web of 1 leave 0.5 too little; 15 % more wood leaves 0.05
  const thin: Design = { ...SQUARED, board: { ...SQUARED.board, thickness: 3 } };
  const [finding] = checkDesign(thin).findings;
  const pair = remedyPairFor(thin, finding as Finding);
  expect(pair).toEqual([
    { change: "board.thickness", from: 3, to: expect.closeTo(3.45, 12) },
    { change: "sanding", from: 0.5, to: expect.closeTo(0.45, 9) },
  ]);
  // of solid dots the marker's own keep: 0.01 is left of 2.6 and 15 %, where 1 and 1 and 1 are asked for
  const solid: Design = {
    ...thin,
    sanding: 0,
    fill: { kind: "solid", thickness: 2, keep: 1 },
    board: { ...SQUARED.board, thickness: 2.6 },
  };
  expect(remedyPairFor(solid, checkDesign(solid).findings[0] as Finding)).toEqual([
    { change: "board.thickness", from: 2.6, to: expect.closeTo(2.99, 12) },
    { change: "markers.0.fill.keep", from: 1, to: expect.closeTo(0.99, 9) },
  ]);
});
