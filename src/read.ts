/**
 * Reads a design of unknown shape into a specification: every field checked for itself, every default
 * filled in and noted. What fields must be to each other (a radius and a width, say) is checked later,
 * where the board is built.
 */
import { type Bit, DEFAULTS, type Fill, LIMITS, type Station } from "./design.js";
import { type DesignIssue, isArray, issueOf } from "./errors.js";
import {
  ANGLE,
  type Bound,
  didYouMean,
  type Fields,
  FRACTION,
  fieldOf,
  join,
  listOf,
  namesOf,
  PART,
  RADIUS,
  readFields,
  readItems,
  readNumber,
  readWord,
  SHARE,
  SIZE,
  SIZE_OR_ZERO,
  wholeUpTo,
} from "./input.js";
import { nearestName } from "./nearest-name.js";
import { equalTemperament } from "./temperament.js";

/** A profile as stated: one number, or values at stations. */
export type ProfileSpec = number | readonly (readonly [Station, number])[];

/** A fill with nothing left open. */
export type FillSpec = Fill & { readonly keep: number };

/** A bit with nothing left open. */
export type BitSpec =
  | Exclude<Bit, { readonly kind: "twist" }>
  | { readonly kind: "twist"; readonly angle: number };

/** A marker group with nothing left open. */
export interface GroupSpec {
  readonly index: number;
  readonly frets: readonly number[];
  readonly diameter: number;
  readonly arrangement: "single" | "double";
  readonly spread: number | undefined;
  readonly along: "diagonals" | "midpoint";
  readonly fill: FillSpec;
  readonly bit: BitSpec;
  readonly depth: number | undefined;
}

/** A design with every default filled in. */
export interface Spec {
  readonly name: string | undefined;
  /** Positions of frets 1, 2, … mm. */
  readonly frets: readonly number[];
  readonly length: number;
  readonly width: ProfileSpec;
  readonly thickness: ProfileSpec;
  readonly channel:
    | { readonly width: number; readonly depth: number; readonly from: number; readonly to: number }
    | undefined;
  readonly radius: ProfileSpec;
  readonly crown: ProfileSpec;
  readonly groups: readonly GroupSpec[];
  readonly web: number;
  readonly tolerance: Readonly<Record<ToleranceName, number>>;
  readonly stopStep: number | undefined;
  readonly slot:
    | {
        readonly depth: number;
        readonly tang: number;
        readonly clearance: number;
        readonly web: number;
      }
    | undefined;
  readonly sideDots: { readonly diameter: number; readonly margin: number } | undefined;
  readonly pour:
    | { readonly waste: number; readonly resin: number; readonly hardener: number }
    | undefined;
  /** Every default that was used, by its path in the design. */
  readonly assumed: Readonly<Record<string, number>>;
}

/** The quantities that carry a tolerance. */
export type ToleranceName = "stop" | "layout" | "thickness" | "crown" | "radius";

/** What could be read: a field that could not is undefined, and has an issue. */
export type PartialSpec = { readonly [K in keyof Spec]: Spec[K] | undefined };

const DESIGN_KEYS = [
  "name",
  "scale",
  "board",
  "radius",
  "crown",
  "markers",
  "fill",
  "bit",
  "depth",
  "web",
  "tolerance",
  "stopStep",
  "slot",
  "sideDots",
  "pour",
] as const;
const GROUP_KEYS = [
  "frets",
  "diameter",
  "arrangement",
  "spread",
  "along",
  "fill",
  "bit",
  "depth",
] as const;

interface Context {
  readonly issues: DesignIssue[];
  readonly assumed: Record<string, number>;
}

/** Reads a design; issues are added to `issues`. */
export function readSpec(design: unknown, issues: DesignIssue[]): PartialSpec | undefined {
  const fields = readFields(design, "", DESIGN_KEYS, issues);
  if (fields === undefined) return undefined;
  const context: Context = { issues, assumed: {} };
  const frets = readScale(fields.scale, issues);
  const count = frets?.length;
  const board = readBoard(fields.board, count, context);
  const groups = readGroups(fields, count, context);
  return {
    name: readName(fields.name, issues),
    frets,
    ...board,
    radius: readProfile(fields.radius, "radius", RADIUS, count, issues),
    crown:
      fields.crown === undefined
        ? assume(context, "crown", DEFAULTS.crown.value)
        : readProfile(fields.crown, "crown", SIZE_OR_ZERO, count, issues),
    groups,
    web: readOr(fields.web, "web", DEFAULTS.web.value, SIZE_OR_ZERO, context),
    tolerance: readTolerance(fields.tolerance, context),
    stopStep: readOptional(fields.stopStep, "stopStep", SIZE, issues),
    slot: readSlot(fields.slot, context),
    sideDots: readSideDots(fields.sideDots, context),
    pour: readPour(
      fields.pour,
      groups?.some((group) => group.fill.kind === "poured") ?? false,
      context,
    ),
    assumed: context.assumed,
  };
}

/** Reads a scale; the positions of frets 1, 2, … */
export function readScale(value: unknown, issues: DesignIssue[]): readonly number[] | undefined {
  const given = typeof value === "object" && value !== null ? namesOf(value, "scale", issues) : [];
  if (given.includes("positions")) {
    const fields = readFields(value, "scale", ["positions"], issues);
    return fields && readPositions(fields.positions, issues);
  }
  const fields = readFields(value, "scale", ["length", "frets"], issues);
  if (fields === undefined) return undefined;
  const length = readNumber(fields.length, "scale.length", SIZE, issues);
  const frets = readNumber(fields.frets, "scale.frets", wholeUpTo(LIMITS.frets.value), issues);
  return length === undefined || frets === undefined ? undefined : equalTemperament(length, frets);
}

/** Reads a profile; its stations are checked against the number of frets, where that is known. */
export function readProfile(
  value: unknown,
  path: string,
  bound: Bound,
  fretCount: number | undefined,
  issues: DesignIssue[],
): ProfileSpec | undefined {
  if (typeof value !== "object" || value === null) return readNumber(value, path, bound, issues);
  if (isArray(value)) {
    issues.push(issueOf(path, value, `${bound.what}, or values at stations`));
    return undefined;
  }
  const names = namesOf(value, path, issues);
  const stations: [Station, number][] = [];
  let stated = 0;
  for (const name of names) {
    const at = fieldOf(value, name, path, issues);
    if (at === undefined) continue;
    stated++;
    const where = join(path, name);
    const wrong = stationProblem(name, fretCount);
    if (wrong !== undefined) issues.push(issueOf(where, at, wrong));
    const number = readNumber(at, where, bound, issues);
    if (wrong === undefined && number !== undefined) stations.push([name as Station, number]);
  }
  if (stated === 0) {
    issues.push(issueOf(path, value, `${bound.what}, or a value at one station or more`));
  }
  const flat = stations.filter(([, number]) => number === Infinity).length;
  if (flat > 0 && flat < stations.length) {
    issues.push(issueOf(path, value, "a radius that is Infinity at every station or at none"));
    return undefined;
  }
  return stated > 0 && stations.length === stated ? stations : undefined;
}

/** Reads a bit; without one, a Forstner bit with the usual point. */
export function readBit(value: unknown, path: string, context: Context): BitSpec | undefined {
  if (value === undefined) {
    const point = assume(context, join(path, "point"), DEFAULTS.forstnerPoint.value);
    return { kind: "forstner", point };
  }
  const { issues } = context;
  const kind = readKind(value, path, ["forstner", "brad-point", "twist", "end-mill"], issues);
  if (kind === undefined) return undefined;
  const extra = kind === "twist" ? ["angle"] : kind === "end-mill" ? [] : ["point"];
  const fields = readFields(value, path, ["kind", ...extra], issues);
  if (fields === undefined) return undefined;
  if (kind === "end-mill") return { kind };
  if (kind === "twist") {
    const usual = DEFAULTS.twistAngle.value;
    const angle = readOr(fields.angle, join(path, "angle"), usual, ANGLE, context);
    return angle === undefined ? undefined : { kind, angle };
  }
  const point = readNumber(fields.point, join(path, "point"), SIZE_OR_ZERO, issues);
  return point === undefined ? undefined : { kind, point };
}

/** Reads a fill; without one, epoxy poured with the usual keep. */
export function readFill(value: unknown, path: string, context: Context): FillSpec | undefined {
  const keepPath = join(path, "keep");
  const poured = DEFAULTS.keepPoured.value;
  if (value === undefined) return { kind: "poured", keep: assume(context, keepPath, poured) };
  const { issues } = context;
  const kind = readKind(value, path, ["poured", "solid"], issues);
  if (kind === undefined) return undefined;
  if (kind === "poured") {
    const fields = readFields(value, path, ["kind", "keep"], issues);
    const keep = fields && readOr(fields.keep, keepPath, poured, SIZE_OR_ZERO, context);
    return keep === undefined ? undefined : { kind, keep };
  }
  const fields = readFields(value, path, ["kind", "thickness", "keep"], issues);
  if (fields === undefined) return undefined;
  const solid = DEFAULTS.keepSolid.value;
  const keep = readOr(fields.keep, keepPath, solid, SIZE_OR_ZERO, context);
  const thickness = readNumber(fields.thickness, join(path, "thickness"), SIZE, issues);
  return keep === undefined || thickness === undefined ? undefined : { kind, thickness, keep };
}

/** Reads the marker groups; what a group does not name, the design names for it. */
function readGroups(
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
  const diameter = readNumber(fields.diameter, at("diameter"), SIZE, issues);
  const arrangement = readWordOr(fields.arrangement, at("arrangement"), ARRANGEMENTS, issues);
  const spread = readOptional(fields.spread, at("spread"), SIZE, issues);
  if (fields.spread !== undefined && arrangement === "single") {
    issues.push(issueOf(at("spread"), fields.spread, 'none, unless arrangement is "double"'));
  }
  const along = readWordOr(fields.along, at("along"), PLACES, issues);
  const fill =
    fields.fill === undefined ? shared.fill() : readFill(fields.fill, at("fill"), context);
  const bit = fields.bit === undefined ? shared.bit() : readBit(fields.bit, at("bit"), context);
  const depth =
    fields.depth === undefined
      ? shared.depth
      : readOptional(fields.depth, at("depth"), SIZE, issues);
  if (issues.length > before || !frets || !diameter || !arrangement || !along) return undefined;
  if (!fill || !bit) return undefined;
  return { index, frets, diameter, arrangement, spread, along, fill, bit, depth };
}

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
  return frets.every((fret) => fret !== undefined) ? frets : undefined;
}

function readName(value: unknown, issues: DesignIssue[]): string | undefined {
  if (value === undefined || typeof value === "string") return value;
  issues.push(issueOf("name", value, "a text"));
  return undefined;
}

function readPositions(value: unknown, issues: DesignIssue[]): readonly number[] | undefined {
  const path = "scale.positions";
  const items = readItems(value, path, "fret positions", LIMITS.frets.value, issues);
  if (items === undefined) return undefined;
  if (items.length === 0) issues.push(issueOf(path, value, "one position or more"));
  const before = issues.length;
  const positions = items.map((item, i) => readNumber(item, join(path, i), SIZE, issues));
  positions.forEach((position, i) => {
    const last = positions[i - 1];
    if (position !== undefined && last !== undefined && !(position > last)) {
      issues.push(issueOf(join(path, i), position, `more than the position before it, ${last} mm`));
    }
  });
  if (issues.length > before || items.length === 0) return undefined;
  return positions.every((position) => position !== undefined) ? positions : undefined;
}

function readBoard(value: unknown, fretCount: number | undefined, context: Context) {
  const { issues } = context;
  const keys = ["length", "width", "thickness", "channel"];
  const fields = readFields(value, "board", keys, issues);
  if (fields === undefined) {
    return { length: undefined, width: undefined, thickness: undefined, channel: undefined };
  }
  const length = readNumber(fields.length, "board.length", SIZE, issues);
  return {
    length,
    width: readProfile(fields.width, "board.width", SIZE, fretCount, issues),
    thickness: readProfile(fields.thickness, "board.thickness", SIZE, fretCount, issues),
    channel: readChannel(fields.channel, length, context),
  };
}

function readChannel(
  value: unknown,
  boardLength: number | undefined,
  context: Context,
): Spec["channel"] {
  if (value === undefined) return undefined;
  const { issues } = context;
  const path = "board.channel";
  const fields = readFields(value, path, ["width", "depth", "from", "to"], issues);
  if (fields === undefined) return undefined;
  const width = readNumber(fields.width, join(path, "width"), SIZE, issues);
  const depth = readNumber(fields.depth, join(path, "depth"), SIZE, issues);
  const from = readOr(fields.from, join(path, "from"), 0, SIZE_OR_ZERO, context);
  const to =
    fields.to === undefined && boardLength === undefined
      ? undefined
      : readOr(fields.to, join(path, "to"), boardLength as number, SIZE, context);
  if (from !== undefined && to !== undefined && !(from < to)) {
    issues.push(issueOf(join(path, "from"), from, `less than where the channel ends, ${to} mm`));
  }
  if (width === undefined || depth === undefined || from === undefined || to === undefined) {
    return undefined;
  }
  return { width, depth, from, to };
}

function readTolerance(value: unknown, context: Context): Spec["tolerance"] | undefined {
  const names = ["stop", "layout", "thickness", "crown", "radius"] as const;
  const fields = value === undefined ? {} : readFields(value, "tolerance", names, context.issues);
  if (fields === undefined) return undefined;
  const usual = {
    stop: DEFAULTS.stopTolerance.value,
    layout: DEFAULTS.layoutTolerance.value,
    thickness: DEFAULTS.thicknessTolerance.value,
    crown: DEFAULTS.crownTolerance.value,
    radius: DEFAULTS.radiusTolerance.value,
  };
  const read = (name: ToleranceName) => {
    const bound = name === "radius" ? FRACTION : SIZE_OR_ZERO;
    return readOr(fields[name], join("tolerance", name), usual[name], bound, context);
  };
  return complete({
    stop: read("stop"),
    layout: read("layout"),
    thickness: read("thickness"),
    crown: read("crown"),
    radius: read("radius"),
  });
}

function readSlot(value: unknown, context: Context): Spec["slot"] {
  if (value === undefined) return undefined;
  const { issues } = context;
  const fields = readFields(value, "slot", ["depth", "tang", "clearance", "web"], issues);
  if (fields === undefined) return undefined;
  return complete({
    depth: readNumber(fields.depth, "slot.depth", SIZE, issues),
    tang: readNumber(fields.tang, "slot.tang", SIZE, issues),
    clearance: readOr(
      fields.clearance,
      "slot.clearance",
      DEFAULTS.slotClearance.value,
      SIZE_OR_ZERO,
      context,
    ),
    web: readOr(fields.web, "slot.web", DEFAULTS.slotWeb.value, SIZE_OR_ZERO, context),
  });
}

function readSideDots(value: unknown, context: Context): Spec["sideDots"] {
  if (value === undefined) return undefined;
  const fields = readFields(value, "sideDots", ["diameter", "margin"], context.issues);
  if (fields === undefined) return undefined;
  const usual = DEFAULTS.sideDotMargin.value;
  return complete({
    diameter: readNumber(fields.diameter, "sideDots.diameter", SIZE, context.issues),
    margin: readOr(fields.margin, "sideDots.margin", usual, SIZE_OR_ZERO, context),
  });
}

function readPour(value: unknown, poured: boolean, context: Context): Spec["pour"] {
  const { issues } = context;
  const fields = value === undefined ? {} : readFields(value, "pour", ["waste", "ratio"], issues);
  if (fields === undefined) return undefined;
  // nothing is assumed of epoxy that no group pours
  const notes = poured ? context : { issues, assumed: {} };
  const waste = readOr(fields.waste, "pour.waste", DEFAULTS.pourWaste.value, SHARE, notes);
  const usual = [DEFAULTS.pourResin.value, DEFAULTS.pourHardener.value];
  const ratio: readonly unknown[] | undefined =
    fields.ratio === undefined
      ? [undefined, undefined]
      : readItems(fields.ratio, "pour.ratio", "two parts, resin and hardener", 2, issues);
  if (ratio === undefined) return undefined;
  if (ratio.length !== 2) {
    issues.push(issueOf("pour.ratio", fields.ratio, "two parts, resin and hardener"));
    return undefined;
  }
  const [resin, hardener] = ratio.map((part, i) =>
    fields.ratio === undefined
      ? assume(notes, `pour.ratio.${i}`, usual[i] as number)
      : readNumber(part, `pour.ratio.${i}`, PART, issues),
  );
  return complete({ waste, resin, hardener });
}

function readKind<Kind extends string>(
  value: unknown,
  path: string,
  kinds: readonly Kind[],
  issues: DesignIssue[],
): Kind | undefined {
  if (typeof value !== "object" || value === null || isArray(value)) {
    issues.push(issueOf(path, value, `an object whose kind is ${listOf(kinds, "or")}`));
    return undefined;
  }
  return readWord(fieldOf(value, "kind", path, issues), join(path, "kind"), kinds, issues);
}

function readOptional(
  value: unknown,
  path: string,
  bound: Bound,
  issues: DesignIssue[],
): number | undefined {
  return value === undefined ? undefined : readNumber(value, path, bound, issues);
}

function readOr(
  value: unknown,
  path: string,
  usual: number,
  bound: Bound,
  context: Context,
): number | undefined {
  return value === undefined
    ? assume(context, path, usual)
    : readNumber(value, path, bound, context.issues);
}

/** The first word where nothing is stated. */
function readWordOr<Word extends string>(
  value: unknown,
  path: string,
  words: readonly [Word, ...Word[]],
  issues: DesignIssue[],
): Word | undefined {
  return value === undefined ? words[0] : readWord(value, path, words, issues);
}

function assume(context: Context, path: string, value: number): number {
  context.assumed[path] = value;
  return value;
}

function stationProblem(name: string, fretCount: number | undefined): string | undefined {
  if (name === "nut" || name === "end") return undefined;
  const most = fretCount ?? LIMITS.frets.value;
  const fret = /^fret[1-9][0-9]{0,3}$/.test(name) ? Number(name.slice(4)) : 0;
  if (fret >= 1 && fret <= most) return undefined;
  const known = ["nut", "end", ...Array.from({ length: most }, (_, i) => `fret${i + 1}`)];
  return `a station: "nut", "end", "fret1" to "fret${most}"${didYouMean(nearestName(name, known))}`;
}

/** The record, where every field of it could be read. */
function complete<Key extends string>(
  record: Readonly<Record<Key, number | undefined>>,
): Readonly<Record<Key, number>> | undefined {
  const values: readonly unknown[] = Object.values(record);
  return values.includes(undefined) ? undefined : (record as Record<Key, number>);
}
