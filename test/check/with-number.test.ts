/** A path sets one number of a design, and nothing else: what it was inherited or assumed from stays as it was. */
import { expect, test } from "vitest";
import { kindAt, withNumber } from "../../src/design/paths.js";
import { checkDesign, type Design, type NumberPath } from "../../src/index.js";

/** 400 long, 6 thick; all that a group can inherit stands in the design. */
const NECK: Design = {
  scale: { positions: [100, 200, 300, 400] },
  board: { length: 400, width: 50, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [2], diameter: 6 },
    { frets: [3], shape: { kind: "rectangle", length: 5, width: 6 } },
    { places: [{ along: 350, offset: 1 }], diameter: 6, fill: { kind: "poured" } },
  ],
  fill: { kind: "solid", thickness: 2 },
  bit: { kind: "brad-point", point: 2 },
  stop: { from: "table", zero: 50, step: 0.1 },
  tolerance: { layout: { limit: 0.2, shape: "normal", coverage: 3 } },
};
const { fill, bit, stop, markers, ...BARE } = NECK;
const plain: Design = { ...BARE, markers: [{ frets: [2], diameter: 6 }] };

const SOLID = { kind: "solid", thickness: 2, keep: 0.4 };
const POURED = { kind: "poured", keep: 0.4 };
const TABLE = { from: "table", zero: 50, step: 0.1, correction: 0.1 };

test.each<[NumberPath, number, object, Design]>([
  // what a group inherits it takes over whole, what is assumed is written out
  ["markers.0.fill.keep", 0.4, { fill: SOLID }, NECK],
  ["markers.0.bit.point", 1, { bit: { kind: "brad-point", point: 1 } }, NECK],
  ["markers.0.stop.correction", 0.1, { stop: TABLE }, NECK],
  ["markers.2.fill.keep", 0.4, { fill: POURED }, NECK],
  ["markers.2.places.0.offset", 3, { places: [{ along: 350, offset: 3 }] }, NECK],
  ["markers.0.fill.keep", 0.4, { fill: POURED }, plain],
  ["markers.0.bit.point", 2, { bit: { kind: "forstner", point: 2 } }, plain],
  ["markers.0.stop.foot", 2, { stop: { foot: 2 } }, plain],
])("%s to %d, of a group", (path, value, change, design) => {
  const before = structuredClone(design);
  const changed = design.markers.map((group, i) =>
    path.startsWith(`markers.${i}.`) ? { ...group, ...change } : group,
  );
  expect(withNumber(design, path, value)).toEqual({ ...design, markers: changed });
  expect(design).toEqual(before);
  expect(() => checkDesign(withNumber(design, path, value))).not.toThrow();
});

const onBoard = (thickness: object | number) => ({ board: { ...NECK.board, thickness } });
const rising = { nut: 0.1, fret2: 0.2 };
const law = { limit: 0.3, shape: "normal", coverage: 3 };

test.each<[NumberPath, number, object, Design?]>([
  ["board.thickness", 5, onBoard(5)],
  // a station of a constant moves, the ends stay; one station alone is a constant
  ["board.thickness.nut", 5, onBoard({ nut: 5, end: 6 })],
  ["board.thickness.fret2", 5, onBoard({ nut: 6, fret2: 5, end: 6 })],
  ["sanding.end", 0.5, { sanding: { nut: 0.15, end: 0.5 } }],
  ["sanding.end", 0.5, { sanding: { ...rising, end: 0.5 } }, { ...NECK, sanding: rising }],
  [
    "sanding.end",
    0.5,
    { sanding: { nut: 1, fret2: 1, end: 0.5 } },
    { ...NECK, sanding: { fret2: 1 } },
  ],
  // two stations are no constant: the ends are not written
  [
    "sanding.nut",
    0.5,
    { sanding: { nut: 0.5, fret2: 0.1, fret3: 0.2 } },
    { ...NECK, sanding: { fret2: 0.1, fret3: 0.2 } },
  ],
  ["radius.nut", 184, { radius: { nut: 184, end: "flat" } }, { ...NECK, radius: "flat" }],
  ["fill.keep", 0.4, { fill: SOLID }],
  ["fill.keep", 0.4, { fill: POURED }, plain],
  ["bit.point", 2, { bit: { kind: "forstner", point: 2 } }, plain],
  // of a tolerance with its law only the limit moves
  ["tolerance.layout", 0.3, { tolerance: { layout: law } }],
  ["tolerance.crest", 0.3, { tolerance: { ...NECK.tolerance, crest: 0.3 } }],
  ["pour.ratio.1", 2, { pour: { ratio: [1, 2] } }],
])("%s to %d", (path, value, change, design = NECK) => {
  expect(withNumber(design, path, value)).toEqual({ ...design, ...change });
});

test("a list takes a number up to the most that it may hold, 250; one that is longer stays as it is", () => {
  const places = (count: number) => Array.from({ length: count }, () => ({ along: 1, offset: 0 }));
  const changed = (count: number) => {
    const design = { ...NECK, markers: [{ places: places(count), diameter: 6 }] };
    return withNumber(design, "markers.0.places.0.offset", 2).markers[0];
  };
  const [, ...others] = places(250);
  expect(changed(250)).toMatchObject({ places: [{ along: 1, offset: 2 }, ...others] });
  expect(changed(251)).toMatchObject({ places: places(251) });
});

test("a station's value moves the board there, and its ends stay: 6 and 5 leave 5.5 half way", () => {
  const thin = withNumber({ ...plain, stop: { from: "wood" } }, "board.thickness.nut", 5);
  const places = [0, 200, 400].map((along) => ({ along, offset: 0 }));
  const { holes } = checkDesign({ ...thin, markers: [{ places, diameter: 4 }] });
  expect(holes.map(({ thickness }) => thickness)).toEqual([5, 5.5, 6]);
});

test("which paths lead to a number, and of what kind", () => {
  const paths = "radius radius.fret7 markers.3.places.2.offset tolerance.stop bit.angle".split(" ");
  const kinds = paths.map((path) => kindAt(path)?.kind);
  expect(kinds).toEqual(["radius", "radius", "position", "length", "angle"]);
  const none =
    "radii radius.nuts radius.nut.end fill.kind markers markers.x.diameter markers.0 name";
  expect([...none.split(" "), ""].filter((path) => kindAt(path))).toEqual([]);
});
