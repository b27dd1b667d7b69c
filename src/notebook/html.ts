/** A report as a fragment of a page: plain HTML with its drawings in it, and nothing that could run. */
import { tellAssumed } from "../card/assumed.js";
import { tellChance } from "../card/chance.js";
import { readJob, tellUnserved, verdictLine } from "../card/drill-card.js";
import { type FindingEntry, tellFindings } from "../card/findings.js";
import { mixingSteps } from "../card/finishing-steps.js";
import { tabulateHoles } from "../card/holes.js";
import type { Job, Step } from "../card/job.js";
import { type CardOptions, UNIT_LINES } from "../card/page.js";
import { tabulateEdges, tellSlots } from "../card/second-sheet.js";
import { tellSetting } from "../card/setting-steps.js";
import { buildSteps } from "../card/steps.js";
import type { Design } from "../design/design.js";
import { drawSection } from "../draw/section.js";
import { drawWindows } from "../draw/windows.js";
import { titled } from "../draw/words.js";
import { element } from "../draw/xml.js";
import type { Report } from "../report/report.js";
import { writeTable } from "./tables.js";
import { worstHole } from "./worst-hole.js";

/**
 * The report as a fragment of HTML, to be put into any page. It shows what the drill card shows: each setting of the
 * stop with its travel, its range and how it is zeroed; what is wrong, and what cures it; the holes as a table, their
 * windows, and the section at the hole whose depth lies nearest to a limit or farthest beyond it; what was assumed, by
 * its path in the design; the epoxy; the cautions. The steps, the edges and the slots are folded away. All words of the
 * design are escaped. The drawings take the colour of the text around them.
 *
 * @param report what `checkDesign` returned
 * @param options as for `drillCard`: `design`, without which there are no remedies; `unit`; `remedies`; `chance`
 * @returns one `<section>` element
 * @throws RangeError for another unit, or for a design that the report is not of
 * @example
 * const design = {
 *   name: "Fir & Elm (invented)",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   depth: 1,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const fragment = html(checkDesign(design), { design });
 * fragment.includes("Fir &amp; Elm (invented)") // true
 * fragment.match(/<svg /g).length // 2
 * fragment.includes("Remedies: ") // true
 */
export function html(report: Report, options: CardOptions = {}): string {
  const job = readJob(report, options);
  const { unit } = job;
  const edges = tabulateEdges(report, unit);
  const slots = tellSlots(report, unit);
  return [
    '<section class="marker-depth-report">',
    element("h3", {}, titled("Marker depths", report)),
    element("p", {}, `${verdictLine(report)} ${UNIT_LINES[unit.short]}`),
    ...part("Stop", [
      ...job.settings.map((each) => tellSetting(job, each)),
      ...tellUnserved(report),
    ]),
    ...writeFindings(job, job.design),
    ...(job.chance ? part("Chance", tellChance(job.chance, unit)) : []),
    ...heading("Holes", writeTable(tabulateHoles(report, job.settings, unit))),
    ...drawings(job),
    ...writeAssumed(job),
    ...heading(
      "Epoxy",
      mixingSteps(report.pour).map(({ text }) => element("p", {}, text)),
    ),
    ...part("Cautions", report.cautions),
    ...folded("Steps at the bench", writeSteps(buildSteps(job))),
    ...folded("Edges", writeTable(edges)),
    ...folded("Slots", slots === undefined ? [] : [element("p", {}, slots)]),
    "</section>",
    "",
  ].join("\n");
}

function writeFindings({ report, settings, unit }: Job, design: Design | undefined): string[] {
  const entries = tellFindings(report, settings, unit, design);
  const item = ({ severity, words, remedies }: FindingEntry) => {
    const told = element("p", {}, `${severity}: ${words}`);
    return `<li>${told}${remedies ? element("p", {}, `Remedies: ${remedies}.`) : ""}</li>`;
  };
  const none = [element("p", {}, "Nothing is wrong.")];
  return heading("Findings", entries.length > 0 ? ["<ul>", ...entries.map(item), "</ul>"] : none);
}

function drawings({ report, unit }: Job): string[] {
  const worst = worstHole(report);
  const options = { unit: unit.short === "in" ? "in" : "mm" } as const;
  return worst < 0 ? [] : [drawWindows(report, options), drawSection(report, worst, options)];
}

function writeAssumed({ report, unit }: Job): string[] {
  const items = tellAssumed(report, unit).map(({ words, path }) => {
    return `<li>${element("span", {}, words)} ${element("code", {}, path)}</li>`;
  });
  return heading("Assumed", items.length > 0 ? ["<ul>", ...items, "</ul>"] : []);
}

function writeSteps(steps: readonly Step[]): string[] {
  const items = steps.map(({ text, list: lines = [] }) => {
    return `<li>${element("p", {}, text)}${lines.length > 0 ? list(lines).join("") : ""}</li>`;
  });
  return items.length > 0 ? ["<ol>", ...items, "</ol>"] : [];
}

/** A part with its heading; nothing where it is empty. */
function heading(words: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [element("h4", {}, words), ...lines];
}

function part(words: string, items: readonly string[]): string[] {
  return heading(words, items.length > 0 ? list(items) : []);
}

function list(items: readonly string[]): string[] {
  return ["<ul>", ...items.map((words) => element("li", {}, words)), "</ul>"];
}

/** A part that the reader opens. */
function folded(words: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return ["<details>", element("summary", {}, words), ...lines, "</details>"];
}
