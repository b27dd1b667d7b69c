/** The necks that are measured: 10 holes, the nut, 22 frets and the end. Lengths in mm. All are invented. */
import type { Axes, Design, NumberPath } from "../src/index.js";
import { seeded } from "./random.js";

export const FRETS = 22;
/** The frets of the ten holes; a fret that comes twice has a double. */
export const MARKED = [3, 5, 7, 9, 12, 12, 15, 17, 19, 21] as const;
export const HOLES = MARKED.length;
export const EDGES = FRETS + 2;

const SINGLES = [3, 5, 7, 9, 15, 17, 19, 21] as const;

/** The neck of the sweeps with one radius; every tolerance is as a builder leaves it. */
export const SWEPT: Design = {
  scale: { length: 648, frets: FRETS },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: SINGLES, diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};
/** The same neck with a compound radius. */
export const COMPOUND: Design = { ...SWEPT, radius: { nut: 254, end: 406 } };

/** Columns of the numbers that vary in a sweep, a row for each design. */
export interface SweptColumns {
  readonly nut: Float64Array;
  readonly end: Float64Array;
  readonly thickness: Float64Array;
  readonly diameter: Float64Array;
}

/** One sweep: its neck, and how many values each axis has. */
export interface Grid {
  readonly design: Design;
  readonly counts: Readonly<Record<string, number>>;
}

/** Where the values of each axis lie, mm. */
const RANGES: Readonly<Partial<Record<NumberPath, readonly [number, number]>>> = {
  radius: [184, 510],
  "radius.nut": [184, 300],
  "radius.end": [301, 430],
  "board.thickness": [2.8, 6.5],
  "markers.1.diameter": [4, 8],
};

/** How many combinations a grid has. */
export function sizeOf({ counts }: Grid): number {
  return Object.values(counts).reduce((size, count) => size * count, 1);
}

/** Values of a grid's axes. Another `turn` gives other values. */
export function axesOf({ counts }: Grid, turn: number): Axes {
  const axes = Object.entries(counts).map(([path, count]) => {
    const [from, to] = RANGES[path as NumberPath] as readonly [number, number];
    const step = (to - from) / count;
    return [path, Array.from({ length: count }, (_, i) => from + step * (i + (turn % 7) / 7))];
  });
  return Object.fromEntries(axes);
}

/** The same combinations as columns, the last axis fastest. */
export function columnsOf(grid: Grid, axes: Axes): SweptColumns {
  const size = sizeOf(grid);
  const column = (path: NumberPath) => {
    const values = axes[path];
    if (values === undefined) return undefined;
    const paths = Object.keys(axes);
    const after = paths.slice(paths.indexOf(path) + 1) as NumberPath[];
    const stride = after.reduce((all, each) => all * (axes[each]?.length ?? 1), 1);
    return Float64Array.from(
      { length: size },
      (_, i) => values[Math.floor(i / stride) % values.length] as number,
    );
  };
  const constant = (value: number) => new Float64Array(size).fill(value);
  const one = column("radius");
  return {
    nut: one ?? column("radius.nut") ?? constant(254),
    end: one ?? column("radius.end") ?? constant(406),
    thickness: column("board.thickness") ?? constant(6),
    diameter: column("markers.1.diameter") ?? constant(6.35),
  };
}

/** What varies from design to design where whole reports are compared. */
export const VARIED = [
  "scale",
  "length",
  "nut",
  "end",
  "thickness",
  "radius",
  "sanding",
  "single",
  "double",
] as const;

/** One column for each of these, a row for each design. */
export type NeckColumns = Readonly<Record<(typeof VARIED)[number], Float64Array>>;

/** Random necks of one radius. Every board is thick enough that one setting suits all holes. */
export function randomNecks(count: number, seed: number): NeckColumns {
  const uniform = seeded(seed);
  const column = (from: number, to: number) =>
    Float64Array.from({ length: count }, () => uniform(from, to));
  const scale = column(600, 660);
  return {
    scale,
    length: scale.map((s) => s * 0.7194 + uniform(8, 16)),
    nut: column(41, 45),
    end: column(54, 59),
    thickness: column(5.6, 7),
    radius: column(184, 510),
    sanding: column(0.1, 0.3),
    single: column(5, 6.5),
    double: column(5, 6.5),
  };
}

/** Row i as a design. */
export function neckAt(columns: NeckColumns, i: number): Design {
  const at = (name: (typeof VARIED)[number]) => columns[name][i] as number;
  return {
    scale: { length: at("scale"), frets: FRETS },
    board: {
      length: at("length"),
      width: { nut: at("nut"), end: at("end") },
      thickness: at("thickness"),
    },
    radius: at("radius"),
    sanding: at("sanding"),
    markers: [
      { frets: SINGLES, diameter: at("single") },
      { frets: [12], diameter: at("double"), arrangement: "double" },
    ],
  };
}

/** All rows as designs. */
export function necksOf(columns: NeckColumns): Design[] {
  return Array.from(columns.radius, (_, i) => neckAt(columns, i));
}
