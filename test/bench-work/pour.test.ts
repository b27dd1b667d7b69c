/** Epoxy: cylinders, a cone and a block whose volumes are whole numbers or whole shares of π. */
import { expect, test } from "vitest";
import type { Marker } from "../../src/board/markers.js";
import type { GroupSpec } from "../../src/design/spec.js";
import { pourOf } from "../../src/drilling/pour.js";
import { groupOf } from "../layout/frames.js";
import { dotAt, pocketOver, specOf } from "./benches.js";

const spec = specOf({ pour: { waste: 0.25, resin: 3, hardener: 2 } });

const dot = (stated: Partial<GroupSpec> = {}): Marker =>
  dotAt(50, 0, { group: groupOf(stated), diameter: 20 });

test("cylinders, with waste, by the ratio", () => {
  // 2 · π · 10² · 5 mm³ = π ml; a quarter more
  const pour = pourOf(spec, [dot(), dot()], [5, 5]);
  expect(pour?.volume).toBeCloseTo(1.25 * Math.PI, 12);
  expect(pour?.resin).toBeCloseTo(0.75 * Math.PI, 12);
  expect(pour?.hardener).toBeCloseTo(0.5 * Math.PI, 12);
});

test("a twist bit of 90° leaves a cone as deep as its radius", () => {
  // π · 10² · (5 + 10/3)
  const pour = pourOf(spec, [dot({ bit: { kind: "twist", angle: 90 } })], [5]);
  expect(pour?.volume).toBeCloseTo((1.25 * Math.PI * 100 * (25 / 3)) / 1000, 12);
});

test("a pocket: its area times its depth", () => {
  const block = pocketOver([0, 40], [0, 20]);
  expect(pourOf(spec, [block], [4])?.volume).toBeCloseTo(1.25 * 3.2, 12);
});

test("a hole that no depth suits takes none; solid dots neither", () => {
  const solid = dot({ fill: { kind: "solid", thickness: 2, keep: 1 } });
  const pour = pourOf(spec, [solid, dot(), dot()], [5, undefined, 5]);
  expect(pour?.volume).toBeCloseTo(1.25 * 0.5 * Math.PI, 12);
  expect(pourOf(spec, [solid], [5])).toBeUndefined();
  expect(pourOf({ ...spec, pour: undefined }, [dot()], [5])).toBeUndefined();
});
