/**
 * Reads a design of unknown shape into a specification: every field checked for itself, every default
 * filled in and noted. What fields must be to each other (a radius and a width, say) is checked later,
 * where the board is built.
 */

import { type DesignIssue, issueOf } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { DEFAULTS } from "./design.js";
import {
  assume,
  type Context,
  complete,
  FRACTION,
  join,
  PART,
  RADIUS,
  readFields,
  readItems,
  readNumber,
  readOptional,
  readOr,
  SHARE,
  SIZE,
  SIZE_OR_ZERO,
} from "./read-fields.js";
import { readGroups } from "./read-markers.js";
import { readProfile } from "./read-profile.js";
import { readScale } from "./read-scale.js";
import { fretCount, type PartialSpec, type Spec, type ToleranceName } from "./spec.js";

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
/** Reads a design; issues are added to `issues`. */
export function readSpec(design: unknown, issues: DesignIssue[]): PartialSpec | undefined {
  const fields = readFields(design, "", DESIGN_KEYS, issues);
  if (fields === undefined) return undefined;
  const context: Context = { issues, assumed: {} };
  const scale = readScale(fields.scale, issues);
  const count = scale && fretCount(scale);
  const board = readBoard(fields.board, count, context);
  const groups = readGroups(fields, count, context);
  return {
    name: readName(fields.name, issues),
    scale,
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
      Boolean(groups?.some((group) => group.fill.kind === "poured")),
      context,
    ),
    assumed: context.assumed,
  };
}

function readName(value: unknown, issues: DesignIssue[]): string | undefined {
  if (value === undefined || typeof value === "string") return value;
  issues.push(issueOf("name", value, "a text"));
  return undefined;
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
  const to = readOr(fields.to, join(path, "to"), boardLength ?? Infinity, SIZE, context);
  return complete({ width, depth, from, to });
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
  const fields = readFields(value, "sideDots", ["diameter", "margin", "depth"], context.issues);
  if (fields === undefined) return undefined;
  const usual = DEFAULTS.sideDotMargin.value;
  return complete({
    diameter: readNumber(fields.diameter, "sideDots.diameter", SIZE, context.issues),
    margin: readOr(fields.margin, "sideDots.margin", usual, SIZE_OR_ZERO, context),
    depth: readOr(fields.depth, "sideDots.depth", DEFAULTS.sideDotDepth.value, SIZE, context),
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
      ? assume(notes, `pour.ratio.${i}`, elementAt(usual, i))
      : readNumber(part, `pour.ratio.${i}`, PART, issues),
  );
  const pour = complete({ waste, resin, hardener });
  return poured ? pour : undefined;
}
