/**
 * Reports that show themselves in a notebook.
 *
 * @module marker-depth/notebook
 */

// a report as a fragment of a page
export { html } from "./html.js";
// the check whose report shows itself, and whatever else is to be shown
export {
  checkDesign,
  type Displayed,
  type MimeBundle,
  type Showable,
  show,
} from "./show.js";
