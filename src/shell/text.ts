/** Text that comes in as bytes, and text that goes out to a terminal. */
import { FILE_LIMITS } from "../files/json.js";

/** The most bytes that a text within the limits can take in UTF-8. */
export const MOST_BYTES = 3 * FILE_LIMITS.text.value;

const utf8 = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

/** The text of these bytes. Throws where they are too many, or no UTF-8. */
export function decodeText(bytes: Uint8Array): string {
  if (bytes.length > MOST_BYTES) {
    throw new Error(`more than ${FILE_LIMITS.text.value} ${FILE_LIMITS.text.unit}`);
  }
  try {
    return utf8.decode(bytes);
  } catch {
    throw new Error("not UTF-8; save it as plain UTF-8");
  }
}
