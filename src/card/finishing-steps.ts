/** The steps after the drill: fit or pour, let it cure, sand the radius. Lengths in mm, volumes in ml. */
import type { Pour } from "../drilling/pour.js";
import { elementAt } from "../geometry/element-at.js";
import { LEAST_BATCH } from "../report/cautions.js";
import type { Report } from "../report/report.js";
import { fixed } from "../text/length-text.js";
import type { Job, Step } from "./job.js";
import { edgeName } from "./second-sheet.js";
import { spanWords } from "./setting-steps.js";
import { findOutcome, type WrittenSetting } from "./settings.js";

/** The steps in their order. */
export function finishingSteps(job: Job): Step[] {
  // without a setting nothing is drilled yet
  if (job.settings.length === 0) return [sandingStep(job)];
  return [
    ...fittingSteps(job),
    ...mixingSteps(job.report.pour),
    ...curingSteps(job.report),
    sandingStep(job),
  ];
}

/** Solid dots of each setting, before any glue: none may end below the finished surface. */
function fittingSteps(job: Job): Step[] {
  const list = job.settings.flatMap((setting) => fitWords(job, setting));
  const text =
    "Dry-fit every solid dot or inlay before any glue: what the sanding takes must reach the whole of its top. Then glue them in.";
  return list.length === 0 ? [] : [{ text, list }];
}

function fitWords({ report, settings, unit }: Job, { name, holes }: WrittenSetting): string[] {
  const dots = holes.flatMap((i) => {
    const hole = elementAt(report.holes, i);
    const depth = findOutcome(hole, settings)?.depth;
    if (hole.fill.kind !== "solid" || depth === undefined) return [];
    const { thickness } = hole.fill;
    return [{ thickness, above: thickness - depth, room: hole.removal.inner }];
  });
  if (dots.length === 0) return [];
  const thick = dots.map(({ thickness }) => thickness);
  const above = Math.min(...dots.map((dot) => dot.above));
  const room = Math.min(...dots.map((dot) => dot.room));
  const stands = above >= 0 ? `${unit.full(above)} or more above` : `${unit.full(-above)} below`;
  return [
    `${name && `${name}: `}${spanWords(thick, unit)} thick, they come to stand ${stands} the top; none may lie more than ${unit.most(room)} ${unit.short} below it`,
  ];
}

/** One amount: what the holes take, or the least that can be measured. Its parts add up as they are written. */
export function mixingSteps(pour: Pour | undefined): Step[] {
  if (pour === undefined || !(pour.volume > 0)) return [];
  const tenths = Math.ceil(Math.max(pour.volume, LEAST_BATCH) * 10 - 1e-9);
  const all = tenths / 10;
  const resin = Math.round((100 * all * pour.resin) / pour.volume) / 100;
  const takes = `the holes take ${millilitres(pour.volume)}, waste included`;
  const why = pour.volume < LEAST_BATCH ? `${takes}, but less is hard to measure` : takes;
  const text = `Mix ${millilitres(all)} of epoxy, ${millilitres(resin)} of resin and ${millilitres(all - resin)} of hardener: ${why}. Fill every hole to the brim.`;
  return [{ text }];
}

function millilitres(volume: number): string {
  return `${fixed(volume, 2)} ml`;
}

function curingSteps({ holes }: Report): Step[] {
  const fresh = holes.filter(({ drilled }) => !drilled);
  const isPoured = fresh.some(({ fill }) => fill.kind === "poured");
  const isGlued = fresh.some(({ fill }) => fill.kind === "solid");
  const what = [isPoured ? "the epoxy cure" : "", isGlued ? "the glue set" : ""].filter(Boolean);
  const rest = isPoured ? " A rest of the same batch shows when it has." : "";
  const text = `Let ${what.join(" and ")} as its maker says, before anything is sanded.${rest}`;
  return [{ text }];
}

/** At the nut, at the twelfth fret and at the end. */
const SANDED = /^(nut|fret12|end)$/;

function sandingStep({ report: { edges }, unit }: Job): Step {
  const list = edges
    .filter(({ station }) => SANDED.test(station))
    .map((edge) => {
      const middle = `${unit.full(edge.sanding)} on the centre line`;
      return `at ${edge.station.startsWith("fret") ? "" : "the "}${edgeName(edge)}: ${middle}, ${unit.full(edge.removal)} at the ${edge.side ? "edge" : "edges"}`;
    });
  const text =
    "Sand the radius until so much is off, and no more; sandingProgress of marker-depth/measured tells from what you measure how much is to go:";
  return { text, list };
}
