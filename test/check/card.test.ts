/** Cards and notes: kept whole in one folder; what they tell a builder to do, each figure by hand. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drillCard, repairNote } from "../../src/card/index.js";
import { checkDesign, type Design } from "../../src/index.js";
import { repairHole } from "../../src/report/repair.js";
import { golden } from "../golden/golden.js";
import { EXACT, FLAT, PLAIN, SQUARED } from "./necks.js";

const FOLDER = new URL("../../docs/examples/", import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((file) => file.endsWith(".json"));
const example = (file: string): Design => JSON.parse(readFileSync(new URL(file, FOLDER), "utf8"));

const cardOf = (design: Design, unit: "mm" | "in" = "mm", remedies = false) =>
  drillCard(checkDesign(design), { unit, design, remedies });
/** The card with its lines joined, so that a sentence is found wherever it is cut. */
const told = (text: string) => text.replace(/\s+/g, " ");
/** The steps, each as one line. */
const stepsOf = (text: string) => {
  const [, steps = ""] = /\n(STEPS[\s\S]*?)\n\n/.exec(text) ?? [];
  return steps
    .split(/^ *\d+\. /m)
    .slice(1)
    .map(told);
};

/** Everything is wrong with it. Invented. */
const WRONG: Design = {
  ...PLAIN,
  name: "Everything wrong (invented)",
  board: { ...PLAIN.board, thickness: 3 },
  markers: [
    ...PLAIN.markers,
    { frets: [5], diameter: 7, fill: { kind: "solid", thickness: 1.5 }, bit: { kind: "twist" } },
    { frets: [1], arrangement: "edge", side: "bass", gap: -0, diameter: 5, depth: 0.5 },
  ],
  slot: { depth: 2, tang: 1.7 },
  sideDots: { diameter: 2 },
};

/** Two bits, two settings, planned depths and old dots, from the wood. Invented. */
const MIXED: Design = {
  ...SQUARED,
  name: "Mixed (invented)",
  board: { ...SQUARED.board, channel: { width: 8, depth: 2, to: 100 } },
  tolerance: { ...EXACT, stop: 0.1 },
  depth: 2,
  markers: [
    ...SQUARED.markers,
    {
      frets: [4],
      diameter: 4,
      arrangement: "double",
      bit: { kind: "twist", angle: 90 },
      fill: { kind: "solid", thickness: 1.25, keep: 0.25 },
      depth: 1,
    },
    {
      frets: [3],
      shape: { kind: "rectangle", length: 6, width: 12 },
      fill: { kind: "solid", thickness: 1.5, keep: 0.25 },
      depth: 1.4,
    },
    { frets: [1], arrangement: "lengthwise", spread: 8, diameter: 4, drilled: true, depth: 2 },
  ],
};

describe("cards as they are kept", () => {
  test.each(EXAMPLES)("%s", async (file) => {
    await golden(`cards/${file.replace(".json", ".txt")}`, cardOf(example(file), "mm", true));
  });

  test.each(["acacia-22", "wren-tenor"])("%s, in inches", async (name) => {
    await golden(`cards/${name}.in.txt`, cardOf(example(`${name}.json`), "in"));
  });

  test("one of all mistakes, one of all work, one without its design", async () => {
    await golden("cards/wrong.txt", cardOf(WRONG));
    await golden("cards/mixed.txt", cardOf(MIXED, "mm", true));
    await golden("cards/mixed-without-design.txt", drillCard(checkDesign(MIXED)));
  });
});

describe("the steps, by hand", () => {
  // least 0.5 + 1, most 8 − 1 − 1: the floor in the middle, 3.75, the tip 1 below; epoxy π · 16 · 3.75 · 1.5 = 283 mm³
  test("one dot from the wood: measure, set, try, drill, mix, cure, sand", () => {
    const steps = stepsOf(cardOf({ ...SQUARED, tolerance: { ...EXACT, stop: 0.25 } }));
    expect(steps).toHaveLength(7);
    expect(steps[0]).toMatch(/The design says 1\.00 mm\. .*Travel = depth \+ your point/);
    // 0.25 less at either end for the stop
    expect(steps[1]).toMatch(/travel of 4\.75 mm, .*never in it, .*from 2\.75 to 6\.75 mm/);
    expect(steps[2]).toMatch(
      /scrap, .* 4\.75 mm deep: from 4\.50 to 5\.00 mm .*calibrateStop.*stop\.correction/,
    );
    expect(steps[3]).toMatch(/anew at every hole\. Drill fret 2\. Their floors come 3\.75 mm deep/);
    expect(steps[4]).toMatch(
      /^Mix 10\.00 ml of epoxy, 5\.00 ml of resin and 5\.00 ml of hardener: the holes take 0\.28 ml/,
    );
    expect(steps[5]).toMatch(/as its maker says/);
    expect(steps[6]).toMatch(
      /at the nut: 0\.50 mm on the centre line, 0\.50 mm at the edges .*at the end/,
    );
  });

  // the crest is 8 high at the nut and 6.4 at the end, 0.01 mm lower per mm: touched at 80 mm, 7.2 high there. The tip goes
  // 0.3 farther than set.
  test("a stop set once, with a correction", () => {
    const design: Design = {
      ...SQUARED,
      board: { ...SQUARED.board, thickness: { nut: 8, end: 6.4 } },
      stop: { from: "table", zero: 80, correction: 0.3 },
      markers: [{ frets: [2, 3], diameter: 8 }],
    };
    const [, set, trial, drill] = stepsOf(cardOf(design));
    // fret 2 at 48 lies 0.32 higher than fret 3 at 80. Least, at fret 3 and its rim at 84, where the crest is 0.04 lower:
    // 0.5 + 0.04 + 1, the point 1, less 0.3. Most: the tip at 7.2 − 1, less 0.3, at either hole
    expect(set).toMatch(
      /travel of 4\.07 mm, .*from 2\.24 to 5\.90 mm would do: fret 3 sets the least/,
    );
    // 4.07 + 0.3
    expect(trial).toMatch(/lies on the table, .* must lie 4\.37 mm deep/);
    // at fret 3 the point less, at fret 2 0.32 more
    expect(drill).toMatch(
      /centre line, 80\.00 mm from the nut: once, .*Their floors come 3\.37 to 3\.69 mm deep/,
    );
  });

  test("solid dots stand proud of the top, or lie no deeper than what the sanding takes", () => {
    // dots of 1.25 in floors of 1.25: 0.25 + 0.5 + 0.1 at least, 1.25 + 0.5 − 0.1 at most
    const fit = stepsOf(cardOf(MIXED)).find((step) => step.startsWith("Dry-fit"));
    expect(fit).toMatch(
      /1\.25 mm thick, they come to stand 0\.00 mm or more above the top; none may lie more than 0\.50 mm/,
    );
  });

  test("those that govern come last, each setting's holes together", () => {
    // over the rod channel the singles have less room than the doubles beside it, which set the least travel
    const acacia = example("acacia-22.json");
    const order =
      stepsOf(cardOf(acacia)).find((step) => step.includes("Drill in this order")) ?? "";
    expect(order).toMatch(/frets 3, 5, 7, 9, 15, 17, 19, 21, 12 bass and 12 treble/);
    // settings C, A, B have 2.3, 1.05 and 0.8 of room
    const settings = stepsOf(cardOf(MIXED)).flatMap(
      (step) => /^Set the stop, setting (\w)/.exec(step)?.[1] ?? [],
    );
    expect(settings).toEqual(["C", "A", "B"]);
  });

  test("an end mill has no point to measure or to touch with; a foot bears before the bit does", () => {
    const mill = cardOf({ ...SQUARED, bit: { kind: "end-mill" } });
    expect(stepsOf(mill)[0]).toMatch(/^Set the stop .*no point to touch with/);
    const collar = cardOf({ ...SQUARED, stop: { from: "wood", foot: 20 } });
    expect(stepsOf(collar)[1]).toMatch(/20\.00 mm wide/);
  });

  test("what is assumed of the point is marked; what is drilled takes no setting, and epoxy no more", () => {
    const { bit: _, ...open } = SQUARED;
    expect(stepsOf(cardOf(open))[0]).toMatch(/does not say, so 1\.00 mm is assumed/);
    const old: Design = {
      ...SQUARED,
      markers: [{ frets: [2], diameter: 8, drilled: true, depth: 2 }],
    };
    expect(stepsOf(cardOf(old))).toEqual([expect.stringMatching(/^Sand/)]);
  });

  test("the parts of the epoxy add up as they are written, and are never less than the holes take", () => {
    const part = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        part,
        part,
        fc.double({ min: 0, max: 200, noNaN: true }),
        (resin, hardener, waste) => {
          const design: Design = { ...SQUARED, pour: { ratio: [resin, hardener], waste } };
          const { volume = 0 } = checkDesign(design).pour ?? {};
          const mix = /Mix ([\d.]+) ml of epoxy, ([\d.]+) ml of resin and ([\d.]+) ml/.exec(
            told(cardOf(design)),
          );
          const [all, a, b] = (mix?.slice(1) ?? []).map(Number) as [number, number, number];
          expect(a + b).toBeCloseTo(all, 9);
          expect(all).toBeGreaterThanOrEqual(Math.max(volume, 10) - 1e-9);
          expect(all).toBeLessThan(Math.max(volume, 10) + 0.1 + 1e-9);
          expect(a / all).toBeCloseTo(resin / (resin + hardener), 2);
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe("the head of the card", () => {
  const verdict = (design: Design) => cardOf(design).split("\n")[2];

  test("holes, slots and edges apart: a slot never stops the drilling", () => {
    expect(verdict({ ...SQUARED, slot: { depth: 1, tang: 2 } })).toMatch(
      /^Holes: nothing stops the drilling\. Slots: 4 errors\. /,
    );
    expect(verdict({ ...SQUARED, slot: { tang: 2 } })).toMatch(
      /Slots: nothing found\. Edges: nothing found\.$/,
    );
    expect(verdict({ ...SQUARED, depth: 0.6 })).toMatch(
      /^Holes: DO NOT DRILL YET, 1 error\. Edges: nothing found\.$/,
    );
    expect(verdict({ ...SQUARED, sideDots: { diameter: 9 } })).toMatch(
      /^Holes: nothing stops.*Edges: 1 error\.$/,
    );
    expect(verdict({ ...SQUARED, markers: [] })).toMatch(/^Holes: none\./);
  });

  test("a name's control characters do not reach a terminal, nor more than a line of it", () => {
    const [title] = cardOf({ ...PLAIN, name: `\u001b[31mred\n\u0007${"c".repeat(300)}` }).split(
      "\n",
    );
    expect(title).toMatch(/^DRILL CARD: \uFFFD\[31mred \uFFFDc+$/);
    expect(title).toHaveLength(100);
  });
});

test("remedies stand on the card where its design is given and they are not refused", () => {
  const design = { ...SQUARED, depth: 0.6 };
  const report = checkDesign(design);
  expect(drillCard(report, { design })).toContain("remedies:");
  expect(cardOf(design)).not.toContain("remedies:");
  expect(drillCard(report)).not.toContain("remedies:");
});

test("of findings of one kind the worst speaks, and the others are named by field, fret or hole", () => {
  // a scale, a board and a radius far outside what is common
  const odd: Design = {
    ...PLAIN,
    scale: { length: 1300, frets: 22 },
    board: { ...PLAIN.board, thickness: 80 },
    radius: 60,
  };
  expect(told(cardOf(odd))).toContain(
    "(The worst of 3: scale.length, board.thickness and radius.)",
  );
  const shallow = { ...SQUARED, slot: { depth: 1, tang: 2 } };
  expect(told(cardOf(shallow))).toContain("(The worst of 4: frets 1, 2, 3 and 4.)");
});

test("another unit or another neck's design is refused", () => {
  const report = checkDesign(PLAIN);
  expect(() => drillCard(report, { unit: "ft" as never })).toThrow(RangeError);
  expect(() => drillCard(report, { design: SQUARED })).toThrow(RangeError);
});

/** What a card may be asked for at its limits. */
const ODD: Readonly<Record<string, Design>> = {
  "no holes": { ...PLAIN, markers: [] },
  flat: FLAT,
  "all wrong": WRONG,
  mixed: MIXED,
  "250 frets": {
    ...PLAIN,
    scale: { positions: Array.from({ length: 250 }, (_, i) => i + 1) },
    markers: [{ frets: Array.from({ length: 250 }, (_, i) => i + 1), diameter: 0.5 }],
    board: { ...PLAIN.board, length: 250 },
  },
};

test.each(Object.entries(ODD))("%s fits 100 columns, in plain text", (_, design) => {
  for (const unit of ["mm", "in"] as const) {
    const card = drillCard(checkDesign(design), { unit, design, remedies: false });
    expect(card.split("\n").filter((line) => line.length > 100)).toEqual([]);
    expect(card).not.toMatch(/NaN|undefined|Infinity|\[object|\t| \n/);
    expect(card.endsWith("\n")).toBe(true);
  }
});

describe("repairs", () => {
  const acacia = example("acacia-22.json");
  const off = { fret: 12, side: "bass", error: 0.4 } as const;
  const SIXTEENTHS = Array.from({ length: 11 }, (_, i) => ((i + 2) * 25.4) / 16);

  test("notes as they are kept: a pair, in inches, one dot, none", async () => {
    const note = (
      design: Design,
      rack: number[],
      hole: Parameters<typeof repairHole>[1] = off,
      unit: "mm" | "in" = "mm",
    ) => repairNote(repairHole(design, hole, rack), { design, unit });
    await golden("notes/pair.txt", note(acacia, [6, 6.5, 7, 7.5, 8]));
    await golden("notes/pair.in.txt", note(acacia, SIXTEENTHS, off, "in"));
    await golden("notes/one.txt", note(MIXED, [4, 6, 9], { fret: 2, error: 0.25 }));
    await golden(
      "notes/none.txt",
      note(example("wren-tenor.json"), [7, 9], { ...off, error: 0.5 }),
    );
  });

  test("the least that swallows: 6.35 + 2 · (0.4 + 0.25), rounded up", () => {
    const text = repairNote(repairHole(acacia, off, [8]));
    expect(text).toContain("It takes 7.65 mm or more");
    // both of the pair are drilled alike
    expect(told(text)).toMatch(
      /Drill fret 12 bass again .* Drill fret 12 treble again with it too/,
    );
  });

  test("in inches a travel that is set lies inside the new hole's window, as a fraction where one does", () => {
    const design = { ...acacia, stop: { from: "wood" } } as Design;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.double({ min: 2, max: 3.4, noNaN: true }),
        (error, depth) => {
          const repair = repairHole(
            { ...design, depth },
            { ...off, error: error / 100 },
            SIXTEENTHS,
          );
          const again = repair.report?.holes.find(({ path }) => path === repair.hole.path);
          const text = told(repairNote(repair, { unit: "in" }));
          const [, over, under, decimal] =
            /travel of (?:(\d+)\/(\d+) \()?([\d.]+)/.exec(text) ?? [];
          if (again === undefined) return;
          const travel = 25.4 * (over ? Number(over) / Number(under) : Number(decimal));
          expect(travel).toBeGreaterThanOrEqual(again.window.min + again.lead - 1e-6);
          expect(travel).toBeLessThanOrEqual(again.window.max + again.lead + 1e-6);
        },
      ),
      { numRuns: 60 },
    );
  });
});
