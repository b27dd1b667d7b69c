/** Where frets and markers lie: printed figures, and mathjs's crossing of two lines. */
import fc from "fast-check";
import { all, create } from "mathjs";
import { expect, test } from "vitest";
import { diagonalCrossing } from "../../src/board/markers.js";
import type { Design } from "../../src/design/design.js";
import { fretPositions } from "../../src/drilling/parts.js";
import { checkDesign } from "../../src/index.js";
import { between, forAll } from "./counted.js";
import { expectPrinted, rangeOf } from "./printed.js";

const math = create({ ...all });

/** A note: its printed frequency in Hz, and its place in the chromatic scale, A4 = 69. */
interface Note {
  readonly name: string;
  readonly place: number;
  readonly hertz: string;
}

// CRC Handbook of Chemistry and Physics, musical scales table; A4 = 440 (ISO 16)
const CRC: readonly Note[] = [
  { name: "E2", place: 40, hertz: "82.407" },
  { name: "F2", place: 41, hertz: "87.307" },
  { name: "C4", place: 60, hertz: "261.63" },
  { name: "D#4", place: 63, hertz: "311.13" },
  { name: "E4", place: 64, hertz: "329.63" },
  { name: "C6", place: 84, hertz: "1046.50" },
];

// OEIS A329207
const OEIS: readonly Note[] = [
  { name: "C4", place: 60, hertz: "261.6255653005" },
  { name: "E4", place: 64, hertz: "329.6275569128" },
  { name: "G4", place: 67, hertz: "391.9954359817" },
];

test.each([
  ["CRC", CRC, 15],
  ["OEIS A329207", OEIS, 3],
] as const)("%s: the string left behind fret n is f_open / f_n", (_, notes, pairs) => {
  let compared = 0;
  for (const [open, stopped] of pairsOf(notes)) {
    const frets = stopped.place - open.place;
    const left = 1 - lastOf(fretPositions({ length: 1, frets }));
    const [low, high] = [rangeOf(open.hertz), rangeOf(stopped.hertz)];
    expect(left).toBeGreaterThan(low.low / high.high);
    expect(left).toBeLessThan(low.high / high.low);
    compared++;
  }
  expect(compared).toBe(pairs);
});

test("a string of 440 Hz stopped at fret 15 sounds the printed C6", () => {
  // A4 = 440 (ISO 16), C6 of the CRC table: 15 semitones
  const left = 1 - lastOf(fretPositions({ length: 1, frets: 15 }));
  expectPrinted(440 / left, "1046.50");
});

test("L = 75.0 cm, frets 1 to 6", () => {
  // physics textbook problem, 7th ed., ch. 12 Q43 (seen in a solution; recomputed)
  const print = ["4.21", "8.18", "11.9", "15.5", "18.8", "22.0"];
  const positions = fretPositions({ length: 75, frets: 6 });
  expect(positions.length).toBe(print.length);
  print.forEach((figure, i) => {
    expectPrinted(positions[i] ?? Number.NaN, figure);
  });
});

test("the rule of 18: each fret takes one part in 17.817 of the string left", () => {
  // memory, so also the identity 17.817153745 = 1 / (1 − 2^(−1/12))
  const stations = [0, ...fretPositions({ length: 648, frets: 24 })];
  let compared = 0;
  stations.slice(1).forEach((here, i) => {
    const before = stations[i] ?? Number.NaN;
    const parts = (648 - before) / (here - before);
    expectPrinted(parts, "17.817");
    expectPrinted(parts, "17.817153745");
    compared++;
  });
  expect(compared).toBe(24);
});

test("each fret shortens the string by 2^(1/12)", () => {
  // 2^(1/12) = 1.059463094359295264561825294946
  const stations = [0, ...fretPositions({ length: 648, frets: 24 })];
  let compared = 0;
  stations.slice(1).forEach((here, i) => {
    const ratio = (648 - (stations[i] ?? Number.NaN)) / (648 - here);
    expectPrinted(ratio, "1.0594630943593");
    compared++;
  });
  expect(compared).toBe(24);
});

test("widths 44 and 56, length 450: crossing 198 from the narrow end", () => {
  // computed, two libraries agree
  expectPrinted(diagonalCrossing(450, 44, 56).along, "198.000000000");
  expectPrinted(diagonalCrossing(450, 56, 44).along, "252.000000000");
});

const TRAPEZOID = fc.record({
  gap: between(5, 60),
  widthA: between(20, 90),
  widthB: between(20, 90),
});

test("the parallel through the crossing is the harmonic mean, and the crossing parts the gap as a : b", () => {
  // PlanetMath, "Harmonic mean in trapezoid"
  forAll(TRAPEZOID, ({ gap, widthA: a, widthB: b }) => {
    const { along, offset } = diagonalCrossing(gap, a, b);
    const harmonic = (2 * a * b) / (a + b);
    expect(along / (gap - along)).toBeCloseTo(a / b, 11);
    // its end lies on the slanted side, as far out as the taper there is wide
    expect(a + ((b - a) * along) / gap).toBeCloseTo(harmonic, 11);
    expect(4 * offset).toBeCloseTo(harmonic, 11);
  });
});

test("diagonalCrossing meets mathjs's intersection of the diagonals, of the whole and of each half", () => {
  forAll(TRAPEZOID, ({ gap, widthA, widthB }) => {
    const { along, offset } = diagonalCrossing(gap, widthA, widthB);
    const [a, b] = [widthA / 2, widthB / 2];
    expectNear(crossed([0, -a, a], [gap, -b, b]), along, 0);
    expectNear(crossed([0, -a, 0], [gap, -b, 0]), along, -offset);
    expectNear(crossed([0, 0, a], [gap, 0, b]), along, offset);
  });
});

const SINGLES = [1, 3, 5, 7, 9, 15, 17, 19, 21] as const;
const DOUBLES = [12, 24] as const;

const BOARD = fc.record({
  length: between(500, 900),
  nut: between(30, 60),
  end: between(30, 90),
});

test("checkDesign lays every hole on mathjs's crossing of the diagonals", () => {
  forAll(BOARD, ({ length, nut, end }) => {
    const boardLength = 0.78 * length;
    const { holes } = checkDesign(designOf(length, boardLength, nut, end));
    const half = (along: number) => (nut + ((end - nut) * along) / boardLength) / 2;
    expect(holes.length).toBe(SINGLES.length + 2 * DOUBLES.length);
    for (const { fret, side, along, offset } of holes) {
      const from = length - length / 2 ** ((fret - 1) / 12);
      const to = length - length / 2 ** (fret / 12);
      const [bass, treble] = [side === "treble" ? 0 : -1, side === "bass" ? 0 : 1];
      const a: Slot = [from, bass * half(from), treble * half(from)];
      const b: Slot = [to, bass * half(to), treble * half(to)];
      expectNear(crossed(a, b), along, offset);
    }
    expect(holes.filter(({ side }) => side === "centre").map(({ fret }) => fret)).toEqual(SINGLES);
    expect(holes.filter(({ side }) => side === "bass").map(({ fret }) => fret)).toEqual(DOUBLES);
    expect(holes.filter(({ side }) => side === "treble").map(({ fret }) => fret)).toEqual(DOUBLES);
  });
});

/** A slot, or a part of it: its place along the board, and its two ends, bass first. */
type Slot = readonly [along: number, bass: number, treble: number];

/** Where the diagonals between two slots cross, by mathjs. */
function crossed(a: Slot, b: Slot): readonly [number, number] {
  const found: unknown = math.intersect([a[0], a[1]], [b[0], b[2]], [a[0], a[2]], [b[0], b[1]]);
  const [along, offset] = found as number[];
  return [along ?? Number.NaN, offset ?? Number.NaN];
}

function expectNear(point: readonly [number, number], along: number, offset: number): void {
  expect(Math.abs(point[0] - along)).toBeLessThan(1e-9);
  expect(Math.abs(point[1] - offset)).toBeLessThan(1e-9);
}

function designOf(length: number, boardLength: number, nut: number, end: number): Design {
  return {
    scale: { length, frets: 24 },
    board: { length: boardLength, width: { nut, end }, thickness: 6 },
    radius: Infinity,
    markers: [
      { frets: DOUBLES, diameter: 5, arrangement: "double" },
      { frets: SINGLES, diameter: 5 },
    ],
  };
}

/** Each note with each note above it. */
function pairsOf(notes: readonly Note[]): [Note, Note][] {
  return notes.flatMap((open, i) =>
    notes.slice(i + 1).map((stopped): [Note, Note] => [open, stopped]),
  );
}

function lastOf(values: readonly number[]): number {
  return values[values.length - 1] ?? Number.NaN;
}
