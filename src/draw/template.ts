/** The board at 1 : 1 on sheets of paper, to be printed and laid on the work. Lengths in mm on paper and on the board. */

import { refused, tryRead } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Report } from "../report/report.js";
import { MILLIMETRES } from "../text/length-text.js";
import { drawRim } from "./from-above.js";
import { MIDDLE, measure, text, wrap } from "./label.js";
import { circle, LETTER, line, lines, type Mark, plus, type Spot } from "./line.js";
import { writeSvg } from "./paper.js";
import { type DrawnBoard, type DrawnHole, readBoard, readHoles } from "./reading.js";
import { spread } from "./scale.js";
import {
  APART,
  BEYOND,
  GAP,
  type Layout,
  layOut,
  MARGIN,
  type Placer,
  placer,
  SMALL,
} from "./sheets.js";
import * as words from "./words.js";

/** What a template is printed on. */
export interface TemplateOptions {
  /** "a4", 210 by 297 mm (ISO 216), or "letter", 8.5 by 11 in; both upright. */
  readonly paper: "a4" | "letter";
}

/**
 * The board seen from above at 1 : 1, the nut up and the bass side on the left, as pages to print: its outline, centre
 * line and slots, each marker with a cross at its centre, its number and its name. Pages overlap, and ringed crosses in
 * the overlap are laid over each other. Each page has a ruler of 100 mm both ways, since a printer's scale may be off.
 *
 * Print at 100 %, not fitted to the page. What is printed is as true as paper: it moves with the weather, so measure
 * before you drill.
 *
 * @param report what `checkDesign` returned
 * @param options `paper`, "a4" or "letter"
 * @returns the pages from the nut on, each an SVG document of the paper's size, its units mm; 10 mm around are left free
 * @throws RangeError for another paper, or one that the board is too wide for
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * const pages = drawTemplate(report, { paper: "a4" });
 * pages.length // 2
 * pages[0].includes('width="210mm" height="297mm" viewBox="0 0 210 297"') // true
 */
export function drawTemplate(report: Report, options: TemplateOptions): string[] {
  const paper = tryRead("options", options, () => options?.paper);
  if (paper !== "a4" && paper !== "letter") throw refused("paper", paper, '"a4" or "letter"');
  const [board, holes] = [readBoard(report), readHoles(report, MILLIMETRES)];
  const labels = holes.map(words.labelHole);
  const sheet = layOut(board, holes, labels, paper);
  return sheet.starts.map((_, page) => {
    return drawPage(words.titled("Template", report), board, holes, labels, sheet, page);
  });
}

function drawPage(
  title: string,
  board: DrawnBoard,
  holes: readonly DrawnHole[],
  labels: readonly string[],
  sheet: Layout,
  page: number,
): string {
  const { width, height, starts } = sheet;
  const place = placer(sheet, elementAt(starts, page));
  const which = words.tellPage(page, starts.length);
  const shown = [...holes.keys()].filter((i) => place.holds(elementAt(holes, i)));
  const heading = words.WORDS.print + (starts.length > 1 ? words.WORDS.join : "");
  return writeSvg({
    name: "marker-depth-template",
    size: [String(width), String(height)],
    viewBox: [0, 0, width, height],
    title: `${title}, ${which}`,
    spoken: [heading, `${shown.map((i) => elementAt(labels, i)).join("; ")}.`],
    style: `svg.marker-depth-template{color:#000;background:#fff}@page{size:${width}mm ${height}mm;margin:0}`,
    marks: [
      ...drawHead(title, which, heading, sheet),
      ...drawBoard(board, place),
      ...shown.flatMap((i) => drawHole(elementAt(holes, i), i, place)),
      ...nameHoles(holes, labels, shown, sheet, place),
      ...drawJoins(sheet, page, place),
    ],
  });
}

/** Title, page, how to print, and the rulers. */
function drawHead(title: string, page: string, heading: string, { width, top }: Layout): Mark[] {
  const room = width - 2 * MARGIN;
  const name = elementAt(wrap(title, room - measure(page) - GAP, LETTER, 1), 0);
  const how = elementAt(wrap(heading, room, SMALL, 1), 0);
  const said = words.WORDS.ruler;
  return [
    text(name, [MARGIN, MARGIN + 3]),
    text(page, [width - MARGIN, MARGIN + 3], "end"),
    text(how, [MARGIN, MARGIN + 7.5], "start", false, SMALL),
    ruler((at, out) => [MARGIN + at, top - 5.5 + out]),
    text(said, [MARGIN + LONG + 2, top - 3], "start", false, SMALL),
    ruler((at, out) => [MARGIN + out, top + 6 + at]),
    text(said, [MARGIN + 4 + SMALL, top + 6 + LONG], "start", true, SMALL),
  ];
}

/** The ruler's length, mm; a tick every 10. */
const LONG = 100;

function ruler(spot: (at: number, out: number) => Spot): Mark {
  const ticks = Array.from({ length: LONG / 10 + 1 }, (_, i): Spot[] => {
    return [spot(10 * i, 0), spot(10 * i, i % 5 === 0 ? 3 : 2)];
  });
  return lines("narrow ruler", [[spot(0, 0), spot(LONG, 0)], ...ticks]);
}

/** Outline, slots with their numbers, and the centre line, as far as they are on the page. */
function drawBoard({ lines: slots, length }: DrawnBoard, place: Placer): Mark[] {
  const edge = (side: "bass" | "treble") =>
    slots.slice(1).flatMap((line, i) => place.cut(elementAt(slots, i)[side], line[side]));
  const across = slots.map(({ bass, treble, name }) => ({ name, part: place.cut(bass, treble) }));
  const [nut, end] = [elementAt(across, 0), elementAt(across, across.length - 1)];
  const inner = across.slice(1, -1).flatMap(({ part }) => part);
  const numbers = slots.slice(0, -1).filter(({ bass: { along } }) => {
    return place.isOn(along - SMALL / 2) && place.isOn(along + SMALL / 2);
  });
  const from = Math.min(0, ...slots.map(({ bass, treble }) => Math.min(bass.along, treble.along)));
  const axis = place.cut(
    { along: from - BEYOND, offset: 0 },
    { along: length + BEYOND, offset: 0 },
  );
  return [
    lines("narrow board", [...edge("bass"), ...edge("treble"), ...nut.part, ...end.part]),
    ...inner.map(([a, b]) => line("narrow slot", a, b)),
    ...axis.map(([a, b]) => line("centre", a, b)),
    ...numbers.map(({ name, bass }) => {
      const [x, y] = place.spot(bass);
      return text(name, [x - 1.5, y + MIDDLE * SMALL], "end", false, SMALL);
    }),
  ];
}

/** A marker, a cross at its centre that goes past its rim, and its number beside it. */
function drawHole(hole: DrawnHole, index: number, { spot }: Placer): Mark[] {
  const [x, y] = spot(hole);
  const reach = hole.outline ? 3 : hole.width / 2 + 1.5;
  const shape = drawRim("narrow marker", hole, spot);
  const right = Math.max(x + reach, shape.box.right) + 0.6;
  return [
    shape,
    plus("narrow middle", [x, y], reach),
    text(String(index + 1), [right, y - 0.6], "start", false, SMALL),
  ];
}

/** The names of the holes on the page, right of the board. */
function nameHoles(
  holes: readonly DrawnHole[],
  labels: readonly string[],
  shown: readonly number[],
  { middle, reach, top, room }: Layout,
  { spot }: Placer,
): Mark[] {
  const y = (i: number) => spot(elementAt(holes, i))[1];
  const sorted = [...shown].sort((a, b) => y(a) - y(b));
  const apart = Math.min(APART, room / Math.max(1, sorted.length));
  const places = spread(sorted.map(y), apart);
  // moved apart, the first and the last stay on the page
  const [first = 0, last = 0] = [places[0], places.at(-1)];
  const shift = Math.max(0, top + SMALL - first) + Math.min(0, top + room - SMALL - last);
  return sorted.map((i, k) => {
    const at = elementAt(places, k) + shift + MIDDLE * SMALL;
    return text(elementAt(labels, i), [middle + reach + GAP, at], "start", false, SMALL);
  });
}

/** Ringed crosses in the middle of what two pages share, and the numbers of these pages. */
function drawJoins({ starts, step, room, joints }: Layout, page: number, { spot }: Placer): Mark[] {
  return starts.slice(1).flatMap((start, i) => {
    if (i !== page && i !== page - 1) return [];
    const [, y] = spot({ along: start + (room - step) / 2, offset: 0 });
    return joints.flatMap((x) => [
      circle("narrow join", [x, y], 2),
      plus("narrow", [x, y], 4),
      text(`${i + 1} | ${i + 2}`, [x, y + 4 + SMALL], "middle", false, SMALL),
    ]);
  });
}
