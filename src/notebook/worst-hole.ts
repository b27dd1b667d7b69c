/** The hole that most wants a look. */
import { settingOf } from "../draw/words.js";
import type { Hole, Report } from "../report/report.js";

/**
 * The hole whose depth lies nearest to a limit, or farthest beyond one: the planned depth, else that of its stop
 * setting, else the middle between limits that clash. Its index; −1 where there are no holes.
 */
export function worstHole(report: Report): number {
  const rooms = report.holes.map((hole, i) => roomAt(hole, depthOf(report, hole, i)));
  return rooms.indexOf(Math.min(...rooms));
}

/** From a depth to the nearer limit of the hole's window; negative beyond it. */
function roomAt({ window: { min, max } }: Hole, depth: number): number {
  return Math.min(depth - min, max - depth);
}

function depthOf(report: Report, { window, planned }: Hole, i: number): number {
  const setting = settingOf(report, i)?.setting;
  return planned?.depth ?? setting?.depth ?? (window.min + window.max) / 2;
}
