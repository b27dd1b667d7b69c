/** The document around every picture: names for screen readers, line widths, colours, and nothing that could run. */
import { describe, expect, test } from "vitest";
import { drawBoard, drawSection } from "../../src/draw/index.js";
import { checkDesign } from "../../src/index.js";
import { gallery, reportOf } from "./gallery.js";
import { picturesOf } from "./pictures.js";
import { classed, type Drawing, read, textsOf } from "./svg.js";
import { sweepPicture, sweeps } from "./sweeps.js";

const allPictures = () => [
  ...gallery.flatMap(({ name, report }) => picturesOf(name, report, 2)),
  ...sweeps.map(sweepPicture),
];

function one(drawing: Drawing, tag: string) {
  const found = drawing.elements.filter((element) => element.tag === tag);
  expect(found).toHaveLength(1);
  return found[0];
}

test("there are pictures", () => {
  expect(allPictures().length).toBeGreaterThan(100);
});

describe("every picture", () => {
  const drawings = () => allPictures().map(({ name, svg }) => ({ name, drawing: read(svg) }));

  test("tells a screen reader what it shows", () => {
    for (const { name, drawing } of drawings()) {
      const [title, desc] = [one(drawing, "title"), one(drawing, "desc")];
      expect(drawing.root.role).toBe("img");
      expect(drawing.root["aria-labelledby"]).toBe(title?.attributes.id);
      expect(drawing.root["aria-describedby"]).toBe(desc?.attributes.id);
      expect(title?.attributes.id).not.toBe(desc?.attributes.id);
      expect(title?.text.length, name).toBeGreaterThan(3);
      expect(desc?.text.length, name).toBeGreaterThan(20);
    }
  });

  test("is as large in mm as its view", () => {
    for (const { drawing } of drawings()) {
      const [, , width, height] = (drawing.root.viewBox ?? "").split(" ");
      expect(drawing.root.width).toBe(`${width}mm`);
      expect(drawing.root.height).toBe(`${height}mm`);
    }
  });

  test("holds shapes and words alone, in the colour of the text around it", () => {
    const allowed = ["title", "desc", "style", "g", "path", "circle", "text"];
    const paints = [undefined, "none", "currentColor"];
    for (const { name, drawing } of drawings()) {
      const strange = drawing.elements.filter(({ tag, attributes }) => {
        return !(
          allowed.includes(tag) &&
          !/\b(on|href|xlink|style)/.test(Object.keys(attributes).join(" ")) &&
          paints.includes(attributes.fill) &&
          paints.includes(attributes.stroke)
        );
      });
      expect(strange, name).toEqual([]);
    }
  });
});

describe("a name", () => {
  const name = `<script>alert("1")</script> & 'quoted' ]]>`;
  const report = { ...reportOf("larch-22"), name };
  const drawing = read(drawBoard(report));

  test("is shown as it is, however it is written", () => {
    expect(one(drawing, "title")?.text).toBe(`Plan: ${name}`);
    const shown = textsOf(drawing).filter(({ words }) => words.includes("Plan: "));
    expect(shown.map(({ words }) => words)).toEqual([`Plan: ${name}`]);
    expect(drawing.elements.some(({ tag }) => tag === "script")).toBe(false);
  });

  test("is cut where it is too long for the paper, and whole in the title", () => {
    const long = { ...report, name: "W".repeat(400) };
    const cut = read(drawBoard(long));
    expect(one(cut, "title")?.text).toBe(`Plan: ${"W".repeat(400)}`);
    const shown = textsOf(cut).filter(({ words }) => words.includes("WW"));
    expect(shown).toHaveLength(2);
    expect(shown.at(-1)?.words.endsWith("W…")).toBe(true);
  });

  test("changes nothing but itself", () => {
    const named = drawSection({ ...report, name: "A" }, 0);
    const other = drawSection({ ...report, name: "B" }, 0);
    expect(named.replace(/marker-depth-[0-9a-f]+/g, "").replaceAll(": A", "")).toBe(
      other.replace(/marker-depth-[0-9a-f]+/g, "").replaceAll(": B", ""),
    );
    expect(named).not.toBe(other);
  });
});

describe("lines", () => {
  const svg = drawSection(reportOf("heron-bass"), 4);
  const group = (pen: string) => {
    const groups = read(svg).elements.filter(
      ({ tag, attributes }) => tag === "g" && attributes.class === pen,
    );
    expect(groups).toHaveLength(1);
    return groups[0]?.attributes ?? {};
  };

  // ISO 128-2 (memory): wide to narrow 2 : 1
  test("edges are twice as wide as the others", () => {
    for (const pen of ["narrow", "before", "centre"]) {
      expect(Number(group("wide")["stroke-width"]) / Number(group(pen)["stroke-width"])).toBe(2);
    }
  });

  // ISO 128-2 (memory): dash 12 d, long dash 24 d, gap 3 d
  test("hidden lines are dashed, centre lines long-dashed dotted, former ones double-dotted", () => {
    const inWidths = (attributes: Readonly<Record<string, string>>) =>
      (attributes["stroke-dasharray"] ?? "")
        .split(" ")
        .map((part) => Number(part) / Number(attributes["stroke-width"]));
    expect(inWidths(group("centre"))).toEqual([24, 3, 1, 3]);
    expect(inWidths(group("before"))).toEqual([24, 3, 1, 3, 1, 3]);
    const plan = read(drawBoard(reportOf("heron-bass"))).elements.find(
      ({ attributes }) => attributes.class === "hidden",
    );
    expect(inWidths(plan?.attributes ?? {})).toEqual([12, 3]);
  });

  test("edges, the arc and the hole are wide; dimensions and hatching narrow; the blank double-dotted", () => {
    const pen = (name: string) => classed(read(svg), name)[0]?.pen;
    expect(["board", "finished", "marker"].map(pen)).toEqual(["wide", "wide", "wide"]);
    expect(["wood", "filling"].map(pen)).toEqual(["narrow", "narrow"]);
    expect(pen("bit")).toBe("before");
  });
});

test("colours turn with the reader's, and are black on nothing in print", () => {
  const style = one(read(drawBoard(reportOf("larch-22"))), "style")?.text ?? "";
  expect(style).toContain("svg.marker-depth:root{color:#000;background:#fff}");
  const dark = style.indexOf("@media (prefers-color-scheme:dark)");
  const print = style.indexOf("@media print{svg.marker-depth:root{color:#000;background:none}}");
  expect(dark).toBeGreaterThan(0);
  // the later rule wins
  expect(print).toBeGreaterThan(dark);
});

test("different pictures bear different names, so that one page can hold them all", () => {
  const pictures = allPictures();
  const ids = pictures.map(({ svg }) => read(svg).root["aria-labelledby"]);
  const different = new Set(pictures.map(({ svg }) => svg.replace(/marker-depth-[0-9a-f]+/g, "")));
  expect(new Set(ids).size).toBe(different.size);
});

test("a report that never met this library's check is drawn all the same after a journey as JSON", () => {
  const report = checkDesign({
    scale: { length: 600, frets: 12 },
    board: { length: 320, width: 50, thickness: 6 },
    radius: 300,
    markers: [{ frets: [5], diameter: 6 }],
  });
  const sent = JSON.parse(JSON.stringify(report));
  expect(drawSection(sent, 0)).toBe(drawSection(report, 0));
});

test("so is that of a flat board, whose radius JSON cannot write", () => {
  const report = reportOf("flat board");
  const sent = JSON.parse(JSON.stringify(report));
  expect(sent.holes[0].radius).toBe(null);
  expect(drawSection(sent, 0)).toBe(drawSection(report, 0));
});
