/** What a finding says, and what a cure is called at the bench, its threshold rounded to the safe side. */
import { expect, test } from "vitest";
import type { FindingFacts } from "../../src/report/findings.js";
import { joined, remedyWords, sentenceOf } from "../../src/report/sentences.js";

type Place = Pick<FindingFacts, "fret" | "side" | "station">;

const NUT: Place = { station: "nut", side: "bass" };
const END: Place = { station: "end", side: "treble" };
const DOT: Place = { fret: 12, side: "treble" };
const MIDDLE: Place = { fret: 7, side: "centre" };
const SLOT: Place = { fret: 22, station: "fret22" };

test.each<[FindingFacts["code"], Place, number, number, string]>([
  [
    "nothing-left",
    DOT,
    -0.25,
    0,
    "Nothing may be left of the treble dot at fret 12: in the worst case the radius reaches 0.25 mm below the bottom of its hole.",
  ],
  [
    "below-keep",
    MIDDLE,
    0.5,
    0.8,
    "Only 0.50 mm of the dot at fret 7 may be left after the radius; 0.80 mm should be.",
  ],
  [
    "breaks-through",
    { fret: 3, side: "bass" },
    -1.5,
    0,
    "The bit may break through under the bass dot at fret 3: in the worst case it goes 1.50 mm too far.",
  ],
  [
    "below-web",
    MIDDLE,
    0.75,
    1,
    "Only 0.75 mm of wood may be left under the bit at the dot at fret 7; 1.00 mm should be.",
  ],
  [
    "below-surface",
    MIDDLE,
    -0.125,
    0,
    "The top of the dot at fret 7 may end 0.13 mm below the finished surface.",
  ],
  [
    "cuts-slot",
    DOT,
    -0.5,
    0,
    "The edge of the treble dot at fret 12 cuts 0.50 mm into a fret slot or the nut.",
  ],
  [
    "near-slot",
    MIDDLE,
    0.25,
    0.5,
    "The edge of the dot at fret 7 lies 0.25 mm from a fret slot or the nut; 0.50 mm is wanted.",
  ],
  [
    "past-edge",
    DOT,
    -2,
    0,
    "The edge of the treble dot at fret 12 passes the board's edge by 2.00 mm.",
  ],
  [
    "dots-overlap",
    { fret: 12 },
    5,
    6,
    "Two dots at fret 12 overlap: their centres lie 5.00 mm apart, and they touch at 6.00 mm.",
  ],
  [
    "thin-edge",
    NUT,
    0.5,
    1,
    "The board's edge at the nut may be left 0.50 mm thick after the radius; 1.00 mm should be.",
  ],
  [
    "thin-edge",
    END,
    0.5,
    1,
    "The board's edge at the body end may be left 0.50 mm thick after the radius; 1.00 mm should be.",
  ],
  [
    "thin-edge",
    { fret: 12, station: "fret12" },
    0.5,
    1,
    "The board's edge at fret 12 may be left 0.50 mm thick after the radius; 1.00 mm should be.",
  ],
  // bounds are rounded to the safe side: the least up, the most down
  [
    "no-slot-depth",
    SLOT,
    4.201,
    3.999,
    "No saw depth suits all slots: at fret 22 one must be at least 4.21 mm deep, and elsewhere at most 3.99 mm.",
  ],
  [
    "slot-too-shallow",
    SLOT,
    2.5,
    3.401,
    "The slot at fret 22 is 2.50 mm deep from the flat; after the radius its tang needs 3.41 mm at the edges.",
  ],
  [
    "slot-too-deep",
    SLOT,
    5,
    4.609,
    "The slot at fret 22 is 5.00 mm deep from the flat; 4.60 mm would leave the web under it.",
  ],
  [
    "side-dot-tight",
    { fret: 12, side: "bass" },
    3,
    4,
    "The edge face beside the marker at fret 12 may be left 3.00 mm high; the side dot and its margins need 4.00 mm.",
  ],
  [
    "side-dot-meets-hole",
    { fret: 12, side: "bass" },
    -0.75,
    0,
    "The side dot's hole meets the hole of the bass dot at fret 12: they overlap by 0.75 mm in height.",
  ],
  [
    "side-dot-meets-slot",
    { fret: 12, side: "bass" },
    -0.25,
    0,
    "The side dot at fret 12 meets a fret slot: they overlap by 0.25 mm in height.",
  ],
  [
    "several-travels",
    {},
    2,
    1,
    "The bits used at one depth lead their rims by 2 different lengths; touch off and set the stop for each bit anew.",
  ],
])("%s, %o: %d of %d", (code, place, value, limit, sentence) => {
  expect(sentenceOf({ code, severity: "error", value, limit, ...place })).toBe(sentence);
});

test("a finding without a place is the board's", () => {
  const facts: FindingFacts = { code: "below-web", severity: "error", value: 0, limit: 1 };
  expect(sentenceOf(facts)).toBe(
    "Only 0.00 mm of wood may be left under the bit at the board; 1.00 mm should be.",
  );
});

test.each([
  ["web", "to leave the web under the bit"],
  ["channel", "to leave the web above the rod channel"],
  ["flush", "to keep the dot's top flush"],
] as const)("no depth: the rule of the most is %s", (maxBy, reason) => {
  const facts = { code: "no-depth", severity: "error", ...DOT, maxBy } as const;
  expect(sentenceOf({ ...facts, value: 3.201, limit: 2.999 })).toBe(
    `No depth suits the treble dot at fret 12: it needs at least 3.21 mm to outlast the radius, and at most 2.99 mm ${reason}.`,
  );
});

test("no depth, whatever the rule: the web is what is told", () => {
  const facts = { code: "no-depth", severity: "error", fret: 5, value: 3, limit: 2 } as const;
  expect(sentenceOf(facts)).toMatch(/ at most 2\.00 mm to leave the web under the bit\.$/);
});

test("several settings: each depth", () => {
  const facts: FindingFacts = {
    code: "several-settings",
    severity: "warning",
    value: 3,
    limit: 1,
    depths: [1.5, 2.25, 3],
  };
  expect(sentenceOf(facts)).toBe(
    "One stop setting cannot serve all holes; 3 settings do: rim depths 1.50 mm, 2.25 mm and 3.00 mm.",
  );
});

test.each([
  ["board.thickness", "a thicker blank, 6.13 instead of 6.00"],
  ["board.thickness.end", "a thicker blank at the end, 6.13 instead of 6.00"],
  ["board.thickness.fret12", "a thicker blank at fret 12, 6.13 instead of 6.00"],
  ["radius", "a flatter radius, 6.13 instead of 6.00"],
  ["radius.nut", "a flatter radius at the nut, 6.13 instead of 6.00"],
  ["markers.1.diameter", "a smaller dot (group 2), 6.13 instead of 6.00"],
  ["markers.0.spread", "the pair's spread (group 1), 6.13 instead of 6.00"],
  ["bit.point", "a shorter point, 6.13 instead of 6.00"],
  ["markers.10.bit.point", "a shorter point (group 11), 6.13 instead of 6.00"],
  ["sideDots.diameter", "a smaller side dot, 6.13 instead of 6.00"],
  ["markers.1.bit.angle", "a blunter twist bit (group 2), 7 degrees instead of 6"],
  ["bit.angle", "a blunter twist bit, 7 degrees instead of 6"],
  ["web", "a thinner web, 6.13 instead of 6.00"],
  ["slot.web", "a thinner web under the slots, 6.13 instead of 6.00"],
  ["fill.keep", "a thinner keep, 6.13 instead of 6.00"],
  ["board.channel.depth", "a shallower rod channel, 6.13 instead of 6.00"],
  ["fill.thickness", "a thicker dot, 6.13 instead of 6.00"],
  ["depth", "another depth for all, 6.13 instead of 6.00"],
  ["markers.2.depth", "a separate setting (group 3), 6.13 instead of 6.00"],
  ["slot.depth", "another saw depth, 6.13 instead of 6.00"],
  ["slot.tang", "a shorter tang, 6.13 instead of 6.00"],
  ["slot.clearance", "less clearance under the tang, 6.13 instead of 6.00"],
  ["sideDots.margin", "a smaller margin around the side dots, 6.13 instead of 6.00"],
  ["sideDots.depth", "shallower side dot holes, 6.13 instead of 6.00"],
  // a change without words of its own is called by its path
  ["scale", "scale, 6.13 instead of 6.00"],
])("%s: %s", (change, words) => {
  expect(remedyWords({ change, from: 6, to: 6.123 })).toBe(words);
});

test("a threshold above is rounded up, one below down", () => {
  expect(remedyWords({ change: "web", from: 1, to: 0.799 })).toBe(
    "a thinner web, 0.79 instead of 1.00",
  );
  expect(remedyWords({ change: "depth", from: 1, to: 1.121 })).toBe(
    "another depth for all, 1.13 instead of 1.00",
  );
  // tan(a/2) = 3.5 / 1.9: 123.02°
  const angle = (360 / Math.PI) * Math.atan(3.5 / 1.9);
  expect(remedyWords({ change: "bit.angle", from: 118, to: angle })).toBe(
    "a blunter twist bit, 124 degrees instead of 118",
  );
});

test("lists", () => {
  expect(joined([])).toBe("");
  expect(joined(["a"])).toBe("a");
  expect(joined(["a", "b"])).toBe("a and b");
  expect(joined(["a", "b", "c"])).toBe("a, b and c");
});
