/** The figures that the pages state, read out of them and measured. */
import { readdirSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";
import { ENTRIES } from "../../.ci/tsup.config.js";
import { type Results, tableOf } from "../../bench/table.js";
import { FILE_LIMITS } from "../../src/files/index.js";
import { checkDesign, type Design, LIMITS, profileAt, sagitta } from "../../src/index.js";
import { exactOf, sagitta64 } from "../outside/exact.js";
import { roundedAs } from "../outside/printed.js";
import { bundle, packagesOf } from "../package/bundle.js";
import { fileText } from "./blocks.js";

const ACACIA: Design = JSON.parse(fileText("docs/examples/acacia-22.json"));
const ROOT = new URL("../../", import.meta.url).pathname;
const WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** A statement of a page: its figures are the groups, and it stands there once. */
interface Statement {
  readonly says: RegExp;
  readonly measured: () => readonly number[] | Promise<readonly number[]>;
  /** The share that a figure may be off where it grows with the code; any other holds to its last digit. */
  readonly within?: number;
}

const STATEMENTS: Readonly<Record<string, readonly Statement[]>> = {
  "README.md": [
    {
      says: /a check costs ([\d.]+) × as much, and a row of a sweep over a compound radius ([\d.]+) ×/,
      measured: costsMeasured,
    },
  ],
  "DEVELOPERS.md": [
    {
      says: /drill cards of the (\w+) example necks/,
      measured: () => [exampleFiles().length],
    },
  ],
  "docs/batch.md": [
    {
      says: /`checkDesign` alone carries ([\d.]+) kB.*; `sweep`, .* add ([\d.]+) kB; `sagitta` alone is ([\d.]+) kB/,
      measured: partsOfTheCore,
      within: 0.1,
    },
    {
      says: /these files, ([\d.]+) kB of code before it is minified/,
      measured: async () => [(await sizeOf("*", false)).bytes / 1000],
      within: 0.1,
    },
  ],
  "docs/choose-a-radius.md": [
    { says: /with m = dR\/ds: on this neck ([\d.]+) % less/, measured: () => [shareOffAxis()] },
  ],
  "docs/drill.md": [
    {
      says: /the outer rim lies ([\d.]+) mm from the centre line; .* aside, ([\d.]+)\. .* = ([\d.]+) mm\. Add/,
      measured: outerRim,
    },
    { says: /drills the twenty-fourth ([\d.]+) mm too shallow/, measured: () => [tooShallow()] },
    {
      says: /must be the travel, to within `tolerance.stop`: ([\d.]+) to ([\d.]+) mm/,
      measured: () => [travel() - 0.1, travel() + 0.1],
    },
    {
      says: /As travels, ([\d.]+) to ([\d.]+) mm suit every hole; the middle is ([\d.]+)/,
      measured: () => {
        const { min = NaN, max = NaN } = checkDesign(ACACIA).stops.common ?? {};
        return [min, max, (min + max) / 2];
      },
    },
  ],
  "docs/examples/README.md": [
    {
      says: /come out ([\d.]+) mm shallower than where it was touched if that was at the first dot, and ([\d.]+) mm if it was at the nut/,
      measured: () => [98.66, 0].map(shallowerAtTheFifteenth),
    },
  ],
  "docs/fix-a-hole.md": [
    {
      says: /1\/4 in is ([\d.]+) mm, too small; 5\/16 in is ([\d.]+) mm/,
      measured: () => [25.4 / 4, (25.4 * 5) / 16],
    },
  ],
  "docs/formulas.md": [
    { says: /for R = 305 and x = 0\.1 it keeps (\w+) of sixteen/, measured: () => [digitsKept()] },
  ],
  "docs/slots.md": [
    {
      says: /half the width is ([\d.]+) mm, and with the crest 0\.5 mm aside the edge lies ([\d.]+) mm from it, where R 305 takes ([\d.]+) mm/,
      measured: () => {
        const half = halfWidthAt("fret22");
        return [half, half + 0.5, sagitta(305, half + 0.5)];
      },
    },
    {
      says: /at the nut: ([\d.]+) mm from the centre line R 305 takes ([\d.]+) mm/,
      measured: () => [halfWidthAt("nut"), sagitta(305, halfWidthAt("nut"))],
    },
    {
      says: /Left of 6\.2 mm: ([\d.]+) mm, half of it ([\d.]+) mm/,
      measured: () => {
        const left = 6.2 - 0.15 - sagitta(305, halfWidthAt("nut"));
        return [left, left / 2];
      },
    },
  ],
  "docs/trust.md": [
    {
      says: /\(C 0\.00353\) that dries by 2 % .* shrinks by ([\d.]+) mm across; 6 mm thick, .* by ([\d.]+) mm\. .* \(C 0\.00403\), .*: ([\d.]+) mm across/,
      // Wood Handbook (FPL-GTR-190), eq. 13-2; C of sugar maple and persimmon, tangential: table 13-5 (seen)
      measured: () => [57 * 0.00353 * 2, 6 * 0.00353 * 2, 57 * 0.00403 * 2],
    },
    {
      says: /at 1° the floor of a 6\.35 mm hole lies ([\d.]+) mm too high .* tip of 4\.25 mm travel is ([\d.]+) mm aside/,
      measured: () => [6.35 / 2, 4.25].map((length) => length * Math.tan(Math.PI / 180)),
    },
    {
      says: /a point of 1\.6 mm with 60° is ([\d.]+) mm wide to either side/,
      measured: () => [1.6 * Math.tan(Math.PI / 6)],
    },
    {
      says: /0\.4 mm deep and 1 mm wide takes (\d+) mm³ beside the (\d+) mm³ of a hole/,
      // a groove of triangular section along the rim, and a cylinder
      measured: () => [(Math.PI * 6.35 * 0.4 * 1) / 2, Math.PI * 3.175 ** 2 * 2.65],
    },
    {
      says: /up to ([\d.]+) mm of a hole 2\.65 mm deep/,
      measured: () => [0.05 * 2.65],
    },
    {
      says: /^\| frets; marker groups \| (\d+); (\d+) \|$/m,
      measured: () => [LIMITS.frets.value, LIMITS.groups.value],
    },
    {
      says: /^\| holes of a design whose remedies are sought \| (\d+) \|$/m,
      measured: () => {
        const [, most] = /MOST_HOLES = (\d+)/.exec(fileText("src/report/remedies.ts")) ?? [];
        return [Number(most)];
      },
    },
    {
      says: /\| ([\d,]+) characters, (\d+) levels, ([\d,]+) keys; (\d+) mistakes told \|$/m,
      measured: () => Object.values(FILE_LIMITS).map(({ value }) => value),
    },
    {
      says: /doubles converted exactly\) \| ([\d,]+) each.*\n[\s\S]* ([\d,]+) points on each disc/,
      measured: () => {
        const [formulas, discs] = [accuracyRows()[0], accuracyRows().at(-1)];
        return [Number(formulas?.[3]), Number.parseInt(discs?.[2] ?? "", 10)];
      },
    },
  ],
};

describe.each(Object.entries(STATEMENTS))("%s", (page, statements) => {
  test.each(statements)("$says", async ({ says, measured, within = 0 }) => {
    const [found, ...more] = fileText(page).matchAll(new RegExp(says, `g${says.flags}`));
    expect(more).toEqual([]);
    const stated = found?.slice(1).map(plain) ?? [];
    const values = await measured();
    expect(stated).toHaveLength(values.length);
    values.forEach((value, i) => {
      const text = stated[i] ?? "";
      if (within === 0) expect(roundedAs(value, text)).toBe(text);
      else expect(Math.abs(Number(text) / value - 1)).toBeLessThanOrEqual(within);
    });
  });
});

function exampleFiles(): string[] {
  return readdirSync(`${ROOT}docs/examples`).filter((name) => name.endsWith(".json"));
}

/** A figure as a program writes it: "five" is 5, "10,000" is 10000. */
function plain(figure: string): string {
  const word = WORDS.indexOf(figure);
  return word < 0 ? figure.replaceAll(",", "") : String(word);
}

/** What the rule of the twelfth fret misses, by the last column of its table. */
function tooShallow(): number {
  const least = [...fileText("docs/drill.md").matchAll(/^\| (?:12|24) \|.* \| ([\d.]+) mm \|$/gm)];
  const [twelfth, last] = least.map(([, mm]) => Number(mm));
  return Number(last) - Number(twelfth);
}

/** Bytes of some names of the core, or of all of it, as a page bundles them. */
async function sizeOf(names: string, minify = true) {
  const contents = `export ${names === "*" ? "*" : `{ ${names} }`} from "./src/index.js";`;
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: ROOT, loader: "ts" },
    bundle: true,
    minify,
    format: "esm",
    target: "es2022",
    write: false,
  });
  const text = outputFiles[0]?.contents ?? new Uint8Array();
  return { bytes: text.length, gzipped: gzipSync(text, { level: 9 }).length };
}

/** A check, and a row of a sweep, as bench/results.json has them: ratios to bare loops. */
function costsMeasured(): number[] {
  const { reports, compound } = JSON.parse(fileText("bench/results.json"));
  const ratioOf = (rows: { name: string; ratio: number }[], name: string) =>
    rows.find((row) => row.name === name)?.ratio ?? Number.NaN;
  return [ratioOf(reports, "`checkDesign`"), ratioOf(compound, "`sweep`, columns used again")];
}

async function partsOfTheCore(): Promise<number[]> {
  const names = ["checkDesign", "checkDesign, sweep, frontier, checkMany", "sagitta"];
  const sizes = await Promise.all(names.map((name) => sizeOf(name)));
  const [one = 0, many = 0, drop = 0] = sizes.map(({ gzipped }) => gzipped / 1000);
  return [one, many - one, drop];
}

/** How much nearer a cone's axis is than the radius that a gauge reads square to a line of it, percent. */
function shareOffAxis(): number {
  const angle = Math.atan((406 - 254) / ACACIA.board.length);
  return 100 * (1 - Math.sin(angle) / Math.tan(angle));
}

function outerRim(): number[] {
  const { holes } = checkDesign(ACACIA);
  const outermost = Math.max(...holes.map(({ offset, width }) => offset + width / 2));
  // the layout error, and the crest aside
  const grown = outermost + 0.25 + 0.5;
  return [outermost, grown, sagitta(305, grown)];
}

function travel(): number {
  return checkDesign(ACACIA).stops.settings[0]?.travel ?? Number.NaN;
}

/** A taper from 4.0 to 3.1 over 288: how much lower the top lies at the last dot than where the stop was zeroed. */
function shallowerAtTheFifteenth(zero: number): number {
  const { holes } = checkDesign(JSON.parse(fileText("docs/examples/wren-tenor.json")));
  const along = holes.at(-1)?.along ?? Number.NaN;
  return ((along - zero) * (4 - 3.1)) / 288;
}

/** Half the width at a station. */
function halfWidthAt(station: string): number {
  const along = checkDesign(ACACIA).edges.find((edge) => edge.station === station)?.along;
  return profileAt(ACACIA.board.width, along ?? Number.NaN, ACACIA) / 2;
}

/** How many digits the form that cancels keeps, against 64-digit arithmetic. */
function digitsKept(): number {
  const cancelled = exactOf(305 - Math.sqrt(305 ** 2 - 0.1 ** 2));
  const exact = sagitta64(305, 0.1, 0);
  return -Math.log10(cancelled.minus(exact).abs().div(exact).toNumber());
}

/** The cells of the table of accuracy: quantity, range, reference, samples, error, unit. */
function accuracyRows(): string[][] {
  const [, table = ""] =
    /accuracy:begin -->\n([\s\S]*)<!-- accuracy:end/.exec(fileText("docs/trust.md")) ?? [];
  const rows = table.trim().split("\n").slice(2);
  return rows.map((row) => row.slice(2, -2).split(" | "));
}

test("docs/trust.md's bound on rounding is above what its table measures", () => {
  const [, bound] = /\| under (\d+) ulp /.exec(fileText("docs/trust.md")) ?? [];
  const errors = accuracyRows().flatMap(([, , , , error, unit]) => (unit === "ulp" ? [error] : []));
  expect(errors.length).toBeGreaterThan(4);
  for (const error of errors) expect(Number(error)).toBeLessThan(Number(bound));
});

test("docs/batch.md's table is that of bench/results.json, and the sizes in it are near today's", async () => {
  const results: Results = JSON.parse(fileText("bench/results.json"));
  expect(fileText("docs/batch.md")).toContain(`\n${tableOf(results)}\n`);
  const files = Object.entries(ENTRIES);
  expect(results.entries).toHaveLength(files.length);
  for (const { name, gzipped } of results.entries) {
    const [, file = ""] = files.find(([entry]) => name.endsWith(`/${entry}`)) ?? files[0] ?? [];
    const now = await bundle(file.replace("src/", ""));
    expect(Math.abs(gzipped / now.gzipped - 1), name).toBeLessThanOrEqual(0.1);
  }
});

test("docs/packages.md lists the packages that the entries take from, with version and licence", async () => {
  const files = [...Object.values(ENTRIES), "src/shell/pool.ts"];
  const bundles = await Promise.all(files.map((file) => bundle(file.replace("src/", ""))));
  const used = packagesOf(bundles.flatMap((one) => one.used));
  const rows = [...fileText("docs/packages.md").matchAll(/^\| (\S+) (\d[\d.]*) \| (\S+) \|/gm)];
  expect(rows.map(([, name]) => name).sort()).toEqual(used);
  for (const [, name, version, licence] of rows) {
    const found = JSON.parse(fileText(`node_modules/${name}/package.json`));
    expect(`${found.version} ${found.license}`, name).toMatch(
      RegExp(`^${version}\\.\\d+ ${licence}$`),
    );
  }
});
