/**
 * Reports that show themselves in a notebook.
 *
 * @module marker-depth/notebook
 */

// a report as a fragment of a page
export { html } from "./html.js";
// the check whose report shows itself, and any other report
export { checkDesign, type Displayed, type MimeBundle, show } from "./show.js";
