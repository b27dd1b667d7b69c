/** Where the markers lie. Lengths in mm; `offset` bass negative, treble positive. */
import type { GroupSpec } from "../design/spec.js";
import { type DesignIssue, makeIssue, refused } from "../errors/errors.js";
import { findCrossing, type Point, type Polygon } from "../geometry/polygon.js";
import { valueAt } from "../geometry/track.js";
import type { Frame } from "./board.js";
import type { FretLine } from "./fret-lines.js";
import { cornersAround, measureReach, trapezoidWithin } from "./outlines.js";
import { type Half, lineAt, measureLean, placeEnds } from "./slot-ends.js";

/** Which part of the board a marker lies on. */
export type Side = "bass" | "centre" | "treble";

/** A hole as it is drilled or routed, wherever it lies. */
export interface Bore extends Point {
  /** Across the board: a dot's diameter, or a pocket's greatest width. */
  readonly width: number;
  /** A pocket's corners in order; a dot has none. */
  readonly outline?: Polygon;
}

/** A marker laid out. */
export interface Marker extends Bore {
  readonly group: GroupSpec;
  /** Which hole of the design it is: "markers.1.frets.0", a double's "….bass". */
  readonly path: string;
  /** The fret whose space it lies in: one more than there are slots toward the nut. */
  readonly fret: number;
  readonly side: Side;
  /** Depth of the floor that is meant, or was measured. */
  readonly depth: number | undefined;
  /** Travel that is meant. */
  readonly travel: number | undefined;
}

/**
 * The crossing of the diagonals of the trapezoid between two fret slots, as builders draw an X.
 *
 * From the first slot: along = gap · Wa / (Wa + Wb). It lies nearer the narrow side. A double marker
 * uses each half of the board: the same `along`, offset = Wa · Wb / (2(Wa + Wb)) to either side, a
 * quarter of the harmonic mean of the widths.
 * Source: PlanetMath, "Harmonic mean in trapezoid".
 *
 * @param gap distance between the slots, any length unit; greater than 0
 * @param widthA width of the board at the first slot, same unit; greater than 0
 * @param widthB width at the second slot, same unit; greater than 0
 * @returns `along` from the first slot, and `offset` of each dot of a double from the centre line
 * @throws RangeError where an argument is not a finite number greater than 0
 * @example
 * diagonalCrossing(450, 44, 56).along // 198
 * diagonalCrossing(450, 44, 56).offset // 12.32
 */
export function diagonalCrossing(
  gap: number,
  widthA: number,
  widthB: number,
): {
  /** From the first slot, in the unit given. */
  along: number;
  /** Of each dot of a double from the centre line, in the unit given. */
  offset: number;
} {
  for (const [name, value] of Object.entries({ gap, widthA, widthB })) {
    if (!(Number.isFinite(value) && value > 0)) {
      throw refused(name, value, "a finite length greater than 0");
    }
  }
  return crossingWithin(gap, widthA, widthB);
}

/** The formula itself, unchecked. */
function crossingWithin(gap: number, widthA: number, widthB: number): Point {
  const share = widthA / (widthA + widthB);
  return { along: gap * share, offset: (share * widthB) / 2 };
}

/** Lays out every marker of the groups: by fret, then along the board, bass before treble. */
export function layOut(
  board: Frame,
  groups: readonly GroupSpec[],
  issues: DesignIssue[],
): readonly Marker[] {
  const markers: Marker[] = [];
  for (const group of groups) {
    const own = "places" in group.where ? atPlaces(board, group) : atFrets(board, group, issues);
    markers.push(...own);
  }
  return markers.sort((a, b) => a.fret - b.fret || a.along - b.along || a.offset - b.offset);
}

function atPlaces(board: Frame, group: GroupSpec): Marker[] {
  const places = "places" in group.where ? group.where.places : [];
  return places.map((place, i) => {
    const { along, offset, depth = group.depth } = place;
    const side: Side = offset === 0 ? "centre" : offset < 0 ? "bass" : "treble";
    const path = `${group.path.group}.places.${i}`;
    const travel = place.depth === undefined ? group.travel : undefined;
    const fret = spaceAt(board, place);
    const named = { group, path, fret, side, depth, travel };
    return placeMarker(named, boreAt(group, { along, offset }));
  });
}

/** The fret whose space a point lies in. */
function spaceAt(board: Frame, { along, offset }: Point): number {
  const toward = board.slots.filter((line, fret) => {
    return fret > 0 && line.along + measureLean(placeEnds(board, line)) * offset < along;
  });
  return toward.length + 1;
}

function atFrets(board: Frame, group: GroupSpec, issues: DesignIssue[]): Marker[] {
  const { where } = group;
  if ("places" in where) return [];
  const markers: Marker[] = [];
  where.frets.forEach((fret, i) => {
    if (fret === undefined) return;
    const path = `${group.path.group}.frets.${i}`;
    if (!isWideAt(board, lineAt(board, fret - 1)) || !isWideAt(board, lineAt(board, fret))) {
      issues.push(makeIssue(path, fret, "a fret where the board has a width"));
      return;
    }
    for (const spot of placesAt(board, group, where, fret)) {
      const marker = atFret(board, group, spot, path, fret);
      if (marker) markers.push(marker);
      else issues.push(makeIssue(path, fret, "a fret with room for the pocket between its gaps"));
    }
  });
  return markers;
}

/** A group's marker at a spot; undefined where its pocket has no room. */
function atFret(
  board: Frame,
  group: GroupSpec,
  spot: Spot,
  path: string,
  fret: number,
): Marker | undefined {
  const { depth, travel, shape } = group;
  const bore =
    shape?.kind === "trapezoid"
      ? placeBore(spot, trapezoidWithin(board, shape, fret))
      : boreAt(group, spot);
  const named = { group, path: path + spot.name, fret, side: spot.side, depth, travel };
  return bore && placeMarker(named, bore);
}

/** A marker as a literal, since objects of a known shape are made many times faster than spread ones. */
function placeMarker(
  { group, path, fret, side, depth, travel }: Omit<Marker, keyof Bore>,
  { along, offset, width, outline }: Bore,
): Marker {
  return outline === undefined
    ? { group, path, fret, side, depth, travel, along, offset, width }
    : { group, path, fret, side, depth, travel, along, offset, width, outline };
}

/** The board has a width wherever the line crosses it; beyond its end it might not. */
function isWideAt({ width }: Frame, { along, bass, treble }: FretLine): boolean {
  return valueAt(width, along) > 0 && valueAt(width, bass) > 0 && valueAt(width, treble) > 0;
}

/** A dot, or a pocket whose outline hangs on its centre alone. */
function boreAt({ diameter, shape }: GroupSpec, centre: Point): Bore {
  const { along, offset } = centre;
  if (shape === undefined || shape.kind === "trapezoid")
    return { along, offset, width: diameter ?? 0 };
  return placeBore(centre, cornersAround(shape, centre)) as Bore;
}

function placeBore({ along, offset }: Point, outline: Polygon | undefined): Bore | undefined {
  if (outline === undefined) return undefined;
  const offsets = outline.map((corner) => corner.offset);
  return { along, offset, width: Math.max(...offsets) - Math.min(...offsets), outline };
}

interface Spot extends Point {
  readonly side: Side;
  /** What the hole's path ends with. */
  readonly name: string;
}

type FretsSpec = Exclude<GroupSpec["where"], { readonly places: unknown }>;

/** The centres of a group's markers at one fret. */
function placesAt(board: Frame, group: GroupSpec, where: FretsSpec, fret: number): Spot[] {
  const middle = where.by === "midpoint" ? midpoint : crossing;
  switch (where.arrangement) {
    case "double":
      return where.spread === undefined
        ? HALVES.map((side) => spotAt(middle(board, fret, side), side, `.${side}`))
        : spreadAbout(middle(board, fret), leanBetween(board, fret), where.spread);
    case "lengthwise": {
      const { along } = middle(board, fret);
      const half = where.spread / 2;
      return [
        { side: "centre", name: ".nut", along: along - half, offset: 0 },
        { side: "centre", name: ".end", along: along + half, offset: 0 },
      ];
    }
    case "edge": {
      const { along } = middle(board, fret);
      const reach = measureReach(group, where.side) + where.gap;
      const offset = sideways(valueAt(board.width, along) / 2 - reach, where.side);
      return [{ side: where.side, name: "", along, offset }];
    }
    default:
      return [spotAt(middle(board, fret), "centre", "")];
  }
}

function spotAt({ along, offset }: Point, side: Side, name: string): Spot {
  return { side, name, along, offset };
}

const HALVES = ["bass", "treble"] as const;

/** Two spots as far apart as asked for, on a line that leans as the slots do. */
function spreadAbout(centre: Point, lean: number, spread: number): Spot[] {
  const across = spread / 2 / Math.hypot(1, lean);
  return HALVES.map((side) => {
    const offset = sideways(across, side);
    return {
      side,
      name: `.${side}`,
      along: centre.along + lean * offset,
      offset: centre.offset + offset,
    };
  });
}

/** The crossing of the diagonals between two slots, over the whole board or one half of it. */
function crossing(board: Frame, fret: number, half?: Half): Point {
  if (board.fanned) return fannedCrossing(board, fret, half);
  const from = lineAt(board, fret - 1).along;
  const to = lineAt(board, fret).along;
  const x = crossingWithin(to - from, valueAt(board.width, from), valueAt(board.width, to));
  return { along: from + x.along, offset: sideways(x.offset, half) };
}

function fannedCrossing(board: Frame, fret: number, half?: Half): Point {
  const before = placeEnds(board, lineAt(board, fret - 1), half);
  const after = placeEnds(board, lineAt(board, fret), half);
  // the diagonals of a convex quadrilateral always cross
  const point = findCrossing(before.bass, after.treble, before.treble, after.bass);
  return point ?? { along: Number.NaN, offset: Number.NaN };
}

/** The other habit: midway between the slots; a double a quarter of the width there from the centre. */
function midpoint(board: Frame, fret: number, half?: Half): Point {
  const along = (lineAt(board, fret - 1).along + lineAt(board, fret).along) / 2;
  const offset = sideways(valueAt(board.width, along) / 4, half);
  return { along: along + leanBetween(board, fret) * offset, offset };
}

function sideways(offset: number, half?: Half): number {
  if (half === undefined) return 0;
  return half === "bass" ? -offset : offset;
}

/** How far a line midway between two slots moves along the board per mm across it; 0 for square frets. */
export function leanBetween(board: Frame, fret: number): number {
  const last = board.slots.length - 1;
  const leans = [fret - 1, fret].map((n) =>
    measureLean(placeEnds(board, lineAt(board, Math.min(n, last)))),
  );
  return ((leans[0] as number) + (leans[1] as number)) / 2;
}
