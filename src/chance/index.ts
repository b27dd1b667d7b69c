/**
 * How likely all goes well.
 *
 * @module marker-depth/chance
 */
export {
  type Conformance,
  type ConformanceOptions,
  conformanceProbability,
} from "./conformance.js";
