/**
 * What a builder measures, made sharper than it is read: trial holes, the radius that came out, the
 * board while sanding, the weather.
 * Millimetres; `along` from the nut, `offset` from the centre line, heights upward.
 *
 * @module marker-depth/measured
 */

// the stop, from trial holes
export {
  type CalibrateStopOptions,
  calibrateStop,
  type StopCalibration,
  type Trial,
} from "./calibrate-stop.js";
// a section of points
export type { Section } from "./cone.js";
// the weather
export { dimensionalChange } from "./dimensional-change.js";
export { equilibriumMoisture } from "./equilibrium-moisture.js";
// the radius, from points or a gauge, and the sanding it takes
export {
  type BothEnds,
  type FitCompoundOptions,
  type FittedCompound,
  fitCompound,
} from "./fit-compound.js";
export { type FitRadiusOptions, type FittedRadius, fitRadius } from "./fit-radius.js";
export { leastSanding } from "./least-sanding.js";
export type { ProfilePoint } from "./points.js";
export { type GaugeReading, radiusFromGauge } from "./radius-from-gauge.js";
// how far the sanding has come
export type { SandingFacts, SandingFinding } from "./sanding-findings.js";
export {
  type Across,
  type MarkerLeft,
  type ReadSanding,
  type SandingProgress,
  sandingProgress,
} from "./sanding-progress.js";
export type { SandingReading } from "./sanding-readings.js";
