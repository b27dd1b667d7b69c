/** What every picture may be asked for. */
import { unitNamed } from "../card/page.js";
import { tryRead } from "../errors/errors.js";
import type { Unit } from "../text/length-text.js";

/** How a picture's lengths are written. */
export interface PictureOptions {
  /** "mm" (two decimals) or "in" (three; what is set as a fraction, where one serves); "mm" where left out. */
  readonly unit?: "mm" | "in" | undefined;
}

/** The unit that is asked for; throws RangeError for any other. */
export function readUnit(options: PictureOptions): Unit {
  return unitNamed(tryRead("options", options, () => options.unit) ?? "mm");
}
