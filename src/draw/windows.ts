/** Every hole's window, and the stop settings through them, as a picture. */

import { elementAt } from "../geometry/element-at.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { type Column, measure, text } from "./label.js";
import { bar, circle, corners, line, type Mark, outline, type Spot } from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { type DrawnHole, type DrawnSetting, readHoles, readSettings } from "./reading.js";
import { layPlot, type Plot, stroke } from "./rows.js";
import { spread } from "./scale.js";
import * as words from "./words.js";

/**
 * The windows: for each hole to be drilled a bar from the least to the greatest travel of the bit's tip that suits it, and each
 * stop setting as a line through them, as SVG text. A setting works where its line meets every bar; a hole that no depth suits has a crossed-out
 * bar between the two limits that clash.
 *
 * @param report what `checkDesign` returned
 * @param options `unit`, "mm" or "in": what is set is a fraction of an inch where one serves
 * @returns an SVG document, its size in mm
 * @throws RangeError for another unit
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [3, 5, 7, 9], diameter: 6 }],
 * });
 * drawWindows(report).match(/class="window"/g).length // 4
 */
export function drawWindows(report: Report, options: PictureOptions = {}): string {
  const unit = readUnit(options);
  const [all, settings] = [readHoles(report, unit), readSettings(report, unit)];
  const holes = all.filter(({ drilled }) => !drilled);
  const columns = words.windowColumns(holes, unit);
  const none = holes.length === 0;
  return writePage({
    title: words.titled("Travel windows", report),
    heading: [none ? words.WORDS.noHoles : `${words.WORDS.windows} ${words.tellUnit(unit)}`],
    marks: none ? [] : drawChart(holes, settings, columns, unit),
    legend: LEGEND,
    notes: words.tellPlan(all, settings, unit),
    spoken: words.tellRows(holes, columns),
  });
}

/** The room for the bars. */
const WIDTH = 130;

function drawChart(
  holes: readonly DrawnHole[],
  settings: readonly DrawnSetting[],
  columns: readonly Column[],
  unit: Unit,
): Mark[] {
  const plot = layPlot(gatherTravels(holes, settings), { rows: holes.length, width: WIDTH }, unit);
  const { across, bottom } = plot;
  const shared = settings.filter((setting) => setting.holes.length === holes.length);
  return [
    ...shared.map(({ min, max }) => drawShared([across(min), 0], [across(max), bottom])),
    ...holes.flatMap((hole, row) => drawRow(hole, row, plot)),
    ...drawSettings(settings, plot),
    ...plot.axis,
    ...plot.names(holes.map(({ name }) => name)),
    ...plot.figures(columns, 4),
  ];
}

/** All that is shown. */
function gatherTravels(holes: readonly DrawnHole[], settings: readonly DrawnSetting[]): number[] {
  const bounds = holes.flatMap(({ window, shift }) => [window.min + shift, window.max + shift]);
  const planned = holes.flatMap((hole) => hole.planned?.travel ?? []);
  return [...bounds, ...settings.map(({ set }) => set.mm), ...planned];
}

/** A hole's bar, and what is set and planned in it. */
function drawRow(hole: DrawnHole, row: number, plot: Plot): Mark[] {
  const { open, shift, governs, setting, planned, window } = hole;
  const [low, high] = [Math.min(window.min, window.max), Math.max(window.min, window.max)];
  return [
    ...bar(...plot.bar(row, low + shift, high + shift), open),
    ...governs.map((end) => drawGoverning(plot.spot(row, window[end] + shift))),
    ...(setting ? [drawServed(plot.spot(row, setting.set.mm))] : []),
    ...(planned?.travel === undefined ? [] : [drawPlanned(plot.spot(row, planned.travel))]),
  ];
}

/** A longer stroke at the end of a bar that governs a setting. */
const drawGoverning = (spot: Spot) => {
  const { left, top, bottom } = stroke("narrow", spot).box;
  return outline("solid governs", corners([left - 0.5, top], [left + 0.5, bottom]));
};
const drawServed = (spot: Spot) => circle("solid served", spot, 0.9);
const drawPlanned = (spot: Spot) => circle("narrow planned", spot, 1.4);
const drawShared = (from: Spot, to: Spot) => outline("tint common", corners(from, to));

/** How far above the bars a setting's line ends, and its name stands. */
const ABOVE = { line: 6, bend: 10, name: 11.5 };

/** A line for each setting, its name above it; where names would meet, their lines bend. */
function drawSettings(settings: readonly DrawnSetting[], { across, bottom }: Plot): Mark[] {
  const names = settings.map(({ letter, set }) => `${letter} ${set.text}`.trim());
  const xs = settings.map(({ set }) => across(set.mm));
  const places = spread(xs, measure(names) + 2);
  return names.flatMap((name, i) => {
    const [x, place] = [elementAt(xs, i), elementAt(places, i)];
    return [
      line("wide setting", [x, bottom], [x, -ABOVE.line]),
      line("narrow", [x, -ABOVE.line], [place, -ABOVE.bend]),
      text(name, [place, -ABOVE.name], "middle"),
    ];
  });
}

const LEGEND: readonly Entry[] = [
  ["window", words.WORDS.suits, (from, to) => bar(from, to, true)],
  ["window none", words.WORDS.nothingSuits, (from, to) => bar(from, to, false)],
  ["common", words.WORDS.common, (from, to) => [drawShared(from, to)]],
  ["served", words.WORDS.served, (_from, _to, at) => [drawServed(at)]],
  ["governs", words.WORDS.governs, (_from, _to, at) => [drawGoverning(at)]],
  ["planned", words.WORDS.planned, (_from, _to, at) => [drawPlanned(at)]],
];
