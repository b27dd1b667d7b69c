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

/** A design with one number that breaks the rule, and with one that keeps it. */
function one(
  code: FindingCode,
  found: Partial<Finding>,
  [fails, passes]: readonly [number, number],
  change: (value: number) => Change,
): Broken {
  return { code, found, broken: designOf(change(fails)), kept: designOf(change(passes)) };
}

const at = (along: number, offset = 0, diameter = 8) => ({
  markers: [{ places: [{ along, offset }], diameter }],
});
const pair = (apart: number, first: object = {}, second: object = {}) => ({
  markers: [
    { ...at(100).markers[0], ...first },
    { ...at(100 + apart).markers[0], ...second },
  ] as Design["markers"],
});
const thick = (thickness: number) => ({ board: { thickness } });
const epoxy = (keep: number) => ({ fill: { kind: "poured", keep } as const });
const dot = (thickness: number) => ({ fill: { kind: "solid", thickness, keep: 0.5 } as const });
const slot = (depth: number) => ({ slot: { depth, tang: 2, clearance: 0.25, web: 1.5 } });
const sideDots = (diameter: number, depth = 3) => ({
  sideDots: { diameter, margin: 0.5, depth },
});
// 325² = 323² + 36²: 2 at 36 from the crest
const curved = { existing: { radius: 325 }, board: { width: 72 }, markers: [] };
const bit = (point: number) => ({ kind: "forstner", point, spur: 0.5 }) as const;
const channel = { board: { channel: { width: 6, depth: 2 } } };
const wood = { from: "wood", foot: 0 } as const;

const HOLE = { hole: 0, fret: 1, side: "centre" } as const;
const SUITS = { suits: [0.75, 5] };
const TWO = { value: 2, limit: 1, suits: [1, 4.875] };

export const BROKEN: readonly Broken[] = [
  one("nothing-left", { ...HOLE, value: -0.125, limit: 0 }, [0.125, 0.75], (depth) => ({ depth })),
  one("below-keep", { value: 0.25, limit: 0.5, ...SUITS }, [0.5, 0.75], (depth) => ({ depth })),
  one("breaks-through", { value: -0.25, limit: 0, ...SUITS }, [6.25, 5], (depth) => ({ depth })),
  one("below-web", { ...HOLE, value: 0.5, limit: 1 }, [5.5, 5], (depth) => ({ depth })),
  // a dot of 2 ends flush at 2.25
  one("below-surface", { value: -0.25 }, [2.5, 2.25], (depth) => ({ depth, ...dot(2) })),
  one("no-depth", { ...HOLE, value: 0.75, limit: 0.5, maxBy: "web" }, [1.5, 1.75], thick),
  // 4.75 to 5 and 0.75 to 1.25
  one("several-settings", TWO, [1, 4.5], (mm) => pair(99, epoxy(4.5), dot(mm))),
  one("several-travels", TWO, [1, 4.5], (mm) => pair(99, epoxy(4.5), { ...dot(mm), diameter: 6 })),
  one("cuts-slot", { ...HOLE, value: -1, limit: 0 }, [3, 4.5], at),
  one("near-slot", { ...HOLE, value: 0.25, limit: 0.5 }, [395.75, 395.5], at),
  one("past-edge", { side: "treble", value: -2, limit: 0 }, [28, 26], (offset) => at(200, offset)),
  one("dots-overlap", { hole: 1, other: 0, value: -2, limit: 0 }, [6, 8], pair),
  one("thin-edge", { station: "nut", value: 5.75, limit: 6 }, [6, 5.75], (web) => ({
    web,
    markers: [],
  })),
  // 2.25 and the sanding; 6 less the web
  one("no-slot-depth", { fret: 1, value: 2.5, limit: 2 }, [4, 3.5], (web) => ({
    slot: { tang: 2, clearance: 0.25, web },
  })),
  one("slot-too-shallow", { fret: 1, value: 2, limit: 2.5, suits: [2.5, 4.5] }, [2, 2.5], slot),
  one("slot-too-deep", { fret: 1, value: 5, limit: 4.5, suits: [2.5, 4.5] }, [5, 4.5], slot),
  one("side-dot-tight", { fret: 1, value: 5.75, limit: 6 }, [5, 4.75], sideDots),
  // the dot reaches 2.875 + 1 above the underside, 10 in from the edge; a floor at 6 − 4
  one("side-dot-meets-hole", { side: "bass", value: -1.875, limit: 0 }, [4, 2.125], (depth) => ({
    ...sideDots(2, 10),
    ...at(200, -25),
    depth,
  })),
  // beside fret 1 it reaches 2.875 + 1.5; the slot's floor lies at 3
  one("side-dot-meets-slot", { fret: 1, value: -1.375, limit: 0 }, [399, 398.5], (along) => ({
    ...at(along, 0, 1),
    ...sideDots(3),
    ...slot(3),
  })),
  one("radius-not-reached", { path: "sanding", value: 1.5, limit: 2 }, [1.5, 2], (sanding) => ({
    ...curved,
    sanding,
  })),
  one("fret-past-end", { fret: 2, path: "board.length", value: 401 }, [401, 400], (last) => ({
    scale: { positions: [300, last] },
  })),
  // 2.5 to 2.75 and to 3: 3 lies nearest to the middle
  one("no-step", { value: 0.25, limit: 0, suits: [2.5, 2.75] }, [3.75, 4], (mm) => ({
    ...thick(mm),
    ...epoxy(2.25),
    stop: { ...wood, step: 1 },
  })),
  // 4 over the channel, less the web
  one("near-channel", { value: 0.25, limit: 0.3 }, [2.75, 2.5], (depth) => ({ ...channel, depth })),
  one("unlikely-value", { path: "markers.0.diameter", suits: [6.35] }, [0.25, 0.8], (mm) =>
    at(200, 0, mm),
  ),
  one("assumed-point", { path: "bit.point", value: 1 }, [0, 1], (point) => ({
    bit: point > 0 ? bit(point) : undefined,
    stop: wood,
  })),
  one("assumed-zero", { ...HOLE, path: "stop.from", value: -0.25 }, [6.5, 6], (nut) => ({
    board: { thickness: { nut, end: 12 - nut } },
    ...at(300),
    stop: { foot: 0 },
  })),
  one("assumed-foot", { hole: 0, path: "stop.foot", value: 0 }, [9, 0], (offset) => ({
    ...curved,
    ...at(200, offset),
    bit: bit(1),
    sanding: 3,
    stop: { from: "wood" },
  })),
];
