/** What holds of every picture: it is well-formed, all of it is on the paper, and every text can be read. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyReport } from "./any-neck.js";
import { gallery } from "./gallery.js";
import { type Picture, picturesOf, sandings, sweeps } from "./pictures.js";
import { type Box, type Line, linesIn, paperIn, read, textsIn } from "./svg.js";

/** What is wrong with a picture's layout, in words. */
function faultsIn({ svg }: Picture): string[] {
  const drawing = read(svg);
  const [texts, lines, paper] = [textsIn(drawing), linesIn(drawing), paperIn(drawing)];
  const ends = lines.flatMap(({ from, to }) => [from, to]);
  const boxes = ends.map(([x, y]) => ({ left: x, top: y, right: x, bottom: y }));
  return [
    ...(/NaN|Infinity|undefined/.test(svg) ? ["a number is none"] : []),
    ...(boxes.every((box) => isWithin(box, paper)) ? [] : ["a line leaves the paper"]),
    ...texts.flatMap(({ words, box }, i) => [
      ...(isWithin(box, paper) ? [] : [`"${words}" leaves the paper`]),
      ...texts
        .slice(i + 1)
        .filter((other) => overlaps(box, other.box))
        .map((other) => `"${words}" overlaps "${other.words}"`),
      ...lines
        .filter((line) => runsThrough(line, box))
        .map(({ pen, name, from, to }) => `${pen} ${name} ${from} to ${to} crosses "${words}"`),
    ]),
  ];
}

function isWithin(box: Box, paper: Box): boolean {
  const fits = box.left >= paper.left && box.right <= paper.right;
  return fits && box.top >= paper.top && box.bottom <= paper.bottom;
}

/** Two boxes share more than an edge. */
function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** A line runs through a box, further than a hair's breadth inside it (Liang and Barsky). */
function runsThrough({ from: [x, y], to }: Line, box: Box): boolean {
  const hair = 0.1;
  const [dx, dy] = [to[0] - x, to[1] - y];
  let [enter, leave] = [0, 1];
  const sides = [
    [-dx, x - box.left - hair],
    [dx, box.right - hair - x],
    [-dy, y - box.top - hair],
    [dy, box.bottom - hair - y],
  ] as const;
  for (const [speed, room] of sides) {
    if (speed === 0 && room < 0) return false;
    if (speed < 0) enter = Math.max(enter, room / speed);
    if (speed > 0) leave = Math.min(leave, room / speed);
  }
  return enter < leave;
}

test.each(gallery)("$name", ({ name, report }) => {
  const pictures = picturesOf(name, report, 4);
  expect(pictures.length).toBeGreaterThanOrEqual(report.holes.length === 0 ? 2 : 4);
  const inches = picturesOf(name, report, 1, "in");
  for (const picture of [...pictures, ...inches]) {
    expect(faultsIn(picture), picture.name).toEqual([]);
  }
  // the same again
  expect(picturesOf(name, report, 1)).toEqual(pictures.slice(0, 4));
});

test("sweeps and sanding", () => {
  const pictures = [...sweeps(), ...sandings()];
  expect(pictures.length).toBeGreaterThanOrEqual(15);
  for (const picture of pictures) expect(faultsIn(picture), picture.name).toEqual([]);
});

test("any neck", () => {
  let drawn = 0;
  const property = fc.property(anyReport, (report) => {
    for (const picture of picturesOf("any", report, 2)) {
      expect(faultsIn(picture), picture.name).toEqual([]);
      drawn++;
    }
  });
  fc.assert(property, { numRuns: 40, verbose: fc.VerbosityLevel.None });
  expect(drawn).toBeGreaterThan(160);
});
