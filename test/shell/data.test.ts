/** What the command writes for other programs: NDJSON, CSV, pictures. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { afterAll, describe, expect, test } from "vitest";
import { drawBoard, drawSection, drawWindows } from "../../src/draw/index.js";
import { checkDesign, type Report } from "../../src/index.js";
import {
  COMMAND,
  command,
  EXAMPLES,
  example,
  folderWith,
  GOOD,
  linesOf,
  removeFolders,
} from "./command.js";

afterAll(removeFolders);

const NAMES = ["alder-24", "heron-bass", "larch-22", "plover-fanned", "wren-tenor"];
const reportOf = (name: string): Report => checkDesign(JSON.parse(example(name)));
/** The report as JSON, where a flat radius is "flat". */
const plain = (value: unknown) =>
  JSON.parse(JSON.stringify(value, (_, inner) => (inner === Infinity ? "flat" : inner)));

describe("--json", () => {
  test("one report a line, with its file", () => {
    const { code, out, err } = command(["--json", "docs/examples"]);
    const lines = linesOf(out).map((line) => JSON.parse(line));
    expect(lines).toEqual(
      NAMES.map((name) => ({ file: `docs/examples/${name}.json`, ...plain(reportOf(name)) })),
    );
    expect([code, err]).toEqual([1, ""]);
  });

  test("what cannot be read is an object with its issues, in its place", () => {
    const bad = JSON.stringify({ ...GOOD, web: -1 }, null, 2);
    const folder = folderWith({ "bad.json": bad, "good.json": JSON.stringify(GOOD) });
    const { code, out, err } = command(["--json", "bad.json", "none.json", "good.json"], {
      cwd: folder,
    });
    const [first, second, third, ...more] = linesOf(out).map((line) => JSON.parse(line));
    const line = bad.split("\n").findIndex((text) => text.includes("web")) + 1;
    expect(first).toEqual({
      file: "bad.json",
      issues: [
        {
          path: "web",
          line,
          column: 3,
          expected: expect.stringMatching(/^a length of 0 mm/),
          message: expect.stringMatching(/^web: expected a length of 0 mm .*, received -1$/),
        },
      ],
    });
    const message = "no such file or directory";
    expect(second).toEqual({ file: "none.json", issues: [{ path: "", message }] });
    expect(third).toMatchObject({ file: "good.json", ok: true });
    expect(more).toEqual([]);
    expect(linesOf(err)).toHaveLength(2);
    expect(code).toBe(2);
  });

  test("a flat radius", () => {
    const { out } = command(["--json", "-"], {
      input: JSON.stringify({ ...GOOD, radius: "flat" }),
    });
    expect(JSON.parse(out).holes[0].radius).toBe("flat");
    expect(out).not.toMatch(/:null/);
  });
});

const HEADER = [
  ..."file,line,design,ok,fret,side,max_by".split(","),
  ..."from_nut,off_centre,size,removed_inner,removed_centre,removed_outer".split(","),
  ..."least,most,lead,depth,travel,planned,planned_left,planned_web".split(","),
];

describe("--csv", () => {
  test("the header", () => {
    const { out } = command(["--csv", "docs/examples/larch-22.json"]);
    const names = HEADER.map((name, i) => (i < 7 ? name : `${name}_mm`));
    expect(out.split("\r\n")[0]).toBe(names.join(","));
    const [told = ""] = /CSV columns: [\s\S]*?\n\n/.exec(command(["--help"]).out) ?? [];
    for (const name of HEADER) expect(told).toMatch(new RegExp(`\\b${name}\\b`));
    expect(out.endsWith("\r\n")).toBe(true);
    expect(out.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test("a database reads it: a row for each hole, names with commas and quotes, full precision", async () => {
    const name = 'larch, "22"\nof two lines';
    const folder = folderWith({
      "a, b.json": JSON.stringify({ ...JSON.parse(example("larch-22")), name }),
      "bad.json": "{",
      "heron.json": example("heron-bass"),
    });
    const { code, out } = command(["--csv", "."], { cwd: folder });
    expect(code).toBe(2);
    const rows = await rowsOf(out);
    const designs = [reportOf("larch-22"), reportOf("heron-bass")];
    const wanted = designs.flatMap((report, i) =>
      report.holes.map((hole, h) => {
        const depth = report.stops.settings.find(({ holes }) => holes.includes(h))?.depth ?? null;
        return {
          file: ["a, b.json", "heron.json"][i],
          line: null,
          design: i === 0 ? name : report.name,
          ok: report.ok,
          fret: hole.fret,
          side: hole.side,
          max_by: hole.window.maxBy,
          from_nut_mm: hole.along,
          off_centre_mm: hole.offset,
          size_mm: hole.diameter,
          removed_inner_mm: hole.removal.inner,
          removed_centre_mm: hole.removal.centre,
          removed_outer_mm: hole.removal.outer,
          least_mm: hole.window.min,
          most_mm: hole.window.max,
          lead_mm: hole.lead,
          depth_mm: depth,
          travel_mm: depth === null ? null : depth + hole.lead,
          planned_mm: hole.planned?.depth ?? null,
          planned_left_mm: hole.planned?.left ?? null,
          planned_web_mm: hole.planned?.web ?? null,
        };
      }),
    );
    expect(wanted.length).toBeGreaterThan(15);
    expect(rows).toEqual(wanted);
  });

  test("in inches: 1 in is 25.4 mm", async () => {
    const mm = await rowsOf(command(["--csv", "docs/examples/larch-22.json"]).out);
    const inches = await rowsOf(command(["--csv", "--inches", "docs/examples/larch-22.json"]).out);
    expect(mm.length).toBeGreaterThan(5);
    let compared = 0;
    for (const [i, row] of mm.entries()) {
      for (const [key, value] of Object.entries(row)) {
        const other = inches[i]?.[key.replace(/_mm$/, "_in")];
        if (!key.endsWith("_mm")) expect(other).toEqual(value);
        else if (typeof value === "number") {
          compared++;
          expect(other).toBeCloseTo(value / 25.4, 12);
        }
      }
    }
    expect(compared).toBeGreaterThan(50);
  });
});

type Row = Readonly<Record<string, unknown>>;

async function rowsOf(csv: string): Promise<Row[]> {
  const file = join(folderWith({ "rows.csv": csv }), "rows.csv");
  const database = await (await DuckDBInstance.create(":memory:")).connect();
  const kinds = `{'fret': 'DOUBLE', 'line': 'DOUBLE', 'ok': 'BOOLEAN', 'file': 'VARCHAR', 'design': 'VARCHAR'}`;
  const reader = await database.runAndReadAll(
    `SELECT * FROM read_csv('${file}', header = true, delim = ',', quote = '"', escape = '"', types = ${kinds})`,
  );
  return reader.getRowObjectsJS();
}

describe("--svg", () => {
  test("the pictures of each design, in a folder that it makes", () => {
    const folder = folderWith({});
    const { code } = command(["--svg", "new/pictures", `${EXAMPLES}/larch-22.json`], {
      cwd: folder,
    });
    expect(code).toBe(0);
    const report = reportOf("larch-22");
    const wanted = new Map([
      ["larch-22-board.svg", drawBoard(report)],
      ["larch-22-windows.svg", drawWindows(report)],
      ...report.holes.map(({ fret, side }, i): [string, string] => [
        `larch-22-fret${fret}${side === "centre" ? "" : `-${side}`}.svg`,
        drawSection(report, i),
      ]),
    ]);
    expect(wanted.size).toBe(12);
    expect(readdirSync(join(folder, "new/pictures")).sort()).toEqual([...wanted.keys()].sort());
    for (const [file, svg] of wanted) {
      expect(readFileSync(join(folder, "new/pictures", file), "utf8")).toBe(svg);
    }
  });

  test("designs whose files have one name, and holes at one place, keep their own pictures", () => {
    const two = [
      { frets: [12], diameter: 4, arrangement: "double", spread: 14 },
      { frets: [12], diameter: 4, arrangement: "double", spread: 28 },
    ];
    const text = JSON.stringify({ ...GOOD, markers: two });
    const [a, b] = [folderWith({ "n.json": text }), folderWith({ "N.json": text })];
    const out = folderWith({});
    const words = ["--svg", out, "--json", `${a}/n.json`, `${b}/N.json`, "-"];
    const { code } = command(words, { input: `\n${text}\n` });
    expect(code).toBe(0);
    const parts = [
      "board",
      "fret12-bass",
      "fret12-bass-2",
      "fret12-treble",
      "fret12-treble-2",
      "windows",
    ];
    const names = ["N-2", "line2", "n"].flatMap((name) =>
      parts.map((part) => `${name}-${part}.svg`),
    );
    expect(readdirSync(out).sort()).toEqual(names.sort());
  });

  test("a folder that cannot be made: told, exit 2, and nothing checked", () => {
    const folder = folderWith({ taken: "a file" });
    const { code, out, err } = command(["--svg", "taken", COMMAND], { cwd: folder });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/^marker-depth: .*taken'?\n$/);
  });
});
