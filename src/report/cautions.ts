/** The cautions that a task calls for, by what the work is. One line each, with what each title itself says beside it. */
import type { GroupSpec } from "../design/spec.js";

/** A piece of work, as far as cautions go. */
export interface Task {
  readonly groups: readonly Pick<GroupSpec, "fill" | "bit" | "drilled">[];
  readonly slot?: unknown;
  readonly sideDots?: unknown;
}

/** The least epoxy that can be measured by volume, ml. Common practice, from memory, no source. */
export const LEAST_BATCH = 10;

type Caution = readonly [isCalledFor: (task: Task, volume: number) => boolean, text: string];
type Group = Task["groups"][number];

const PRACTICE = "(common practice, no source)";
const GUARDS = "(OSHA 29 CFR 1910.213, woodworking machinery)";
const EYES = "protect the eyes (OSHA 29 CFR 1910.133)";
const RR79 = "(HSE RR79, skin sensitisation by epoxy resins)";

const always = () => true;
const isNew = ({ drilled }: Group) => !drilled;
const isMilled = ({ bit }: Group) => bit.kind === "end-mill";

/** Called for by any of the groups. */
function anyGroup(does: (group: Group) => boolean) {
  return ({ groups }: Task) => groups.some(does);
}

const isPouring = anyGroup((group) => isNew(group) && group.fill.kind === "poured");

const CAUTIONS: readonly Caution[] = [
  [always, "These lines do not replace local codes or licensed practice, which come first."],
  [
    anyGroup((group) => isNew(group) && !isMilled(group)),
    `Drill press: guard the bit ${GUARDS}, ${EYES}. Clamp the work, no gloves or loose sleeves ${PRACTICE}.`,
  ],
  [
    anyGroup((group) => isNew(group) && group.bit.kind === "twist"),
    `A twist bit can grab and climb as it breaks in or through: clamp the work, feed slowly ${PRACTICE}.`,
  ],
  [
    anyGroup((group) => isNew(group) && isMilled(group)),
    `Router: ${EYES}. Hold the work fast, grip the bit's shank as far in as its maker says, feed against its rotation, in shallow passes ${PRACTICE}.`,
  ],
  [
    ({ slot }) => slot !== undefined,
    `Sawing slots: leave a power saw's guard on ${GUARDS}. Hold the board fast, hands out of the saw's line ${PRACTICE}.`,
  ],
  [
    ({ sideDots }) => sideDots !== undefined,
    `Drilling the edge for side dots: ${EYES}. Hold the neck fast on its edge, ease the bit in: a thin one snaps ${PRACTICE}.`,
  ],
  [
    always,
    `Wood dust can cause cancer, burns and explodes (OSHA, "Wood Dust – Hazard Recognition"); some woods are toxic (HSE WIS30, "Toxic woods"). Collect it at the tool, wear a respirator ${PRACTICE}.`,
  ],
  [
    anyGroup(({ fill }) => fill.kind === "solid"),
    `Dust of shell harms the lungs (Eur Respir J 10:780–786, 1997, lung disease in nacre workers), and that of other dots may: cut and sand wet or under extraction, wear a respirator ${PRACTICE}.`,
  ],
  [
    anyGroup((group) => isNew(group) && group.fill.kind === "solid"),
    `Glue under solid dots: cyanoacrylate bonds skin and eyes at once, and its vapour stings: ${EYES}, ventilate ${PRACTICE}. Epoxy sensitises the skin ${RR79}: suitable gloves.`,
  ],
  [
    isPouring,
    `Uncured epoxy sensitises the skin ${RR79}: suitable gloves to mix and pour, never at the press; ventilate; read its safety data sheet ${PRACTICE}.`,
  ],
  [
    anyGroup(({ fill }) => fill.kind === "poured"),
    `Sand epoxy only once it has cured through; collect its dust, wear a respirator ${PRACTICE}.`,
  ],
  [isPouring, `No flame or torch near uncured resin, its vapour and its solvents ${PRACTICE}.`],
  [
    (task, volume) => isPouring(task) && volume < LEAST_BATCH,
    `A batch this small is hard to measure: mix at least ${LEAST_BATCH} ml, or weigh it, and test that it cures ${PRACTICE}.`,
  ],
];

/** The cautions that a task calls for; `volume` is the epoxy that its holes take, ml, where any is poured. */
export function cautionsFor(task: Task, volume = Infinity): string[] {
  return CAUTIONS.filter(([isCalledFor]) => isCalledFor(task, volume)).map(([, text]) => text);
}
