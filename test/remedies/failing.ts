/** Random designs that fail, each in the way that its maker has in mind; all invented. */
import type { Design, FindingCode } from "../../src/index.js";

/** Numbers from 0 to 1. */
export type Random = () => number;

const between = (random: Random, least: number, most: number) => least + random() * (most - least);
const oneOf = <T>(random: Random, values: readonly T[]): T =>
  values[Math.floor(random() * values.length)] as T;

/** A neck that passes, more or less. */
function neck(random: Random): Design {
  const nut = between(random, 40, 46);
  const wide = between(random, nut + 8, nut + 16);
  return {
    scale: { length: between(random, 610, 660), frets: oneOf(random, [20, 22]) },
    board: {
      length: between(random, 470, 500),
      width: { nut, end: wide },
      thickness:
        random() < 0.5 ? between(random, 5.5, 7) : { nut: 6.5, end: between(random, 5.5, 6.4) },
    },
    radius:
      random() < 0.5 ? between(random, 230, 420) : { nut: 254, end: between(random, 300, 420) },
    bit:
      random() < 0.6
        ? { kind: "forstner", point: between(random, 0.6, 1.6) }
        : { kind: "twist", angle: 130 },
    stop: random() < 0.5 ? { from: "wood" } : { from: "table", zero: 150 },
    markers: [
      { frets: [3, 5, 7, 9], diameter: between(random, 5, 6.5) },
      { frets: [12], diameter: between(random, 5, 6.5), arrangement: "double" },
    ],
  };
}

const withBoard = (design: Design, board: Partial<Design["board"]>): Design => ({
  ...design,
  board: { ...design.board, ...board },
});
const withFrets = (design: Design, group: object): Design => ({
  ...design,
  markers: [design.markers[0], { frets: [12], diameter: 6, ...group }] as Design["markers"],
});

/** A maker of designs for each code; what a single number cures or not is the scan's to say. */
export const FAILING: Readonly<Partial<Record<FindingCode, (random: Random) => Design>>> = {
  "nothing-left": (r) => ({ ...neck(r), depth: between(r, 0.05, 0.25) }),
  "below-keep": (r) => ({ ...neck(r), depth: between(r, 0.9, 1.3) }),
  "breaks-through": (r) => ({ ...neck(r), depth: between(r, 5, 7) }),
  "below-web": (r) => ({ ...neck(r), travel: between(r, 5, 6) }),
  "below-surface": (r) => ({
    ...neck(r),
    fill: { kind: "solid", thickness: between(r, 1.4, 2) },
    depth: between(r, 2.4, 3),
  }),
  "no-depth": (r) => withBoard(neck(r), { thickness: between(r, 2.4, 3.8) }),
  "several-settings": (r) => ({
    ...withBoard(neck(r), { thickness: { nut: between(r, 2.75, 2.95), end: 7 } }),
    bit: { kind: "forstner", point: 1 },
    stop: { from: "wood" },
    markers: [
      { frets: [3, 5, 7, 9], diameter: 6 },
      { frets: [12], diameter: 6, arrangement: "double" },
    ],
  }),
  "several-travels": (r) => ({
    ...neck(r),
    markers: [
      { frets: [3, 5], diameter: 6, bit: { kind: "forstner", point: between(r, 1.8, 2.8) } },
      {
        frets: [12],
        diameter: 6,
        bit: { kind: "end-mill" },
        fill: { kind: "solid", thickness: between(r, 1.9, 2.4) },
      },
    ],
  }),
  "cuts-slot": (r) => withFrets(neck(r), { frets: [19, 20], diameter: between(r, 12, 14) }),
  "near-slot": (r) => withFrets(neck(r), { frets: [12], diameter: between(r, 18, 18.6) }),
  "past-edge": (r) => withFrets(neck(r), { arrangement: "double", spread: between(r, 47, 52) }),
  "dots-overlap": (r) => withFrets(neck(r), { arrangement: "double", spread: between(r, 2, 5.5) }),
  "thin-edge": (r) => ({
    ...withBoard(neck(r), { thickness: between(r, 2.2, 2.9) }),
    radius: between(r, 180, 230),
  }),
  "no-slot-depth": (r) => ({
    ...withBoard(neck(r), { thickness: between(r, 3.4, 4.4) }),
    slot: { tang: between(r, 1.6, 2) },
  }),
  "slot-too-shallow": (r) => ({ ...neck(r), slot: { tang: 1.6, depth: between(r, 2, 2.4) } }),
  "slot-too-deep": (r) => ({ ...neck(r), slot: { tang: 1.6, depth: between(r, 4.8, 5.4) } }),
  "side-dot-tight": (r) => ({
    ...withBoard(neck(r), { thickness: between(r, 3.6, 4.4) }),
    sideDots: { diameter: between(r, 2.4, 3) },
  }),
  "side-dot-meets-hole": (r) => ({
    ...neck(r),
    depth: between(r, 3.3, 3.7),
    sideDots: { diameter: 2, depth: between(r, 13, 18) },
  }),
  "side-dot-meets-slot": (r) => ({
    ...withFrets(neck(r), { frets: [20], diameter: 4 }),
    slot: { tang: 1.6, depth: between(r, 3.2, 3.6) },
    sideDots: { diameter: between(r, 17, 19), margin: 0 },
  }),
  "radius-not-reached": (r) => ({
    ...neck(r),
    existing: { radius: between(r, 180, 200) },
    radius: between(r, 300, 400),
  }),
  "no-step": (r) => ({ ...neck(r), stop: { from: "wood", step: between(r, 9, 12) } }),
  "near-channel": (r) => ({
    ...withBoard(neck(r), { thickness: 6, channel: { width: 6, depth: between(r, 0.4, 0.8) } }),
    bit: { kind: "end-mill" },
    depth: between(r, 3.75, 3.95),
  }),
  "fret-past-end": (r) => withBoard(neck(r), { length: between(r, 380, 425) }),
  "assumed-zero": (r) => {
    const { stop, ...rest } = neck(r);
    return withBoard(rest, { thickness: { nut: 6.5, end: between(r, 5.5, 6.2) } });
  },
  "unlikely-value": (r) => withBoard(neck(r), { thickness: between(r, 0.2, 0.3) }),
  "assumed-point": (r) => {
    const { bit, ...rest } = neck(r);
    return rest;
  },
  "assumed-foot": (r) => ({
    ...neck(r),
    stop: { from: "wood" },
    existing: { radius: 300 },
    radius: 280,
  }),
};
