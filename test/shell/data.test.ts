/** What the command writes for other programs: NDJSON, CSV, pictures. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { afterAll, describe, expect, test } from "vitest";
import { drawBoard, drawSection, drawTemplate, drawWindows } from "../../src/draw/index.js";
import { checkDesign, type Design, type Hole, type Report } from "../../src/index.js";
import { remediesFor } from "../../src/report/remedies.js";
import { fileText } from "../docs/blocks.js";
import { COMMAND, command, FAILS, folderWith, GOOD, linesOf, removeFolders } from "./command.js";

afterAll(removeFolders);

const parsed = (out: string) => linesOf(out).map((line) => JSON.parse(line));

describe("--json", () => {
  test("one report a line, with its file; what cannot be read is its issues, in its place", () => {
    const cwd = folderWith({
      "bad.json": { ...GOOD, web: -1 },
      "good.json": GOOD,
      "fails.json": FAILS,
    });
    const { code, out, err } = command(
      ["--json", "good.json", "bad.json", "none.json", "fails.json"],
      { cwd },
    );
    const [good, bad, none, fails] = parsed(out);
    expect(good).toEqual({ file: "good.json", ...checkDesign(GOOD) });
    expect(fails).toEqual({ file: "fails.json", ...checkDesign(FAILS) });
    const column = JSON.stringify({ ...GOOD, web: -1 }).indexOf('"web"') + 1;
    const expected = expect.stringMatching(/^a length of 0 mm/);
    const message = expect.stringMatching(/^web: expected a length of 0 mm .*, received -1$/);
    expect(bad).toEqual({
      file: "bad.json",
      issues: [{ path: "web", line: 1, column, expected, message }],
    });
    expect(none).toEqual({
      file: "none.json",
      issues: [{ path: "", message: "no such file or directory" }],
    });
    expect([code, linesOf(err).length]).toEqual([2, 2]);
  });

  test("with --remedies each finding has its own, keys in their order; a flat radius is a word", () => {
    const input = `${JSON.stringify(FAILS)}\n${JSON.stringify(GOOD)}`;
    const { code, out } = command(["--json", "--remedies", "-"], { input });
    const [fails, good] = parsed(out);
    const { findings } = checkDesign(FAILS);
    const plain = (value: unknown) =>
      JSON.parse(JSON.stringify(value, (_, each) => (each === Infinity ? "flat" : each)));
    const told = findings.map((finding) => ({ ...finding, remedies: remediesFor(FAILS, finding) }));
    expect(fails.findings).toEqual(plain(told));
    expect(fails.findings[0].remedies.length).toBeGreaterThan(0);
    expect(Object.keys(fails.findings[0].remedies[0])).toEqual(["change", "from", "to"]);
    expect([code, good.line, out.includes("null")]).toEqual([1, 2, false]);
  });
});

/** Two bits, a pocket and what is drilled already; invented. */
const MIXED: Design = {
  ...GOOD,
  name: 'mixed, "two"\nlines',
  markers: [
    ...GOOD.markers,
    { frets: [5], shape: { kind: "rectangle", length: 5, width: 9 } },
    { frets: [7], diameter: 5, drilled: true, depth: 3 },
    { frets: [9], diameter: 5, travel: 3.2 },
  ],
};

/** Columns, and where in a hole each stands; the first hold no length. */
const FACTS = "hole=path fret=fret side=side max_by=window.maxBy setting=recommended.setting";
const LENGTHS = `along=along offset=offset diameter=diameter width=width radius=radius sanding=sanding
  thickness=thickness removal_inner=removal.inner removal_centre=removal.centre removal_outer=removal.outer
  min=window.min max=window.max lead=lead rise=rise travel=recommended.travel depth=recommended.depth
  marker_left=recommended.markerLeft wood_left=recommended.woodLeft planned_travel=planned.travel
  planned_depth=planned.depth planned_marker_left=planned.markerLeft planned_wood_left=planned.woodLeft`;

const columns = (list: string) =>
  list.split(/\s+/).map((each) => each.split("=") as [string, string]);
const valueAt = (hole: Hole, path: string) =>
  path
    .split(".")
    .reduce<unknown>((place, key) => (place as Record<string, unknown> | undefined)?.[key], hole);

function rowsFor(file: string, { name, ok, holes }: Report, unit: "mm" | "in") {
  return holes.map((hole) => {
    const facts = columns(FACTS).map(([key, path]) => [key, valueAt(hole, path) ?? null]);
    const lengths = columns(LENGTHS).map(([key, path]) => {
      const mm = valueAt(hole, path) as number | undefined;
      return [`${key}_${unit}`, mm === undefined ? null : unit === "mm" ? mm : mm / 25.4];
    });
    const row = {
      file,
      line: null,
      design: name,
      ok,
      ...Object.fromEntries([...facts, ...lengths]),
    };
    // a setting bears its letter, as on the card
    return { ...row, setting: row.setting === null ? null : "ABC"[row.setting] };
  });
}

describe("--csv", () => {
  test.each(["mm", "in"] as const)(
    "a database reads it: a row for each hole, full precision, in %s",
    async (unit) => {
      const cwd = folderWith({ "a, b.json": MIXED, "bad.json": "{", "good.json": GOOD });
      const { code, out } = command(["--csv", ...(unit === "in" ? ["--inches"] : []), "."], {
        cwd,
      });
      const wanted = [
        ...rowsFor("a, b.json", checkDesign(MIXED), unit),
        ...rowsFor("good.json", checkDesign(GOOD), unit),
      ];
      expect(await rowsOf(out)).toEqual(wanted);
      expect(out.split("\r\n")[0]).toBe(Object.keys(wanted[0] ?? {}).join(","));
      expect([code, wanted.length]).toEqual([2, 7]);
      const [told = ""] = /Columns of --csv: [\s\S]*?\n\n/.exec(command(["--help"]).out) ?? [];
      // the last three are told as "and so on"
      for (const [name] of columns(LENGTHS).slice(0, -3))
        expect(told).toMatch(new RegExp(`\\b${name}\\b`));
    },
  );
});

describe("--csv --findings", () => {
  test.each(["mm", "in"] as const)(
    "a row for each finding, its hole by its path, counts without a unit, in %s",
    async (unit) => {
      const long = { kind: "forstner", point: 3.3 } as const;
      const pair = {
        frets: [5],
        diameter: 6,
        arrangement: "double",
        spread: 4,
        bit: long,
      } as const;
      const design: Design = { ...MIXED, depth: 1.2, markers: [...GOOD.markers, pair] };
      const wren: Design = JSON.parse(fileText("docs/examples/wren-tenor.json"));
      const cwd = folderWith({ "a, b.json": design, "bad.json": "{", "wren.json": wren });
      const words = ["--csv", "--findings", ...(unit === "in" ? ["--inches"] : []), "."];
      const { code, out } = command(words, { cwd });
      const wanted = [
        ...findingsFor("a, b.json", checkDesign(design), unit),
        ...findingsFor("wren.json", checkDesign(wren), unit),
      ];
      const rows = await rowsOf(out);
      expect(rows).toEqual(wanted);
      expect(new Set(rows.map((row) => row.unit))).toEqual(new Set([unit, null]));
      expect(rows.filter((row) => row.hole !== null && row.other_hole !== null)).not.toEqual([]);
      expect(out.split("\r\n")[0]).toBe(Object.keys(wanted[0] ?? {}).join(","));
      expect(code).toBe(2);
      const told = command(["--help"]).out;
      for (const name of Object.keys(wanted[0] ?? {})) expect(told).toContain(name);
    },
  );
});

function findingsFor(file: string, { name, ok, findings, holes }: Report, unit: "mm" | "in") {
  return findings.map((finding) => {
    const { code, severity, fret, side, station } = finding;
    const isCount = COUNTS.has(code);
    const size = (mm: number) => (unit === "mm" || isCount ? mm : mm / 25.4);
    return {
      ...{ file, line: null, design: name, ok, severity, code },
      hole: holes[finding.hole ?? -1]?.path ?? null,
      other_hole: holes[finding.other ?? -1]?.path ?? null,
      ...{ fret: fret ?? null, side: side ?? null, station: station ?? null },
      field: finding.path ?? null,
      ...{ value: size(finding.value), limit: size(finding.limit) },
      unit: isCount ? null : unit,
      message: unit === "mm" ? finding.message : expect.not.stringMatching(/ mm\b/),
    };
  });
}

/** Their value is how many settings it takes. */
const COUNTS: ReadonlySet<string> = new Set(["several-settings", "several-travels"]);

async function rowsOf(csv: string) {
  const file = join(folderWith({ "rows.csv": csv }), "rows.csv");
  const database = await (await DuckDBInstance.create(":memory:")).connect();
  const names = csv.slice(0, csv.indexOf("\r\n")).split(",");
  const kinds = `{${names.map((name) => `'${name}': '${kindOf(name)}'`).join(", ")}}`;
  const read = `read_csv('${file}', header = true, delim = ',', quote = '"', escape = '"', types = ${kinds})`;
  const reader = await database.runAndReadAll(`SELECT * FROM ${read}`);
  const plain = (value: unknown) => (typeof value === "bigint" ? Number(value) : value);
  return reader
    .getRowObjectsJS()
    .map((row) =>
      Object.fromEntries(Object.entries(row).map(([key, value]) => [key, plain(value)])),
    );
}

const TEXTS =
  /^(?:file|design|hole|side|max_by|setting|severity|code|other_hole|station|field|unit|message)$/;

function kindOf(column: string): string {
  if (column === "ok") return "BOOLEAN";
  return TEXTS.test(column) ? "VARCHAR" : "DOUBLE";
}

describe("--svg", () => {
  test("the pictures of each design, in a folder that it makes; one name for each design and place", () => {
    const markers = [14, 28].map(
      (spread) => ({ frets: [12], diameter: 4, arrangement: "double", spread }) as const,
    );
    const design: Design = { ...GOOD, markers };
    const text = JSON.stringify(design);
    const [a, b, out] = [
      folderWith({ "n.json": text }),
      folderWith({ "N.json": text }),
      folderWith({}),
    ];
    const pictures = join(out, "new/pictures");
    const words = ["--svg", pictures, "--json", `${a}/n.json`, `${b}/N.json`, "-"];
    expect(command(words, { input: `\n${text}\n` }).code).toBe(0);
    const report = checkDesign(design);
    const places = ["fret12-bass", "fret12-bass-2", "fret12-treble", "fret12-treble-2"];
    const parts = new Map([
      ["board", drawBoard(report)],
      ["windows", drawWindows(report)],
      ...report.holes.map((_, i) => [places[i] ?? "", drawSection(report, i)] as const),
    ]);
    const names = ["N-2", "line2", "n"].flatMap((name) =>
      [...parts.keys()].map((part) => `${name}-${part}.svg`),
    );
    expect(readdirSync(pictures).sort()).toEqual(names.sort());
    for (const [part, svg] of parts)
      expect(readFileSync(join(pictures, `n-${part}.svg`), "utf8")).toBe(svg);
  });

  test("in inches; templates on the paper that is named, and a board that is too wide for it is told", () => {
    const wide: Design = { ...GOOD, board: { ...GOOD.board, width: 400 } };
    const cwd = folderWith({ "n.json": GOOD, "wide.json": wide });
    const words = [
      "--inches",
      "--no-remedies",
      "--svg",
      "p",
      "--template",
      "t",
      "--paper",
      "letter",
    ];
    const { code, out, err } = command([...words, "wide.json", "n.json"], { cwd });
    const report = checkDesign(GOOD);
    const read = (file: string) => readFileSync(join(cwd, file), "utf8");
    expect(read("p/n-board.svg")).toBe(drawBoard(report, { unit: "in" }));
    expect(read("p/n-windows.svg")).toBe(drawWindows(report, { unit: "in" }));
    expect(read("p/n-fret12-bass.svg")).toBe(drawSection(report, 0, { unit: "in" }));
    const pages = drawTemplate(report, { paper: "letter" });
    expect(readdirSync(join(cwd, "t"))).toEqual(pages.map((_, i) => `n-template-${i + 1}.svg`));
    expect(pages.map((_, i) => read(`t/n-template-${i + 1}.svg`))).toEqual(pages);
    expect(err).toMatch(/^wide\.json: no template: paper: expected /);
    expect([code, out.split("\n").at(-2)]).toEqual([
      2,
      "1 design checked, 1 passes, 0 fail, 1 could not be read",
    ]);
    command(["--template", "a4", "n.json"], { cwd });
    expect(read("a4/n-template-1.svg")).toBe(drawTemplate(report, { paper: "a4" })[0]);
  });

  test("a folder that cannot be made: told, exit 2, and nothing checked", () => {
    const cwd = folderWith({ taken: "a file" });
    const { code, out, err } = command(["--svg", "taken", COMMAND], { cwd });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/^marker-depth: .*taken'?\n$/);
  });
});
