/** Whole reports: the check, its two halves, many at once, and the bare loop that writes the same numbers. */
import { readNeck, workOut } from "../src/drilling/work.js";
import { checkDesign, checkMany } from "../src/index.js";
import { reportOn } from "../src/report/report.js";
import { bareReports, REPORT_NUMBERS } from "./bare.js";
import { mustEqual } from "./equal.js";
import { numbersOf } from "./flat-report.js";
import { necksOf, randomNecks } from "./necks.js";
import type { Rival } from "./timing.js";

const TURNS = 3;

/** All over the same necks, `count` of them in a run. */
export function reportRivals(count: number): Rival[] {
  const columns = Array.from({ length: TURNS }, (_, turn) => randomNecks(count, 10 + turn));
  const designs = columns.map(necksOf);
  // one, again and again: where many live on, the engine takes all that is made like them for long-lived, in every rival
  const necks = designs.map(([design]) => [readNeck(design)]);
  const out = new Float64Array(count * REPORT_NUMBERS);
  const at = <T>(list: readonly T[], turn: number) => list[turn % TURNS] as T;
  const each = <T>(list: readonly (readonly T[])[], work: (item: T) => unknown) => {
    return (turn: number) => counted(at(list, turn), work);
  };
  return [
    { name: "bare loop over columns", run: (t) => bareReports(at(columns, t), out), repeats: 10 },
    { name: "`checkDesign`", run: each(designs, checkDesign) },
    { name: "its reading, laying out and windows alone", run: each(designs, readNeck) },
    {
      name: "its stops, edges, findings and report alone",
      run: each(necks, (neck) => reportOn(workOut(neck))),
      repeats: count,
    },
    { name: "`checkMany`", run: (t) => countedMany(checkMany(at(designs, t))) },
  ];
}

let kept: unknown;

/** Does the work on each; the result is held, so that none of it can be left out. */
function counted<T>(items: readonly T[], work: (item: T) => unknown): number {
  for (const item of items) kept = work(item);
  return kept === undefined ? 0 : items.length;
}

function countedMany(results: Iterable<unknown>): number {
  let count = 0;
  for (const result of results) {
    kept = result;
    count++;
  }
  return count;
}

/** Holds every number of every report against the bare loop; tells how many were compared. */
export function checkReports(count: number): number {
  const columns = randomNecks(count, 10);
  const bare = new Float64Array(count * REPORT_NUMBERS);
  bareReports(columns, bare);
  const designs = necksOf(columns);
  const halves = designs.flatMap((design) => numbersOf(reportOn(workOut(readNeck(design)))));
  const many = [...checkMany(designs)].flatMap(({ report }) => (report ? numbersOf(report) : []));
  return (
    mustEqual(
      "checkDesign",
      designs.flatMap((design) => numbersOf(checkDesign(design))),
      bare,
    ) +
    mustEqual("reportOn", halves, bare) +
    mustEqual("checkMany", many, bare)
  );
}
