/** The reader against the table of fields: every row by its bounds, every key, and whatever else may come. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DESIGN } from "../../src/design/fields.js";
import { type Form, listFields, type Variant } from "../../src/design/kinds.js";
import { newReading, readStated } from "../../src/design/read.js";
import { checkDesign, type Design, DesignError, type DesignIssue } from "../../src/index.js";
import { designs, statedDesigns } from "./arbitrary.js";
import { general, numberRow, pathsOf, type Spot, spotsIn, tagsOf, withValue } from "./walk.js";

/** What was read, and what was wrong with it. */
function read(value: unknown): { design: Design | undefined; issues: DesignIssue[] } {
  const issues: DesignIssue[] = [];
  return { design: readStated(value, newReading(issues)), issues };
}

/** The issues at a path, and below it. */
function issuesAt(value: unknown, path: string): DesignIssue[] {
  return read(value).issues.filter((issue) => `${issue.path}.`.startsWith(`${path}.`));
}

/** A plain neck, invented. */
const PLAIN: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [{ frets: [3, 5, 12], diameter: 6 }],
};

const SAMPLE = fc.sample(statedDesigns, { numRuns: 400, seed: 1 });

type Found = Spot & { readonly design: Design };
const ALL = SAMPLE.flatMap((design) => spotsIn(design).map((spot): Found => ({ ...spot, design })));

/** One for each row of the table and kind of value; of lists the first items. */
const SPOTS = new Map<string, Found>();
for (const spot of ALL.filter(({ path }) => !/\.[1-9]\d*/.test(path))) {
  SPOTS.set(`${general(spot.path)} ${typeof spot.value} ${spot.row.kind}`, spot);
}

const NUMBERS = [...SPOTS.values()].flatMap((spot) => {
  const row = numberRow(spot);
  return row ? [{ ...spot, row }] : [];
});

const OBJECTS = [...SPOTS.values()].filter(({ row }) => row.kind === "object");

/** The variants of a form, and of its cases. */
function variantsIn({ variants = [] }: Form): Variant[] {
  return variants.flatMap((variant) => [
    variant,
    ...Object.values(variant.cases).flatMap(variantsIn),
  ]);
}

/** The next number of 64 bits. */
function next(value: number, toward: number): number {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, value);
  const isOut = value === 0 || value > 0 === toward > value;
  bits.setBigInt64(0, bits.getBigInt64(0) + (isOut ? 1n : -1n));
  return bits.getFloat64(0);
}

describe("every row of the table", () => {
  test("is met by the designs drawn here, which are all read as they are", () => {
    const met = new Set([...SPOTS.keys()].map((key) => key.split(" ")[0]));
    const tags = pathsOf().filter((path) => /\.(?:kind|from|arrangement|shape)$/.test(path));
    expect(pathsOf().filter((path) => !met.has(path) && !tags.includes(path))).toEqual([]);
    expect(NUMBERS.length).toBeGreaterThan(70);
    for (const stated of SAMPLE) {
      const { design, issues } = read(stated);
      expect(issues).toEqual([]);
      const flat = JSON.stringify(stated, (_, value) => (value === "flat" ? Infinity : value));
      expect(JSON.parse(JSON.stringify(design))).toEqual(JSON.parse(flat));
    }
  });

  test.each(NUMBERS.map((spot) => [`${spot.path} ${spot.row.kind}`, spot] as const))(
    "%s: its bounds, to the last bit",
    (_, { path, row, design }) => {
      const { least, below, orZero, whole } = row;
      const frets =
        "positions" in design.scale ? design.scale.positions.length : design.scale.frets;
      const most = row.kind === "fret" ? frets : row.most;
      const isTaken = (value: unknown) =>
        issuesAt(withValue(design, path, value), path).length === 0;
      expect(isTaken(least)).toBe(true);
      expect(isTaken(most)).toBe(!below);
      expect(isTaken(next(most, -Infinity))).toBe(!whole);
      expect(isTaken(next(most, Infinity))).toBe(false);
      const under = least === 0 ? -Number.MIN_VALUE : next(least, -Infinity);
      expect(isTaken(under)).toBe(false);
      const zero = orZero === true || (least <= 0 && !whole);
      expect([isTaken(0), isTaken(-0)]).toEqual([zero, zero]);
      if (whole) expect(isTaken(least + 0.5)).toBe(false);
      for (const none of [Number.NaN, -Infinity, "1/4 in", "6", null, [], true, {}, 7n]) {
        expect(isTaken(none)).toBe(false);
      }
      const isFlat = row.kind === "radius" && /radius$/.test(path);
      if (row.kind !== "radius") expect(isTaken(Infinity)).toBe(false);
      if (isFlat) expect([isTaken(Infinity), isTaken("flat")]).toEqual([true, true]);
      const [issue] = issuesAt(withValue(design, path, -1e13), path);
      expect(issue).toMatchObject({ path, value: -1e13 });
      expect(issue?.message).toBe(`${path}: expected ${issue?.expected}, received -10000000000000`);
    },
  );

  test("that must be there is missed, and the others are not", () => {
    for (const { path, row, value, design } of OBJECTS) {
      for (const key of Object.keys(value as object)) {
        const rows = listFields(row as Form).filter(([name]) => name === key);
        const optional = new Set(rows.map(([, field]) => field.optional === true));
        const at = path === "" ? key : `${path}.${key}`;
        const without = withValue(design, at, undefined);
        if (rows.length === 0 || optional.size > 1) continue;
        if (optional.has(true)) expect(issuesAt(without, at), at).toEqual([]);
        // without its only key an object is of another case, whose keys are missed
        else expect(read(without).issues.length, at).toBeGreaterThan(0);
      }
    }
  });
});

describe("keys", () => {
  const within = (path: string, key: string) => (path === "" ? key : `${path}.${key}`);

  test.each(OBJECTS.map((spot) => [spot.path, spot] as const))("unknown in %j", (path, spot) => {
    const known = [
      ...listFields(spot.row as Form).map(([key]) => key),
      ...tagsOf(spot.row as Form),
    ];
    for (const key of known.filter((each) => !known.includes(`${each}s`))) {
      const at = within(path, `${key}s`);
      const [issue] = issuesAt(withValue(spot.design, at, 1), at);
      expect(issue?.expected).toMatch(/^a known key: "/);
      expect(issue?.expected.endsWith(`; did you mean "${key}"?`), at).toBe(true);
    }
    const far = within(path, "quixotically");
    const [issue] = issuesAt(withValue(spot.design, far, 1), far);
    expect(issue?.expected).not.toContain("did you mean");
  });

  test("of other cases, wherever a tag tells the case", () => {
    const seen = new Set<string>();
    for (const { path, row, value, design } of ALL.filter((spot) => spot.row.kind === "object")) {
      const stated = value as Record<string, unknown>;
      for (const { tag, cases } of variantsIn(row as Form)) {
        if (tag === undefined || (tag === "arrangement" && !("frets" in stated))) continue;
        const word = String(stated[tag] ?? Object.keys(cases)[0]);
        const others = Object.values(cases).flatMap(({ fields }) => Object.keys(fields));
        for (const key of others.filter((each) => !cases[word]?.fields[each])) {
          const at = within(path, key);
          const [issue] = issuesAt(withValue(design, at, 1), at);
          expect(issue?.expected, at).toMatch(new RegExp(`^none, unless ${tag} is "`));
          seen.add(`${general(path)} ${tag} ${word} ${key}`);
        }
      }
    }
    // arrangement 4 × 3 less what two have; four bits; two stops; two fills; three shapes; and so for each group
    expect(seen.size).toBeGreaterThan(50);
  });

  test.each<[string, object, string]>([
    ["scale", { length: 648, frets: 22, positions: [30, 60] }, '"positions"'],
    ["scale", { length: 648, frets: 22, treble: 640 }, '"bass"'],
    ["markers.0", { frets: [3], places: [{ along: 9, offset: 0 }], diameter: 6 }, '"places"'],
    [
      "markers.0",
      { frets: [3], diameter: 6, shape: { kind: "trapezoid", slotGap: 1, edgeGap: 1 } },
      '"shape"',
    ],
  ])("of other cases, in %s: %j", (path, value, beside) => {
    const plain = path === "scale" ? { ...PLAIN, markers: [] } : PLAIN;
    const { issues } = read(withValue(plain, path, value));
    expect(issues.map(({ expected }) => expected)).toContain(`none beside ${beside}`);
  });

  test("that are known and undefined are as good as left out, in whatever case", () => {
    const undefinedEverywhere = Object.fromEntries(
      listFields(DESIGN).map(([key]) => [key, undefined]),
    );
    for (const design of fc.sample(designs, { numRuns: 50, seed: 2 })) {
      const markers = design.markers.map((group) => ({
        diameter: undefined,
        spread: undefined,
        ...group,
      }));
      expect(read({ ...undefinedEverywhere, ...design, markers })).toEqual(read(design));
    }
  });

  test("a word is told with the near one", () => {
    const [design] = SAMPLE.filter(({ fill }) => fill) as [Design];
    const [issue] = issuesAt(withValue(design, "fill.kind", "poored"), "fill.kind");
    expect(issue?.expected).toBe('"poured" or "solid"; did you mean "poured"?');
    const [station] = issuesAt({ ...design, radius: { fert12: 254 } }, "radius.fert12");
    expect(station?.expected).toMatch(/; did you mean "fret12"\?$/);
  });
});

describe("what is stated twice, or in no order", () => {
  test.each<[string, unknown, string]>([
    ["markers", [{ frets: [3, 5, 3], diameter: 6 }], "markers.0.frets.2"],
    ["scale", { positions: [30, 60, 50] }, "scale.positions.2"],
    ["scale", { positions: [30, 30] }, "scale.positions.1"],
    ["radius", { nut: 254, end: Infinity }, "radius"],
    ["radius", { nut: "flat", fret5: 300 }, "radius"],
    ["radius", {}, "radius"],
    ["radius", { fret23: 254 }, "radius.fret23"],
    ["radius", { fret012: 254 }, "radius.fret012"],
    ["radius", { "fret7.5": 254 }, "radius.fret7.5"],
    ["markers", [{ frets: [], diameter: 6 }], "markers.0.frets"],
    ["markers", Array(21).fill(PLAIN.markers[0]), "markers"],
    ["pour", { ratio: [1] }, "pour.ratio"],
    ["pour", { ratio: [1, 2, 3] }, "pour.ratio"],
  ])("%s: %j", (key, value, path) => {
    const markers = key === "scale" ? { markers: [] } : {};
    const { issues } = read({ ...PLAIN, ...markers, [key]: value });
    expect(issues.map((issue) => issue.path)).toEqual([path]);
  });
});

describe("whatever comes", () => {
  test.each([undefined, null, 7, -0, true, 7n, Symbol("neck"), () => 7, [], new Array(3)])(
    "%s is no design",
    (value) => {
      const { design, issues } = read(value);
      expect(design).toBeUndefined();
      expect(issues.map(({ path }) => path)).toEqual([""]);
    },
  );

  test("a text is sent to readDesign, and so is a length that is one", () => {
    const told = [read(JSON.stringify(PLAIN)), read({ ...PLAIN, radius: "10 in" })];
    for (const { issues } of told) {
      expect(issues).toHaveLength(1);
      expect(issues[0]?.expected).toContain("`readDesign`");
    }
  });

  const refuse = () => {
    throw new Error("not to be touched");
  };
  const everyTrap = Object.fromEntries(
    Object.getOwnPropertyNames(Reflect).map((trap) => [trap, refuse]),
  );
  const untouchable = () => new Proxy({}, everyTrap);
  const revoked = () => {
    const { proxy, revoke } = Proxy.revocable([], {});
    revoke();
    return proxy;
  };

  test("in every place: proxies that throw, lists and objects that claim to be long", () => {
    for (const { path, design } of SPOTS.values()) {
      if (path === "") continue;
      const things = [
        untouchable(),
        revoked(),
        Object.assign([], { length: 2 ** 32 - 1 }),
        { length: 1e308 },
      ];
      for (const thing of things) {
        expect(issuesAt(withValue(design, path, thing), path).length, path).toBeGreaterThan(0);
      }
    }
  });

  test("a getter that throws is one issue of its own; the rest is read", () => {
    for (const key of ["radius", "web", "unheard"]) {
      const design = Object.defineProperty({ ...PLAIN, sanding: -1 }, key, {
        get: refuse,
        enumerable: true,
      });
      const { issues } = read(design);
      expect(issues.map(({ path }) => path).sort()).toEqual([key, "sanding"].sort());
      expect(issues.find(({ path }) => path === key)?.expected).toBe("a value that can be read");
    }
  });

  test("each field is read once", () => {
    const reads: string[] = [];
    const counting = (value: object, path: string): object =>
      new Proxy(value, {
        get: (target, key) => {
          reads.push(`${path}${String(key)}`);
          const inner = Reflect.get(target, key);
          return typeof inner === "object" && inner !== null
            ? counting(inner, `${path}${String(key)}.`)
            : inner;
        },
      });
    for (const design of SAMPLE.slice(0, 50)) {
      reads.length = 0;
      expect(read(counting(design, "")).issues).toEqual([]);
      expect(reads.length).toBeGreaterThan(5);
      expect(new Set(reads).size).toBe(reads.length);
    }
  });

  test("own fields alone count: what is inherited, hidden or polluted is none", () => {
    const inherits = Object.create(
      { radius: 300, sanding: 9 },
      Object.getOwnPropertyDescriptors(PLAIN),
    );
    expect(read(inherits)).toEqual(read(PLAIN));
    const polluted = JSON.parse(
      `{ "__proto__": { "radius": 1 }, ${JSON.stringify(PLAIN).slice(1)}`,
    );
    expect(read(polluted).issues.map(({ path }) => path)).toEqual(["__proto__"]);
    expect(read(Object.create(null, Object.getOwnPropertyDescriptors(PLAIN))).issues).toEqual([]);
  });

  test("a sparse list has undefined items", () => {
    const frets = new Array(2);
    frets[1] = 5;
    const { issues } = read({ ...PLAIN, markers: [{ frets, diameter: 6 }] });
    expect(issues).toMatchObject([{ path: "markers.0.frets.0", value: undefined }]);
  });
});

test("every problem of a design is in one error, in the order of the table", () => {
  for (const design of SAMPLE.slice(0, 40)) {
    const numbers = spotsIn(design).filter((spot) => numberRow(spot) && !/^scale/.test(spot.path));
    const paths = numbers.map(({ path }) => path).sort();
    const broken = paths.reduce<Design>(
      (value, path) => withValue(value, path, Number.NaN),
      design,
    );
    expect(
      read(broken)
        .issues.map(({ path }) => path)
        .sort(),
    ).toEqual(paths);
  }
  try {
    checkDesign({ ...PLAIN, radius: -1, web: -2 });
    expect.unreachable();
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    expect((error as Error).message).toMatch(
      /^2 problems in the design:\n {2}radius: .*-1\n {2}web: /,
    );
  }
});

test("a design is left as it was", () => {
  for (const design of SAMPLE.slice(0, 50)) {
    const before = structuredClone(design);
    read(design);
    expect(design).toEqual(before);
  }
});
