/** The card, as it is read at the bench. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { drillCard, repairNote } from "../../src/card/index.js";
import { checkDesign, type Design, repairHole } from "../../src/index.js";
import { FLAT, PLAIN } from "./necks.js";

const FOLDER = new URL("../../docs/examples/", import.meta.url);

function example(name: string): Design {
  return JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), "utf8"));
}

const EXAMPLES = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.replace(".json", ""));

const ODD: Readonly<Record<string, Design>> = {
  "no holes": { ...PLAIN, markers: [] },
  "a flat board": FLAT,
  "a name of several lines": { ...PLAIN, name: `a\nb\t${"c".repeat(300)}` },
  "nothing fits": {
    ...PLAIN,
    depth: 4,
    board: { ...PLAIN.board, thickness: 2 },
    slot: { depth: 3, tang: 1.7 },
    sideDots: { diameter: 2 },
  },
  "fanned frets and pockets": {
    ...PLAIN,
    scale: { bass: 686, treble: 648, perpendicular: 7, frets: 22 },
    board: { length: 520, width: { nut: 46, end: 60 }, thickness: 6 },
    markers: [
      { frets: [3, 5, 7, 9], diameter: 6 },
      { frets: [12], shape: { kind: "trapezoid", slotGap: 5, edgeGap: 6 } },
    ],
  },
  "250 frets": {
    ...PLAIN,
    scale: { positions: Array.from({ length: 250 }, (_, i) => i + 1) },
    markers: [{ frets: Array.from({ length: 250 }, (_, i) => i + 1), diameter: 0.5 }],
    board: { ...PLAIN.board, length: 250 },
  },
  "very long": {
    ...PLAIN,
    scale: { length: 1e9, frets: 22 },
    board: { length: 8e8, width: 5e7, thickness: 1e7 },
    radius: 4e8,
  },
};

describe.each(["mm", "in"] as const)("in %s", (unit) => {
  const designs: [string, Design][] = [
    ...EXAMPLES.map((name): [string, Design] => [name, example(name)]),
    ...Object.entries(ODD),
  ];
  test("a name's control characters do not reach a terminal", () => {
    const card = drillCard(checkDesign({ ...PLAIN, name: "\u001b[31mred\u0007" }));
    expect(card).not.toMatch(/[^\P{Cc}\n]/u);
    expect(card.split("\n")[0]).toBe("DRILL CARD: \uFFFD[31mred\uFFFD");
  });

  test.each(designs)("%s fits 100 columns, in plain text", (name, design) => {
    const card = drillCard(checkDesign(design), { unit });
    const lines = card.split("\n");
    const long = lines.filter((line) => line.length > 100);
    // numbers of a thousand kilometres have no room beside each other
    if (name !== "very long") expect(long).toEqual([]);
    expect(card).not.toMatch(/NaN|undefined|\[object|\t/);
    expect(card.endsWith("\n")).toBe(true);
    for (const heading of ["DRILL CARD", "STOP", "WRONG", "EDGES", "CAUTIONS"]) {
      expect(lines.some((line) => line.startsWith(heading))).toBe(true);
    }
  });
});

describe("what it says", () => {
  const cardOf = (name: string) => drillCard(checkDesign(example(name)));

  test("the setting: travel from the point's touch, and the rim's depth", () => {
    const [setting] = checkDesign(example("larch-22")).stops.settings;
    expect(cardOf("larch-22")).toContain(
      `for every hole: ${setting?.travel.toFixed(2)} mm of travel from the point's touch. Rim depth ${setting?.depth.toFixed(2)} mm.`,
    );
  });

  test("who governs it, and a row for every hole", () => {
    const card = cardOf("larch-22");
    expect(card).toContain("fret 12, bass sets the least");
    expect(card.match(/^ +\d+ {2}(?:centre|bass|treble) /gm)).toHaveLength(10);
  });

  test("a least is rounded up and a most down, so that both are safe to use", () => {
    const report = checkDesign(PLAIN);
    const { min = 0, max = 0 } = report.stops.common ?? {};
    const text = drillCard(report);
    const [, least, most] = /Rim depths from (\S+) to (\S+) would do/.exec(text) ?? [];
    expect(Number(least)).toBeGreaterThanOrEqual(min);
    expect(Number(least) - min).toBeLessThan(0.01);
    expect(Number(most)).toBeLessThanOrEqual(max + 1e-9);
    expect(max - Number(most)).toBeLessThan(0.01);
  });

  test("two settings on the thin tenor, each with its frets", () => {
    const text = cardOf("wren-tenor");
    expect(text).toMatch(/Setting A, for frets 5, 7, 10 and 15: /);
    expect(text).toMatch(/Setting B, for fret 12: /);
    expect(text).toMatch(/One stop setting cannot serve all holes; 2 settings do/);
  });

  test("what is wrong, once for all places alike, and what cures it", () => {
    const text = cardOf("heron-bass");
    expect(text).toContain("DO NOT DRILL YET");
    expect(text.replace(/\s+/g, " ")).toMatch(
      /Only 0\.80 mm of wood may be left .*The worst of 6: fret 3, .*cures: another depth for all,/,
    );
    // rounded to the side that still cures it
    expect(text.replace(/\s+/g, " ")).toContain("a thicker blank, 7.71 instead of 7.50");
    const cured = { ...example("heron-bass") } as { board: object };
    cured.board = { ...cured.board, thickness: 7.71 };
    expect(checkDesign(cured as unknown as Design).ok).toBe(true);
  });

  test("a repair: the bit, its setting, and what ruled out the others", () => {
    const stray = { fret: 12, side: "bass", error: 0.4 } as const;
    const note = repairNote(repairHole(example("larch-22"), stray, [7, 7.5, 8]));
    expect(note).toBe(
      "REPAIR: the bass dot at fret 12\n  The next bit must be 7.15 or more to swallow the old hole.\n  Fill the hole, then drill again with 7.50 mm, to a rim depth of 3.00 mm (travel 4.60 mm).\n",
    );
    const none = repairNote(repairHole(example("wren-tenor"), { ...stray, error: 1.5 }, [7, 9]));
    expect(none).toContain("No bit of the rack does.");
    expect(none).toMatch(/Not 9\.00: /);
    for (const line of none.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  test("in inches a limit's fraction and its decimal are both on the safe side", () => {
    const { holes, slots } = checkDesign(example("larch-22"));
    const card = drillCard(checkDesign(example("larch-22")), { unit: "in" });
    const most = (holes[0]?.window.max ?? Number.NaN) / 25.4;
    // by hand: 3.4 mm is .13386 in, between 8/64 = .125 and 9/64 = .141
    expect(most).toBeCloseTo(0.13386, 5);
    expect(card).toContain("1/8 (.133)");
    // 3.42333 mm is .13478 in, between 8/64 and 9/64; 4.6 mm is .18110 in, between 11/64 = .172 and 12/64 = .1875
    expect(slots?.least).toBeCloseTo(3.42333, 5);
    expect(card).toContain("Saw from 9/64 (.135) (fret 22 sets it) to 11/64 (.181)");
    expect(card).not.toContain("9/64 (.133)");
  });

  test("in inches a setting that its nearest 1/64 would put outside the window is told in decimals", () => {
    // by hand: a blank of 4.36 mm leaves depths from 1.546 to 1.56 mm, and 64ths lie .397 mm apart
    const { stopStep: _step, depth: _depth, ...rest } = example("larch-22");
    const board = { ...rest.board, thickness: 4.36 };
    const card = drillCard(checkDesign({ ...rest, board }), { unit: "in" });
    expect(card).toMatch(/Stop setting, for every hole: \.\d{3} in of travel/);
    expect(card).toMatch(/Rim depth \.\d{3} in\./);
  });

  test("inches: the nearest 1/64 with the decimal beside it", () => {
    const inches = drillCard(checkDesign(example("larch-22")), { unit: "in" });
    // 6.35 mm = 1/4 in (Machinists' unit, NIST SP 811, memory)
    expect(inches).toContain("1/4 (.250)");
    expect(() => drillCard(checkDesign(PLAIN), { unit: "ft" as never })).toThrow(RangeError);
  });

  test("the examples are what they are said to be", () => {
    expect(EXAMPLES.sort()).toEqual([
      "alder-24",
      "heron-bass",
      "larch-22",
      "plover-fanned",
      "wren-tenor",
    ]);
    for (const name of EXAMPLES) expect(example(name).name).toContain("invented example");
    const settings = (name: string) => checkDesign(example(name)).stops.settings.length;
    expect(EXAMPLES.map(settings)).toEqual([1, 1, 1, 1, 2]);
    const ok = EXAMPLES.map((name) => checkDesign(example(name)).ok);
    expect(ok).toEqual([true, false, true, true, true]);
  });
});
