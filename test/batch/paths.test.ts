/** Paths that a sweep can vary: each what it has a part in, what is no path, and a number set at its place. */
import { expect, test } from "vitest";
import { PATHS, type Part, partOf, withNumber } from "../../src/design/paths.js";
import type { Design } from "../../src/index.js";
import { PLAIN } from "../check/necks.js";

const BY_PART: Readonly<Record<Part, readonly string[]>> = {
  frame: [
    "scale.length",
    "scale.bass",
    "scale.treble",
    "scale.perpendicular",
    "board.length",
    "board.width",
    "board.width.nut",
    "board.width.fret12",
    "board.width.end",
  ],
  surface: [
    "radius",
    "radius.nut",
    "radius.fret1",
    "radius.fret250",
    "radius.end",
    "crown",
    "crown.nut",
    "crown.fret22",
    "crown.end",
    "tolerance.crown",
    "tolerance.radius",
  ],
  thickness: [
    "board.thickness",
    "board.thickness.nut",
    "board.thickness.fret7",
    "board.thickness.end",
  ],
  markers: [
    "markers.0.diameter",
    "markers.0.spread",
    "markers.12.shape.length",
    "markers.12.shape.width",
    "markers.1.shape.slotGap",
    "markers.1.shape.edgeGap",
    "markers.0.fill.keep",
    "markers.0.fill.thickness",
    "markers.0.bit.point",
    "markers.0.bit.angle",
    "fill.keep",
    "fill.thickness",
    "bit.point",
    "bit.angle",
  ],
  layout: ["tolerance.layout"],
  wood: [
    "web",
    "tolerance.thickness",
    "board.channel.width",
    "board.channel.depth",
    "board.channel.from",
    "board.channel.to",
  ],
  stop: ["tolerance.stop"],
  none: ["stopStep", "depth", "markers.0.depth", "markers.19.depth"],
};

const KNOWN = Object.entries(BY_PART).flatMap(([part, paths]) =>
  paths.map((path) => [path, part] as const),
);

test.each(KNOWN)("%s has a part in: %s", (path, part) => {
  expect(partOf(path)).toBe(part);
});

test.each(KNOWN)("%s, and nothing before or behind it", (path) => {
  for (const wrong of [`x${path}`, `${path}x`, `.${path}`, `${path}.`, `x.${path}`, `${path}.x`]) {
    expect([wrong, partOf(wrong)]).toEqual([wrong, undefined]);
  }
});

test.each([
  "",
  "name",
  "markers",
  "scale",
  "scale.frets",
  "board",
  "board.channel",
  "radius.fret",
  "radius.fret0",
  "radius.fret1000",
  "radius.fretx",
  "radius.middle",
  "radiusnut",
  "markers.x.diameter",
  "markers..diameter",
  "markers.0",
  "markers.0.bit",
  "markers.0.fill.kind",
  "markersx0.diameter",
  "markers.0xdiameter",
  "markers.0.shapexlength",
  "markers.0.fillxkeep",
  "markers.0.bitxpoint",
  "markers.0xdepth",
  "scalexlength",
  "boardxlength",
  "boardxwidth",
  "boardxthickness",
  "boardxchannel.width",
  "board.channelxwidth",
  "tolerancexcrown",
  "tolerancexlayout",
  "tolerancexstop",
  "fillxkeep",
  "bitxpoint",
  "slot.depth",
  "pour.waste",
])("%j is no such path", (path) => {
  expect(partOf(path)).toBeUndefined();
});

test("every path that is offered for a misspelt one is one", () => {
  expect(PATHS.filter((path) => partOf(path) === undefined)).toEqual([]);
  expect(new Set(PATHS).size).toBe(PATHS.length);
  // every plain one is offered: those without a station, and without a group's number but the first
  const plain = KNOWN.map(([path]) => path).filter(
    (path) =>
      !/\.(?:nut|end|fret\d+)$|^markers\.(?!0\.(?:diameter|spread)$)|\.(?:from|to)$/.test(path),
  );
  expect([...PATHS].sort()).toEqual(plain.filter((p) => !["stopStep", "depth"].includes(p)).sort());
});

test("a number at its place, all else shared", () => {
  const thin = withNumber(PLAIN, "board.thickness", 5);
  expect(thin.board.thickness).toBe(5);
  expect(thin.board.width).toBe(PLAIN.board.width);
  expect(thin.markers).toBe(PLAIN.markers);
  expect(PLAIN.board.thickness).toBe(6);
  const wide = withNumber(PLAIN, "markers.1.diameter", 8);
  expect(wide.markers.map((group) => "diameter" in group && group.diameter)).toEqual([6.35, 8]);
  expect(wide.markers[0]).toBe(PLAIN.markers[0]);
  expect(Array.isArray(wide.markers)).toBe(true);
});

test.each<[string, object]>([
  // where nothing is said, poured epoxy and a Forstner bit are meant
  ["fill.keep", { fill: { kind: "poured", keep: 1 } }],
  ["bit.point", { bit: { kind: "forstner", point: 1 } }],
  ["tolerance.stop", { tolerance: { stop: 1 } }],
  ["web", { web: 1 }],
])("a number of what the design leaves open: %s", (path, stated) => {
  expect(withNumber(PLAIN, path, 1)).toEqual({ ...PLAIN, ...stated });
});

test("in a group too", () => {
  const [group] = withNumber(PLAIN, "markers.0.bit.point", 1).markers;
  expect(group?.bit).toEqual({ kind: "forstner", point: 1 });
  const stated = { ...PLAIN, fill: { kind: "solid", thickness: 3 } } as const;
  expect(withNumber(stated, "fill.keep", 1).fill).toEqual({ ...stated.fill, keep: 1 });
});

test("what cannot hold a number is replaced, for the reader to refuse", () => {
  const odd = { ...PLAIN, board: 7, fill: "epoxy" } as unknown as Design;
  expect(withNumber(odd, "board.length", 1).board).toEqual({ length: 1 });
  expect(withNumber(odd, "fill.keep", 1).fill).toEqual({ keep: 1 });
});

test("a list longer than any design's is left as it is", () => {
  const groups = (count: number) =>
    Array.from({ length: count }, () => ({ frets: [1], diameter: 6 }));
  const most = { ...PLAIN, markers: groups(250) };
  expect(withNumber(most, "markers.0.diameter", 7).markers).not.toBe(most.markers);
  const more = { ...PLAIN, markers: groups(251) };
  expect(withNumber(more, "markers.0.diameter", 7).markers).toBe(more.markers);
});
