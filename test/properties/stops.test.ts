/** The stop plan, held against brute force over small sets of windows. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type StopPlan, type StopWindow, stopSettings } from "../../src/index.js";

/** Windows on a coarse grid meet, touch and coincide often; fine ones hardly ever. */
const coarse = fc.integer({ min: 0, max: 12 }).map((n) => n / 2);
const fine = fc.integer({ min: 0, max: 6e6 }).map((n) => n / 1e6);
const lead = fc.constantFrom(0, 0.5, 1, 2.25);

function windowOf(edge: fc.Arbitrary<number>): fc.Arbitrary<StopWindow> {
  const ordered = fc
    .tuple(edge, edge, lead)
    .map(([a, b, l]) => ({ min: Math.min(a, b), max: Math.max(a, b), lead: l }));
  const unordered = fc.record({ min: edge, max: edge, lead });
  const leadless = fc
    .tuple(edge, edge)
    .map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) }));
  return fc.oneof({ weight: 6, arbitrary: ordered }, unordered, leadless);
}

const windows = fc.oneof(
  fc.array(windowOf(coarse), { maxLength: 8 }),
  fc.array(windowOf(fine), { maxLength: 8 }),
);
const step = fc.constantFrom(0.01, 0.1, 0.25, 1 / 3, 1, 4);

/** A window that can be served. */
function opens({ min, max }: StopWindow): boolean {
  return min <= max;
}

function within(depth: number, { min, max }: StopWindow): boolean {
  return min <= depth && depth <= max;
}

/** The fewest depths that lie in every window, by trying every set of greatest depths. */
function fewest(open: readonly StopWindow[]): number {
  const candidates = [...new Set(open.map(({ max }) => max))];
  let least = open.length;
  for (let set = 0; set < 2 ** candidates.length; set++) {
    const depths = candidates.filter((_, i) => (set >> i) & 1);
    const serves = open.every((window) => depths.some((depth) => within(depth, window)));
    if (serves) least = Math.min(least, depths.length);
  }
  return least;
}

/** Holes that a plan serves, in order, as often as it does. */
function served({ settings }: StopPlan): number[] {
  return settings.flatMap(({ holes }) => holes).sort((a, b) => a - b);
}

/** Draws windows and a step, and judges the plan; counts plans with more than one setting, and steps taken. */
function eachPlan(judge: (plan: StopPlan, of: readonly StopWindow[], step?: number) => void): void {
  fc.assert(
    fc.property(windows, fc.option(step, { nil: undefined }), (of, by) => {
      judge(stopSettings(of, by === undefined ? {} : { step: by }), of, by);
    }),
  );
}

/** The window of that index. */
function at(of: readonly StopWindow[], i: number): StopWindow {
  const window = of[i];
  if (window === undefined) throw new Error(`no window ${i}`);
  return window;
}

describe("stopSettings", () => {
  it("each setting lies in the window of every hole that it serves", () => {
    let several = 0;
    eachPlan(({ settings }, of) => {
      if (settings.length > 1) several++;
      for (const { depth, holes } of settings) {
        expect(holes.length).toBeGreaterThan(0);
        for (const i of holes) expect(within(depth, at(of, i)), `hole ${i}`).toBe(true);
      }
    });
    expect(several).toBeGreaterThan(100);
  });

  it("serves every hole that has a depth exactly once, and no other", () => {
    let closed = 0;
    eachPlan((plan, of) => {
      const open = of.flatMap((window, i) => (opens(window) ? [i] : []));
      closed += of.length - open.length;
      expect(served(plan)).toEqual(open);
    });
    expect(closed).toBeGreaterThan(50);
  });

  it("no smaller number of settings would do", () => {
    const counts = new Set<number>();
    eachPlan(({ settings }, of) => {
      expect(settings.length).toBe(fewest(of.filter(opens)));
      counts.add(settings.length);
    });
    for (const count of [0, 1, 2, 3, 4]) expect(counts, `${count} settings`).toContain(count);
  });

  it("has a common window exactly where the greatest min is not above the least max", () => {
    const seen = { common: 0, none: 0, touching: 0 };
    eachPlan(({ common, settings }, of) => {
      const min = Math.max(...of.map((window) => window.min));
      const max = Math.min(...of.map((window) => window.max));
      if (of.length === 0 || !(min <= max)) {
        seen.none++;
        expect(common).toBeNull();
        return;
      }
      seen.common++;
      if (min === max) seen.touching++;
      expect(common).toMatchObject({ min, max });
      expect(settings.length).toBe(1);
      expect(settings[0]).toMatchObject({ min, max });
    });
    expect(seen.common).toBeGreaterThan(50);
    expect(seen.none).toBeGreaterThan(50);
    expect(seen.touching).toBeGreaterThan(5);
  });

  it("names the holes that govern, of the common window and of each setting", () => {
    eachPlan(({ common, settings }, of) => {
      for (const window of common ? [common, ...settings] : settings) {
        expect(at(of, window.minHole).min).toBe(window.min);
        expect(at(of, window.maxHole).max).toBe(window.max);
      }
      for (const { min, max, holes, minHole, maxHole } of settings) {
        expect(min).toBe(Math.max(...holes.map((i) => at(of, i).min)));
        expect(max).toBe(Math.min(...holes.map((i) => at(of, i).max)));
        expect(holes).toContain(minHole);
        expect(holes).toContain(maxHole);
      }
    });
  });

  it("comes shallowest first, with each setting's holes rising", () => {
    eachPlan(({ settings }) => {
      const depths = settings.map(({ depth }) => depth);
      expect(depths).toEqual([...depths].sort((a, b) => a - b));
      for (const { holes } of settings) expect(holes).toEqual([...holes].sort((a, b) => a - b));
    });
  });

  it("the depth is the middle where there is no step", () => {
    let settings = 0;
    eachPlan((plan, _, by) => {
      if (by !== undefined) return;
      for (const { depth, min, max } of plan.settings) {
        settings++;
        expect(depth).toBeCloseTo((min + max) / 2, 12);
      }
    });
    expect(settings).toBeGreaterThan(50);
  });

  it("the travel is the step nearest to the middle where one lies inside, else the depth is the middle", () => {
    const seen = { step: 0, middle: 0 };
    eachPlan((plan, _, by) => {
      if (by === undefined) return;
      for (const { depth, travel, min, max } of plan.settings) {
        const least = travel - depth;
        const middle = (min + max) / 2;
        const inside = stepsWithin(min, max, least, by);
        if (inside === undefined) continue;
        if (inside.length === 0) {
          seen.middle++;
          expect(depth).toBeCloseTo(middle, 9);
          continue;
        }
        seen.step++;
        expect(Math.abs(travel / by - Math.round(travel / by))).toBeLessThan(1e-6);
        const nearest = Math.min(...inside.map((d) => Math.abs(d - middle)));
        expect(Math.abs(depth - middle)).toBeCloseTo(nearest, 9);
      }
    });
    expect(seen.step).toBeGreaterThan(50);
    expect(seen.middle).toBeGreaterThan(50);
  });

  it("gives one travel for each lead, depth + lead, that shares the setting's holes out", () => {
    let several = 0;
    eachPlan(({ settings }, of) => {
      for (const { depth, travel, travels, holes } of settings) {
        if (travels.length > 1) several++;
        expect(travels.flatMap((each) => each.holes).sort((a, b) => a - b)).toEqual(holes);
        expect(travel).toBe(travels[0]?.travel);
        const leads = travels.map((each) => each.lead);
        expect(leads).toEqual([...new Set(leads)].sort((a, b) => a - b));
        for (const each of travels) {
          expect(each.travel).toBe(depth + each.lead);
          for (const i of each.holes) expect(at(of, i).lead ?? 0).toBe(each.lead);
        }
      }
    });
    expect(several).toBeGreaterThan(50);
  });

  it("a setting that fits may be moved: every window × 10^k or shifted gives as many settings", () => {
    const shift = fc.integer({ min: -8, max: 8 });
    fc.assert(
      fc.property(fc.array(windowOf(coarse), { maxLength: 8 }), shift, (of, k) => {
        const count = stopSettings(of).settings.length;
        const scaled = of.map(({ min, max }) => ({ min: min * 10 ** k, max: max * 10 ** k }));
        const moved = of.map(({ min, max }) => ({ min: min + k, max: max + k }));
        expect(stopSettings(scaled).settings.length).toBe(count);
        expect(stopSettings(moved).settings.length).toBe(count);
      }),
    );
  });
});

/** Depths in [min, max] whose travel is a multiple of the step; undefined where rounding decides. */
function stepsWithin(min: number, max: number, leading: number, by: number): number[] | undefined {
  const first = (min + leading) / by;
  const last = (max + leading) / by;
  const knife = [first, last].some((edge) => Math.abs(edge - Math.round(edge)) < 1e-9);
  if (knife) return undefined;
  const steps: number[] = [];
  for (let n = Math.ceil(first); n <= last; n++) steps.push(n * by - leading);
  return steps;
}

describe("numbers of any size", () => {
  const finite = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(-Number.MAX_VALUE, Number.MAX_VALUE, 5e-324, 0),
  );
  const any = fc
    .tuple(finite, finite)
    .map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) }));

  it("any finite windows give finite settings that lie in them", () => {
    let settings = 0;
    fc.assert(
      fc.property(fc.array(any, { maxLength: 5 }), (of) => {
        const plan = stopSettings(of);
        for (const { depth, holes } of plan.settings) {
          settings++;
          for (const i of holes) expect(within(depth, at(of, i)), `hole ${i}`).toBe(true);
        }
      }),
    );
    expect(settings).toBeGreaterThan(100);
  });

  it("what is no window or no step is refused", () => {
    const bad = fc.constantFrom(Number.NaN, Infinity, -Infinity);
    const key = fc.constantFrom("min", "max", "lead");
    fc.assert(
      fc.property(fc.array(windowOf(coarse), { minLength: 1 }), bad, key, (of, value, name) => {
        const [first, ...rest] = of;
        const broken = [...rest, { ...at(of, 0), ...first, [name]: value }];
        expect(() => stopSettings(broken)).toThrow(RangeError);
      }),
    );
    for (const value of [0, -0, -1, Number.NaN, Infinity]) {
      expect(() => stopSettings([{ min: 1, max: 2 }], { step: value })).toThrow(RangeError);
    }
  });
});
