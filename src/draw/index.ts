/** Pictures of a report, as SVG text. */

// the board from above
export { drawBoard } from "./board.js";
// the board cut across at a marker
export { drawSection, type SectionOptions } from "./section.js";
// every hole's window and the stop settings
export { drawWindows } from "./windows.js";
