/** What a single formula says of an argument it cannot take: name, bound and value, word for word. */
import { expect, test } from "vitest";
import {
  diagonalCrossing,
  radiusFromSagitta,
  sagitta,
  stopSettings,
  sweep,
} from "../../src/index.js";
import { PLAIN } from "./necks.js";

test.each<[() => unknown, string]>([
  [() => sagitta(0, 1), "radius: expected more than 0, received 0"],
  [() => sagitta(254, Infinity), "x: expected a finite distance, received Infinity"],
  [() => sagitta(254, 20, Number.NaN), "slope: expected a finite number, received NaN"],
  [() => sagitta(20, 20.5), "x: expected a distance that a radius of 20 reaches, received 20.5"],
  [() => radiusFromSagitta(Number.NaN, 1), "x: expected a finite distance, received NaN"],
  [() => radiusFromSagitta(8, -1), "h: expected a finite drop of 0 or more, received -1"],
  [() => radiusFromSagitta(0, 0), "h: expected more than 0 where x is 0, received 0"],
  [
    () => diagonalCrossing(450, 0, 56),
    "widthA: expected a finite length greater than 0, received 0",
  ],
  [
    () => stopSettings([], { step: 0 }),
    "step: expected a finite length greater than 0, received 0",
  ],
  [
    () => stopSettings([{ min: 1, max: Number.NaN }]),
    "windows.0.max: expected a finite number, received NaN",
  ],
  [
    () => stopSettings({} as never),
    "windows: expected an array of 10000 windows at most, received an object",
  ],
  [
    () => sweep(PLAIN, { radius: [254] }).at(1),
    "i: expected a whole number from 0 to 0, received 1",
  ],
  [
    () => sweep(PLAIN, { radius: [254] }, { from: 2, to: 1 }),
    "from: expected a whole number from 0 to 1, received 2",
  ],
])("%s", (call, message) => {
  expect(call).toThrow(new RangeError(message));
});

test("the very edge of what a surface reaches is reached, and flat drops nothing", () => {
  // by hand: at x = R a circle has dropped R
  expect(sagitta(20, 20)).toBe(20);
  expect(sagitta(Infinity, 1e9)).toBe(0);
  expect(radiusFromSagitta(5, 0)).toBe(Infinity);
  // x = 0: the circle through the crest and its own drop, R = h / 2
  expect(radiusFromSagitta(0, 6)).toBe(3);
});
