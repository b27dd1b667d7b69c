/**
 * The check of a neck design, its parts, repairs, and many designs at once. Imports no package.
 *
 * @module marker-depth
 */

// the check

export { type Checked, checkMany } from "./batch/check-many.js";
export { type FrontierRow, frontier } from "./batch/frontier.js";
// many designs
export {
  type Axes,
  type Axis,
  type Sweep,
  type SweepColumns,
  type SweepOptions,
  sweep,
} from "./batch/sweep.js";
export type { FretLine } from "./board/fret-lines.js";
export { diagonalCrossing, type Side } from "./board/markers.js";
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
} from "./design/design.js";
export { DEFAULTS, LIMITS } from "./design/design.js";
export type { SweepPath } from "./design/paths.js";
export type { BitSpec, FillSpec } from "./design/spec.js";
export type { Edge } from "./drilling/edges.js";
export type { Pour } from "./drilling/pour.js";
export type { SlotDepth, SlotPlan } from "./drilling/slots.js";
// the stop plan
export {
  type Common,
  type StopPlan,
  type StopSetting,
  type StopWindow,
  stopSettings,
  type Travel,
} from "./drilling/stops.js";
export type { Window } from "./drilling/windows.js";
export { DesignError, type DesignIssue } from "./errors/errors.js";
export type { Point, Polygon } from "./geometry/polygon.js";
// the geometry
export { radiusFromSagitta, sagitta } from "./geometry/sagitta.js";
export {
  fretLines,
  fretPositions,
  type HoleAt,
  holeWindow,
  profileAt,
  removalAt,
} from "./report/building-blocks.js";
export type { FindingCode } from "./report/findings.js";
export { HALF_MILLIMETRES, SIXTEENTHS, WHOLE_MILLIMETRES } from "./report/racks.js";
export type { Remedy } from "./report/remedies.js";
// repairs
export { type Repair, type RuledOut, repairHole, type StrayHole } from "./report/repair.js";
export { checkDesign, type Finding, type Hole, type Report } from "./report/report.js";
