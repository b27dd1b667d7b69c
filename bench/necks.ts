/** The necks that are measured: one radius, 10 holes, the nut, 22 frets and the end. Lengths in mm. All are invented. */
import type { Axes, Design } from "../src/index.js";
import { seeded } from "./random.js";

export const FRETS = 22;
/** The frets of the ten holes; a fret that comes twice has a double. */
export const MARKED = [3, 5, 7, 9, 12, 12, 15, 17, 19, 21] as const;
export const HOLES = MARKED.length;
export const EDGES = FRETS + 2;

const SINGLES = [3, 5, 7, 9, 15, 17, 19, 21] as const;

/** The neck of the sweep; its doubles at the twelfth fret are swept. */
export const SWEPT: Design = {
  scale: { length: 648, frets: FRETS },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: SINGLES, diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};

/** Columns of the numbers that vary in the sweep, a row for each design. */
export interface SweptColumns {
  readonly radius: Float64Array;
  readonly thickness: Float64Array;
  readonly diameter: Float64Array;
}

/** Values of the sweep's axes. Another `turn` gives other values. */
export function axesOf(counts: readonly [number, number, number], turn: number) {
  const spread = (from: number, to: number, count: number) =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * (i + (turn % 7) / 7)) / count);
  return {
    radius: spread(180, 510, counts[0]),
    "board.thickness": spread(2.8, 6.5, counts[1]),
    "markers.1.diameter": spread(4, 9, counts[2]),
  } satisfies Axes;
}

/** The same combinations as columns, the last axis fastest. */
export function columnsOf(axes: ReturnType<typeof axesOf>): SweptColumns {
  const { radius, "board.thickness": thickness, "markers.1.diameter": diameter } = axes;
  const rows = radius.flatMap((r) => thickness.flatMap((t) => diameter.map((d) => [r, t, d])));
  const column = (k: number) => Float64Array.from(rows, (row) => row[k] as number);
  return { radius: column(0), thickness: column(1), diameter: column(2) };
}

/** What varies from design to design where whole reports are compared. */
export const VARIED = [
  "scale",
  "length",
  "nut",
  "end",
  "thickness",
  "radius",
  "crown",
  "single",
  "double",
] as const;

/** One column for each of these, a row for each design. */
export type NeckColumns = Readonly<Record<(typeof VARIED)[number], Float64Array>>;

/** Random necks. Every board is thick enough that one setting suits all holes. */
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
    crown: column(0.1, 0.3),
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
    crown: at("crown"),
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
