/** Where the markers lie between the frets. Lengths in mm; `offset` bass negative, treble positive. */

import type { GroupSpec } from "../design/spec.js";
import { type DesignIssue, issueOf, refused } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { crossingOf, type Point, type Polygon } from "../geometry/polygon.js";
import { valueAt } from "../geometry/track.js";
import type { Frame } from "./board.js";
import { outlineOf } from "./pockets.js";
import { endsOf, type Half, leanOf, lineAt } from "./slot-ends.js";

/** Which part of the board a marker lies on. */
export type Side = "bass" | "centre" | "treble";

/** A hole as it is drilled or routed, wherever it lies. */
export interface DrilledHole {
  readonly group: Pick<GroupSpec, "fill" | "bit">;
  readonly along: number;
  readonly offset: number;
  /** Of a dot; of a pocket its greatest width across the board. */
  readonly diameter: number;
  /** A pocket's corners in order; a dot has none. */
  readonly outline?: Polygon;
}

/** A marker laid out. */
export interface Marker extends DrilledHole {
  readonly group: GroupSpec;
  readonly fret: number;
  readonly side: Side;
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
): { along: number; offset: number } {
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

/** Lays out every marker of the groups: by fret, bass before treble. */
export function layOut(
  board: Frame,
  groups: readonly GroupSpec[],
  issues: DesignIssue[],
): readonly Marker[] {
  const markers: Marker[] = [];
  for (const group of groups) {
    group.frets.forEach((fret, i) => {
      const { bass, treble } = lineAt(board, fret);
      const path = `${group.path.group}.frets.${i}`;
      if (Math.max(bass, treble) <= board.length) {
        markers.push(...markersAt(board, group, fret, path, issues));
      } else {
        const expected = `a fret on the board, which ends ${board.length} mm from the nut; fret ${fret} lies at ${Math.max(bass, treble)} mm`;
        issues.push(issueOf(path, fret, expected));
      }
    });
  }
  return markers.sort((a, b) => a.fret - b.fret || a.offset - b.offset);
}

function markersAt(
  board: Frame,
  group: GroupSpec,
  fret: number,
  path: string,
  issues: DesignIssue[],
): Marker[] {
  const markers: Marker[] = [];
  for (const { side, along, offset } of placesAt(board, group, fret)) {
    const { diameter, shape } = group;
    if (shape === undefined) {
      markers.push({ group, fret, side, along, offset, diameter });
      continue;
    }
    const outline = outlineOf(board, shape, fret, { along, offset });
    if (outline === undefined) {
      issues.push(issueOf(path, fret, "a fret with room for the pocket between its gaps"));
      continue;
    }
    const offsets = outline.map((corner) => corner.offset);
    const across = Math.max(...offsets) - Math.min(...offsets);
    markers.push({ group, fret, side, along, offset, diameter: across, outline });
  }
  return markers;
}

interface Place extends Point {
  readonly side: Side;
}

/** The centres of a group's markers at one fret. */
function placesAt(board: Frame, group: GroupSpec, fret: number): Place[] {
  const middle = group.along === "midpoint" ? midpoint : crossing;
  if (group.arrangement === "single") return [placed("centre", middle(board, fret))];
  if (group.spread === undefined) {
    return [
      placed("bass", middle(board, fret, "bass")),
      placed("treble", middle(board, fret, "treble")),
    ];
  }
  const centre = middle(board, fret);
  const half = group.spread / 2;
  const lean = leanBetween(board, fret);
  return [
    { side: "bass", along: centre.along - lean * half, offset: centre.offset - half },
    { side: "treble", along: centre.along + lean * half, offset: centre.offset + half },
  ];
}

function placed(side: Side, { along, offset }: Point): Place {
  return { side, along, offset };
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
  const before = endsOf(board, lineAt(board, fret - 1), half);
  const after = endsOf(board, lineAt(board, fret), half);
  // the diagonals of a convex quadrilateral always cross
  const point = crossingOf(before.bass, after.treble, before.treble, after.bass);
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
  const leans = [fret - 1, fret].map((n) => leanOf(endsOf(board, lineAt(board, n))));
  return (elementAt(leans, 0) + elementAt(leans, 1)) / 2;
}
