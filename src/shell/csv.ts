/** Holes as rows of CSV, by RFC 4180. */

import type { Hole, Report } from "../report/report.js";
import { INCH } from "../text/length-text.js";
import type { Outcome } from "./outcome.js";

type Unit = "mm" | "in";
type Cell = string | number | boolean | undefined;

/** A hole, with what it belongs to. */
interface Row {
  readonly outcome: Outcome;
  readonly report: Report;
  readonly hole: Hole;
  /** Of the setting that serves it. */
  readonly depth: number | undefined;
}

/** The columns that hold no length. */
const FACTS: Readonly<Record<string, (row: Row) => Cell>> = {
  file: ({ outcome }) => outcome.file,
  line: ({ outcome }) => outcome.line,
  design: ({ report }) => report.name,
  ok: ({ report }) => report.ok,
  fret: ({ hole }) => hole.fret,
  side: ({ hole }) => hole.side,
  max_by: ({ hole }) => hole.window.maxBy,
};

/** The columns that hold a length; their unit is added to the name. */
const LENGTHS: Readonly<Record<string, (row: Row) => number | undefined>> = {
  from_nut: ({ hole }) => hole.along,
  off_centre: ({ hole }) => hole.offset,
  size: ({ hole }) => hole.diameter,
  removed_inner: ({ hole }) => hole.removal.inner,
  removed_centre: ({ hole }) => hole.removal.centre,
  removed_outer: ({ hole }) => hole.removal.outer,
  least: ({ hole }) => hole.window.min,
  most: ({ hole }) => hole.window.max,
  lead: ({ hole }) => hole.lead,
  depth: ({ depth }) => depth,
  travel: ({ hole, depth }) => (depth === undefined ? undefined : depth + hole.lead),
  planned: ({ hole }) => hole.planned?.depth,
  planned_left: ({ hole }) => hole.planned?.left,
  planned_web: ({ hole }) => hole.planned?.web,
};

/** The header's row. */
export function csvHeader(unit: Unit): string {
  return csvRow([...Object.keys(FACTS), ...Object.keys(LENGTHS).map((name) => `${name}_${unit}`)]);
}

/** A row for each hole of the design; none where it could not be read. */
export function csvRows(outcome: Outcome, unit: Unit): string {
  const { report } = outcome;
  if (report === undefined) return "";
  return report.holes
    .map((hole, i) => cellsOf({ outcome, report, hole, depth: depthFor(i, report) }, unit))
    .map(csvRow)
    .join("");
}

function cellsOf(row: Row, unit: Unit): Cell[] {
  const lengths = Object.values(LENGTHS).map((of) => of(row));
  return [
    ...Object.values(FACTS).map((of) => of(row)),
    ...lengths.map((mm) => (mm === undefined || unit === "mm" ? mm : mm / INCH)),
  ];
}

function depthFor(hole: number, { stops }: Report): number | undefined {
  return stops.settings.find(({ holes }) => holes.includes(hole))?.depth;
}

function csvRow(cells: readonly Cell[]): string {
  return `${cells.map(csvCell).join(",")}\r\n`;
}

function csvCell(cell: Cell): string {
  const text = cell === undefined ? "" : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
