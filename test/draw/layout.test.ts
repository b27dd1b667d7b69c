/** What holds of every picture: it is well-formed, all of it is on the paper, and every text can be read. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkDesign, type Report } from "../../src/index.js";
import { anyNeck } from "../properties/designs.js";
import { fannedReport } from "./fanned-necks.js";
import { gallery } from "./gallery.js";
import { picturesOf } from "./pictures.js";
import {
  type Box,
  type Drawing,
  linesOf,
  overlap,
  paperOf,
  read,
  runsThrough,
  textsOf,
} from "./svg.js";
import { sweepPicture, sweeps } from "./sweeps.js";

/** What is wrong with a picture's layout, in words. */
function faultsOf(drawing: Drawing): string[] {
  const texts = textsOf(drawing);
  const lines = linesOf(drawing);
  const paper = paperOf(drawing);
  return texts.flatMap(({ words, box }, i) => [
    ...(within(box, paper) ? [] : [`"${words}" leaves the paper`]),
    ...texts
      .slice(i + 1)
      .filter((other) => overlap(box, other.box))
      .map((other) => `"${words}" overlaps "${other.words}"`),
    ...lines
      .filter((line) => runsThrough(line, box))
      .map(({ pen, name, from, to }) => `${pen} ${name} ${from} to ${to} crosses "${words}"`),
  ]);
}

function within(box: Box, paper: Box): boolean {
  return (
    box.left >= paper.left &&
    box.top >= paper.top &&
    box.right <= paper.right &&
    box.bottom <= paper.bottom
  );
}

function linesLeave(drawing: Drawing): boolean {
  const paper = paperOf(drawing);
  return linesOf(drawing).some(({ from, to }) =>
    [from, to].some(([x, y]) => !within({ left: x, top: y, right: x, bottom: y }, paper)),
  );
}

test("the gallery is full", () => {
  expect(gallery.length).toBeGreaterThanOrEqual(28);
});

test.each(gallery)("$name", ({ name, report }) => {
  const pictures = picturesOf(name, report);
  expect(pictures.length).toBeGreaterThanOrEqual(report.holes.length === 0 ? 2 : 4);
  for (const { name: picture, svg } of pictures) {
    const drawing = read(svg);
    expect(textsOf(drawing).length, picture).toBeGreaterThan(1);
    expect(faultsOf(drawing), picture).toEqual([]);
    expect(linesLeave(drawing), picture).toBe(false);
    expect(svg, picture).not.toMatch(/NaN|Infinity|undefined/);
  }
  // the same again
  expect(picturesOf(name, report)).toEqual(pictures);
});

test("there are sweeps", () => {
  expect(sweeps.length).toBeGreaterThanOrEqual(9);
});

test.each(sweeps)("$name", (drawn) => {
  const { svg } = sweepPicture(drawn);
  const drawing = read(svg);
  expect(textsOf(drawing).length).toBeGreaterThan(3);
  expect(faultsOf(drawing)).toEqual([]);
  expect(linesLeave(drawing)).toBe(false);
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
});

describe("any neck's pictures", () => {
  const kinds: readonly (readonly [string, fc.Arbitrary<Report>])[] = [
    ["straight frets", anyNeck.map(({ design }) => checkDesign(design))],
    ["fanned frets and pockets", fannedReport],
  ];

  test.each(kinds)("%s", (_, reports) => {
    let drawn = 0;
    const property = fc.property(reports, (report) => {
      for (const { name, svg } of picturesOf("any", report, 2)) {
        const drawing = read(svg);
        expect(faultsOf(drawing), name).toEqual([]);
        expect(linesLeave(drawing), name).toBe(false);
        drawn++;
      }
    });
    fc.assert(property, { numRuns: 40, verbose: fc.VerbosityLevel.None });
    expect(drawn).toBeGreaterThan(150);
  });
});
