/** Every hole's window, and the stop settings through them, as a picture. */
import type { Hole, Report } from "../report.js";
import { type Flag, flagMarks } from "./flags.js";
import { type Entry, farFrom, SAMPLE, withLegend } from "./legend.js";
import { LETTER, widthOf } from "./lettering.js";
import { circle, line, type Mark, outline, rectangle, type Spot, text } from "./marks.js";
import { svgOf } from "./page.js";
import { planWords } from "./plan-words.js";
import { roundAbove } from "./scale.js";
import { type Column, columnMarks, tableMarks } from "./table.js";
import { windowBar } from "./window-bar.js";
import {
  figure,
  governed,
  hasWindow,
  holeName,
  least,
  most,
  settingLetter,
  settingOf,
  titled,
} from "./words.js";

const NO_HOLES = "The design has no holes.";

const PLOT = 130;
const ROW = 6.4;
const BAR = 3.4;

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
    lines: [
      report.holes.length === 0
        ? NO_HOLES
        : "A bar holds the depths of the bit's rim that suit a hole in the worst case. Lengths in mm from the flat top.",
    ],
    marks: report.holes.length === 0 ? [] : withLegend(chart(report), legend(report)),
    notes: planWords(report),
    description: descriptionOf(report),
  });
}

/** Depths as places across the plot. */
type Across = (depth: number) => number;

function chart(report: Report): Mark[] {
  const [from, to] = rangeOf(report);
  const across: Across = (depth) => ((depth - from) / (to - from)) * PLOT;
  const bottom = report.holes.length * ROW;
  return [
    ...commonMarks(report, across, bottom),
    ...report.holes.flatMap((hole, i) => rowMarks(report, hole, i, across)),
    ...flagMarks(flagsOf(report, across, bottom), -ROW - 4),
    ...axisMarks(from, to, across, bottom),
    ...columns(report),
  ];
}

/** From the least to the greatest of all depths, and a little more either way. */
function rangeOf({ holes, stops }: Report): [number, number] {
  const depths = [
    ...holes.flatMap(({ window, planned }) => [
      window.min,
      window.max,
      planned?.depth ?? window.min,
    ]),
    ...stops.settings.map(({ depth }) => depth),
  ];
  const from = Math.min(...depths);
  const to = Math.max(...depths);
  const more = to > from ? (to - from) * 0.06 : 0.5;
  return [from - more, to + more];
}

function rowY(i: number): number {
  return (i + 0.5) * ROW;
}

/** The depths that suit all holes, over all rows. */
function commonMarks({ stops: { common } }: Report, across: Across, bottom: number): Mark[] {
  if (common === null) return [];
  return [rectangle("tint", [across(common.min), 0], [across(common.max), bottom], "common")];
}

function rowMarks(report: Report, hole: Hole, i: number, across: Across): Mark[] {
  const { min, max } = hole.window;
  const y = rowY(i);
  const [left, right] = [across(Math.min(min, max)), across(Math.max(min, max))];
  const setting = settingOf(report, i)?.setting;
  return [
    ...windowBar([left, y - BAR / 2], [right, y + BAR / 2], hasWindow(hole)),
    ...governed(report, i)
      .flatMap(({ ends }) => ends)
      .map((end) => governingEnd(across(hole.window[end]), y)),
    ...(setting ? [circle("solid", [across(setting.depth), y], 0.9, "served")] : []),
    ...(hole.planned ? [diamond(across(hole.planned.depth), y)] : []),
  ];
}

/** A longer stroke at the end of a bar that governs a setting. */
function governingEnd(x: number, y: number): Mark {
  return rectangle("solid", [x - 0.5, y - BAR / 2 - 0.9], [x + 0.5, y + BAR / 2 + 0.9], "governs");
}

function diamond(x: number, y: number): Mark {
  const r = 1.2;
  const corners: Spot[] = [
    [x, y - r],
    [x + r, y],
    [x, y + r],
    [x - r, y],
  ];
  return outline("narrow", corners, "planned");
}

function flagsOf(report: Report, across: Across, foot: number): Flag[] {
  const { settings } = report.stops;
  const several = settings.length > 1;
  const stops = settings.map(({ depth, travels }, i): Flag => {
    const name = several ? `setting ${settingLetter(i)}` : "stop setting";
    const words = `${name}: ${depthWords(
      depth,
      travels.map(({ travel }) => travel),
    )}`;
    return { x: across(depth), foot, words, pen: "wide", name: "setting" };
  });
  const plans = plannedDepths(report).map(([depth, travels]): Flag => {
    const words = `planned: ${depthWords(depth, travels)}`;
    return { x: across(depth), foot, words, pen: "hidden", name: "plan" };
  });
  return [...stops, ...plans];
}

function depthWords(depth: number, travels: readonly number[]): string {
  return `${figure(depth)}, travel ${travels.map((travel) => figure(travel)).join(" or ")}`;
}

/** Each planned depth, with the travels of its bits. */
function plannedDepths({ holes }: Report): [number, number[]][] {
  const plans = new Map<number, Set<number>>();
  for (const { planned, lead } of holes) {
    if (planned === undefined) continue;
    const travels = plans.get(planned.depth) ?? new Set();
    plans.set(planned.depth, travels.add(planned.depth + lead));
  }
  return [...plans].map(([depth, travels]) => [depth, [...travels].sort((a, b) => a - b)]);
}

/** Depths below the bars. */
function axisMarks(from: number, to: number, across: Across, bottom: number): Mark[] {
  const { step, decimals } = tickStep(from, to);
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  const ticks = Array.from({ length: count }, (_, i) => (first + i) * step);
  return [
    line(
      "narrow",
      [
        [0, bottom],
        [PLOT, bottom],
      ],
      "axis",
    ),
    ...ticks.flatMap((depth) => {
      const x = across(depth);
      return [
        line(
          "narrow",
          [
            [x, bottom],
            [x, bottom + 1.5],
          ],
          "tick",
        ),
        text(figure(depth, decimals), [x, bottom + 2.5 + LETTER], { anchor: "middle" }),
      ];
    }),
  ];
}

/** The closest round step at which figures do not meet, and the decimals that it needs. */
function tickStep(from: number, to: number): { step: number; decimals: number } {
  let decimals = 0;
  let step = to - from;
  // the figures' width follows from the decimals, and these from the step
  for (let round = 0; round < 3; round++) {
    const width = Math.max(widthOf(figure(from, decimals)), widthOf(figure(to, decimals))) + 4;
    step = roundAbove(((to - from) * width) / PLOT, [1, 2, 5, 10]);
    decimals = Math.min(15, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  }
  return { step, decimals };
}

/** Names before the bars, figures and remarks behind them. */
function columns(report: Report): Mark[] {
  const { holes, stops } = report;
  const several = stops.settings.length > 1;
  const served = holes.map((_, i) => settingOf(report, i));
  const cells: Column[] = [
    { head: "least", cells: holes.map(({ window }) => least(window.min)), anchor: "end" },
    { head: "most", cells: holes.map(({ window }) => most(window.max)), anchor: "end" },
    { head: "by", cells: holes.map(({ window }) => window.maxBy) },
    ...(several
      ? [{ head: "set", cells: served.map((s) => (s ? settingLetter(s.index) : "–")) }]
      : []),
    {
      head: "travel",
      cells: served.map((s, i) => (s ? figure(s.setting.depth + (holes[i]?.lead ?? 0)) : "–")),
      anchor: "end",
    },
    { head: "", cells: holes.map((_, i) => remarksOn(report, i).join("; ")) },
  ];
  const names = { head: "", cells: holes.map(holeName), anchor: "end" } as const;
  return [...columnMarks(names, -3, rowY), ...tableMarks(cells, PLOT + 4, rowY)];
}

/** What is to be said of a hole. */
function remarksOn(report: Report, i: number): string[] {
  const hole = report.holes[i];
  if (hole === undefined) return [];
  const { window, planned } = hole;
  return [
    ...(hasWindow(hole) ? [] : ["no depth suits"]),
    ...governed(report, i).map(({ words }) => words),
    ...(planned && !(planned.depth >= window.min) ? ["planned too shallow"] : []),
    ...(planned && !(planned.depth <= window.max) ? ["planned too deep"] : []),
  ];
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
