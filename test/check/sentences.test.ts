/** Every sentence that a finding or a remedy can say, kept as one list. */
import { expect, test } from "vitest";
import { listPaths } from "../../src/design/paths.js";
import { FINDING_CODES, type FindingCode } from "../../src/index.js";
import type { FindingFacts } from "../../src/report/findings.js";
import { tell, tellRemedy } from "../../src/report/sentences.js";
import { INCHES, MILLIMETRES } from "../../src/text/length-text.js";
import { golden } from "../golden/golden.js";

type Sample = Partial<FindingFacts>;

const DOT: Sample = { fret: 12, side: "treble", hole: 4 };
const [GONE, SHORT, OVER]: readonly Sample[] = [
  { value: -0.004, limit: 0 },
  { value: 2.9964, limit: 3.0036 },
  { value: 3.0036, limit: 2.9964 },
];

/** What each code is told of: places where it can be, a value on the wrong side of its limit. */
const SAMPLES: Readonly<Record<FindingCode, readonly Sample[]>> = {
  "nothing-left": [{ ...DOT, ...GONE }],
  "below-keep": [
    { ...DOT, ...SHORT },
    { fret: 7, side: "centre", hole: 2, ...SHORT },
  ],
  "breaks-through": [{ ...DOT, ...GONE }],
  "below-web": [{ ...DOT, ...SHORT }],
  "below-surface": [{ ...DOT, ...GONE }],
  "no-depth": (["web", "channel", "flush"] as const).map((maxBy) => ({ ...DOT, ...OVER, maxBy })),
  "several-settings": [{ value: 3, limit: 1, suits: [2.5, 3.125, 4] }],
  "several-travels": [{ value: 2, limit: 1, suits: [2.5, 3.125] }],
  "cuts-slot": [{ ...DOT, ...GONE }],
  "near-slot": [{ ...DOT, ...SHORT }],
  "past-edge": [{ ...DOT, ...GONE }],
  "dots-overlap": [{ ...DOT, other: 5, ...GONE }],
  "thin-edge": (["nut", "end"] as const).map((station) => ({ station, ...SHORT })),
  "no-slot-depth": [{ fret: 21, ...OVER }],
  "slot-too-shallow": [{ fret: 21, ...SHORT }],
  "slot-too-deep": [{ fret: 21, ...OVER }],
  "side-dot-tight": [{ fret: 12, ...SHORT }],
  "side-dot-meets-hole": [{ ...DOT, ...GONE }],
  "side-dot-meets-slot": [{ fret: 12, ...GONE }],
  "radius-not-reached": [{ ...SHORT, path: "sanding" }],
  "fret-past-end": [{ fret: 21, ...OVER, path: "board.length" }],
  "no-step": [{ ...GONE, suits: [2.5, 3.125] }],
  "near-channel": [{ ...DOT, ...SHORT }],
  "unlikely-value": [
    { value: 25.5, limit: 200, path: "scale.length", suits: [647.7] },
    { value: 3000, limit: 1200, path: "scale.length" },
  ],
  "assumed-point": [{ value: 1, limit: 1, path: "bit.point" }],
  "assumed-zero": [{ ...DOT, value: -0.4, limit: 0, path: "stop.from" }],
  "assumed-foot": [{ ...DOT, value: 0, limit: 0, path: "stop.foot" }],
};

test("each code has its sentence, in mm and in inches", async () => {
  const lines = Object.entries(SAMPLES).flatMap(([code, samples]) =>
    [MILLIMETRES, INCHES].flatMap((unit) =>
      samples.map(
        (sample) =>
          `${code}: ${tell({ code, severity: "error", ...sample } as FindingFacts, unit)}`,
      ),
    ),
  );
  for (const line of lines)
    expect(line).toMatch(/^[a-z-]+: [A-Za-z](?!.*(undefined|NaN|Infinity| {2})).*[.?]$/);
  expect(Object.keys(SAMPLES)).toEqual(Object.keys(FINDING_CODES));
  await golden("sentences.txt", `${lines.join("\n")}\n`);
});

/** What is settled by then, and no remedy: what is measured, and how far it may be off. */
const SETTLED = /^(scale|existing|tolerance|pour)\b|^board\.(length|width)|corners|frets/;

test("each number that a remedy may change has its words for more and for less", async () => {
  const paths = listPaths().filter((path) => !SETTLED.test(path));
  const lines = paths.flatMap((path) =>
    [1, 3].map((to) => `${path}: ${tellRemedy({ change: path, from: 2, to })}`),
  );
  for (const line of lines) expect(line).toMatch(/^(\S+): (?!\1)/);
  expect(lines.length).toBeGreaterThan(90);
  await golden("remedies.txt", `${lines.join("\n")}\n`);
});

test("a threshold above is rounded up, one below down, and flat is a word", () => {
  const stated = tellRemedy({ change: "bit.point", from: 1, to: 0.5 }, undefined, {
    "bit.kind": "forstner",
  });
  expect(stated).toMatch(/, stated with its kind "forstner"$/);
  expect(tellRemedy({ change: "bit.point", from: 1, to: 0.5 })).not.toContain("stated");
  const told = (from: number, to: number, change = "web") => tellRemedy({ change, from, to });
  expect(told(1, 0.799)).toContain("0.79 instead of 1.00");
  expect(told(1, 1.121)).toContain("1.13 instead of 1.00");
  expect(told(254, Infinity, "radius")).toContain("flat instead of 254.00");
  // tan(a/2) = 3.5 / 1.9: 123.02°
  const angle = (360 / Math.PI) * Math.atan(3.5 / 1.9);
  expect(told(118, angle, "bit.angle")).toContain("124 degrees instead of 118");
});
