/**
 * The board cut across, square to the centre line, through a hole: heights as depths from the flat top, downward;
 * `offset` bass negative. Lengths in mm of the board, without tolerances.
 */
import { leadBeyond } from "../drilling/bits.js";
import { elementAt } from "../geometry/element-at.js";
import { clipped } from "../geometry/polygon.js";
import { sag } from "../geometry/sagitta.js";
import type { Hole, Report } from "../report/report.js";
import { settingOf } from "./words.js";

/** A place in the cut: offset, depth. */
export type Place = readonly [number, number];

/** A hole as it shows in the cut. */
export interface CutHole {
  readonly hole: Hole;
  readonly index: number;
  /** The rim's depth as drawn, and why so deep. */
  readonly depth: number;
  readonly why: "planned" | "setting" | "least";
  /** Its walls. */
  readonly from: number;
  readonly to: number;
  /** Depth of its floor. */
  readonly floor: (offset: number) => number;
}

/** The board in the cut. */
export interface Cut {
  /** How far from the nut it lies. */
  readonly along: number;
  readonly half: number;
  readonly blank: number;
  readonly main: CutHole;
  /** Every hole in the cut, the main one too. */
  readonly holes: readonly CutHole[];
  /** Half the rod channel's width and the depth of its roof, where the cut goes through it. */
  readonly channel: { readonly half: number; readonly roof: number } | undefined;
  /** Depth of the finished surface. */
  readonly surface: (offset: number) => number;
}

/** The cut through a hole. */
export function cutAt(report: Report, index: number): Cut | undefined {
  const hole = report.holes[index];
  if (hole === undefined) return undefined;
  const { halfWidth: half, blank, slope, crown } = hole;
  const along = middleOf(hole);
  const holes = report.holes.flatMap((other, i) => cutHole(report, other, i, along) ?? []);
  // the cut goes through its own hole
  const main = holes.find((other) => other.index === index) as CutHole;
  const { radius } = main.hole;
  const surface = (offset: number) => crown + sag(radius, Math.abs(offset), slope);
  return {
    along,
    half,
    blank,
    main,
    holes,
    channel: channelAt(report, along, half, blank),
    surface,
  };
}

/** Where a hole is cut: at its centre. A narrow pocket may lie beside the crossing that it is laid out by. */
function middleOf({ along, outline }: Hole): number {
  if (outline === undefined) return along;
  const alongs = outline.map((corner) => corner.along);
  const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
  return from < along && along < to ? along : (from + to) / 2;
}

function channelAt({ board: { channel } }: Report, along: number, half: number, blank: number) {
  if (channel === undefined || along < channel.from || along > channel.to) return undefined;
  return { half: Math.min(half, channel.width / 2), roof: blank - channel.depth };
}

function cutHole(report: Report, hole: Hole, index: number, along: number): CutHole | undefined {
  const walls = wallsAt(hole, along);
  if (walls === undefined) return undefined;
  const [depth, why] = depthOf(report, hole, index);
  const apart = hole.along - along;
  const floor = (offset: number) =>
    depth + leadDrawn(hole, Math.hypot(apart, offset - hole.offset));
  const [from, to] = walls;
  return { hole: { ...hole, radius: radiusOf(hole) }, index, depth, why, from, to, floor };
}

/** The finished radius; a report's JSON text has no word for Infinity, and gives a flat board's as null. */
function radiusOf({ radius }: { readonly radius: number | null }): number {
  return radius ?? Infinity;
}

/** Where the cut meets the hole's walls: a chord of the disc, or of the outline. */
function wallsAt({ along, offset, diameter, outline }: Hole, at: number): Place | undefined {
  if (outline) {
    const offsets = clipped(outline, at, at).map((corner) => corner.offset);
    return offsets.length > 1 ? [Math.min(...offsets), Math.max(...offsets)] : undefined;
  }
  // half a chord at distance d from the centre: √(r² − d²)
  const square = (diameter / 2 + along - at) * (diameter / 2 - along + at);
  return square > 0 ? [offset - Math.sqrt(square), offset + Math.sqrt(square)] : undefined;
}

/** The planned depth, or that of the setting that serves the hole, or the least that would keep its marker. */
function depthOf(report: Report, hole: Hole, index: number): [number, CutHole["why"]] {
  if (hole.planned) return [hole.planned.depth, "planned"];
  const served = settingOf(report, index);
  if (served) return [served.setting.depth, "setting"];
  return [hole.window.min, "least"];
}

/** Half the width at which a point is drawn, at most: the check takes it to stand on the axis alone. */
const POINT_HALF = 0.6;

/** Half the width at which the hole's point is drawn. */
export function pointHalf({ diameter }: Hole): number {
  return Math.min(POINT_HALF, diameter / 8);
}

/** How far the bit leads its rim at a distance from its axis, as drawn. */
function leadDrawn(hole: Hole, distance: number): number {
  const { bit, diameter } = hole;
  if (bit.kind === "forstner" || bit.kind === "brad-point") {
    return bit.point * Math.max(0, 1 - distance / pointHalf(hole));
  }
  return leadBeyond(bit, diameter, distance) ?? 0;
}

const SAMPLES = 48;

/** The top of what is left of the wood, bass to treble: the finished surface, and the floors of the holes in it. */
export function woodTop(cut: Cut): Place[] {
  const walls = breaks(
    cut,
    cut.holes.flatMap(({ from, to }) => [from, to]),
  );
  return walls.slice(1).flatMap((end, i) => {
    const start = elementAt(walls, i);
    const middle = (start + end) / 2;
    const over = cut.holes.filter(({ from, to }) => from < middle && middle < to);
    return samplesBetween(cut, start, end).map((offset): Place => {
      const floors = over.map(({ floor }) => floor(offset));
      const top = Math.max(cut.surface(offset), ...floors);
      return [offset, Math.min(top, undersideAt(cut, (offset + middle) / 2))];
    });
  });
}

/** The underside, treble to bass, with the rod channel. */
export function underside({ half, blank, channel }: Cut): Place[] {
  const bottom: Place[] = [
    [half, blank],
    [-half, blank],
  ];
  if (channel === undefined) return bottom;
  const { half: side, roof } = channel;
  const notch: Place[] = [
    [side, blank],
    [side, roof],
    [-side, roof],
    [-side, blank],
  ];
  return [...bottom.slice(0, 1), ...notch, ...bottom.slice(1)];
}

/** Depth of the underside: the board's, or the channel's roof, its sides included. */
function undersideAt({ blank, channel }: Cut, offset: number): number {
  return channel && Math.abs(offset) <= channel.half ? channel.roof : blank;
}

/** The finished surface, bass to treble. */
export function finishedTop(cut: Cut): Place[] {
  return samplesBetween(cut, -cut.half, cut.half).map((offset) => [offset, cut.surface(offset)]);
}

/** What fills a hole once the board is finished; undefined where nothing of it is left. */
export function filling(cut: Cut, { hole, from, to, depth, floor }: CutHole): Place[] | undefined {
  const [start, end] = [Math.max(from, -cut.half), Math.min(to, cut.half)];
  if (!(start < end)) return undefined;
  const { fill } = hole;
  const glued = fill.kind === "solid" ? depth - fill.thickness : -Infinity;
  const offsets = samplesBetween(cut, start, end);
  const tops = offsets.map((offset) => Math.max(glued, cut.surface(offset)));
  // a solid dot ends at the rim; what is poured runs down into the point's hole
  const bottoms = offsets.map((offset, i) => {
    const bottom = fill.kind === "solid" ? depth : floor(offset);
    return Math.max(elementAt(tops, i), Math.min(bottom, undersideAt(cut, offset)));
  });
  if (offsets.every((_, i) => elementAt(bottoms, i) <= elementAt(tops, i))) return undefined;
  const top = offsets.map((offset, i): Place => [offset, elementAt(tops, i)]);
  const bottom = offsets.map((offset, i): Place => [offset, elementAt(bottoms, i)]);
  return [...top, ...bottom.reverse()];
}

/** The bit at the bottom of its travel: up to the flat top, its rim, and what leads it. */
export function bitProfile({ hole, from, to, depth, floor }: CutHole): Place[] {
  const lead = [-pointHalf(hole), 0, pointHalf(hole)]
    .map((aside) => hole.offset + aside)
    .filter((offset) => from < offset && offset < to)
    .map((offset): Place => [offset, floor(offset)]);
  return [[from, 0], [from, depth], ...lead, [to, depth], [to, 0]];
}

/** Wood left under the bit as drawn: the least, straight down. Negative where it goes through. */
export function woodUnder(cut: Cut): number {
  const { from, to, floor } = cut.main;
  const offsets = samplesBetween(cut, Math.max(from, -cut.half), Math.min(to, cut.half));
  return Math.min(...offsets.map((offset) => undersideAt(cut, offset) - floor(offset)));
}

/** Marker left above the rim as drawn: the least. Negative where it is sanded away. */
export function markerLeft({ main, half, surface }: Cut): number {
  const ends = [main.from, main.to].map((offset) => Math.min(half, Math.abs(offset)));
  return main.depth - Math.max(...ends.map(surface));
}

/** Offsets at which something may bend or jump, from edge to edge. */
function breaks(cut: Cut, walls: readonly number[]): number[] {
  const { half, channel } = cut;
  const sides = channel ? [-channel.half, channel.half] : [];
  const within = [...walls, ...sides].filter((offset) => Math.abs(offset) < half);
  return [...new Set([-half, ...within, half])].sort((a, b) => a - b);
}

/** Close offsets from one to another, and those at which a bit's point or cone bends. */
function samplesBetween(cut: Cut, start: number, end: number): number[] {
  const even = Array.from({ length: SAMPLES + 1 }, (_, i) => {
    return i === SAMPLES ? end : start + ((end - start) * i) / SAMPLES;
  });
  const bends = cut.holes.flatMap(({ hole }) => {
    return [-pointHalf(hole), 0, pointHalf(hole)].map((aside) => hole.offset + aside);
  });
  const sides = cut.channel ? [-cut.channel.half, cut.channel.half] : [];
  const within = [...bends, ...sides].filter((offset) => start < offset && offset < end);
  return [...new Set([...even, ...within])].sort((a, b) => a - b);
}
