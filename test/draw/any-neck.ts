/** Arbitrary necks, all invented: straight and fanned frets, dots and pockets, stops of both kinds. Lengths in mm. */
import fc from "fast-check";
import { checkDesign, type Design, type MarkerGroup, type Report } from "../../src/index.js";

function between(lo: number, hi: number): fc.Arbitrary<number> {
  return fc.integer({ min: lo * 100, max: hi * 100 }).map((n) => n / 100);
}

const frets = fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 9 });
const mill = fc.constant({ kind: "end-mill" as const });
const where = fc.oneof(
  fc.record({ frets }),
  fc.record({ frets, arrangement: fc.constant("double" as const), spread: between(0.1, 60) }),
  fc.record({ frets, arrangement: fc.constant("lengthwise" as const), spread: between(2, 9) }),
  fc.record({
    frets,
    arrangement: fc.constant("edge" as const),
    side: fc.constantFrom("bass" as const, "treble" as const),
    gap: between(0.5, 8),
  }),
  fc.record({
    places: fc.array(fc.record({ along: between(0, 500), offset: between(-20, 20) }), {
      minLength: 1,
      maxLength: 4,
    }),
  }),
);
const bit = fc.oneof(
  mill,
  fc.record({ kind: fc.constant("twist" as const), angle: between(60, 150) }),
  fc.record({
    kind: fc.constantFrom("forstner" as const, "brad-point" as const),
    point: between(0.5, 4),
  }),
);
const fill = fc.oneof(
  fc.record({ kind: fc.constant("poured" as const), keep: between(0.1, 3) }),
  fc.record({ kind: fc.constant("solid" as const), thickness: between(1, 6) }),
);
const shape = fc.oneof(
  fc.record({
    kind: fc.constant("rectangle" as const),
    length: between(2, 30),
    width: between(2, 50),
  }),
  fc.record({
    kind: fc.constant("polygon" as const),
    corners: fc.constant([
      { x: -6, y: -3 },
      { x: 7, y: 1 },
      { x: 0, y: 5 },
    ]),
  }),
);
const group = fc.oneof(
  fc.tuple(where, fc.record({ diameter: between(0.5, 30), bit, fill })),
  fc.tuple(where, fc.record({ shape, bit: mill, fill })),
);

const design = fc.record(
  {
    scale: fc.oneof(
      fc.record({ length: between(300, 900), frets: fc.constant(22) }),
      fc.record({
        bass: between(640, 900),
        treble: between(600, 840),
        square: between(0, 14),
        frets: fc.constant(22),
      }),
    ),
    board: fc.record({
      length: between(640, 700),
      width: fc.record({ nut: between(30, 60), end: between(40, 90) }),
      thickness: between(2, 60),
    }),
    radius: fc.oneof(fc.record({ nut: between(60, 500), end: between(60, 800) }), between(60, 400)),
    existing: fc.record({ radius: between(60, 500) }),
    sanding: between(0, 3),
    markers: fc.array(
      group.map(([at, work]) => ({ ...at, ...work }) as MarkerGroup),
      { minLength: 1, maxLength: 4 },
    ),
    stop: fc.oneof(
      fc.record({ from: fc.constant("table" as const) }),
      fc.record({ step: between(0.1, 1) }),
    ),
    depth: between(0.1, 9),
  },
  { requiredKeys: ["scale", "board", "radius", "markers"] },
);

/** Reports on such necks, of those that the check takes. */
export const anyReport: fc.Arbitrary<Report> = design
  .map((neck) => {
    try {
      return checkDesign(neck as Design);
    } catch {
      return undefined;
    }
  })
  .filter((report) => report !== undefined);
