/** The judge itself against printed figures: the solids must be right before they judge. */
import { afterEach, expect, it } from "vitest";
import type { Design } from "../../src/index.js";
import { blankOf, type Mesh, release, removalAtPoint, surfacesOf } from "./solid.js";

const MESH: Mesh = { chord: 0.2, sides: 32 };

afterEach(release);

/** A bare board, 100 long and 60 wide. */
function bare(radius: Design["radius"], width = 60): Design {
  return {
    scale: { length: 120, frets: 12 },
    board: { length: 100, width, thickness: { nut: 12, end: 10 } },
    radius,
    crown: 0,
    markers: [],
  };
}

it("a cylinder: r = 60, chord 59.86652, height 8 (Machinery's Handbook, 31st ed., p. 79)", () => {
  const { low, high } = removalAtPoint(surfacesOf(bare(60), MESH), 50, 59.86652 / 2);
  expect(low.toFixed(3)).toBe("8.000");
  expect(high.toFixed(3)).toBe("8.000");
  expect(low).toBeLessThan(high);
});

// "Radii of Curvature and Sagittal Depths of Conic Sections", Int. Contact Lens Clinic 19:76–83 (1992), Table 1, in a
// transcription: R 7.8, K = −0.2025, at 2x = 1, 2, 3, 4, 5; here ten times as large
const SAGS = [0.016, 0.064, 0.145, 0.26, 0.409];

it("a cone that lies with a level generator, cut square to it: R 7.8, K −.2025, so slope .45", () => {
  const design = bare({ nut: 78 - 0.45 * 50, end: 78 + 0.45 * 50 }, 52);
  const surfaces = surfacesOf(design, MESH);
  SAGS.forEach((sag, i) => {
    const { low, high } = removalAtPoint(surfaces, 50, (10 * (i + 1)) / 2);
    expect((low / 10).toFixed(3)).toBe(sag.toFixed(3));
    expect((high / 10).toFixed(3)).toBe(sag.toFixed(3));
  });
  // the same cone the other way round
  const turned = surfacesOf(
    { ...design, radius: { nut: 78 + 0.45 * 50, end: 78 - 0.45 * 50 } },
    MESH,
  );
  const { low, high } = removalAtPoint(turned, 50, 25);
  expect((low / 10).toFixed(3)).toBe("0.409");
  expect((high / 10).toFixed(3)).toBe("0.409");
});

it("fall-away lowers every point by as much", () => {
  const crown = { nut: 0.5, fret12: 0.5, end: 2.5 };
  const level = removalAtPoint(surfacesOf(bare(60), MESH), 80, 20);
  const falling = removalAtPoint(surfacesOf({ ...bare(60), crown }, MESH), 80, 20);
  // fret 12 lies at 60, so 80 is half way down the fall
  expect(falling.low - level.low).toBeCloseTo(1.5, 9);
  expect(falling.high - level.high).toBeCloseTo(1.5, 9);
});

it("a tapered blank with a channel: its volume by hand", () => {
  const design = bare(60, 50);
  const { board } = design;
  const whole = 100 * 50 * 11;
  expect(blankOf(design).volume()).toBeCloseTo(whole, 6);
  const channel = { width: 6, depth: 2, from: 10, to: 60 };
  expect(blankOf({ ...design, board: { ...board, channel } }).volume()).toBeCloseTo(
    whole - 6 * 2 * 50,
    6,
  );
});
