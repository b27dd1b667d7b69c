/** Reads marker groups, their fills and their bits. */

import { type DesignIssue, issueOf } from "../errors/errors.js";
import { DEFAULTS, LIMITS, type PocketShape } from "./design.js";
import {
  ANGLE,
  assume,
  type Bound,
  type Context,
  type Fields,
  join,
  readFields,
  readItems,
  readKind,
  readNumber,
  readOptional,
  readOr,
  readWordOr,
  SIZE,
  SIZE_OR_ZERO,
  wholeUpTo,
} from "./read-fields.js";
import type { BitSpec, FillSpec, GroupSpec } from "./spec.js";

const GROUP_KEYS = [
  "frets",
  "diameter",
  "shape",
  "arrangement",
  "spread",
  "along",
  "fill",
  "bit",
  "depth",
] as const;

/** Reads the marker groups; what a group does not name, the design names for it. */
export function readGroups(
  design: Fields,
  fretCount: number | undefined,
  context: Context,
): readonly GroupSpec[] | undefined {
  const { issues } = context;
  const most = LIMITS.groups.value;
  const items = readItems(design.markers, "markers", "marker groups", most, issues);
  const shared: Shared = {
    fill: readShared("fill", design.fill, readFill, context),
    bit: readShared("bit", design.bit, readBit, context),
    depth: readOptional(design.depth, "depth", SIZE, issues),
  };
  const groups = items?.map((item, i) => readGroup(item, i, fretCount, shared, context));
  return groups?.every((group) => group !== undefined) ? groups : undefined;
}

/** What the design names for every group. Checked even where no group uses it. */
interface Shared {
  readonly fill: () => FillSpec | undefined;
  readonly bit: () => BitSpec | undefined;
  readonly depth: number | undefined;
}

/** Reads one of those; its defaults are noted when a group first uses it. */
function readShared<Read>(
  path: string,
  value: unknown,
  read: (value: unknown, path: string, context: Context) => Read,
  context: Context,
): () => Read {
  const assumed = {};
  const result = read(value, path, { issues: context.issues, assumed });
  return () => {
    Object.assign(context.assumed, assumed);
    return result;
  };
}

function readGroup(
  value: unknown,
  index: number,
  fretCount: number | undefined,
  shared: Shared,
  context: Context,
): GroupSpec | undefined {
  const { issues } = context;
  const path = `markers.${index}`;
  const before = issues.length;
  const fields = readFields(value, path, GROUP_KEYS, issues);
  if (fields === undefined) return undefined;
  const at = (key: (typeof GROUP_KEYS)[number]) => join(path, key);
  const frets = readFrets(fields.frets, at("frets"), fretCount, issues);
  const size = readSize(fields, path, issues);
  const arrangement = readWordOr(fields.arrangement, at("arrangement"), ARRANGEMENTS, issues);
  const spread = readOptional(fields.spread, at("spread"), SIZE, issues);
  if (fields.spread !== undefined && arrangement === "single") {
    issues.push(issueOf(at("spread"), fields.spread, 'none, unless arrangement is "double"'));
  }
  if (size.shape?.kind === "trapezoid" && arrangement === "double") {
    issues.push(issueOf(at("arrangement"), "double", '"single" for a trapezoid'));
  }
  const along = readWordOr(fields.along, at("along"), PLACES, issues);
  const fill =
    fields.fill === undefined ? shared.fill() : readFill(fields.fill, at("fill"), context);
  const bit = readGroupBit(fields, at("bit"), shared, context);
  const depth =
    fields.depth === undefined
      ? shared.depth
      : readOptional(fields.depth, at("depth"), SIZE, issues);
  if (issues.length > before || !fill) return undefined;
  const place = (key: "fill" | "bit" | "depth") => (fields[key] === undefined ? key : at(key));
  // a pocket takes no part in the design's bit
  const bitPlace = size.shape === undefined ? place("bit") : at("bit");
  return {
    // without an issue all of it was read
    frets: frets as readonly number[],
    ...size,
    arrangement: arrangement as GroupSpec["arrangement"],
    spread,
    along: along as GroupSpec["along"],
    fill,
    bit: bit as BitSpec,
    depth,
    path: { group: path, fill: place("fill"), bit: bitPlace, depth: place("depth") },
  };
}

/** A dot's diameter, or a pocket's shape. */
function readSize(
  fields: Fields,
  path: string,
  issues: DesignIssue[],
): Pick<GroupSpec, "diameter" | "shape"> {
  if (fields.shape === undefined) {
    const diameter = readNumber(fields.diameter, join(path, "diameter"), SIZE, issues);
    return { diameter: diameter as number, shape: undefined };
  }
  if (fields.diameter !== undefined) {
    issues.push(issueOf(join(path, "diameter"), fields.diameter, "none beside a shape"));
  }
  return { diameter: 0, shape: readShape(fields.shape, join(path, "shape"), issues) };
}

function readShape(value: unknown, path: string, issues: DesignIssue[]): PocketShape | undefined {
  const read = readKind(value, path, SHAPES, issues);
  if (read === undefined) return undefined;
  const sizeOf = (key: string, bound: Bound) =>
    readNumber(read.fields[key], join(path, key), bound, issues) as number;
  if (read.kind === "rectangle") {
    return { kind: read.kind, length: sizeOf("length", SIZE), width: sizeOf("width", SIZE) };
  }
  const slotGap = sizeOf("slotGap", SIZE_OR_ZERO);
  return { kind: read.kind, slotGap, edgeGap: sizeOf("edgeGap", SIZE_OR_ZERO) };
}

/** A group's own bit, or the shared one; a pocket is routed with an end mill. */
function readGroupBit(
  fields: Fields,
  path: string,
  shared: Shared,
  context: Context,
): BitSpec | undefined {
  if (fields.bit === undefined) {
    return fields.shape === undefined ? shared.bit() : { kind: "end-mill" };
  }
  const bit = readBit(fields.bit, path, context);
  if (bit && bit.kind !== "end-mill" && fields.shape !== undefined) {
    context.issues.push(issueOf(join(path, "kind"), bit.kind, '"end-mill" for a pocket'));
  }
  return bit;
}

/** The kinds of each part, and the keys that each has beside its kind. */
const SHAPES = { rectangle: ["length", "width"], trapezoid: ["slotGap", "edgeGap"] } as const;
const BITS = {
  forstner: ["point"],
  "brad-point": ["point"],
  twist: ["angle"],
  "end-mill": [],
} as const;
const FILLS = { poured: ["keep"], solid: ["thickness", "keep"] } as const;
const ARRANGEMENTS = ["single", "double"] as const;
const PLACES = ["diagonals", "midpoint"] as const;

function readFrets(
  value: unknown,
  path: string,
  fretCount: number | undefined,
  issues: DesignIssue[],
): readonly number[] | undefined {
  const most = LIMITS.frets.value;
  const items = readItems(value, path, "fret numbers", most, issues);
  if (items === undefined) return undefined;
  if (items.length === 0) issues.push(issueOf(path, value, "one fret number or more"));
  const bound = wholeUpTo(fretCount ?? most);
  const frets = items.map((item, i) => {
    const where = join(path, i);
    const fret = readNumber(item, where, bound, issues);
    if (fret !== undefined && items.indexOf(item) < i) {
      issues.push(issueOf(where, item, "each fret once"));
    }
    return fret;
  });
  return frets as number[];
}

/** Reads a bit; without one, a Forstner bit with the usual point. */
export function readBit(value: unknown, path: string, context: Context): BitSpec | undefined {
  if (value === undefined) {
    const point = assume(context, join(path, "point"), DEFAULTS.forstnerPoint.value);
    return { kind: "forstner", point };
  }
  const read = readKind(value, path, BITS, context.issues);
  if (read === undefined) return undefined;
  const { kind, fields } = read;
  if (kind === "end-mill") return { kind };
  if (kind === "twist") {
    const usual = DEFAULTS.twistAngle.value;
    const angle = readOr(fields.angle, join(path, "angle"), usual, ANGLE, context);
    return { kind, angle: angle as number };
  }
  const point = readNumber(fields.point, join(path, "point"), SIZE_OR_ZERO, context.issues);
  return { kind, point: point as number };
}

/** Reads a fill; without one, epoxy poured with the usual keep. */
export function readFill(value: unknown, path: string, context: Context): FillSpec | undefined {
  const keepPath = join(path, "keep");
  const poured = DEFAULTS.keepPoured.value;
  if (value === undefined) return { kind: "poured", keep: assume(context, keepPath, poured) };
  const read = readKind(value, path, FILLS, context.issues);
  if (read === undefined) return undefined;
  const { kind, fields } = read;
  const usual = kind === "poured" ? poured : DEFAULTS.keepSolid.value;
  const keep = readOr(fields.keep, keepPath, usual, SIZE_OR_ZERO, context) as number;
  if (kind === "poured") return { kind, keep };
  const thickness = readNumber(fields.thickness, join(path, "thickness"), SIZE, context.issues);
  return { kind, thickness: thickness as number, keep };
}
