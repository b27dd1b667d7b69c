/**
 * Running dimensions (ISO 129-1, memory): one line from an origin's circle, an arrowhead at each place along it, and
 * an extension line to its figure. Where figures would meet, their lines bend and the figures move apart.
 * Lengths in mm on paper: `along` the running line from its origin, `out` from the part toward the figures.
 */
import { elementAt } from "../geometry/element-at.js";
import { ABOVE } from "./dimensions.js";
import { LETTER, widthOf } from "./lettering.js";
import { ARROW_LENGTH, arrow, circle, line, type Mark, type Spot, text } from "./marks.js";
import { spread } from "./spread.js";

/** A place to be shown: where its extension line starts, and its words. */
export interface Level {
  readonly along: number;
  readonly out: number;
  readonly words: string;
}

/** Where the running line lies. */
export interface Running {
  /** Its own distance from the part. */
  readonly out: number;
  readonly spot: (along: number, out: number) => Spot;
  /** Which end of a figure lies at the line, and whether it is read from the right. */
  readonly anchor: "start" | "end";
  readonly turned?: boolean;
}

/** Between the base lines of figures. */
export const APART = 1.55 * LETTER;
const RUN = 3;
const BEND = 8;

/** The running dimensions' marks. */
export function levelMarks(levels: readonly Level[], running: Running): Mark[] {
  const sorted = [...levels].sort((a, b) => a.along - b.along);
  const alongs = sorted.map(({ along }) => along);
  const places = spread(alongs, APART);
  return [
    ...sorted.flatMap((level, i) => labelMarks(level, elementAt(places, i), running)),
    ...runningLine(alongs, running),
  ];
}

function labelMarks({ along, out, words }: Level, place: number, running: Running): Mark[] {
  const { spot, anchor, turned } = running;
  const bend = running.out + RUN;
  const foot = bend + BEND;
  const end = foot + widthOf(words);
  return [
    line("narrow", [spot(along, out), spot(along, bend), spot(place, foot), spot(place, end)]),
    text(words, spot(place - ABOVE, foot), { anchor, turned }),
  ];
}

/** From the origin both ways; a dot in place of an arrowhead where two places are too near for it. */
function runningLine(alongs: readonly number[], { out, spot }: Running): Mark[] {
  const heads = alongs
    .filter((along) => along !== 0)
    .map((along) => {
      const others = [0, ...alongs].filter((other) => other !== along);
      const room = Math.min(...others.map((other) => Math.abs(other - along)));
      const [x0, y0] = spot(0, 0);
      const [x1, y1] = spot(Math.sign(along), 0);
      return room >= ARROW_LENGTH
        ? arrow(spot(along, out), [x1 - x0, y1 - y0])
        : circle("solid", spot(along, out), 0.5);
    });
  const ends = [Math.min(0, ...alongs), Math.max(0, ...alongs)];
  return [
    line(
      "narrow",
      ends.map((end) => spot(end, out)),
    ),
    circle("narrow", spot(0, out), 1),
    ...heads,
  ];
}
