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
/** How near a bound comes to the true extreme, mm, as docs/formulas.md says. */
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
        const points = pointsBetween(a, b, 400);
        const crosses = points.some((point) => isOverChannel(design, point));
        const webs = points.map((point) => woodUnder(design, fan, point, crosses));
        // the usual web
        const sampled = Math.min(...webs) - tolerancesOf(design).thickness - 1.5;
        // the thickness may bend between samples, and the channel may end
        if (!(most - sampled <= ROUNDING)) expect.fail(`fret ${fret}: ${most} above ${sampled}`);
        if (!(sampled - most <= NEAR)) expect.fail(`fret ${fret}: ${most} far below ${sampled}`);
        if (mostBy === "channel") expect(channel).toBeDefined();
        cases.add(crosses ? "crosses" : "clear");
        if (!crosses && mightCross(design, a, b)) cases.add("beside");
      }
    }),
    { numRuns: 150 },
  );
  expect(cases.of("crosses")).toBeGreaterThan(300);
  expect(cases.of("clear")).toBeGreaterThan(300);
});

it("a slot that only passes beside the channel keeps the wood there", () => {
  const design: Design = {
    scale: { bass: 690, treble: 640, perpendicular: 0, frets: 21 },
    board: {
      length: 505,
      width: 54,
      thickness: 6,
      channel: { width: 6, depth: 1.5, to: 455 },
    },
    radius: 300,
    markers: [],
    tolerance: { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 },
    slot: { depth: 2, tang: 1 },
  };
  const { slots } = checkDesign(design);
  const [a, b] = slotOf(linesOf(design), 21);
  expect(mightCross(design, a, b)).toBe(true);
  expect(slots?.frets.find(({ fret }) => fret === 21)).toMatchObject({ most: 4.5, mostBy: "web" });
  expect(slots?.frets.find(({ fret }) => fret === 12)).toMatchObject({
    most: 3,
    mostBy: "channel",
  });
});

/** The wood from the flat down to the underside, or to the channel; the channel's walls are its own. */
function woodUnder(design: Design, fan: Fan, point: Spot, crosses: boolean): number {
  const { least } = thicknessOver(design, fan, point[0], point[0]);
  return crosses && isOverChannel(design, point)
    ? least - (design.board.channel?.depth ?? 0)
    : least;
}

function isOverChannel({ board }: Design, [along, offset]: Spot): boolean {
  if (board.channel === undefined) return false;
  const { width, from = 0, to = board.length } = board.channel;
  return from <= along && along <= to && Math.abs(offset) <= width / 2;
}

/** The slot and the channel run side by side for a way. */
function mightCross({ board }: Design, a: Spot, b: Spot): boolean {
  if (board.channel === undefined) return false;
  const { from = 0, to = board.length } = board.channel;
  return from <= b[0] && a[0] <= to;
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
  // Where the radius bends, the section is a circle from before and a conic from after, K = −m² (docs/formulas.md): the
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
