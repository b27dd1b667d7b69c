/**
 * The law of a sum of independent errors, each rectangular, triangular or normal and symmetric about 0. Normals add up to
 * one normal; a triangular error is the sum of two rectangular ones of half its limit. Adding a rectangular error ±a to an
 * upper tail Q gives (1/2a) ∫ Q from x − a to x + a, and the density (Q(x − a) − Q(x + a)) / 2a: with J(x) = ∫ Q from x
 * on, both are differences of positive tails, right in their last digits far out.
 */
import type { LawSpec } from "../design/spec.js";
import { normalDensity, normalDistribution } from "../measured/normal.js";
import { integrateTails, type Pieces, piecesThrough } from "./pieces.js";
import { kept, type Rule, ruleFor } from "./rules.js";

/** A law that is symmetric about 0. */
export interface Law {
  /** Errors beyond ± this do not come, or so seldom that it is nothing: 9 σ of a normal one. */
  readonly half: number;
  /** From 0 to `half`: the density is smooth between each two. */
  readonly edges: readonly number[];
  /** No wider a panel shows what it is like: a normal error's standard deviation. */
  readonly width: number;
  /** Standard deviation, where the law is one normal. */
  readonly sigma: number | undefined;
  readonly density: (x: number) => number;
  /** Chance of more than x. */
  readonly upper: (x: number) => number;
  /** Gauss rules: over the whole of it, and over either half by itself. */
  readonly rule: (n: number) => Rule;
  readonly halfRule: (n: number) => Rule;
}

/** Beyond so many standard deviations a normal error does not come: Φ(−9) is 1e-19. */
export const FARTHEST = 9;

/** A law with the integral of its upper tail. */
interface TailedLaw extends Omit<Law, "rule" | "halfRule"> {
  readonly beyond: (x: number) => number;
}

/** Laws by what adds up, each worked out once. */
export type Laws = (errors: readonly LawSpec[]) => Law | undefined;

export function keptLaws(): Laws {
  const known = new Map<string, Law | undefined>();
  return (errors) => {
    const off = errors.filter(({ limit }) => limit > 0);
    const key = off
      .map((each) => `${each.shape} ${each.limit} ${each.coverage}`)
      .sort()
      .join();
    if (!known.has(key)) known.set(key, combineLaws(off));
    return known.get(key);
  };
}

/** The law of a sum; undefined where nothing of it is off. */
export function combineLaws(errors: readonly LawSpec[]): Law | undefined {
  const normal = errors.filter(({ shape }) => shape === "normal");
  const sigma = Math.hypot(...normal.map(({ limit, coverage }) => limit / coverage));
  const halves = errors.flatMap(({ shape, limit }) => {
    if (shape === "normal") return [];
    return shape === "rectangular" ? [limit] : [limit / 2, limit / 2];
  });
  const most = Math.max(sigma, ...halves);
  // less than this of the sum would only cost digits
  const rising = halves.filter((half) => half > HARDLY * most).sort((a, b) => b - a);
  const first = sigma > HARDLY * most ? normalLaw(sigma) : undefined;
  const kinks = listKinks(rising);
  const sum = rising.reduce<TailedLaw | undefined>((sum, half, i) => {
    if (sum === undefined) return rectangularLaw(half);
    const edges = first ? smoothEdges(kinks[i] as number[], sigma) : (kinks[i] as number[]);
    return withRectangular(sum, half, edges);
  }, first);
  return sum && { ...sum, ...rulesFor(sum) };
}

function rulesFor({ half, edges, width, density }: TailedLaw): Pick<Law, "rule" | "halfRule"> {
  const fine = edges.slice(1).flatMap((to, i) => {
    const from = edges[i] as number;
    const count = Math.min(200, Math.ceil((to - from) / width)) || 1;
    return Array.from({ length: count }, (_, k) => from + ((to - from) * (k + 1)) / count);
  });
  const up = [0, ...fine];
  const all = edgesOnBothSides({ edges: up });
  const scale = (rule: Rule) => ({ at: rule.at.map((x) => x * half), weight: rule.weight });
  const parts = (ends: readonly number[]) => ends.map((x) => x / half);
  const unit = (x: number) => density(x * half);
  const back = (values: readonly number[]) => [...values].reverse();
  return {
    rule: kept((n) => scale(ruleFor(n, parts(all), unit))),
    halfRule: kept((n) => {
      const { at, weight } = scale(ruleFor(n, parts(up), unit));
      return {
        at: [...back(at).map((x) => -x), ...at],
        weight: [...back(weight), ...weight].map((w) => w / 2),
      };
    }),
  };
}

/** The chance of more than x, of a law or of nothing off. */
export function upperTail(law: Law | undefined): (x: number) => number {
  return law?.upper ?? ((x) => (x < 0 ? 1 : 0));
}

/** How smooth a law makes a mean: as a normal error of this standard deviation does; 0 with kinks, and where nothing is off. */
export function measureSmoothness(law: Law | undefined): number {
  return law !== undefined && law.width < Infinity ? law.width : 0;
}

/** The edges of a law on both sides of 0. */
export function edgesOnBothSides({ edges }: Pick<Law, "edges">): number[] {
  const other = edges.slice(1).map((x) => -x);
  return [...other.reverse(), ...edges];
}

/**
 * Even nodes for the mean of what is as smooth as a normal chance of a standard deviation s, over a law as smooth as a
 * normal one of σ: the trapezoidal rule, h apart, is off by the part 2e^(−2π²/(hw)²), w² = 1/σ² + 1/s². Steps are powers
 * of two, so that sums over nodes of several laws meet again. Undefined where either has kinks.
 */
export function evenNodes(law: Law, smoothness: number, grade: number): Rule | undefined {
  const { half, width } = law;
  if (!(width < Infinity && smoothness > 0)) return undefined;
  const most = (grade < 2 ? ROUGH : FINE) / Math.hypot(1 / width, 1 / smoothness);
  const step = 2 ** Math.floor(Math.log2(most));
  return half / step > MOST_NODES ? undefined : placeEvenly(law, step);
}

/** Nodes so far apart. */
export function placeEvenly({ half, density }: Law, step: number): Rule {
  const count = Math.floor(half / step);
  const at = Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * step);
  return { at, weight: at.map((x) => step * density(x)) };
}

/** c of what is off by 2e-7 of itself, and by 8e-14. */
const [ROUGH, FINE] = [1.1, 0.8];
const MOST_NODES = 200;

const HARDLY = 1e-7;

/** The kinks from 0 on of each sum of the first few rectangular errors. */
function listKinks(halves: readonly number[]): number[][] {
  let signed = [0];
  return halves.map((half) => {
    signed = distinct(signed.flatMap((at) => [at - half, at + half]));
    return distinct([0, ...signed.filter((at) => at > 0)]);
  });
}

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const span = (sorted.at(-1) as number) - (sorted[0] as number);
  return sorted.filter((at, i) => i === 0 || at - (sorted[i - 1] as number) > 1e-12 * span);
}

/** Widest piece of what is as smooth as a normal law, in its standard deviations. */
const PIECE = 0.5;

/** A normal error smooths each kink out over its own reach. */
function smoothEdges(kinks: readonly number[], sigma: number): number[] {
  const edges = [0];
  const reach = FARTHEST * sigma;
  for (const kink of kinks) {
    const from = Math.max(edges.at(-1) as number, kink - reach);
    if (from > (edges.at(-1) as number)) edges.push(from);
    const count = Math.ceil((kink + reach - from) / (PIECE * sigma) - 1e-9);
    const step = (kink + reach - from) / Math.max(1, count);
    for (let i = 1; i <= count; i++) edges.push(from + i * step);
  }
  return distinct(edges);
}

function normalLaw(sigma: number): TailedLaw {
  const edges = smoothEdges([0], sigma);
  const tail = piecesThrough(edges, (x) => normalDistribution(-x / sigma));
  const density = (x: number) => normalDensity(x / sigma) / sigma;
  return { ...tailed(tail), edges: [0, FARTHEST * sigma], width: sigma, sigma, density };
}

function rectangularLaw(half: number): TailedLaw {
  const tail = piecesThrough([0, half], (x) => (half - x) / (2 * half));
  const density = (x: number) => (Math.abs(x) <= half ? 1 / (2 * half) : 0);
  return { ...tailed(tail), width: Infinity, sigma: undefined, density };
}

function withRectangular(law: TailedLaw, half: number, edges: readonly number[]): TailedLaw {
  const { upper, beyond } = law;
  const tail = piecesThrough(edges, (x) => (beyond(x - half) - beyond(x + half)) / (2 * half));
  const density = (x: number) => {
    const away = Math.abs(x);
    return (upper(away - half) - upper(away + half)) / (2 * half);
  };
  const ends = tailed(tail);
  // a normal error has smoothed every kink
  const even = law.width < Infinity ? [0, ends.half] : edges;
  return { ...ends, edges: even, width: law.width, sigma: undefined, density };
}

/** What follows from the upper tail from 0 on: beyond 0 it is 1 − Q(−x), and J(−x) = J(x) + x. */
function tailed(tail: Pieces) {
  const { edges } = tail;
  const half = edges.at(-1) as number;
  const far = integrateTails(tail);
  const upper = (x: number) => {
    if (x >= 0) return x < half ? tail.at(x) : 0;
    return x > -half ? 1 - tail.at(-x) : 1;
  };
  const beyond = (x: number) => {
    const away = Math.abs(x);
    const past = away < half ? far.at(away) : 0;
    return x < 0 ? past - x : past;
  };
  return { half, edges, upper, beyond };
}
