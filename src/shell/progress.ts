/** How far a long run has come, on a terminal. Times in ms. */
import type { Output } from "./paint.js";
import { write } from "./write.js";

const FIRST_AFTER = 1000;
const AGAIN_AFTER = 200;
const CLEAR_LINE = "\r\u001B[K";

/** A line that is written over and over. */
export interface Progress {
  /** Tells how many are done, where it is time to. */
  readonly tell: (done: number) => Promise<void>;
  /** Takes the line away, before something else is written. */
  readonly clear: () => Promise<void>;
}

const SILENT: Progress = { tell: async () => {}, clear: async () => {} };

/** Progress on a terminal; nothing where there is none. */
export function progressOn(stderr: Output, total: number | undefined): Progress {
  if (!stderr.isTTY) return SILENT;
  let next = Date.now() + FIRST_AFTER;
  let isShown = false;
  return {
    tell: async (done) => {
      if (Date.now() < next) return;
      next = Date.now() + AGAIN_AFTER;
      isShown = true;
      const of = total === undefined ? "" : ` of ${total}`;
      await write(stderr, `${CLEAR_LINE}${done}${of} designs checked …`);
    },
    clear: async () => {
      if (isShown) await write(stderr, CLEAR_LINE);
      isShown = false;
    },
  };
}
