/** The common window by formulas that an expression library compiles. */
import { compile } from "mathjs";
import type { Rows } from "./bare.js";
import { HOLES, type SweptColumns } from "./necks.js";

const LEAST = compile(
  "sanding + sandingError + x^2 / (R + sqrt(R^2 - x^2)) + keep + stop + pointError + point",
);
const MOST = compile("thickness - thicknessError - stop - web");
const NAMES = {
  sanding: 0.15,
  sandingError: 0.05,
  keep: 0.8,
  stop: 0.1,
  pointError: 0.1,
  point: 1,
};
const WOOD = { thicknessError: 0.1, stop: 0.1, web: 1 };

/** The first `count` rows; `offsets` are the holes' distances from the centre line. */
export function expressionWindows(
  { nut: radius, thickness, diameter }: SweptColumns,
  offsets: ArrayLike<number>,
  count: number,
  out: Rows,
): number {
  const scope = { ...NAMES, R: 0, x: 0 };
  const wood = { ...WOOD, thickness: 0 };
  for (let i = 0; i < count; i++) {
    scope.R = radius[i] as number;
    wood.thickness = thickness[i] as number;
    out.min[i] = -Infinity;
    for (let hole = 0; hole < HOLES; hole++) {
      const aside = offsets[hole] as number;
      scope.x = aside + (aside === 0 ? 6.35 : (diameter[i] as number)) / 2 + 0.25 + 0.5;
      const least = LEAST.evaluate(scope) as number;
      if (!(least > (out.min[i] as number))) continue;
      out.min[i] = least;
      out.minHole[i] = hole;
    }
    out.max[i] = MOST.evaluate(wood) as number;
    out.maxHole[i] = 0;
    out.settings[i] = (out.min[i] as number) <= (out.max[i] as number) ? 1 : 0;
  }
  return count;
}
