/**
 * Random designs of every kind that the model knows, all invented, every tolerance stated: ordinary ones, and odd ones
 * that no builder would draw. Plain numbers, so that a million holes take minutes. Lengths in mm.
 */
import { seeded } from "../../bench/random.js";
import type * as core from "../../src/index.js";

/** Least and most, and the steepest slope along the board. */
type Range = readonly [least: number, most: number, slope: number];

/** What the parts of an ordinary neck are drawn from, and of an odd one. */
const RANGES = {
  gap: [6, 36, 0, 0.5, 80, 0],
  nut: [38, 50, 0, 5, 70, 0],
  wider: [0, 18, 0, -5, 20, 0],
  thickness: [5, 9, 0.004, 1, 40, 0.3],
  radius: [180, 500, 0.4, 60, 900, 2],
  sanding: [0, 0.8, 0.01, 0, 4, 0.3],
  size: [2, 10, 0, 0.1, 20, 0],
  layout: [0, 0.6, 0, 0, 3, 0],
  crest: [0, 1, 0, 0, 3, 0],
} as const;

/** Random numbers: to three decimals, whole, yes or no, one of several. */
export function sourceOf(seed: number) {
  const uniform = seeded(seed);
  const between = (least: number, most: number, _ = 0) =>
    Math.round(uniform(least, most) * 1000) / 1000;
  const whole = (least: number, most: number) => Math.floor(uniform(least, most + 1));
  const chance = (share: number) => uniform(0, 1) < share;
  const one = <T>(...items: readonly T[]) => items[whole(0, items.length - 1)] as T;
  return { between, whole, chance, one };
}

export type Source = ReturnType<typeof sourceOf>;

interface Neck extends Source {
  readonly range: (name: keyof typeof RANGES) => Range;
  readonly scale: core.Scale;
  /** Near where each fret crosses the centre line. */
  readonly slots: readonly number[];
  readonly length: number;
}

/** Draws a design; the same for the same seed. */
export function drawDesign(seed: number, isOdd: boolean): core.Design {
  const range = (name: keyof typeof RANGES) =>
    RANGES[name].slice(isOdd ? 3 : 0, isOdd ? 6 : 3) as unknown as Range;
  const neck = neckOf(sourceOf(seed), range);
  const { between, chance, whole } = neck;
  const nut = between(...range("nut"));
  const hasNeck = chance(0.4);
  const [, , taper] = range("thickness");
  return {
    scale: neck.scale,
    board: {
      length: neck.length,
      width: { nut, end: nut + between(...range("wider")) },
      thickness: profile(neck, range("thickness")),
      ...(hasNeck || chance(0.6) ? { channel: channelOn(neck, hasNeck) } : {}),
    },
    ...(hasNeck ? { neck: { thickness: profile(neck, [8, 20, taper]) } } : {}),
    ...(chance(0.4) ? { existing: { radius: radiusOn(neck) } } : {}),
    radius: radiusOn(neck),
    sanding: profile(neck, range("sanding")),
    markers: Array.from({ length: whole(1, 3) }, () => groupOn(neck)),
    fill: fillOf(neck),
    bit: bitOf(neck),
    stop: stopOn(neck),
    web: between(0, 2),
    tolerance: tolerancesOf(neck),
  };
}

function tolerancesOf({ between, chance, range }: Neck): core.Tolerances {
  // the end of a range as likely as nearly all between
  const upTo = (most: number) => (chance(0.4) ? most : between(0, most));
  return {
    stop: upTo(0.3),
    point: upTo(0.3),
    seat: upTo(0.3),
    layout: upTo(range("layout")[1]),
    thickness: upTo(0.3),
    sanding: upTo(0.3),
    crest: upTo(range("crest")[1]),
    fill: upTo(0.2),
    radius: upTo(0.05),
    existing: upTo(0.05),
  };
}

/** Frets in equal temperament, listed, or fanned. */
function neckOf(source: Source, range: Neck["range"]): Neck {
  const { between, whole, chance } = source;
  const frets = whole(8, 24);
  const [bass, treble] = [between(560, 700), between(560, 700)];
  const board = (scale: core.Scale, slots: readonly number[], more = 0): Neck => {
    return { ...source, range, scale, slots, length: (slots.at(-1) ?? 0) + between(2, 40) + more };
  };
  const numbers = Array.from({ length: frets }, (_, i) => i + 1);
  const tempered = (length: number) => numbers.map((n) => length * (1 - 2 ** (-n / 12)));
  if (chance(0.2)) {
    const square = between(0, frets);
    return board({ bass, treble, square, frets }, tempered((bass + treble) / 2), 60);
  }
  if (chance(0.5)) return board({ length: bass, frets }, tempered(bass));
  const positions: number[] = [];
  for (const _ of numbers) positions.push((positions.at(-1) ?? 0) + between(...range("gap")));
  return board({ positions }, positions);
}

/** One number, or stations between which it changes by no more than its slope. */
function profile(neck: Neck, [least, most, slope]: Range): core.Profile {
  const { between, chance, one, whole, slots, length } = neck;
  const start = between(least, most);
  if (chance(0.35)) return start;
  const values: Record<string, number> = { nut: start };
  let [along, value] = [0, start];
  const next = (station: string, here: number) => {
    // level stretches and the steepest ones are as likely as all between
    const turn = chance(0.5) ? one(-1, 0, 1) : between(-1, 1);
    value = Math.min(most, Math.max(least, value + turn * slope * (here - along)));
    values[station] = value;
    along = here;
  };
  const fret = whole(2, slots.length - 1);
  // where a fanned fret crosses the centre line is not worked out again here
  if (!("bass" in neck.scale) && chance(0.6)) next(`fret${fret}`, slots[fret - 1] as number);
  next("end", length);
  return values;
}

function radiusOn(neck: Neck): core.RadiusProfile {
  return neck.chance(0.05) ? "flat" : profile(neck, neck.range("radius"));
}

function channelOn(neck: Neck, hasNeck: boolean): core.Channel | "none" {
  const { between, chance, length } = neck;
  if (chance(0.15)) return "none";
  const width = between(3, 14);
  const ends = { from: between(0, 0.4) * length, to: between(0.5, 1) * length };
  const depth = hasNeck && chance(0.5) ? {} : { depth: profile(neck, [0, 4, 0.01]) };
  return { width, ...depth, ...(chance(0.5) ? ends : {}) };
}

function fillOf({ between, chance }: Source): core.Fill {
  const keep = between(0, 2);
  return chance(0.5) ? { kind: "poured", keep } : { kind: "solid", thickness: between(1, 4), keep };
}

function bitOf({ between, one, chance }: Source): core.Bit {
  const kind = one<core.Bit["kind"]>("forstner", "brad-point", "twist", "end-mill");
  if (kind === "end-mill") return { kind };
  if (kind === "twist") return { kind, angle: between(90, 150) };
  const point = chance(0.05) ? 0 : between(0.2, 3);
  return { kind, point, spur: between(0, point) };
}

function stopOn(neck: Neck): core.Stop {
  const { between, chance, length, range } = neck;
  const correction = chance(0.3) ? between(-0.3, 0.3) : 0;
  if (chance(0.5)) return { foot: chance(0.5) ? 0 : between(0, 30), correction };
  const level: Range = [5, 40, Math.min(0.019, range("thickness")[2])];
  const height = chance(0.4) ? { height: profile(neck, level) } : {};
  return { from: "table", zero: between(0, length), correction, ...height };
}

function groupOn(neck: Neck): core.MarkerGroup {
  const { between, chance, range } = neck;
  const where = whereOn(neck);
  const isPocket = chance(0.3);
  const size = isPocket
    ? { shape: shapeFor(neck, where) }
    : { diameter: between(...range("size")) };
  return {
    ...where,
    ...size,
    ...(chance(0.6) ? { fill: fillOf(neck) } : {}),
    ...(isPocket || chance(0.4) ? {} : { bit: bitOf(neck) }),
    ...(chance(0.6) ? { stop: stopOn(neck) } : {}),
    ...(chance(0.1) ? { depth: between(1, 5), drilled: true } : {}),
  };
}

function whereOn({ between, chance, one, whole, slots, length, range }: Neck): core.Where {
  const place = () => ({
    along: between(0.02, 0.98) * length,
    offset: between(-0.5, 0.5) * range("nut")[0],
  });
  if (chance(0.3)) return { places: Array.from({ length: whole(1, 3) }, place) };
  const half = Math.floor(slots.length / 2);
  const frets = [whole(1, half), whole(half + 1, slots.length)];
  const by = one("diagonals", "midpoint");
  const side = one("bass", "treble");
  return one<core.Where>(
    { frets, by },
    { frets, by, arrangement: "double" },
    { frets, by, arrangement: "double", spread: between(3, 26) },
    { frets, by, arrangement: "lengthwise", spread: between(2, 14) },
    { frets, by, arrangement: "edge", side, gap: between(0.5, 6) },
  );
}

function shapeFor({ between, chance, whole, range }: Neck, where: core.Where): core.PocketShape {
  if ("frets" in where && where.arrangement === undefined && chance(0.4)) {
    return { kind: "trapezoid", slotGap: between(0.5, 2), edgeGap: between(2, 8) };
  }
  const [x, y, count] = [between(...range("size")), between(...range("size")), whole(3, 7)];
  if (chance(0.5)) return { kind: "rectangle", length: 2 * x, width: 2 * y };
  const corners = Array.from({ length: count }, (_, i) => {
    const angle = ((i + between(0, 0.8)) * 2 * Math.PI) / count;
    return { x: x * Math.sin(angle), y: y * Math.cos(angle) };
  });
  return { kind: "polygon", corners: chance(0.5) ? corners : corners.reverse() };
}
