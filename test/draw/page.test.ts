/** Marks, the boxes that they fill, and the page that they stand on. Lengths in mm on paper. */
import { describe, expect, test } from "vitest";
import { HEADING, LETTER, widthOf } from "../../src/draw/lettering.js";
import {
  arrow,
  boxOf,
  circle,
  line,
  outline,
  rectangle,
  strokes,
  text,
} from "../../src/draw/marks.js";
import { svgOf } from "../../src/draw/page.js";
import { element, escaped, plain, written } from "../../src/draw/xml.js";
import { paperOf, read, textsOf } from "./svg.js";

const box = (left: number, top: number, right: number, bottom: number) => ({
  left,
  top,
  right,
  bottom,
});

describe("marks", () => {
  test("lines, areas and strokes are paths; each knows the room it takes", () => {
    const spots = [
      [3, -1],
      [0, 4],
      [1, 2],
    ] as const;
    expect(line("wide", spots, "fret")).toEqual({
      pen: "wide",
      name: "fret",
      tag: "path",
      attributes: { d: "M3 -1L0 4L1 2" },
      box: box(0, -1, 3, 4),
    });
    expect(outline("tint", spots)).toMatchObject({ attributes: { d: "M3 -1L0 4L1 2Z" } });
    expect(
      strokes("narrow", [
        [spots[0], spots[1]],
        [spots[1], spots[2]],
      ]),
    ).toMatchObject({ attributes: { d: "M3 -1L0 4M0 4L1 2" }, box: box(0, -1, 3, 4) });
    expect(rectangle("tint", [1, 2], [4, 6], "window")).toMatchObject({
      name: "window",
      attributes: { d: "M1 2L4 2L4 6L1 6Z" },
      box: box(1, 2, 4, 6),
    });
    expect(circle("solid", [2, 3], 0.5)).toMatchObject({
      tag: "circle",
      attributes: { cx: 2, cy: 3, r: 0.5 },
      box: box(1.5, 2.5, 2.5, 3.5),
    });
  });

  test("an arrowhead is 3 long and 1 wide, its point at the spot", () => {
    expect(arrow([10, 5], [1, 0]).attributes.d).toBe("M10 5L7 5.5L7 4.5Z");
    expect(arrow([10, 5], [0, -1]).attributes.d).toBe("M10 5L10.5 8L9.5 8Z");
    expect(arrow([10, 5], [1, 0]).pen).toBe("solid");
  });

  test("a text from its start, its middle or its end, flat or turned", () => {
    const width = widthOf("fret");
    const [rise, hang] = [0.8 * LETTER, 0.25 * LETTER];
    expect(text("fret", [10, 20])).toEqual({
      pen: "letter",
      tag: "text",
      words: "fret",
      attributes: { x: 10, y: 20 },
      box: box(10, 20 - rise, 10 + width, 20 + hang),
    });
    const end = text("fret", [10, 20], { anchor: "end" });
    expect(end.attributes).toEqual({ x: 10, y: 20, "text-anchor": "end" });
    expect(end.box).toEqual(box(10 - width, 20 - rise, 10, 20 + hang));
    const middle = text("fret", [10, 20], { anchor: "middle", turned: true });
    expect(middle.attributes).toEqual({
      x: 10,
      y: 20,
      "text-anchor": "middle",
      transform: "rotate(-90 10 20)",
    });
    expect(middle.box).toEqual(box(10 - rise, 20 - width / 2, 10 + hang, 20 + width / 2));
    const start = text("fret", [10, 20], { turned: true });
    expect(start.box).toEqual(box(10 - rise, 20 - width, 10 + hang, 20));
    const large = text("fret", [0, 0], { height: 7 });
    expect(large.attributes["font-size"]).toBe(7);
    expect(large.box).toEqual(box(0, -0.8 * 7, 2 * width, 1.75));
  });

  test("many together fill the box around them all; none fill none", () => {
    expect(boxOf([circle("solid", [0, 0], 1), rectangle("tint", [5, -3], [6, 9])])).toEqual(
      box(-1, -3, 6, 9),
    );
    expect(boxOf([])).toEqual(box(0, 0, 0, 0));
    const upright = [
      [5, 1],
      [5, 9],
    ] as const;
    expect(boxOf([line("wide", upright)])).toEqual(box(5, 1, 5, 9));
  });
});

describe("a page", () => {
  const page = {
    title: "Title",
    lines: ["One line.", "Another."],
    marks: [
      text("words", [0, 10]),
      rectangle("wide", [0, 0], [200, 100], "board"),
      rectangle("tint", [10, 10], [20, 20]),
    ],
    notes: ["A note.", "Another note."],
    description: "All of\nit in words.",
  };

  test("is as large as what stands on it and a margin of 4", () => {
    const { root } = read(svgOf(page));
    expect(root.viewBox?.split(" ")[0]).toBe("-4");
    expect(root.viewBox?.split(" ")[2]).toBe("208");
    expect(root.width).toBe("208mm");
    const paper = paperOf(read(svgOf(page)));
    // the last note hangs a quarter of its letters below its line
    const last = 100 + LETTER * 1.05 + LETTER + 1.6 * LETTER;
    expect(paper.bottom).toBeCloseTo(last + 0.25 * LETTER + 4, 2);
    const title = 0 - 2 * LETTER - 1.6 * LETTER - 1.6 * HEADING;
    expect(paper.top).toBeCloseTo(title - 0.8 * HEADING - 4, 2);
    expect(root).toMatchObject({ role: "img", class: "marker-depth" });
    expect(root.height).toBe(`${root.viewBox?.split(" ")[3]}mm`);
  });

  test("has its heading above, a line below the other, and its notes below", () => {
    const written = read(svgOf(page)).elements.filter(({ tag }) => tag === "text");
    const y = (words: string) => {
      const found = written.find((one) => one.text === words);
      expect(found?.attributes.x, words).toBe("0");
      return Number(found?.attributes.y);
    };
    expect(y("Another.")).toBeCloseTo(-2 * LETTER, 2);
    expect(y("One line.")).toBeCloseTo(-3.6 * LETTER, 2);
    expect(y("Title")).toBeCloseTo(-3.6 * LETTER - 1.6 * HEADING, 2);
    expect(y("A note.")).toBeCloseTo(100 + 2.05 * LETTER, 2);
    expect(y("Another note.")).toBeCloseTo(100 + 3.65 * LETTER, 2);
    const size = written.find(({ text: words }) => words === "Title")?.attributes["font-size"];
    expect(size).toBe(String(HEADING));
  });

  test("light areas first, letters last", () => {
    const groups = read(svgOf(page)).elements.filter(({ tag }) => tag === "g");
    expect(groups.map(({ attributes }) => attributes.class)).toEqual(["tint", "wide", "letter"]);
    const [board] = read(svgOf(page)).elements.filter(({ attributes: { class: name } }) => {
      return name === "board";
    });
    expect(board?.pen).toBe("wide");
  });

  test("what is too long for its width goes on below; a narrow one is 150 wide at least", () => {
    const long = "word ".repeat(60).trim();
    const narrow = { ...page, marks: [rectangle("wide", [0, 0], [20, 10])], lines: [long] };
    const lines = textsOf(read(svgOf(narrow))).filter(({ words }) => words.startsWith("word"));
    expect(lines.length).toBeGreaterThan(2);
    const width = widthOf(lines[0]?.words ?? "");
    expect(width).toBeLessThanOrEqual(150);
    expect(width + widthOf(" word")).toBeGreaterThan(150);
    // the last of them stands where a single one would
    const y = Number(
      read(svgOf(narrow))
        .elements.filter(({ text: words }) => words.startsWith("word"))
        .at(-1)?.attributes.y,
    );
    expect(y).toBeCloseTo(-2 * LETTER, 2);
    const titled = textsOf(read(svgOf({ ...narrow, title: "title ".repeat(300) })));
    expect(titled.filter(({ words }) => words.startsWith("title"))).toHaveLength(3);
    const heights = read(svgOf({ ...narrow, lines: [], title: "title ".repeat(300) }))
      .elements.filter(({ text: words }) => words.startsWith("title") && words.length < 99)
      .flatMap(({ tag, attributes }) => (tag === "text" ? [Number(attributes.y)] : []));
    const lowest = heights[2] ?? Number.NaN;
    expect(heights).toEqual([
      expect.closeTo(lowest - 3.2 * HEADING, 2),
      expect.closeTo(lowest - 1.6 * HEADING, 2),
      lowest,
    ]);
    expect(lowest).toBeLessThan(-2 * LETTER);
  });

  test("is named after what is on it: the same for the same, another for another", () => {
    const idOf = (svg: string) => read(svg).root["aria-labelledby"];
    // FNV-1a: every page is hashed alike, whatever its length
    expect(idOf(svgOf(page))).toBe(idOf(svgOf({ ...page })));
    expect(idOf(svgOf(page))).toMatch(/^marker-depth-[0-9a-f]{8}-title$/);
    expect(idOf(svgOf({ ...page, description: "Other words." }))).not.toBe(idOf(svgOf(page)));
    const [title, desc] = ["title", "desc"].map((tag) =>
      read(svgOf(page)).elements.find((one) => one.tag === tag),
    );
    expect(title?.text).toBe("Title");
    expect(desc?.text).toBe("All of it in words.");
    expect(read(svgOf(page)).root["aria-describedby"]).toBe(desc?.attributes.id);
  });
});

describe("as text", () => {
  test("a number has three decimals at most, and none is refused", () => {
    expect([1.23456, 2, -0.0001, -0, 1e-9, -1.5].map(plain)).toEqual([
      "1.235",
      "2",
      "0",
      "0",
      "0",
      "-1.5",
    ]);
    expect(() => plain(Number.NaN)).toThrow(new RangeError("a coordinate is NaN"));
    expect(() => plain(Infinity)).toThrow(RangeError);
  });

  test("signs of markup are written as entities, what XML does not know as a replacement", () => {
    expect(escaped(`a < b & "c" > 'd'`)).toBe("a &lt; b &amp; &quot;c&quot; &gt; &#39;d&#39;");
    expect(escaped("\u0000\u001f\ufffe\ud800a\t\n")).toBe("\ufffd\ufffd\ufffd\ufffda\t\n");
  });

  test("an element with its attributes in order, those left out left out", () => {
    expect(written({ x: 1.00049, class: "a<b", y: undefined, z: "" })).toBe(
      ' x="1" class="a&lt;b" z=""',
    );
    expect(element("path", { d: "M0 0" })).toBe('<path d="M0 0"/>');
    expect(element("text", {}, "")).toBe("<text></text>");
    expect(element("text", { x: 1 }, "a & b")).toBe('<text x="1">a &amp; b</text>');
  });
});
