/** Dimensions of a section: depths on the hole's side, thicknesses on the other, widths above and below. */
import type { Hole, Report } from "../report/report.js";
import { type Cut, type CutHole, markerLeft, woodUnder } from "./cut.js";
import { ABOVE, across, upward } from "./dimensions.js";
import { LETTER, widthOf } from "./lettering.js";
import { type Level, levelMarks } from "./levels.js";
import { ARROW_LENGTH, arrow, boxOf, line, type Mark, type Spot, text } from "./marks.js";
import type { Paper } from "./section-paper.js";
import { windowBar } from "./window-bar.js";
import { figure, hasWindow, LIMITS, least, markerWord, most, settingOf } from "./words.js";

/** Between rows or columns of dimension lines. */
const ROW = 9;

/** All of them. */
export function sectionDimensions(report: Report, cut: Cut, paper: Paper): Mark[] {
  return [
    ...axisMarks(cut, paper),
    ...aboveMarks(cut, paper),
    ...belowMarks(cut, paper),
    ...thicknessMarks(cut, paper),
    ...windowMarks(cut, paper),
    ...levelMarks(levelsOf(report, cut, paper), {
      out: paper.reach + 13,
      spot: (along, out) => [paper.side * out, along],
      anchor: paper.side > 0 ? "start" : "end",
    }),
  ];
}

/** How far a centre line goes past the board. */
const PAST = 3;

function axisMarks({ main }: Cut, { spot, top, bottom }: Paper): Mark[] {
  const offsets = [...new Set([0, main.hole.offset])];
  return offsets.map((offset) => {
    const [x] = spot([offset, 0]);
    return line("centre", [
      [x, top - PAST],
      [x, bottom + PAST],
    ]);
  });
}

/** The hole's width, and the radius on a row of its own. */
function aboveMarks(cut: Cut, paper: Paper): Mark[] {
  const { main } = cut;
  const { spot, side } = paper;
  const words = widthWords(main);
  const dimension = across({
    from: spot([main.from, 0])[0],
    to: spot([main.to, 0])[0],
    at: rowAbove(cut, paper),
    edges: [0, 0],
    figure: words,
    beside: side > 0 ? "from" : "to",
  });
  return hasRoomForRadius(cut, paper) ? [...dimension, ...radiusMarks(cut, paper)] : dimension;
}

/** “Ø 6.35”, of a pocket “33.52”. */
function widthWords({ hole, from, to }: CutHole): string {
  return hole.outline ? figure(to - from) : `Ø ${figure(to - from)}`;
}

/** How far toward the middle and beyond the words of the hole's width may reach, counted toward the hole's side. */
function innerReach({ main }: Cut, { across: scale }: Paper): number {
  const wall = main.hole.offset < 0 ? -main.to : main.from;
  return wall * scale - ARROW_LENGTH - 2 - widthOf(widthWords(main));
}

/** Above the board; on a narrow one, above the figures of its thickness where the width's would meet them. */
function rowAbove(cut: Cut, paper: Paper): number {
  const row = paper.top - ROW;
  if (innerReach(cut, paper) > -paper.reach - 3) return row;
  return Math.min(row, boxOf(thicknessMarks(cut, paper)).top - 3);
}

/** “R 254.00”. */
function radiusWords({ radius, slope }: Hole): string {
  if (radius === Infinity) return "flat";
  return `R ${figure(radius)}${slope === 0 ? "" : " here"}`;
}

/** Where the radius's arrow touches the arc, as a share of half the width: on the side away from the hole. */
const ARROW_AT = 0.8;

/** The arrow passes the row of the hole's width without meeting its words, also where these stand beside. */
function hasRoomForRadius(cut: Cut, paper: Paper): boolean {
  return innerReach(cut, paper) > -ARROW_AT * cut.half * paper.across + 6;
}

/** An arrow to the finished arc, its words toward the middle. */
function radiusMarks({ main, half, surface }: Cut, { spot, side, top }: Paper): Mark[] {
  const words = radiusWords(main.hole);
  const offset = -ARROW_AT * side * half;
  const tip = spot([offset, surface(offset)]);
  const foot: Spot = [tip[0] + 5 * side, top - 2 * ROW];
  const length = Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
  const toward: Spot = [(tip[0] - foot[0]) / length, (tip[1] - foot[1]) / length];
  return [
    line("narrow", [tip, foot, [foot[0] + side * widthOf(words), foot[1]]]),
    arrow(tip, toward),
    text(words, [foot[0], foot[1] - ABOVE], { anchor: side > 0 ? "start" : "end" }),
  ];
}

/** The rod channel, the hole's distance from the centre line, and the board's width, each on a row of its own. */
function belowMarks(cut: Cut, paper: Paper): Mark[] {
  const { main, half, channel } = cut;
  const offset = Math.abs(main.hole.offset);
  const spans: Below[] = [];
  if (channel) spans.push({ from: -channel.half, to: channel.half, crowded: offset > 0 });
  const width = { from: -half, to: half, crowded: offset > half };
  const aside = { from: 0, to: main.hole.offset, crowded: false };
  // the longer one lies farther out
  if (offset === 0) spans.push(width);
  else spans.push(...(offset > half ? [width, aside] : [aside, width]));
  const last = paper.bottom + PAST + spans.length * ROW;
  return [
    ...spans.flatMap((span, i) =>
      spanBelow(span, paper.bottom + PAST + (i + 1) * ROW, half, paper),
    ),
    ...sideNames(paper.spot([half, 0])[0], last),
  ];
}

interface Below {
  readonly from: number;
  readonly to: number;
  readonly crowded: boolean;
}

function spanBelow({ from, to, crowded }: Below, at: number, half: number, paper: Paper): Mark[] {
  const { spot, side, bottom } = paper;
  return across({
    from: spot([Math.min(from, to), 0])[0],
    to: spot([Math.max(from, to), 0])[0],
    at,
    edges: [bottom + PAST, bottom + PAST],
    figure: figure(Math.abs(to - from)),
    beside: side > 0 ? "from" : "to",
    crowded,
    clear: spot([half, 0])[0] + 2,
  });
}

/** Which side is which, outside the width and clear of its figure where that stands outside too. */
function sideNames(half: number, y: number): Mark[] {
  const below = y + 1.5 * LETTER;
  return [text("bass", [-half, below], { anchor: "end" }), text("treble", [half, below])];
}

/** The edge face that is left, and the blank. */
function thicknessMarks({ half, blank, surface }: Cut, { spot, side, reach }: Paper): Mark[] {
  const edge = spot([-side * half, 0])[0];
  const span = (top: number, n: number) =>
    upward({
      from: spot([0, Math.max(blank, top)])[1],
      to: spot([0, Math.min(blank, top)])[1],
      at: -side * (reach + n * ROW),
      edges: [edge, edge],
      figure: figure(blank - top),
      beside: "to",
      // above the blank's own extension line
      clear: 1.5,
    });
  return [...span(surface(half), 1), ...span(0, 2)];
}

/** The window, beside the board. */
function windowMarks({ main }: Cut, { spot, side, reach }: Paper): Mark[] {
  const { min, max } = main.hole.window;
  const x = side * (reach + 4);
  const from: Spot = [x, spot([0, Math.min(min, max)])[1]];
  const to: Spot = [x + 4 * side, spot([0, Math.max(min, max)])[1]];
  return windowBar(from, to, hasWindow(main.hole));
}

/** Every depth that matters, with its words. */
function levelsOf(report: Report, cut: Cut, paper: Paper): Level[] {
  const level: LevelAt = (offset, depth, words) => {
    const [x, y] = paper.spot([offset, depth]);
    return { along: y, out: paper.side * x, words };
  };
  return [...boardLevels(cut, paper, level), ...holeLevels(report, cut, paper, level)];
}

type LevelAt = (offset: number, depth: number, words: string) => Level;

function boardLevels(cut: Cut, paper: Paper, level: LevelAt): Level[] {
  const { half, blank, main, channel } = cut;
  const { crown } = main.hole;
  const { side } = paper;
  const radius = hasRoomForRadius(cut, paper) ? "" : `, ${radiusWords(main.hole)}`;
  const roof = (depth: number) => `${figure(depth)} roof of the channel`;
  return [
    level(side * half, 0, "0.00 flat top"),
    level(0, crown, `${figure(crown)} crest${radius}`),
    ...(channel ? [level(side * channel.half, channel.roof, roof(channel.roof))] : []),
    level(side * half, blank, `${figure(blank)} underside`),
  ];
}

function holeLevels(report: Report, cut: Cut, { side }: Paper, level: LevelAt): Level[] {
  const { half, main, surface } = cut;
  const { window, fill, lead, offset } = main.hole;
  const wall = side > 0 ? main.to : main.from;
  const rim = surface(Math.min(half, Math.abs(wall)));
  const at: WallLevel = (depth, words) => level(wall, depth, `${figure(depth)} ${words}`);
  const top = `top of the ${markerWord(main.hole)}, as glued`;
  return [
    at(rim, "removed at the outer wall"),
    ...(fill.kind === "solid" ? [at(main.depth - fill.thickness, top)] : []),
    level(wall, window.min, `${least(window.min)} least depth`),
    level(wall, window.max, `${most(window.max)} most depth (${LIMITS[window.maxBy]})`),
    ...depthLevels(report, cut, at),
    ...(lead > 0 ? [level(offset, main.depth + lead, tipWords(cut))] : []),
  ];
}

type WallLevel = (depth: number, words: string) => Level;

/** The depth drawn, and that of the stop setting where another is planned. */
function depthLevels(report: Report, cut: Cut, at: WallLevel): Level[] {
  const { depth, why, index, hole } = cut.main;
  const served = settingOf(report, index);
  const travel = (rim: number) => `travel ${figure(rim + hole.lead)}`;
  const setting = served && `${served.name}, ${travel(served.setting.depth)}`;
  const left = leftWords(cut);
  if (why === "planned") {
    const drawn = at(depth, `planned depth, ${travel(depth)}: ${left}`);
    return served && setting ? [drawn, at(served.setting.depth, setting)] : [drawn];
  }
  return why === "setting" ? [at(depth, `${setting}: ${left}`)] : [];
}

function leftWords(cut: Cut): string {
  const left = markerLeft(cut);
  if (cut.main.depth >= cut.blank) return "through the board";
  return left > 0 ? `leaves ${figure(left)} of marker` : `${figure(-left)} short, no marker left`;
}

function tipWords(cut: Cut): string {
  const { depth, hole } = cut.main;
  const wood = woodUnder(cut);
  const left = wood > 0 ? `leaves ${figure(wood)} of wood` : `${figure(-wood)} through the wood`;
  return `${figure(depth + hole.lead)} tip of the bit: ${left}`;
}
