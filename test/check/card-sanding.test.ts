/** The note of the sanding, each figure by hand. */
import { expect, test } from "vitest";
import { sandingNote } from "../../src/card/index.js";
import type { Design } from "../../src/index.js";
import { sandingProgress } from "../../src/measured/index.js";

/** 50 wide and 6 thick, to be sanded by 0.15 and to 254: by 1.2333 more at its edges. Invented. */
const NECK: Design = {
  name: "Invented neck",
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: 50, thickness: 6 },
  radius: 254,
  depth: 2.5,
  markers: [{ frets: [12], diameter: 6 }],
};

type Reading = Parameters<typeof sandingProgress>[1][number];

/** The note's paragraphs, but for the cautions. */
function partsOf(reading: Partial<Reading>, change: object = {}, unit: "mm" | "in" = "mm") {
  const design: Design = { ...NECK, ...change };
  const progress = sandingProgress(design, [{ along: "fret12", centre: 6, ...reading }]);
  return sandingNote(progress, { unit }).trim().split("\n\n").slice(0, 4);
}

test("half way: what is to go at each place read, what is left of the marker, nothing found", () => {
  // the edge is to be 6 − 0.15 − 1.2333 = 4.6167; 0.7 over 25 is a radius of 446.786 (625.49 / 1.4)
  const [head, readings, markers, findings] = partsOf({ centre: 5.9, bass: 5.2 });
  expect(head?.split("\n")).toEqual([
    "SANDING: Invented neck",
    "======================",
    "Nothing is past the finished surface; so far every marker keeps enough.",
    "Lengths in mm.",
  ]);
  expect(readings?.split("\n").slice(-2)).toEqual([
    "  from nut  bass  centre  treble  off so far  radius now  crest at",
    "    324.00  0.58    0.05  -             0.10      446.78  -",
  ]);
  // the floor 2.5 − 0.1 − 0.1 at the least; 3 from the crest 0.0101 is gone beside the 0.1, in the end 0.0177 beside 0.15
  expect(markers?.split("\n").slice(-2)).toEqual([
    "  hole      now  finished",
    "  fret 12  2.18      2.13",
  ]);
  expect(findings).toBe("FINDINGS\n  None.");
});

test("past the finished surface, a marker gone, a board left flat", () => {
  // 1.05 more than 0.15 are gone; the floor was 1.2 − 0.2 down at the least
  const [head, readings, markers, findings] = partsOf(
    { centre: 4.8, bass: 4.8, treble: 4.8 },
    { depth: 1.2, name: undefined },
  );
  expect(head?.split("\n").slice(0, 3)).toEqual([
    "SANDING: unnamed neck",
    "=====================",
    "STOP: 1 of 1 markers may be left with less than they keep.",
  ]);
  expect(readings).toMatch(/\n {4}324\.00 +0\.18 +-1\.05 +0\.18 +1\.20 +flat +-$/);
  expect(markers).toMatch(/\n {2}fret 12 +-0\.20 +-0\.20$/);
  const [key, ...lines] = findings?.split("\n") ?? [];
  expect(key).toBe("FINDINGS   (! error: it costs a marker; ? warning: sand no more there)");
  expect(lines).toEqual([
    expect.stringMatching(/^ {2}! The marker at fret 12 /),
    expect.stringMatching(/^ {4}\S/),
    expect.stringMatching(/^ {2}\? The sanding is 1\.05 mm past .* centre line/),
  ]);
});

test("a warning alone costs no marker; in inches; a marker of no known depth", () => {
  const [head, readings, markers] = partsOf(
    { centre: 2.5 },
    // its window is empty, so nothing is recommended, and nothing is planned
    { depth: undefined, board: { ...NECK.board, thickness: 3 }, web: 3 },
    "in",
  );
  expect(head).toMatch(
    /\nSTOP where the sanding is past the finished surface; .*\nLengths in inches/,
  );
  expect(readings).toContain("12.756");
  expect(markers).toMatch(/\n {2}None whose depth is known\.$/);
});
