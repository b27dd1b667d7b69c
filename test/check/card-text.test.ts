/**
 * Whole cards and notes, each figure worked out beside it by hand on a flat board whose sums are exact. What the
 * cautions say is held once; the other cards are read as far as those.
 */
import { describe, expect, test } from "vitest";
import { drillCard, repairNote } from "../../src/card.js";
import { checkDesign, type Design, repairHole } from "../../src/index.js";
import { INCHES, MILLIMETRES } from "../../src/length-text.js";
import { SQUARED } from "./necks.js";

const BOARD: Design = { ...SQUARED, name: "Small board (invented)" };

const cardOf = (change: object, unit: "mm" | "in" = "mm") =>
  drillCard(checkDesign({ ...BOARD, ...change }), { unit });
const uncautioned = (card: string) => card.replace(/\nCAUTIONS[\s\S]*/, "");

describe("whole cards", () => {
  // least 0.5 + 1, most 8 − 1 − 1, the middle 3.75; epoxy π · 16 · 3.75 · 1.5 = 283 mm³
  test("one dot", () => {
    expect(uncautioned(cardOf({}))).toBe(`DRILL CARD: Small board (invented)
==================================
Nothing found that stops the work.
Lengths in mm.

STOP
  Stop setting, for every hole: 4.75 mm of travel from the point's touch. Rim depth 3.75 mm.
  Rim depths from 1.50 to 6.00 would do: fret 2 sets the least (the radius takes most there), fret 2
  the most (the web under the bit).

WRONG
  Nothing.

HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)
  fret  side    from nut  off centre  size  removed  least  most  travel
     2  centre     48.00        0.00  8.00     0.50   1.50  6.00    4.75

EDGES   (thinnest: 7.50 mm, at the nut)
  at      removed  left  |  at      removed  left  |  at      removed  left  |  at  removed  left
  nut        0.50  7.50  |  fret 2     0.50  7.50  |  fret 4     0.50  7.50  |
  fret 1     0.50  7.50  |  fret 3     0.50  7.50  |  end        0.50  7.50  |

EPOXY
  Mix at least 0.28 ml: 0.14 ml of resin and 0.14 ml of hardener, waste included, for holes drilled
  to the stop setting.

ASSUMED   (the design does not say; mm, degrees or fractions)
  pour.waste 0.5, pour.ratio.0 1, pour.ratio.1 1
`);
  });

  // fret 2 over the channel: 8 − 2 − 1 − 1 = 4 at most. Fret 4, a 90° point leads by 2: least 0.5 + 0.25, flush at
  // 0.5 + 0.75. Planned: 2 − 0.5 and 1 − 0.5 are left, over 8 − 2 − 2 − 1 and 8 − 1 − 2. Slots: 2 + 0.5 + 0.5 at
  // least, 8 − 2 − 1 at most. Epoxy π · 16 · 2.75 · 1.5 = 207 mm³.
  test("two settings, planned depths, solid dots, slots and side dots; all cautions", () => {
    const two = {
      depth: 2,
      board: { ...BOARD.board, channel: { width: 8, depth: 2, to: 100 } },
      markers: [
        ...BOARD.markers,
        {
          frets: [4],
          diameter: 4,
          arrangement: "double",
          bit: { kind: "twist", angle: 90 },
          fill: { kind: "solid", thickness: 0.75, keep: 0.25 },
          depth: 1,
        },
      ],
      slot: { depth: 3, tang: 2, clearance: 0.5, web: 1 },
      sideDots: { diameter: 2, margin: 0.5, depth: 4 },
    };
    expect(cardOf(two)).toBe(`DRILL CARD: Small board (invented)
==================================
Nothing found that stops the work.
Lengths in mm.

STOP
  Setting A, for fret 4: 3.00 mm of travel from the point's touch. Rim depth 1.00 mm.
  Rim depths from 0.75 to 1.25 would do: fret 4, bass sets the least (the radius takes most there),
  fret 4, bass the most (its dot must end flush).
  Setting B, for fret 2: 3.75 mm of travel from the point's touch. Rim depth 2.75 mm.
  Rim depths from 1.50 to 4.00 would do: fret 2 sets the least (the radius takes most there), fret 2
  the most (the web above the rod channel).
  Planned rim depth 2.00 mm (travel 3.00 mm) suits its holes.
  Planned rim depth 1.00 mm (travel 3.00 mm) suits its holes.

WRONG   (! must be cured, ? wants care; each cure by itself is enough)
  ? One stop setting cannot serve all holes; 2 settings do: rim depths 1.00 mm and 2.75 mm.
    cures: a thinner keep, 0.75 instead of 1.00; a thicker dot (group 2), 1.00 instead of 0.75.

HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)
  fret  side    from nut  off centre  size  removed  least  most  set  travel  planned  left   web
     2  centre     48.00        0.00  8.00     0.50   1.50  4.00  B      3.75     2.00  1.50  3.00
     4  bass      112.00      -16.00  4.00     0.50   0.75  1.25  A      3.00     1.00  0.50  5.00
     4  treble    112.00       16.00  4.00     0.50   0.75  1.25  A      3.00     1.00  0.50  5.00

EDGES   (thinnest: 7.50 mm, at the nut; line: height of the side dots' line above the underside)
  at      removed  left  line  |  at      removed  left  line  |  at      removed  left  line
  nut        0.50  7.50  3.75  |  fret 2     0.50  7.50  3.75  |  fret 4     0.50  7.50  3.75
  fret 1     0.50  7.50  3.75  |  fret 3     0.50  7.50  3.75  |  end        0.50  7.50  3.75

SLOTS
  Saw from 3.00 (fret 1 sets it) to 5.00 (fret 1) deep, measured from the flat.

EPOXY
  Mix at least 0.21 ml: 0.10 ml of resin and 0.10 ml of hardener, waste included, for holes drilled
  to the stop setting.

ASSUMED   (the design does not say; mm, degrees or fractions)
  board.channel.from 0, pour.waste 0.5, pour.ratio.0 1, pour.ratio.1 1

CAUTIONS
  - These lines do not replace local codes or licensed practice, which come first.
  - Drill press: clamp the neck, guard the bit, wear eye protection, no gloves or loose sleeves
    (OSHA 29 CFR 1910.213, woodworking machinery; 1910.133, eye protection).
  - A twist bit can grab and climb as it breaks in or through: clamp the work, feed slowly, try on
    scrap (common practice, no source).
  - Wood dust is a health, fire and explosion hazard: collect it at the tool and wear a respirator
    (OSHA, "Wood Dust – Hazard Recognition"; HSE WIS30, "Toxic woods").
  - Dust of shell and of other dots harms the lungs: cut and sand it wet or under extraction, with a
    respirator (Eur Respir J 10:780–786, 1997, lung disease in nacre workers).
  - Uncured epoxy sensitises the skin: wear suitable gloves, ventilate, keep it off the skin, and
    read its safety data sheet (HSE RR79, skin sensitisation by epoxy resins).
  - Keep torches and open flame away from uncured resin, its vapour and its solvents (common
    practice, no source).
  - A batch this small is hard to measure: mix at least 10 ml, or weigh it, and test that it cures
    (common practice, no source).
`);
  });

  test("no holes: no drilling, and no caution about it", () => {
    const { name: _, ...unnamed } = BOARD;
    expect(drillCard(checkDesign({ ...unnamed, markers: [] }))).toBe(`DRILL CARD: unnamed neck
========================
Nothing found that stops the work.
Lengths in mm.

STOP
  No holes.

WRONG
  Nothing.

EDGES   (thinnest: 7.50 mm, at the nut)
  at      removed  left  |  at      removed  left  |  at      removed  left  |  at  removed  left
  nut        0.50  7.50  |  fret 2     0.50  7.50  |  fret 4     0.50  7.50  |
  fret 1     0.50  7.50  |  fret 3     0.50  7.50  |  end        0.50  7.50  |

CAUTIONS
  - These lines do not replace local codes or licensed practice, which come first.
  - Wood dust is a health, fire and explosion hazard: collect it at the tool and wear a respirator
    (OSHA, "Wood Dust – Hazard Recognition"; HSE WIS30, "Toxic woods").
`);
  });

  // 3 mm of wood: least 1.5, most 3 − 1 − 1; a rim at 3 goes 1 too far. Tang 2 + 0.2 + 0.5 against 3 − 1.5.
  test("nothing fits", () => {
    const thin = { board: { ...BOARD.board, thickness: 3 }, depth: 3, slot: { depth: 3, tang: 2 } };
    expect(uncautioned(cardOf(thin))).toBe(`DRILL CARD: Small board (invented)
==================================
DO NOT DRILL YET: see what is wrong.
Lengths in mm.

STOP
  No setting serves 1 of 1 holes.
  Planned rim depth 3.00 mm (travel 4.00 mm) fails at 1 of its holes.

WRONG   (! must be cured, ? wants care; each cure by itself is enough)
  ! No depth suits the dot at fret 2: it needs at least 1.50 mm to outlast the radius, and at most
    1.00 mm to leave the web under the bit.
    cures: a thicker blank, 3.50 instead of 3.00; a shorter point, 0.50 instead of 1.00; a thinner
      web, 0.50 instead of 1.00; a thinner keep, 0.50 instead of 1.00.
  ! The bit may break through under the dot at fret 2: in the worst case it goes 1.00 mm too far.
    cures: a thicker blank, 5.00 instead of 3.00.
  ! No saw depth suits all slots: at fret 1 one must be at least 2.70 mm deep, and elsewhere at most
    1.50 mm.
    cures: a thicker blank, 4.20 instead of 3.00; a shorter tang, 0.80 instead of 2.00; a thinner
      web under the slots, 0.30 instead of 1.50.
  ! The slot at fret 1 is 3.00 mm deep from the flat; 1.50 mm would leave the web under it. (The
    worst of 4: fret 1, fret 2, fret 3 and fret 4.)
    cures: a thicker blank, 4.50 instead of 3.00; a thinner web under the slots, 0.00 instead of
      1.50.

HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)
  fret  side    from nut  off centre  size  removed  least  most  travel  planned  left    web
     2  centre     48.00        0.00  8.00     0.50   1.50  1.00  -          3.00  2.50  -1.00

EDGES   (thinnest: 2.50 mm, at the nut)
  at      removed  left  |  at      removed  left  |  at      removed  left  |  at  removed  left
  nut        0.50  2.50  |  fret 2     0.50  2.50  |  fret 4     0.50  2.50  |
  fret 1     0.50  2.50  |  fret 3     0.50  2.50  |  end        0.50  2.50  |

SLOTS
  No saw depth suits all: fret 1 needs 2.70, fret 1 allows 1.50.

EPOXY
  Mix at least 0.23 ml: 0.11 ml of resin and 0.11 ml of hardener, waste included, for holes drilled
  to the stop setting.

ASSUMED   (the design does not say; mm, degrees or fractions)
  slot.clearance 0.2, slot.web 1.5, pour.waste 0.5, pour.ratio.0 1, pour.ratio.1 1
`);
  });

  // π · 16 · 2 · 1.5 twice, and a cone of 90° 4 deep: π · 16 · 4 / 3 · 1.5; 402 mm³ together
  test("two bits at one depth", () => {
    const markers = [
      ...BOARD.markers,
      { frets: [3], diameter: 8, bit: { kind: "twist", angle: 90 } },
    ];
    expect(uncautioned(cardOf({ stopStep: 0.5, markers }))).toBe(`DRILL CARD: Small board (invented)
==================================
Nothing found that stops the work.
Lengths in mm.

STOP
  Stop setting, for every hole: 3.00 mm for fret 2; 6.00 mm for fret 3. Rim depth 2.00 mm.
  Rim depths from 1.50 to 3.00 would do: fret 2 sets the least (the radius takes most there), fret 3
  the most (the web under the bit).

WRONG   (! must be cured, ? wants care; each cure by itself is enough)
  ? The bits used at one depth lead their rims by 2 different lengths; touch off and set the stop
    for each bit anew.

HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)
  fret  side    from nut  off centre  size  removed  least  most  travel
     2  centre     48.00        0.00  8.00     0.50   1.50  6.00    3.00
     3  centre     80.00        0.00  8.00     0.50   1.50  3.00    6.00

EDGES   (thinnest: 7.50 mm, at the nut)
  at      removed  left  |  at      removed  left  |  at      removed  left  |  at  removed  left
  nut        0.50  7.50  |  fret 2     0.50  7.50  |  fret 4     0.50  7.50  |
  fret 1     0.50  7.50  |  fret 3     0.50  7.50  |  end        0.50  7.50  |

EPOXY
  Mix at least 0.40 ml: 0.20 ml of resin and 0.20 ml of hardener, waste included, for holes drilled
  to the stop setting.

ASSUMED   (the design does not say; mm, degrees or fractions)
  pour.waste 0.5, pour.ratio.0 1, pour.ratio.1 1
`);
  });

  // 1 mm = .0394 in: least 3/64; 6.35 − 2 − 1 − 1 = 2.35 = .0925: most 5/64; the middle 1.675 = .0659 = 4.2/64, with
  // the point 2.675 = .1053 = 6.7/64. 48 = 1.8898 = 120.9/64; 8 = .3150 = 20.2/64; 1.35 = .0531 = 3.4/64.
  test("in inches", () => {
    const quarter = {
      board: { ...BOARD.board, thickness: 6.35, channel: { width: 8, depth: 2 } },
      crown: 0,
      depth: 2,
    };
    expect(uncautioned(cardOf(quarter, "in"))).toBe(`DRILL CARD: Small board (invented)
==================================
Nothing found that stops the work.
Lengths in inches, to the nearest 1/64 (limits: to the safe side) with the decimal beside it.

STOP
  Stop setting, for every hole: 7/64 (.105) in of travel from the point's touch. Rim depth 1/16
  (.066) in.
  Rim depths from 3/64 (.040) to 5/64 (.092) would do: fret 2 sets the least (the radius takes most
  there), fret 2 the most (the web above the rod channel).
  Planned rim depth 5/64 (.079) in (travel 1/8 (.118) in) suits its holes.

WRONG
  Nothing.

HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)
  fret  side           from nut  off centre         size   removed        least         most
     2  centre  1 57/64 (1.890)    0 (.000)  5/16 (.315)  0 (.000)  3/64 (.040)  5/64 (.092)

  fret  side         travel      planned         left          web
     2  centre  7/64 (.105)  5/64 (.079)  5/64 (.079)  3/64 (.053)

EDGES   (thinnest: 1/4 (.250) in, at the nut)
  at       removed        left  |  at       removed        left  |  at       removed        left
  nut     0 (.000)  1/4 (.250)  |  fret 2  0 (.000)  1/4 (.250)  |  fret 4  0 (.000)  1/4 (.250)
  fret 1  0 (.000)  1/4 (.250)  |  fret 3  0 (.000)  1/4 (.250)  |  end     0 (.000)  1/4 (.250)

EPOXY
  Mix at least 0.13 ml: 0.06 ml of resin and 0.06 ml of hardener, waste included, for holes drilled
  to the stop setting.

ASSUMED   (the design does not say; mm, degrees or fractions)
  board.channel.from 0, board.channel.to 160, pour.waste 0.5, pour.ratio.0 1, pour.ratio.1 1
`);
  });

  test("fanned frets: each edge by itself", () => {
    const fanned = cardOf({
      scale: { bass: 680, treble: 650, perpendicular: 0, frets: 2 },
      board: { ...BOARD.board, length: 100 },
    });
    const edges = fanned.split("\n\n").find((part) => part.startsWith("EDGES"));
    expect(edges).toBe(`EDGES   (thinnest: 7.50 mm, at the nut bass)
  at           removed  left  |  at             removed  left  |  at   removed  left
  nut bass        0.50  7.50  |  fret 1 treble     0.50  7.50  |  end     0.50  7.50
  nut treble      0.50  7.50  |  fret 2 bass       0.50  7.50  |
  fret 1 bass     0.50  7.50  |  fret 2 treble     0.50  7.50  |`);
  });
});

describe("notes of a repair", () => {
  test.each<[string, object, number[], string]>([
    [
      "a bit that does",
      {},
      [8, 9, 10],
      `REPAIR: the dot at fret 2
  The next bit must be 9.00 or more to swallow the old hole.
  Fill the hole, then drill again with 9.00 mm, to a rim depth of 3.75 mm (travel 4.75 mm).
`,
    ],
    [
      "none: the board is too thin",
      { board: { ...BOARD.board, thickness: 3 } },
      [9],
      `REPAIR: the dot at fret 2
  The next bit must be 9.00 or more to swallow the old hole.
  No bit of the rack does.
  Not 9.00: No depth suits the dot at fret 2: it needs at least 1.50 mm to outlast the radius, and
    at most 1.00 mm to leave the web under the bit.
`,
    ],
    [
      "none: the slots are too near",
      {},
      [8, 32, 40],
      `REPAIR: the dot at fret 2
  The next bit must be 9.00 or more to swallow the old hole.
  No bit of the rack does.
  Not 32.00: The edge of the dot at fret 2 lies 0.00 mm from a fret slot or the nut; 0.50 mm is
    wanted.
  Not 40.00: The edge of the dot at fret 2 cuts 4.00 mm into a fret slot or the nut.
`,
    ],
  ])("%s", (_, change, rack, note) => {
    expect(repairNote(repairHole({ ...BOARD, ...change }, { fret: 2, error: 0.5 }, rack))).toBe(
      note,
    );
  });

  test("without a depth in use there is none to drill to", () => {
    const pair = { frets: [2], diameter: 8, arrangement: "double", spread: 24 } as const;
    const repair = repairHole(
      { ...BOARD, markers: [pair] },
      { fret: 2, side: "bass", error: 0.5 },
      [9],
    );
    expect(repairNote({ ...repair, report: null })).toBe(
      "REPAIR: the bass dot at fret 2\n  The next bit must be 9.00 or more to swallow the old hole.\n  Drill again with 9.00 mm.\n",
    );
    expect(repairNote(repair, { unit: "in" })).toBe(
      // 9 mm = .3543 in = 22.7/64; 3.75 = .1476 = 9.4/64; 4.75 = .1870 = 12/64
      "REPAIR: the bass dot at fret 2\n  The next bit must be 23/64 (.355) or more to swallow the old hole.\n  Fill the hole, then drill again with 23/64 (.354) in, to a rim depth of 9/64 (.148) in (travel\n  3/16 (.187) in).\n",
    );
    expect(() => repairNote(repair, { unit: "ft" as never })).toThrow(
      new RangeError('unit: expected "mm" or "in", received "ft"'),
    );
  });
});

describe("lengths", () => {
  test.each([
    [0, "0 (.000)"],
    [25.4, "1 (1.000)"],
    [-25.4, "-1 (-1.000)"],
    [0.396875, "1/64 (.016)"],
    [-0.396875, "-1/64 (-.016)"],
    // less than half of 1/64
    [-0.1, "0 (-.004)"],
    [-0.001, "0 (.000)"],
    [41.275, "1 5/8 (1.625)"],
    [Infinity, "Infinity"],
    [-Infinity, "-Infinity"],
  ])("%d mm in inches", (mm, text) => {
    expect(INCHES.bare(mm)).toBe(text);
    expect(INCHES.full(mm)).toBe(`${text} in`);
  });

  test("limits are written on the safe side, and exactly where they are a step", () => {
    expect(MILLIMETRES.least(1.231)).toBe("1.24");
    expect(MILLIMETRES.least(1.23)).toBe("1.23");
    expect(MILLIMETRES.most(1.239)).toBe("1.23");
    expect(MILLIMETRES.most(1.23)).toBe("1.23");
    // 1.1 is a little more than 1.1 in binary, and a hundred times it more than 110
    expect(MILLIMETRES.least(1.1)).toBe("1.10");
    expect(MILLIMETRES.most(0.29)).toBe("0.29");
    expect(MILLIMETRES.least(Infinity)).toBe("Infinity");
    expect(MILLIMETRES.most(-Infinity)).toBe("-Infinity");
    expect(INCHES.least(25.4 / 64)).toBe("1/64 (.016)");
    expect(INCHES.least(0.4)).toBe("1/32 (.016)");
    expect(INCHES.most(25.4 / 64)).toBe("1/64 (.015)");
    expect(INCHES.most(0.39)).toBe("0 (.015)");
    expect(MILLIMETRES.bare(-0.001)).toBe("0.00");
    expect(MILLIMETRES.full(-0.01)).toBe("-0.01 mm");
  });

  test("a setting's nearest 1/64 is told where it lies between its limits, their ends included", () => {
    const step = 25.4 / 64;
    expect(INCHES.between(0.4, step, step)).toBe("1/64 (.016)");
    expect(INCHES.between(0.4, 0.4, 0.5)).toBe(".016");
    expect(INCHES.between(0.39, 0.3, 0.396)).toBe(".015");
    expect(MILLIMETRES.between(0.4, 0.4, 0.5)).toBe("0.40");
  });
});
