/** The bars of the windows, the lines of the settings through them, and the figures beside. */

import { elementAt } from "../geometry/element-at.js";
import type { Hole, Report } from "../report/report.js";
import { holeName, settingLetter } from "../text/plain-words.js";
import { type Flag, flagMarks } from "./flags.js";
import { LETTER, widthOf } from "./lettering.js";
import { circle, line, type Mark, outline, rectangle, type Spot, text } from "./marks.js";
import { roundAbove } from "./scale.js";
import { type Column, columnMarks, tableMarks } from "./table.js";
import { windowBar } from "./window-bar.js";
import { figure, governed, hasWindow, least, most, settingName, settingOf } from "./words.js";

const PLOT = 130;
const ROW = 6.4;
const BAR = 3.4;

/** Depths as places across the plot. */
type Across = (depth: number) => number;

/** The chart of a report that has holes. */
export function chart(report: Report): Mark[] {
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
export function governingEnd(x: number, y: number): Mark {
  return rectangle("solid", [x - 0.5, y - BAR / 2 - 0.9], [x + 0.5, y + BAR / 2 + 0.9], "governs");
}

/** A planned depth. */
export function diamond(x: number, y: number): Mark {
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
  const stops = settings.map(({ depth, travels }, i): Flag => {
    const name = settingName(i, settings.length);
    const words = depthWords(
      name,
      depth,
      travels.map(({ travel }) => travel),
    );
    return { x: across(depth), foot, words, pen: "wide", name: "setting" };
  });
  const plans = plannedDepths(report).map(([depth, travels]): Flag => {
    const words = depthWords("planned", depth, travels);
    return { x: across(depth), foot, words, pen: "hidden", name: "plan" };
  });
  return [...stops, ...plans];
}

function depthWords(name: string, depth: number, travels: readonly number[]): string {
  const each = new Set(travels.map((travel) => figure(travel)));
  return `${name}: ${figure(depth)}, travel ${[...each].join(" or ")}`;
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
      cells: served.map((s, i) => (s ? figure(s.setting.depth + elementAt(holes, i).lead) : "–")),
      anchor: "end",
    },
    { head: "", cells: holes.map((_, i) => remarksOn(report, i).join("; ")) },
  ];
  const names = { head: "", cells: holes.map(holeName), anchor: "end" } as const;
  return [...columnMarks(names, -3, rowY), ...tableMarks(cells, PLOT + 4, rowY)];
}

/** What is to be said of a hole. */
export function remarksOn(report: Report, i: number): string[] {
  const hole = elementAt(report.holes, i);
  const { window, planned } = hole;
  return [
    ...(hasWindow(hole) ? [] : ["no depth suits"]),
    ...governed(report, i).map(({ words }) => words),
    ...(planned && !(planned.depth >= window.min) ? ["planned too shallow"] : []),
    ...(planned && !(planned.depth <= window.max) ? ["planned too deep"] : []),
  ];
}
