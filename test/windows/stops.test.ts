/** The stop plan: small sets of windows whose settings can be counted on a number line. */
import { describe, expect, test } from "vitest";
import { settingsNeeded, stopSettings } from "../../src/drilling/stops.js";

const window = (min: number, max: number) => ({ min, max });

/** Windows as a sweep keeps them: a window's max is the lesser of two. */
function needed(...windows: readonly (readonly [number, number, number])[]): number {
  return settingsNeeded({
    mins: windows.map(([min]) => min),
    maxs: windows.map(([, max]) => max),
    caps: windows.map(([, , cap]) => cap),
  });
}

describe("how many settings are needed", () => {
  test.each([
    [1, [[1, 2, 9]]],
    [1, [[2, 2, 2]]],
    [
      1,
      [
        [1, 2, 9],
        [2, 3, 9],
      ],
    ],
    [
      2,
      [
        [1, 2, 9],
        [2.01, 3, 9],
      ],
    ],
    [
      2,
      [
        [1, 9, 2],
        [2.01, 9, 3],
      ],
    ],
    [
      1,
      [
        [1, 9, 2],
        [2, 3, 9],
        [0, 9, 9],
      ],
    ],
    [
      3,
      [
        [7, 8, 9],
        [1, 2, 9],
        [4, 5, 9],
        [1.5, 4.5, 9],
      ],
    ],
    [
      2,
      [
        [1, 4, 9],
        [3, 6, 9],
        [5, 8, 9],
        [2, 7, 9],
      ],
    ],
  ] as const)("%d for %j", (count, windows) => {
    expect(needed(...windows)).toBe(count);
    const plan = stopSettings(windows.map(([min, max, cap]) => window(min, Math.min(max, cap))));
    expect(plan.settings).toHaveLength(count);
  });

  test("0 where a window is empty, wherever it stands and whichever bound empties it", () => {
    expect(needed([1, 2, 9], [3, 2.99, 9])).toBe(0);
    expect(needed([3, 9, 2.99], [1, 2, 9])).toBe(0);
    expect(needed([1, 2, 9], [1, Number.NaN, 9], [1, 2, 9])).toBe(0);
  });

  test("0 for no windows", () => {
    expect(needed()).toBe(0);
  });
});

describe("the holes that govern", () => {
  test("of holes alike, the first", () => {
    const { common, settings } = stopSettings([window(1, 3), window(1, 3), window(0, 4)]);
    expect(common).toEqual({ min: 1, max: 3, minHole: 0, maxHole: 0 });
    expect(settings[0]).toMatchObject({ minHole: 0, maxHole: 0, holes: [0, 1, 2] });
  });

  test("the greatest min and the least max", () => {
    const { common } = stopSettings([window(1, 9), window(2, 8), window(0, 7), window(1.5, 7.5)]);
    expect(common).toEqual({ min: 2, max: 7, minHole: 1, maxHole: 2 });
  });
});

describe("steps of the stop", () => {
  test.each([
    // on the window's own ends a step still suits
    [2, 2.9, 2],
    [2.1, 3, 3],
    // no step inside: the middle
    [2.25, 2.75, 2.5],
    [1, 3, 2],
    [1.2, 3.4, 2],
  ])("of 1 mm in [%d, %d]: %d", (min, max, depth) => {
    expect(stopSettings([window(min, max)], { step: 1 }).settings[0]?.depth).toBe(depth);
  });

  test("it is the travel that falls on a step", () => {
    const [setting] = stopSettings([{ min: 2, max: 4, lead: 0.75 }], { step: 0.5 }).settings;
    expect(setting).toMatchObject({ depth: 3.25, travel: 4 });
  });

  test("bits of two leads share a depth: a travel each, least first", () => {
    const windows = [
      { min: 2, max: 4, lead: 1.5 },
      { min: 2, max: 4 },
      { min: 2, max: 4, lead: 1.5 },
    ];
    expect(stopSettings(windows).settings).toMatchObject([
      {
        depth: 3,
        travel: 3,
        travels: [
          { lead: 0, travel: 3, holes: [1] },
          { lead: 1.5, travel: 4.5, holes: [0, 2] },
        ],
      },
    ]);
  });
});

describe("each hole joins the setting that lies deepest inside its window", () => {
  test("a hole that two settings suit", () => {
    const { common, settings } = stopSettings([window(1, 2), window(5, 6), window(1.9, 7)]);
    expect(common).toBeNull();
    expect(settings.map(({ holes }) => holes)).toEqual([[0], [1, 2]]);
  });

  test("a hole without any depth joins none", () => {
    const { common, settings } = stopSettings([window(1, 2), window(4, 3), window(1, 3)]);
    expect(common).toBeNull();
    expect(settings).toMatchObject([{ holes: [0, 2], min: 1, max: 2 }]);
  });
});

describe("misuse", () => {
  test("10,000 windows are taken, one more is not", () => {
    const many = Array.from({ length: 10_000 }, () => window(1, 2));
    expect(stopSettings(many).settings).toHaveLength(1);
    expect(() => stopSettings([...many, window(1, 2)])).toThrow(
      /^windows: expected an array of 10000 windows at most, received /,
    );
  });

  test.each([{ length: 0 }, "", null, 5])("%j is no array", (value) => {
    expect(() => stopSettings(value as never)).toThrow(/^windows: expected an array of 10000/);
  });

  test.each([null, 5, "window", undefined])("%j is no window", (value) => {
    expect(() => stopSettings([window(1, 2), value as never])).toThrow(
      /^windows\.1: expected an object with min and max, received /,
    );
  });

  test("options that cannot be read are named", () => {
    const options = {
      get step(): number {
        throw new Error("no");
      },
    };
    expect(() => stopSettings([], options)).toThrow(/^options: /);
  });
});
