/**
 * A true surface over a hole, in sheets on which sanding and radius are linear along the board, and its true extremes over
 * the hole. On a sheet the surface is a convex function of the place, so it is deepest at the hole's rim or at a corner.
 * Lengths in mm, heights downward.
 */
import { lowestBetween } from "../geometry/lowest-between.js";
import { clipped, type Point, type Polygon } from "../geometry/polygon.js";
import { rootOf, sag } from "../geometry/sagitta.js";
import {
  radiusAt,
  radiusSlopeOf,
  type Surface,
  sandingAt,
  sandingSlopeOf,
  splitSurface,
} from "../geometry/surface.js";

/** A surface from one place along the board to another: at `from` it is sanded by S and has the radius R. */
export interface Sheet {
  readonly from: number;
  readonly to: number;
  readonly S: number;
  readonly slope: number;
  readonly R: number;
  readonly m: number;
  /** Offset of its crest. */
  readonly crest: number;
}

/** What a hole covers: a disc, or a pocket's outline. */
export type Ground =
  | { readonly along: number; readonly offset: number; readonly reach: number }
  | { readonly outline: Polygon };

export function splitSheets(surface: Surface, from: number, to: number, crest: number): Sheet[] {
  return splitSurface(surface, from, to).map((piece) => ({
    from: piece.from,
    to: piece.to,
    S: sandingAt(piece, piece.from),
    slope: sandingSlopeOf(piece),
    R: radiusAt(piece, piece.from),
    m: radiusSlopeOf(piece),
    crest,
  }));
}

export function isLevelSheet({ slope, m }: Sheet): boolean {
  return slope === 0 && m === 0;
}

/** Height at a place; `Infinity` where the surface does not reach it. */
export function heightOn({ from, S, slope, R, m, crest }: Sheet, along: number, offset: number) {
  const on = along - from;
  return S + slope * on + sag(R + m * on, Math.abs(offset - crest), m);
}

/** Where a surface lies deepest over a hole. */
export function deepestOver(sheets: readonly Sheet[], ground: Ground): number {
  let deepest = -Infinity;
  for (const sheet of sheets) {
    const here =
      "outline" in ground
        ? deepestAtCorners(sheet, ground.outline, sheets.length > 1)
        : deepestOnDisc(sheet, ground, sheets.length > 1);
    if (here > deepest) deepest = here;
  }
  return deepest;
}

function deepestAtCorners(sheet: Sheet, outline: Polygon, isOneOfMany: boolean): number {
  const corners = isOneOfMany ? clipped(outline, sheet.from, sheet.to) : outline;
  let deepest = -Infinity;
  for (const { along, offset } of corners) {
    deepest = Math.max(deepest, heightOn(sheet, along, offset));
  }
  return deepest;
}

interface Disc extends Point {
  readonly reach: number;
}

const STEPS = 30;

/**
 * On the outer half of the rim, going each time to where the surface's own slope there points: on a convex surface each
 * step goes up. The other half is nearer the crest all over.
 */
function deepestOnDisc(sheet: Sheet, disc: Disc, isOneOfMany: boolean): number {
  const { along, offset, reach } = disc;
  const { crest, m, slope } = sheet;
  const aside = Math.abs(offset - crest);
  // as a part of the reach, where the sheet begins and ends
  const least = isOneOfMany ? Math.max(-1, (sheet.from - along) / reach) : -1;
  const most = isOneOfMany ? Math.min(1, (sheet.to - along) / reach) : 1;
  if (!(least <= most)) return -Infinity;
  let sine = Math.min(most, Math.max(least, 0));
  for (let i = 0; i < STEPS && !isLevelSheet(sheet); i++) {
    const on = along + reach * sine - sheet.from;
    const x = aside + reach * Math.sqrt((1 - sine) * (1 + sine));
    const R = sheet.R + m * on;
    if (R === Infinity && slope === 0) break;
    const root = rootOf(R, x, m);
    if (!(root > 0 && R > 0)) return Infinity;
    const [up, out] = R === Infinity ? [slope, 0] : [slope - (m * sag(R, x, m)) / root, x / root];
    const next = Math.min(most, Math.max(least, up / Math.hypot(up, out)));
    // the height misses the square of that
    const isThere = Math.abs(next - sine) < 1e-5;
    sine = next;
    if (isThere) break;
  }
  const x = aside + reach * Math.sqrt((1 - sine) * (1 + sine));
  return heightOn(sheet, along + reach * sine, crest + x);
}

/** Where a surface lies least deep over a hole; of two, the deeper one counts at each place. */
export function shallowestOver(
  sheets: readonly Sheet[],
  old: readonly Sheet[] | undefined,
  ground: Ground,
): number {
  const [from, to] = findStretch(ground);
  const slice = sliceGround(ground);
  let shallowest = Infinity;
  for (const sheet of sheets) {
    for (const other of old ?? [undefined]) {
      const start = Math.max(from, sheet.from, other?.from ?? -Infinity);
      const end = Math.min(to, sheet.to, other?.to ?? Infinity);
      if (!(start <= end)) continue;
      const at = (s: number) => shallowestAcross(sheet, other, s, ...slice(s));
      const isEven = isLevelSheet(sheet) && (other === undefined || isLevelSheet(other));
      const middle = Math.min(end, Math.max(start, (from + to) / 2));
      // on an even sheet a disc's widest chord has all that the others have
      const here = isEven && !("outline" in ground) ? at(middle) : seekLeast(at, start, end);
      shallowest = Math.min(shallowest, here);
    }
  }
  return shallowest;
}

/** Across the board at one place, between two offsets. */
function shallowestAcross(
  sheet: Sheet,
  old: Sheet | undefined,
  along: number,
  left: number,
  right: number,
): number {
  const near = (crest: number) => Math.min(right, Math.max(left, crest));
  const mine = heightOn(sheet, along, near(sheet.crest));
  if (old === undefined) return mine;
  if (heightOn(old, along, near(sheet.crest)) <= mine) return mine;
  const other = heightOn(old, along, near(old.crest));
  if (heightOn(sheet, along, near(old.crest)) <= other) return other;
  const both = (x: number) => Math.max(heightOn(sheet, along, x), heightOn(old, along, x));
  return seekLeast(both, left, right);
}

function findStretch(ground: Ground): readonly [number, number] {
  if (!("outline" in ground)) {
    return [ground.along - ground.reach, ground.along + ground.reach];
  }
  const alongs = ground.outline.map(({ along }) => along);
  return [Math.min(...alongs), Math.max(...alongs)];
}

/** What a hole covers across the board at a place along it. */
function sliceGround(ground: Ground): (s: number) => readonly [number, number] {
  if ("outline" in ground) return (s) => outlineSlice(ground.outline, s);
  const { along, offset, reach } = ground;
  return (s) => {
    const half = Math.sqrt(Math.max(0, (reach - s + along) * (reach + s - along)));
    return [offset - half, offset + half];
  };
}

function outlineSlice(outline: Polygon, s: number): readonly [number, number] {
  let [left, right] = [Infinity, -Infinity];
  let before = outline.at(-1) as Point;
  for (const here of outline) {
    const [low, high] = before.along < here.along ? [before, here] : [here, before];
    if (low.along <= s && s <= high.along) {
      const span = high.along - low.along;
      const share = span > 0 ? (s - low.along) / span : 0;
      const x = low.offset + share * (high.offset - low.offset);
      left = Math.min(left, x, span > 0 ? x : high.offset);
      right = Math.max(right, x, span > 0 ? x : high.offset);
    }
    before = here;
  }
  return [left, right];
}

const SECTIONS = 40;

/** The least of a convex function, its ends included. */
export function seekLeast(f: (x: number) => number, from: number, to: number): number {
  return Math.min(f(lowestBetween(f, from, to, SECTIONS)), f(from), f(to));
}
