/** A design as one line of JSON. */
import type { Outcome } from "./outcome.js";

/**
 * The report, or the issues, after the file's name; ended by a line feed. As in any JSON text of a report, its
 * remedies are left out: to seek them takes many times longer than the check.
 */
export function jsonLine({ report, issues, ...place }: Outcome): string {
  return `${JSON.stringify({ ...place, ...(report ?? { issues }) }, finite)}\n`;
}

/** JSON knows no Infinity, which is what a flat radius is. */
function finite(key: string, value: unknown): unknown {
  return key === "radius" && value === Infinity ? "flat" : value;
}
