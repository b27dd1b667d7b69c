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

test.each<[string, Design, NumberPath, number, object]>([
  [
    "an inherited solid fill stays solid",
    NECK,
    "markers.0.fill.keep",
    0.4,
    { fill: { kind: "solid", thickness: 2, keep: 0.4 } },
  ],
  [
    "an inherited brad point stays one",
    NECK,
    "markers.0.bit.point",
    1,
    { bit: { kind: "brad-point", point: 1 } },
  ],
  [
    "an inherited stop counts from the table",
    NECK,
    "markers.0.stop.correction",
    0.1,
    { stop: { from: "table", zero: 50, step: 0.1, correction: 0.1 } },
  ],
  [
    "what a group states is its own",
    NECK,
    "markers.2.fill.keep",
    0.4,
    { fill: { kind: "poured", keep: 0.4 } },
  ],
  ["a place", NECK, "markers.2.places.0.offset", 3, { places: [{ along: 350, offset: 3 }] }],
  [
    "an assumed fill is written out",
    plain,
    "markers.0.fill.keep",
    0.4,
    { fill: { kind: "poured", keep: 0.4 } },
  ],
  ["an assumed bit too", plain, "markers.0.bit.point", 2, { bit: { kind: "forstner", point: 2 } }],
  ["and a stop", plain, "markers.0.stop.foot", 2, { stop: { foot: 2 } }],
])("of a group: %s", (_, design, path, value, change) => {
  const before = structuredClone(design);
  const index = Number(path.split(".")[1]);
  const markers = design.markers.map((each, i) => (i === index ? { ...each, ...change } : each));
  expect(withNumber(design, path, value)).toEqual({ ...design, markers });
  expect(design).toEqual(before);
  expect(() => checkDesign(withNumber(design, path, value))).not.toThrow();
});

test.each<[NumberPath, number, object, Design?]>([
  ["board.thickness", 5, { board: { ...NECK.board, thickness: 5 } }],
  ["board.thickness.nut", 5, { board: { ...NECK.board, thickness: { nut: 5, end: 6 } } }],
  [
    "board.thickness.fret2",
    5,
    { board: { ...NECK.board, thickness: { nut: 6, fret2: 5, end: 6 } } },
  ],
  ["sanding.end", 0.5, { sanding: { nut: 0.15, end: 0.5 } }],
  [
    "sanding.end",
    0.5,
    { sanding: { nut: 0.1, fret2: 0.2, end: 0.5 } },
    { ...NECK, sanding: { nut: 0.1, fret2: 0.2 } },
  ],
  // one station alone is a constant
  [
    "sanding.end",
    0.5,
    { sanding: { nut: 0.1, fret2: 0.1, end: 0.5 } },
    { ...NECK, sanding: { fret2: 0.1 } },
  ],
  ["radius.nut", 184, { radius: { nut: 184, end: "flat" } }, { ...NECK, radius: "flat" }],
  ["fill.keep", 0.4, { fill: { kind: "solid", thickness: 2, keep: 0.4 } }],
  ["fill.keep", 0.4, { fill: { kind: "poured", keep: 0.4 } }, plain],
  ["bit.point", 2, { bit: { kind: "forstner", point: 2 } }, plain],
  [
    "tolerance.layout",
    0.3,
    { tolerance: { layout: { limit: 0.3, shape: "normal", coverage: 3 } } },
  ],
  ["tolerance.crest", 0.3, { tolerance: { ...NECK.tolerance, crest: 0.3 } }],
  ["pour.ratio.1", 2, { pour: { ratio: [1, 2] } }],
])("%s to %d", (path, value, change, design = NECK) => {
  expect(withNumber(design, path, value)).toEqual({ ...design, ...change });
});

test("a station's value moves the board there, and its ends stay: 6 and 5 leave 5.5 half way", () => {
  const thin = withNumber({ ...plain, stop: { from: "wood" } }, "board.thickness.nut", 5);
  const places = [0, 200, 400].map((along) => ({ along, offset: 0 }));
  const { holes } = checkDesign({ ...thin, markers: [{ places, diameter: 4 }] });
  expect(holes.map(({ thickness }) => thickness)).toEqual([5, 5.5, 6]);
});

test("which paths lead to a number, and of what kind", () => {
  const kinds = [
    "radius",
    "radius.fret7",
    "markers.3.places.2.offset",
    "tolerance.stop",
    "bit.angle",
  ].map((path) => kindAt(path)?.kind);
  expect(kinds).toEqual(["radius", "radius", "position", "length", "angle"]);
  for (const path of [
    "",
    "radii",
    "radius.nuts",
    "radius.nut.end",
    "fill.kind",
    "markers",
    "markers.x.diameter",
    "markers.0",
    "tolerance.stop.limit",
    "name",
  ]) {
    expect(kindAt(path)).toBeUndefined();
  }
});
