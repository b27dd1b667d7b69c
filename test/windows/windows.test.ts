/** Windows over the rod channel and the parts that a sweep takes by themselves, worked by hand. */
import { describe, expect, test } from "vitest";
import { prepare } from "../../src/drilling/neck.js";
import { boundsOf, deepestOverWood, footprintOf } from "../../src/drilling/windows.js";
import type { Design } from "../../src/index.js";

/** Invented: 6 mm thick, a channel 6 wide and 3 deep from 20 to 200 mm. */
const PLAIN = {
  scale: { length: 600, frets: 12 },
  board: {
    length: 320,
    width: 50,
    thickness: 6,
    channel: { width: 6, depth: 3, from: 20, to: 200 },
  },
  radius: 300,
  web: 1,
  tolerance: { stop: 0.1, thickness: 0.1, layout: 0, crown: 0, radius: 0 },
  markers: [{ frets: [5], diameter: 6, bit: { kind: "twist", angle: 90 } }],
} satisfies Design;

/** The neck with its one marker's ground moved: the hole that is asked about. */
function hole(design: Design, place: { along?: number; offset?: number }) {
  const { board, spec, markers } = prepare(design);
  const [first] = markers;
  if (first === undefined) throw new Error("no marker");
  return { board, spec, marker: { ...first, ...place } };
}

describe("a twist bit of 90°, 6 mm: its point leads by 3 mm", () => {
  test("deepest over wood: 6 − 0.1 − 0.1 − 3 − 1, less the channel", () => {
    const far = hole(PLAIN, { along: 280, offset: 0 });
    const over = hole(PLAIN, { along: 100, offset: 0 });
    for (const [{ board, spec, marker }, deepest] of [
      [far, 6 - 0.1 - 0.1 - 3 - 1],
      [over, 6 - 0.1 - 0.1 - 3 - 3 - 1],
    ] as const) {
      const ground = footprintOf(marker, spec.tolerance.layout);
      expect(deepestOverWood(board.thickness, spec, marker, ground)).toBeCloseTo(deepest, 12);
    }
  });

  test("without a channel", () => {
    const { channel, ...solid } = PLAIN.board;
    const { board, spec, marker } = hole({ ...PLAIN, board: solid }, {});
    const ground = footprintOf(marker, 0);
    expect(deepestOverWood(board.thickness, spec, marker, ground)).toBeCloseTo(1.8, 12);
    expect(boundsOf(board, spec, marker).overChannel).toBe(Infinity);
  });

  test.each([
    // 1 mm of the cone's flank lies over the channel's side: it leads its rim by 1 there
    { place: { along: 100, offset: 5 }, lead: 1 },
    { place: { along: 100, offset: -5 }, lead: 1 },
    { place: { along: 18, offset: 0 }, lead: 1 },
    { place: { along: 202, offset: 2 }, lead: 1 },
    // beyond the corner: 3-4-5, the rim does not reach
    { place: { along: 204, offset: 6 }, lead: undefined },
    // the rim only touches
    { place: { along: 100, offset: 6 }, lead: undefined },
    // beyond the corner by 0.6 and 0.8: 1 from the axis
    { place: { along: 200.8, offset: 3.6 }, lead: 2 },
  ])("over the channel at $place its part leads by $lead", ({ place, lead }) => {
    const { board, spec, marker } = hole(PLAIN, place);
    const { overChannel } = boundsOf(board, spec, marker);
    expect(overChannel).toBeCloseTo(lead === undefined ? Infinity : 6 - 0.2 - 3 - lead, 12);
  });

  test("a layout error carries it nearer", () => {
    const loose = { ...PLAIN, tolerance: { ...PLAIN.tolerance, layout: 0.5 } };
    const { board, spec, marker } = hole(loose, { along: 100, offset: 6 });
    expect(boundsOf(board, spec, marker).overChannel).toBeCloseTo(6 - 0.2 - 3 - 0.5, 12);
    expect(footprintOf(marker, 0.5)).toMatchObject({ from: 96.5, to: 103.5, near: 2.5, far: 9.5 });
  });
});

describe("a pocket 10 long and 8 wide, cut flat", () => {
  const pocket: Design = {
    ...PLAIN,
    markers: [
      {
        frets: [5],
        shape: { kind: "rectangle", length: 10, width: 8 },
        bit: { kind: "end-mill" },
      },
    ],
  };

  test.each([
    { along: 100, offset: 0, over: true },
    { along: 100, offset: 6.99, over: true },
    { along: 100, offset: -6.99, over: true },
    { along: 15.01, offset: 0, over: true },
    { along: 204.99, offset: 0, over: true },
    { along: 204.99, offset: 6.99, over: true },
    // its side only touches the channel's
    { along: 100, offset: 7, over: false },
    { along: 100, offset: -7, over: false },
    { along: 100, offset: 11, over: false },
    { along: 14.9, offset: 0, over: false },
    { along: 205.1, offset: 0, over: false },
  ])("at $along, $offset: over the channel $over", ({ along, offset, over }) => {
    const { board, spec, marker } = hole(pocket, {});
    const moved = {
      ...marker,
      along,
      offset,
      outline: (marker.outline ?? []).map((corner) => ({
        along: corner.along - marker.along + along,
        offset: corner.offset - marker.offset + offset,
      })),
    };
    expect(moved.outline).toHaveLength(4);
    const { overChannel, board: wood } = boundsOf(board, spec, moved);
    expect(wood).toBeCloseTo(5.8, 12);
    expect(overChannel).toBeCloseTo(over ? 2.8 : Infinity, 12);
  });
});

describe("a pocket that slants over the channel's end", () => {
  // its upper side runs from (100, −12) to (126, 14): 1 across for 1 along
  const outline = [
    { along: 100, offset: -12 },
    { along: 104, offset: -12 },
    { along: 130, offset: 14 },
    { along: 126, offset: 14 },
  ];

  test.each([
    // the part before 108 lies beyond the channel's side, that before 109 touches it
    { to: 108, over: false },
    { to: 109, over: false },
    { to: 109.1, over: true },
    { to: 112, over: true },
    { to: 200, over: true },
  ])("a channel that ends at $to: over it $over", ({ to, over }) => {
    const { board, spec, marker } = hole(
      { ...PLAIN, board: { ...PLAIN.board, channel: { ...PLAIN.board.channel, to } } },
      {},
    );
    const slanted = { ...marker, along: 115, offset: 1, outline };
    const { overChannel } = boundsOf(board, spec, slanted);
    expect(overChannel).toBeCloseTo(over ? 2.8 : Infinity, 12);
  });
});
