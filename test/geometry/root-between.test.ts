import { expect, test } from "vitest";
import { rootBetween } from "../../src/geometry/root-between.js";

// roots that are known in closed form, from slopes gentle and steep, and from either side
test.each([
  ["√2", (x: number) => x * x - 2, 0, 2, Math.SQRT2, 1e-15],
  ["√2, from above", (x: number) => x * x - 2, 2, 0, Math.SQRT2, 1e-15],
  ["ln 1e3, up a steep slope", (x: number) => Math.exp(x) - 1000, 0, 20, Math.log(1000), 1e-14],
  // where a function is flat, it is 0 to the last bit all around
  ["a triple root", (x: number) => (x - 0.5) ** 3, 0, 1, 0.5, 1e-5],
  ["at an end", (x: number) => x - 3, 1, 3, 3, 0],
])("%s", (_, f, from, to, root, near) => {
  expect(Math.abs(rootBetween(f, from, to) - root)).toBeLessThanOrEqual(near);
});

test("it ends where rounding leaves no crossing", () => {
  let asked = 0;
  // near 700 numbers lie 1e-13 apart: no value is 0
  const f = (x: number) => {
    asked++;
    return x > 700 + Math.SQRT2 ? 1 : -1;
  };
  expect(Math.abs(rootBetween(f, 600, 800) - 701.4142135623731)).toBeLessThan(1e-9);
  expect(asked).toBeLessThan(100);
});
