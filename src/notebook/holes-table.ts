/** The holes as a table. Lengths in mm. */

import * as words from "../draw/words.js";
import { element } from "../draw/xml.js";
import type { Hole, Report } from "../report/report.js";
import { MILLIMETRES } from "../text/length-text.js";
import { holeNames, settingLetter } from "../text/plain-words.js";

/** A column: its head, and what it says of a hole. */
type Column = readonly [string, (hole: Hole, i: number) => string];

const NOTHING = "–";

/** The table; nothing where there are no holes. */
export function holesTable(report: Report): string[] {
  const { holes } = report;
  if (holes.length === 0) return [];
  const [columns, names] = [columnsOf(report), holeNames(holes)];
  const head = ["hole", ...columns.map(([words]) => words)].map((words) => {
    return element("th", { scope: "col" }, words);
  });
  const rows = holes.map((hole, i) => {
    const cells = columns.map(([, said]) => element("td", {}, said(hole, i)));
    return [element("th", { scope: "row" }, names[i]), ...cells];
  });
  return [
    '<table style="white-space:nowrap;text-align:right">',
    element("caption", {}, "Lengths in mm; depths of the floor from the top"),
    `<thead>${rowOf(head)}</thead>`,
    "<tbody>",
    ...rows.map(rowOf),
    "</tbody>",
    "</table>",
  ];
}

function rowOf(cells: readonly string[]): string {
  return `<tr>${cells.join("")}</tr>`;
}

function columnsOf(report: Report): Column[] {
  const { holes, stops } = report;
  return [
    ["from the nut", ({ along }) => figure(along)],
    ["off the centre", ({ offset }) => figure(offset)],
    ["size", ({ width }) => figure(width)],
    ["removed", ({ removal }) => figure(removal.outer)],
    ["least", ({ window }) => words.least(window.min, MILLIMETRES)],
    ["most", ({ window }) => words.most(window.max, MILLIMETRES)],
    ["most set by", ({ window }) => words.LIMITS[window.maxBy]],
    ...(stops.settings.length > 1 ? [settingColumn()] : []),
    ["depth", ({ recommended }) => lengthWords(recommended?.depth)],
    ["travel", ({ recommended }) => lengthWords(recommended?.travel)],
    ...(holes.some(({ planned }) => planned) ? PLANNED : []),
  ];
}

function settingColumn(): Column {
  return [
    "setting",
    ({ recommended }) => (recommended ? settingLetter(recommended.setting) : NOTHING),
  ];
}

const PLANNED: readonly Column[] = [
  ["planned", ({ planned }) => lengthWords(planned?.depth)],
  ["marker left", ({ planned }) => lengthWords(planned?.markerLeft)],
  ["wood left", ({ planned }) => lengthWords(planned?.woodLeft)],
];

const figure = (mm: number) => words.figure(mm, MILLIMETRES);

function lengthWords(length: number | undefined): string {
  return length === undefined ? NOTHING : figure(length);
}
