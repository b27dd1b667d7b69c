/** The sweep: every cell says what the report on its combination says. */
import { describe, expect, test } from "vitest";
import { drawSweep, type SweepPictureOptions } from "../../src/draw/index.js";
import { type Design, type Sweep, sweep } from "../../src/index.js";
import { NECK } from "./gallery.js";
import { classed, type Drawing, linesIn, read, runsOf, textsIn, wordsIn } from "./svg.js";

const THIN: Design = { ...NECK, web: 0.6 };
const RADII = [254, 150, 184, Infinity];
const THICK = [3, 2.6, 3.4];

/** The middle of an element. */
function middleOf({ tag, attributes }: Drawing["elements"][number]): [number, number] {
  if (tag === "circle") return [Number(attributes.cx), Number(attributes.cy)];
  const spots = runsOf(attributes.d ?? "").flat();
  const middle = (k: 0 | 1) =>
    (Math.min(...spots.map((s) => s[k])) + Math.max(...spots.map((s) => s[k]))) / 2;
  return [middle(0), middle(1)];
}

/** What stands in the cell at two labelled values. */
function cellAt(drawing: Drawing, x: string, y: string): string {
  const labels = textsIn(drawing);
  const centre = ({ left, right }: { left: number; right: number }) => (left + right) / 2;
  const frame = classed(drawing, "frame")[0];
  const bottom = Math.max(
    ...runsOf(frame?.attributes.d ?? "")
      .flat()
      .map(([, b]) => b),
  );
  const cx = centre(
    labels.find(({ words, box }) => words === x && box.top > bottom)?.box ?? {
      left: NaN,
      right: NaN,
    },
  );
  const cy =
    (labels.find(({ words, box }) => words === y && box.right < 0)?.at[1] ?? NaN) - 0.36 * 3.5;
  const isHere = ([a, b]: [number, number]) => Math.abs(a - cx) < 0.1 && Math.abs(b - cy) < 0.1;
  const mark = classed(drawing, "cell").find((element) => isHere(middleOf(element)));
  const figure = labels.find(({ at, box }) => isHere([centre(box), at[1] - 0.36 * 3.5]));
  return mark?.attributes.class?.replace("cell ", "") ?? figure?.words ?? "";
}

/** What a report says of its combination. */
function verdictOn(rows: Sweep, i: number): string {
  try {
    const { holes, stops } = rows.report(i);
    const none = holes.some(({ window }) => window.min > window.max);
    return none ? "none" : stops.settings.length === 1 ? "one" : String(stops.settings.length);
  } catch {
    return "unread";
  }
}

const label = (value: number | undefined) => (value === Infinity ? "flat" : String(value));

test("every cell of two axes says what the report says, values rising to the right and upward", () => {
  const rows = sweep(THIN, { radius: [...RADII, 20], "board.thickness": THICK });
  const drawing = read(drawSweep(rows));
  const verdicts = Array.from({ length: rows.size }, (_, i) => {
    const [radius, thickness] = rows.valuesAt(i);
    expect(cellAt(drawing, label(radius), label(thickness))).toBe(verdictOn(rows, i));
    return verdictOn(rows, i);
  });
  expect(new Set(verdicts).size).toBeGreaterThanOrEqual(3);
  const across = ["20", "150", "184", "254", "flat"].map(
    (words) => textsIn(drawing).find((text) => text.words === words)?.at[0] ?? NaN,
  );
  expect(across).toEqual([...across].sort((a, b) => a - b));
  const upward = ["3.4", "3", "2.6"].map(
    (words) => textsIn(drawing).find((text) => text.words === words)?.at[1] ?? NaN,
  );
  expect(upward).toEqual([...upward].sort((a, b) => a - b));
});

test("holes of several stops have no common travels, and are told from what cannot be made", () => {
  const markers = [
    { frets: [3], diameter: 6 },
    { frets: [5], diameter: 6, stop: { step: 0.5 } },
  ];
  const rows = sweep({ ...NECK, markers }, { radius: [20, 254], "board.thickness": [1, 6] });
  expect(rows.min[2]).toBe(Infinity);
  const drawing = read(drawSweep(rows));
  expect(
    [
      ["20", "1"],
      ["254", "1"],
      ["254", "6"],
    ].map(([x = "", y = ""]) => cellAt(drawing, x, y)),
  ).toEqual(["unread", "none", "2"]);
});

test("a wide line goes around the cells where one setting does, and they are shaded", () => {
  const drawing = read(drawSweep(sweep(THIN, { radius: RADII, "board.thickness": [2.6, 3.2, 4] })));
  const shaded = classed(drawing, "region").map(middleOf);
  const dots = classed(drawing, "cell")
    .filter(({ tag }) => tag === "circle")
    .map(middleOf);
  expect(shaded.length).toBeGreaterThan(1);
  expect(dots).toEqual(shaded);
  // a ray from a cell to the left crosses the line an odd number of times from within, an even one from without
  const sides = linesIn(drawing).filter(({ name }) => name === "frontier");
  const crossings = ([x, y]: [number, number]) =>
    sides.filter(
      ({ from, to }) => from[0] < x && Math.min(from[1], to[1]) < y && y < Math.max(from[1], to[1]),
    ).length;
  for (const spot of shaded) expect(crossings(spot) % 2).toBe(1);
  for (const cell of classed(drawing, "none")) expect(crossings(middleOf(cell)) % 2).toBe(0);
});

test("of other axes one value is held, and the picture says which", () => {
  const axes = { radius: RADII, "board.thickness": THICK, web: [0.4, 0.6, 2] };
  const rows = sweep(THIN, axes);
  const held = drawSweep(rows, { held: { web: 2 } });
  expect(wordsIn(held)).toContain("Held: web, mm: 2 (one of 3 values).");
  const same = sweep({ ...THIN, web: 2 }, { radius: RADII, "board.thickness": THICK });
  const cells = (svg: string) =>
    read(svg).elements.filter(({ attributes }) => attributes.class?.startsWith("cell"));
  expect(cells(held)).toEqual(cells(drawSweep(same)));
  expect(wordsIn(drawSweep(rows))).toContain("Held: web, mm: 0.4 (one of 3 values).");
  // turned about
  const drawing = read(drawSweep(rows, { x: "web", y: "radius", held: { "board.thickness": 1 } }));
  expect(cellAt(drawing, "2", "flat")).toBe(verdictOn(rows, 3 * 9 + 1 * 3 + 2));
});

test("of a part of the combinations the others are left empty", () => {
  const rows = sweep(THIN, { radius: RADII, "board.thickness": THICK }, { from: 1, to: 4 });
  const words = wordsIn(drawSweep(rows));
  expect(
    words.some((line) =>
      /^One stop setting suits all holes in \d of 3 combinations worked out\.$/.test(line),
    ),
  ).toBe(true);
  expect(words).toContain("not worked out");
});

test("one axis stands in one row; units follow the kind of number", () => {
  const units = (axes: object) =>
    wordsIn(drawSweep(sweep(NECK, axes))).filter((words) => words.includes(", "));
  expect(units({ radius: [254] })).toContain("radius, mm");
  expect(units({ "tolerance.radius": [0, 0.01] })).toContain("tolerance.radius, a fraction");
  const twist: Design = { ...NECK, bit: { kind: "twist" } };
  expect(wordsIn(drawSweep(sweep(twist, { "bit.angle": [90, 118] })))).toContain(
    "bit.angle, degrees",
  );
});

describe("refused:", () => {
  const rows = sweep(NECK, { radius: [184, 254], web: [0.5, 1], "bit.point": [1, 2] });
  const cases: readonly (readonly [object, RegExp])[] = [
    [
      { x: "sanding" },
      /^x: expected an axis of the sweep \(radius, web, bit\.point\), received "sanding"$/,
    ],
    [{ x: "web", y: "web" }, /^y: expected another axis than x, received "web"$/],
    [
      { held: { radius: 0 } },
      /^held\.radius: expected an axis of the sweep that is not drawn, received 0$/,
    ],
    [{ held: { sanding: 0 } }, /^held\.sanding: expected an axis/],
    [
      { held: { "bit.point": 2 } },
      /^held\.bit\.point: expected a whole number from 0 to 1, received 2$/,
    ],
    [{ held: { "bit.point": 0.5 } }, /^held\.bit\.point: expected a whole number/],
  ];

  test.each(cases)("%j", (options, message) => {
    const draw = () => drawSweep(rows, options as SweepPictureOptions);
    expect(draw).toThrow(RangeError);
    expect(draw).toThrow(message);
  });

  test("axes that are too long, or none at all", () => {
    const long = sweep(NECK, { web: [1], radius: Array.from({ length: 101 }, (_, i) => 200 + i) });
    expect(() => drawSweep(long)).toThrow(/^radius: expected 100 values at most, received 101$/);
    expect(() => drawSweep(sweep(NECK, {}))).toThrow(RangeError);
  });
});
