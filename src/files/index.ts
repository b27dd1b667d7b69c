/**
 * Design files: JSON whose lengths may carry their units.
 *
 * @module marker-depth/files
 */

// design files
export type { DesignInput } from "./design-input.js";
// for other tools
export {
  designSchema,
  type StandardIssue,
  type StandardResult,
  type StandardSchema,
} from "./design-schema.js";
export { FILE_LIMITS } from "./json.js";
export type { FileIssue } from "./places.js";
export { readDesign } from "./read-design.js";
export { type WriteOptions, writeDesign } from "./write-design.js";
