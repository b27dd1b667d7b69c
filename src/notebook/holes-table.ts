/** The holes as a table. Lengths in mm. */

import { figure, LIMITS, least, most, settingOf } from "../draw/words.js";
import { element } from "../draw/xml.js";
import type { Hole, Report } from "../report/report.js";
import { holeName, settingLetter } from "../text/plain-words.js";

/** A column: its head, and what it says of a hole. */
type Column = readonly [string, (hole: Hole, i: number) => string];

const NOTHING = "–";

/** The table; nothing where there are no holes. */
export function holesTable(report: Report): string[] {
  const { holes } = report;
  if (holes.length === 0) return [];
  const columns = columnsOf(report);
  const head = ["hole", ...columns.map(([words]) => words)].map((words) => {
    return element("th", { scope: "col" }, words);
  });
  const rows = holes.map((hole, i) => {
    const cells = columns.map(([, said]) => element("td", {}, said(hole, i)));
    return [element("th", { scope: "row" }, holeName(hole)), ...cells];
  });
  return [
    '<table style="white-space:nowrap;text-align:right">',
    element("caption", {}, "Lengths in mm; depths of the bit's rim from the flat top"),
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
    ["size", ({ diameter }) => figure(diameter)],
    ["removed", ({ removal }) => figure(removal.outer)],
    ["least", ({ window }) => least(window.min)],
    ["most", ({ window }) => most(window.max)],
    ["most set by", ({ window }) => LIMITS[window.maxBy]],
    ...(stops.settings.length > 1 ? [settingColumn(report)] : []),
    ["depth", (_, i) => depthWords(settingOf(report, i)?.setting.depth)],
    ["travel", ({ lead }, i) => depthWords(settingOf(report, i)?.setting.depth, lead)],
    ...(holes.some(({ planned }) => planned) ? PLANNED : []),
  ];
}

function settingColumn(report: Report): Column {
  return [
    "setting",
    (_, i) => {
      const served = settingOf(report, i);
      return served ? settingLetter(served.index) : NOTHING;
    },
  ];
}

const PLANNED: readonly Column[] = [
  ["planned", ({ planned }) => depthWords(planned?.depth)],
  ["marker left", ({ planned }) => depthWords(planned?.left)],
  ["wood left", ({ planned }) => depthWords(planned?.web)],
];

function depthWords(depth: number | undefined, lead = 0): string {
  return depth === undefined ? NOTHING : figure(depth + lead);
}
