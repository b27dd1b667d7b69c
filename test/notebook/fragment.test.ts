/** Fragments as they are kept, drawings aside, which are held elsewhere; and which hole's section is shown. */
import { describe, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { checkDesign, type Design, type Report } from "../../src/index.js";
import { html } from "../../src/notebook/index.js";
import { SQUARED } from "../check/necks.js";
import { golden } from "../golden/golden.js";

const reportOn = (change: object): Report => checkDesign({ ...SQUARED, ...change });

const KEPT: Readonly<Record<string, object>> = {
  "one-dot": {
    name: "Small board (invented)",
    stop: { from: "table" },
    slot: { tang: 1.5 },
  },
  "shallow-and-wide": {
    markers: [
      { frets: [2], diameter: 8, depth: 1 },
      { frets: [3], diameter: 31.5, depth: 1 },
    ],
  },
  "several-settings": {
    markers: [
      { frets: [1], diameter: 8, fill: { kind: "poured", keep: 4.2 } },
      { frets: [2], diameter: 8, fill: { kind: "solid", thickness: 1 } },
    ],
  },
  "no-holes": { markers: [] },
};

test.each(Object.entries(KEPT))("%s", async (name, change) => {
  const design = { ...SQUARED, ...change } as Design;
  const fragment = html(checkDesign(design), { design });
  await golden(`html/${name}.html`, fragment.replace(/<svg[\s\S]*?<\/svg>\n/g, "<svg/>\n"));
});

test("in inches, without remedies", async () => {
  const design = { ...SQUARED, ...KEPT["shallow-and-wide"] } as Design;
  const fragment = html(checkDesign(design), { design, unit: "in", remedies: false });
  await golden("html/inches.html", fragment.replace(/<svg[\s\S]*?<\/svg>\n/g, "<svg/>\n"));
  expect(fragment).not.toContain("Remedies");
});

test("another unit, and another design, are refused", () => {
  const report = reportOn({});
  expect(() => html(report, { unit: "cm" as never })).toThrow(/^unit: expected "mm" or "in"/);
  const other = { ...SQUARED, markers: [] } as Design;
  expect(() => html(report, { design: other })).toThrow(/^options\.design: expected/);
});

describe("the hole whose section is shown", () => {
  const shows = (report: Report) =>
    report.holes.flatMap((_, i) => (html(report).includes(drawSection(report, i)) ? [i] : []));
  const planned = (...depths: number[]) =>
    reportOn({ markers: depths.map((depth, i) => ({ frets: [i + 1], diameter: 8, depth })) });

  // from 1.5 to 6 suit
  test("of planned depths the nearest to a limit, whether the least or the most", () => {
    expect(shows(planned(2, 3, 4))).toEqual([0]);
    expect(shows(planned(3, 5.75, 2))).toEqual([1]);
    expect(shows(planned(3, 1.25, 5.75))).toEqual([1]);
    expect(shows(planned(3, 1.25, 6.5))).toEqual([2]);
  });

  test("of holes that no depth suits the one whose limits clash most", () => {
    const keeps = (...keep: number[]) =>
      reportOn({
        board: { ...SQUARED.board, thickness: 2 },
        markers: keep.map((mm, i) => ({
          frets: [i + 1],
          diameter: 8,
          fill: { kind: "poured", keep: mm },
        })),
      });
    // at most 0 everywhere; at least 0.5 more than the keep
    expect(shows(keeps(1, 3, 2))).toEqual([1]);
    expect(shows(keeps(4, 3, 2))).toEqual([0]);
  });
});
