/** The sanding: bars lie where the thicknesses say, read back on the picture's own axes. */
import { expect, test } from "vitest";
import { drawSanding } from "../../src/draw/index.js";
import { DesignError } from "../../src/index.js";
import { type SandingReading, sandingProgress } from "../../src/measured/index.js";
import { SANDED } from "./pictures.js";
import { type Box, boxesIn, type Drawing, plotsIn, read, textsIn, wordsIn } from "./svg.js";

const PLACES = ["bass", "centre", "treble"] as const;

/** The bars of one class in one plot, from and to, from the top down; undefined where a row has none. */
function barsIn(drawing: Drawing, name: string, plot: number, rows: number) {
  const { left, right, bottom, valueAt } = plotsIn(drawing)[plot] ?? {
    left: NaN,
    right: NaN,
    bottom: NaN,
    valueAt: Number,
  };
  const inPlot = boxesIn(drawing, name).filter((box) => left <= box.left && box.right <= right);
  return Array.from({ length: rows }, (_, row) => {
    const middle = bottom - (rows - row - 0.5) * 6.4;
    const own = inPlot.filter((box: Box) => Math.abs((box.top + box.bottom) / 2 - middle) < 0.01);
    expect(own.length).toBeLessThanOrEqual(1);
    return own[0] && [valueAt(own[0].left), valueAt(own[0].right)];
  });
}

const near = (...ends: number[]) => ends.map((end) => expect.closeTo(end, 2));

// by hand: 0.2 off on the centre line; at 25 mm from it 254 − √(254² − 25²) more
const EDGE = 0.2 + 254 - Math.sqrt(254 ** 2 - 25 ** 2);

const READINGS: readonly SandingReading[] = [
  { along: 400, centre: 5.6, bass: 4.2, treble: 5.2 },
  { along: "nut", centre: 5.9, treble: 5.5 },
];

test("each bar is what is off; up to the finished surface wood is to go, and what lies past is solid", () => {
  const drawing = read(drawSanding(SANDED, READINGS));
  // from the nut on
  const bars = (name: string, place: (typeof PLACES)[number]) =>
    barsIn(drawing, name, PLACES.indexOf(place), 2);
  expect(bars("off", "bass")).toEqual([undefined, near(0, EDGE)]);
  expect(bars("past", "bass")).toEqual([undefined, near(EDGE, 1.8)]);
  expect(bars("go", "bass")).toEqual([undefined, undefined]);
  expect(bars("off", "centre")).toEqual([near(0, 0.1), near(0, 0.2)]);
  expect(bars("go", "centre")).toEqual([near(0.1, 0.2), undefined]);
  expect(bars("past", "centre")).toEqual([undefined, near(0.2, 0.4)]);
  expect(bars("go", "treble")).toEqual([near(0.5, EDGE), near(0.8, EDGE)]);
  expect(bars("finished", "treble")).toEqual([near(EDGE, EDGE), near(EDGE, EDGE)]);
  expect(bars("finished", "bass")).toEqual([undefined, near(EDGE, EDGE)]);
  const heights = ["nut", "400.00"].map(
    (name) => textsIn(drawing).find(({ words }) => words === name)?.at[1] ?? NaN,
  );
  expect(heights[1]).toBeGreaterThan(heights[0] ?? NaN);
});

test("each marker shows what is left now, what stays, its keep, and where it keeps too little a cross", () => {
  const markers = [
    { frets: [3], diameter: 6, depth: 2.2, fill: { kind: "poured", keep: 0.6 } },
    { frets: [15], diameter: 6, depth: 1.4, fill: { kind: "poured", keep: 1.1 } },
    { frets: [17], diameter: 6, depth: 0.4 },
  ] as const;
  const design = { ...SANDED, markers };
  const drawing = read(drawSanding(design, READINGS));
  const { holes } = sandingProgress(design, READINGS);
  const left = holes.map(({ markerLeft }) => markerLeft);
  expect(left.map(({ now }, i) => now >= ([0.6, 1.1, 0.8][i] ?? NaN))).toEqual([
    true,
    false,
    false,
  ]);
  expect(left[2]?.now).toBeLessThan(0);
  const bars = (name: string) => barsIn(drawing, name, 3, 3);
  expect(bars("marker")).toEqual([...left.slice(0, 2).map(({ now }) => near(0, now)), undefined]);
  expect(bars("stays")).toEqual([
    ...left.slice(0, 2).map(({ finished }) => near(0, finished)),
    undefined,
  ]);
  expect(bars("keep")).toEqual([near(0.6, 0.6), near(1.1, 1.1), near(0.8, 0.8)]);
  expect(bars("lost")).toEqual([
    undefined,
    near(left[1]?.now ?? NaN, 1.1),
    near(left[2]?.now ?? NaN, 0.8),
  ]);
  const words = wordsIn(drawSanding(design, READINGS));
  expect(words).toEqual(expect.arrayContaining(["below its keep", "may be gone"]));
  expect(words.join(" ")).toContain("STOP: 2 of 3 markers");
});

// enough now, but the finished surface leaves less than its keep
test("a marker that will be below its keep is told of before it is", () => {
  const design = { ...SANDED, depth: 1.1, markers: [{ frets: [3], diameter: 6 }] };
  const words = wordsIn(drawSanding(design, [{ along: "nut", centre: 5.99 }]));
  expect(words).toContain("will be below");
  expect(words).not.toContain("below its keep");
});

test("inches are the same picture with other figures", () => {
  const drawing = read(drawSanding(SANDED, READINGS, { unit: "in" }));
  const [bar] = barsIn(drawing, "past", 1, 2).slice(1);
  expect(bar?.map((end) => end * 25.4)).toEqual(near(0.2, 0.4));
  const words = textsIn(drawing).map((text) => text.words);
  // 400 / 25.4, and 0.2 / 25.4 is 0.00787: past is never told as less than it is
  expect(words).toEqual(expect.arrayContaining(["15.748", ".008 in past"]));
});

test("what cannot be read is refused", () => {
  const draw = (design: object, readings: unknown, options?: object) => () =>
    drawSanding(design as never, readings as never, options as never);
  expect(draw({ ...SANDED, radius: -1 }, READINGS)).toThrow(DesignError);
  expect(draw(SANDED, [{ along: "nut", centre: NaN }])).toThrow(/^readings\.0\.centre: expected/);
  expect(draw(SANDED, READINGS, { unit: "cm" })).toThrow(/^unit: expected "mm" or "in"/);
});
