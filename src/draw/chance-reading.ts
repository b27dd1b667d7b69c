/** All that the picture of chances takes from a design. Lengths in mm. */
import { bestTravel, failingOverTravel, summarizeChance } from "../chance/index.js";
import type { Design } from "../design/design.js";
import { checkDesign } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import type { Spot } from "./line.js";
import { readHoles, readSettings } from "./reading.js";

/** Chances over travels. */
export type ChanceCurve = ReturnType<typeof readChance>;

/** The least travel that is looked at. */
const LEAST = 0.01;
/** How many travels are looked at, and how far beyond the window: a share of it, and mm at least. */
const [STEPS, SHARE, BEYOND] = [60, 0.25, 0.3];

/** The chance that a hole fails over the travel, the window of the worst case, and what is set. */
export function readChance(design: Design, unit: Unit) {
  const summary = summarizeChance(design);
  // throws where one travel cannot be for all
  const best = summary.best ?? bestTravel(design);
  const report = checkDesign(design);
  const holes = readHoles(report, unit).filter(({ drilled }) => !drilled);
  const window = [
    Math.max(...holes.map((hole) => hole.window.min + hole.shift)),
    Math.min(...holes.map((hole) => hole.window.max + hole.shift)),
  ] as const;
  const beyond = Math.max(BEYOND, SHARE * Math.abs(window[1] - window[0]));
  const from = Math.max(LEAST, Math.min(...window, best.travel) - beyond);
  const to = Math.max(...window, best.travel) + beyond;
  const even = Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);
  const travels = [...even, ...window, best.travel].sort((a, b) => a - b);
  const curve = failingOverTravel(design, travels).map(
    ({ travel, fails }): Spot => [travel, fails],
  );
  return {
    name: report.name,
    summary,
    window,
    travels,
    curve,
    best: [best.travel, best.fails] as Spot,
    settings: readSettings(report, unit).map(({ travel }) => travel),
  };
}
