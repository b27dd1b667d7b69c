/** Findings as rows of CSV, by RFC 4180. */
import type { Finding, Report } from "../report/report.js";
import { tell } from "../report/sentences.js";
import { INCH, INCHES } from "../text/length-text.js";
import { type Cell, csvRow } from "./csv.js";
import type { Outcome } from "./outcome.js";

/** A finding, with what it belongs to. */
interface Row {
  readonly outcome: Outcome;
  readonly report: Report;
  readonly finding: Finding;
  readonly unit: "mm" | "in";
}

const COLUMNS: Readonly<Record<string, (row: Row) => Cell>> = {
  file: ({ outcome }) => outcome.file,
  line: ({ outcome }) => outcome.line,
  design: ({ report }) => report.name,
  ok: ({ report }) => report.ok,
  severity: ({ finding }) => finding.severity,
  code: ({ finding }) => finding.code,
  hole: ({ report, finding }) => holePath(report, finding.hole),
  other_hole: ({ report, finding }) => holePath(report, finding.other),
  fret: ({ finding }) => finding.fret,
  side: ({ finding }) => finding.side,
  station: ({ finding }) => finding.station,
  field: ({ finding }) => finding.path,
  value: (row) => makeLength(row, row.finding.value),
  limit: (row) => makeLength(row, row.finding.limit),
  unit: ({ finding, unit }) => (isCount(finding) ? "" : unit),
  message: ({ finding, unit }) => (unit === "in" ? tell(finding, INCHES) : finding.message),
};

/** The header's row. */
export function findingHeader(): string {
  return csvRow(Object.keys(COLUMNS));
}

/** A row for each finding of the design; none where it could not be read. */
export function findingRows(outcome: Outcome, unit: "mm" | "in"): string {
  const { report } = outcome;
  if (report === undefined) return "";
  return report.findings
    .map((finding) => {
      const row = { outcome, report, finding, unit };
      return csvRow(Object.values(COLUMNS).map((cell) => cell(row)));
    })
    .join("");
}

function holePath({ holes }: Report, i: number | undefined): Cell {
  return i === undefined ? undefined : holes[i]?.path;
}

function makeLength({ finding, unit }: Row, value: number): Cell {
  return unit === "mm" || isCount(finding) ? value : value / INCH;
}

/** How many settings there are, and how many are wanted. */
function isCount({ code }: Finding): boolean {
  return code === "several-settings" || code === "several-travels";
}
