/** How a board lies on sheets of paper at 1 : 1: which part of it on which page. Lengths in mm on paper and on the board. */
import { refused } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Point } from "../geometry/polygon.js";
import { listCorners, measureExtent } from "./from-above.js";
import { measure } from "./label.js";
import type { Spot } from "./line.js";
import type { DrawnBoard, DrawnHole } from "./reading.js";

/** Sizes: ISO 216 (memory); 8.5 × 25.4 and 11 × 25.4. */
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;

/** What printers leave free. */
export const MARGIN = 10;
/** The head's height, and the least that two pages overlap. */
const [HEAD, OVERLAP] = [16, 15];
/** Shown beyond the nut and the end. */
export const BEYOND = 3;
/** Left of the board: the upright ruler, the ringed crosses, the frets' numbers. Right of it: names, crosses. */
const [RULER, JOIN, NUMBERS] = [12, 8, 7];
export const GAP = 3;
/** Height of small letters, the least of the series 2.5, 3.5, 5 of ISO 3098 (memory), and between their base lines. */
export const [SMALL, APART] = [2.5, 4];

/** How the board lies on the pages. */
export type Layout = ReturnType<typeof layOut>;

export function layOut(
  board: DrawnBoard,
  holes: readonly DrawnHole[],
  labels: readonly string[],
  paper: keyof typeof PAPERS,
) {
  const [width, height] = PAPERS[paper];
  const { from, to, reach } = measureExtent(board, holes);
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
  const whole = to - from + 2 * BEYOND;
  const top = MARGIN + HEAD;
  const room = height - MARGIN - top;
  // so that every hole is whole on some page
  const longest = Math.max(0, ...holes.map(measureLength));
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
    starts: Array.from({ length: count }, (_, page) => from - BEYOND + page * step),
    step,
  };
}

function measureLength(hole: DrawnHole): number {
  const alongs = listCorners(hole).map(({ along }) => along);
  return Math.max(...alongs) - Math.min(...alongs);
}

/** Where things lie on one page. */
export type Placer = ReturnType<typeof placer>;

export function placer({ middle, top, room }: Layout, start: number) {
  const end = start + room;
  const spot = ({ along, offset }: Point): Spot => [middle + offset, top + along - start];
  const isOn = (along: number) => start <= along && along <= end;
  return {
    spot,
    isOn,
    /** All of a hole is on the page; of one that is longer than half a page, its centre. */
    holds: (hole: DrawnHole) => {
      const all = measureLength(hole) < room / 2 - 1 ? listCorners(hole) : [hole];
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
