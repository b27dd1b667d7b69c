/**
 * The common window by a solid modeller: each hole's ground as a column, less the body of the finished board; the
 * lowest place of what is left tells the greatest removal. Axes: x along, y offset, z up from the flat top.
 */
import Module, { type Manifold as Solid, type Vec2 } from "manifold-3d";
import type { Rows } from "./bare.js";
import { HOLES, type SweptColumns } from "./necks.js";

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;

/** Chords of the finished surface, mm, and sides of a hole: within this the modeller's answers lie, mm. */
const CHORD = 0.5;
const SIDES = 64;
export const SOLID_ERROR = 0.01;

/** The first `count` rows; `places` and `offsets` are the holes' centres. */
export function solidWindows(
  columns: SweptColumns,
  places: ArrayLike<number>,
  offsets: ArrayLike<number>,
  count: number,
  out: Rows,
): number {
  for (let i = 0; i < count; i++) {
    const board = boardOf(columns.nut[i] as number, 0.15 + 0.05);
    const single = columnOf(6.35 / 2 + 0.25);
    const double = columnOf((columns.diameter[i] as number) / 2 + 0.25);
    out.min[i] = -Infinity;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = offsets[hole] as number;
      const ground = aside === 0 ? single : double;
      // the crest may lie half a millimetre to the farther side
      const farther = aside < 0 ? aside - 0.5 : aside + 0.5;
      const lowest = lowestAbove(board, ground, places[hole] as number, farther);
      const least = lowest + 0.8 + 0.1 + 0.1 + 1;
      if (!(least > (out.min[i] as number) + 1e-9)) continue;
      out.min[i] = least;
      out.minHole[i] = hole;
    }
    for (const solid of [board, single, double]) solid.delete();
    out.max[i] = (columns.thickness[i] as number) - 0.1 - 0.1 - 1;
    out.maxHole[i] = 0;
    out.settings[i] = (out.min[i] as number) <= (out.max[i] as number) ? 1 : 0;
  }
  return count;
}

function lowestAbove(board: Solid, ground: Solid, along: number, offset: number): number {
  const column = ground.translate(along, offset, 0);
  const above = column.subtract(board);
  const depth = -above.boundingBox().min[2];
  column.delete();
  above.delete();
  return depth;
}

/** A column from 10 mm below the flat top to 1 mm above it. */
function columnOf(radius: number): Solid {
  return Manifold.cylinder(11, radius, radius, SIDES).translate(0, 0, -10);
}

/** Everything under the finished surface, 500 mm long and 60 mm wide. */
function boardOf(R: number, sanding: number): Solid {
  const half = Math.asin(30 / R);
  const count = Math.ceil((2 * half * R) / CHORD);
  const arc = Array.from({ length: count + 1 }, (_, i): Vec2 => {
    const angle = -half + (2 * half * i) / count;
    return [R * Math.sin(angle), R * Math.cos(angle) - R - sanding];
  });
  const outline: Vec2[] = [[-30, -20], [30, -20], ...arc.reverse()];
  // drawn in y and z, drawn out along x
  const matrix = [0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1] as const;
  const prism = Manifold.extrude([outline], 500);
  const placed = prism.transform([...matrix]);
  prism.delete();
  return placed;
}
