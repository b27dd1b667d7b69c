/** Where the markers lie between the frets. Lengths in mm; `offset` bass negative, treble positive. */
import type { Board } from "./board.js";
import type { DesignIssue } from "./errors.js";
import { issueOf } from "./errors.js";
import type { GroupSpec } from "./read.js";
import { knot, valueAt } from "./track.js";

/** Which part of the board a marker lies on. */
export type Side = "bass" | "centre" | "treble";

/** A marker laid out. */
export interface Marker {
  readonly group: GroupSpec;
  readonly fret: number;
  readonly side: Side;
  readonly along: number;
  readonly offset: number;
  readonly diameter: number;
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
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`${name}: expected a finite length greater than 0, received ${value}`);
    }
  }
  const share = widthA / (widthA + widthB);
  return { along: gap * share, offset: (share * widthB) / 2 };
}

/** Lays out every marker of the groups: by fret, bass before treble. */
export function layOut(
  board: Board,
  groups: readonly GroupSpec[],
  issues: DesignIssue[],
): readonly Marker[] {
  const markers: Marker[] = [];
  for (const group of groups) {
    group.frets.forEach((fret, i) => {
      const slot = knot(board.slots, fret);
      if (slot <= board.length) markers.push(...markersAt(board, group, fret));
      else {
        const expected = `a fret on the board, which ends ${board.length} mm from the nut; fret ${fret} lies at ${slot} mm`;
        issues.push(issueOf(`markers.${group.index}.frets.${i}`, fret, expected));
      }
    });
  }
  return markers.sort((a, b) => a.fret - b.fret || a.offset - b.offset);
}

function markersAt(board: Board, group: GroupSpec, fret: number): Marker[] {
  const place = group.along === "midpoint" ? midpoint(board, fret) : crossing(board, fret);
  const { along } = place;
  const { diameter } = group;
  if (group.arrangement === "single") {
    return [{ group, fret, side: "centre", along, offset: 0, diameter }];
  }
  const offset = group.spread === undefined ? place.offset : group.spread / 2;
  return [
    { group, fret, side: "bass", along, offset: -offset, diameter },
    { group, fret, side: "treble", along, offset, diameter },
  ];
}

function crossing(board: Board, fret: number): { along: number; offset: number } {
  const from = knot(board.slots, fret - 1);
  const to = knot(board.slots, fret);
  const x = diagonalCrossing(to - from, valueAt(board.width, from), valueAt(board.width, to));
  return { along: from + x.along, offset: x.offset };
}

/** The other habit: midway between the slots; a double a quarter of the width there from the centre. */
function midpoint(board: Board, fret: number): { along: number; offset: number } {
  const along = (knot(board.slots, fret - 1) + knot(board.slots, fret)) / 2;
  return { along, offset: valueAt(board.width, along) / 4 };
}
