// the check

export {
  fretLines,
  fretPositions,
  type HoleAt,
  holeWindow,
  profileAt,
  removalAt,
} from "./building-blocks.js";
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
export type { Finding, FindingCode } from "./findings.js";
export type { FretLine } from "./fret-lines.js";
export { diagonalCrossing } from "./markers.js";
export { checkDesign, type Hole, type Report } from "./report.js";
// the geometry
export { radiusFromSagitta, sagitta } from "./sagitta.js";
// the stop plan
export { type StopPlan, type StopSetting, type StopWindow, stopSettings } from "./stops.js";
export type { Window } from "./windows.js";
