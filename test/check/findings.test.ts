import { describe, expect, test } from "vitest";
import { checkDesign, type Design, type Finding, type FindingCode } from "../../src/index.js";
import { FLAT, PLAIN } from "./necks.js";

function found(design: Design, code: FindingCode): Finding[] {
  return checkDesign(design).findings.filter((finding) => finding.code === code);
}

const DOUBLE = { frets: [12], diameter: 6, arrangement: "double" } as const;

/** One design for each code, made to fail in that way, by hand. */
const BROKEN: readonly [FindingCode, "error" | "warning", Partial<Finding>, Design, RegExp][] = [
  [
    "nothing-left",
    "error",
    // 0.3 − stop 0.1 − crown 0.25
    { fret: 5, side: "centre", value: -0.05, limit: 0 },
    { ...FLAT, depth: 0.3 },
    /^Nothing may be left of the dot at fret 5: .* 0\.05 mm below/,
  ],
  [
    "below-keep",
    "error",
    { fret: 5, value: 0.65, limit: 0.7 },
    { ...FLAT, depth: 1 },
    /^Only 0\.65 mm of the dot at fret 5 may be left .* 0\.70 mm should be\.$/,
  ],
  [
    "breaks-through",
    "error",
    // 6 − 0.15 − 0.1 − 5 − 0.9
    { fret: 5, value: -0.15, limit: 0 },
    { ...FLAT, depth: 5 },
    /^The bit may break through under the dot at fret 5: .* 0\.15 mm too far\.$/,
  ],
  [
    "below-web",
    "error",
    { fret: 5, value: 0.85, limit: 1.1 },
    { ...FLAT, depth: 4 },
    /^Only 0\.85 mm of wood may be left under the bit at the dot at fret 5; 1\.10 mm should be\.$/,
  ],
  [
    "below-surface",
    "error",
    // 2 + 0.15 − 0.1 − 2.5
    { fret: 5, value: -0.45, limit: 0 },
    { ...FLAT, depth: 2.5, fill: { kind: "solid", thickness: 2 } },
    /^The top of the dot at fret 5 may end 0\.45 mm below the finished surface\.$/,
  ],
  [
    "no-depth",
    "error",
    { fret: 5, value: 1.05, limit: 0.75, maxBy: "web" },
    { ...FLAT, board: { ...FLAT.board, thickness: 3 } },
    /^No depth suits the dot at fret 5: .*at least 1\.05 mm.*at most 0\.75 mm to leave the web/,
  ],
  [
    "several-settings",
    "warning",
    { value: 2, limit: 1 },
    {
      ...FLAT,
      markers: [
        { frets: [5], diameter: 6 },
        { frets: [7], diameter: 6, fill: { kind: "poured", keep: 3.6 } },
        { frets: [9], diameter: 6, fill: { kind: "solid", thickness: 2 } },
      ],
      bit: { kind: "end-mill" },
    },
    /^One stop setting cannot serve all holes; 2 settings do: rim depths 1\.55 mm and 4\.30 mm\.$/,
  ],
  [
    "several-travels",
    "warning",
    { value: 2, limit: 1 },
    {
      ...FLAT,
      markers: [
        { frets: [5], diameter: 6 },
        { frets: [7], diameter: 6, bit: { kind: "end-mill" } },
      ],
    },
    /^The bits used at one depth lead their rims by 2 different lengths/,
  ],
  [
    "cuts-slot",
    "warning",
    { fret: 5, value: -0.5, limit: 0 },
    {
      ...FLAT,
      scale: { positions: [20, 40, 60, 80, 90] },
      board: { length: 320, width: 50, thickness: 6 },
      markers: [{ frets: [5], diameter: 11 }],
    },
    /^The edge of the dot at fret 5 cuts 0\.50 mm into a fret slot or the nut\.$/,
  ],
  [
    "near-slot",
    "warning",
    { fret: 5, value: 0.4, limit: 0.5 },
    {
      ...FLAT,
      scale: { positions: [20, 40, 60, 80, 90] },
      markers: [{ frets: [5], diameter: 9.2 }],
    },
    /^The edge of the dot at fret 5 lies 0\.40 mm from a fret slot or the nut; 0\.50 mm is wanted\.$/,
  ],
  [
    "past-edge",
    "error",
    { fret: 12, side: "bass", value: -1, limit: 0 },
    { ...FLAT, markers: [{ ...DOUBLE, spread: 46 }] },
    /^The edge of the bass dot at fret 12 passes the board's edge by 1\.00 mm\.$/,
  ],
  [
    "dots-overlap",
    "error",
    { fret: 12, value: 5.5, limit: 6 },
    { ...FLAT, markers: [{ ...DOUBLE, spread: 5.5 }] },
    /^Two dots at fret 12 overlap: their centres lie 5\.50 mm apart, and they touch at 6\.00 mm\.$/,
  ],
  [
    "thin-edge",
    "error",
    // 26 − 10 of sagitta at 24 mm; 6 − 0.15 − 0.25 − 16
    { station: "nut", value: -10.4, limit: 1.1 },
    { ...FLAT, board: { ...FLAT.board, width: 48 }, radius: 26 },
    /^The board's edge at the nut may be left -10\.40 mm thick after the radius; 1\.10 mm should be\.$/,
  ],
];

describe("each finding: code, place, value, limit, one sentence", () => {
  test.each(BROKEN)("%s (%s)", (code, severity, facts, design, sentence) => {
    const [finding] = found(design, code);
    expect(finding?.severity).toBe(severity);
    for (const [key, value] of Object.entries(facts)) {
      const actual = finding?.[key as keyof Finding];
      if (typeof value === "number") expect(actual).toBeCloseTo(value, 9);
      else expect(actual).toBe(value);
    }
    expect(finding?.message).toMatch(sentence);
    expect(checkDesign(design).ok).toBe(
      checkDesign(design).findings.every((other) => other.severity === "warning"),
    );
  });

  test.each(BROKEN)("%s is not found on a sound neck", (code) => {
    expect(found(FLAT, code)).toEqual([]);
    expect(found(PLAIN, code)).toEqual([]);
  });
});

describe("limits are met at their very value", () => {
  test("a planned depth at either end of the window passes", () => {
    const window = checkDesign(PLAIN).stops.common;
    for (const depth of [window?.min ?? 0, window?.max ?? 0]) {
      expect(checkDesign({ ...PLAIN, depth }).findings).toEqual([]);
    }
  });

  test("dots that just touch do not overlap, and a dot that just meets the edge is on the board", () => {
    expect(found({ ...FLAT, markers: [{ ...DOUBLE, spread: 6 }] }, "dots-overlap")).toEqual([]);
    expect(found({ ...FLAT, markers: [{ ...DOUBLE, spread: 44 }] }, "past-edge")).toEqual([]);
  });

  test("the edge is tapered: a dot can pass it although the width at its centre would do", () => {
    const board = { length: 320, width: { nut: 10, end: 90 }, thickness: 6 };
    const markers = [{ frets: [5], diameter: 8, arrangement: "double", spread: 24 }] as const;
    const design: Design = { ...FLAT, board, markers };
    const { along } = checkDesign(design).holes[0] ?? { along: 0 };
    const half = 5 + along / 8;
    expect(half - 12 - 4).toBeGreaterThan(0);
    // perpendicular to an edge that runs 1 in 8
    const gap = (half - 12) / Math.hypot(1, 1 / 8) - 4;
    const touching = 24 + 2 * gap * Math.hypot(1, 1 / 8);
    const passing = (spread: number) =>
      found({ ...design, markers: [{ ...markers[0], spread }] }, "past-edge");
    expect(passing(touching - 0.01)).toEqual([]);
    expect(passing(touching + 0.01)).toHaveLength(2);
  });
});

describe("the list", () => {
  test("errors come first, and ok is the absence of errors", () => {
    const design: Design = {
      ...PLAIN,
      depth: 1,
      markers: [...PLAIN.markers, { frets: [22], diameter: 13 }],
    };
    const severities = checkDesign(design).findings.map(({ severity }) => severity);
    expect(severities).toContain("warning");
    expect(severities).toContain("error");
    expect(severities).toEqual([...severities].sort());
    expect(checkDesign(design).ok).toBe(false);
  });

  test("a report goes through JSON with its sentences", () => {
    const report = checkDesign({ ...FLAT, depth: 5 });
    const copy = JSON.parse(JSON.stringify(report));
    expect(copy.findings[0].message).toBe(report.findings[0]?.message);
    // remedies are sought when they are read, so a copy leaves them out
    expect(copy.findings[0]).not.toHaveProperty("remedies");
    expect(report.findings[0]?.remedies?.length).toBeGreaterThan(0);
  });
});
