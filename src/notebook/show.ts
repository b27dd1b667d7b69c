/** What a notebook's kernel asks of a value that it is to display. */
import { drillCard } from "../card/index.js";
import type { Design } from "../design/design.js";
import { checkDesign as check, type Report } from "../report/report.js";
import { html } from "./html.js";

/** One content in several forms, by MIME type: a notebook shows the richest that it can. */
export interface MimeBundle {
  /** A fragment of HTML. */
  readonly "text/html": string;
  /** The same as plain text. */
  readonly "text/plain": string;
}

/** A value that tells a kernel how to show it, under `Symbol.for("Jupyter.display")`. */
export interface Displayed {
  readonly [display: symbol]: () => MimeBundle;
}

/** The name under which kernels that run JavaScript look for a value's own display. */
const DISPLAY = Symbol.for("Jupyter.display");

/**
 * Checks a neck design, as `checkDesign` of the core does; the report shows itself as the last value of a notebook's
 * cell: what is wrong, a table of the holes, their windows and the worst section, or the drill card as plain text.
 *
 * The report is the core's in all else: what shows it is not enumerable, so a copy, a comparison or a JSON text of the
 * report knows nothing of it.
 *
 * @param design the neck, lengths in mm, angles in degrees
 * @returns the report
 * @throws DesignError where the design cannot be read
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * report.ok // true
 * Object.keys(report[Symbol.for("Jupyter.display")]()) // ["text/html", "text/plain"]
 */
export function checkDesign(design: Design): Report {
  const report = check(design);
  return Object.defineProperty(report, DISPLAY, { value: () => bundleOf(report) });
}

/**
 * Shows a report that was made elsewhere, as the last value of a notebook's cell.
 *
 * @param report what `checkDesign` returned, or a sweep's `report`
 * @returns a value that shows itself
 * @example
 * const report = checkDesign({
 *   name: "Invented neck",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6 }],
 * });
 * const { "text/plain": card } = show(report)[Symbol.for("Jupyter.display")]();
 * card.split("\n")[0] // "DRILL CARD: Invented neck"
 */
export function show(report: Report): Displayed {
  return { [DISPLAY]: () => bundleOf(report) };
}

function bundleOf(report: Report): MimeBundle {
  return { "text/html": html(report), "text/plain": drillCard(report) };
}
