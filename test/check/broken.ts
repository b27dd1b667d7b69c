/**
 * One design for each code of finding, made to break its rule and no other, with what is found; and the same design at the
 * rule's very limit, where it is kept. All on the board of ../windows/bench.ts: 400 long, 60 wide, 6 thick, flat, 0.25
 * sanded off, 0.5 kept, a web of 1: dots of 8 go 0.75 to 5 deep. Lengths in mm.
 */
import type { Design, Finding, FindingCode } from "../../src/index.js";
import { type Change, designOf } from "../windows/bench.js";

/** A rule broken, and kept. */
export interface Broken {
  readonly code: FindingCode;
  /** What is found, in part. */
  readonly found: Partial<Finding>;
  readonly broken: Design;
  readonly kept: Design;
}

const at = (along: number, offset = 0, diameter = 8) => ({
  markers: [{ places: [{ along, offset }], diameter }],
});
const pair = (first: object, second: object) => ({
  markers: [
    { ...at(100).markers[0], ...first },
    { ...at(300).markers[0], ...second },
  ] as Design["markers"],
});
const thick = (thickness: number) => ({ board: { thickness } });
const epoxy = (keep: number) => ({ fill: { kind: "poured", keep } as const });
const dot = (thickness: number) => ({ fill: { kind: "solid", thickness, keep: 0.5 } as const });
const slot = (depth: number, change: object = {}) => ({
  slot: { depth, tang: 2, clearance: 0.25, web: 1.5, ...change },
});
const sideDots = (diameter: number, change: object = {}) => ({
  sideDots: { diameter, margin: 0.5, depth: 3, ...change },
});
// 325² = 323² + 36²: 2 at 36 from the crest
const curved = { existing: { radius: 325 }, board: { width: 72 }, markers: [] };
const bit = { kind: "forstner", point: 1, spur: 0.5 } as const;
const channel = { board: { channel: { width: 6, depth: 2 } } };
const bare = { bit: undefined, stop: { from: "wood", foot: 0 } } as const;
const tapered = (nut: number) => ({ board: { thickness: { nut, end: 12 - nut } }, ...at(300) });

function one(code: FindingCode, found: object, broken: Change, kept: Change): Broken {
  return { code, found, broken: designOf(broken), kept: designOf(kept) };
}

const HOLE = { hole: 0, fret: 1, side: "centre" } as const;
const SUITS = { suits: [0.75, 5] };

export const BROKEN: readonly Broken[] = [
  one(
    "nothing-left",
    { ...HOLE, value: -0.25 + 0.125, limit: 0, ...SUITS },
    { depth: 0.125 },
    { depth: 0.75 },
  ),
  one(
    "below-keep",
    { ...HOLE, value: 0.25, limit: 0.5, ...SUITS },
    { depth: 0.5 },
    { depth: 0.75 },
  ),
  one(
    "breaks-through",
    { ...HOLE, value: -0.25, limit: 0, ...SUITS },
    { depth: 6.25 },
    { depth: 5 },
  ),
  one("below-web", { ...HOLE, value: 0.5, limit: 1, ...SUITS }, { depth: 5.5 }, { depth: 5 }),
  one(
    "below-surface",
    { ...HOLE, value: -0.25, limit: 0 },
    { depth: 2.5, ...dot(2) },
    { depth: 2.25, ...dot(2) },
  ),
  one("no-depth", { ...HOLE, value: 0.75, limit: 0.5, maxBy: "web" }, thick(1.5), thick(1.75)),
  // 4.75 to 5 and 0.75 to 1.25
  one(
    "several-settings",
    { value: 2, limit: 1, suits: [1, 4.875] },
    pair(epoxy(4.5), dot(1)),
    pair(epoxy(4.5), dot(4.5)),
  ),
  one(
    "several-travels",
    { value: 2, limit: 1, suits: [1, 4.875] },
    pair(epoxy(4.5), { ...dot(1), diameter: 6 }),
    pair(epoxy(4.5), { ...dot(4.5), diameter: 6 }),
  ),
  one("cuts-slot", { ...HOLE, value: -1, limit: 0 }, at(3), at(4.5)),
  one("near-slot", { ...HOLE, value: 0.25, limit: 0.5 }, at(395.75), at(395.5)),
  one("past-edge", { hole: 0, side: "treble", value: -2, limit: 0 }, at(200, 28), at(200, 26)),
  one(
    "dots-overlap",
    { hole: 1, other: 0, value: -2, limit: 0 },
    pair({}, at(106).markers[0] as object),
    pair({}, at(108).markers[0] as object),
  ),
  one(
    "thin-edge",
    { station: "nut", value: 5.75, limit: 6 },
    { web: 6, markers: [] },
    { web: 5.75, markers: [] },
  ),
  // 2.25 and the sanding; 6 less the web
  one(
    "no-slot-depth",
    { fret: 1, value: 2.5, limit: 2 },
    { slot: { tang: 2, clearance: 0.25, web: 4 } },
    { slot: { tang: 2, clearance: 0.25, web: 3.5 } },
  ),
  one("slot-too-shallow", { fret: 1, value: 2, limit: 2.5, suits: [2.5, 4.5] }, slot(2), slot(2.5)),
  one("slot-too-deep", { fret: 1, value: 5, limit: 4.5, suits: [2.5, 4.5] }, slot(5), slot(4.5)),
  one("side-dot-tight", { fret: 1, value: 5.75, limit: 6 }, sideDots(5), sideDots(4.75)),
  // the dot reaches 2.875 + 1 above the underside, 10 in from the edge; a floor at 6 − 4
  one(
    "side-dot-meets-hole",
    { ...HOLE, side: "bass", value: -1.875, limit: 0 },
    { ...sideDots(2, { depth: 10 }), ...at(200, -25), depth: 4 },
    { ...sideDots(2, { depth: 10 }), ...at(200, -25), depth: 2.125 },
  ),
  // beside fret 1 it reaches 2.875 + 1.5; the slot's floor lies at 3
  one(
    "side-dot-meets-slot",
    { fret: 1, value: -1.375, limit: 0 },
    { ...at(399, 0, 1), ...sideDots(3), ...slot(3) },
    { ...at(398.5, 0, 1), ...sideDots(3), ...slot(3) },
  ),
  one(
    "radius-not-reached",
    { path: "sanding", value: 1.5, limit: 2 },
    { ...curved, sanding: 1.5 },
    { ...curved, sanding: 2 },
  ),
  one(
    "fret-past-end",
    { fret: 2, path: "board.length", value: 401, limit: 400 },
    { scale: { positions: [300, 401] } },
    { scale: { positions: [300, 400] } },
  ),
  // 3 lies nearest to the middle, 2.5 to 2.75
  one(
    "no-step",
    { value: 0.25, limit: 0, suits: [2.5, 2.75] },
    { ...thick(3.75), ...epoxy(2.25), stop: { step: 1, foot: 0, from: "wood" } },
    { ...thick(4), ...epoxy(2.25), stop: { step: 1, foot: 0, from: "wood" } },
  ),
  // 4 over the channel, less the web
  one(
    "near-channel",
    { ...HOLE, value: 0.25, limit: 0.3 },
    { ...channel, depth: 2.75 },
    { ...channel, depth: 2.5 },
  ),
  one(
    "unlikely-value",
    { path: "markers.0.diameter", value: 0.25, limit: 0.8, suits: [6.35] },
    at(200, 0, 0.25),
    at(200, 0, 0.8),
  ),
  one("assumed-point", { path: "bit.point", value: 1 }, bare, { ...bare, bit }),
  one(
    "assumed-zero",
    { ...HOLE, path: "stop.from", value: -0.25, limit: 0 },
    { ...tapered(6.5), stop: { foot: 0 } },
    { ...tapered(6), stop: { foot: 0 } },
  ),
  one(
    "assumed-foot",
    { hole: 0, path: "stop.foot", value: 0 },
    { ...curved, ...at(200, 9), bit, sanding: 3, stop: { from: "wood" } },
    { ...curved, ...at(200, 0), bit, sanding: 3, stop: { from: "wood" } },
  ),
];
