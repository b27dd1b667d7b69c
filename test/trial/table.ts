/** Rows as a table to read. */
import type { Row } from "./measure.js";

const HEAD = ["trial", "quantity", "expected", "found", "difference", "mark", "pass"];
const WIDEST = 60;

/** The table: columns padded to their widest cell. */
export function tableOf(rows: readonly Row[]): string {
  const cells = [HEAD, ...rows.map(cellsOf)];
  const widths = HEAD.map((_, c) => Math.max(...cells.map((row) => row[c]?.length ?? 0)));
  const lines = cells.map((row) => row.map((cell, c) => cell.padEnd(widths[c] ?? 0)).join("  "));
  return `${lines.map((line) => line.trimEnd()).join("\n")}\n`;
}

function cellsOf(row: Row): string[] {
  const { trial, quantity, expected, found, difference, mark, passes, remark } = row;
  const verdict = (passes ? "yes" : "NO") + (remark === "" ? "" : ` (${remark})`);
  const apart = difference === undefined ? "" : shown(difference, 2);
  return [cut(trial), cut(quantity), shown(expected), shown(found), apart, mark, verdict];
}

function cut(text: string): string {
  return text.length > WIDEST ? `${text.slice(0, WIDEST - 1)}…` : text;
}

function shown(value: unknown, digits = 8): string {
  return typeof value === "number" ? String(Number(value.toPrecision(digits))) : String(value);
}

/** What was compared, in a line. */
export function summaryOf(trials: number, rows: readonly Row[], unread: number): string {
  const failed = rows.filter(({ passes }) => !passes).length;
  const verdict = failed === 0 ? "all pass" : `${failed} ${failed === 1 ? "fails" : "fail"}`;
  const rest = unread > 0 ? `; ${unread} ${unread === 1 ? "file" : "files"} could not be read` : "";
  const files = trials === 1 ? "1 trial" : `${trials} trials`;
  const values = rows.length === 1 ? "1 quantity" : `${rows.length} quantities`;
  return `${files}, ${values}: ${verdict}${rest}\n`;
}
