/** Every hole's window, and the stop settings through them, as a picture. */

import type { Report } from "../report/report.js";
import { holeName } from "../text/plain-words.js";
import { type Entry, farFrom, SAMPLE, withLegend } from "./legend.js";
import { circle, rectangle, type Spot } from "./marks.js";
import { svgOf } from "./page.js";
import { planWords } from "./plan-words.js";
import { windowBar } from "./window-bar.js";
import { chart, diamond, governingEnd, remarksOn } from "./windows-chart.js";
import { hasWindow, least, most, titled } from "./words.js";

const NO_HOLES = "The design has no holes.";
const HEADING =
  "A bar holds the depths of the bit's rim that suit a hole in the worst case. Lengths in mm from the flat top.";

/**
 * The windows: for each hole a bar from its least to its greatest depth, and each stop setting as a line through
 * them, as SVG text. A setting works where its line meets every bar; a hole that no depth suits has a crossed-out
 * bar between the two limits that clash.
 *
 * @param report what `checkDesign` returned
 * @returns an SVG document, its size in mm
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [3, 5, 7, 9], diameter: 6 }],
 * });
 * drawWindows(report).match(/class="window"/g).length // 4
 */
export function drawWindows(report: Report): string {
  return svgOf({
    title: titled("Depth windows", report),
    lines: [report.holes.length === 0 ? NO_HOLES : HEADING],
    marks: report.holes.length === 0 ? [] : withLegend(chart(report), legend(report)),
    notes: planWords(report),
    description: descriptionOf(report),
  });
}

function legend({ holes, stops }: Report): Entry[] {
  const centre = ([x, y]: Spot): Spot => [x + SAMPLE.width / 2, y + SAMPLE.height / 2];
  const bar = (open: boolean) => (corner: Spot) => windowBar(corner, farFrom(corner), open);
  const entries: [boolean, Entry][] = [
    [holes.some(hasWindow), { words: "depths that suit", sample: bar(true) }],
    [!holes.every(hasWindow), { words: "no depth suits", sample: bar(false) }],
    [
      stops.common !== null,
      { words: "what all share", sample: (c) => [rectangle("tint", c, farFrom(c))] },
    ],
    [
      stops.settings.length > 0,
      { words: "served by the setting", sample: (c) => [circle("solid", centre(c), 0.9)] },
    ],
    [
      stops.settings.length > 0,
      { words: "governs the setting", sample: (c) => [governingEnd(...centre(c))] },
    ],
    [
      holes.some(({ planned }) => planned),
      { words: "planned depth", sample: (c) => [diamond(...centre(c))] },
    ],
  ];
  return entries.flatMap(([shown, entry]) => (shown ? [entry] : []));
}

/** The picture in words. */
function descriptionOf(report: Report): string {
  const { holes } = report;
  if (holes.length === 0) return NO_HOLES;
  const rows = holes.map((hole, i) => {
    const { min, max } = hole.window;
    const remarks = remarksOn(report, i);
    const range = hasWindow(hole)
      ? `${least(min)} to ${most(max)}`
      : `at least ${least(min)}, at most ${most(max)}`;
    return `${holeName(hole)}: ${[range, ...remarks].join("; ")}.`;
  });
  return [...planWords(report), ...rows].join(" ");
}
