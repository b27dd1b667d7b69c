/**
 * Shapes in a cut across the board: the wood, the holes in it and what fills them, as designed. A place is an offset,
 * bass negative, and a depth below the plane through the crest of the top. Lengths in mm of the board.
 */
import { clipped } from "../geometry/polygon.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { type DrawnCut, type DrawnHole, readCut, readHoles } from "./reading.js";

/** A place in the cut: offset, depth. */
export type Place = readonly [number, number];

/** A hole as it shows in the cut. */
export type CutHole = NonNullable<ReturnType<typeof cutHole>>;

/** The board and its holes in the cut; the main one is that through which it was asked for. */
export type Cut = NonNullable<ReturnType<typeof cutThrough>>;

/** The cut through a hole; undefined where there is no such hole. */
export function cutThrough(report: Report, index: number, unit: Unit) {
  const board = readCut(report, index);
  if (board === undefined) return undefined;
  const cut = readHoles(report, unit).map((hole) => cutHole(hole, board));
  const holes = cut.filter((hole) => hole !== undefined);
  // the cut goes through its own hole
  const main = cut[index] as CutHole;
  const tips = holes.map(({ start, depth, lead, spur }) => start + depth + Math.max(lead, spur));
  /** The lowest that is drawn; a window may go on into a neck that the report does not tell of. */
  const lowest = Math.max(board.thickness + board.neck, main.start + main.window.min, ...tips);
  return { ...board, holes, main, lowest, offsets: chooseOffsets(board, holes) };
}

/** Half the widths at which a point and a spur are drawn, at most: the check takes them to have none. */
const [POINT, SPUR] = [0.6, 0.5];

function cutHole(hole: DrawnHole, { along, top }: DrawnCut) {
  const walls = findWalls(hole, along);
  if (walls === undefined) return undefined;
  const { width, lead, offset, planned, setting, window, spur } = hole;
  const [radius, rim] = [width / 2, Math.min(SPUR, width / 8)];
  const tip = hole.cone ? radius : Math.min(POINT, width / 8);
  const { depth } = planned ?? setting ?? { depth: window.min };
  // depths count from the top at the hole's centre
  const from = top(offset);
  return {
    ...hole,
    /** Depth of the top at the hole's centre, and of the floor as drawn: the planned one, its setting's, or the least. */
    start: from,
    depth,
    walls,
    /** Half the widths of the bit's tip and of its spurs as drawn. */
    tip,
    rim,
    /** How deep it is between its walls. */
    bottom: (at: number) => {
      const distance = Math.hypot(hole.along - along, at - offset);
      const point = lead * Math.max(0, 1 - distance / tip);
      return from + depth + Math.max(point, spur * Math.max(0, 1 - (radius - distance) / rim));
    },
  };
}

/** Where the cut meets the hole's walls: a chord of the disc, or of the outline. */
function findWalls({ along, offset, width, outline }: DrawnHole, at: number): Place | undefined {
  if (outline) {
    const offsets = clipped(outline, at, at).map((corner) => corner.offset);
    return offsets.length > 1 ? [Math.min(...offsets), Math.max(...offsets)] : undefined;
  }
  // half a chord at distance d from the centre: √(r² − d²)
  const half = Math.sqrt((width / 2 + along - at) * (width / 2 - along + at));
  return half > 0 ? [offset - half, offset + half] : undefined;
}

/** Even steps from edge to edge. */
const SAMPLES = 96;
/** How far to either side of a jump a shape is worked out: nothing on paper. */
const HAIR = 1e-6;

/** Offsets at which shapes are worked out: close to each other, and on both sides of each jump. */
function chooseOffsets({ half, channel }: DrawnCut, holes: readonly CutHole[]): number[] {
  const even = Array.from({ length: SAMPLES + 1 }, (_, i) => half * ((2 * i) / SAMPLES - 1));
  const sides = channel ? [-channel.half, channel.half] : [];
  const jumps = [...holes.flatMap(({ walls }) => walls), ...sides];
  const around = jumps.flatMap((offset) => [offset - HAIR, offset, offset + HAIR]);
  const within = [...even, ...holes.flatMap(bends), ...around];
  return within.filter((offset) => Math.abs(offset) <= half).sort((a, b) => a - b);
}

/** Offsets at which a hole's bottom bends. */
function bends({ offset, tip, rim, walls: [from, to] }: CutHole): number[] {
  const all = [from + rim, offset - tip, offset, offset + tip, to - rim];
  return all.filter((at) => from < at && at < to).sort((a, b) => a - b);
}

/** Depth of the underside: the neck's or the board's, or the channel's roof. */
function undersideAt({ thickness, neck, channel }: Cut, offset: number): number {
  return channel && Math.abs(offset) <= channel.half ? channel.roof : thickness + neck;
}

/** The finished surface, bass to treble. */
export function traceSurface({ offsets, surface }: Cut): Place[] {
  return offsets.map((offset) => [offset, surface(offset)]);
}

/** The top as it is and its edges down to the finished surface, bass to treble. */
export function traceTop({ offsets, half, curved, top, surface }: Cut): Place[] {
  const over = curved ? offsets : [-half, half];
  const edge = surface(half);
  return [[-half, edge], ...over.map((offset): Place => [offset, top(offset)]), [half, edge]];
}

/** The wood that is left, all around. */
export function traceWood(cut: Cut): Place[] {
  return traceAround(cut.offsets, (offset) => {
    const over = cut.holes.filter(({ walls: [from, to] }) => from < offset && offset < to);
    const bottoms = over.map(({ bottom }) => bottom(offset));
    return [Math.max(cut.surface(offset), ...bottoms), undersideAt(cut, offset)];
  });
}

/** What fills a hole once the board is finished. */
export function traceFilling(cut: Cut, { walls: [from, to], start, depth, dot, bottom }: CutHole) {
  const within = cut.offsets.filter((offset) => from <= offset && offset <= to);
  return traceAround(within, (offset) => {
    const top = Math.max(cut.surface(offset), start + depth - (dot ?? Infinity));
    // a solid dot ends at the floor; what is poured runs down into the point's hole
    const foot = dot === undefined ? bottom(offset) : start + depth;
    return [top, Math.max(top, Math.min(foot, undersideAt(cut, offset)))];
  });
}

/** Around what lies between a top and a bottom, the top no deeper than the bottom. */
function traceAround(
  offsets: readonly number[],
  bounds: (offset: number) => readonly [top: number, bottom: number],
): Place[] {
  const columns = offsets.map((offset) => [offset, ...bounds(offset)] as const);
  const tops = columns.map(([at, top, bottom]): Place => [at, Math.min(top, bottom)]);
  return [...tops, ...columns.map(([at, , bottom]): Place => [at, bottom]).reverse()];
}

/** The bit at the bottom of its travel, from the top down, around its tip, and up again. */
export function traceBit(hole: CutHole): Place[] {
  const { walls, start, bottom } = hole;
  const [from, to] = walls;
  const floor = [from, ...bends(hole), to].map((at): Place => [at, bottom(at)]);
  return [[from, start], ...floor, [to, start]];
}
