/** How far the sanding has come, as a picture. */

import { verdictOf } from "../card/sanding-note.js";
import type { Design } from "../design/design.js";
import { tellSanding } from "../measured/sanding-findings.js";
import type { SandingReading } from "../measured/sanding-readings.js";
import type { Unit } from "../text/length-text.js";
import { type Column, measure, table, text } from "./label.js";
import {
  boxAround,
  corners,
  cross,
  hatch,
  LETTER,
  line,
  type Mark,
  outline,
  type Spot,
} from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { BAR, layPlot, middleOfRow, type Plot, ROW } from "./rows.js";
import {
  type DrawnMarker,
  type DrawnReading,
  PLACES,
  readSanding,
  type Sanded,
  stateOf,
  valuesOf,
} from "./sanding-rows.js";
import * as words from "./words.js";

/**
 * How far the sanding has come, as SVG text. Each reading is a row, from the nut on, with a bar for the bass edge, the
 * centre line and the treble edge: what is off stands open, what is still to go is hatched up to the finished surface,
 * and what lies past it is solid. Below, each marker is a row with what is left of it now and what stays at the end, in
 * the worst case of its depth, against what it is to keep; one that keeps too little is crossed out.
 *
 * @param design the neck
 * @param readings as for `sandingProgress` of `marker-depth/measured`
 * @param options `unit`, "mm" or "in"
 * @returns an SVG document, its size in mm
 * @throws DesignError where the design cannot be read
 * @throws RangeError where the readings cannot, with every path, and for another unit
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: 254,
 *   depth: 2.5,
 *   markers: [{ frets: [12], diameter: 6 }],
 * };
 * const halfWay = drawSanding(design, [{ along: "fret12", centre: 5.95, bass: 5.2, treble: 5.2 }]);
 * halfWay.match(/class="go"/g).length // 3
 * const tooFar = drawSanding(design, [{ along: "fret12", centre: 5.7, bass: 4.5, treble: 4.5 }]);
 * tooFar.match(/class="past"/g).length // 3
 */
export function drawSanding(
  design: Design,
  readings: readonly SandingReading[],
  options: PictureOptions = {},
): string {
  const unit = readUnit(options);
  const drawn = readSanding(design, readings);
  const { progress, markers } = drawn;
  const { removed, left } = valuesOf(drawn);
  const names = drawn.readings.map(({ station, along }) => station ?? words.figure(along, unit));
  const top = names.length * ROW + BELOW;
  const columns = words.markerColumns(markers, unit);
  return writePage({
    title: words.titled("Sanding", progress),
    heading: [verdictOf(progress), `${words.WORDS.sanding} ${words.tellUnit(unit)}`],
    marks: [
      ...drawReadings(drawn.readings, names, removed, unit),
      ...(markers.length > 0 ? drawMarkers(markers, columns, left, top, unit) : []),
    ],
    legend: LEGEND,
    notes: [
      ...progress.findings.map((finding) => tellSanding(finding, unit)),
      ...(markers.length > 0 ? [] : [words.WORDS.noDepth]),
    ],
    spoken: [
      ...PLACES.flatMap((place) => {
        const told = words.sandedColumns(
          drawn.readings.map(({ places }) => places[place]),
          unit,
        );
        const rows = names.map((name) => ({ name: `${name}, ${words.PLACES[place]}` }));
        return words.tellRows(rows, told);
      }),
      ...words.tellRows(markers, columns),
    ],
  });
}

/** The room for each plot, and below the readings for their axes and the heads of the markers. */
const WIDTH = { reading: 42, marker: 130 };
const BELOW = 4 + 5 * LETTER;
/** The base line of a plot's head, above those of its columns. */
const HEADS = -1.5 - 1.6 * LETTER;
/** Between a plot and the figures beside it, and from these to the next plot. */
const [GAP, NEXT] = [2, 5];

/** A plot for each place across the board, with its figures beside it. */
function drawReadings(
  readings: readonly DrawnReading[],
  names: readonly string[],
  removed: readonly number[],
  unit: Unit,
): Mark[] {
  let left = 0;
  const plots = PLACES.flatMap((place) => {
    const sanded = readings.map(({ places }) => places[place]);
    const plot = layPlot(removed, { rows: readings.length, width: WIDTH.reading, left }, unit);
    const figures = table(
      words.sandedColumns(sanded, unit),
      left + WIDTH.reading + GAP,
      middleOfRow,
    );
    const head = text(words.PLACES[place], [left, HEADS]);
    const top = line("centre top", [plot.across(0), 0], [plot.across(0), readings.length * ROW]);
    left = boxAround([head, ...figures]).right + NEXT;
    const bars = sanded.flatMap((each, i) => drawSanded(each, middleOfRow(i), plot));
    return [head, ...plot.axis, top, ...bars, ...figures];
  });
  return [...table([["", names, "end"]], -3 - measure(names), middleOfRow), ...plots];
}

/** What is off, what is to go up to the finished surface, and what is past it. */
function drawSanded(sanded: Sanded | undefined, y: number, { across }: Plot): Mark[] {
  if (sanded === undefined) return [];
  const { off, whole, past } = sanded;
  const part = (from: number, to: number) =>
    corners([across(from), y - BAR / 2], [across(to), y + BAR / 2]);
  return [
    outline("narrow off", part(Math.min(0, off), Math.min(off, whole))),
    ...(off < whole ? drawWood(part(off, whole)) : []),
    ...(past ? [outline("solid past", part(whole, off))] : []),
    drawLimit("wide finished", [across(whole), y]),
  ];
}

/** Between hatching lines; the marker's run the other way. */
const APART = 1.2;
const drawWood = (area: readonly Spot[]) => [
  hatch(area, -1, APART, "narrow wood"),
  outline("narrow go", area),
];
const drawLimit = (style: "wide finished" | "wide keep", [x, y]: Spot) =>
  line(style, [x, y - BAR / 2 - 0.9], [x, y + BAR / 2 + 0.9]);

/** The markers: what stays, what is still to be sanded off, and what each is to keep. */
function drawMarkers(
  markers: readonly DrawnMarker[],
  columns: readonly Column[],
  left: readonly number[],
  top: number,
  unit: Unit,
): Mark[] {
  const plot = layPlot(left, { rows: markers.length, width: WIDTH.marker, top }, unit);
  const names = markers.map(({ name }) => name);
  const middle = (row: number) => middleOfRow(row, top);
  const foot = plot.across(0);
  return [
    text(words.WORDS.markersLeft, [0, top + HEADS]),
    ...plot.axis,
    line("centre floor", [foot, top], [foot, top + markers.length * ROW]),
    ...markers.flatMap((marker, i) => drawMarker(marker, middle(i), plot)),
    ...table([["", names, "end"]], -3 - measure(names), middle),
    ...table(columns, WIDTH.marker + GAP, middle, top),
  ];
}

function drawMarker(marker: DrawnMarker, y: number, { across }: Plot): Mark[] {
  const { now, finished, keep } = marker;
  const part = (from: number, to: number): [Spot, Spot] => [
    [across(from), y - BAR / 2],
    [across(to), y + BAR / 2],
  ];
  const state = stateOf(marker);
  const stays = corners(...part(0, Math.max(0, finished)));
  return [
    ...(finished > 0
      ? [hatch(stays, 1, APART, "narrow filling"), outline("narrow stays", stays)]
      : []),
    ...(now > 0 ? [outline("wide marker", corners(...part(0, now)))] : []),
    ...(state === "gone" || state === "below" ? [cross("narrow lost", ...part(now, keep))] : []),
    drawLimit("wide keep", [across(keep), y]),
  ];
}

const area = (from: Spot, to: Spot) => corners(from, to);
const SHORT = (BAR + 1.8) / 2;
const upright = (style: "wide", [x, y]: Spot) => line(style, [x, y - SHORT], [x, y + SHORT]);

const LEGEND: readonly Entry[] = [
  ["off", words.WORDS.off, (from, to) => [outline("narrow", area(from, to))]],
  ["go", words.WORDS.go, (from, to) => drawWood(area(from, to))],
  ["past", words.WORDS.past, (from, to) => [outline("solid", area(from, to))]],
  ["finished", words.WORDS.finished, (_from, _to, at) => [upright("wide", at)]],
  [
    "stays",
    words.WORDS.stays,
    (from, to) => [hatch(area(from, to), 1, APART), outline("narrow", area(from, to))],
  ],
  ["marker", words.WORDS.leftNow, (from, to) => [outline("wide", area(from, to))]],
  ["keep", words.WORDS.keep, (_from, _to, at) => [upright("wide", at)]],
  ["lost", words.WORDS.lost, (from, to) => [cross("narrow", from, to)]],
];
