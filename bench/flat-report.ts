/** A nested report as the row of numbers that the bare loop writes. */
import type { Report } from "../src/index.js";

/** Its numbers, in the order of `bareReports`. */
export function numbersOf({ holes, edges, stops }: Report): number[] {
  const [setting] = stops.settings;
  const { common } = stops;
  if (common === null || setting === undefined || stops.settings.length !== 1) {
    throw new Error("the necks measured are to need one setting");
  }
  return [
    ...holes.flatMap((hole) => [
      hole.along,
      hole.offset,
      hole.diameter,
      hole.radius,
      hole.slope,
      hole.crown,
      hole.blank,
      hole.halfWidth,
      hole.removal.inner,
      hole.removal.centre,
      hole.removal.outer,
      hole.window.min,
      hole.window.max,
      hole.lead,
    ]),
    ...edges.flatMap(({ along, offset, removal, thickness }) => [
      along,
      offset,
      removal,
      thickness,
    ]),
    ...[common.min, common.max, common.minHole, common.maxHole],
    ...[setting.depth, setting.travel, setting.min, setting.max, setting.minHole, setting.maxHole],
  ];
}
