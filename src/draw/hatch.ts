/** Hatching: parallel lines across an area. Lengths in mm on paper. */
import { elementAt } from "../geometry/element-at.js";
import { type Mark, type Spot, strokes } from "./marks.js";

/**
 * The parts of lines y = slope · x + k · `apart` · √2 that lie inside a polygon (even-odd rule); slope 1 or −1.
 * They are worked out rather than drawn through a clip, so that the picture needs no names of its own.
 */
export function hatching(
  polygon: readonly Spot[],
  slope: 1 | -1,
  apart: number,
  name?: string,
): Mark[] {
  const lines = hatched(polygon, slope, apart);
  return lines.length > 0 ? [strokes("narrow", lines, name)] : [];
}

function hatched(polygon: readonly Spot[], slope: 1 | -1, apart: number): [Spot, Spot][] {
  const step = apart * Math.SQRT2;
  const heights = polygon.map(([x, y]) => y - slope * x);
  const first = Math.ceil(Math.min(...heights) / step);
  const last = Math.floor(Math.max(...heights) / step);
  const lines = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
  return lines.flatMap((height) => insideParts(polygon, slope, height));
}

function insideParts(polygon: readonly Spot[], slope: number, height: number): [Spot, Spot][] {
  const xs = polygon
    .flatMap((from, i) =>
      crossing(from, elementAt(polygon, (i + 1) % polygon.length), slope, height),
    )
    .sort((a, b) => a - b);
  const parts: [Spot, Spot][] = [];
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const [x1, x2] = [elementAt(xs, i), elementAt(xs, i + 1)];
    if (x2 - x1 > 0.05) {
      parts.push([
        [x1, slope * x1 + height],
        [x2, slope * x2 + height],
      ]);
    }
  }
  return parts;
}

/** Where a side crosses the line; its lower end counts, its upper one does not. */
function crossing([ax, ay]: Spot, [bx, by]: Spot, slope: number, height: number): number[] {
  const a = ay - slope * ax - height;
  const b = by - slope * bx - height;
  return a >= 0 === b >= 0 ? [] : [ax + ((bx - ax) * a) / (a - b)];
}
