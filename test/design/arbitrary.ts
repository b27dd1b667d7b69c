/** Random designs made of the table of fields: every field, every case of it. All invented; lengths in mm. */
import fc from "fast-check";
import type { Bit, Design, MarkerGroup } from "../../src/design/design.js";
import { DESIGN, LAW } from "../../src/design/fields.js";
import type {
  Field,
  Form,
  ListField,
  NumberKind,
  ObjectKind,
  ToleranceField,
  Variant,
} from "../../src/design/kinds.js";
import { readNeck } from "../../src/drilling/work.js";

/** What a number is drawn from; paths without the indices of lists. */
type Numbers = (kind: NumberKind, path: string) => fc.Arbitrary<number>;

/** The frets that every scale has at least, and that markers and stations lie at. */
const FEWEST_FRETS = 12;

/** Ranges in which a neck can be built, by the path or by its last key. */
const RANGES: Readonly<Record<string, readonly [number, number]>> = {
  "scale.length": [600, 660],
  "scale.bass": [630, 660],
  "scale.treble": [610, 630],
  "scale.square": [0.001, 12],
  "scale.positions": [15, 30],
  "board.length": [480, 520],
  "board.width": [44, 60],
  "board.thickness": [5, 8],
  "board.channel.width": [4, 8],
  "board.channel.depth": [0.001, 3],
  "board.channel.from": [0.001, 20],
  "board.channel.to": [100, 400],
  "neck.thickness": [10, 20],
  "markers.places.along": [20, 400],
  "markers.places.offset": [-16, 16],
  "slot.depth": [2, 4],
  "sideDots.diameter": [1, 3],
  "sideDots.depth": [1, 4],
  "tolerance.radius": [0.001, 0.05],
  "tolerance.radius.limit": [0.001, 0.05],
  "tolerance.existing": [0.001, 0.05],
  "tolerance.existing.limit": [0.001, 0.05],
  radius: [200, 500],
  depth: [1, 4],
  travel: [1, 6],
  diameter: [2, 8],
  spread: [8, 24],
  gap: [2, 8],
  x: [1, 6],
  y: [1, 6],
  height: [25, 26],
  angle: [90, 140],
  correction: [-0.2, 0.2],
  zero: [0.001, 60],
  foot: [0.001, 15],
  waste: [0.001, 1],
  ratio: [0.5, 4],
  coverage: [1, 4],
};
const SMALL = [0.05, 1.5] as const;

/** Designs of which each field by itself may stand, up to the last bit of its bounds; together they may make no sense. */
export const statedDesigns: fc.Arbitrary<Design> = formed(DESIGN, "", withinBounds);

/** Designs that the check takes: plausible necks with all that can be stated. */
export const designs: fc.Arbitrary<Design> = formed(DESIGN, "", plausible)
  .map(makeSense)
  .filter(isTaken);

/** What a row of the table lets stand. */
export function draw(field: Field | NumberKind | ObjectKind, path: string, numbers: Numbers) {
  switch (field.kind) {
    case "text":
      return fc.string();
    case "flag":
      return fc.constant(true);
    case "word":
      return fc.constantFrom(...field.words);
    case "list":
      return listed(field, path, numbers);
    case "profile":
      return profile(field.of, path, numbers);
    case "tolerance":
      return fc.oneof(numbers(field.of, path), formed(lawOf(field), path, numbers));
    case "object": {
      const form = formed(field, path, numbers);
      return field.or === undefined ? form : fc.oneof(form, fc.constant(field.or));
    }
    default:
      return numbers(field, path);
  }
}

export function lawOf({ of, perHole }: ToleranceField): Form {
  const limit = { ...of, ...LAW.limit };
  return { fields: perHole ? { limit, ...LAW.perHole } : { limit }, variants: LAW.variants };
}

/** A fret that every scale drawn here has, or how many there are. */
function frets({ kind }: NumberKind): fc.Arbitrary<number> {
  return kind === "fret"
    ? fc.integer({ min: 1, max: FEWEST_FRETS })
    : fc.integer({ min: FEWEST_FRETS, max: 24 });
}

/** The bounds that hold for all numbers, ends included. */
export function withinBounds(kind: NumberKind): fc.Arbitrary<number> {
  const { least, most, orZero, below, whole } = kind;
  if (whole) return frets(kind);
  const between = fc.double({ min: least, max: most, maxExcluded: below ?? false, noNaN: true });
  const ends = [least, ...(orZero ? [0] : []), ...(below ? [] : [most])];
  return fc.oneof(between, fc.constantFrom(...ends));
}

function plausible(kind: NumberKind, path: string): fc.Arbitrary<number> {
  if (kind.whole) return frets(kind);
  const inTolerance = /^tolerance(?!.*(?:radius|existing|coverage))/.test(path);
  const last = path.split(".").at(-1) as string;
  const [min, max] = RANGES[path] ?? RANGES[last] ?? (inTolerance ? [0.001, 0.2] : SMALL);
  const parts = (most: number, of: number) =>
    fc
      .integer({ min: Math.ceil((min * of) / most), max: Math.floor((max * of) / most) })
      .map((count) => (count * most) / of);
  // any double, hundredths of a mm, and sixty-fourths of an inch: 127 / 320 mm
  const round = kind.unit === "mm" && max - min > 0.4 ? [parts(1, 100), parts(127, 320)] : [];
  const none = kind.orZero ? [fc.constant(0)] : [];
  return fc.oneof(fc.double({ min, max, noNaN: true }), ...round, ...none);
}

function listed(field: ListField, path: string, numbers: Numbers): fc.Arbitrary<unknown[]> {
  const { item, least, most, distinct, rising } = field;
  if (path.endsWith("corners")) return convexCorners(numbers);
  const bounds = { minLength: least, maxLength: Math.min(most, 3) };
  const each = draw(item, path, numbers);
  if (distinct) return fc.uniqueArray(each, bounds);
  if (!rising) return fc.array(each, bounds);
  const steps = { minLength: FEWEST_FRETS, maxLength: 16 };
  return fc
    .uniqueArray(each as fc.Arbitrary<number>, steps)
    .map(numbers === plausible ? sums : sorted);
}

function sorted(numbers: readonly number[]): number[] {
  return [...numbers].sort((a, b) => a - b);
}

function sums(steps: readonly number[]): number[] {
  let sum = 0;
  return steps.map((step) => (sum += step));
}

/** Corners on an ellipse, in either order. */
function convexCorners(numbers: Numbers): fc.Arbitrary<unknown[]> {
  const half = { kind: "length", unit: "mm", least: 0.1, most: 100 } as const;
  const sizes = fc.tuple(numbers(half, "x"), numbers(half, "y"));
  return fc
    .tuple(sizes, fc.integer({ min: 3, max: 8 }), fc.boolean())
    .map(([[x, y], count, turn]) =>
      Array.from({ length: count }, (_, i) => {
        const angle = ((turn ? -i : i) * 2 * Math.PI) / count;
        return { x: x * Math.cos(angle), y: y * Math.sin(angle) };
      }),
    );
}

function profile(of: NumberKind, path: string, numbers: Numbers): fc.Arbitrary<unknown> {
  const number = numbers(of, path);
  const at = (value: fc.Arbitrary<unknown>) =>
    fc
      .record({ nut: value, fret5: value, end: value }, { requiredKeys: [] })
      .filter((stations) => Object.keys(stations).length > 0);
  const flat = fc.constantFrom("flat", Infinity);
  const more = of.kind === "radius" ? [flat, at(flat)] : [];
  return fc.oneof(number, at(number), ...more);
}

function formed<T = Design>(form: Form, path: string, numbers: Numbers): fc.Arbitrary<T> {
  const at = (key: string) => (path === "" ? key : `${path}.${key}`);
  const fields = Object.entries(form.fields);
  const requiredKeys = fields.filter(([, { optional }]) => !optional).map(([key]) => key);
  const values = fields.map(([key, field]) => [key, draw(field, at(key), numbers)] as const);
  const own = fc.record(Object.fromEntries(values), { requiredKeys });
  const cases = (form.variants ?? []).map((variant) => chosen(variant, path, numbers));
  return fc.tuple(own, ...cases).map((parts) => Object.assign({}, ...parts) as T);
}

function chosen({ tag, optional, cases }: Variant, path: string, numbers: Numbers) {
  const options = Object.entries(cases).flatMap(([name, form], i) => {
    const inner = formed<object>(form, path, numbers);
    if (tag === undefined) return [inner];
    const tagged = inner.map((value) => ({ [tag]: name, ...value }));
    return optional && i === 0 ? [inner, tagged] : [tagged];
  });
  return fc.oneof(...options);
}

type Loose<T> = { -readonly [K in keyof T]: T[K] };

/** Takes back what does not go together. */
function makeSense(design: Design): Design {
  const whole: Loose<Design> = { ...makeSenseOf(design) };
  const { board, neck } = whole;
  const { channel } = board;
  if (neck && channel === undefined) whole.board = { ...board, channel: "none" };
  if (!neck && typeof channel === "object" && channel.depth === undefined) {
    whole.board = { ...board, channel: { ...channel, depth: 1 } };
  }
  whole.markers = whole.markers.map(makeSenseOfGroup);
  return whole;
}

/** One goal at a level, and a spur no deeper than its point. */
function makeSenseOf<T extends { readonly depth?: unknown; readonly bit?: Bit | undefined }>(
  part: T,
): T {
  const { travel, ...rest } = part as T & { readonly travel?: unknown };
  const one = (part.depth === undefined ? part : rest) as T;
  const { bit } = one;
  if (!bit || !("point" in bit) || bit.spur === undefined) return one;
  return { ...one, bit: { ...bit, spur: Math.min(bit.spur, bit.point) } };
}

function makeSenseOfGroup(stated: MarkerGroup): MarkerGroup {
  const group = { ...makeSenseOf(stated) } as Record<string, unknown> & {
    shape?: { readonly kind: string; readonly length?: number; readonly width?: number };
  };
  if (group.shape) {
    delete group.bit;
    const isSingle = !("places" in group) && (group.arrangement ?? "single") === "single";
    if (group.shape.kind === "trapezoid" && !isSingle) {
      group.shape = { kind: "rectangle", length: 4, width: 5 };
    }
  }
  if (group.drilled) {
    delete group.travel;
    group.depth ??= 2;
  }
  return group as unknown as MarkerGroup;
}

function isTaken(design: Design): boolean {
  try {
    readNeck(design);
    return true;
  } catch {
    return false;
  }
}
