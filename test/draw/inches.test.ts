/** Pictures in inches: the same lengths, read back at 25.4 mm to the inch (NIST SP 811). */
import { expect, test } from "vitest";
import { drawBoard, drawSection, drawSweep, drawWindows } from "../../src/draw/index.js";
import { sweep } from "../../src/index.js";
import { NECK, reportOf } from "./gallery.js";
import { linesIn, plotsIn, read, wordsIn } from "./svg.js";

const inches = { unit: "in" } as const;
const report = reportOf("twist bit");

test("a setting's line stands where its fraction says, inside the range of the report", () => {
  const drawing = read(drawWindows(report, inches));
  const [, whole = "0", over = "", under = ""] =
    /travel (?:(\d+) )?(\d+)\/(\d+) \(/.exec(wordsIn(drawWindows(report, inches)).join("\n")) ?? [];
  const set = Number(whole) + Number(over) / Number(under);
  const [line] = linesIn(drawing).filter(({ name }) => name === "setting");
  expect(plotsIn(drawing)[0]?.valueAt(line?.from[0] ?? NaN)).toBeCloseTo(set, 4);
  const [setting] = report.stops.settings;
  expect(set * 25.4).toBeGreaterThanOrEqual(setting?.min ?? NaN);
  expect(set * 25.4).toBeLessThanOrEqual(setting?.max ?? NaN);
});

test("plan and section tell places, widths and the bit in inches, and are drawn alike", () => {
  const plan = drawBoard(report, inches);
  const [hole] = report.holes;
  const told = (mm = NaN) => (mm / 25.4).toFixed(3).replace(/^0/, "");
  expect(wordsIn(plan)).toContain(`fret 3: ${told(hole?.along)}`);
  const frets = (svg: string) => linesIn(read(svg)).filter(({ name }) => name === "fret");
  expect(frets(plan)).toEqual(frets(drawBoard(report)));
  const section = wordsIn(drawSection(reportOf("plain"), 0, inches));
  // 6.35 mm, as bits are sold
  expect(section).toContain("Ø 1/4 (.250)");
  expect(section).toContain("R 10.000");
  expect(section.join(" ")).toContain("Lengths in inches");
  expect(section.join(" ")).not.toContain("mm");
});

test("a sweep's lengths are in inches, as short as tells them apart, and nothing else is", () => {
  const thick = [5, 5.001, 6.35];
  const rows = sweep(NECK, { "board.thickness": thick, "tolerance.radius": [0, 0.01] });
  const words = wordsIn(drawSweep(rows, inches));
  expect(words).toEqual(expect.arrayContaining(["board.thickness, in", "0.25"]));
  // 5 / 25.4 and 5.001 / 25.4
  expect(words).toEqual(expect.arrayContaining(["0.19685", "0.19689"]));
  expect(words).toEqual(expect.arrayContaining(["tolerance.radius, a fraction", "0.01"]));
});

test("another unit is refused", () => {
  const unit = { unit: "cm" } as never;
  for (const draw of [
    () => drawBoard(report, unit),
    () => drawWindows(report, unit),
    () => drawSection(report, 0, unit),
    () => drawSweep(sweep(NECK, { radius: [254] }), unit),
  ]) {
    expect(draw).toThrow(RangeError);
    expect(draw).toThrow(/^unit: expected "mm" or "in", received "cm"$/);
  }
});
