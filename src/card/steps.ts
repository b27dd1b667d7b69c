/** What to do at the bench, step by step. Lengths in mm. */
import type { Hole, Report } from "../report/report.js";
import { finishingSteps } from "./finishing-steps.js";
import type { Job, Step } from "./job.js";
import { settingSteps } from "./setting-steps.js";
import { type Tool, toolsOf } from "./tools.js";

/** The steps in their order: each setting's holes together, the setting with the most room first. */
export function buildSteps(job: Job): Step[] {
  const { report, settings, unit } = job;
  const tools = toolsOf(report.holes, [...report.holes.keys()], unit);
  const inOrder = [...settings].sort((a, b) => b.max - b.min - (a.max - a.min));
  return [
    ...tools.flatMap((tool) => measuringStep(job, tool)),
    ...inOrder.flatMap((setting, i) => settingSteps(job, setting, i === 0)),
    ...finishingSteps(job),
  ];
}

/** The point's length decides the travel: it is measured, whoever stated it. */
export function measuringStep({ report, bench, unit }: Job, { name, hole }: Tool): Step[] {
  const { bit, lead } = hole;
  if (bit === undefined || !(lead > 0)) return [];
  const tip = unit.full(lead);
  if (bit.kind === "twist") {
    const text = `Check the ${name}: with a point of ${bit.angle} degrees its tip lies ${tip} below its full diameter. Does yours differ? State its angle as bit.angle and print the card anew.`;
    return [{ text }];
  }
  const within = bench.errors ? `, to within ${unit.full(bench.errors.point)}` : "";
  const taken = isPointAssumed(report, hole)
    ? `The design does not say, so ${tip} is assumed`
    : `The design says ${tip}${within}`;
  const text = `Measure the point of the ${name}: in a hole in scrap, the depth of the point's mark less the depth of the floor. ${taken}. Does yours differ? Travel = depth + your point: state it as bit.point and print the card anew.`;
  return [{ text }];
}

/** The design says nothing of the point of the bit that drills a hole. */
export function isPointAssumed({ assumed }: Report, { path, bit }: Hole): boolean {
  const group = path.split(".").slice(0, 2).join(".");
  const value = assumed[`${group}.bit.point`] ?? assumed["bit.point"];
  return bit !== undefined && "point" in bit && bit.point === value;
}
