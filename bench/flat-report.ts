/** A nested report as the row of numbers that the bare loop writes. */
import type { Report } from "../src/index.js";

/** Its numbers, in the order of `bareReports`. */
export function numbersOf({ holes, edges, stops, pour }: Report): number[] {
  const [setting] = stops.settings;
  const { common } = stops;
  if (common === null || setting === undefined || stops.settings.length !== 1) {
    throw new Error("the necks measured are to need one setting");
  }
  const numbers = [
    ...holes.flatMap(({ removal, window, recommended, ...hole }) => [
      ...[hole.along, hole.offset, hole.diameter, hole.radius, hole.sanding, hole.thickness],
      ...[removal.inner, removal.centre, removal.outer, window.min, window.max],
      ...[hole.lead, hole.rise],
      ...[recommended?.travel, recommended?.depth],
      ...[recommended?.markerLeft, recommended?.woodLeft],
    ]),
    ...edges.flatMap(({ along, offset, removal, thickness }) => [
      along,
      offset,
      removal,
      thickness,
    ]),
    ...[common.min, common.max, common.minHole, common.maxHole],
    ...[setting.travel, setting.min, setting.max, setting.minHole, setting.maxHole],
    ...[pour?.volume, pour?.resin, pour?.hardener],
  ];
  return numbers.map((value) => value ?? Number.NaN);
}
