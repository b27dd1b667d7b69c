/** All that the pictures take from a report. Where its contract changes, this file follows. Lengths in mm. */
import { findOutcome, type WrittenSetting, writeSettings } from "../card/settings.js";
import type { Edge } from "../drilling/edges.js";
import { elementAt } from "../geometry/element-at.js";
import type { Point } from "../geometry/polygon.js";
import { radiusFromSagitta, sag } from "../geometry/sagitta.js";
import { trackThrough, valueAt } from "../geometry/track.js";
import type { Hole, Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { holeNames } from "../text/plain-words.js";

/** A hole to draw; its depths are those of its floor, its travels those of the bit's tip. */
export type DrawnHole = ReturnType<typeof readHole>;

/** The holes, in the report's order. */
export function readHoles(report: Report, unit: Unit): DrawnHole[] {
  const [names, settings] = [holeNames(report.holes), readSettings(report, unit)];
  return report.holes.map((hole, i) => readHole(settings, hole, i, elementAt(names, i)));
}

function readHole(settings: readonly DrawnSetting[], hole: Hole, index: number, name: string) {
  const { fret, along, offset, width, outline, window, lead, rise, fill, bit, removal } = hole;
  const { planned, recommended, drilled = false } = hole;
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
    setting: findSetting(settings, hole),
  };
}

/** The setting that serves a hole, and what the hole comes to at the travel that is written. */
function findSetting(settings: readonly DrawnSetting[], hole: Hole) {
  const outcome = findOutcome(hole, settings);
  const setting = settings[hole.recommended?.setting ?? -1];
  return (
    outcome &&
    setting && { letter: setting.letter, name: setting.name, set: setting.set, ...outcome }
  );
}

/** A stop setting to draw: its letter among several, and the travel to set, as it is written. */
export type DrawnSetting = WrittenSetting;

/** The stop settings, as the card writes them. */
export function readSettings(report: Report, unit: Unit): DrawnSetting[] {
  const settings = writeSettings(report, unit);
  if (settings.length > 1) return settings;
  return settings.map((setting) => ({ ...setting, letter: "", name: "stop setting" }));
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

/** The corners of the rod channel, where the report tells of one. */
export function readChannel(report: Report): Point[] {
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
  const hole = report.holes[index];
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
