/** What to do at the bench, step by step. Lengths in mm. */
import { elementAt } from "../geometry/element-at.js";
import type { Hole, Report } from "../report/report.js";
import { joined } from "../text/plain-words.js";
import { finishingSteps } from "./finishing-steps.js";
import type { Job, Step } from "./job.js";
import { settingSteps } from "./setting-steps.js";
import { listTools, type Tool } from "./tools.js";

/** The steps in their order: each setting's holes together, the setting with the most room first. */
export function buildSteps(job: Job): Step[] {
  const { report, settings, unit } = job;
  const tools = listTools(report.holes, [...report.holes.keys()], unit);
  const inOrder = [...settings].sort((a, b) => b.max - b.min - (a.max - a.min));
  return [
    ...measuringSteps(job, tools),
    ...inOrder.flatMap((setting, i) => settingSteps(job, setting, i === 0)),
    ...finishingSteps(job),
  ];
}

/** The point's length decides the travel: it is measured, whoever stated it. Bits of one point are one step. */
function measuringSteps(job: Job, tools: readonly Tool[]): Step[] {
  const alike = new Map<string, Tool[]>();
  for (const tool of tools.filter(({ hole }) => hole.lead > 0)) {
    const key = JSON.stringify([
      tool.hole.bit,
      tool.hole.lead,
      isPointAssumed(job.report, tool.hole),
    ]);
    alike.set(key, [...(alike.get(key) ?? []), tool]);
  }
  return [...alike.values()].map((some) => ({ text: measuringWords(job, some) }));
}

function measuringWords({ report, unit }: Job, tools: readonly Tool[]): string {
  const { hole } = elementAt(tools, 0);
  const names = joined(tools.map(({ name }) => `the ${name}`));
  const tip = unit.full(hole.lead);
  if (hole.bit?.kind === "twist") {
    return `Check ${names}: with a point of ${hole.bit.angle} degrees its tip lies ${tip} below its full diameter. Does yours differ? State its angle as bit.angle and print the card anew.`;
  }
  const { point } = report.tolerance;
  const within = point > 0 ? `, to within ${unit.full(point)}` : "";
  const taken = isPointAssumed(report, hole)
    ? `The design does not say, so ${tip} is assumed`
    : `The design says ${tip}${within}`;
  return `Measure the point of ${names}: in a hole in scrap, the depth of the point's mark less the depth of the floor. ${taken}. Does yours differ? Travel = depth + your point: state it as bit.point and print the card anew.`;
}

/** The design says nothing of the point of the bit that drills a hole. */
function isPointAssumed({ assumed }: Report, { path, bit }: Hole): boolean {
  const group = path.split(".").slice(0, 2).join(".");
  const value = assumed[`${group}.bit.point`] ?? assumed["bit.point"];
  return bit !== undefined && "point" in bit && bit.point === value;
}
