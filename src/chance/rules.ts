/** Nodes and weights of quadrature: each rule's weights sum to 1. */

/** Places, and how much each counts. */
export interface Rule {
  readonly at: readonly number[];
  readonly weight: readonly number[];
}

/** Gauss–Legendre: the mean of a polynomial of degree 2n − 1 over [−1, 1] is exact. */
export function legendreRule(n: number): Rule {
  return gaussRule(n, (k) => k / Math.sqrt(4 * k * k - 1), 2);
}

/** Gauss–Hermite: the mean over a standard normal. */
export function hermiteRule(n: number): Rule {
  return gaussRule(n, Math.sqrt, 2 * Math.sqrt(2 * n) + 2);
}

/** Gauss–Chebyshev of the second kind: the mean over one coordinate of the unit disc, or over a semicircle's density. */
export function semicircleRule(n: number): Rule {
  const angles = Array.from({ length: n }, (_, k) => ((k + 1) * Math.PI) / (n + 1));
  return {
    at: angles.map((angle) => -Math.cos(angle)),
    weight: angles.map((angle) => (2 * Math.sin(angle) ** 2) / (n + 1)),
  };
}

/**
 * The nodes of n orthonormal polynomials by their recurrence x·p(k) = b(k+1)·p(k+1) + b(k)·p(k−1): the crossings of the
 * last, between which those of each polynomial before lie. A weight is 1/Σ p(k)² (Golub and Welsch, Math. Comp. 23, 1969).
 */
function gaussRule(n: number, b: (k: number) => number, bound: number): Rule {
  const last = (x: number, degree: number) => {
    let [before, now, squares] = [0, 1, 1];
    for (let k = 0; k < degree; k++) {
      [before, now] = [now, (x * now - (k > 0 ? b(k) : 0) * before) / b(k + 1)];
      if (k + 1 < degree) squares += now * now;
    }
    return { value: now, squares };
  };
  let roots: number[] = [];
  for (let degree = 1; degree <= n; degree++) {
    const ends = [-bound, ...roots, bound];
    roots = roots
      .concat(0)
      .map((_, i) =>
        rootBetween((x) => last(x, degree).value, ends[i] as number, ends[i + 1] as number),
      );
  }
  return { at: roots, weight: roots.map((x) => 1 / last(x, n).squares) };
}

function rootBetween(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  const rises = f(b) > 0;
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rises) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
