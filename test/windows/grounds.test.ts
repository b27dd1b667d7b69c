/** What an old radius drops under a stop's foot, over all places that a hole's centre may have, by hand. */
import { expect, test } from "vitest";
import { greatestDrop, leastDrop } from "../../src/drilling/grounds.js";
import { constantTrack, trackThrough } from "../../src/geometry/track.js";

test("the least where the radius is widest and steepest, the greatest where it is tightest and gentlest", () => {
  // 100 to 200 over 100 mm: a slope of 1, where x² / 2R is the drop
  const cone = { sanding: constantTrack(0), radius: trackThrough([0, 100], [100, 200]) };
  const cells = [
    { from: 0, to: 100, left: 20, right: 30 },
    { from: 0, to: 100, left: -30, right: -20 },
  ];
  for (const cell of cells) {
    expect(leastDrop(cone, cell, 0)).toBeCloseTo(400 / 400, 12);
    expect(greatestDrop(cone, cell, 0)).toBeCloseTo(900 / 200, 12);
    expect(leastDrop(cone, cell, 10)).toBeCloseTo(225 / 400, 12);
    expect(greatestDrop(cone, cell, 10)).toBeCloseTo(625 / 200, 12);
  }
  // a circle of 50 at 14 has dropped 2, at 30 10; a foot over the crest takes what lies within it as level
  const circle = { ...cone, radius: constantTrack(50) };
  const across = { from: 0, to: 100, left: 14, right: 30 };
  expect([leastDrop(circle, across, 0), greatestDrop(circle, across, 0)]).toEqual([2, 10]);
  expect([leastDrop(circle, across, 28), greatestDrop(circle, across, 60)]).toEqual([0, 0]);
});
