/** Nodes and weights of quadrature: each rule's weights sum to 1. */
import { rootBetween } from "../geometry/root-between.js";

/** Places, and how much each counts. */
export interface Rule {
  readonly at: readonly number[];
  readonly weight: readonly number[];
}

/** A kind of rule, each made once. */
export function kept(make: (n: number) => Rule): (n: number) => Rule {
  const known: Rule[] = [];
  return (n) => (known[n] ??= make(n));
}

/** Gauss–Legendre: the mean of a polynomial of degree 2n − 1 over [−1, 1] is exact. */
export function legendreRule(n: number): Rule {
  const recurrence = { a: () => 0, b: (k: number) => k / Math.sqrt(4 * k * k - 1) };
  return gaussRule(n, recurrence, -1, 1);
}

/** Gauss–Chebyshev of the second kind: the mean over one coordinate of the unit disc, or over a semicircle's density. */
export function semicircleRule(n: number): Rule {
  const angles = Array.from({ length: n }, (_, k) => ((k + 1) * Math.PI) / (n + 1));
  return {
    at: angles.map((angle) => -Math.cos(angle)),
    weight: angles.map((angle) => (2 * Math.sin(angle) ** 2) / (n + 1)),
  };
}

/** The n nodes that give the same 2n first moments as many weighted ones. */
export function fewFor(rule: Rule, n: number): Rule {
  const [from, to] = [Math.min(...rule.at), Math.max(...rule.at)];
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  if (rule.at.length <= n || !(half > 0)) return rule;
  const unit = { at: rule.at.map((x) => (x - middle) / half), weight: rule.weight };
  const { at, weight } = gaussRule(n, findRecurrence(n, unit), -1, 1);
  return { at: at.map((x) => middle + half * x), weight };
}

/** x·p(k) = b(k+1)·p(k+1) + a(k)·p(k) + b(k)·p(k−1), of orthonormal polynomials. */
interface Recurrence {
  readonly a: (k: number) => number;
  readonly b: (k: number) => number;
}

/**
 * The nodes of n are the crossings of the polynomial of that degree, between which those of each one before lie. A weight
 * is 1/Σ p(k)² (G. H. Golub and J. H. Welsch, Math. Comp. 23, 1969).
 */
function gaussRule(n: number, { a, b }: Recurrence, from: number, to: number): Rule {
  const last = (x: number, degree: number) => {
    let [before, now, squares] = [0, 1, 1];
    for (let k = 0; k < degree; k++) {
      [before, now] = [now, ((x - a(k)) * now - (k > 0 ? b(k) * before : 0)) / b(k + 1)];
      if (k + 1 < degree) squares += now * now;
    }
    return { value: now, squares };
  };
  let roots: number[] = [];
  for (let degree = 1; degree <= n; degree++) {
    const ends = [from, ...roots, to];
    const value = (x: number) => last(x, degree).value;
    roots = ends.slice(1).map((end, i) => rootBetween(value, ends[i] as number, end));
  }
  return { at: roots, weight: roots.map((x) => 1 / last(x, n).squares) };
}

/** So many Gauss–Legendre nodes on each stretch between edges, weighted by a density. */
export function nodesOn(edges: readonly number[], n: number, density: (x: number) => number): Rule {
  const { at, weight } = legendreRule(n);
  const nodes = edges.slice(1).flatMap((to, i) => {
    const from = edges[i] as number;
    return at.map((t, k) => {
      const x = (from + to) / 2 + ((to - from) / 2) * t;
      return { x, weight: (to - from) * (weight[k] as number) * density(x) };
    });
  });
  return { at: nodes.map(({ x }) => x), weight: nodes.map((node) => node.weight) };
}

/** The Gauss rule for a density on stretches between edges. */
export function ruleFor(n: number, edges: readonly number[], density: (x: number) => number): Rule {
  const [from, to] = [edges[0] as number, edges.at(-1) as number];
  return gaussRule(n, findRecurrence(n, nodesOn(edges, MANY, density)), from, to);
}

/** Nodes on a stretch that stand for the density itself. */
const MANY = 10;

/** The recurrence of the polynomials that are orthonormal over weighted nodes (the procedure of Stieltjes). */
function findRecurrence(n: number, { at: places, weight }: Rule): Recurrence {
  const [a, b]: [number[], number[]] = [[], [0]];
  const whole = weight.reduce((sum, w) => sum + w, 0);
  let before = places.map(() => 0);
  let now = places.map(() => 1);
  for (let k = 0; k < n; k++) {
    const mean = (f: (i: number) => number) =>
      weight.reduce((sum, w, i) => sum + w * f(i), 0) / whole;
    const at = mean((i) => (places[i] as number) * (now[i] as number) ** 2);
    const rest = places.map(
      (z, i) => (z - at) * (now[i] as number) - (b[k] as number) * (before[i] as number),
    );
    const size = Math.sqrt(mean((i) => (rest[i] as number) ** 2));
    a.push(at);
    b.push(size);
    before = now;
    now = rest.map((value) => value / size);
  }
  return { a: (k) => a[k] as number, b: (k) => b[k] as number };
}
