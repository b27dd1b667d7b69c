/**
 * The check of a neck design, its parts, repairs, and many designs at once. Imports no package.
 *
 * @module marker-depth
 */

// the check

export {
  fretLines,
  fretPositions,
  type HoleAt,
  holeWindow,
  profileAt,
  removalAt,
} from "./building-blocks.js";
export { type Checked, checkMany } from "./check-many.js";
// the design
export type {
  Bit,
  Channel,
  Design,
  DotGroup,
  Fill,
  MarkerGroup,
  PocketGroup,
  PocketShape,
  Profile,
  Scale,
  Station,
} from "./design.js";
export { DEFAULTS, LIMITS } from "./design.js";
export type { Edge } from "./edges.js";
export { DesignError, type DesignIssue } from "./errors.js";
export type { FindingCode } from "./findings.js";
export type { FretLine } from "./fret-lines.js";
export { type FrontierRow, frontier } from "./frontier.js";
export { diagonalCrossing, type Side } from "./markers.js";
export type { SweepPath } from "./paths.js";
export type { Point, Polygon } from "./polygon.js";
export type { Pour } from "./pour.js";
export { HALF_MILLIMETRES, SIXTEENTHS, WHOLE_MILLIMETRES } from "./racks.js";
export type { Remedy } from "./remedies.js";
// repairs
export { type Repair, type RuledOut, repairHole, type StrayHole } from "./repair.js";
export { checkDesign, type Finding, type Hole, type Report } from "./report.js";
// the geometry
export { radiusFromSagitta, sagitta } from "./sagitta.js";
export type { SlotDepth, SlotPlan } from "./slots.js";
export type { BitSpec, FillSpec } from "./spec.js";
// the stop plan
export {
  type Common,
  type StopPlan,
  type StopSetting,
  type StopWindow,
  stopSettings,
  type Travel,
} from "./stops.js";
// many designs
export {
  type Axes,
  type Axis,
  type Sweep,
  type SweepColumns,
  type SweepOptions,
  sweep,
} from "./sweep.js";
export type { Window } from "./windows.js";
