// design files
export type { DesignInput } from "./design-input.js";
export { FILE_LIMITS, type FileIssue } from "./json.js";
export { readDesign } from "./read-design.js";
export { designSchema } from "./schema.js";
