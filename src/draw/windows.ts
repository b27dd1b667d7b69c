/** Every hole's window, and the stop settings through them, as a picture. */

import { elementAt } from "../geometry/element-at.js";
import type { Report } from "../report/report.js";
import { ticks } from "./dimension.js";
import { type Column, measure, table, text } from "./label.js";
import { bar, circle, corners, line, type Mark, outline, type Spot } from "./line.js";
import { type Entry, writePage } from "./paper.js";
import { type DrawnHole, type DrawnSetting, readHoles, readSettings } from "./reading.js";
import { chooseTicks, spread } from "./scale.js";
import * as words from "./words.js";

/**
 * The windows: for each hole to be drilled a bar from the least to the greatest travel of the bit's tip that suits it, and each
 * stop setting as a line through them, as SVG text. A setting works where its line meets every bar; a hole that no depth suits has a crossed-out
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
  const [all, settings] = [readHoles(report), readSettings(report)];
  const holes = all.filter(({ drilled }) => !drilled);
  const columns = words.windowColumns(holes);
  const none = holes.length === 0;
  return writePage({
    title: words.titled("Travel windows", report),
    heading: [none ? words.WORDS.noHoles : words.WORDS.windows],
    marks: none ? [] : drawChart(holes, settings, columns),
    legend: LEGEND,
    notes: words.tellPlan(all, settings),
    spoken: words.tellRows(holes, columns),
  });
}

/** The room for the bars, for each of them, and its height. */
const [PLOT, ROW, BAR] = [130, 6.4, 3.4];

/** A travel as a place across the plot. */
type Across = (travel: number) => number;

function drawChart(
  holes: readonly DrawnHole[],
  settings: readonly DrawnSetting[],
  columns: readonly Column[],
): Mark[] {
  const [from, to] = findRange(holes, settings);
  const across: Across = (travel) => ((travel - from) / (to - from)) * PLOT;
  const bottom = holes.length * ROW;
  const names = holes.map(({ name }) => name);
  const middle = (i: number) => (i + 0.5) * ROW;
  const { places, decimals } = chooseTicks(from, to, 9);
  const labelled = places.map((at) => [across(at), words.figure(at, decimals)] as const);
  const shared = settings.filter((setting) => setting.holes.length === holes.length);
  return [
    ...shared.map(({ min, max }) => drawShared([across(min), 0], [across(max), bottom])),
    ...holes.flatMap((hole, i) => drawRow(hole, middle(i), across)),
    ...drawSettings(settings, across, bottom),
    line("narrow axis", [0, bottom], [PLOT, bottom]),
    ...ticks("across", bottom, labelled),
    ...table([["", names, "end"]], -3 - measure(names), middle),
    ...table(columns, PLOT + 4, middle),
  ];
}

/** From the least to the greatest of all travels, and a little more either way. */
function findRange(holes: readonly DrawnHole[], settings: readonly DrawnSetting[]) {
  const travels = [...settings, ...holes.map(({ planned }) => planned)];
  const bounds = holes.flatMap(({ window, shift }) => [window.min + shift, window.max + shift]);
  const all = [...bounds, ...travels.flatMap((at) => at?.travel ?? [])];
  const [from, to] = [Math.min(...all), Math.max(...all)];
  const more = Math.max(0.25, (to - from) * 0.06);
  return [from - more, to + more] as const;
}

/** A hole's bar, and what is set and planned in it. */
function drawRow(hole: DrawnHole, y: number, across: Across): Mark[] {
  const { open, shift, governs, setting, planned, window } = hole;
  const at = (travel = 0): Spot => [across(travel), y];
  const [from] = at(Math.min(window.min, window.max) + shift);
  const [to] = at(Math.max(window.min, window.max) + shift);
  return [
    ...bar([from, y - BAR / 2], [to, y + BAR / 2], open),
    ...governs.map((end) => drawGoverning(at(window[end] + shift))),
    ...(setting ? [drawServed(at(setting.travel))] : []),
    ...(planned ? [drawPlanned(at(planned.travel))] : []),
  ];
}

/** A longer stroke at the end of a bar that governs a setting. */
function drawGoverning([x, y]: Spot): Mark {
  const half = BAR / 2 + 0.9;
  return outline("solid governs", corners([x - 0.5, y - half], [x + 0.5, y + half]));
}

const drawServed = (spot: Spot) => circle("solid served", spot, 0.9);
const drawPlanned = (spot: Spot) => circle("narrow planned", spot, 1.4);
const drawShared = (from: Spot, to: Spot) => outline("tint common", corners(from, to));

/** How far above the bars a setting's line ends, and its name stands. */
const ABOVE = { line: 6, bend: 10, name: 11.5 };

/** A line for each setting, its name above it; where names would meet, their lines bend. */
function drawSettings(settings: readonly DrawnSetting[], across: Across, bottom: number): Mark[] {
  const names = settings.map(({ letter, travel }) => `${letter} ${words.figure(travel)}`.trim());
  const xs = settings.map(({ travel }) => across(travel));
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
