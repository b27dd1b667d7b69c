/**
 * How likely all goes well: the chance that every hole holds, where the worst case asks whether it must.
 * Millimetres; chances from 0 to 1.
 *
 * @module marker-depth/chance
 */

// the chance at given travels
export {
  type Conformance,
  type ConformanceOptions,
  conformanceProbability,
} from "./conformance.js";
// one travel for all
export {
  type BestTravel,
  type BestTravelOptions,
  bestTravel,
  type FailingTravel,
  failingOverTravel,
} from "./over-travel.js";
// in short, as a card tells it
export { type ChanceSummary, summarizeChance } from "./summary.js";
