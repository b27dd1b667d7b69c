/** The usual cautions, chosen by what a design uses. One line each, with the published title it rests on. */
import type { Spec } from "../design/spec.js";

interface Caution {
  readonly applies: (uses: Uses) => boolean;
  readonly text: string;
}

/** What of a design calls for care. */
interface Uses {
  readonly drilled: boolean;
  readonly twist: boolean;
  readonly poured: boolean;
  readonly solid: boolean;
  readonly tinyBatch: boolean;
}

/** Below this a batch is hard to measure by volume, ml. Common practice, from memory, no source. */
const TINY_BATCH = 10;

const always = () => true;

const CAUTIONS: readonly Caution[] = [
  {
    applies: always,
    text: "These lines do not replace local codes or licensed practice, which come first.",
  },
  {
    applies: ({ drilled }) => drilled,
    text: "Drill press: clamp the neck, guard the bit, wear eye protection, no gloves or loose sleeves (OSHA 29 CFR 1910.213, woodworking machinery; 1910.133, eye protection).",
  },
  {
    applies: ({ twist }) => twist,
    text: "A twist bit can grab and climb as it breaks in or through: clamp the work, feed slowly, try on scrap (common practice, no source).",
  },
  {
    applies: always,
    text: 'Wood dust is a health, fire and explosion hazard: collect it at the tool and wear a respirator (OSHA, "Wood Dust – Hazard Recognition"; HSE WIS30, "Toxic woods").',
  },
  {
    applies: ({ solid }) => solid,
    text: "Dust of shell and of other dots harms the lungs: cut and sand it wet or under extraction, with a respirator (Eur Respir J 10:780–786, 1997, lung disease in nacre workers).",
  },
  {
    applies: ({ poured }) => poured,
    text: "Uncured epoxy sensitises the skin: wear suitable gloves, ventilate, keep it off the skin, and read its safety data sheet (HSE RR79, skin sensitisation by epoxy resins).",
  },
  {
    applies: ({ poured }) => poured,
    text: "Keep torches and open flame away from uncured resin, its vapour and its solvents (common practice, no source).",
  },
  {
    applies: ({ tinyBatch }) => tinyBatch,
    text: `A batch this small is hard to measure: mix at least ${TINY_BATCH} ml, or weigh it, and test that it cures (common practice, no source).`,
  },
];

/** The cautions that a design calls for; `volume` is the epoxy to mix, ml, where any is. */
export function cautionsFor(spec: Spec, volume = Infinity): string[] {
  const { groups } = spec;
  const uses: Uses = {
    drilled: groups.length > 0,
    twist: groups.some(({ bit }) => bit.kind === "twist"),
    poured: groups.some(({ fill }) => fill.kind === "poured"),
    solid: groups.some(({ fill }) => fill.kind === "solid"),
    tinyBatch: volume < TINY_BATCH,
  };
  return CAUTIONS.filter(({ applies }) => applies(uses)).map(({ text }) => text);
}
