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

type Caution = readonly [
  isCalledFor: (traits: Traits, task: Task, volume: number) => boolean,
  text: string,
];
type Group = Task["groups"][number];

const PRACTICE = "(common practice, no source)";
const GUARDS = "(OSHA 29 CFR 1910.213, woodworking machinery)";
const EYES = "protect the eyes (OSHA 29 CFR 1910.133)";
const RR79 = "(HSE RR79, skin sensitisation by epoxy resins)";

const always = () => true;

/** What the groups of a task have to do with: each is true where any of them has. */
interface Traits {
  drills: boolean;
  twists: boolean;
  mills: boolean;
  glues: boolean;
  pours: boolean;
  /** Whether it is in the board already or not. */
  isSolid: boolean;
  isPoured: boolean;
}

function collectTraits(groups: readonly Group[]): Traits {
  const traits: Traits = {
    drills: false,
    twists: false,
    mills: false,
    glues: false,
    pours: false,
    isSolid: false,
    isPoured: false,
  };
  for (const { fill, bit, drilled } of groups) {
    const isMilled = bit.kind === "end-mill";
    const isSolid = fill.kind === "solid";
    traits.drills ||= !drilled && !isMilled;
    traits.twists ||= !drilled && bit.kind === "twist";
    traits.mills ||= !drilled && isMilled;
    traits.glues ||= !drilled && isSolid;
    traits.pours ||= !drilled && !isSolid;
    traits.isSolid ||= isSolid;
    traits.isPoured ||= !isSolid;
  }
  return traits;
}

const CAUTIONS: readonly Caution[] = [
  [always, "These lines do not replace local codes or licensed practice, which come first."],
  [
    ({ drills }) => drills,
    `Drill press: guard the bit ${GUARDS}, ${EYES}. Clamp the work, no gloves or loose sleeves ${PRACTICE}.`,
  ],
  [
    ({ twists }) => twists,
    `A twist bit can grab and climb as it breaks in or through: clamp the work, feed slowly ${PRACTICE}.`,
  ],
  [
    ({ mills }) => mills,
    `Router: ${EYES}. Hold the work fast, grip the bit's shank as far in as its maker says, feed against its rotation, in shallow passes ${PRACTICE}.`,
  ],
  [
    (_, { slot }) => slot !== undefined,
    `Sawing slots: leave a power saw's guard on ${GUARDS}. Hold the board fast, hands out of the saw's line ${PRACTICE}.`,
  ],
  [
    (_, { sideDots }) => sideDots !== undefined,
    `Drilling the edge for side dots: ${EYES}. Hold the neck fast on its edge, ease the bit in: a thin one snaps ${PRACTICE}.`,
  ],
  [
    always,
    `Wood dust can cause cancer, burns and explodes (OSHA, "Wood Dust – Hazard Recognition"); some woods are toxic (HSE WIS30, "Toxic woods"). Collect it at the tool, wear a respirator ${PRACTICE}.`,
  ],
  [
    ({ isSolid }) => isSolid,
    `Dust of shell harms the lungs (Eur Respir J 10:780–786, 1997, lung disease in nacre workers), and that of other dots may: cut and sand wet or under extraction, wear a respirator ${PRACTICE}.`,
  ],
  [
    ({ glues }) => glues,
    `Glue under solid dots: cyanoacrylate bonds skin and eyes at once, and its vapour stings: ${EYES}, ventilate ${PRACTICE}. Epoxy sensitises the skin ${RR79}: suitable gloves.`,
  ],
  [
    ({ pours }) => pours,
    `Uncured epoxy sensitises the skin ${RR79}: suitable gloves to mix and pour, never at the press; ventilate; read its safety data sheet ${PRACTICE}.`,
  ],
  [
    ({ isPoured }) => isPoured,
    `Sand epoxy only once it has cured through; collect its dust, wear a respirator ${PRACTICE}.`,
  ],
  [
    ({ pours }) => pours,
    `No flame or torch near uncured resin, its vapour and its solvents ${PRACTICE}.`,
  ],
  [
    ({ pours }, _, volume) => pours && volume < LEAST_BATCH,
    `A batch this small is hard to measure: mix at least ${LEAST_BATCH} ml, or weigh it, and test that it cures ${PRACTICE}.`,
  ],
];

/** The cautions that a task calls for; `volume` is the epoxy that its holes take, ml, where any is poured. */
export function cautionsFor(task: Task, volume = Infinity): string[] {
  const traits = collectTraits(task.groups);
  const called: string[] = [];
  for (const [isCalledFor, text] of CAUTIONS) {
    if (isCalledFor(traits, task, volume)) called.push(text);
  }
  return called;
}
