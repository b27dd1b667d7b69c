/**
 * The ground that a hole may cover, its layout error and the crest's included, and the places that its true centre may
 * have. Lengths in mm.
 */
import type { Bore } from "../board/markers.js";
import { discFootprint, type Footprint, outlineFootprint } from "../geometry/footprint.js";
import type { Polygon } from "../geometry/polygon.js";
import { sag } from "../geometry/sagitta.js";
import type { Surface } from "../geometry/surface.js";
import { greatestOver, leastOver, slopesOver } from "../geometry/track.js";

/** The ground that a hole may cover, off by as much as the layout may be. */
export function spreadFootprint(hole: Bore, layout: number): Footprint {
  return hole.outline
    ? outlineFootprint(hole.outline, layout)
    : discFootprint(hole, hole.width / 2 + layout);
}

/** The same, with the crest off to its farther side. */
export function farGround(hole: Bore, layout: number, crest: number): Footprint {
  if (hole.outline) return outlineFootprint(aside(hole.outline, crest), layout);
  const { along, offset } = hole;
  return discFootprint({ along, offset: Math.abs(offset) + crest }, hole.width / 2 + layout);
}

/** The same, with the crest off to its nearer side. */
export function nearGround(hole: Bore, layout: number, crest: number): Footprint {
  if (hole.outline) return outlineFootprint(aside(hole.outline, crest), layout);
  const offset = Math.max(0, Math.abs(hole.offset) - crest);
  return discFootprint({ along: hole.along, offset }, hole.width / 2 + layout);
}

/** Corners moved to either side. */
function aside(outline: Polygon, by: number): Polygon {
  if (by === 0) return outline;
  return [-by, by].flatMap((x) =>
    outline.map(({ along, offset }) => ({ along, offset: offset + x })),
  );
}

/** Some of the places that a hole's true centre may have: a box about them. */
export interface Cell {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
}

/** So narrow that the slope of a radius across it is nothing to a bench, mm. */
const NARROW = 0.05;
const MOST_CELLS = 64;

/** The disc of the layout error, cut into strips along the board. */
export function splitLayout(hole: Bore, layout: number): Cell[] {
  const count = Math.min(MOST_CELLS, Math.max(1, Math.ceil((2 * layout) / NARROW)));
  return Array.from({ length: count }, (_, i) => {
    const [left, right] = [i, i + 1].map((k) => layout * ((2 * k) / count - 1)) as [number, number];
    const inner = Math.max(0, left, -right);
    const half = Math.sqrt(Math.max(0, (layout - inner) * (layout + inner)));
    return boxAbout(hole, half, left, right);
  });
}

export function wholeCell(hole: Bore, layout: number): Cell {
  return boxAbout(hole, layout, -layout, layout);
}

function boxAbout({ along, offset }: Bore, half: number, left: number, right: number): Cell {
  return { from: along - half, to: along + half, left: offset + left, right: offset + right };
}

/** The ground that a hole covers whose centre lies in a cell, the crest to either side by so much. */
export function coverGround(hole: Bore, { from, to, left, right }: Cell, crest: number): Footprint {
  const outline = hole.outline ?? [hole];
  const corners = [from - hole.along, to - hole.along].flatMap((s) =>
    [left - hole.offset - crest, right - hole.offset + crest].flatMap((x) =>
      outline.map(({ along, offset }) => ({ along: along + s, offset: offset + x })),
    ),
  );
  return outlineFootprint(corners, hole.outline ? 0 : hole.width / 2);
}

/** Least drop of an existing radius under the foot, over a cell. */
export function leastDrop(
  { radius }: Surface,
  { from, to, left, right }: Cell,
  foot: number,
): number {
  const near = Math.max(0, Math.max(left, -right, 0) - foot / 2);
  const steepest = slopesOver(radius, from, to).reduce((a, b) => Math.max(a, Math.abs(b)), 0);
  return sag(greatestOver(radius, from, to), near, steepest);
}

/** Greatest drop there. */
export function greatestDrop(
  { radius }: Surface,
  { from, to, left, right }: Cell,
  foot: number,
): number {
  const far = Math.max(0, Math.max(-left, right) - foot / 2);
  const gentlest = slopesOver(radius, from, to).reduce(
    (a, b) => Math.min(a, Math.abs(b)),
    Infinity,
  );
  return sag(leastOver(radius, from, to), far, gentlest);
}
