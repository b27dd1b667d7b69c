/** Functions of one number as Chebyshev series, piece by piece. */

/** A function on the pieces between edges. */
export interface Pieces {
  readonly edges: readonly number[];
  /** A row of coefficients for each piece. */
  readonly series: Float64Array;
  readonly at: (x: number) => number;
}

/** Terms of a series: a normal tail on half a standard deviation is right to 1e-6 of its least. */
const TERMS = 12;

const ANGLES = Array.from({ length: TERMS }, (_, k) => ((k + 0.5) * Math.PI) / TERMS);
/** cos(jθ) at each place. */
const COSINES = ANGLES.map((angle) =>
  Float64Array.from({ length: TERMS }, (_, j) => Math.cos(j * angle)),
);

/** Series through a function's values. */
export function piecesThrough(edges: readonly number[], f: (x: number) => number): Pieces {
  const series = new Float64Array((edges.length - 1) * TERMS);
  for (let i = 0; i + 1 < edges.length; i++) {
    const [from, to] = [edges[i] as number, edges[i + 1] as number];
    for (let k = 0; k < TERMS; k++) {
      const cosines = COSINES[k] as Float64Array;
      const value = f(from + ((to - from) * (1 + (cosines[1] as number))) / 2);
      for (let j = 0; j < TERMS; j++) {
        const share = (cosines[j] as number) * value * ((j === 0 ? 1 : 2) / TERMS);
        series[i * TERMS + j] = (series[i * TERMS + j] as number) + share;
      }
    }
  }
  return fitPieces(edges, series);
}

/** The integral from each place to the last edge. */
export function integrateTails({ edges, series }: Pieces): Pieces {
  const tails = new Float64Array(series.length);
  let beyond = 0;
  for (let i = edges.length - 2; i >= 0; i--) {
    const half = ((edges[i + 1] as number) - (edges[i] as number)) / 2;
    const own = (j: number) => (j < TERMS ? (series[i * TERMS + j] as number) : 0);
    // ∫ T(j) = T(j+1)/2(j+1) − T(j−1)/2(j−1); the constant is such that it ends at what lies beyond
    let sum = 0;
    for (let j = 1; j < TERMS; j++) {
      const term = (-half * ((j === 1 ? 2 : 1) * own(j - 1) - own(j + 1))) / (2 * j);
      tails[i * TERMS + j] = term;
      sum += term;
    }
    tails[i * TERMS] = beyond - sum;
    beyond = seriesAt(tails, i, -1);
  }
  return fitPieces(edges, tails);
}

function fitPieces(edges: readonly number[], series: Float64Array): Pieces {
  const starts = Float64Array.from(edges);
  const last = starts.length - 2;
  const at = (x: number) => {
    let [low, high] = [0, last];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= x) low = middle;
      else high = middle - 1;
    }
    const [from, to] = [starts[low] as number, starts[low + 1] as number];
    return seriesAt(series, low, (2 * x - from - to) / (to - from));
  };
  return { edges, series, at };
}

/** A series at t from −1 to 1 (Clenshaw). */
function seriesAt(series: Float64Array, piece: number, t: number): number {
  const first = piece * TERMS;
  let [after, now] = [0, 0];
  for (let j = TERMS - 1; j > 0; j--) {
    const next = 2 * t * now - after + (series[first + j] as number);
    after = now;
    now = next;
  }
  return t * now - after + (series[first] as number);
}
