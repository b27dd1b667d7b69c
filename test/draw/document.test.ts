/** The document around every picture: names for screen readers, line widths, colours, and nothing that could run. */
import { describe, expect, test } from "vitest";
import { drawBoard, drawSection } from "../../src/draw/index.js";
import { gallery, reportOf } from "./gallery.js";
import { picturesOf, sandings, sweeps } from "./pictures.js";
import { classed, type Drawing, read, textsIn } from "./svg.js";

const allPictures = () => [
  ...gallery.flatMap(({ name, report }) => picturesOf(name, report, 1)),
  ...sweeps(),
  ...sandings(),
];

function only(drawing: Drawing, tag: string) {
  const found = drawing.elements.filter((element) => element.tag === tag);
  expect(found).toHaveLength(1);
  return found[0];
}

test("every picture tells a screen reader what it shows, and is as large in mm as its view", () => {
  const pictures = allPictures();
  expect(pictures.length).toBeGreaterThan(90);
  for (const { name, svg } of pictures) {
    const drawing = read(svg);
    // SVG Accessibility API Mappings (W3C; memory): title names, desc describes, without any id
    const [title, desc] = [only(drawing, "title"), only(drawing, "desc")];
    expect(drawing.root).toMatchObject({ role: "img", "aria-label": title?.text });
    expect(title?.text.length, name).toBeGreaterThan(3);
    expect(desc?.text.length, name).toBeGreaterThan(20);
    expect(`${title?.text}${desc?.text}`).not.toMatch(/\s\s|\n/);
    const [, , width, height] = (drawing.root.viewBox ?? "").split(" ");
    expect(drawing.root).toMatchObject({ width: `${width}mm`, height: `${height}mm` });
  }
});

test("every picture holds shapes and words alone, in the colour of the text around it", () => {
  const allowed = ["title", "desc", "style", "g", "path", "circle", "text"];
  const paints = [undefined, "none", "currentColor"];
  for (const { name, svg } of allPictures()) {
    const strange = read(svg).elements.filter(({ tag, attributes }) => {
      const named = /\b(on|href|xlink|style|id)/.test(Object.keys(attributes).join(" "));
      const painted = paints.includes(attributes.fill) && paints.includes(attributes.stroke);
      return !allowed.includes(tag) || named || !painted;
    });
    expect(strange, name).toEqual([]);
  }
});

describe("a name", () => {
  const report = reportOf("plain");

  test.each([`<script>alert("1")</script> & 'quoted' ]]>`, "指板 Ελάτη гриф 🎸 لوحة"])(
    "%s is shown as it is",
    (name) => {
      const drawing = read(drawBoard({ ...report, name }));
      expect(only(drawing, "title")?.text).toBe(`Plan: ${name}`);
      const shown = textsIn(drawing).filter(({ words }) => words.startsWith("Plan"));
      expect(shown.map(({ words }) => words)).toEqual([`Plan: ${name}`]);
      expect(drawing.elements.some(({ tag }) => tag === "script")).toBe(false);
    },
  );

  test("is cut where it is too long for the paper, and whole in the title", () => {
    const name = `${"W".repeat(400)} ${"word ".repeat(100)}end`;
    const drawing = read(drawBoard({ ...report, name }));
    expect(only(drawing, "title")?.text).toBe(`Plan: ${name}`);
    const shown = textsIn(drawing).filter(({ words }) => /W…|word/.test(words));
    expect(shown.map(({ words }) => words.endsWith("…"))).toEqual([true, true]);
  });

  test("of nothing but blanks is none", () => {
    expect(only(read(drawBoard({ ...report, name: " \n\t" })), "title")?.text).toBe("Plan");
  });
});

describe("lines", () => {
  const drawing = () => read(drawSection(reportOf("twist bit"), 4));
  const group = (pen: string, from = drawing()) => {
    const groups = from.elements.filter((one) => one.tag === "g" && one.attributes.class === pen);
    expect(groups).toHaveLength(1);
    return groups[0]?.attributes ?? {};
  };
  const dashes = ({
    "stroke-dasharray": array = "",
    "stroke-width": width,
  }: Record<string, string>) => array.split(" ").map((part) => Number(part) / Number(width));

  // ISO 128-2 (memory): wide to narrow 2 : 1
  test("edges are twice as wide as the others", () => {
    for (const pen of ["narrow", "before", "centre"]) {
      expect(Number(group("wide")["stroke-width"]) / Number(group(pen)["stroke-width"])).toBe(2);
    }
  });

  // ISO 128-2 (memory): dash 12 d, long dash 24 d, gap 3 d
  test("hidden lines are dashed, centre lines long-dashed dotted, former ones double-dotted", () => {
    const plan = read(drawBoard(reportOf("on a neck, under an old radius")));
    expect(dashes(group("hidden", plan))).toEqual([12, 3]);
    expect(dashes(group("centre"))).toEqual([24, 3, 1, 3]);
    expect(dashes(group("before"))).toEqual([24, 3, 1, 3, 1, 3]);
    expect(classed(plan, "channel")[0]?.pen).toBe("hidden");
  });

  test("edges, arc and hole are wide, hatching narrow, what was there before double-dotted", () => {
    const pen = (name: string) => classed(drawing(), name)[0]?.pen;
    expect(["board", "finished", "marker"].map(pen)).toEqual(["wide", "wide", "wide"]);
    expect(["wood", "filling"].map(pen)).toEqual(["narrow", "narrow"]);
    expect(["bit", "blank"].map(pen)).toEqual(["before", "before"]);
  });

  test("light areas come first, letters last", () => {
    const pens = drawing().elements.flatMap(({ tag, attributes }) =>
      tag === "g" ? [attributes.class] : [],
    );
    expect([pens[0], pens.at(-1)]).toEqual(["tint", "letter"]);
  });
});

test("colours turn with the reader's, and are black on nothing in print", () => {
  const style = only(read(drawBoard(reportOf("plain"))), "style")?.text ?? "";
  expect(style).toContain("svg.marker-depth:root{color:#000;background:#fff}");
  const dark = style.indexOf("@media (prefers-color-scheme:dark)");
  const print = style.indexOf("@media print{svg.marker-depth:root{color:#000;background:none}}");
  expect(dark).toBeGreaterThan(0);
  // the later rule wins
  expect(print).toBeGreaterThan(dark);
});

test.each(["plain", "flat"])(
  "%s: a report is drawn all the same after a journey as JSON",
  (name) => {
    const report = reportOf(name);
    const sent = JSON.parse(JSON.stringify(report));
    expect(picturesOf("", sent)).toEqual(picturesOf("", report));
  },
);
