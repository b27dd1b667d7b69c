/** The figures that the pages state, read out of them and measured. */
import { readdirSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";
import { type Results, tableOf } from "../../bench/table.js";
import { FILE_LIMITS } from "../../src/files/index.js";
import { checkDesign, type Design, LIMITS, profileAt, sagitta } from "../../src/index.js";
import { exactOf, sagitta64 } from "../outside/exact.js";
import { roundedAs } from "../outside/printed.js";
import { bundle, packagesOf } from "../package/bundle.js";
import { fileText } from "./blocks.js";

const PACKAGE = JSON.parse(fileText("package.json"));
const LARCH: Design = JSON.parse(fileText("docs/examples/larch-22.json"));
const ROOT = new URL("../../", import.meta.url).pathname;
/** The entries, by the name of each and the file in src; the command is none. */
const { cli: _, ...ENTRIES }: Readonly<Record<string, string>> = PACKAGE.tsup.entry;
const WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** A statement of a page: its figures are the groups, and it stands there once. */
interface Statement {
  readonly says: RegExp;
  readonly measured: () => readonly number[] | Promise<readonly number[]>;
  /** The share that a figure may be off where it grows with the code; any other holds to its last digit. */
  readonly within?: number;
}

const STATEMENTS: Readonly<Record<string, readonly Statement[]>> = {
  "DEVELOPERS.md": [
    {
      says: /drill cards of the (\w+) example necks/,
      measured: () => [exampleFiles().length],
    },
  ],
  "README.md": [
    { says: /drills the twenty-fourth ([\d.]+) mm too shallow/, measured: () => [tooShallow()] },
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
      says: /the outer rim lies ([\d.]+) mm from the centre line, ([\d.]+) with the layout error.* = ([\d.]+) mm\. Add/,
      measured: outerRim,
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
      says: /half the width is ([\d.]+) mm, where R 305 takes ([\d.]+) mm/,
      measured: () => edgeAt("fret22"),
    },
    {
      says: /([\d.]+) mm from the centre line R 305 takes ([\d.]+) mm/,
      measured: () => edgeAt("nut"),
    },
    {
      says: /Left of 6\.2 mm: ([\d.]+) mm, half of it ([\d.]+) mm/,
      measured: () => {
        const left = 6.2 - 0.15 - (edgeAt("nut")[1] ?? 0);
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
      says: /^\| frets; marker groups \| (\d+); (\d+) \|$/m,
      measured: () => [LIMITS.frets.value, LIMITS.groups.value],
    },
    {
      says: /^\| holes of a design whose remedies are sought \| (\d+) \|$/m,
      measured: () => [LIMITS.remedyHoles.value],
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

/** What the rule of the twelfth fret misses, by the last column of the README's table. */
function tooShallow(): number {
  const least = [...fileText("README.md").matchAll(/^\| (?:12|24) \|.* \| ([\d.]+) mm \|$/gm)];
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

async function partsOfTheCore(): Promise<number[]> {
  const names = ["checkDesign", "checkDesign, sweep, frontier, checkMany", "sagitta"];
  const sizes = await Promise.all(names.map((name) => sizeOf(name)));
  const [one = 0, many = 0, drop = 0] = sizes.map(({ gzipped }) => gzipped / 1000);
  return [one, many - one, drop];
}

/** How much nearer a cone's axis is than the radius that a gauge reads square to a line of it, percent. */
function shareOffAxis(): number {
  const angle = Math.atan((406 - 254) / LARCH.board.length);
  return 100 * (1 - Math.sin(angle) / Math.tan(angle));
}

function outerRim(): number[] {
  const { holes } = checkDesign(LARCH);
  const outermost = Math.max(...holes.map(({ offset, diameter }) => offset + diameter / 2));
  const grown = outermost + 0.25;
  return [outermost, grown, sagitta(305, grown)];
}

/** Half the width at a station, and what the radius takes there. */
function edgeAt(station: string): number[] {
  const along = checkDesign(LARCH).edges.find((edge) => edge.station === station)?.along ?? NaN;
  const half = profileAt(LARCH.board.width, along, LARCH) / 2;
  return [half, sagitta(305, half)];
}

/** How many digits the form that cancels keeps, against 64-digit arithmetic. */
function digitsKept(): number {
  const cancelled = exactOf(305 - Math.sqrt(305 ** 2 - 0.1 ** 2));
  const exact = sagitta64(305, 0.1, 0);
  return -Math.log10(cancelled.minus(exact).abs().div(exact).toNumber());
}

/** The cells of the README's table of accuracy: quantity, range, reference, samples, error, unit. */
function accuracyRows(): string[][] {
  const [, table = ""] =
    /accuracy:begin -->\n([\s\S]*)<!-- accuracy:end/.exec(fileText("README.md")) ?? [];
  const rows = table.trim().split("\n").slice(2);
  return rows.map((row) => row.slice(2, -2).split(" | "));
}

test("docs/trust.md's bound on rounding is above what the README's table measures", () => {
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
  const files = Object.values(ENTRIES);
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
