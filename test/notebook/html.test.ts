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

  test("says all that is wrong, each setting, all that was assumed by its path, and every caution", () => {
    const { fragment, elements } = drawn();
    const said = elements.map(({ words }) => words);
    for (const { code } of report.findings) {
      const [worst] = report.findings.filter((finding) => finding.code === code);
      // travels are told as they are set
      const start = /^several-/.test(code) ? worst?.message.slice(0, 20) : worst?.message;
      const found = said.filter((words) => words.startsWith(`${worst?.severity}: ${start}`));
      expect(found, code).toHaveLength(1);
    }
    expect(fragment.includes("Nothing is wrong.")).toBe(report.findings.length === 0);
    const items = elements.flatMap(({ tag, words }) => (tag === "li" ? [words] : []));
    expect(items).toEqual(expect.arrayContaining([...report.cautions]));
    const travels = items.filter((words) => /^Set the stop.* to a travel of /.test(words));
    expect(travels).toHaveLength(report.stops.settings.length);
    const paths = elements.flatMap(({ tag, words }) => (tag === "code" ? [words] : []));
    const assumed = Object.keys(report.assumed).filter((path) => !path.startsWith("pour.ratio"));
    expect(paths).toEqual(expect.arrayContaining(assumed));
  });

  test("comes in the card's order, the edges folded away", () => {
    const { elements } = drawn();
    const heads = elements.flatMap(({ tag, words }) => (/^h4|summary$/.test(tag) ? [words] : []));
    const order = ["Stop", "Findings", "Holes", "Assumed", "Epoxy", "Cautions"];
    const folded = ["Steps at the bench", "Edges", "Slots"];
    expect(heads).toEqual([...order, ...folded].filter((words) => heads.includes(words)));
    const tags = elements.flatMap(({ tag, words }) => (tag === "summary" ? [words] : []));
    expect(tags).toEqual(folded.filter((words) => heads.includes(words)));
    expect(tags).toContain("Edges");
  });

  test("has a row for every hole, of as many cells as the head", () => {
    const { elements } = drawn();
    // the holes' table comes before that of the edges
    const tables = elements.filter(({ tag }) => tag === "table");
    expect(tables).toHaveLength(report.holes.length === 0 ? 1 : 2);
    const heads = elements.filter(({ attributes }) => attributes.scope === "row");
    expect(heads).toHaveLength(report.holes.length + report.edges.length);
    const columns = elements.filter(({ attributes }) => attributes.scope === "col");
    const atEdges = columns.slice(columns.findIndex(({ words }) => words === "at"));
    const cells = elements.filter(({ tag }) => tag === "td");
    const atHoles = columns.length - atEdges.length;
    expect(cells).toHaveLength(
      Math.max(0, atHoles - 1) * report.holes.length + (atEdges.length - 1) * report.edges.length,
    );
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
  const heads = wordsIn(html(report), "th").slice(0, 16);
  const [hole] = report.holes;
  const fixed = (value: number | undefined) => (value ?? Number.NaN).toFixed(2).replace("-", "−");
  const up = (value = Number.NaN) => fixed(Math.ceil(value * 100 - 1e-9) / 100);
  const down = (value = Number.NaN) => fixed(Math.floor(value * 100 + 1e-9) / 100);
  const row = wordsIn(html(report), "td").slice(0, 15);
  const said = Object.fromEntries(heads.slice(1).map((head, i) => [head, row[i]]));
  expect(heads[0]).toBe("hole");
  expect(said).toMatchObject({
    fret: "3",
    "from nut": fixed(hole?.along),
    "off centre": "0.00",
    size: "7.00",
    taken: fixed(hole?.removal.outer),
    least: up(hole?.window.min),
    most: down(hole?.window.max),
    travel: fixed(hole?.recommended?.travel),
    "planned depth": "2.90",
    "planned left": down(hole?.planned?.markerLeft),
    "planned wood": down(hole?.planned?.woodLeft),
  });
});

test("several settings are told apart, and a hole without one has dashes", () => {
  const several = html(reportOf("one setting does not do"));
  expect(wordsIn(several, "th")).toContain("set");
  expect(wordsIn(several, "td")).toEqual(expect.arrayContaining(["A", "B"]));
  const none = html(reportOf("no window"));
  // travel, depth, what is left of marker and wood, at each of ten holes
  expect(wordsIn(none, "td").filter((words) => words === "–")).toHaveLength(40);
  expect(wordsIn(none, "li").some((words) => words.startsWith("No setting serves "))).toBe(true);
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

test("a name and words from outside are shown as they are, and run nothing", () => {
  const evil = `<img src=x onerror="alert(1)"> & </section><script>alert(2)</script>\u0000\u0007`;
  const report = checkDesign({
    name: evil,
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 3 },
    radius: 184,
    markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
  });
  // as a report may come as JSON: words in the place of other words
  const findings = report.findings.map((finding) => ({ ...finding, message: evil, path: evil }));
  const assumed = { ...report.assumed, [evil]: evil };
  const holes = report.holes.map((hole) => ({ ...hole, path: evil, side: evil as never }));
  const fragment = html({ ...report, findings, assumed, holes, cautions: [evil] });
  expect(fragment).not.toMatch(/<(?:img|script)/i);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to find
  expect(fragment).not.toMatch(/[\u0000-\u0008]/);
  expect(fragment.match(/<\/section>/g)).toHaveLength(1);
  const seen = evil.replaceAll("\u0000", "\ufffd").replaceAll("\u0007", "\ufffd");
  expect(wordsIn(fragment, "li")).toContain(seen);
  expect(wordsIn(fragment, "code")).toContain(seen);
  expect(wordsIn(fragment, "h3")).toEqual([`Marker depths: ${seen}`]);
});
