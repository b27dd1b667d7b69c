/** The hole that most wants a look. */
import type { Hole, Report } from "../report/report.js";

/**
 * The hole whose depth lies nearest to a limit, or farthest beyond one: the planned depth, else that of its stop
 * setting, else the middle between limits that clash. Its index; −1 where there are no holes.
 */
export function worstHole(report: Report): number {
  const rooms = report.holes.map((hole) => roomAt(hole, chooseDepth(hole)));
  return rooms.indexOf(Math.min(...rooms));
}

/** From a depth to the nearer limit of the hole's window; negative beyond it. */
function roomAt({ window: { min, max } }: Hole, depth: number): number {
  return Math.min(depth - min, max - depth);
}

function chooseDepth({ window, planned, recommended }: Hole): number {
  return (planned ?? recommended)?.depth ?? (window.min + window.max) / 2;
}
