/** The board at 1 : 1 on sheets of paper, to be printed and laid on the work. Lengths in mm on paper and on the board. */

import { refused, tryRead } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Point } from "../geometry/polygon.js";
import type { Report } from "../report/report.js";
import { MILLIMETRES } from "../text/length-text.js";
import { MIDDLE, measure, text, wrap } from "./label.js";
import { circle, LETTER, line, lines, type Mark, outline, type Spot } from "./line.js";
import { writeSvg } from "./paper.js";
import { type DrawnBoard, type DrawnHole, readBoard, readHoles } from "./reading.js";
import { spread } from "./scale.js";
import * as words from "./words.js";

/** What a template is printed on. */
export interface TemplateOptions {
  /** "a4", 210 by 297 mm (ISO 216), or "letter", 8.5 by 11 in; both upright. */
  readonly paper: "a4" | "letter";
}

/** Sizes: ISO 216 (memory); 8.5 × 25.4 and 11 × 25.4. */
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;

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

/** What printers leave free, the head's height, and the least that two pages overlap. */
const [MARGIN, HEAD, OVERLAP] = [10, 16, 15];
/** Shown beyond the nut and the end. */
const BEYOND = 3;
/** Left of the board: the upright ruler, the ringed crosses, the frets' numbers. Right of it: names, crosses. */
const [RULER, JOIN, NUMBERS, GAP] = [12, 8, 7, 3];
/** Height of small letters, the least of the series 2.5, 3.5, 5 of ISO 3098 (memory), and between their base lines. */
const [SMALL, APART] = [2.5, 4];

/** How the board lies on the pages. */
type Layout = ReturnType<typeof layOut>;

function layOut(
  board: DrawnBoard,
  holes: readonly DrawnHole[],
  labels: readonly string[],
  paper: TemplateOptions["paper"],
) {
  const [width, height] = PAPERS[paper];
  const points = [
    ...board.lines.flatMap(({ bass, treble }) => [bass, treble]),
    ...holes.flatMap(boundsOf),
  ];
  const reach = Math.max(...points.map(({ offset }) => Math.abs(offset)));
  const names = labels.length === 0 ? 0 : measure(labels, SMALL);
  const [first, last] = [MARGIN + RULER + JOIN + NUMBERS, width - MARGIN - JOIN];
  const free = last - first - (2 * reach + GAP + names);
  if (!(free >= 0)) {
    const room = last - first - GAP - names;
    throw refused(
      "paper",
      paper,
      `paper for a board ${room.toFixed(0)} mm wide at most, with its markers; this one is ${(2 * reach).toFixed(0)} wide`,
    );
  }
  const alongs = points.map(({ along }) => along);
  const from = Math.min(...alongs) - BEYOND;
  const whole = Math.max(...alongs) + BEYOND - from;
  const top = MARGIN + HEAD;
  const room = height - MARGIN - top;
  // so that every hole is whole on some page
  const longest = Math.max(0, ...holes.map(lengthOf));
  const overlap = Math.min(room / 2, Math.max(OVERLAP, longest + 1));
  const count = Math.max(1, Math.ceil((whole - overlap) / (room - overlap)));
  // pages are filled alike, so that they overlap by as much as they can
  const step = count > 1 ? (whole - room) / (count - 1) : 0;
  return {
    width,
    height,
    top,
    room,
    middle: first + free / 2 + reach,
    reach,
    /** Where the crosses stand, and where names begin. */
    joints: [MARGIN + RULER + JOIN / 2, last + JOIN / 2] as const,
    starts: Array.from({ length: count }, (_, page) => from + page * step),
    step,
  };
}

function boundsOf({ along, offset, width, outline }: DrawnHole): readonly Point[] {
  const r = width / 2;
  return (
    outline ?? [
      { along: along - r, offset: offset - r },
      { along: along + r, offset: offset + r },
    ]
  );
}

function lengthOf(hole: DrawnHole): number {
  const alongs = boundsOf(hole).map(({ along }) => along);
  return Math.max(...alongs) - Math.min(...alongs);
}

/** Where things lie on one page. */
type Placer = ReturnType<typeof placer>;

function placer({ middle, top, room }: Layout, start: number) {
  const end = start + room;
  const spot = ({ along, offset }: Point): Spot => [middle + offset, top + along - start];
  const isOn = (along: number) => start <= along && along <= end;
  return {
    spot,
    isOn,
    /** All of a hole is on the page; of one that is longer than half a page, its centre. */
    holds: (hole: DrawnHole) => {
      const all = lengthOf(hole) < room / 2 - 1 ? boundsOf(hole) : [hole];
      return all.every(({ along }) => isOn(along));
    },
    /** The part of a straight line that is on the page. */
    cut: (a: Point, b: Point): [Spot, Spot][] => {
      const [from, to] = a.along <= b.along ? [a, b] : [b, a];
      if (from.along > end || to.along < start) return [];
      const at = (along: number): Point => {
        const share = to.along > from.along ? (along - from.along) / (to.along - from.along) : 0;
        return { along, offset: from.offset + share * (to.offset - from.offset) };
      };
      const [low, high] = [Math.max(start, from.along), Math.min(end, to.along)];
      const ends = from.along === to.along ? [from, to] : [at(low), at(high)];
      return [[spot(elementAt(ends, 0)), spot(elementAt(ends, 1))]];
    },
  };
}

/** Title, page, how to print, and the rulers. */
function drawHead(title: string, page: string, heading: string, { width, top }: Layout): Mark[] {
  const room = width - 2 * MARGIN;
  const [name] = wrap(title, room - measure(page) - GAP, LETTER, 1);
  const [how] = wrap(heading, room, SMALL, 1);
  const said = words.WORDS.ruler;
  return [
    text(name ?? "", [MARGIN, MARGIN + 3]),
    text(page, [width - MARGIN, MARGIN + 3], "end"),
    text(how ?? "", [MARGIN, MARGIN + 7.5], "start", false, SMALL),
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
  const shape = hole.outline
    ? outline("narrow marker", hole.outline.map(spot))
    : circle("narrow marker", [x, y], hole.width / 2);
  const right = Math.max(x + reach, shape.box.right) + 0.6;
  return [
    shape,
    lines("narrow middle", [
      [
        [x - reach, y],
        [x + reach, y],
      ],
      [
        [x, y - reach],
        [x, y + reach],
      ],
    ]),
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
      lines("narrow", [
        [
          [x - 4, y],
          [x + 4, y],
        ],
        [
          [x, y - 4],
          [x, y + 4],
        ],
      ]),
      text(`${i + 1} | ${i + 2}`, [x, y + 4 + SMALL], "middle", false, SMALL),
    ]);
  });
}
