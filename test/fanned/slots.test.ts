/** Slanted slots: the greatest removal along each, by dense sampling, and the wood under it. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { counter, dots, type Fan, fannedNeck, linesOf, type Spot } from "./fan.js";
import {
  bendsWithin,
  pointAt,
  pointsBetween,
  thicknessOver,
  tolerancesOf,
  worstCases,
} from "./surface.js";

const ROUNDING = 1e-9;
/** How near a bound comes to the true extreme, mm, by the design page. */
const NEAR = 0.01;

const neck = fannedNeck({ bentEdges: true, markers: dots });

/** A slot's ends in the order in which they lie along the board. */
function slotOf(fan: Fan, fret: number): [Spot, Spot] {
  const { bass, treble } = fan.ends(fret);
  return bass[0] < treble[0] ? [bass, treble] : [treble, bass];
}

/** Points along a slot, and every bend of the surface on it. */
function pointsOn(design: Design, fan: Fan, a: Spot, b: Spot): { points: Spot[]; bent: number } {
  const bent = bendsWithin(design, fan, a[0], b[0]).map((along) => pointAt(a, b, along));
  return { points: [...pointsBetween(a, b, 300), ...bent], bent: bent.length };
}

it("the least saw depth is tang, clearance and the greatest removal along the slot", () => {
  const cases = counter();
  fc.assert(
    fc.property(neck, (design) => {
      const { slots } = checkDesign(design);
      const fan = linesOf(design);
      const { most } = worstCases(design, fan);
      for (const { fret, least } of slots?.frets ?? []) {
        const [a, b] = slotOf(fan, fret);
        const { points, bent } = pointsOn(design, fan, a, b);
        const removals = points.map(most);
        const sampled = Math.max(...removals);
        // the usual clearance
        const stated = least - (design.slot?.tang ?? 0) - 0.2;
        const gap = stated - sampled;
        if (!(gap >= -ROUNDING)) expect.fail(`fret ${fret}: ${stated} is less than ${sampled}`);
        if (!(gap <= NEAR)) expect.fail(`fret ${fret}: ${stated} is far above ${sampled}`);
        cases.add("slot");
        if (bent > 0) cases.add("bent");
      }
      const deepest = Math.max(...(slots?.frets.map(({ least }) => least) ?? []));
      expect(slots?.least).toBe(deepest);
      expect(slots?.frets.find(({ fret }) => fret === slots.leastAt)?.least).toBe(deepest);
    }),
    { numRuns: 150 },
  );
  expect(cases.of("slot")).toBeGreaterThan(2500);
  expect(cases.of("bent")).toBeGreaterThan(90);
});

it("the most leaves the slot's web, above the channel too where the slot crosses it", () => {
  const cases = counter();
  fc.assert(
    fc.property(neck, (design) => {
      const { slots } = checkDesign(design);
      const fan = linesOf(design);
      const { channel } = design.board;
      for (const { fret, most, mostBy } of slots?.frets ?? []) {
        const [a, b] = slotOf(fan, fret);
        const crosses = channel !== undefined && crossesChannel(design, channel, a, b);
        const thickness = thicknessOver(design, fan, a[0], b[0]);
        // the usual web
        const under = thickness.least - tolerancesOf(design).thickness - 1.5;
        const deep = channel?.depth ?? 0;
        if (crosses) expect(mostBy).toBe("channel");
        const wanted = mostBy === "channel" ? under - deep : under;
        expect(Math.abs(most - wanted)).toBeLessThanOrEqual(ROUNDING);
        cases.add(crosses ? "crosses" : mostBy === "channel" ? "beside" : "clear");
      }
    }),
    { numRuns: 150 },
  );
  expect(cases.of("crosses")).toBeGreaterThan(300);
  expect(cases.of("clear")).toBeGreaterThan(300);
});

function crossesChannel(
  { board }: Design,
  { width, from = 0, to = board.length }: NonNullable<Design["board"]["channel"]>,
  a: Spot,
  b: Spot,
): boolean {
  return pointsBetween(a, b, 400).some(([along, offset]) => {
    return from <= along && along <= to && Math.abs(offset) <= width / 2;
  });
}

it("each edge loses what the surface lies below the flat there, on either side", () => {
  const cases = counter();
  fc.assert(
    fc.property(neck, (design) => {
      const exact = {
        ...design,
        tolerance: { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 },
      };
      const fan = linesOf(exact);
      const { most, least } = worstCases(exact, fan);
      for (const { side, along, offset, removal } of checkDesign(exact).edges) {
        const spot: Spot = [along, offset];
        expect(removal).toBeLessThanOrEqual(most(spot) + ROUNDING);
        expect(removal).toBeGreaterThanOrEqual(least(spot) - ROUNDING);
        cases.add(side ?? "both");
      }
    }),
    { numRuns: 100 },
  );
  for (const side of ["bass", "treble", "both"]) expect(cases.of(side)).toBeGreaterThanOrEqual(100);
});

it("a radius that begins to grow at the slot: either side of the bend counts", () => {
  // Where the radius bends, the section is a circle from before and a conic from after, K = −m² (design page): the
  // circle lies lower at the edge. By hand: R 180, 28.5 from the centre line.
  const { slots } = checkDesign({
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, fret12: 57, end: 57 }, thickness: 6 },
    radius: { nut: 180, fret12: 180, end: 240 },
    crown: 0,
    markers: [],
    tolerance: { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 },
    slot: { depth: 4, tang: 1.5, clearance: 0 },
  });
  const circle = 180 - Math.sqrt(180 ** 2 - 28.5 ** 2);
  expect(slots?.frets[11]?.least).toBeGreaterThanOrEqual(1.5 + circle - ROUNDING);
});

it("a hump in the crown that a slanted slot crosses takes more than either edge", () => {
  const design: Design = {
    scale: { bass: 690, treble: 640, perpendicular: 0, frets: 22 },
    board: { length: 520, width: 50, thickness: 8 },
    radius: 400,
    crown: { nut: 0, fret11: 0, fret12: 2, fret13: 0, end: 0 },
    markers: [],
    slot: { depth: 4, tang: 1.5 },
  };
  const fan = linesOf(design);
  const { most } = worstCases(design, fan);
  const [a, b] = slotOf(fan, 12);
  const { points } = pointsOn(design, fan, a, b);
  const sampled = Math.max(...points.map(most));
  // the slot crosses the centre line, and the hump, midway: 2 mm and the usual tolerance of 0.05
  expect(sampled).toBeCloseTo(2.05, 6);
  expect(Math.max(most(a), most(b))).toBeLessThan(sampled - 0.2);
  expect(checkDesign(design).slots?.frets[11]?.least).toBeCloseTo(1.5 + 0.2 + sampled, 6);
});
