/** A fanned board begins before 0 on one edge, and its edges may bend between two slots. Lengths in mm. */
import { expect, it } from "vitest";
import { checkDesign, type Design, DesignError } from "../../src/index.js";

const EXACT = { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 };
const fan: Design = {
  scale: { bass: 690, treble: 640, perpendicular: 9, frets: 22 },
  board: { length: 520, width: 50, thickness: 6 },
  radius: 300,
  markers: [],
  tolerance: EXACT,
};

it("a crown that falls to 0 at the nut is 0 before it", () => {
  const { edges } = checkDesign({ ...fan, crown: { nut: 0, fret1: 0.3, end: 0.3 } });
  const nut = edges.find(({ station, side }) => station === "nut" && side === "bass");
  expect(nut?.along).toBeLessThan(-10);
  // by hand: the circle alone, R 300, 25 from the centre line
  const circle = 300 - Math.sqrt(300 ** 2 - 25 ** 2);
  expect(nut?.removal).toBeCloseTo(circle, 12);
  expect(nut?.thickness).toBeCloseTo(6 - circle, 12);
});

it("a crown that stays above 0 before the nut goes on falling there", () => {
  const { edges } = checkDesign({ ...fan, crown: { nut: 0.5, fret1: 0.6, end: 0.6 } });
  const nut = edges.find(({ station, side }) => station === "nut" && side === "bass");
  const circle = 300 - Math.sqrt(300 ** 2 - 25 ** 2);
  expect((nut?.removal ?? 0) - circle).toBeGreaterThan(0.4);
  expect((nut?.removal ?? 0) - circle).toBeLessThan(0.5);
});

it("a blank that thins to nothing before the nut is refused", () => {
  const board = { ...fan.board, thickness: { nut: 0.5, fret1: 2.5, fret2: 6, end: 6 } };
  expect(() => checkDesign({ ...fan, board })).toThrow(DesignError);
  expect(() => checkDesign({ ...fan, board })).toThrow(
    /board\.thickness: expected more than 0 mm everywhere on the board, received -/,
  );
});

it("a radius that falls below half the width before the nut is refused", () => {
  expect(() => checkDesign({ ...fan, radius: { nut: 26, fret1: 40, end: 40 } })).toThrow(
    /radius: expected more than half the width everywhere on the board, 25 mm at -/,
  );
});

it("a bend of the radius at the slot that is square counts from either side", () => {
  // That fret's slot lies on the bend but for rounding. The circle before it lies lower than the conic after it.
  for (let fret = 1; fret <= 18; fret++) {
    const { slots, edges } = checkDesign({
      ...fan,
      scale: { bass: 600, treble: 570, perpendicular: fret, frets: 20 },
      board: { length: 450, width: { nut: 40, end: 54 }, thickness: 6 },
      radius: { nut: 180, [`fret${fret}`]: 180, end: 260 },
      crown: 0,
      slot: { depth: 4, tang: 1.5, clearance: 0 },
    });
    const here = edges.find(({ station }) => station === `fret${fret}`);
    const offset = here?.offset ?? Number.NaN;
    const circle = 180 - Math.sqrt(180 ** 2 - offset ** 2);
    expect(slots?.frets[fret - 1]?.least).toBeGreaterThanOrEqual(1.5 + circle - 1e-9);
  }
});

const waist: Design = {
  ...fan,
  scale: { bass: 690, treble: 640, perpendicular: 0, frets: 22 },
  board: { length: 520, width: { nut: 54, fret5: 30, end: 60 }, thickness: 6 },
};

it("an edge that bends in under a pocket is past the edge, though every corner lies within it", () => {
  // The waist is 30 mm wide where the slot of fret 5 meets the centre line; its bass end lies beyond, its treble end before.
  const report = checkDesign({
    ...waist,
    markers: [{ frets: [6], shape: { kind: "rectangle", length: 64, width: 31 } }],
  });
  const at = report.findings.filter(({ code }) => code === "past-edge");
  const [hole] = report.holes;
  const alongs = hole?.outline?.map(({ along }) => along) ?? [];
  const bend = report.edges.find(({ station, side }) => station === "fret5" && side === "bass");
  expect(Math.min(...alongs)).toBeLessThan(bend?.along ?? 0);
  expect(at).toHaveLength(1);
});
