/**
 * Fanned necks, all invented, and where their lines lie, written again from docs/formulas.md: along each edge fret n
 * lies L(1 − 2^(−n/12)) from the nut's end there, measured parallel to the centre line, and frets are straight between
 * the edges. Points are [along, offset], mm; offset bass negative.
 */
import fc from "fast-check";
import {
  type Bit,
  type Design,
  type Fill,
  type FretLine,
  fretLines,
  type Hole,
  type MarkerGroup,
  type Profile,
} from "../../src/index.js";
import { type Layout, profileValue } from "../properties/oracle.js";

export type Spot = readonly [along: number, offset: number];

/** Share of a string between the nut and fret n. */
export const share = (n: number) => 1 - 2 ** (-n / 12);

/** Numbers of three decimals, all alike. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  const range = { min: Math.round(min * 1000), max: Math.round(max * 1000) };
  return fc.noBias(fc.integer(range)).map((n) => n / 1000);
}

/** A neck's lines. */
export interface Fan {
  readonly lines: readonly FretLine[];
  /** Where the stations lie: where the frets cross the centre line. */
  readonly layout: Layout;
  /** The two ends of the nut (0) or a fret, on the board's edges. */
  readonly ends: (fret: number) => { bass: Spot; treble: Spot };
}

export function linesOf(design: Design): Fan {
  const { scale, board } = design;
  const lines = fretLines(design);
  const positions = lines.slice(1).map(({ along }) => along);
  const layout = { scale, positions, length: board.length };
  const half = (along: number) => profileValue(board.width, layout, along) / 2;
  const ends = (fret: number) => {
    const { bass, treble } = lines[fret] ?? { bass: Number.NaN, treble: Number.NaN };
    return { bass: [bass, -half(bass)], treble: [treble, half(treble)] } as const;
  };
  return { lines, layout, ends };
}

/** The four corners between a fret and the one before: nut side bass, treble; body side treble, bass. */
export function quadrilateral({ ends }: Fan, fret: number): [Spot, Spot, Spot, Spot] {
  const [before, after] = [ends(fret - 1), ends(fret)];
  return [before.bass, before.treble, after.treble, after.bass];
}

/** Distance of a point from the line through a and b, positive to its left (along to the right, offset up). */
export function fromLine([s, x]: Spot, a: Spot, b: Spot): number {
  const [ds, dx] = [b[0] - a[0], b[1] - a[1]];
  return (ds * (x - a[1]) - dx * (s - a[0])) / Math.hypot(ds, dx);
}

/** Ranges that fanned necks are drawn from. */
interface Kind {
  /** Stations of their own for the width. */
  readonly bentEdges: boolean;
  readonly markers: (frets: number) => fc.Arbitrary<MarkerGroup>;
}

/** A neck with two scale lengths, at most 60 mm apart, radius 180 to 500 with a slope up to 0.4. */
export function fannedNeck({ bentEdges, markers }: Kind): fc.Arbitrary<Design> {
  const scale = fc
    .record({
      bass: between(560, 860),
      less: between(-20, 60),
      frets: fc.integer({ min: 20, max: 24 }),
    })
    .chain(({ bass, less, frets }) =>
      fc.record({
        bass: fc.constant(bass),
        treble: fc.constant(bass - less),
        perpendicular: fc.oneof(fc.integer({ min: 0, max: frets }), between(0, frets)),
        frets: fc.constant(frets),
      }),
    );
  return fc.tuple(scale, between(1, 20)).chain(([scale, past]) => {
    const length =
      Math.max(scale.bass, scale.treble) * share(scale.frets) +
      Math.abs(scale.bass - scale.treble) +
      past;
    const places = new Map([
      ["nut", 0],
      ["end", length],
    ]);
    const mean = (scale.bass + scale.treble) / 2;
    for (let n = 1; n <= scale.frets; n++) places.set(`fret${n}`, mean * share(n));
    return fc.record(
      {
        scale: fc.constant(scale),
        board: boardOn(length, places, bentEdges),
        radius: profileOn(places, 180, 500, 0.4),
        crown: profileOn(places, 0, 0.6, 0.01),
        markers: fc.array(markers(scale.frets), { minLength: 1, maxLength: 3 }).filter(areApart),
        fill,
        bit,
        depth: between(1, 5),
        web: between(0, 1.5),
        tolerance: tolerances,
        slot: fc.record({ depth: between(2, 4), tang: between(1, 2) }),
        pour: fc.record({ waste: between(0, 1) }),
      },
      { requiredKeys: ["scale", "board", "radius", "markers", "tolerance", "slot"] },
    );
  });
}

/** No two groups put the same kind of marker at one fret. */
function areApart(groups: readonly MarkerGroup[]): boolean {
  const places = groups.flatMap(({ frets, arrangement = "single" }) => {
    return frets.map((fret) => `${arrangement} ${fret}`);
  });
  return new Set(places).size === places.length;
}

function boardOn(
  length: number,
  places: ReadonlyMap<string, number>,
  bent: boolean,
): fc.Arbitrary<Design["board"]> {
  const straight = fc.record({ nut: between(40, 54), end: between(54, 70) });
  const channel = fc.record(
    {
      width: between(4, 12),
      depth: between(0.5, 2),
      from: between(0, 60),
      to: between(200, length),
    },
    { requiredKeys: ["width", "depth"] },
  );
  return fc.record(
    {
      length: fc.constant(length),
      width: bent ? fc.oneof(profileOn(places, 40, 70, 0.06), straight) : straight,
      thickness: profileOn(places, 5, 8, 0.004),
      channel,
    },
    { requiredKeys: ["length", "width", "thickness"] },
  );
}

/** A profile between two values, its slope bounded: constant, or through two to four stations. */
function profileOn(
  places: ReadonlyMap<string, number>,
  least: number,
  most: number,
  slope: number,
): fc.Arbitrary<Profile> {
  const inner = [...places.keys()].filter((name) => name !== "nut" && name !== "end");
  const slopes = fc.array(between(-slope, slope), { minLength: 3, maxLength: 3 });
  const bends = fc.subarray(inner, { maxLength: 2 });
  const bent = fc.tuple(between(least, most), bends, slopes).map(([first, chosen, by]) => {
    const names = ["nut", ...chosen, "end"];
    const values: [string, number][] = [["nut", first]];
    names.slice(1).forEach((name, i) => {
      const gap = (places.get(name) ?? 0) - (places.get(names[i] ?? "") ?? 0);
      const value = (values[i]?.[1] ?? 0) + (by[i] ?? 0) * gap;
      values.push([name, Math.min(most, Math.max(least, Math.round(value * 1000) / 1000))]);
    });
    return Object.fromEntries(values);
  });
  return fc.oneof(between(least, most), bent, bent);
}

export const tolerances = fc.record({
  stop: between(0, 0.2),
  layout: between(0, 0.5),
  thickness: between(0, 0.2),
  crown: between(0, 0.1),
  radius: fc.oneof(fc.constant(0), between(0, 0.05)),
});

export const bit: fc.Arbitrary<Bit> = fc.oneof(
  fc.record({
    kind: fc.constantFrom("forstner" as const, "brad-point" as const),
    point: between(0.3, 2),
  }),
  fc.record({ kind: fc.constant("twist" as const), angle: between(90, 150) }),
  fc.constant({ kind: "end-mill" as const }),
);

export const fill: fc.Arbitrary<Fill> = fc.oneof(
  fc.record({ kind: fc.constant("poured" as const), keep: between(0, 1) }),
  fc.record({ kind: fc.constant("solid" as const), thickness: between(1, 3), keep: between(0, 1) }),
);

/** Fret numbers of one group. */
export function fretsUpTo(frets: number, most: number): fc.Arbitrary<number[]> {
  const all = Array.from({ length: frets }, (_, i) => i + 1);
  return fc.subarray(all, { minLength: 1, maxLength: most });
}

/** Dots of every arrangement. */
export function dots(frets: number): fc.Arbitrary<MarkerGroup> {
  const common = {
    frets: fretsUpTo(frets, 4),
    diameter: between(2, 8),
    along: fc.constantFrom("diagonals" as const, "midpoint" as const),
  };
  return fc.oneof(
    fc.record(common, { requiredKeys: ["frets", "diameter"] }),
    fc.record(
      { ...common, arrangement: fc.constant("double" as const), spread: between(10, 30) },
      { requiredKeys: ["frets", "diameter", "arrangement"] },
    ),
  );
}

const rectangle = fc.record({
  kind: fc.constant("rectangle" as const),
  length: between(3, 30),
  width: fc.oneof(between(5, 34), between(5, 34), between(40, 60)),
});

const trapezoid = fc.record({
  kind: fc.constant("trapezoid" as const),
  slotGap: between(0, 2),
  edgeGap: between(0, 8),
});

/** Pockets of both shapes. */
export function pockets(frets: number): fc.Arbitrary<MarkerGroup> {
  const common = { frets: fretsUpTo(Math.min(16, frets), 2), fill };
  return fc.oneof(
    fc.record({ ...common, shape: trapezoid }),
    fc.record({ ...common, shape: rectangle }),
    fc.record({
      ...common,
      shape: fc.record({
        kind: fc.constant("rectangle" as const),
        length: between(3, 12),
        width: between(4, 12),
      }),
      arrangement: fc.constant("double" as const),
    }),
  );
}

/** A hole's own group; no two could be. */
export function groupOf(design: Design, hole: Hole): MarkerGroup | undefined {
  return design.markers.find(
    ({ frets, arrangement = "single" }) =>
      frets.includes(hole.fret) && (arrangement === "double") === (hole.side !== "centre"),
  );
}

/** Counts what the cases exercised. */
export function counter() {
  const counts = new Map<string, number>();
  return {
    add: (what: string) => counts.set(what, (counts.get(what) ?? 0) + 1),
    of: (what: string) => counts.get(what) ?? 0,
  };
}
