/**
 * The bare arithmetic: plain loops over typed arrays, the formulas written out again. They share nothing with src but
 * the defaults' values. Lengths in mm.
 */
import { FRETS, HOLES, MARKED, type NeckColumns, type SweptColumns } from "./necks.js";

const KEEP = 0.8;
const WEB = 1;
const POINT = 1;
const SANDING = 0.15;
const STOP = 0.1;
const POINT_ERROR = 0.1;
const LAYOUT = 0.25;
const CREST = 0.5;
const THICKNESS = 0.1;
const SANDING_ERROR = 0.05;
const WASTE = 0.5;

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

const LENGTH = 482;
/** The swept neck's holes: where each lies along the board, and how far from the centre line. */
const ALONG = Float64Array.from(MARKED, (fret) => crossing(fret).along);
const OFFSET = Float64Array.from(MARKED, (fret) => (fret === 12 ? crossing(fret).aside : 0));

/** From the slot before, gap · Wa / (Wa + Wb); a double's dots lie Wa · Wb / (2(Wa + Wb)) aside. */
function crossing(fret: number) {
  const [from, to] = [fret - 1, fret].map((n) => 648 * (SHARE[n] as number)) as [number, number];
  const [a, b] = [from, to].map((s) => 43 + (14 * s) / LENGTH) as [number, number];
  return { along: from + ((to - from) * a) / (a + b), aside: (a * b) / (2 * (a + b)) };
}

/**
 * Common travels, row by row: at each hole's outermost reach h = x² / (R + √(R² − (1 − m²)x²)), on a cone the greater of
 * those at both ends of the hole, which bound it safely; min = sanding + h + keep + errors + point; max = thickness −
 * errors − web. The holes share the thickness and the bit, so all have one max, and either one setting suits them all or
 * some hole has no depth.
 */
export function bareWindows({ nut, end, thickness, diameter }: SweptColumns, out: Rows): number {
  const size = nut.length;
  for (let i = 0; i < size; i++) {
    const R = nut[i] as number;
    const m = ((end[i] as number) - R) / LENGTH;
    const double = (diameter[i] as number) / 2 + LAYOUT;
    let min = -Infinity;
    let minHole = -1;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = OFFSET[hole] as number;
      const reach = aside === 0 ? SINGLE_REACH : double;
      const x = aside + CREST + reach;
      const along = ALONG[hole] as number;
      let h = dropOf(R + m * (along - reach), m, x);
      if (m !== 0) {
        const other = dropOf(R + m * (along + reach), m, x);
        if (other > h) h = other;
      }
      const least = SANDING + SANDING_ERROR + h + KEEP + STOP + POINT_ERROR + POINT;
      if (least > min) {
        min = least;
        minHole = hole;
      }
    }
    const max = (thickness[i] as number) - THICKNESS - STOP - WEB;
    out.min[i] = min;
    out.max[i] = max;
    out.minHole[i] = minHole;
    out.maxHole[i] = 0;
    out.settings[i] = min <= max ? 1 : 0;
  }
  return size;
}
const SINGLE_REACH = 6.35 / 2 + LAYOUT;

function dropOf(R: number, m: number, x: number): number {
  return (x * x) / (R + Math.sqrt(R * R - (1 - m * m) * x * x));
}

/** The same for a whole grid of one radius, with all that does not change taken out of the inner loop by hand. */
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
    leastTravels(radius[r] as number, diameter, least, holes);
    for (let t = 0; t < thickness.length; t++) {
      const max = (thickness[t] as number) - THICKNESS - STOP - WEB;
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

/** Least travels for one radius and every diameter. */
function leastTravels(
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
      const x = aside + CREST + (aside === 0 ? SINGLE_REACH : double);
      const h = dropOf(R, 0, x);
      const travel = SANDING + SANDING_ERROR + h + KEEP + STOP + POINT_ERROR + POINT;
      if (!(travel > min)) continue;
      min = travel;
      holes[d] = hole;
    }
    least[d] = min;
  }
}

/** Numbers of one hole, of one edge, and of the stops and the epoxy, as `bareReports` writes them. */
export const HOLE_NUMBERS = 17;
export const EDGE_NUMBERS = 4;
export const STOP_NUMBERS = 12;
export const REPORT_NUMBERS = HOLES * HOLE_NUMBERS + (FRETS + 2) * EDGE_NUMBERS + STOP_NUMBERS;

/** All numbers of a report's holes, edges, stops and epoxy, one report after the other; frets are placed in each. */
export function bareReports(columns: NeckColumns, out: Float64Array): number {
  const size = columns.radius.length;
  for (let i = 0; i < size; i++) {
    const L = columns.scale[i] as number;
    for (let n = 0; n <= FRETS; n++) SLOTS[n] = L * (1 - 2 ** (-n / 12));
    const at = i * REPORT_NUMBERS;
    writeStops(out, at, writeEdges(columns, i, out, writeHoles(columns, i, out, at)));
  }
  return size;
}
/** The nut and the frets of the neck at hand. */
const SLOTS = new Float64Array(FRETS + 1);

/** Where a window, and what the setting leaves, stand among a hole's numbers. */
const WINDOW = 9;
const LEFT = 13;

/** Layout, radius, removal, window, and room for what the setting leaves, of each hole. */
function writeHoles(columns: NeckColumns, i: number, out: Float64Array, at: number): number {
  const nut = columns.nut[i] as number;
  const taper = ((columns.end[i] as number) - nut) / (columns.length[i] as number);
  const R = columns.radius[i] as number;
  const sanding = columns.sanding[i] as number;
  const thickness = columns.thickness[i] as number;
  const single = columns.single[i] as number;
  const double = columns.double[i] as number;
  let o = at;
  for (let hole = 0; hole < HOLES; hole++) {
    const fret = MARKED[hole] as number;
    const from = SLOTS[fret - 1] as number;
    const to = SLOTS[fret] as number;
    const a = nut + taper * from;
    const b = nut + taper * to;
    const share = a / (a + b);
    const along = from + (to - from) * share;
    const isDouble = fret === 12;
    const aside = isDouble ? (share * b) / 2 : 0;
    const diameter = isDouble ? double : single;
    const near = Math.max(aside - diameter / 2, 0);
    const far = aside + diameter / 2;
    out[o++] = along;
    out[o++] = hole === 4 ? -aside : aside;
    out[o++] = diameter;
    out[o++] = R;
    out[o++] = sanding;
    out[o++] = thickness;
    out[o++] = sanding + dropOf(R, 0, near);
    out[o++] = sanding + dropOf(R, 0, aside);
    out[o++] = sanding + dropOf(R, 0, far);
    const removal = sanding + SANDING_ERROR + dropOf(R, 0, far + LAYOUT + CREST);
    out[o++] = removal + KEEP + STOP + POINT_ERROR;
    out[o++] = thickness - THICKNESS - STOP - POINT - WEB;
    out[o++] = POINT;
    out[o++] = 0;
    o += 4;
  }
  return o;
}

/** Place, removal and thickness at the nut, each fret and the end. */
function writeEdges(columns: NeckColumns, i: number, out: Float64Array, at: number): number {
  const nut = columns.nut[i] as number;
  const length = columns.length[i] as number;
  const taper = ((columns.end[i] as number) - nut) / length;
  const R = columns.radius[i] as number;
  let o = at;
  for (let n = 0; n <= FRETS + 1; n++) {
    const along = n > FRETS ? length : (SLOTS[n] as number);
    const x = (nut + taper * along) / 2;
    const removal = (columns.sanding[i] as number) + dropOf(R, 0, x);
    out[o++] = along;
    out[o++] = x;
    out[o++] = removal;
    out[o++] = (columns.thickness[i] as number) - removal;
  }
  return o;
}

/** The common travels, the one setting that suits all holes, what it leaves at each, and the epoxy to mix. */
function writeStops(out: Float64Array, holes: number, at: number): void {
  let min = -Infinity;
  let max = Infinity;
  let minHole = -1;
  let maxHole = -1;
  for (let hole = 0; hole < HOLES; hole++) {
    const window = holes + hole * HOLE_NUMBERS + WINDOW;
    const least = (out[window] as number) + POINT;
    const most = (out[window + 1] as number) + POINT;
    if (least > min) {
      min = least;
      minHole = hole;
    }
    if (most < max) {
      max = most;
      maxHole = hole;
    }
  }
  const travel = (min + max) / 2;
  const depth = travel - POINT;
  let volume = 0;
  for (let hole = 0; hole < HOLES; hole++) {
    const own = holes + hole * HOLE_NUMBERS;
    const left = own + LEFT;
    out[left] = travel;
    out[left + 1] = depth;
    out[left + 2] = depth - ((out[own + WINDOW] as number) - KEEP);
    out[left + 3] = (out[own + WINDOW + 1] as number) + WEB - depth;
    const radius = (out[own + 2] as number) / 2;
    volume += Math.PI * radius * radius * depth;
  }
  const mixed = (volume / 1000) * (1 + WASTE);
  let o = at;
  out[o++] = min;
  out[o++] = max;
  out[o++] = minHole;
  out[o++] = maxHole;
  out[o++] = travel;
  out[o++] = min;
  out[o++] = max;
  out[o++] = minHole;
  out[o++] = maxHole;
  out[o++] = mixed;
  out[o++] = mixed / 2;
  out[o++] = mixed / 2;
}
