/**
 * The check of a neck design, its parts, repairs, and many designs at once. Imports no package.
 *
 * @module marker-depth
 */

// many designs
export { type Checked, checkMany } from "./batch/check-many.js";
export { type FrontierRow, frontier } from "./batch/frontier.js";
export {
  type Axes,
  type Axis,
  type Sweep,
  type SweepColumns,
  type SweepOptions,
  sweep,
} from "./batch/sweep.js";
// the check
export type { FretLine } from "./board/fret-lines.js";
export { diagonalCrossing, type Side } from "./board/markers.js";
// the design
export { DEFAULTS, type Default, LIMITS } from "./design/defaults.js";
export type * from "./design/design.js";
export type { NumberPath } from "./design/paths.js";
export type { BitSpec, FillSpec } from "./design/spec.js";
// the parts of the check
export type { Edge } from "./drilling/edges.js";
export {
  fretLines,
  fretPositions,
  type HoleAt,
  holeWindow,
  profileAt,
  removalAt,
} from "./drilling/parts.js";
export type { SetStop, StopSetting } from "./drilling/plan.js";
export type { Pour } from "./drilling/pour.js";
export type { SlotPlan } from "./drilling/slots.js";
export {
  type Common,
  type Setting,
  type StopPlan,
  stopSettings,
  type TravelWindow,
} from "./drilling/stops.js";
export type { DepthWindow } from "./drilling/windows.js";
export { DesignError, type DesignIssue } from "./errors/errors.js";
// the geometry
export type { Point, Polygon } from "./geometry/polygon.js";
export { radiusFromSagitta, sagitta } from "./geometry/sagitta.js";
// what is wrong, and what cures it
export { FINDING_CODES, type FindingCode, type FindingFacts } from "./report/findings.js";
export { remedyPairFor } from "./report/pairs.js";
export { HALF_MILLIMETRES, SIXTEENTHS, WHOLE_MILLIMETRES } from "./report/racks.js";
export { type Remedy, remediesFor } from "./report/remedies.js";
// repairs
export { type MisdrilledHole, type Repair, type RuledOut, repairHole } from "./report/repair.js";
export {
  checkDesign,
  type Finding,
  type Hole,
  type Outcome,
  type Removal,
  type Report,
  type Stops,
} from "./report/report.js";
