// the board cut across at a marker
export { drawSection, type SectionOptions } from "./section.js";
