/** Moisture and movement of wood. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { dimensionalChange, equilibriumMoisture } from "../../src/measured/index.js";
import { between, forAll } from "../outside/counted.js";
import { expectPrinted } from "../outside/printed.js";

// Wood Handbook (FPL-GTR-190), table 4-2, 70 °F (memory); the equation agrees to 0.05
test.each([
  [30, 6.2],
  [45, 8.5],
  [65, 12],
])("70 °F, %d %%: about %d %% of moisture", (humidity, print) => {
  const celsius = ((70 - 32) * 5) / 9;
  expect(Math.abs(equilibriumMoisture(celsius, humidity) - print)).toBeLessThanOrEqual(0.05);
});

test("dry air takes all moisture; damper and cooler air gives more", () => {
  forAll(fc.tuple(between(-10, 40), between(0, 99)), ([celsius, humidity]) => {
    expect(equilibriumMoisture(celsius, 0)).toBe(0);
    const here = equilibriumMoisture(celsius, humidity);
    expect(equilibriumMoisture(celsius, humidity + 1)).toBeGreaterThan(here);
    // table 4-2 (memory): between 10 and 75 % a column falls from 5 °C on
    if (celsius > 5 && humidity > 10 && humidity < 75) {
      expect(equilibriumMoisture(celsius + 1, humidity)).toBeLessThan(here);
    }
  });
});

test("the handbook's fir: 232 mm, 0.00245, 8 to 11 %", () => {
  // Wood Handbook (FPL-GTR-190), eq. 13-2, worked example: 1.7 mm
  expectPrinted(dimensionalChange(232, 0.00245, 8, 11), "1.7");
  expectPrinted(dimensionalChange(232, 0.00245, 11, 8), "-1.7");
});

test("a 56 mm board of maple, dried by 3 %: by hand", () => {
  // Wood Handbook table 13-5: sugar maple, tangential 0.00353; 56 · 0.00353 · 3 = 0.593
  expectPrinted(dimensionalChange(56, 0.00353, 9, 6), "-0.593");
  expect(dimensionalChange(0, 0.00353, 9, 6)).toBeCloseTo(0, 12);
});
