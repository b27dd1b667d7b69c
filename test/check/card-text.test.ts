/**
 * Whole cards and notes, each figure worked out beside it by hand on a flat board whose sums are exact. What the
 * cautions say is held once; the other cards are read as far as those.
 */
import { describe, expect, test } from "vitest";
import { drillCard, repairNote } from "../../src/card/index.js";
import { checkDesign, type Design, repairHole } from "../../src/index.js";
import { INCHES, MILLIMETRES } from "../../src/text/length-text.js";
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
    [254, "10 (10.000)"],
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

/** The lines below one heading of a card, as one text. */
function sectionOf(card: string, heading: string): string {
  const found = card.split("\n\n").find((part) => part.startsWith(heading)) ?? "";
  return found.split("\n").slice(1).join("\n").replace(/\s+/g, " ").trim();
}

/** The rows of the holes, each as its cells. */
const rowsOf = (card: string) =>
  (card.split("\n\n").find((part) => part.startsWith("HOLES")) ?? "")
    .split("\n")
    .slice(2)
    .map((line) => line.trim().split(/ +/));

describe("what is wrong in several places", () => {
  const shallow = (fret: number, depth: number) => ({ frets: [fret], diameter: 8, depth });

  // 1.5 mm are needed everywhere
  test("the worst speaks, the others are named, and the cure that is enough for all", () => {
    const said = (...depths: number[]) => {
      const markers = depths.map((depth, i) => shallow(i + 1, depth));
      return sectionOf(cardOf({ markers }), "WRONG");
    };
    const all = "(The worst of 3: fret 1, fret 2 and fret 3.) cures: a thinner keep, 0.25 instead";
    const worst = "! Only 0.25 mm of the dot at fret";
    expect(said(1, 0.75, 1.25)).toContain(`${worst} 2 may be left`);
    expect(said(1, 0.75, 1.25)).toContain(all);
    expect(said(0.75, 1.25, 1)).toContain(`${worst} 1 may be left`);
    expect(said(1.25, 1, 0.75)).toContain(`${worst} 3 may be left`);
    expect(said(1.25, 1, 0.75)).toContain(all);
    // a depth of its own cures one of them alone
    expect(said(1, 0.75, 1.25)).not.toContain("depth for");
    expect(said(1)).toContain("(group 1), 1.50 instead of 1.00");
    expect(said(1)).not.toContain("worst");
  });

  test("what must grow grows to the greatest threshold", () => {
    // web and point want 2 mm under 1.5
    const thickness = { nut: 3, fret2: 3.25, end: 3.25 };
    const markers = [1, 2, 3].map((fret) => ({ frets: [fret], diameter: 8 }));
    const card = cardOf({ board: { ...BOARD.board, thickness }, markers, web: 1.25 });
    expect(sectionOf(card, "WRONG")).toMatch(
      /^! No depth suits the dot at fret 1: .*worst of 3: fret 1, fret 2 and fret 3\.\)/,
    );
    // nearest to the nut, at 12 mm, 3 + 12 · 0.25 / 64 less 1.25 and the point must be 1.5
    expect(sectionOf(card, "WRONG")).toContain("a thinner web, 0.54 instead of 1.25");
  });

  test("bass and treble are told apart, a place that fails twice is named once", () => {
    const pair = { ...shallow(2, 1), arrangement: "double", spread: 32 };
    expect(sectionOf(cardOf({ markers: [pair] }), "WRONG")).toContain(
      "(The worst of 2: fret 2 bass and fret 2 treble.)",
    );
    const twice = [shallow(2, 1), shallow(2, 1)];
    expect(sectionOf(cardOf({ markers: twice }), "WRONG")).toContain("(The worst of 2: fret 2.)");
  });

  test("edges by their stations", () => {
    const board = { ...BOARD.board, thickness: { nut: 2.5, end: 2 } };
    const card = cardOf({ board, markers: [], web: 1.75 });
    expect(sectionOf(card, "WRONG")).toMatch(
      /^! The board's edge at the body end may be left 1\.50 mm thick .*\(The worst of 3: fret 3, fret 4 and the end\.\)/,
    );
    expect(card).toContain("EDGES   (thinnest: 1.50 mm, at the end)");
    const dished = { ...BOARD.board, thickness: { nut: 2.5, fret2: 2, end: 2.5 } };
    expect(cardOf({ board: dished, markers: [] })).toContain("(thinnest: 1.50 mm, at fret 2)");
  });

  test("so many that their cures would take seconds: it says that these were not sought", () => {
    // 55 holes that fail: 55 · 55 = 3025 answers to seek; 60 · 50 = 3000 are few enough
    const neck = (holes: number, failing: number) => ({
      scale: { positions: Array.from({ length: 60 }, (_, i) => 16 * (i + 1)) },
      board: { length: 1000, width: 64, thickness: 8 },
      markers: [
        { frets: Array.from({ length: failing }, (_, i) => i + 1), diameter: 2, depth: 1 },
        { frets: Array.from({ length: holes - failing }, (_, i) => failing + i + 1), diameter: 2 },
      ].filter(({ frets }) => frets.length > 0),
    });
    const notSought = "cures: not sought, since there are so many; cure some and look again.";
    expect(sectionOf(cardOf(neck(55, 55)), "WRONG")).toMatch(
      /^! Only 0\.50 mm of the dot at fret 1 .*The worst of 55: .* and fret 55\.\) cures: not sought/,
    );
    expect(cardOf(neck(55, 55))).toContain(`\n    ${notSought}\n`);
    expect(cardOf(neck(60, 50))).not.toContain(notSought);
    expect(sectionOf(cardOf(neck(60, 50)), "WRONG")).toContain("a thinner keep, 0.50 instead");
  });

  test("a copy of a report has no cures, and its card says none", () => {
    const report = checkDesign({ ...BOARD, markers: [shallow(2, 1), shallow(3, 1)] });
    const copy = JSON.parse(JSON.stringify(report, (_, v) => (v === Infinity ? 1e99 : v)));
    expect(drillCard(copy)).toContain("(The worst of\n    2: fret 2 and fret 3.)\n\nHOLES");
    expect(drillCard(copy)).not.toContain("cures:");
  });
});

describe("holes that are not all alike", () => {
  const [poured, none, solid] = [
    { frets: [2], diameter: 8 },
    { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 1, keep: 2 } },
    { frets: [1], diameter: 8, fill: { kind: "solid", thickness: 0.75, keep: 0.25 } },
  ];

  test("one that no setting serves has a dash for its travel, and for its letter", () => {
    expect(rowsOf(cardOf({ markers: [poured, none] })).map((row) => row.slice(6))).toEqual([
      ["1.50", "6.00", "4.75"],
      ["2.50", "1.50", "-"],
    ]);
    const several = rowsOf(cardOf({ markers: [poured, none, solid] }));
    expect(several.map((row) => row.slice(6))).toEqual([
      ["0.75", "1.25", "A", "2.00"],
      ["1.50", "6.00", "B", "4.75"],
      ["2.50", "1.50", "-", "-"],
    ]);
    expect(sectionOf(cardOf({ markers: [poured, none] }), "STOP")).toContain(
      "No setting serves 1 of 2 holes.",
    );
  });

  test("a window of one depth is served", () => {
    const card = cardOf({ board: { ...BOARD.board, thickness: 3.5 } });
    expect(card).not.toContain("No setting serves");
    expect(rowsOf(card)[0]?.slice(6)).toEqual(["1.50", "1.50", "2.50"]);
  });

  test("without a planned depth beside one that has it", () => {
    const markers = [
      { ...poured, depth: 2 },
      { frets: [3], diameter: 8 },
    ];
    const card = cardOf({ markers });
    expect(rowsOf(card).map((row) => row.slice(8))).toEqual([
      ["4.75", "2.00", "1.50", "5.00"],
      ["4.75", "-", "-", "-"],
    ]);
    expect(rowsOf(cardOf({})).map((row) => row.length)).toEqual([9]);
  });

  test("a planned depth at its limits suits, beyond them it fails", () => {
    const verdict = (depth: number) =>
      /Planned rim depth \S+ mm \(travel \S+ mm\) (.*)\./.exec(cardOf({ depth }))?.[1];
    expect([1.5, 6].map(verdict)).toEqual(["suits its holes", "suits its holes"]);
    expect([1.49, 6.01].map(verdict)).toEqual([
      "fails at 1 of its holes",
      "fails at 1 of its holes",
    ]);
  });
});

test("a name's spaces and line breaks are one space each", () => {
  expect(cardOf({ name: "Larch \n\t two" }).split("\n")[0]).toBe("DRILL CARD: Larch two");
});

test("one saw depth is a range too", () => {
  // 2 + 0.5 + 0.5 at least, 8 − 4 − 1 at most
  const slot = { depth: 3, tang: 2, clearance: 0.5, web: 5 };
  expect(sectionOf(cardOf({ slot }), "SLOTS")).toBe(
    "Saw from 3.00 (fret 1 sets it) to 3.00 (fret 1) deep, measured from the flat.",
  );
});

test("a side dots' line stands beside the edges that have one", () => {
  const card = cardOf({ sideDots: { diameter: 2, margin: 0.5, depth: 4 } });
  expect(card).toMatch(/EDGES {3}\(thinnest: 7\.50 mm, at the nut; line: height of the side dots'/);
});

test("in inches a travel is told in decimals where its 64th would leave the window", () => {
  // 1.5 to 1.6 mm, their middle .061 in; 4/64 are 1.5875, and 6/64 of travel 2.38 less 1 are 1.38
  const board = { ...BOARD.board, thickness: 3.6 };
  const card = cardOf({ board }, "in");
  expect(card).toContain("\n  fret  side    travel\n     2  centre    .100\n");
  expect(sectionOf(card, "STOP")).toContain("every hole: .100 in of travel");
  expect(sectionOf(card, "STOP")).toContain("Rim depth 1/16 (.061) in.");
});
