/**
 * The job's formulas, written again from docs/formulas.md and from nothing in src: profiles, the sag of a
 * cone, and dense sampling of a disc. Lengths in mm; offset bass negative.
 */
import type { Profile, Scale } from "../../src/index.js";

/** Where the stations of a neck lie. */
export interface Layout {
  readonly scale: Scale;
  /** Positions of frets 1, 2, … */
  readonly positions: readonly number[];
  /** Nut to body end. */
  readonly length: number;
}

/** Twelve-tone equal temperament: s_n = L(1 − 2^(−n/12)). */
export function tempered(length: number, frets: number): number[] {
  return Array.from({ length: frets }, (_, i) => length * (1 - 2 ** (-(i + 1) / 12)));
}

/** Where a station lies along the board. */
export function placeOf(station: string, layout: Layout): number {
  if (station === "nut") return 0;
  if (station === "end") return layout.length;
  return layout.positions[Number(station.slice("fret".length)) - 1] ?? Number.NaN;
}

/** One straight piece of a profile: value = a + slope · along, from one place to another. */
export interface Line {
  readonly from: number;
  readonly to: number;
  readonly at: (along: number) => number;
  readonly slope: number;
}

/** A profile's stations and their values. */
export function stationsOf(profile: Exclude<Profile, number>): [string, number][] {
  return Object.entries(profile).filter((entry): entry is [string, number] => {
    return entry[1] !== undefined;
  });
}

/** A profile as straight pieces; the first and last extend outward without end. */
export function linesOf(profile: Profile, layout: Layout): Line[] {
  const knots =
    typeof profile === "number"
      ? [{ s: 0, v: profile }]
      : stationsOf(profile)
          .map(([station, v]) => ({ s: placeOf(station, layout), v }))
          .sort((a, b) => a.s - b.s);
  const first = knots[0];
  if (first === undefined) throw new Error("a profile without stations");
  const level = { from: -Infinity, to: Infinity, at: () => first.v, slope: 0 };
  const lines = knots.slice(1).map((b, i) => lineBetween(knots[i] ?? first, b));
  return lines.length === 0 ? [level] : extendOutward(lines);
}

function lineBetween(a: { s: number; v: number }, b: { s: number; v: number }): Line {
  const slope = a.v === b.v ? 0 : (b.v - a.v) / (b.s - a.s);
  const at = (along: number) => (slope === 0 ? a.v : a.v + (along - a.s) * slope);
  return { from: a.s, to: b.s, at, slope };
}

function extendOutward(lines: readonly Line[]): Line[] {
  return lines.map((line, i) => ({
    ...line,
    from: i === 0 ? -Infinity : line.from,
    to: i === lines.length - 1 ? Infinity : line.to,
  }));
}

/** Value of a profile at a place. */
export function profileValue(profile: Profile, layout: Layout, along: number): number {
  const line = linesOf(profile, layout).find(({ to }) => along <= to);
  return line === undefined ? Number.NaN : line.at(along);
}

/** Places where a profile bends. */
export function bends(profile: Profile, layout: Layout): number[] {
  return linesOf(profile, layout)
    .map(({ to }) => to)
    .filter((s) => s !== Infinity);
}

/**
 * Sag of a surface whose radius is R here and changes by m per length along the board:
 * the smaller root of (1 + K)h² − 2Rh + x² = 0, K = −m² (ISO 10110-12, no aspheric terms).
 */
export function sagOf(R: number, x: number, m: number): number {
  if (R === Infinity) return 0;
  return (x * x) / (R + Math.sqrt(R * R - (1 - m * m) * x * x));
}

/** A neck's finished surface in one case of its tolerances. */
export interface Case {
  /** Added to the crown, which is at least 0. */
  readonly crown: number;
  /** The radius times this, its slope too. */
  readonly radius: number;
}

/**
 * Removal at a point, from every piece that touches it: where a profile bends, each side has its own slope.
 * Returns the least and the greatest of them.
 */
export function surfaceOf(radius: Profile, crown: Profile, layout: Layout, bent: Case) {
  const radii = linesOf(radius, layout);
  const crowns = linesOf(crown, layout);
  return (along: number, offset: number): { least: number; greatest: number } => {
    let least = Infinity;
    let greatest = -Infinity;
    for (const r of radii) {
      if (!(r.from <= along && along <= r.to)) continue;
      const h = sagOf(r.at(along) * bent.radius, Math.abs(offset), r.slope * bent.radius);
      for (const c of crowns) {
        if (!(c.from <= along && along <= c.to)) continue;
        const removal = Math.max(0, c.at(along) + bent.crown) + h;
        least = Math.min(least, removal);
        greatest = Math.max(greatest, removal);
      }
    }
    return { least, greatest };
  };
}

/** Points over a disc: rings, its rim closely, and along every line across it where a profile bends. */
export function pointsOver(
  centre: { along: number; offset: number },
  radius: number,
  lines: readonly number[],
): [along: number, offset: number][] {
  const { along, offset } = centre;
  const points: [number, number][] = [[along, offset]];
  for (let ring = 1; ring <= 8; ring++) addRing(points, centre, (radius * ring) / 8, 48);
  addRing(points, centre, radius, 720);
  for (const s of lines) {
    const half = Math.sqrt(Math.max(0, radius ** 2 - (s - along) ** 2));
    if (!(Math.abs(s - along) <= radius)) continue;
    for (let i = -100; i <= 100; i++) points.push([s, offset + (half * i) / 100]);
  }
  return points;
}

function addRing(
  points: [number, number][],
  { along, offset }: { along: number; offset: number },
  radius: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    const angle = (2 * Math.PI * i) / count;
    points.push([along + radius * Math.cos(angle), offset + radius * Math.sin(angle)]);
  }
}
