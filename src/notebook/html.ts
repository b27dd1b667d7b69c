/** A report as a fragment of a page: plain HTML with its drawings in it, and nothing that could run. */
import { drawSection } from "../draw/section.js";
import { drawWindows } from "../draw/windows.js";
import { titled } from "../draw/words.js";
import { element } from "../draw/xml.js";
import type { Finding, Report } from "../report/report.js";
import { holesTable } from "./holes-table.js";
import { worstHole } from "./worst-hole.js";

/**
 * The report as a fragment of HTML, to be put into any page: what is wrong, the holes as a table, their windows, the
 * section at the hole whose depth lies nearest to a limit or farthest beyond it, and the cautions. All words of the
 * design are escaped. The drawings take the colour of the text around them.
 *
 * @param report what `checkDesign` returned
 * @returns one `<section>` element
 * @example
 * const report = checkDesign({
 *   name: "Fir & Elm (invented)",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * html(report).includes("Fir &amp; Elm (invented)") // true
 * html(report).match(/<svg /g).length // 2
 */
export function html(report: Report): string {
  const worst = worstHole(report);
  return [
    '<section class="marker-depth-report">',
    element("h3", {}, titled("Marker depths", report)),
    ...findingsList(report),
    ...scrolling(holesTable(report)),
    ...(worst < 0 ? [] : [drawWindows(report), drawSection(report, worst)]),
    element("h4", {}, "Cautions"),
    ...list(report.cautions),
    "</section>",
    "",
  ].join("\n");
}

function findingsList({ findings }: Report): string[] {
  if (findings.length === 0) return [element("p", {}, "Nothing is wrong.")];
  const count = (severity: Finding["severity"]) => {
    const number = findings.filter((finding) => finding.severity === severity).length;
    return `${number} ${severity}${number === 1 ? "" : "s"}`;
  };
  return [
    element("p", {}, `${count("error")}, ${count("warning")}:`),
    ...list(findings.map(({ severity, message }) => `${severity}: ${message}`)),
  ];
}

function list(items: readonly string[]): string[] {
  return ["<ul>", ...items.map((words) => element("li", {}, words)), "</ul>"];
}

/** A table may be wider than the page. */
function scrolling(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['<div style="overflow-x:auto">', ...lines, "</div>"];
}
