/** Invented necks of every kind that the solids judge: ordinary boards, no tolerances. Lengths in mm. */
import fc from "fast-check";
import type { Bit, Design, Fill, MarkerGroup, Profile } from "../../src/index.js";

/** No tolerances: the worst case is the board itself. */
export const EXACT = { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 } as const;

/** Numbers of three decimals, all alike. */
const between = (min: number, max: number) => {
  const range = { min: Math.round(min * 1000), max: Math.round(max * 1000) };
  return fc.noBias(fc.integer(range)).map((n) => n / 1000);
};

const FRETS = 24;
/** Where profiles bend. */
const bend = fc.constantFrom(2, 5, 9, 12, 14, 15, 16, 17, 19, 20, 21, 22, 23);

/** Twelve-tone equal temperament. */
const placeOf = (scale: number, fret: number) => scale * (1 - 2 ** (-fret / 12));

/** Radius 180 to 500, its slope up to 0.4: constant, one cone, two that meet at a fret, or flat. */
function radiusOn(scale: number, length: number, fret: number): fc.Arbitrary<Profile> {
  const slope = between(-0.4, 0.4);
  const within = (r: number) => Math.min(500, Math.max(180, r));
  const start = between(180, 500);
  const cone = fc.tuple(start, slope).map(([nut, m]) => ({ nut, end: within(nut + m * length) }));
  const two = fc.tuple(start, slope, slope).map(([middle, m, n]) => ({
    nut: within(middle - m * placeOf(scale, fret)),
    [`fret${fret}`]: middle,
    end: within(middle + n * (length - placeOf(scale, fret))),
  }));
  return fc.oneof(start, cone, two, two, fc.constant(Infinity));
}

/** Level, or falling away from a fret on. */
function crownOn(fret: number): fc.Arbitrary<Profile> {
  const falling = fc.tuple(between(0, 0.3), between(0, 0.5)).map(([level, fall]) => ({
    nut: level,
    [`fret${fret}`]: level,
    end: level + fall,
  }));
  return fc.oneof(between(0, 0.5), falling, falling);
}

const point = between(0.3, 2);

const bit: fc.Arbitrary<Bit> = fc.oneof(
  fc.record({ kind: fc.constant("forstner" as const), point }),
  fc.record({ kind: fc.constant("brad-point" as const), point }),
  fc.record({ kind: fc.constant("twist" as const), angle: between(90, 150) }),
  fc.constant({ kind: "end-mill" as const }),
);

const fill: fc.Arbitrary<Fill> = fc.oneof(
  fc.constant({ kind: "poured" as const }),
  fc.record({ kind: fc.constant("solid" as const), thickness: between(1, 3) }),
);

const common = { fill, bit, depth: between(1, 5), diameter: between(3, 10) };
const frets = fc.subarray([3, 5, 7, 9, 12, 15, 17, 19, 21, 24], { minLength: 1, maxLength: 2 });

const singles: fc.Arbitrary<MarkerGroup> = fc.record({ ...common, frets });

const doubles: fc.Arbitrary<MarkerGroup> = fc.record(
  { ...common, frets, arrangement: fc.constant("double" as const), spread: between(11, 26) },
  { requiredKeys: ["fill", "bit", "depth", "diameter", "frets", "arrangement"] },
);

/** Beside the channel, or half over it. */
const besideChannel: fc.Arbitrary<MarkerGroup> = fc.record({
  fill,
  bit: fc.record({ kind: fc.constant("twist" as const), angle: between(90, 150) }),
  depth: between(1, 5),
  diameter: between(5, 9),
  frets: fc.constantFrom([7], [9], [10]),
  arrangement: fc.constant("double" as const),
  spread: between(9, 16),
});

const rectangle = (least: number, most: number) =>
  fc.record({
    kind: fc.constant("rectangle" as const),
    length: between(least, most),
    width: between(5, 30),
  });

const trapezoid = fc.record({
  kind: fc.constant("trapezoid" as const),
  slotGap: between(0.5, 3),
  edgeGap: between(2, 8),
});

/** Long ones run over the slots beside them, and over the place where a profile bends. */
const pocketsAt = (fret: number): fc.Arbitrary<MarkerGroup> =>
  fc.record({
    fill,
    depth: between(1, 5),
    frets: fc.constantFrom([fret], [fret + 1]),
    shape: fc.oneof(rectangle(3, 20), rectangle(30, 60), trapezoid),
  });

const channel = fc.record({
  width: between(4, 12),
  depth: between(0.5, 2),
  from: between(0, 90),
  to: between(200, 460),
});

function board(length: number): fc.Arbitrary<Design["board"]> {
  const thickness = fc.oneof(
    between(5.5, 8),
    fc.record({ nut: between(6, 7), end: between(5.5, 6.5) }),
  );
  const width = fc.record({ nut: between(40, 46), end: between(54, 60) });
  return fc.record(
    { length: fc.constant(length), width, thickness, channel },
    { requiredKeys: ["length", "width", "thickness"] },
  );
}

/** A neck of 24 frets with singles, doubles and pockets. */
export const inventedNeck: fc.Arbitrary<Design> = fc
  .tuple(between(500, 680), between(4, 20), bend)
  .chain(([scale, past, fret]) => {
    const length = placeOf(scale, FRETS) + past;
    return fc.record({
      scale: fc.constant({ length: scale, frets: FRETS }),
      board: board(length),
      radius: radiusOn(scale, length, fret),
      crown: crownOn(fret),
      markers: fc.tuple(singles, fc.oneof(doubles, besideChannel), pocketsAt(fret)),
      tolerance: fc.constant(EXACT),
    });
  });
