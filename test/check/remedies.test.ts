/** Remedies are exact: the finding is gone at the threshold and stands 0.01 short of it. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, type Finding, LIMITS, type Remedy } from "../../src/index.js";
import { EXACT, FLAT, PLAIN, SQUARED } from "./necks.js";

/** The design with the value at one path; what the design does not state is filled in as the check assumes it. */
function changed(design: Design, path: string, value: number): Design {
  const copy = structuredClone({
    fill: { kind: "poured" },
    bit: { kind: "forstner", point: 1 },
    ...design,
  }) as Record<string, unknown>;
  const keys = path.split(".");
  const last = keys.pop() as string;
  let place = copy;
  for (const key of keys) {
    place[key] ??= {};
    place = place[key] as Record<string, unknown>;
  }
  place[last] = value;
  return copy as unknown as Design;
}

const nameOf = ({ code, fret, side, station }: Finding) => [code, fret, side, station].join(" ");

/** The milder degree of the same failing is no new error. */
const MILDER: Readonly<Record<string, string>> = {
  "nothing-left": "below-keep",
  "breaks-through": "below-web",
};

function stands(finding: Finding, design: Design): boolean {
  return checkDesign(design).findings.some((other) => nameOf(other) === nameOf(finding));
}

function errorsOf(design: Design): Set<string> {
  const errors = checkDesign(design).findings.filter(({ severity }) => severity === "error");
  return new Set(errors.map(nameOf));
}

/** Holds one remedy against the check itself, through the design. */
function holdExact(design: Design, finding: Finding, remedy: Remedy): void {
  const { change, from, to } = remedy;
  const cured = changed(design, change, to);
  const milder = { ...finding, code: MILDER[finding.code] ?? finding.code } as Finding;
  expect(stands(finding, cured), `${change} = ${to} cures ${finding.message}`).toBe(false);
  expect(stands(milder, cured), `${change} = ${to} cures it wholly`).toBe(false);
  const short = to > from ? Math.max(from, to - 0.01) : Math.min(from, to + 0.01);
  const almost = changed(design, change, short);
  expect(stands(finding, almost) || stands(milder, almost), `${change} = ${short}`).toBe(true);
  const before = [...errorsOf(design)];
  const mild = before.map((name) => name.replace(/^\S+/, (code) => MILDER[code] ?? code));
  for (const error of errorsOf(cured)) expect([...before, ...mild]).toContain(error);
}

const changesOf = (finding: Finding | undefined) => finding?.remedies?.map(({ change }) => change);

describe("by hand", () => {
  test("no depth: a flat board that is 0.3 mm too thin", () => {
    const design: Design = { ...FLAT, board: { ...FLAT.board, thickness: 3 } };
    const [finding] = checkDesign(design).findings;
    const to = Object.fromEntries(
      (finding?.remedies ?? []).map(({ change, to: value }) => [change, value]),
    );
    // at least 1.05, at most 0.75: 0.3 mm are wanting
    expect(to["board.thickness"]).toBeCloseTo(3.3, 9);
    expect(to["bit.point"]).toBeCloseTo(0.6, 9);
    expect(to.web).toBeCloseTo(0.8, 9);
    expect(to["fill.keep"]).toBeCloseTo(0.4, 9);
    // a flat board's window does not hang on the dot or the radius
    expect(Object.keys(to)).toHaveLength(4);
  });

  test("a planned depth: all deeper, or a separate setting", () => {
    const [finding] = checkDesign({ ...FLAT, depth: 1 }).findings;
    expect(changesOf(finding)).toEqual(["depth", "markers.0.depth", "fill.keep"]);
    expect(finding?.remedies?.[0]).toMatchObject({ change: "depth", from: 1 });
    expect(finding?.remedies?.[0]?.to).toBeCloseTo(1.05, 9);
  });

  test("a pair that is too far apart: closer together, smaller, flatter", () => {
    const design: Design = { ...PLAIN, depth: 1.5 };
    const [finding] = checkDesign(design).findings;
    expect(finding?.code).toBe("below-keep");
    expect(changesOf(finding)).toEqual(
      expect.arrayContaining(["radius", "markers.1.diameter", "markers.1.spread", "fill.keep"]),
    );
  });

  test("no remedy that brings a new error", () => {
    // the hole is too shallow, and all that deepens it goes through the web
    const design: Design = { ...FLAT, board: { ...FLAT.board, thickness: 3 }, depth: 0.9 };
    const finding = checkDesign(design).findings.find(({ code }) => code === "below-keep");
    expect(finding).toBeDefined();
    expect(changesOf(finding)).not.toContain("depth");
  });

  test("nothing cures bits that lead their rims by different lengths", () => {
    const markers = [
      { frets: [5], diameter: 6 },
      { frets: [7], diameter: 6, bit: { kind: "end-mill" } },
    ] as const;
    const [finding] = checkDesign({ ...FLAT, markers }).findings;
    expect(finding?.remedies).toEqual([]);
  });
});

describe("what is not sought, and what is", () => {
  // 250 frets of 4 mm, each with a pair: as many holes as the limit
  const most: Design = {
    scale: { positions: Array.from({ length: 250 }, (_, i) => 4 * (i + 1)) },
    board: { length: 1000, width: 50, thickness: 6 },
    radius: Infinity,
    depth: 0.5,
    markers: [
      {
        frets: Array.from({ length: 250 }, (_, i) => i + 1),
        diameter: 1,
        arrangement: "double",
        spread: 20,
      },
    ],
  };

  test("nothing for more holes than the limit", () => {
    const [finding] = checkDesign(most).findings;
    expect(LIMITS.remedyHoles.value).toBe(500);
    expect(changesOf(finding)).toContain("depth");
    const markers = [...most.markers, { frets: [125], diameter: 1 }];
    const [other] = checkDesign({ ...most, markers }).findings;
    expect(other?.code).toBe(finding?.code);
    expect(other?.remedies).toEqual([]);
  });

  test("a finding about no hole: every group's numbers", () => {
    // a flat board of 6 mm: 3.35 to 3.75 for the one, 0.85 to 1.05 for the other
    const fill = { kind: "poured", keep: 3 } as const;
    const design: Design = {
      ...FLAT,
      markers: [
        { frets: [5], diameter: 6, fill },
        { frets: [7], diameter: 6, fill: { kind: "solid", thickness: 1, keep: 0.5 } },
      ],
    };
    const [finding] = checkDesign(design).findings;
    expect(finding?.code).toBe("several-settings");
    // 2.3 mm lie between
    const to = new Map(finding?.remedies?.map((remedy) => [remedy.change, remedy.to]));
    expect([...to.keys()]).toEqual(["markers.0.fill.keep", "markers.1.fill.thickness"]);
    expect(to.get("markers.0.fill.keep")).toBeCloseTo(3 - 2.3, 9);
    expect(to.get("markers.1.fill.thickness")).toBeCloseTo(1 + 2.3, 9);
  });

  test("an edge too thin hangs on the radius: by how much is a sum of squares", () => {
    const design: Design = {
      ...FLAT,
      board: { length: 320, width: 32, thickness: 3 },
      radius: 65,
      crown: 0,
      tolerance: EXACT,
      web: 1.5,
      markers: [],
    };
    const { findings } = checkDesign(design);
    expect(new Set(findings.map(({ code }) => code))).toEqual(new Set(["thin-edge"]));
    // 16 mm aside: a drop of 1.5 where r² = (r − 1.5)² + 16²
    const remedies = findings[0]?.remedies ?? [];
    const to = new Map(remedies.map((remedy) => [remedy.change, remedy.to]));
    expect(to.get("radius")).toBeCloseTo((16 ** 2 + 1.5 ** 2) / 3, 9);
    // a cylinder of 65 mm takes 2
    expect(to.get("board.thickness")).toBeCloseTo(3.5, 9);
    expect(to.get("web")).toBeCloseTo(1, 9);
  });

  test("a warning is no new error, an error that stood before neither", () => {
    // a smaller dot keeps more of itself, and would still be near the slots
    const design: Design = {
      ...SQUARED,
      depth: 0.25,
      markers: [{ frets: [2], diameter: 31.5 }],
    };
    const { findings } = checkDesign(design);
    expect(findings.map(({ code }) => code)).toEqual(["nothing-left", "near-slot"]);
    expect(changesOf(findings[0])).toEqual(["depth", "markers.0.depth"]);
    expect(changesOf(findings[1])).toEqual(["markers.0.diameter"]);
    expect(findings[1]?.remedies?.[0]?.to).toBeCloseTo(31, 9);
  });

  test("one hole is cured though another still fails", () => {
    const markers = [
      { frets: [5], diameter: 6, depth: 1 },
      { frets: [7], diameter: 6, depth: 0.9 },
    ];
    const { findings } = checkDesign({ ...FLAT, markers });
    expect(findings.map(({ code, fret }) => [code, fret])).toEqual([
      ["below-keep", 5],
      ["below-keep", 7],
    ]);
    expect(changesOf(findings[0])).toEqual(["markers.0.depth", "fill.keep"]);
    expect(changesOf(findings[1])).toEqual(["markers.1.depth", "fill.keep"]);
  });

  test("what fails wholly is cured wholly: not only to the milder degree", () => {
    // 3.75 leaves the web, 4.85 a trace of wood
    const [through] = checkDesign({ ...FLAT, depth: 5.5 }).findings;
    expect(through?.code).toBe("breaks-through");
    expect(through?.remedies?.[0]).toMatchObject({ change: "depth", from: 5.5 });
    expect(through?.remedies?.[0]?.to).toBeCloseTo(3.75, 9);
    // a dot of 32 just meets both slots, one of 31 clears them by half a millimetre each
    const markers = [{ frets: [2], diameter: 33 }];
    const [cuts] = checkDesign({ ...SQUARED, markers }).findings;
    expect(cuts?.code).toBe("cuts-slot");
    expect(cuts?.remedies).toHaveLength(1);
    expect(cuts?.remedies?.[0]?.to).toBeCloseTo(31, 9);
  });

  test("a change that would end where no board can be made is none", () => {
    // twice as far apart the holes lie where the surface has ended
    const design: Design = {
      ...SQUARED,
      board: { length: 160, width: 20, thickness: 8 },
      radius: 11,
      markers: [{ frets: [2], diameter: 9, arrangement: "double", spread: 7 }],
    };
    const finding = checkDesign(design).findings.find(({ code }) => code === "dots-overlap");
    expect(finding).toBeDefined();
    expect(changesOf(finding)).toEqual(["markers.0.diameter"]);
    expect(finding?.remedies?.[0]?.to).toBeCloseTo(7, 9);
  });

  test("a hole that fails in another way is not cured", () => {
    // 0.9 of 3 mm is too shallow by 0.15; the web under it allows 0.75
    const design: Design = { ...FLAT, board: { ...FLAT.board, thickness: 3 }, depth: 0.9 };
    const finding = checkDesign(design).findings.find(({ code }) => code === "below-web");
    expect(finding).toBeDefined();
    // shallower by itself makes it too shallow by more: no new name, yet no cure
    expect(changesOf(finding)).toEqual([]);
  });
});

test("exact on random necks that fail", () => {
  let held = 0;
  const seen = new Set<string>();
  const neck = fc.record({
    radius: fc.oneof(
      fc.double({ min: 180, max: 400, noNaN: true }),
      fc.record({
        nut: fc.double({ min: 180, max: 300, noNaN: true }),
        end: fc.double({ min: 240, max: 500, noNaN: true }),
      }),
    ),
    thickness: fc.double({ min: 2.5, max: 4, noNaN: true }),
    diameter: fc.double({ min: 4, max: 8, noNaN: true }),
    keep: fc.double({ min: 0.3, max: 1, noNaN: true }),
    web: fc.double({ min: 0.3, max: 1, noNaN: true }),
    depth: fc.option(fc.double({ min: 1, max: 3, noNaN: true }), { nil: undefined }),
    bit: fc.constantFrom(
      { kind: "forstner", point: 1 } as const,
      { kind: "brad-point", point: 0.7 } as const,
      { kind: "twist", angle: 118 } as const,
      { kind: "end-mill" } as const,
    ),
    solid: fc.boolean(),
    slot: fc.boolean(),
  });
  fc.assert(
    fc.property(neck, ({ thickness, diameter, keep, depth, solid, slot, ...rest }) => {
      const design: Design = {
        ...PLAIN,
        ...rest,
        board: { ...PLAIN.board, thickness: { nut: thickness, end: thickness - 0.3 } },
        markers: [
          { frets: [5], diameter },
          { frets: [12], diameter, arrangement: "double" },
        ],
        fill: solid ? { kind: "solid", thickness: 1.6, keep } : { kind: "poured", keep },
        ...(depth === undefined ? {} : { depth }),
        ...(slot ? { slot: { depth: 2.4, tang: 1, web: 0.6 } } : {}),
      };
      for (const finding of checkDesign(design).findings.slice(0, 3)) {
        for (const remedy of finding.remedies ?? []) {
          holdExact(design, finding, remedy);
          seen.add(`${finding.code} ${remedy.change}`);
          held++;
        }
      }
    }),
    { numRuns: 60 },
  );
  expect(held).toBeGreaterThan(300);
  for (const pair of [
    "no-depth bit.angle",
    "no-depth board.thickness.end",
    "no-depth fill.keep",
    "no-depth web",
    "below-web depth",
    "below-keep markers.1.depth",
  ]) {
    expect([...seen]).toContain(pair);
  }
});
