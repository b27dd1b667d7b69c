/** All that the pictures take from a report. Where its contract changes, this file follows. Lengths in mm. */
import type { Edge } from "../drilling/edges.js";
import { elementAt } from "../geometry/element-at.js";
import type { Point } from "../geometry/polygon.js";
import { radiusFromSagitta, sag } from "../geometry/sagitta.js";
import { trackThrough, valueAt } from "../geometry/track.js";
import type { Hole, Report } from "../report/report.js";
import { holeNames, settingLetter } from "../text/plain-words.js";

/** A hole to draw; its depths are those of its floor, its travels those of the bit's tip. */
export type DrawnHole = ReturnType<typeof readHole>;

/** The holes, in the report's order. */
export function readHoles(report: Report): DrawnHole[] {
  const names = holeNames(report.holes);
  return report.holes.map((hole, i) => readHole(report, hole, i, elementAt(names, i)));
}

function readHole(report: Report, hole: Hole, index: number, name: string) {
  const { fret, along, offset, width, outline, window, lead, rise, fill, bit, removal } = hole;
  const { planned, recommended, drilled = false } = hole;
  const { settings } = report.stops;
  const known = recommended ?? planned;
  return {
    name,
    fret,
    along,
    offset,
    outline,
    /** Across the board. */
    width,
    window,
    /** Some depth suits it. */
    open: window.min <= window.max,
    drilled,
    /** Travel less depth. */
    shift: known?.travel === undefined ? lead - rise : known.travel - known.depth,
    /** Which ends of a setting's range it sets. */
    governs: [
      ...(settings.some(({ minHole }) => minHole === index) ? (["min"] as const) : []),
      ...(settings.some(({ maxHole }) => maxHole === index) ? (["max"] as const) : []),
    ],
    lead,
    /** The bit's tip is a cone as wide as the hole. */
    cone: bit?.kind === "twist",
    /** How far its rim or its spurs cut below the floor. */
    spur: bit && "spur" in bit ? bit.spur : 0,
    /** Thickness of a solid dot. */
    dot: fill.kind === "solid" ? fill.thickness : undefined,
    removed: removal.outer,
    planned,
    setting: findSetting(report, index),
  };
}

/** The setting that serves a hole: its name, its letter among several, its travel and the depth that it comes to. */
export function findSetting(report: Report, hole: number) {
  const recommended = report.holes[hole]?.recommended;
  return recommended && { ...nameSetting(report, recommended.setting), ...recommended };
}

function nameSetting({ stops: { settings } }: Report, index: number) {
  const letter = settings.length === 1 ? "" : settingLetter(index);
  return { letter, name: letter === "" ? "stop setting" : `setting ${letter}` };
}

/** A stop setting to draw. */
export type DrawnSetting = ReturnType<typeof readSettings>[number];

/** The stop settings. */
export function readSettings(report: Report) {
  return report.stops.settings.map((setting, i) => ({ ...setting, ...nameSetting(report, i) }));
}

/** The board from above. */
export type DrawnBoard = ReturnType<typeof readBoard>;

/** The board from above: nut, frets and end from edge to edge. */
export function readBoard({ edges }: Report) {
  const lines = [...new Set(edges.map(({ station }) => station))].map((station) => {
    const ends = edges.filter((edge) => edge.station === station);
    const [bass, treble] = [elementAt(ends, 0), elementAt(ends, ends.length - 1)];
    return {
      name: station.replace("fret", ""),
      bass: { along: bass.along, offset: -bass.offset },
      treble: { along: treble.along, offset: treble.offset },
    };
  });
  return { lines, length: elementAt(lines, lines.length - 1).bass.along };
}

/** What a picture shows besides, where a report tells it: the board's channel, and at a hole what lies under it. */
interface Told {
  readonly channel?: { readonly width: number; readonly from: number; readonly to: number };
}
interface ToldAtHole {
  /** Wood under the board. */
  readonly neck?: number;
  /** The rod channel there, its depth from the board's underside. */
  readonly channel?: { readonly width: number; readonly depth: number };
}

/** The corners of the rod channel, where the report tells of one. */
export function readChannel(report: Report & Told): Point[] {
  if (report.channel === undefined) return [];
  const { width, from, to } = report.channel;
  const end = (along: number, side: number): Point[] =>
    [-side, side].map((offset) => ({ along, offset }));
  return [...end(from, width / 2), ...end(Math.min(to, readBoard(report).length), -width / 2)];
}

/** The board cut across. */
export type DrawnCut = NonNullable<ReturnType<typeof readCut>>;

/** The board cut square to the centre line through a hole, as designed; undefined where there is no such hole. */
export function readCut(report: Report, index: number) {
  const hole: (Hole & ToldAtHole) | undefined = report.holes[index];
  if (hole === undefined) return undefined;
  const { along, thickness, sanding, radius = Infinity, neck = 0, channel } = hole;
  const half = alongEdges(report, along, ({ offset }) => offset);
  // what the top had dropped at the edge before the radius: the board's thickness less what is left and what is removed
  const drop = thickness - alongEdges(report, along, (edge) => edge.thickness + edge.removal);
  const existing = drop > half / FLAT ? radiusFromSagitta(half, drop) : Infinity;
  const top = (offset: number) => sag(existing, Math.abs(offset), 0);
  return {
    along: findMiddle(hole),
    half,
    thickness,
    neck,
    sanding,
    radius,
    curved: existing < Infinity,
    channel: channel && {
      half: Math.min(half, channel.width / 2),
      roof: thickness - channel.depth,
    },
    /** Depth of the top as it is, below the plane through its crest. */
    top,
    /** Depth of the finished surface; a compound radius is drawn as the circle there: on ordinary boards 0.001 mm off. */
    surface: (offset: number) => Math.max(sanding + sag(radius, Math.abs(offset), 0), top(offset)),
  };
}

/** A top that drops less than this part of half its width is flat: its radius would be 200 times that, and more. */
const FLAT = 400;

/** A length between the places along the edges: linear from one to the next. */
function alongEdges({ edges }: Report, along: number, of: (edge: Edge) => number): number {
  const sorted = [...edges].sort((a, b) => a.along - b.along);
  const rising = sorted.filter((edge, i) => i === 0 || edge.along > elementAt(sorted, i - 1).along);
  const at = rising.map((edge) => edge.along);
  return valueAt(trackThrough(at, rising.map(of)), along);
}

/** Where a hole is cut: at its centre. A narrow pocket may lie beside the crossing that it is laid out by. */
function findMiddle({ along, outline }: Hole): number {
  if (outline === undefined) return along;
  const alongs = outline.map((corner) => corner.along);
  const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
  return from < along && along < to ? along : (from + to) / 2;
}
