/** Holes as rows of CSV, by RFC 4180. */

import type { Hole, Report } from "../report/report.js";
import { INCH } from "../text/length-text.js";
import { settingLetter } from "../text/plain-words.js";
import type { Outcome } from "./outcome.js";

type Unit = "mm" | "in";
/** What a cell may hold; nothing where there is nothing. */
export type Cell = string | number | boolean | undefined;

/** A hole, with what it belongs to. */
interface Row {
  readonly outcome: Outcome;
  readonly report: Report;
  readonly hole: Hole;
}

/** The columns that hold no length. */
const FACTS: Readonly<Record<string, (row: Row) => Cell>> = {
  file: ({ outcome }) => outcome.file,
  line: ({ outcome }) => outcome.line,
  design: ({ report }) => report.name,
  ok: ({ report }) => report.ok,
  hole: ({ hole }) => hole.path,
  fret: ({ hole }) => hole.fret,
  side: ({ hole }) => hole.side,
  max_by: ({ hole }) => hole.window.maxBy,
  setting: ({ hole }) => hole.recommended && settingLetter(hole.recommended.setting),
};

/** The columns that hold a length; their unit is added to the name. */
const LENGTHS: Readonly<Record<string, (hole: Hole) => number | undefined>> = {
  along: ({ along }) => along,
  offset: ({ offset }) => offset,
  diameter: ({ diameter }) => diameter,
  width: ({ width }) => width,
  radius: ({ radius }) => radius,
  sanding: ({ sanding }) => sanding,
  thickness: ({ thickness }) => thickness,
  removal_inner: ({ removal }) => removal.inner,
  removal_centre: ({ removal }) => removal.centre,
  removal_outer: ({ removal }) => removal.outer,
  min: ({ window }) => window.min,
  max: ({ window }) => window.max,
  lead: ({ lead }) => lead,
  rise: ({ rise }) => rise,
  travel: ({ recommended }) => recommended?.travel,
  depth: ({ recommended }) => recommended?.depth,
  marker_left: ({ recommended }) => recommended?.markerLeft,
  wood_left: ({ recommended }) => recommended?.woodLeft,
  planned_travel: ({ planned }) => planned?.travel,
  planned_depth: ({ planned }) => planned?.depth,
  planned_marker_left: ({ planned }) => planned?.markerLeft,
  planned_wood_left: ({ planned }) => planned?.woodLeft,
};

/** The header's row. */
export function csvHeader(unit: Unit): string {
  return csvRow([...Object.keys(FACTS), ...Object.keys(LENGTHS).map((name) => `${name}_${unit}`)]);
}

/** A row for each hole of the design; none where it could not be read. */
export function csvRows(outcome: Outcome, unit: Unit): string {
  const { report } = outcome;
  if (report === undefined) return "";
  return report.holes.map((hole) => csvRow(makeCells({ outcome, report, hole }, unit))).join("");
}

function makeCells(row: Row, unit: Unit): Cell[] {
  const lengths = Object.values(LENGTHS).map((of) => of(row.hole));
  return [
    ...Object.values(FACTS).map((of) => of(row)),
    ...lengths.map((mm) => (mm === undefined || unit === "mm" ? mm : mm / INCH)),
  ];
}

/** A row, ended as RFC 4180 ends it. */
export function csvRow(cells: readonly Cell[]): string {
  return `${cells.map(csvCell).join(",")}\r\n`;
}

function csvCell(cell: Cell): string {
  const text = cell === undefined ? "" : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
