/** What a card says of chances. */
import { expect, test } from "vitest";
import { drillCard } from "../../src/card/index.js";
import type { ChanceSummary } from "../../src/chance/index.js";
import { checkDesign } from "../../src/index.js";
import { golden } from "../golden/golden.js";
import { PLAIN } from "./necks.js";

const LIKELY: ChanceSummary = {
  count: 10,
  holds: 0.993,
  fails: 0.007,
  worst: { hole: 4, name: "fret 12, bass", rule: "keep", fails: 0.004 },
  level: 0.95,
  best: { travel: 4.313, holds: 0.9985, fails: 0.0015, range: { min: 3.9012, max: 4.6078 } },
};
const report = checkDesign(PLAIN);
const sections = (chance: unknown, unit: "mm" | "in" = "mm") =>
  drillCard(report, { chance: chance as ChanceSummary, unit })
    .split("\n\n")
    .filter((section) => section.startsWith("CHANCE"));

test("as it is kept: likely, in inches, certain, hopeless, of several stops", () => {
  const worst = { hole: 0, name: "fret 3", rule: "channel", fails: 1 } as const;
  const told = [
    sections(LIKELY),
    sections(LIKELY, "in"),
    sections({ ...LIKELY, count: 1, fails: 1e-9, holds: 1, worst: null }),
    sections({ ...LIKELY, fails: 1, worst, best: { travel: 3, fails: 0.4, range: null } }),
    sections({ ...LIKELY, best: null }),
  ];
  golden("cards/chances.txt", `${told.flat().join("\n\n")}\n`);
});

test("none where none is asked for, and none of a board without holes", () => {
  expect(sections(undefined)).toEqual([]);
  expect(sections({ ...LIKELY, count: 0 })).toEqual([]);
});

test.each([
  null,
  7,
  [],
  { ...LIKELY, fails: Number.NaN },
  { ...LIKELY, level: 2 },
  { ...LIKELY, worst: { name: "fret 3", rule: "luck", fails: 0 } },
  { ...LIKELY, best: { travel: Infinity, fails: 0, range: null } },
  { ...LIKELY, best: () => 1 },
])("what is no summary is refused: %j", (chance) => {
  expect(() => sections(chance)).toThrow(/^options\.chance: /);
});
