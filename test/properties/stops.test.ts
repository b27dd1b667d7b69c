/** The stop plan, held against brute force over small sets of travels. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type StopPlan, stopSettings, type TravelWindow } from "../../src/index.js";

/** Windows on a coarse grid meet, touch and coincide often; fine ones hardly ever. Some have no travel at all. */
const coarse = fc.integer({ min: 0, max: 12 }).map((n) => n / 2);
const fine = fc.integer({ min: 0, max: 6e6 }).map((n) => n / 1e6);
const tool = fc.constantFrom("a", "b", undefined);

function windowsOf(edge: fc.Arbitrary<number>): fc.Arbitrary<TravelWindow[]> {
  const ordered = fc.tuple(edge, edge, tool).map(([a, b, name]) => ({
    min: Math.min(a, b),
    max: Math.max(a, b),
    tool: name,
  }));
  const any = fc.record({ min: edge, max: edge, tool });
  return fc.array(fc.oneof({ weight: 6, arbitrary: ordered }, any), { maxLength: 8 });
}

const windows = fc.oneof(windowsOf(coarse), windowsOf(fine));
const step = fc.option(fc.constantFrom(0.01, 0.1, 0.25, 1 / 3, 1, 4), { nil: undefined });

type Judge = (plan: StopPlan, of: readonly TravelWindow[], by: number | undefined) => void;

/** Draws windows and a step, and judges the plan. */
function eachPlan(judge: Judge): void {
  const plans = fc.property(windows, step, (of, by) =>
    judge(stopSettings(of, { step: by }), of, by),
  );
  fc.assert(plans);
}

const isOpen = ({ min, max }: TravelWindow) => min <= max;
const holds = ({ min, max }: TravelWindow, travel: number) => min <= travel && travel <= max;
const at = (of: readonly TravelWindow[], i: number) => of[i] as TravelWindow;

/** The fewest travels that lie in every window, by trying every set of greatest ones. */
function fewest(open: readonly TravelWindow[]): number {
  const ends = [...new Set(open.map(({ max }) => max))];
  let least = open.length;
  for (let set = 0; set < 2 ** ends.length; set++) {
    const travels = ends.filter((_, i) => (set >> i) & 1);
    const serves = open.every((window) => travels.some((travel) => holds(window, travel)));
    if (serves) least = Math.min(least, travels.length);
  }
  return least;
}

describe("stopSettings", () => {
  it("serves every hole that has a travel exactly once, within its window, and no other", () => {
    let closed = 0;
    eachPlan(({ settings }, of) => {
      const open = [...of.keys()].filter((i) => isOpen(at(of, i)));
      closed += of.length - open.length;
      const served = settings.flatMap(({ holes }) => holes);
      expect([...served].sort((a, b) => a - b)).toEqual(open);
      for (const { travel, holes } of settings) {
        for (const i of holes) {
          expect(travel).toBeGreaterThanOrEqual(at(of, i).min - 1e-9);
          expect(travel).toBeLessThanOrEqual(at(of, i).max + 1e-9);
        }
      }
    });
    expect(closed).toBeGreaterThan(0);
  });

  it("one travel for all where there is one, else the fewest for each tool, shallowest first", () => {
    const counts = new Set<number>();
    eachPlan(({ settings }, of) => {
      const open = of.filter(isOpen);
      const tools = [...new Set(open.map((window) => window.tool))];
      const each = tools.map((name) => fewest(open.filter((window) => window.tool === name)));
      const sum = each.reduce((a, b) => a + b, 0);
      expect(settings.length).toBe(fewest(open) === 1 ? 1 : sum);
      counts.add(settings.length);
      const travels = settings.map(({ travel }) => travel);
      expect(travels).toEqual([...travels].sort((a, b) => a - b));
    });
    for (const count of [0, 1, 2, 3, 4]) expect(counts, `${count} settings`).toContain(count);
  });

  it("has common travels exactly where the greatest min is not above the least max", () => {
    const seen = { common: 0, none: 0 };
    eachPlan(({ common, settings }, of) => {
      const [min, max] = [Math.max(...of.map((w) => w.min)), Math.min(...of.map((w) => w.max))];
      const isCommon = of.length > 0 && min <= max;
      seen[isCommon ? "common" : "none"]++;
      expect(common).toEqual(isCommon ? expect.objectContaining({ min, max }) : null);
      if (isCommon) expect(settings).toEqual([expect.objectContaining({ min, max })]);
    });
    expect(Math.min(seen.common, seen.none)).toBeGreaterThan(0);
  });

  it("names the holes that govern, and ends where they do", () => {
    eachPlan(({ common, settings }, of) => {
      for (const { min, max, minHole, maxHole } of common ? [common, ...settings] : settings) {
        expect([at(of, minHole).min, at(of, maxHole).max]).toEqual([min, max]);
      }
      for (const { min, max, holes } of settings) {
        expect(min).toBe(Math.max(...holes.map((i) => at(of, i).min)));
        expect(max).toBe(Math.min(...holes.map((i) => at(of, i).max)));
      }
    });
  });

  it("sets the step nearest to the middle where one lies inside, else the middle", () => {
    const seen = { step: 0, middle: 0 };
    eachPlan(({ settings }, _, by = 0) => {
      for (const { travel, min, max } of settings) {
        const middle = (min + max) / 2;
        const nearest = by > 0 ? Math.max(1, Math.round(middle / by)) * by : Number.NaN;
        const isStep = nearest >= min - 1e-9 && nearest <= max + 1e-9;
        seen[isStep ? "step" : "middle"]++;
        expect(Math.abs(travel - middle)).toBeCloseTo(isStep ? Math.abs(nearest - middle) : 0, 9);
        if (isStep) expect(Math.abs(travel / by - Math.round(travel / by))).toBeLessThan(1e-6);
      }
    });
    expect(Math.min(seen.step, seen.middle)).toBeGreaterThan(0);
  });

  it("any finite windows give finite travels that lie in them", () => {
    const ends = fc.constantFrom(-Number.MAX_VALUE, Number.MAX_VALUE, 5e-324, 0);
    const finite = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), ends);
    fc.assert(
      fc.property(windowsOf(finite), (of) => {
        for (const { travel, holes } of stopSettings(of).settings) {
          for (const i of holes) expect(holds(at(of, i), travel)).toBe(true);
        }
      }),
    );
  });
});
