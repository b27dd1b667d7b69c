/** How likely a hole fails over the travel that is set, as a picture. */
import type { Design } from "../design/design.js";
import { RARE } from "../text/chance-text.js";
import type { Unit } from "../text/length-text.js";
import { type ChanceCurve, readChance } from "./chance-reading.js";
import { ticks } from "./dimension.js";
import { bar, circle, line, type Mark, type Spot } from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { lengthTicks } from "./rows.js";
import * as words from "./words.js";

/**
 * The chance that at least one hole fails, over the travel, as SVG text: on a scale of tens, from certain down to one in
 * a million, with the worst case's window shaded, the travel that fails least and the travels that are set. So it shows
 * what a tenth of a millimetre more or less costs.
 *
 * @param design the neck, its holes of one stop
 * @param options `unit`, "mm" or "in"
 * @returns an SVG document, its size in mm
 * @throws DesignError where the design cannot be read
 * @throws RangeError where it has several stops or nothing to drill, and for another unit
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6 }],
 *   tolerance: { stop: { limit: 0.2, shape: "normal" } },
 * };
 * drawChance(design).match(/class="chance"/g).length // 1
 */
export function drawChance(design: Design, options: PictureOptions = {}): string {
  const unit = readUnit(options);
  const drawn = readChance(design, unit);
  const { across, upright } = layChart(drawn);
  const spot = ([travel, fails]: Spot): Spot => [across(travel), upright(fails)];
  const { window, best, settings, curve } = drawn;
  const [low, high] = [Math.min(...window), Math.max(...window)];
  return writePage({
    title: words.titled("Chance", drawn),
    heading: [words.WORDS.chance, words.tellUnit(unit)],
    marks: [
      ...bar([across(low), 0], [across(high), HEIGHT], window[0] <= window[1]),
      ...drawGrid(drawn, across, upright, unit),
      ...settings.map((travel) =>
        line("centre setting", [across(travel), 0], [across(travel), HEIGHT]),
      ),
      line("wide chance", ...curve.map(spot)),
      circle("solid best", spot(best), DOT),
    ],
    legend: LEGEND,
    notes: [words.tellBest(drawn, unit)],
    spoken: words.tellChances(drawn, unit),
  });
}

/** The chart's size, and a dot's radius. */
const [WIDTH, HEIGHT, DOT] = [150, 84, 1.1];
/** How many tens there are from what is certain to what is too rare to be told. */
const DECADES = Math.round(-Math.log10(RARE));

/** Where a travel lies across, and a chance upright. */
function layChart({ travels }: ChanceCurve) {
  const [from = 0, to = 1] = [travels[0], travels.at(-1)];
  return {
    across: (travel: number) => ((travel - from) / (to - from)) * WIDTH,
    upright: (fails: number) => (-Math.log10(Math.max(RARE, fails)) / DECADES) * HEIGHT,
  };
}

function drawGrid(
  { travels }: ChanceCurve,
  across: (travel: number) => number,
  upright: (fails: number) => number,
  unit: Unit,
): Mark[] {
  const ends = [travels[0] ?? 0, travels.at(-1) ?? 1] as const;
  const decades = Array.from({ length: DECADES + 1 }, (_, i) => 10 ** -i);
  return [
    ...lengthTicks(ends, { across, width: WIDTH, at: HEIGHT }, unit),
    ...ticks(
      "upright",
      0,
      decades.map((share) => [upright(share), words.tellShare(share)] as const),
    ),
    ...decades.map((share) => line("narrow grid", [0, upright(share)], [WIDTH, upright(share)])),
  ];
}

const LEGEND: readonly Entry[] = [
  ["chance", words.WORDS.fails, (from, to, [, y]) => [line("wide", [from[0], y], [to[0], y])]],
  ["window", words.WORDS.worstCase, (from, to) => bar(from, to, true)],
  ["window none", words.WORDS.noWorstCase, (from, to) => bar(from, to, false)],
  [
    "setting",
    words.WORDS.set,
    ([, top], [, bottom], [x]) => [line("centre", [x, top], [x, bottom])],
  ],
  ["best", words.WORDS.best, (_from, _to, at) => [circle("solid", at, DOT)]],
];
