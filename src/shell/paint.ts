/** Colours on a terminal that shows them. */
import type { Writable } from "node:stream";

/** Colours a text. */
export interface Paint {
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
}

const PLAIN: Paint = { good: (text) => text, bad: (text) => text };
const COLOURED: Paint = {
  good: (text) => `\u001B[32m${text}\u001B[39m`,
  bad: (text) => `\u001B[31m${text}\u001B[39m`,
};

/** A stream that may be a terminal. */
export type Output = Writable & { readonly isTTY?: boolean; readonly hasColors?: () => boolean };

/** Whether the stream is a terminal that has colours. `hasColors` itself heeds `NO_COLOR`. */
export function hasColours(stream: Output): boolean {
  return stream.isTTY === true && stream.hasColors?.() === true;
}

/** Colours, or none. */
export function paintFor(isColoured: boolean): Paint {
  return isColoured ? COLOURED : PLAIN;
}
