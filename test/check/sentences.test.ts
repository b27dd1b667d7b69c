/** What a cure is called at the bench, its threshold rounded to the safe side. */
import { expect, test } from "vitest";
import { joined, remedyWords } from "../../src/sentences.js";

test.each([
  ["board.thickness", "a thicker blank, 6.13 instead of 6.00"],
  ["board.thickness.end", "a thicker blank, at the end 6.13 instead of 6.00"],
  ["board.thickness.fret12", "a thicker blank, at fret 12 6.13 instead of 6.00"],
  ["radius", "a flatter radius, 6.13 instead of 6.00"],
  ["radius.nut", "a flatter radius, at the nut 6.13 instead of 6.00"],
  ["markers.1.diameter", "a smaller dot, (group 2) 6.13 instead of 6.00"],
  ["markers.0.spread", "the pair's spread, (group 1) 6.13 instead of 6.00"],
  ["bit.point", "a shorter point, 6.13 instead of 6.00"],
  ["markers.10.bit.point", "a shorter point, (group 11) 6.13 instead of 6.00"],
  ["bit.angle", "a blunter twist bit, degrees: 7 instead of 6"],
  ["web", "a thinner web, 6.13 instead of 6.00"],
  ["slot.web", "a thinner web under the slots, 6.13 instead of 6.00"],
  ["fill.keep", "a thinner keep, 6.13 instead of 6.00"],
  ["board.channel.depth", "a shallower rod channel, 6.13 instead of 6.00"],
  ["fill.thickness", "a thicker dot, 6.13 instead of 6.00"],
  ["depth", "another depth for all, 6.13 instead of 6.00"],
  ["markers.2.depth", "a separate setting, (group 3) 6.13 instead of 6.00"],
  ["slot.depth", "another saw depth, 6.13 instead of 6.00"],
  ["slot.tang", "a shorter tang, 6.13 instead of 6.00"],
  ["slot.clearance", "less clearance under the tang, 6.13 instead of 6.00"],
  ["sideDots.margin", "a smaller margin around the side dots, 6.13 instead of 6.00"],
  ["sideDots.depth", "shallower side dot holes, 6.13 instead of 6.00"],
  // a change without words of its own is called by its path
  ["scale", "scale 6.13 instead of 6.00"],
])("%s: %s", (change, words) => {
  expect(remedyWords({ change, from: 6, to: 6.123 })).toBe(words);
});

test("a threshold above is rounded up, one below down", () => {
  expect(remedyWords({ change: "web", from: 1, to: 0.799 })).toBe(
    "a thinner web, 0.79 instead of 1.00",
  );
  expect(remedyWords({ change: "depth", from: 1, to: 1.121 })).toBe(
    "another depth for all, 1.13 instead of 1.00",
  );
  // tan(a/2) = 3.5 / 1.9: 123.02°
  const angle = (360 / Math.PI) * Math.atan(3.5 / 1.9);
  expect(remedyWords({ change: "bit.angle", from: 118, to: angle })).toBe(
    "a blunter twist bit, degrees: 124 instead of 118",
  );
});

test("lists", () => {
  expect(joined([])).toBe("");
  expect(joined(["a"])).toBe("a");
  expect(joined(["a", "b"])).toBe("a and b");
  expect(joined(["a", "b", "c"])).toBe("a, b and c");
});
