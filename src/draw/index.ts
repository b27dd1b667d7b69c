/**
 * Pictures of a report and of a sweep, as SVG text.
 *
 * @module marker-depth/draw
 */

// the board from above
export { drawBoard } from "./board.js";
// how likely a hole fails, over the travel
export { drawChance } from "./chance.js";
// how a picture's lengths are written
export type { PictureOptions } from "./options.js";
// how far the sanding has come
export { drawSanding } from "./sanding.js";
// the board cut across at a marker
export { drawSection, type SectionOptions } from "./section.js";
// where one setting does, over two numbers of a design
export { drawSweep } from "./sweep.js";
export type { SweepPictureOptions } from "./sweep-cells.js";
// the board at 1 : 1, to print
export { drawTemplate, type TemplateOptions } from "./template.js";
// every hole's window and the stop settings
export { drawWindows } from "./windows.js";
