/** The bench: its bare loops agree with the library, and a loop that does not is told. */
import { describe, expect, test } from "vitest";
import { bareReports, REPORT_NUMBERS } from "../../bench/bare.js";
import { mustEqual } from "../../bench/equal.js";
import { numbersOf } from "../../bench/flat-report.js";
import { necksOf, randomNecks } from "../../bench/necks.js";
import { checkReports } from "../../bench/reports.js";
import { FAILING } from "../../bench/seeking.js";
import { machine, tableOf } from "../../bench/table.js";
import { interleaved, median } from "../../bench/timing.js";
import { checkWindows } from "../../bench/windows.js";
import { checkDesign } from "../../src/index.js";

describe("what is compared", () => {
  test("the travels of every way, all combinations", () => {
    const [count, few, turns] = [4, 3, 7];
    const columns = 5 * (3 * count ** 3 + count ** 2);
    expect(checkWindows(count, few)).toBe(turns * columns + (5 + 5 + 2) * few);
  });

  test("each design that fails has the finding that it is made for", () => {
    for (const [code, design] of FAILING) {
      const codes = checkDesign(design).findings.map((finding) => finding.code);
      expect(codes, code).toContain(code);
    }
    expect(FAILING).toHaveLength(12);
  });

  test("every number of the reports, three ways", () => {
    expect(checkReports(20)).toBe(3 * 20 * REPORT_NUMBERS);
  });

  test("one number off by a millionth is told", () => {
    const columns = randomNecks(1, 1);
    const bare = new Float64Array(REPORT_NUMBERS);
    bareReports(columns, bare);
    const [design] = necksOf(columns);
    if (design === undefined) throw new Error("no neck");
    const numbers = numbersOf(checkDesign(design));
    expect(mustEqual("report", numbers, bare)).toBe(REPORT_NUMBERS);
    for (let i = 0; i < REPORT_NUMBERS; i += 7) {
      const off = bare.slice();
      off[i] = (off[i] ?? 0) + 1e-6 * Math.max(1, Math.abs(off[i] ?? 0));
      expect(() => mustEqual("report", numbers, off), String(i)).toThrow("report:");
    }
  });

  test("nothing at all is no comparison, NaN is no agreement", () => {
    expect(() => mustEqual("empty", [], [])).toThrow("0 numbers");
    expect(() => mustEqual("short", [1, 2], [1])).toThrow("2 numbers against 1");
    expect(() => mustEqual("NaN", [1, Number.NaN, 1], [1, 1, 1])).toThrow("NaN");
  });
});

describe("medians", () => {
  test("the middle one, or the mean of the two", () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(() => median([])).toThrow("no values");
  });

  test("each rival runs in each round, two more to warm up, on other inputs each time", () => {
    const turns: number[][] = [[], []];
    const rivals = turns.map((seen, i) => ({
      name: `rival ${i}`,
      repeats: 2,
      run: (turn: number) => seen.push(turn) && 5,
    }));
    const timed = interleaved(rivals, 3);
    for (const seen of turns) expect(seen).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(timed.map(({ name, designs, runs }) => [name, designs, runs])).toEqual([
      ["rival 0", 10, 3],
      ["rival 1", 10, 3],
    ]);
    expect(timed[0]?.ratio).toBe(1);
  });
});

test("the machine is told without its maker's name", () => {
  expect(machine()).toMatch(/^\w+, \d+ cores, Node \d+\.\d+\.\d+$/);
});

test("the table says of each goal whether it is met", () => {
  const timed = (name: string, ratio: number) => ({
    name,
    designs: 1000,
    runs: 3,
    ns: 1234,
    ratio,
  });
  const table = tableOf({
    date: "2000-01-01",
    machine: "an invented machine",
    compared: 12345,
    single: [timed("`sweep`, columns used again", 1.5), timed("`sweep`, new columns", 1.51)],
    compound: [],
    ends: [timed("`sweep`, new columns", 1.99)],
    reports: [timed("`checkDesign`", 20.1)],
    frontiers: [timed("`frontier` of it", 60)],
    remedies: [timed("`remediesFor` a finding of it", 501)],
    chance: [],
    sweepGrowth: [timed("`sweep`", 1.25)],
    streamGrowth: [timed("`checkMany`", 1.26)],
    jobs: [timed("`--jobs 2`", 0.6)],
    memory: {
      column: 28,
      report: 5600,
      swept: 0,
      sweeps: [100, 1000],
      growth: 9,
      streamed: 1000,
    },
    entries: [
      { name: "marker-depth", minified: 30_000, gzipped: 12_001, load: 10, ratio: 1 },
      { name: "marker-depth/card", minified: 10_000, gzipped: 4000, load: 20, ratio: 1.51 },
    ],
    packages: 0,
  });
  const goals = table
    .split("\n")
    .map((line) => line.split("|").at(-2)?.trim() ?? "")
    .filter((cell) => cell.includes("met"));
  expect(goals).toEqual([
    "≤ 1.5: met",
    "≤ 1.5: **not met**",
    "≤ 2: met",
    "≤ 20: **not met**",
    "≤ 60: met",
    "≤ 500: **not met**",
    "linear: met",
    "linear: **not met**",
    "flat: met",
    "flat: **not met**",
    "≤ 1.5: met",
    "≤ 1.5: **not met**",
    "≤ 0: met",
  ]);
  // 1e9 / 1234 is 810,373
  expect(table).toContain("| `--jobs 2` | 1,000 | 1,234 ns: 810,000 designs a second | 0.6 | |");
  expect(table).toContain("| kept as reports | | 5,600 B | 200 | |");
});
