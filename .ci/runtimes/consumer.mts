// Names the types of every entry; compiled, and run where a runtime takes TypeScript.
import { checkDesign, type Design, DesignError, type Report } from "marker-depth";
import { drillCard } from "marker-depth/card";
import { type BestTravel, bestTravel } from "marker-depth/chance";
import { drawBoard, drawSection, drawWindows } from "marker-depth/draw";
import {
  type DesignInput,
  designSchema,
  type FileIssue,
  readDesign,
  type StandardResult,
  writeDesign,
} from "marker-depth/files";
import { type FittedRadius, fitRadius } from "marker-depth/measured";
import { html } from "marker-depth/notebook";
import { length } from "marker-depth/units";

const written: DesignInput = {
  scale: { length: "25.5 in", frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: "flat",
  markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
};
const design: Design = readDesign(JSON.stringify(written));
const report: Report = checkDesign(design);
const pictures: string[] = [drawBoard(report), drawWindows(report), drawSection(report, 0)];
const shown: string = html(report);
const mm: number = length("1/4 in");
const result: StandardResult<Design> = designSchema["~standard"].validate(written);
const file: string = writeDesign(design, { unit: "in" });
const fit: FittedRadius = fitRadius([-20, -7, 7, 20].map((offset) => ({ offset, height: 5 })));
const best: BestTravel = bestTravel(design);
const lines = (issues: readonly FileIssue[]): number[] => issues.map(({ line }) => line);
// @ts-expect-error: a scale is wanted
const refused = () => checkDesign({ board: design.board, radius: 1, markers: [] });

export { best, DesignError, drillCard, file, fit, lines, mm, pictures, refused, result, shown };
