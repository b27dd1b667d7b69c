/** Arbitrary fanned necks with dots and pockets, all invented. Lengths in mm. */
import fc from "fast-check";
import { checkDesign, type Design, type MarkerGroup, type Report } from "../../src/index.js";

function between(lo: number, hi: number): fc.Arbitrary<number> {
  return fc.integer({ min: lo * 100, max: hi * 100 }).map((n) => n / 100);
}

const frets = fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 12 });
const arrangement = fc.constantFrom("single" as const, "double" as const);

const group: fc.Arbitrary<MarkerGroup> = fc.oneof(
  fc.record({ frets, arrangement, diameter: between(1, 30) }),
  fc.record({
    frets,
    arrangement,
    shape: fc.record({
      kind: fc.constant("rectangle" as const),
      length: between(2, 40),
      width: between(2, 50),
    }),
    bit: fc.constant({ kind: "end-mill" as const }),
  }),
  fc.record({
    frets,
    shape: fc.record({
      kind: fc.constant("trapezoid" as const),
      slotGap: between(1, 3),
      edgeGap: between(1, 12),
    }),
    bit: fc.constant({ kind: "end-mill" as const }),
  }),
);

const design: fc.Arbitrary<Design> = fc.record({
  scale: fc.record({
    bass: between(640, 900),
    treble: between(600, 840),
    perpendicular: between(0, 14),
    frets: fc.constant(22),
  }),
  board: fc.record({
    length: between(640, 700),
    width: fc.record({ nut: between(35, 60), end: between(45, 90) }),
    thickness: between(3, 9),
    channel: fc.record({ width: between(4, 12), depth: between(0, 3), from: between(0, 200) }),
  }),
  radius: fc.record({ nut: between(150, 500), end: between(150, 800) }),
  markers: fc.array(group, { minLength: 1, maxLength: 4 }),
});

/** Reports on such necks, of those that the check takes. */
export const fannedReport: fc.Arbitrary<Report> = design
  .map((neck) => {
    try {
      return checkDesign(neck);
    } catch {
      return undefined;
    }
  })
  .filter((report) => report !== undefined);
