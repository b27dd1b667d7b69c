import { describe, expect, test } from "vitest";
import { checkDesign, type Design, DesignError, type DesignIssue } from "../../src/index.js";
import { PLAIN } from "./necks.js";

function issuesOf(design: unknown): readonly DesignIssue[] {
  try {
    checkDesign(design as Design);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    expect(error).toBeInstanceOf(RangeError);
    expect((error as DesignError).name).toBe("DesignError");
    return (error as DesignError).issues;
  }
  throw new Error("the design was taken");
}

/** The plain neck with one path set. */
function withPath(path: string, value: unknown): unknown {
  const design = structuredClone(PLAIN) as unknown;
  const keys = path.split(".");
  const last = keys.pop() as string;
  let place = design as Record<string, unknown>;
  for (const key of keys) {
    place[key] ??= {};
    place = place[key] as Record<string, unknown>;
  }
  place[last] = value;
  return design;
}

describe("one problem each: its path, its value, what was expected", () => {
  test.each<[string, unknown, RegExp]>([
    ["scale.length", Number.NaN, /more than 0/],
    ["scale.length", Infinity, /more than 0/],
    ["scale.length", 0, /more than 0/],
    ["scale.length", -648, /more than 0/],
    ["scale.length", "648", /more than 0/],
    ["scale.frets", 22.5, /whole number from 1 to 250/],
    ["scale.frets", 1e6, /whole number from 1 to 250/],
    ["board.length", Number.NaN, /more than 0/],
    ["board.width.nut", -1, /more than 0/],
    ["board.thickness", 0, /more than 0/],
    ["board.thickness", Infinity, /more than 0/],
    ["radius", Number.NaN, /Infinity for flat/],
    ["radius", -254, /Infinity for flat/],
    ["radius", 0, /Infinity for flat/],
    ["crown", -0.1, /0 mm or more/],
    ["crown", Infinity, /0 mm or more/],
    ["web", -1, /0 mm or more/],
    ["depth", 0, /more than 0/],
    ["stopStep", 0, /more than 0/],
    ["name", 7, /a text/],
    ["markers", {}, /an array of marker groups/],
    ["markers.0", 3, /an object with/],
    ["markers.0.frets", 3, /an array of fret numbers/],
    ["markers.0.frets", [], /one fret number or more/],
    ["markers.0.frets.0", 23, /whole number from 1 to 22/],
    ["markers.0.frets.0", 0, /whole number from 1 to 22/],
    ["markers.0.frets.1", 3, /each fret once/],
    ["markers.0.diameter", -6, /more than 0/],
    ["markers.0.diameter", undefined, /more than 0/],
    ["markers.1.arrangement", "doubled", /did you mean "double"/],
    ["markers.1.along", "middle", /"diagonals" or "midpoint"/],
    ["markers.0.spread", 20, /unless arrangement is "double"/],
    ["fill.kind", "poored", /did you mean "poured"/],
    ["bit.kind", "drill", /"forstner", "brad-point", "twist" or "end-mill"/],
    ["tolerance.radius", 1, /a fraction of 0 or more and less than 1/],
    ["tolerance.stop", -0.1, /0 mm or more/],
    ["pour.waste", -1, /a fraction/],
  ])("%s = %j", (path, value, expected) => {
    const issues = issuesOf(withPath(path, value));
    expect(issues.map((issue) => issue.path)).toContain(path);
    const issue = issues.find((found) => found.path === path);
    expect(issue?.value).toEqual(value);
    expect(issue?.expected).toMatch(expected);
    expect(issue?.message).toContain(`${path}: expected ${issue?.expected}, received `);
  });

  test.each<[string, unknown, string]>([
    ["radius", { fert12: 254 }, "radius.fert12"],
    ["radius", { fret23: 254 }, "radius.fret23"],
    ["radius", { fret012: 254 }, "radius.fret012"],
    ["board.width", { nutt: 43 }, "board.width.nutt"],
    ["board", { lenght: 482, width: 50, thickness: 6 }, "board.lenght"],
    ["radiuss", 254, "radiuss"],
    ["fill", { kind: "solid", thickness: 2, keeps: 1 }, "fill.keeps"],
    ["tolerance", { stops: 0.1 }, "tolerance.stops"],
    ["scale", { length: 648, fret: 22 }, "scale.fret"],
  ])("an unknown name in %s is told, with a near one: %j", (path, value, where) => {
    const issue = issuesOf(withPath(path, value)).find((found) => found.path === where);
    expect(issue?.expected).toMatch(/did you mean "/);
  });

  test("the near name is the right one", () => {
    const [issue] = issuesOf(withPath("radius", { fert12: 254 }));
    expect(issue?.expected).toContain('did you mean "fret12"?');
    const near = issuesOf(withPath("stopstep", 0.1));
    expect(near[0]?.expected).toContain('did you mean "stopStep"?');
  });

  test("a name that is near to nothing offers none", () => {
    const [issue] = issuesOf(withPath("colour", "red"));
    expect(issue?.path).toBe("colour");
    expect(issue?.expected).not.toContain("did you mean");
  });
});

describe("parts that do not suit each other", () => {
  test.each<[string, string, unknown]>([
    ["a profile without stations", "radius", {}],
    ["fret positions that fall", "scale.positions.2", { positions: [30, 60, 50] }],
    ["fret positions that stay", "scale.positions.1", { positions: [30, 30, 50] }],
    ["two stations at one place", "board.width.end", { fret22: 50, end: 60 }],
    ["a radius flat at one end only", "radius", { nut: 254, end: Infinity }],
    ["a radius of half the width", "radius", 28.5],
    ["a radius below half the width at one end", "radius", { nut: 254, end: 28 }],
    ["a crown that rises out of the wood", "crown", { fret12: 0.1, end: 0.5 }],
  ])("%s", (_, path, value) => {
    const top = path.startsWith("scale") ? "scale" : path.split(".").slice(0, -1).join(".") || path;
    const design = withPath(top, value) as { board: { length: number } };
    if (path === "board.width.end") design.board.length = 648 * (1 - 2 ** (-22 / 12));
    const issues = issuesOf(
      path.startsWith("scale") ? { ...(design as object), markers: [] } : design,
    );
    expect(issues.map((issue) => issue.path)).toEqual([path]);
  });

  test("a radius is held against the width between the stations too", () => {
    const width = { nut: 43, fret10: 70, end: 57 };
    const design = { ...PLAIN, radius: 34, board: { ...PLAIN.board, width } };
    const [issue] = issuesOf(design);
    expect(issue?.path).toBe("radius");
    expect(issue?.expected).toContain("35 mm");
    expect(() => checkDesign({ ...design, radius: 36 })).not.toThrow();
  });

  test("a board shorter than a marked fret, but not than an unmarked one", () => {
    const board = { ...PLAIN.board, length: 454 };
    // fret 21 lies at 455.4 mm, fret 20 at 443.9 mm
    const [issue, more] = issuesOf({ ...PLAIN, board });
    expect(issue).toMatchObject({ path: "markers.0.frets.7", value: 21 });
    expect(more).toBeUndefined();
    const markers = [{ frets: [3, 20], diameter: 6 }];
    expect(checkDesign({ ...PLAIN, board, markers }).edges.map(({ station }) => station)).toContain(
      "fret20",
    );
  });

  test("a dot that reaches beyond the finished surface", () => {
    const markers = [
      { frets: [5], diameter: 6, arrangement: "double" as const, spread: 52 },
      { frets: [7], diameter: 6 },
    ];
    const issues = issuesOf({ ...PLAIN, radius: 28.6, markers });
    expect(issues).toHaveLength(1);
    expect(issues[0]?.expected).toContain("29.25");
    expect(issues[0]?.path).toBe("radius");
  });

  test("a tolerance within which the radius falls below half the width", () => {
    const issues = issuesOf({ ...PLAIN, radius: 40, tolerance: { radius: 0.5 }, markers: [] });
    expect(issues.map(({ path }) => path)).toEqual(["tolerance.radius"]);
  });
});

describe("all at once", () => {
  test("every problem of a design is in one error", () => {
    const issues = issuesOf({
      scale: { length: -1, frets: 22 },
      board: { length: 482, width: { nut: 43, ned: 57 }, thickness: Number.NaN },
      radius: {},
      markers: [{ frets: [3, 3], diameter: "6" }, { frets: [12] }],
      tolerance: { stop: -1, layout: null },
    });
    expect(issues.map(({ path }) => path).sort()).toEqual(
      [
        "board.thickness",
        "board.width.ned",
        "markers.0.diameter",
        "markers.0.frets.1",
        "markers.1.diameter",
        "radius",
        "scale.length",
        "tolerance.layout",
        "tolerance.stop",
      ].sort(),
    );
  });

  test("the message names them all", () => {
    try {
      checkDesign({ ...PLAIN, radius: -1, web: -2 });
      expect.unreachable();
    } catch (error) {
      expect((error as Error).message).toMatch(/^2 problems in the design:\n {2}radius: .*-1\n/);
      expect((error as Error).message).toContain("web: expected");
    }
  });

  test.each([undefined, null, 3, "neck", [], () => 1])("%s is no design", (value) => {
    const [issue] = issuesOf(value);
    expect(issue?.path).toBe("");
    expect(issue?.message).toMatch(/^design: expected an object/);
  });

  test("an optional field that is undefined is as good as left out", () => {
    const design = { ...PLAIN, crown: undefined, slot: undefined, tolerance: { stop: undefined } };
    expect(checkDesign(design as unknown as Design)).toEqual(checkDesign(PLAIN));
  });
});

test("a rod channel that ends before it begins", () => {
  const board = { ...PLAIN.board, channel: { width: 6, depth: 1, from: 20, to: 15 } };
  expect(issuesOf({ ...PLAIN, board })).toMatchObject([{ path: "board.channel.from", value: 20 }]);
});
