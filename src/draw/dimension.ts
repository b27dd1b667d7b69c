/**
 * Dimensions after ISO 129-1 (memory): narrow lines with filled arrowheads, extension lines a little past them, the
 * figure above the line, read from below or from the right. Where arrowheads find no room they come from outside;
 * where the figure finds none it stands beyond the line. Lengths in mm on paper.
 */
import { elementAt } from "../geometry/element-at.js";
import { type Anchor, HANG, MIDDLE, measure, RISE, text } from "./label.js";
import { ARROW, arrow, circle, LETTER, line, type Mark, type Spot } from "./line.js";
import { spread } from "./scale.js";

/** How far an extension line starts off the part, and goes past its dimension line. */
const [OFF, PAST] = [1, 1.5];
/** Between letters and a line; from a base line to the line below it. */
const GAP = 0.8;
export const ABOVE = GAP + HANG * LETTER;
/** Between the dimension lines of two rows or columns: room for a figure on either side. */
export const ROW = 11;

/**
 * A dimension across (its ends are x, the others y) or upright (its ends are y, the others x): its line lies at `at`,
 * the part's own edge at either end at `edges`.
 */
export function dimension(
  way: "across" | "upright",
  ends: Spot,
  at: number,
  edges: Spot,
  figure: string,
): Mark[] {
  const turn = (u: number, v: number): Spot => (way === "upright" ? [v, u] : [u, v]);
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const [room, away] = [to - from, Math.sign(at - edges[0])];
  // arrowheads fly outward between the ends, or inward from beyond them
  const flight = room >= 2 * ARROW + 1 ? -1 : ARROW + 1.5;
  const beyond = away > 0 ? PAST + GAP + RISE * LETTER : -PAST - ABOVE;
  const foot = at + (room >= measure(figure) + 1 ? -ABOVE : beyond);
  const extension = (end: number, edge: number) =>
    line("narrow", turn(end, edge + OFF * away), turn(end, at + PAST * away));
  const lead = Math.max(0, flight);
  return [
    extension(ends[0], edges[0]),
    extension(ends[1], edges[1]),
    line("narrow", turn(from - lead, at), turn(to + lead, at)),
    arrow(turn(from, at), turn(from - flight, at)),
    arrow(turn(to, at), turn(to + flight, at)),
    text(figure, turn((from + to) / 2, foot), "middle", way === "upright"),
  ];
}

/** How far a tick stands out, and its label from it. */
const TICK = { length: 1.5, gap: 1 };

/** Ticks with labels: below an axis across, left of an upright one, at `at`. */
export function ticks(
  way: "across" | "upright",
  at: number,
  places: readonly (readonly [place: number, label: string])[],
): Mark[] {
  const foot = TICK.length + TICK.gap;
  return places.flatMap(([place, label]) =>
    way === "across"
      ? [
          line("narrow tick", [place, at], [place, at + TICK.length]),
          text(label, [place, at + foot + LETTER], "middle"),
        ]
      : [
          line("narrow tick", [at - TICK.length, place], [at, place]),
          text(label, [at - foot, place + MIDDLE * LETTER], "end"),
        ],
  );
}

/** A place to be shown: how far along, how far out its extension line starts, and its words. */
export type Level = readonly [along: number, out: number, words: string];

/** Between the base lines of figures. */
export const APART = 1.55 * LETTER;
/** How far extension lines run straight past the running line, and then to their figures. */
const [RUN, BEND] = [3, 8];

/**
 * Running dimensions (ISO 129-1, memory): one line from an origin's circle, an arrowhead at each place along it, and
 * an extension line to its figure. Where figures would meet, their lines bend and the figures move apart. The line
 * lies `out` from the part; `spot` gives a place on paper; `anchor` is the end of a figure that lies at the line.
 */
export function runningDimension(
  levels: readonly Level[],
  out: number,
  spot: (along: number, out: number) => Spot,
  anchor: Anchor,
  turned: boolean,
): Mark[] {
  const sorted = [...levels].sort(([a], [b]) => a - b);
  const alongs = sorted.map(([along]) => along);
  const places = spread(alongs, APART);
  const foot = out + RUN + BEND;
  const labels = sorted.flatMap(([along, start, words], i) => {
    const place = elementAt(places, i);
    const bent = [spot(along, start), spot(along, out + RUN), spot(place, foot)];
    const figure = text(words, spot(place - ABOVE, foot), anchor, turned);
    return [line("narrow", ...bent, spot(place, foot + measure(words))), figure];
  });
  const heads = alongs.filter(Boolean).map((along) => {
    const others = [0, ...alongs].filter((other) => other !== along);
    const room = Math.min(...others.map((other) => Math.abs(other - along)));
    const head = spot(along, out);
    // a dot where two places are too near for an arrowhead
    return room >= ARROW ? arrow(head, spot(0, out)) : circle("solid", head, 0.5);
  });
  const [first, last] = [Math.min(0, ...alongs), Math.max(0, ...alongs)];
  const through = line("narrow", spot(first, out), spot(last, out));
  return [...labels, through, circle("narrow", spot(0, out), 1), ...heads];
}
