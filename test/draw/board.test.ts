/** The plan: outline, frets and markers lie where the report says, read back at the scale that the picture states. */
import { describe, expect, test } from "vitest";
import { drawBoard } from "../../src/draw/index.js";
import { gallery, reportOf } from "./gallery.js";
import { classed, type Drawing, linesIn, read, type Spot, spotsIn, textsIn } from "./svg.js";

/** mm on paper for each mm of the board, as the picture says. */
function scaleIn(drawing: Drawing): number {
  const heading = textsIn(drawing)
    .map(({ words }) => words)
    .join(" ");
  const [, up = "", over = ""] = /Scale (\d+(?:\.\d+)?) : (\d+(?:\.\d+)?)/.exec(heading) ?? [];
  return Number(up) / Number(over);
}

/** Middles of the markers, as along and offset in mm of the board. */
function markersIn(drawing: Drawing): Spot[] {
  const scale = scaleIn(drawing);
  return classed(drawing, "marker").map(({ tag, attributes }) => {
    if (tag === "circle") return [Number(attributes.cx) / scale, -Number(attributes.cy) / scale];
    const spots = (attributes.d ?? "").split(/[MLZ]/).filter(Boolean);
    const at = (k: number) => spots.reduce((sum, spot) => sum + Number(spot.split(" ")[k]), 0);
    return [at(0) / spots.length / scale, -at(1) / spots.length / scale];
  });
}

describe.each(gallery)("$name", ({ report }) => {
  const drawing = () => read(drawBoard(report));

  test("is in true proportions: its outline is that of the edges", () => {
    const picture = drawing();
    const scale = scaleIn(picture);
    const outline = spotsIn(picture, "board").map(([x, y]) => [x / scale, Math.abs(y) / scale]);
    for (const { along, offset } of report.edges) {
      const gaps = outline.map(([x = 0, y = 0]) => Math.hypot(x - along, y - offset));
      expect(Math.min(...gaps) * scale).toBeLessThan(0.002);
    }
    const stations = new Set(report.edges.map(({ station }) => station));
    expect(classed(picture, "fret")).toHaveLength(stations.size - 2);
  });

  test("has every marker at its place, with a dot where it governs and a cross where no depth suits", () => {
    const picture = drawing();
    const scale = scaleIn(picture);
    const markers = markersIn(picture);
    expect(markers).toHaveLength(report.holes.length);
    report.holes.forEach(({ along, offset, outline }, i) => {
      const corners = outline ?? [{ along, offset }];
      const middle = (key: "along" | "offset") =>
        corners.reduce((sum, corner) => sum + corner[key], 0) / corners.length;
      const [x = 0, y = 0] = markers[i] ?? [];
      expect(Math.hypot(x - middle("along"), y - middle("offset")) * scale).toBeLessThan(0.002);
    });
    const governing = report.stops.settings.flatMap(({ minHole, maxHole }) => [minHole, maxHole]);
    expect(classed(picture, "governs")).toHaveLength(new Set(governing).size);
    const closed = report.holes.filter(({ window }) => window.min > window.max);
    expect(classed(picture, "none")).toHaveLength(closed.length);
  });

  test("names every marker's distance from the nut, on a line at that distance", () => {
    const picture = drawing();
    const scale = scaleIn(picture);
    const labels = textsIn(picture).filter(({ words }) => /^(fret \d+|end): /.test(words));
    const lines = linesIn(picture).filter(
      ({ pen, from, to }) => pen === "narrow" && from[0] === to[0],
    );
    for (const { fret, along, offset } of report.holes) {
      const said = `fret ${fret}: ${along.toFixed(2)}`;
      const label = labels.find(({ words }) => `${words},`.startsWith(`${said},`));
      expect(label?.words, said).toBeDefined();
      if (Math.abs(offset) >= 0.01) expect(label?.words).toContain(Math.abs(offset).toFixed(2));
      expect(lines.some(({ from }) => Math.abs(from[0] - along * scale) < 0.002)).toBe(true);
    }
    expect(labels.at(-1)?.words).toBe(`end: ${report.edges.at(-1)?.along.toFixed(2)}`);
  });

  test("has its widths, no line but frets and edges on the board, and no fret's number twice", () => {
    const picture = drawing();
    const words = textsIn(picture).map((text) => text.words);
    for (const station of ["nut", "end"]) {
      const ends = report.edges.filter((edge) => edge.station === station);
      const width = (ends[0]?.offset ?? 0) + (ends.at(-1)?.offset ?? 0);
      expect(words).toContain(width.toFixed(2));
    }
    const half = Math.min(...report.edges.map(({ offset }) => offset)) * scaleIn(picture);
    const marks = ["fret", "board", "none"];
    const crossing = linesIn(picture).filter(({ pen, name, from, to }) => {
      const inside = Math.min(Math.abs(from[1]), Math.abs(to[1])) < half - 0.01;
      const over = from[0] > 0 && from[0] < (report.edges.at(-1)?.along ?? 0) * scaleIn(picture);
      return pen === "narrow" && inside && over && !marks.includes(name);
    });
    expect(crossing).toEqual([]);
    const numbers = words.filter((text) => /^\d+$/.test(text));
    expect(new Set(numbers).size).toBe(numbers.length);
  });
});

// twelve-tone equal temperament: fret 12 at half the scale
test("fret 12 of 648 mm stands at 324", () => {
  const picture = read(drawBoard(reportOf("plain")));
  const frets = linesIn(picture).filter(({ name }) => name === "fret");
  expect((frets[11]?.from[0] ?? 0) / scaleIn(picture)).toBeCloseTo(324, 2);
  const number = textsIn(picture).find(({ words }) => words === "12");
  expect(number?.at[0]).toBeCloseTo(324 * scaleIn(picture), 2);
});

test("a pair at equal distances is one label; sides are told where they differ", () => {
  const words = (name: string) =>
    textsIn(read(drawBoard(reportOf(name)))).map((text) => text.words);
  expect(words("plain").filter((text) => /^fret 12: .*, ± \d+\.\d\d$/.test(text))).toHaveLength(1);
  expect(words("at places")).toContain("fret 2: 60.00, bass 8.00, treble 11.00");
  expect(words("at one edge").filter((text) => text.startsWith("fret 12: "))).toHaveLength(2);
});

test("the rod channel is shown where a report tells of it, no farther than the board", () => {
  const report = reportOf("on a neck, under an old radius");
  const picture = read(drawBoard(report));
  const spots = spotsIn(picture, "channel").map(([x, y]) =>
    [x, y].map((v) => v / scaleIn(picture)),
  );
  expect(spots).toEqual([
    [8, 3],
    [8, -3],
    [420, -3],
    [420, 3],
    [8, 3],
  ]);
  const far = { ...report, ...{ channel: { width: 6, from: 8, to: 900 } } };
  const ends = spotsIn(read(drawBoard(far)), "channel").map(([x]) => x / scaleIn(picture));
  expect(Math.max(...ends)).toBe(482);
  expect(classed(read(drawBoard(reportOf("plain"))), "channel")).toEqual([]);
});

test.each(["plain", "fanned", "twist bit"])("%s: every fret bears its number", (name) => {
  const report = reportOf(name);
  const words = textsIn(read(drawBoard(report))).map((text) => text.words);
  const stations = report.edges.map(({ station }) => station.replace("fret", ""));
  expect(words).toEqual(expect.arrayContaining(stations.filter((station) => station !== "end")));
});

test("numbers with markers come first where not all find room", () => {
  const words = textsIn(read(drawBoard(reportOf("a doll's neck")))).map((text) => text.words);
  for (const fret of ["3", "5", "7", "9", "12"]) expect(words).toContain(fret);
});
