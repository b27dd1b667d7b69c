/** A design as one line of JSON. */
import { remediesFor } from "../report/remedies.js";
import type { Outcome } from "./outcome.js";

/**
 * The report, or the issues, after the file's name; ended by a line feed. Each finding has its remedies where these are
 * asked for: to seek them takes many times longer than the check.
 */
export function jsonLine(outcome: Outcome, remedies: boolean): string {
  if (outcome.report === undefined) return writeLine(outcome);
  const { design, report, repair, ...place } = outcome;
  const findings = report.findings.map((finding) =>
    remedies ? { ...finding, remedies: remediesFor(design, finding) } : finding,
  );
  return writeLine({ ...place, ...report, findings });
}

/** A null may be a radius that is flat: only then is each value looked at, which takes many times longer. */
function writeLine(value: object): string {
  const text = JSON.stringify(value);
  return `${text.includes("null") ? JSON.stringify(value, finite) : text}\n`;
}

/** JSON knows no Infinity, which is what a flat radius is. */
function finite(_key: string, value: unknown): unknown {
  return value === Infinity ? "flat" : value;
}
