/** Designs of many kinds on which chances are tried. All necks are invented. */
import type { Design, MarkerGroup } from "../../src/index.js";

const normal = (limit: number, coverage = 2) => ({ limit, shape: "normal", coverage }) as const;
const triangular = (limit: number) => ({ limit, shape: "triangular" }) as const;
const BRAD = { kind: "brad-point", point: 1.4, spur: 0.5 } as const;
const PLACES = [
  { along: 90, offset: 0 },
  { along: 200, offset: -11 },
  { along: 201, offset: 11 },
  { along: 330, offset: 13 },
];
const dots = (rest: object = {}): MarkerGroup =>
  ({ places: PLACES, diameter: 6, ...rest }) as MarkerGroup;

/** Three dots by the usual bit, and one by a smaller bit with spurs so deep. */
const twoBits = (spur: number): MarkerGroup[] => [
  { places: PLACES.slice(0, 3), diameter: 6 },
  { places: PLACES.slice(3), diameter: 5, bit: { kind: "forstner", point: 1.4, spur } },
];

const RECTANGULAR = {
  stop: 0.12,
  point: 0.08,
  seat: 0.1,
  layout: 0.3,
  thickness: 0.1,
  sanding: 0.06,
  crest: 0.5,
  fill: 0.05,
  radius: 0.02,
  existing: 0,
} as const;
const NORMAL = Object.fromEntries(
  Object.entries({ ...RECTANGULAR, existing: 0.01 }).map(([name, limit]) => [name, normal(limit)]),
);
const TRIANGULAR = Object.fromEntries(
  Object.entries({ ...RECTANGULAR, existing: 0.01 }).map(([name, limit]) => [
    name,
    triangular(limit),
  ]),
);

function neck(rest: Partial<Design> = {}): Design {
  return {
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
    radius: 254,
    sanding: 0.2,
    fill: { kind: "poured", keep: 0.8 },
    bit: BRAD,
    web: 1,
    markers: [dots()],
    tolerance: RECTANGULAR,
    ...rest,
  };
}

const TABLE = { from: "table", zero: 18 } as const;
const TAPERED = { length: 482, width: { nut: 43, end: 57 }, thickness: { nut: 6.2, end: 5.6 } };
const thin = (thickness: number) => ({ ...TAPERED, thickness });
const RODDED = {
  ...TAPERED,
  thickness: { nut: 5.2, end: 4.4 },
  channel: { width: 6, depth: 0.4 },
} as const;

/** A design, and the travels of its holes. */
export const CASES: readonly (readonly [string, Design, number | readonly number[]])[] = [
  ["a blank, every law rectangular", neck(), 2.95],
  [
    "a compound radius, every law triangular",
    neck({ radius: { nut: 200, end: 400 }, tolerance: TRIANGULAR }),
    2.85,
  ],
  [
    "a compound radius, fall-away, every law normal",
    neck({ radius: { nut: 254, end: 406 }, sanding: { nut: 0.1, end: 0.6 }, tolerance: NORMAL }),
    3.0,
  ],
  [
    "an existing radius under a foot, normal",
    neck({
      existing: { radius: 184 },
      sanding: 0.9,
      stop: { foot: 9 },
      tolerance: NORMAL,
    }),
    3.22,
  ],
  [
    "the table under a tapered board, a normal stop and a triangular seat, several settings",
    neck({
      stop: TABLE,
      board: TAPERED,
      tolerance: { ...RECTANGULAR, stop: normal(0.12), seat: triangular(0.1) },
    }),
    [2.75, 3.25, 3.25, 3.45],
  ],
  [
    "two bits with one travel each, triangular",
    neck({
      markers: twoBits(1.4),
      tolerance: TRIANGULAR,
    }),
    2.95,
  ],
  [
    "each hole its own stop",
    neck({ tolerance: { ...RECTANGULAR, stop: { ...normal(0.2), per: "hole" } } }),
    3.0,
  ],
  [
    "solid dots, too high and too low",
    neck({
      fill: { kind: "solid", thickness: 1.1, keep: 0.9 },
      tolerance: { ...RECTANGULAR, fill: normal(0.1) },
    }),
    [2.45, 2.8, 2.8, 3.0],
  ],
  ["a thin board, keep and web at once", neck({ board: thin(3.75), tolerance: RECTANGULAR }), 2.85],
  [
    "a thin board under the table, keep and web at once",
    neck({ board: thin(4.15), stop: TABLE, tolerance: { ...NORMAL, seat: 0.25 } }),
    2.8,
  ],
  [
    "a thin board, and spurs as deep as the point",
    neck({
      board: thin(3.8),
      bit: { ...BRAD, spur: 1.4 },
      tolerance: { ...NORMAL, point: 0.2, crest: 0, radius: 0 },
    }),
    2.85,
  ],
  [
    "pockets, a neck and a channel beside them",
    neck({
      board: { ...thin(3.4), channel: { width: 6, depth: 0.4 } },
      neck: { thickness: 12 },
      markers: [
        {
          places: [
            { along: 90, offset: 0 },
            { along: 200, offset: 8.1 },
            { along: 330, offset: 14 },
          ],
          shape: { kind: "rectangle", length: 9, width: 8 },
          bit: { kind: "end-mill" },
        },
      ],
    }),
    [1.9, 1.95, 1.75],
  ],
  [
    "a twist bit's cone over a channel, triangular",
    neck({ board: RODDED, neck: { thickness: 12 }, bit: { kind: "twist" }, tolerance: TRIANGULAR }),
    3.42,
  ],
  [
    "a board that tapers over a channel, under the table, rectangular",
    neck({ board: RODDED, neck: { thickness: 12 }, stop: TABLE }),
    3.6,
  ],
  [
    "dots that are in the board already, beside new ones",
    neck({
      existing: { radius: 184 },
      sanding: 0.9,
      markers: [
        {
          places: PLACES.slice(0, 2).map((place) => ({ ...place, depth: 1.95 })),
          drilled: true,
          diameter: 6,
          fill: { kind: "solid", thickness: 1.9 },
        },
        { places: PLACES.slice(2), diameter: 6 },
      ],
      tolerance: { ...RECTANGULAR, existing: 0.02 },
    }),
    3.2,
  ],
  [
    "a stated height over an existing radius, normal",
    neck({
      existing: { radius: 254 },
      radius: { nut: 305, end: 406 },
      sanding: 0.9,
      stop: { ...TABLE, height: { nut: 30, end: 29.4 } },
      tolerance: NORMAL,
    }),
    3.8,
  ],
  [
    "several bits and settings, every law normal",
    neck({
      markers: twoBits(0.5),
      tolerance: NORMAL,
    }),
    [2.95, 3.0, 3.0, 2.95],
  ],
  [
    "two bits on a thin board, keep and web at once, every law normal",
    neck({
      board: thin(3.8),
      markers: twoBits(0.5),
      tolerance: NORMAL,
    }),
    2.95,
  ],
];
