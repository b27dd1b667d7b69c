/**
 * The true place of a hole: off its marked one along the board and across it. A rectangular law is uniform over a disc, a
 * triangular one falls linearly from its centre (a cone), a normal one is two independent normals. Lengths in mm.
 */
import type { LawSpec } from "../design/spec.js";
import { combineLaws, type Law } from "./law.js";
import { kept, legendreRule, type Rule, semicircleRule } from "./rules.js";

/** How far off a coordinate is: its own law, and the chance of more. */
export interface Coordinate {
  readonly half: number;
  /** Chance of more than x. */
  readonly upper: (x: number) => number;
}

/** Where a hole may lie. */
export interface Layout {
  /** Off by no more than this. */
  readonly reach: number;
  /** It thins out, rather than ending. */
  readonly isEndless: boolean;
  /** One coordinate by itself, and nodes for it. */
  readonly across: Coordinate;
  readonly rule: (n: number) => Rule;
  /** The coordinate across the board, for a hole that is so far off along it. */
  readonly acrossAt: (along: number) => Coordinate;
  readonly ruleAt: (along: number, n: number) => Rule;
}

/** The layout of a law; undefined where nothing is off. */
export function readLayout(spec: LawSpec): Layout | undefined {
  const { limit, shape } = spec;
  if (!(limit > 0)) return undefined;
  if (shape === "normal") return normalLayout(combineLaws([spec]) as Law);
  return shape === "rectangular" ? discLayout(limit) : coneLayout(limit);
}

function normalLayout(law: Law): Layout {
  const { rule } = law;
  return {
    reach: law.half,
    isEndless: true,
    across: law,
    rule,
    acrossAt: () => law,
    ruleAt: (_, n) => rule(n),
  };
}

function discLayout(a: number): Layout {
  const chordAt = (along: number) => Math.sqrt(Math.max(0, (a - along) * (a + along)));
  const even = kept(legendreRule);
  return {
    reach: a,
    isEndless: false,
    across: { half: a, upper: (x) => beyondChord(clamped(x / a)) },
    rule: kept((n) => scaled(semicircleRule(n), a)),
    acrossAt: (along) => {
      const half = chordAt(along);
      return { half, upper: (x) => (half > 0 ? (1 - clamped(x / half)) / 2 : x < 0 ? 1 : 0) };
    },
    ruleAt: (along, n) => scaled(even(n), chordAt(along)),
  };
}

/** Share of the unit disc beyond a chord at z. */
export function beyondChord(z: number): number {
  return (Math.acos(z) - z * Math.sqrt((1 - z) * (1 + z))) / Math.PI;
}

/** The same of a cone on the unit disc, by its volume. */
export function coneBeyondChord(z: number): number {
  const away = Math.abs(z);
  const rest = away > 0 ? away ** 3 * Math.acosh(1 / away) : 0;
  const beyond = (Math.acos(away) - 2 * away * Math.sqrt((1 - away) * (1 + away)) + rest) / Math.PI;
  return z < 0 ? 1 - beyond : beyond;
}

function coneLayout(a: number): Layout {
  const density = (z: number) => {
    const root = Math.sqrt((1 - z) * (1 + z));
    return root - (z === 0 ? 0 : z * z * Math.acosh(1 / Math.abs(z)));
  };
  const even = kept((n) => applyToHalves(legendreRule(n)));
  return {
    reach: a,
    isEndless: false,
    across: { half: a, upper: (x) => coneBeyondChord(clamped(x / a)) },
    rule: kept((n) =>
      scaled(
        weighted(semicircleRule(n), (z) => density(z) / root(z)),
        a,
      ),
    ),
    acrossAt: (along) => coneChord(a, along),
    ruleAt: (along, n) => {
      const { half } = coneChord(a, along);
      const height = (x: number) => a - Math.hypot(along, x * half);
      return scaled(weighted(even(n), height), half);
    },
  };
}

function root(z: number): number {
  return Math.sqrt((1 - z) * (1 + z));
}

/** A cone cut along a chord: the height is a − √(along² + x²). */
function coneChord(a: number, along: number): Coordinate {
  const half = Math.sqrt(Math.max(0, (a - along) * (a + along)));
  const away = Math.abs(along);
  const area = (x: number) => {
    const r = Math.hypot(along, x);
    return a * x - (x * r + (away > 0 ? along * along * Math.asinh(x / away) : 0)) / 2;
  };
  const whole = area(half);
  const upper = (x: number) => {
    if (!(whole > 0)) return x < 0 ? 1 : 0;
    const beyond = (whole - area(Math.min(half, Math.abs(x)))) / (2 * whole);
    return x < 0 ? 1 - beyond : beyond;
  };
  return { half, upper };
}

function clamped(z: number): number {
  return Math.min(1, Math.max(-1, z));
}

function scaled({ at, weight }: Rule, by: number): Rule {
  return { at: at.map((x) => x * by), weight };
}

/** A rule on either half of its range: what has a kink in the middle. */
function applyToHalves({ at, weight }: Rule): Rule {
  const both = [-1, 1].flatMap((side) => at.map((x) => (x + side) / 2));
  return { at: both, weight: [...weight, ...weight].map((w) => w / 2) };
}

/** A rule for another density, so that the weights still sum to 1. */
function weighted({ at, weight }: Rule, density: (x: number) => number): Rule {
  const rough = weight.map((w, i) => w * density(at[i] as number));
  const sum = rough.reduce((total, w) => total + w, 0);
  return { at, weight: sum > 0 ? rough.map((w) => w / sum) : weight };
}
