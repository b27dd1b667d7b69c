/** The steps for one setting of the stop: set it, try it in scrap, drill its holes. Lengths in mm. */
import type { SetStop } from "../drilling/plan.js";
import { elementAt } from "../geometry/element-at.js";
import type { Hole } from "../report/report.js";

import type { Unit } from "../text/length-text.js";
import { holeNames, joined, listNames } from "../text/plain-words.js";
import type { Job, Step } from "./job.js";
import { findOutcome, type WrittenSetting } from "./settings.js";
import { listTools, type Tool } from "./tools.js";

/** The three steps of a setting. */
export function settingSteps(job: Job, setting: WrittenSetting, isFirst: boolean): Step[] {
  const { report, unit } = job;
  const tools = listTools(report.holes, setting.holes, unit);
  const { stop } = setting;
  return [
    { text: settingWords(job, setting) },
    {
      text: trialWords(
        job,
        setting,
        isRouted(tools) ? "Rout a trial pocket" : "Drill a trial hole",
        stop,
        isFirst,
      ),
    },
    drillingStep(job, setting, tools, stop),
  ];
}

/** What to set, how it is zeroed in scrap, and where on the board. */
export function tellSetting(job: Job, setting: WrittenSetting): string {
  return `${settingWords(job, setting)} ${zeroingWords(setting.stop, job.unit, ", for all of these holes")}`;
}

function settingWords(job: Job, setting: WrittenSetting): string {
  const { report, unit } = job;
  const { set, min, max, minHole, maxHole, name, holes, stop } = setting;
  const tools = listTools(report.holes, holes, unit);
  const names = holeNames(report.holes);
  const [least, most] = unit.range(min, max, set.mm);
  const rule = RULES[elementAt(report.holes, maxHole).window.maxBy];
  const bits = joined(tools.map((tool) => `the ${tool.name}`));
  return [
    `Set the stop${name && `, ${name},`} to a travel of ${set.text} ${unit.short}, for ${bits}:`,
    `${touchWords(tools, stop, unit)}, zero the stop there, then set the travel.`,
    `Travels from ${least} to ${most} ${unit.short} would do:`,
    `${elementAt(names, minHole)} sets the least (the radius takes most there), ${elementAt(names, maxHole)} the most (${rule}).`,
  ]
    .join(" ")
    .concat(plannedWords(job, setting));
}

const RULES = {
  web: "the web under the bit",
  channel: "the web above the rod channel",
  flush: "its dot must end flush",
} as const;

/** What touches the wood: a mill has no point to touch with, and a foot bears before the bit does. */
export function touchWords(tools: readonly Tool[], stop: SetStop | undefined, unit: Unit): string {
  if (stop?.from === "wood" && (stop.foot ?? 0) > 0) {
    return `with the bit at rest, let what bears on the top, ${unit.full(stop.foot ?? 0)} wide, rest on it about the mark, bring the bit's tip level with it`;
  }
  return tools.every(({ isMill }) => isMill)
    ? "with the spindle stopped, lower the mill until its end touches the top (it has no point to touch with)"
    : "with the spindle stopped, lower the point until it touches the top, beside a prick mark and never in it";
}

/** Pockets alone. */
function isRouted(tools: readonly Tool[]): boolean {
  return tools.every(({ hole }) => hole.diameter === undefined);
}

/** What the builder means to set, against the windows. */
function plannedWords({ report, unit }: Job, { holes }: WrittenSetting): string {
  const planned = holes.flatMap((i) => {
    const { planned: plan, window } = elementAt(report.holes, i);
    return plan?.travel === undefined ? [] : [{ ...plan, travel: plan.travel, window }];
  });
  if (planned.length === 0) return "";
  const fits = planned.filter(({ depth, window: { min, max } }) => min <= depth && depth <= max);
  const fails = planned.length - fits.length;
  const travel = spanWords(
    planned.map((plan) => plan.travel),
    unit,
  );
  const depth = spanWords(
    planned.map((plan) => plan.depth),
    unit,
  );
  const verdict = fails === 0 ? "would do too" : `fails at ${fails} of ${planned.length} holes`;
  return ` What you plan, a travel of ${travel} (depth ${depth}), ${verdict}.`;
}

/** “3.00 mm”, or “3.00 to 3.20 mm”. */
export function spanWords(lengths: readonly number[], unit: Unit): string {
  const [least, most] = [unit.bare(Math.min(...lengths)), unit.bare(Math.max(...lengths))];
  return `${least === most ? least : `${least} to ${most}`} ${unit.short}`;
}

function trialWords(
  { report, unit }: Job,
  { set, travel, holes }: WrittenSetting,
  trial: string,
  stop: SetStop | undefined,
  isFirst: boolean,
): string {
  const { lead, rise, recommended } = elementAt(report.holes, elementAt(holes, 0));
  // travel = depth + lead − rise − correction
  const correction = (recommended?.depth ?? 0) + lead - rise - travel;
  const tip = set.mm + correction;
  const { stop: off } = report.tolerance;
  const range = unit.range(tip - off, tip + off);
  const within = `: from ${range.join(" to ")} ${unit.short} will do, since the travels above leave the stop so much`;
  const scrap = stop?.from === "table" ? "flat scrap that lies on the table" : "flat scrap";
  const otherwise = isFirst
    ? "If it does not, make two more at least, give the travel and the tip of each to calibrateStop of marker-depth/measured, write what it answers into the design as stop.correction and tolerance.stop, and print the card anew."
    : "If it does not, go on as after the first trial.";
  return `${trial} in ${scrap}, the stop zeroed on the scrap. Measure to its deepest mark: it must lie ${unit.full(tip)} deep${within}. ${otherwise}`;
}

/** Where to zero, and the holes in their order. */
function drillingStep(
  job: Job,
  setting: WrittenSetting,
  tools: readonly Tool[],
  stop: SetStop | undefined,
): Step {
  const { report, settings, unit } = job;
  const depths = setting.holes.flatMap(
    (i) => findOutcome(elementAt(report.holes, i), settings)?.depth ?? [],
  );
  const floor = `Their floors come ${spanWords(depths, unit)} deep.`;
  const verb = isRouted(tools) ? "Rout" : "Drill";
  const zero = zeroingWords(stop, unit, ", for all of these holes");
  const lists = tools.map((tool) => namesInOrder(report.holes, setting, tool.holes));
  if (setting.holes.length === 1) return { text: `${zero} ${verb} ${lists[0]}. ${floor}` };
  if (lists.length === 1) {
    const order = "in this order, the widest window first and those that govern last";
    return { text: `${zero} ${verb} ${order}: ${lists[0]}. ${floor}` };
  }
  const list = tools.map(({ name }, i) => `with the ${name}: ${lists[i]}`);
  const text = `${zero} ${verb} in this order, each bit's widest window first and those that govern last, and zero anew at each change of bit. ${floor}`;
  return { text, list };
}

/** Where to zero for the holes. */
export function zeroingWords(stop: SetStop | undefined, unit: Unit, all = ""): string {
  if (stop === undefined) {
    return "Zero in the same way on the board: where the design's `stop` says or, where it says nothing, anew on the wood at every hole.";
  }
  if (stop.from === "wood") return "Zero in the same way on the board, anew at every hole.";
  const lies = stop.height === undefined ? "" : ", its crest as high as stop.height says,";
  return `Lay the work on the table${lies} and zero in the same way on its centre line, ${unit.full(stop.zero ?? 0)} from the nut: once${all}.`;
}

/** How near two lengths come to being one, mm: what a builder could tell apart. */
const ALIKE = 0.01;

/** Holes by name, the widest window first; those that govern the most come late, those that govern the least last. */
function namesInOrder(
  holes: readonly Hole[],
  { min, max, travel }: WrittenSetting,
  indices: readonly number[],
): string {
  const names = holeNames(holes);
  const ranked = indices.map((i) => {
    const { window, recommended } = elementAt(holes, i);
    const toTravel = travel - (recommended?.depth ?? 0);
    const setsLeast = window.min + toTravel > min - ALIKE;
    const setsMost = window.max + toTravel < max + ALIKE;
    const width = Math.round((window.max - window.min) / ALIKE);
    return { i, rank: setsLeast ? 2 : Number(setsMost), width };
  });
  const inOrder = ranked.sort((a, b) => a.rank - b.rank || b.width - a.width);
  return listNames(inOrder.map(({ i }) => elementAt(names, i)));
}
