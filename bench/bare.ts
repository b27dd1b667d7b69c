/**
 * The bare arithmetic: plain loops over typed arrays, the formulas written out again. They share nothing with src but
 * the defaults' values. Lengths in mm.
 */
import { FRETS, HOLES, MARKED, type NeckColumns, type SweptColumns } from "./necks.js";

const KEEP = 0.8;
const WEB = 1;
const POINT = 1;
const CROWN = 0.15;
const STOP = 0.1;
const LAYOUT = 0.25;
const THICKNESS = 0.1;
const CROWN_ERROR = 0.05;

/** 1 − 2^(−n/12) for the nut and every fret. */
const SHARE = Float64Array.from({ length: FRETS + 1 }, (_, n) => 1 - 2 ** (-n / 12));

/** The columns of a sweep. */
export interface Rows {
  readonly min: Float64Array;
  readonly max: Float64Array;
  readonly minHole: Int32Array;
  readonly maxHole: Int32Array;
  readonly settings: Int32Array;
}

export function newRows(size: number): Rows {
  return {
    min: new Float64Array(size),
    max: new Float64Array(size),
    minHole: new Int32Array(size),
    maxHole: new Int32Array(size),
    settings: new Int32Array(size),
  };
}

/** Distances of the swept neck's holes from the centre line: 0, and W₁W₂ / (2(W₁ + W₂)) for the doubles. */
const OFFSET = Float64Array.from(MARKED, (fret) => (fret === 12 ? doubleOffset(12) : 0));

function doubleOffset(fret: number): number {
  const width = (n: number) => 43 + (14 * 648 * (SHARE[n] as number)) / 482;
  const [a, b] = [width(fret - 1), width(fret)];
  return (a * b) / (2 * (a + b));
}

/**
 * Common windows, row by row: h = x² / (R + √(R² − x²)) at each hole's outermost reach; min = crown + h + keep +
 * errors; max = thickness − errors − point − web. The holes share the thickness and the bit, so all have one max, and
 * either one setting suits them all or some hole has no depth.
 */
export function bareWindows({ radius, thickness, diameter }: SweptColumns, out: Rows): number {
  const size = radius.length;
  for (let i = 0; i < size; i++) {
    const R = radius[i] as number;
    const double = (diameter[i] as number) / 2 + LAYOUT;
    let min = -Infinity;
    let minHole = -1;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = OFFSET[hole] as number;
      const x = aside === 0 ? SINGLE_REACH : aside + double;
      const h = (x * x) / (R + Math.sqrt(R * R - x * x));
      const least = CROWN + CROWN_ERROR + h + KEEP + STOP;
      if (least > min) {
        min = least;
        minHole = hole;
      }
    }
    const max = (thickness[i] as number) - THICKNESS - STOP - POINT - WEB;
    out.min[i] = min;
    out.max[i] = max;
    out.minHole[i] = minHole;
    out.maxHole[i] = 0;
    out.settings[i] = min <= max ? 1 : 0;
  }
  return size;
}
const SINGLE_REACH = 6.35 / 2 + LAYOUT;

/** The same for a whole grid, with all that does not change taken out of the inner loop by hand. */
export function hoistedWindows(
  radius: ArrayLike<number>,
  thickness: ArrayLike<number>,
  diameter: ArrayLike<number>,
  out: Rows,
): number {
  const least = new Float64Array(diameter.length);
  const holes = new Int32Array(diameter.length);
  let i = 0;
  for (let r = 0; r < radius.length; r++) {
    leastDepths(radius[r] as number, diameter, least, holes);
    for (let t = 0; t < thickness.length; t++) {
      const max = (thickness[t] as number) - THICKNESS - STOP - POINT - WEB;
      for (let d = 0; d < diameter.length; d++, i++) {
        const min = least[d] as number;
        out.min[i] = min;
        out.max[i] = max;
        out.minHole[i] = holes[d] as number;
        out.maxHole[i] = 0;
        out.settings[i] = min <= max ? 1 : 0;
      }
    }
  }
  return i;
}

/** Least depths for one radius and every diameter. */
function leastDepths(
  R: number,
  diameter: ArrayLike<number>,
  least: Float64Array,
  holes: Int32Array,
): void {
  for (let d = 0; d < diameter.length; d++) {
    const double = (diameter[d] as number) / 2 + LAYOUT;
    let min = -Infinity;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = OFFSET[hole] as number;
      const x = aside === 0 ? SINGLE_REACH : aside + double;
      const h = CROWN + CROWN_ERROR + (x * x) / (R + Math.sqrt(R * R - x * x)) + KEEP + STOP;
      if (!(h > min)) continue;
      min = h;
      holes[d] = hole;
    }
    least[d] = min;
  }
}

/** Numbers of one hole, of one edge, and of the stops, as `bareReports` writes them. */
export const HOLE_NUMBERS = 14;
export const EDGE_NUMBERS = 4;
export const STOP_NUMBERS = 10;
export const REPORT_NUMBERS = HOLES * HOLE_NUMBERS + (FRETS + 2) * EDGE_NUMBERS + STOP_NUMBERS;

/** All numbers of a report's holes, edges and stops, one report after the other. */
export function bareReports(columns: NeckColumns, out: Float64Array): number {
  const size = columns.radius.length;
  for (let i = 0; i < size; i++) {
    const at = i * REPORT_NUMBERS;
    writeStops(out, at, writeEdges(columns, i, out, writeHoles(columns, i, out, at)));
  }
  return size;
}

/** Layout, radius, removal and window of each hole. */
function writeHoles(columns: NeckColumns, i: number, out: Float64Array, at: number): number {
  const L = columns.scale[i] as number;
  const nut = columns.nut[i] as number;
  const taper = ((columns.end[i] as number) - nut) / (columns.length[i] as number);
  const R = columns.radius[i] as number;
  const crown = columns.crown[i] as number;
  const thickness = columns.thickness[i] as number;
  const single = columns.single[i] as number;
  const double = columns.double[i] as number;
  let o = at;
  for (let hole = 0; hole < HOLES; hole++) {
    const fret = MARKED[hole] as number;
    const from = L * (SHARE[fret - 1] as number);
    const to = L * (SHARE[fret] as number);
    const [a, b] = [nut + taper * from, nut + taper * to];
    const share = a / (a + b);
    const along = from + (to - from) * share;
    const isDouble = fret === 12;
    const aside = isDouble ? (share * b) / 2 : 0;
    const diameter = isDouble ? double : single;
    const near = Math.max(aside - diameter / 2, 0);
    const far = aside + diameter / 2;
    const reach = far + LAYOUT;
    out[o++] = along;
    out[o++] = hole === 4 ? -aside : aside;
    out[o++] = diameter;
    out[o++] = R;
    out[o++] = 0;
    out[o++] = crown;
    out[o++] = thickness;
    out[o++] = (nut + taper * along) / 2;
    out[o++] = crown + (near * near) / (R + Math.sqrt(R * R - near * near));
    out[o++] = crown + (aside * aside) / (R + Math.sqrt(R * R - aside * aside));
    out[o++] = crown + (far * far) / (R + Math.sqrt(R * R - far * far));
    const worst = (reach * reach) / (R + Math.sqrt(R * R - reach * reach));
    out[o++] = crown + CROWN_ERROR + worst + KEEP + STOP;
    out[o++] = thickness - THICKNESS - STOP - POINT - WEB;
    out[o++] = POINT;
  }
  return o;
}

/** Place, removal and thickness at the nut, each fret and the end. */
function writeEdges(columns: NeckColumns, i: number, out: Float64Array, at: number): number {
  const L = columns.scale[i] as number;
  const nut = columns.nut[i] as number;
  const length = columns.length[i] as number;
  const taper = ((columns.end[i] as number) - nut) / length;
  const R = columns.radius[i] as number;
  let o = at;
  for (let n = 0; n <= FRETS + 1; n++) {
    const along = n > FRETS ? length : L * (SHARE[n] as number);
    const x = (nut + taper * along) / 2;
    const removal = (columns.crown[i] as number) + (x * x) / (R + Math.sqrt(R * R - x * x));
    out[o++] = along;
    out[o++] = x;
    out[o++] = removal;
    out[o++] = (columns.thickness[i] as number) - removal;
  }
  return o;
}

/** The common window, and the one setting that suits all holes. */
function writeStops(out: Float64Array, holes: number, at: number): void {
  let min = -Infinity;
  let max = Infinity;
  let minHole = -1;
  let maxHole = -1;
  for (let hole = 0; hole < HOLES; hole++) {
    const window = holes + hole * HOLE_NUMBERS + 11;
    if ((out[window] as number) > min) {
      min = out[window] as number;
      minHole = hole;
    }
    if ((out[window + 1] as number) < max) {
      max = out[window + 1] as number;
      maxHole = hole;
    }
  }
  const depth = (min + max) / 2;
  out.set([min, max, minHole, maxHole, depth, depth + POINT, min, max, minHole, maxHole], at);
}
