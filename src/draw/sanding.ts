/** How far the sanding has come, as a picture. */

import { tellVerdict } from "../card/sanding-note.js";
import type { Design } from "../design/design.js";
import { tellSanding } from "../measured/sanding-findings.js";
import type { SandingReading } from "../measured/sanding-readings.js";
import type { Unit } from "../text/length-text.js";
import { type Column, text } from "./label.js";
import {
  boxAround,
  corners,
  cross,
  hatched,
  LETTER,
  type Mark,
  outline,
  type Spot,
} from "./line.js";
import { type PictureOptions, readUnit } from "./options.js";
import { type Entry, writePage } from "./paper.js";
import { layPlot, type Plot, stroke } from "./rows.js";
import {
  type DrawnMarker,
  type DrawnReading,
  gatherValues,
  judgeMarker,
  PLACES,
  readSanding,
  type Sanded,
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
  const { removed, left } = gatherValues(drawn);
  const names = drawn.readings.map(({ station, along }) => station ?? words.figure(along, unit));
  const columns = words.markerColumns(markers, unit);
  const above = drawReadings(drawn.readings, names, removed, unit);
  return writePage({
    title: words.titled("Sanding", progress),
    heading: [tellVerdict(progress), `${words.WORDS.sanding} ${words.tellUnit(unit)}`],
    marks: [
      ...above,
      ...(markers.length > 0
        ? drawMarkers(markers, columns, left, boxAround(above).bottom + BELOW, unit)
        : []),
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

/** The room for each plot, and below the readings for the heads of the markers. */
const WIDTH = { reading: 42, marker: 130 };
const BELOW = 5 * LETTER;
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
  return PLACES.flatMap((place, k) => {
    const sanded = readings.map(({ places }) => places[place]);
    const plot = layPlot(removed, { rows: readings.length, width: WIDTH.reading, left }, unit);
    const head = text(words.PLACES[place], [left, HEADS]);
    const figures = plot.figures(words.sandedColumns(sanded, unit), GAP);
    left = boxAround([head, ...figures]).right + NEXT;
    return [
      ...(k === 0 ? plot.names(names) : []),
      head,
      plot.through("centre top", 0),
      ...sanded.flatMap((each, row) => (each ? drawSanded(each, row, plot) : [])),
      ...plot.axis,
      ...figures,
    ];
  });
}

/** What is off, what is to go up to the finished surface, and what is past it. */
function drawSanded({ off, whole, past }: Sanded, row: number, { bar, spot }: Plot): Mark[] {
  return [
    outline("narrow off", corners(...bar(row, Math.min(0, off), Math.min(off, whole)))),
    ...(off < whole ? drawWood(...bar(row, off, whole)) : []),
    ...(past ? [outline("solid past", corners(...bar(row, whole, off)))] : []),
    stroke("wide finished", spot(row, whole)),
  ];
}

/** Between hatching lines; the marker's run the other way. */
const APART = 1.2;
const drawWood = (from: Spot, to: Spot) =>
  hatched(corners(from, to), -1, APART, ["narrow wood", "narrow go"]);
const drawStaying = (from: Spot, to: Spot) =>
  hatched(corners(from, to), 1, APART, ["narrow filling", "narrow stays"]);

/** The markers: what stays, what is still to be sanded off, and what each is to keep. */
function drawMarkers(
  markers: readonly DrawnMarker[],
  columns: readonly Column[],
  left: readonly number[],
  top: number,
  unit: Unit,
): Mark[] {
  const plot = layPlot(left, { rows: markers.length, width: WIDTH.marker, top }, unit);
  return [
    text(words.WORDS.markersLeft, [0, top + HEADS]),
    ...plot.axis,
    plot.through("centre floor", 0),
    ...markers.flatMap((marker, row) => drawMarker(marker, row, plot)),
    ...plot.names(markers.map(({ name }) => name)),
    ...plot.figures(columns, GAP),
  ];
}

function drawMarker(marker: DrawnMarker, row: number, { bar, spot }: Plot): Mark[] {
  const { now, finished, keep } = marker;
  const isShort = ["gone", "below"].includes(judgeMarker(marker));
  return [
    ...(finished > 0 ? drawStaying(...bar(row, 0, finished)) : []),
    ...(now > 0 ? [outline("wide marker", corners(...bar(row, 0, now)))] : []),
    ...(isShort ? [cross("narrow lost", ...bar(row, now, keep))] : []),
    stroke("wide keep", spot(row, keep)),
  ];
}

const LEGEND: readonly Entry[] = [
  ["off", words.WORDS.off, (from, to) => [outline("narrow", corners(from, to))]],
  ["go", words.WORDS.go, drawWood],
  ["past", words.WORDS.past, (from, to) => [outline("solid", corners(from, to))]],
  ["finished", words.WORDS.finished, (_from, _to, at) => [stroke("wide", at)]],
  ["stays", words.WORDS.stays, drawStaying],
  ["marker", words.WORDS.leftNow, (from, to) => [outline("wide", corners(from, to))]],
  ["keep", words.WORDS.keep, (_from, _to, at) => [stroke("wide", at)]],
  ["lost", words.WORDS.lost, (from, to) => [cross("narrow", from, to)]],
];
