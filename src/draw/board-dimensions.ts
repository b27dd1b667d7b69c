/** Dimensions and words on a board seen from above. */
import { elementAt } from "../geometry/element-at.js";
import type { Hole, Report } from "../report/report.js";
import { type BoardPaper, ringReach } from "./board-paper.js";
import { upward } from "./dimensions.js";
import { type Flag, flagMarks } from "./flags.js";
import { LETTER, widthOf } from "./lettering.js";
import { APART, type Level, levelMarks } from "./levels.js";
import { boxOf, type Mark, text } from "./marks.js";
import type { Fret, Plan } from "./outline.js";
import { spread } from "./spread.js";
import { figure, governed, least, most } from "./words.js";

/** The markers of one fret that lie equally far from the nut. */
export interface Place {
  /** The one farthest to the bass side, where its extension line starts. */
  readonly lowest: Hole;
  readonly words: string;
}

/** The places to be dimensioned. */
export function markerPlaces({ holes }: Report): Place[] {
  const groups = new Map<string, Hole[]>();
  for (const hole of holes) {
    const key = `${hole.fret} ${figure(hole.along)}`;
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()].flatMap((group) => {
    const lowest = group.reduce((a, b) => (b.offset < a.offset ? b : a));
    return [{ lowest, words: placeWords(group, lowest) }];
  });
}

/** “fret 12: 314.32, ± 13.03”. */
function placeWords(group: readonly Hole[], { fret, along }: Hole): string {
  const sides = [...new Set(group.map((hole) => figure(Math.abs(hole.offset))))]
    .filter((aside) => aside !== figure(0))
    .map((aside) => {
      const which = group.filter((hole) => figure(Math.abs(hole.offset)) === aside);
      const both = new Set(which.map((hole) => Math.sign(hole.offset))).size > 1;
      return `${both ? "±" : elementAt(which, 0).offset < 0 ? "bass" : "treble"} ${aside}`;
    });
  return [`fret ${fret}: ${figure(along)}`, ...sides].join(", ");
}

const ROW = 9;

/** All dimensions and words. */
export function boardDimensions(
  report: Report,
  plan: Plan,
  paper: BoardPaper,
  places: readonly Place[],
): Mark[] {
  const flags = flagsFor(report, paper);
  const widths = widthMarks(plan, paper);
  // a narrow board's figures stand above it
  const lowest = Math.min(paper.top - 8, boxOf(widths).top - 2);
  return [
    ...widths,
    ...runningMarks(report, plan, paper, places),
    ...fretNumbers(
      report,
      plan,
      paper,
      flags.flags.map(({ x }) => x),
    ),
    ...flagMarks(flags.flags, lowest, flags.side),
  ];
}

/** The widths at both ends, and which side is which. */
function widthMarks({ frets, end }: Plan, { spot, left, right }: BoardPaper): Mark[] {
  const [nut] = frets;
  const names = right + ROW + 4;
  const ends = [spot(end.treble)[1], spot(end.bass)[1]];
  const [trebleY = 0, bassY = 0] = spread(ends, APART).map((y) => y + 0.4 * LETTER);
  return [
    ...(nut ? widthAt(nut, left - ROW, spot) : []),
    ...widthAt(end, right + ROW, spot),
    text("treble", [names, trebleY]),
    text("bass", [names, bassY]),
  ];
}

function widthAt({ bass, treble }: Fret, at: number, spot: BoardPaper["spot"]): Mark[] {
  const [bassX, from] = spot(bass);
  const [trebleX, to] = spot(treble);
  const words = figure(treble.offset - bass.offset);
  return upward({ from, to, at, edges: [bassX, trebleX], figure: words, beside: "to" });
}

/** Distances from the nut, below the board. */
function runningMarks(
  { board }: Report,
  { end }: Plan,
  { spot, bottom, scale }: BoardPaper,
  places: readonly Place[],
): Mark[] {
  const markers = places.map(({ lowest, words }): Level => {
    const [x, y] = spot(lowest);
    const reach = lowest.outline
      ? Math.max(...lowest.outline.map((corner) => spot(corner)[1]))
      : y + (lowest.diameter / 2) * scale;
    return { along: x, out: reach, words };
  });
  const [endX, endY] = spot(end.bass);
  const length = { along: endX, out: endY + 1, words: `end: ${figure(board.length)}` };
  return levelMarks([...markers, length], {
    out: bottom + 6,
    spot: (along, out) => [along, out],
    anchor: "end",
    turned: true,
  });
}

/** The holes that govern, each with what it sets: all flags to the right, or to the left where these end sooner. */
function flagsFor(report: Report, paper: BoardPaper): { flags: Flag[]; side: 1 | -1 } {
  const toward = (side: 1 | -1) =>
    report.holes.flatMap((hole, i) => flagOf(report, hole, i, paper, side));
  const right = toward(1);
  const ends = right.map(({ x, words }) => x + widthOf(words));
  const fits = ends.every((end) => end <= paper.right + 2 * ROW);
  return fits ? { flags: right, side: 1 } : { flags: toward(-1), side: -1 };
}

function flagOf(
  report: Report,
  hole: Hole,
  i: number,
  { spot, scale }: BoardPaper,
  side: 1 | -1,
): Flag[] {
  const { window } = hole;
  const words = governed(report, i).map(({ ends, words: what }) => {
    const depths = ends.map((end) => (end === "min" ? least(window.min) : most(window.max)));
    return `${what}: ${depths.join(" and ")}`;
  });
  if (words.length === 0) return [];
  const [x, y] = spot(hole);
  // beside the hole, so that the line passes its twin on the other side
  return [
    { x: x + side * ringReach(hole, scale), foot: y, words: words.join("; "), pen: "narrow" },
  ];
}

/** How far a fret's number may stand aside to find room. */
const ASIDE = [0, 0.7, -0.7, 1.4, -1.4];

/** Numbers above the frets, the marked ones first; those that find no room are left out. */
export function fretNumbers(
  { holes }: Report,
  { frets }: Plan,
  { spot, top }: BoardPaper,
  lines: readonly number[],
): Mark[] {
  const marked = new Set(holes.map(({ fret }) => String(fret)));
  const rank = ({ name }: Fret) => (name === "nut" ? 0 : marked.has(name) ? 1 : 2);
  const taken: [number, number][] = lines.map((x) => [x, 0.3]);
  return [...frets]
    .sort((a, b) => rank(a) - rank(b))
    .flatMap(({ name, treble }) => {
      const half = widthOf(name) / 2;
      const isFree = (x: number) =>
        taken.every(([other, room]) => Math.abs(other - x) >= room + half + 0.3);
      const x = ASIDE.map((aside) => spot(treble)[0] + aside).find(isFree);
      if (x === undefined) return [];
      taken.push([x, half]);
      return [text(name, [x, top - 2], { anchor: "middle" })];
    });
}
