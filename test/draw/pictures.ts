/** Every picture of a report. */
import { drawBoard, drawSection, drawWindows } from "../../src/draw/index.js";
import type { Report } from "../../src/index.js";

/** A picture with its name. */
export interface Picture {
  readonly name: string;
  readonly svg: string;
}

/** All of a report's pictures: at most so many of its sections, each in two proportions. */
export function picturesOf(name: string, report: Report, sections = 4): Picture[] {
  const step = Math.max(1, Math.ceil(report.holes.length / sections));
  const indices = report.holes.map((_, i) => i).filter((i) => i % step === 0);
  return [
    { name: `${name}: board`, svg: drawBoard(report) },
    { name: `${name}: windows`, svg: drawWindows(report) },
    ...indices.flatMap((i) => [
      { name: `${name}: section ${i}`, svg: drawSection(report, i) },
      { name: `${name}: section ${i}, true`, svg: drawSection(report, i, { exaggeration: 1 }) },
    ]),
  ];
}
