/**
 * Cards and notes to work by at the bench: plain text, at most 100 columns wide.
 *
 * @module marker-depth/card
 */

// a report as a card
export { drillCard } from "./drill-card.js";
// how cards and notes are written
export type { CardOptions } from "./page.js";
// a repair as a note
export { repairNote } from "./repair-note.js";
// how far the sanding has come, as a note
export { sandingNote } from "./sanding-note.js";
