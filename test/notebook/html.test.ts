/** The fragment: well-formed, all of it there, and nothing in it that could run. */
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { drawSection, drawWindows } from "../../src/draw/index.js";
import { checkDesign, type Hole, type Report } from "../../src/index.js";
import { html } from "../../src/notebook/index.js";
import { gallery, reportOf } from "../draw/gallery.js";

/** Every element in order: tag, attributes, words right inside. */
interface Seen {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly words: string;
}

const PARSER = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: "",
  parseTagValue: false,
  trimValues: false,
  processEntities: true,
  htmlEntities: true,
});

type Node = Readonly<Record<string, unknown>>;

function read(fragment: string): Seen[] {
  expect(XMLValidator.validate(fragment)).toBe(true);
  return seenIn(PARSER.parse(fragment) as Node[]);
}

function seenIn(nodes: readonly Node[]): Seen[] {
  return nodes.flatMap((node) => {
    const tag = Object.keys(node).find((key) => key !== ":@" && key !== "#text");
    if (tag === undefined) return [];
    const inside = node[tag] as Node[];
    const words = inside.map((part) => String(part["#text"] ?? "")).join("");
    const attributes = (node[":@"] ?? {}) as Record<string, string>;
    return [{ tag, attributes, words }, ...seenIn(inside)];
  });
}

function wordsIn(fragment: string, ...tags: string[]): string[] {
  return read(fragment).flatMap(({ tag, words }) => (tags.includes(tag) ? [words] : []));
}

/** The section that a fragment shows, as the index of its hole. */
function shownHole(report: Report): number[] {
  const fragment = html(report);
  return report.holes.flatMap((_, i) => (fragment.includes(drawSection(report, i)) ? [i] : []));
}

describe.each(gallery)("$name", ({ report }) => {
  // drawn in each test: what is worked out while the tests are gathered meets no mutant
  const drawn = () => {
    const fragment = html(report);
    return { fragment, elements: read(fragment) };
  };

  test("is one well-formed element, in which nothing can run", () => {
    const { fragment, elements } = drawn();
    expect(fragment.startsWith('<section class="marker-depth-report">')).toBe(true);
    expect(fragment.trimEnd().endsWith("</section>")).toBe(true);
    expect(elements.length).toBeGreaterThan(5);
    for (const { tag, attributes } of elements) {
      expect(["script", "iframe", "object", "foreignObject", "a", "image"]).not.toContain(tag);
      expect(Object.keys(attributes).join(" ")).not.toMatch(/\b(on\w+|href|src)\b/);
    }
    expect(fragment).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  test("says all that is wrong, and every caution", () => {
    const { fragment, elements } = drawn();
    const items = elements.flatMap(({ tag, words }) => (tag === "li" ? [words] : []));
    const said = report.findings.map(({ severity, message }) => `${severity}: ${message}`);
    expect(items).toEqual([...said, ...report.cautions]);
    expect(fragment.includes("Nothing is wrong.")).toBe(report.findings.length === 0);
  });

  test("has a row for every hole, of as many cells as the head", () => {
    const { elements } = drawn();
    const rows = elements.filter(({ tag }) => tag === "tr");
    expect(rows).toHaveLength(report.holes.length === 0 ? 0 : report.holes.length + 1);
    const heads = elements.filter(({ attributes }) => attributes.scope === "col");
    const cells = elements.filter(
      ({ tag, attributes }) => tag === "td" || attributes.scope === "row",
    );
    expect(cells).toHaveLength(heads.length * report.holes.length);
  });

  test("shows the windows and one section", () => {
    const { fragment, elements } = drawn();
    expect(elements.filter(({ tag }) => tag === "svg")).toHaveLength(
      report.holes.length === 0 ? 0 : 2,
    );
    if (report.holes.length === 0) return;
    expect(fragment).toContain(drawWindows(report));
    expect(shownHole(report)).toHaveLength(1);
  });
});

test("the table's figures are the report's", () => {
  const report = reportOf("twist bit");
  const heads = wordsIn(html(report), "th").slice(0, 13);
  expect(heads).toEqual([
    "hole",
    "from the nut",
    "off the centre",
    "size",
    "removed",
    "least",
    "most",
    "most set by",
    "depth",
    "travel",
    "planned",
    "marker left",
    "wood left",
  ]);
  const cells = wordsIn(html(report), "td");
  const row = cells.slice(0, 12);
  const [hole] = report.holes;
  const fixed = (value: number | undefined) => (value ?? Number.NaN).toFixed(2).replace("-", "−");
  const up = Math.ceil((hole?.window.min ?? 0) * 100 - 1e-9) / 100;
  const down = Math.floor((hole?.window.max ?? 0) * 100 + 1e-9) / 100;
  expect(row).toEqual([
    fixed(hole?.along),
    "0.00",
    "7.00",
    fixed(hole?.removal.outer),
    fixed(up),
    fixed(down),
    "web under the bit",
    fixed(hole?.recommended?.depth),
    fixed(hole?.recommended?.travel),
    "2.90",
    fixed(hole?.planned?.markerLeft),
    fixed(hole?.planned?.woodLeft),
  ]);
});

test("several settings are told apart, and a hole without one has dashes", () => {
  const several = html(reportOf("one setting does not do"));
  expect(wordsIn(several, "th")).toContain("setting");
  expect(wordsIn(several, "td")).toEqual(expect.arrayContaining(["A", "B"]));
  expect(wordsIn(html(reportOf("no window")), "td").filter((words) => words === "–")).toHaveLength(
    20,
  );
});

describe("the section is the worst one", () => {
  const room = ({ window: { min, max } }: Hole, depth: number) => {
    return Math.min(depth - min, max - depth);
  };

  test("of planned depths, the one that misses most", () => {
    const report = reportOf("breaks through");
    const rooms = report.holes.map((hole) => room(hole, hole.planned?.depth ?? Number.NaN));
    const [index = -1] = shownHole(report);
    expect(Math.min(...rooms)).toBeLessThan(0);
    expect(rooms[index]).toBe(Math.min(...rooms));
  });

  test("of settings, the one nearest to a limit", () => {
    const report = reportOf("one setting does not do");
    const rooms = report.holes.map((hole) => {
      const { min, max } = hole.window;
      return room(hole, hole.recommended?.depth ?? (min + max) / 2);
    });
    const [index = -1] = shownHole(report);
    expect(rooms[index]).toBe(Math.min(...rooms));
    expect(report.holes[index]?.fret).toBe(12);
  });

  test("where no depth suits, the widest gap", () => {
    const report = reportOf("no window");
    const gaps = report.holes.map(({ window }) => window.min - window.max);
    const [index = -1] = shownHole(report);
    expect(gaps[index]).toBe(Math.max(...gaps));
    expect(report.holes[index]?.fret).toBe(12);
  });
});

test("a name and messages from outside are shown as they are, and run nothing", () => {
  const evil = `<img src=x onerror="alert(1)"> & </section><script>alert(2)</script>\u0000\u0007`;
  const report = checkDesign({
    name: evil,
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 3 },
    radius: 184,
    markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
  });
  const findings = report.findings.map((finding) => ({ ...finding, message: evil }));
  const fragment = html({ ...report, findings, cautions: [evil] });
  expect(fragment).not.toMatch(/<(?:img|script)/i);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to find
  expect(fragment).not.toMatch(/[\u0000-\u0008]/);
  expect(fragment.match(/<\/section>/g)).toHaveLength(1);
  const seen = evil.replaceAll("\u0000", "\ufffd").replaceAll("\u0007", "\ufffd");
  const items = wordsIn(fragment, "li");
  expect(findings.length).toBeGreaterThan(0);
  expect(items.at(-1)).toBe(seen);
  expect(items[0]).toBe(`${findings[0]?.severity}: ${seen}`);
  expect(wordsIn(fragment, "h3")).toEqual([`Marker depths: ${seen}`]);
});
