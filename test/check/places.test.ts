/** Where in a design a problem is said to lie, and that a sound design has none. */
import { expect, test } from "vitest";
import {
  checkDesign,
  type Design,
  DesignError,
  type Hole,
  holeWindow,
  profileAt,
  repairHole,
} from "../../src/index.js";
import { worstHole } from "../../src/notebook/worst-hole.js";
import { pathsOf } from "./issues.js";
import { PLAIN as SOUND } from "./necks.js";

test("a sound design: no finding of any kind", () => {
  expect(checkDesign(SOUND).findings).toStrictEqual([]);
});

test.each([[[1]], [[1, 2, 3]], [[]]])("a ratio of %j", (ratio) => {
  const design = { ...SOUND, pour: { ratio } } as unknown as Design;
  expect(pathsOf(() => checkDesign(design))).toEqual(["pour.ratio"]);
});

test("a fanned scale's parts, each by its own name", () => {
  const scale = { bass: -1, treble: 0, perpendicular: Number.NaN, frets: 1.5 };
  expect(pathsOf(() => checkDesign({ ...SOUND, scale } as unknown as Design))).toEqual([
    "scale.bass",
    "scale.treble",
    "scale.frets",
    "scale.perpendicular",
  ]);
});

test("a planned depth far too shallow: how deep it must be", () => {
  const found = checkDesign({ ...SOUND, depth: 0.01 }).findings;
  expect(found.map(({ code }) => code)).toContain("nothing-left");
  for (const { fret, remedies } of found) {
    const depths = (remedies ?? []).filter(({ change }) => change === "depth");
    expect([fret, depths.length]).toEqual([fret, 1]);
  }
});

test("what a group leaves to the design is said to lie in the design", () => {
  const [group] = SOUND.markers;
  if (group === undefined) throw new Error("no group");
  const shared = {
    ...SOUND,
    bit: { kind: "end-mill" } as const,
    fill: { kind: "poured" } as const,
  };
  const inGroup = checkDesign({ ...shared, markers: [{ ...group, depth: 0.01 }] });
  const inDesign = checkDesign({ ...shared, markers: [group], depth: 0.01 });
  const changes = ({ findings }: typeof inGroup) =>
    findings.flatMap(({ remedies }) => remedies ?? []).map(({ change }) => change);
  expect(changes(inGroup)).toContain("markers.0.depth");
  expect(changes(inDesign)).toContain("depth");
  expect(changes(inGroup)).not.toContain("depth");
});

test("a profile on a fanned board needs the board's width", () => {
  const scale = { bass: 680, treble: 650, perpendicular: 7, frets: 22 };
  expect(pathsOf(() => profileAt(5, 100, { scale, board: { length: 490 } }))).toEqual([
    "board.width",
  ]);
});

test("a hole that the surface does not reach: its offset is named", () => {
  const tight = { ...SOUND, radius: 40 };
  expect(pathsOf(() => holeWindow(tight, { diameter: 6, offset: 38, along: 100 }))).toEqual([
    "hole.offset",
  ]);
  expect(pathsOf(() => holeWindow(tight, { diameter: 6, offset: 30, along: 100 }))).toEqual([]);
});

test("the worst hole is the one with the least room to either limit", () => {
  const hole = (min: number, max: number) => ({ window: { min, max }, planned: { depth: 3 } });
  const report = (...holes: ReturnType<typeof hole>[]) =>
    ({ holes: holes as unknown as Hole[], stops: { settings: [] } }) as never;
  expect(worstHole(report(hole(1, 5), hole(2.5, 9), hole(0, 4)))).toBe(1);
  expect(worstHole(report(hole(1, 5), hole(0, 3.4), hole(2, 9)))).toBe(1);
  expect(worstHole(report(hole(1, 9), hole(0, 9), hole(3.5, 9)))).toBe(2);
});

test("a stray hole and a rack, each wrong by itself and both at once", () => {
  const hole = { fret: 12, side: "bass", error: 0.4 } as const;
  const lost = { fret: 13, error: 0.4 } as const;
  expect(pathsOf(() => repairHole(SOUND, hole, [7, -1]))).toEqual(["rack.1"]);
  expect(pathsOf(() => repairHole(SOUND, lost, [7, 8]))).toEqual(["hole"]);
  expect(pathsOf(() => repairHole(SOUND, lost, [7, -1]))).toEqual(["rack.1", "hole"]);
  expect(pathsOf(() => repairHole(SOUND, hole, [7, 8]))).toEqual([]);
});

test("a message tells twenty problems and how many more there are; none is lost", () => {
  const wrong = (groups: number, frets = 0) => {
    const markers = Array.from({ length: groups }, () => ({ frets: [12], diameter: -1 }));
    const more = { frets: Array.from({ length: frets }, () => 99), diameter: 6 };
    try {
      checkDesign({ ...SOUND, markers: frets > 0 ? [...markers.slice(1), more] : markers });
    } catch (error) {
      if (error instanceof DesignError) return error;
    }
    throw new Error("no error");
  };
  const many = wrong(20, 8);
  expect(many.issues).toHaveLength(27);
  expect(many.message).toMatch(/^27 problems in the design:\n/);
  expect(many.message.split("\n")).toHaveLength(1 + 20 + 1);
  expect(many.message.split("\n").at(-1)).toBe("  … and 7 more, in `issues`");
  const all = wrong(20);
  expect(all.message.split("\n")).toHaveLength(1 + 20);
  expect(all.message).not.toContain("… and");
  expect(wrong(1).message).toMatch(/^1 problem in the design:\n {2}markers\.0\.diameter: /);
});
