/** A window as a bar: filled where depths suit, crossed out where its least depth lies beyond its greatest. */
import { type Mark, rectangle, type Spot, strokes } from "./marks.js";

/** The bar between two corners. */
export function windowBar(from: Spot, to: Spot, open: boolean): Mark[] {
  const [x1, y1] = from;
  const [x2, y2] = to;
  if (open) {
    return [rectangle("tint", from, to), rectangle("wide", from, to, "window")];
  }
  const cross: [Spot, Spot][] = [
    [from, to],
    [
      [x1, y2],
      [x2, y1],
    ],
  ];
  return [rectangle("hidden", from, to, "window none"), strokes("narrow", cross)];
}
