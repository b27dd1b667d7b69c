/** What a notebook's kernel asks of a value that it is to display. */
import type { Sweep } from "../batch/sweep.js";
import { type CardOptions, drillCard, sandingNote } from "../card/index.js";
import type { Design } from "../design/design.js";
import { drawSweep } from "../draw/sweep.js";
import { element } from "../draw/xml.js";
import { refused } from "../errors/errors.js";
import type { SandingProgress } from "../measured/sanding-progress.js";
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
 * cell: what `html` makes of it, with remedies, or the drill card as plain text.
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
  return Object.defineProperty(report, DISPLAY, { value: () => reportBundle(report, { design }) });
}

/** What can be shown: a report, a sweep, how far the sanding has come, a drawing, or several in a row. */
export type Showable = Report | Sweep | SandingProgress | string | readonly Showable[];

/**
 * Shows what was made elsewhere, as the last value of a notebook's cell: a report as `html` does; a sweep as `drawSweep`
 * does; what `sandingProgress` returned as its note; a drawing, which is the text that any function of
 * `marker-depth/draw` returned; or several of these, one below the other.
 *
 * @param value what is to be shown
 * @param options `unit`; of a report also `design`, with which remedies are shown, and `remedies`
 * @returns a value that shows itself
 * @throws RangeError for anything else
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
export function show(value: Showable, options: CardOptions = {}): Displayed {
  const kind = chooseView(value);
  return { [DISPLAY]: () => kind(options) };
}

/** How a value is shown; throws where it is none of these. */
function chooseView(value: Showable): (options: CardOptions) => MimeBundle {
  if (Array.isArray(value)) {
    const kinds = (value as readonly Showable[]).map(chooseView);
    return (options) => together(kinds.map((kind) => kind(options)));
  }
  if (typeof value === "string" && /^<svg[\s>]/.test(value)) return () => drawingBundle(value);
  if (typeof value === "object" && value !== null) {
    if ("stops" in value) return (options) => reportBundle(value, options);
    if ("readings" in value) return (options) => noteBundle(sandingNote(value, options));
    if ("axes" in value) return ({ unit }) => drawingBundle(drawSweep(value, { unit }));
  }
  throw refused("value", value, "a report, a sweep, a sanding progress, or an SVG text");
}

function together(bundles: readonly MimeBundle[]): MimeBundle {
  const all = (form: keyof MimeBundle) => bundles.map((bundle) => bundle[form]).join("\n");
  return { "text/html": all("text/html"), "text/plain": all("text/plain") };
}

function reportBundle(report: Report, options: CardOptions): MimeBundle {
  return { "text/html": html(report, options), "text/plain": drillCard(report, options) };
}

function noteBundle(note: string): MimeBundle {
  return { "text/html": element("pre", {}, note), "text/plain": note };
}

/** A drawing, and in plain text what it tells those who cannot see it. */
function drawingBundle(svg: string): MimeBundle {
  const parts = [...svg.matchAll(/<(title|desc)>([^<]*)<\/\1>/g)].map(([, , words = ""]) => words);
  return { "text/html": svg, "text/plain": unescaped(parts.join("\n")) };
}

const CHARACTERS: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  "#39": "'",
};

function unescaped(text: string): string {
  return text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name) => CHARACTERS[name] ?? "");
}
