/** Arbitrary neck designs, all invented: ordinary ones, and odd ones that no builder would draw. */
import fc from "fast-check";
import {
  type Bit,
  checkDesign,
  DEFAULTS,
  type Design,
  type Fill,
  type MarkerGroup,
  type Profile,
  type Report,
} from "../../src/index.js";
import { type Layout, placeOf, profileValue, tempered } from "./oracle.js";

/** Numbers of two decimals from `lo` to `hi`. */
export function between(lo: number, hi: number): fc.Arbitrary<number> {
  return fc
    .integer({ min: Math.round(lo * 100), max: Math.round(hi * 100) })
    .map((hundredths) => hundredths / 100);
}

/** The same, with the ends of the range as likely as all between them. */
function upTo(lo: number, hi: number): fc.Arbitrary<number> {
  return fc.oneof(between(lo, hi), fc.constantFrom(lo, hi));
}

/** What bounds a profile: its values, its steepest slope, how many stations. */
interface Range {
  readonly lo: number;
  readonly hi: number;
  readonly slope: number;
  readonly most?: number;
  /** Level pieces and the steepest ones alone. */
  readonly pushed?: boolean;
}

/** A kind of neck, by the ranges that its parts are drawn from. */
interface Kind {
  readonly layout: fc.Arbitrary<Layout>;
  readonly width: (layout: Layout) => fc.Arbitrary<Profile>;
  readonly thickness: Range;
  readonly radius: (widest: number) => Range;
  readonly crown: Range;
  readonly diameter: readonly [number, number];
  readonly spread: readonly [number, number];
  readonly layoutError: number;
  /** Values at the ends of their ranges, and doubles, alone. */
  readonly pushed?: boolean;
}

/** A design and where its stations lie. */
export interface Drawn {
  readonly design: Design;
  readonly layout: Layout;
}

const temperedLayout: fc.Arbitrary<Layout> = fc
  .record({
    length: between(560, 700),
    frets: fc.integer({ min: 20, max: 24 }),
    past: between(2, 25),
  })
  .map(({ length, frets, past }) => {
    const positions = tempered(length, frets);
    return { scale: { length, frets }, positions, length: lastOf(positions) + past };
  });

/** Slots of any spacing; close ones let stations fall inside a hole's disc. */
function listedLayout(least: number, most: number, frets: number): fc.Arbitrary<Layout> {
  const gaps = fc.array(between(least, most), { minLength: 2, maxLength: frets });
  return fc.tuple(gaps, between(0, 25)).map(([steps, past]) => {
    const positions: number[] = [];
    for (const step of steps) positions.push(round((positions.at(-1) ?? 0) + step));
    return { scale: { positions }, positions, length: round(lastOf(positions) + past) };
  });
}

const ORDINARY: Kind = {
  layout: fc.oneof(temperedLayout, listedLayout(4, 20, 14)),
  width: () =>
    fc
      .tuple(between(38, 50), between(0, 18))
      .map(([nut, more]) => ({ nut, end: round(nut + more) })),
  thickness: { lo: 5, hi: 9, slope: 0.004 },
  radius: () => ({ lo: 180, hi: 500, slope: 0.4 }),
  crown: { lo: 0, hi: 0.8, slope: 0.01 },
  diameter: [2, 10],
  spread: [10, 30],
  layoutError: 0.6,
};

/** Ordinary still, but at the ends of those ranges, with stations inside the discs. */
const PUSHED: Kind = {
  ...ORDINARY,
  layout: listedLayout(4, 16, 14),
  radius: () => ({ lo: 180, hi: 500, slope: 0.4, pushed: true }),
  crown: { lo: 0, hi: 0.8, slope: 0.01, pushed: true },
  diameter: [9, 10],
  pushed: true,
};

const ODD: Kind = {
  layout: fc.oneof(listedLayout(0.05, 300, 6), listedLayout(1, 9, 40), temperedLayout),
  width: (layout) => profile(layout, { lo: 4, hi: 90, slope: 5 }),
  thickness: { lo: 0.5, hi: 60, slope: 1 },
  radius: (widest) => ({ lo: round(widest * 0.6), hi: widest * 20, slope: 3 }),
  crown: { lo: 0, hi: 5, slope: 0.5 },
  diameter: [0.1, 20],
  spread: [0.5, 60],
  layoutError: 3,
};

/** Necks that a builder may draw: radius 180 to 500, its slope up to 0.4, dots up to 10 mm. */
export const ordinaryNeck: fc.Arbitrary<Drawn> = neck(ORDINARY);

/** Ordinary necks at the ends of those ranges. */
export const pushedNeck: fc.Arbitrary<Drawn> = neck(PUSHED);

/** Valid designs that no builder would draw. */
export const oddNeck: fc.Arbitrary<Drawn> = neck(ODD).filter(
  ({ design }) => tried(design) !== undefined,
);

/** Any of them. */
export const anyNeck: fc.Arbitrary<Drawn> = fc.oneof(ordinaryNeck, pushedNeck, oddNeck);

/**
 * A usual neck of so many frets: one constant radius, one dot size, widening toward the body, singles at the usual
 * frets and doubles at the twelfth, as builders do (common practice, no source).
 */
export function usualNeck(least: number, most: number): fc.Arbitrary<Drawn> {
  const parts = fc.record({
    length: between(300, 900),
    frets: fc.integer({ min: least, max: most }),
    past: between(0.5, 30),
    nut: between(30, 60),
    more: between(0.5, 25),
    thickness: between(5, 9),
    radius: between(100, 800),
    crown: between(0, 0.6),
    diameter: between(2, 10),
  });
  return fc.tuple(parts, tolerancesUpTo(0.6)).map(([part, tolerance]) => usual(part, tolerance));
}

interface Usual {
  readonly length: number;
  readonly frets: number;
  readonly past: number;
  readonly nut: number;
  readonly more: number;
  readonly thickness: number;
  readonly radius: number;
  readonly crown: number;
  readonly diameter: number;
}

function usual(part: Usual, tolerance: NonNullable<Design["tolerance"]>): Drawn {
  const { length, frets, past, nut, more, thickness, radius, crown, diameter } = part;
  const positions = tempered(length, frets);
  const scale = { length, frets };
  const end = lastOf(positions) + past;
  const singles = [3, 5, 7, 9, 15, 17, 19, 21].filter((fret) => fret <= frets);
  const design: Design = {
    scale,
    board: { length: end, width: { nut, end: round(nut + more) }, thickness },
    radius,
    crown,
    markers: [
      { frets: singles, diameter },
      { frets: [12], diameter, arrangement: "double" },
    ],
    tolerance,
  };
  return { design, layout: { scale, positions, length: end } };
}

/** The report, or undefined where the design is refused. */
export function tried(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch {
    return undefined;
  }
}

/** A report without what is only told of it: a finding's sentence and its remedies, which are made when read. */
export function plain(report: Report) {
  const findings = report.findings.map((finding) => {
    const { code, severity, fret, side, station, hole, value, limit, maxBy, depths } = finding;
    return { code, severity, fret, side, station, hole, value, limit, maxBy, depths };
  });
  return { ...report, findings };
}

function neck(kind: Kind): fc.Arbitrary<Drawn> {
  return kind.layout.chain((layout) =>
    kind
      .width(layout)
      .chain((width) => designOn(kind, layout, width))
      .map((design) => ({ design, layout })),
  );
}

function designOn(kind: Kind, layout: Layout, width: Profile): fc.Arbitrary<Design> {
  const board = fc.record(
    {
      length: fc.constant(layout.length),
      width: fc.constant(width),
      thickness: profile(layout, kind.thickness),
      channel: channelOn(layout),
    },
    { requiredKeys: ["length", "width", "thickness"] },
  );
  const widths = [0, ...layout.positions, layout.length].map((s) => profileValue(width, layout, s));
  const widest = Math.max(...widths);
  return fc.record(
    {
      name: fc.constantFrom("invented", ""),
      scale: fc.constant(layout.scale),
      board,
      radius: profile(layout, kind.radius(widest)),
      crown: profile(layout, kind.crown),
      markers: fc.array(groupOn(kind, layout), { minLength: 1, maxLength: 3 }),
      fill,
      bit,
      depth: between(1, 6),
      web: between(0, 2),
      tolerance: tolerancesUpTo(kind.layoutError),
      stopStep: between(0.01, 0.5),
      ...extras,
    },
    { requiredKeys: ["scale", "board", "radius", "markers"] },
  );
}

const extras = {
  slot: fc.record(
    { depth: between(1, 5), tang: between(1, 2.5), clearance: between(0, 1), web: between(0, 3) },
    { requiredKeys: ["depth", "tang"] },
  ),
  sideDots: fc.record(
    { diameter: between(1, 3), margin: between(0, 1), depth: between(1, 5) },
    { requiredKeys: ["diameter"] },
  ),
  pour: fc.record(
    { waste: between(0, 3), ratio: fc.tuple(between(0.5, 5), between(0.5, 5)) },
    { requiredKeys: [] },
  ),
};

function tolerancesUpTo(layout: number) {
  return fc.record(
    {
      stop: between(0, 0.3),
      layout: upTo(0, layout),
      thickness: between(0, 0.3),
      crown: between(0, 0.3),
      radius: upTo(0, 0.05),
    },
    { requiredKeys: [] },
  );
}

/** Fills of both kinds. */
export const fill: fc.Arbitrary<Fill> = fc.oneof(
  fc.record(
    { kind: fc.constant("poured" as const), keep: between(0, 2) },
    { requiredKeys: ["kind"] },
  ),
  fc.record(
    { kind: fc.constant("solid" as const), thickness: between(0.5, 4), keep: between(0, 2) },
    { requiredKeys: ["kind", "thickness"] },
  ),
);

/** Bits of all four kinds. */
export const bit: fc.Arbitrary<Bit> = fc.oneof(
  fc.record({
    kind: fc.constantFrom("forstner" as const, "brad-point" as const),
    point: between(0, 3),
  }),
  fc.record(
    { kind: fc.constant("twist" as const), angle: between(90, 150) },
    { requiredKeys: ["kind"] },
  ),
  fc.constant({ kind: "end-mill" as const }),
);

function groupOn(kind: Kind, layout: Layout): fc.Arbitrary<MarkerGroup> {
  const frets = layout.positions.map((_, i) => i + 1);
  const common = {
    frets: fc.subarray(frets, { minLength: 1, maxLength: Math.min(4, frets.length) }),
    diameter: upTo(...kind.diameter),
    along: fc.constantFrom("diagonals" as const, "midpoint" as const),
    fill,
    bit,
    depth: between(1, 6),
  };
  const double = { arrangement: fc.constant("double" as const), spread: upTo(...kind.spread) };
  const doubles = fc.record(
    { ...common, ...double },
    { requiredKeys: ["frets", "diameter", "arrangement"] },
  );
  if (kind.pushed) return doubles;
  return fc.oneof(
    doubles,
    fc.record(
      { ...common, arrangement: fc.constant("single" as const) },
      { requiredKeys: ["frets", "diameter"] },
    ),
  );
}

/** A rod channel; its ends are drawn near the middles between slots, where the holes are. */
function channelOn(layout: Layout): fc.Arbitrary<NonNullable<Design["board"]["channel"]>> {
  const end = fc
    .tuple(fc.integer({ min: 1, max: layout.positions.length }), between(-7, 7))
    .map(([fret, by]) => Math.max(0.5, round(middleBefore(layout, fret) + by)));
  const ends = fc
    .tuple(end, end)
    .map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }))
    .filter(({ from, to }) => from < to);
  const size = { width: between(2, 20), depth: between(0.5, 4) };
  const open = fc.record(size);
  const closed = fc.tuple(open, ends).map(([channel, both]) => ({ ...channel, ...both }));
  const begun = fc.tuple(open, end).map(([channel, from]) => ({ ...channel, from }));
  return fc.oneof(
    open,
    closed,
    // a filter would never end on a board that is shorter than the least beginning
    begun.map(({ from, ...rest }) => ({ ...rest, from: Math.min(from, layout.length / 2) })),
  );
}

function middleBefore({ positions }: Layout, fret: number): number {
  return ((positions[fret - 2] ?? 0) + (positions[fret - 1] ?? 0)) / 2;
}

/** A profile: a number, or one to four stations, within its range on the whole board. */
export function profile(layout: Layout, range: Range): fc.Arbitrary<Profile> {
  const { lo, hi, slope, most = 4, pushed = false } = range;
  const names = ["nut", ...layout.positions.map((_, i) => `fret${i + 1}`), "end"];
  // level pieces and the steepest ones are as likely as all between them
  const steepest = fc.constantFrom(-100, 0, 100);
  const turn = pushed ? steepest : fc.oneof(fc.integer({ min: -100, max: 100 }), steepest);
  const turns = fc.array(turn, { minLength: most, maxLength: most });
  const stations = fc
    .tuple(
      fc.subarray(names, { minLength: 1, maxLength: Math.min(most, names.length) }),
      between(lo, hi),
      turns,
    )
    .map(([at, start, steps]) => walk(at, start, steps, layout, { lo, hi, slope }))
    .filter((made) => within(made, layout, lo, hi));
  return fc.oneof({ weight: 1, arbitrary: upTo(lo, hi) }, { weight: 3, arbitrary: stations });
}

/** Values at stations, each within reach of the one before it. */
function walk(
  stations: readonly string[],
  start: number,
  steps: readonly number[],
  layout: Layout,
  { lo, hi, slope }: Range,
): Profile {
  const values: Record<string, number> = {};
  let value = start;
  let before = Number.NaN;
  stations.forEach((station, i) => {
    const along = placeOf(station, layout);
    if (along === before) return;
    if (i > 0) value += ((steps[i] ?? 0) / 100) * slope * (along - before);
    value = Math.min(hi, Math.max(lo, Math.trunc(value * 1000) / 1000));
    values[station] = value;
    before = along;
  });
  return values;
}

function within(made: Profile, layout: Layout, lo: number, hi: number): boolean {
  const ends = [0, layout.length].map((s) => profileValue(made, layout, s));
  return ends.every((value) => lo <= value && value <= hi);
}

/** The same design with every default written out. */
export function spelledOut(design: Design): Design {
  const value = (name: keyof typeof DEFAULTS) => DEFAULTS[name].value;
  const { channel, length } = design.board;
  return {
    ...design,
    board: channel
      ? { ...design.board, channel: { from: 0, to: length, ...channel } }
      : design.board,
    crown: design.crown ?? value("crown"),
    web: design.web ?? value("web"),
    fill: spelledFill(design.fill),
    bit: spelledBit(design.bit),
    markers: design.markers.map((group) => ({
      ...group,
      ...(group.fill ? { fill: spelledFill(group.fill) } : {}),
      ...(group.bit ? { bit: spelledBit(group.bit) } : {}),
    })),
    tolerance: {
      stop: value("stopTolerance"),
      layout: value("layoutTolerance"),
      thickness: value("thicknessTolerance"),
      crown: value("crownTolerance"),
      radius: value("radiusTolerance"),
      ...design.tolerance,
    },
    ...(design.slot
      ? { slot: { clearance: value("slotClearance"), web: value("slotWeb"), ...design.slot } }
      : {}),
    ...(design.sideDots
      ? {
          sideDots: {
            margin: value("sideDotMargin"),
            depth: value("sideDotDepth"),
            ...design.sideDots,
          },
        }
      : {}),
    pour: {
      waste: value("pourWaste"),
      ratio: [value("pourResin"), value("pourHardener")],
      ...design.pour,
    },
  };
}

function spelledFill(stated: Fill | undefined): Fill {
  const keep = stated?.kind === "solid" ? DEFAULTS.keepSolid.value : DEFAULTS.keepPoured.value;
  return { keep, ...(stated ?? { kind: "poured" }) };
}

function spelledBit(stated: Bit | undefined): Bit {
  if (stated === undefined) return { kind: "forstner", point: DEFAULTS.forstnerPoint.value };
  return stated.kind === "twist" ? { angle: DEFAULTS.twistAngle.value, ...stated } : stated;
}

function lastOf(values: readonly number[]): number {
  return values.at(-1) ?? 0;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
