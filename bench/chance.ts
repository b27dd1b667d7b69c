/** Chances: the hardest usual case, every tolerance normal on a compound radius, against the bare loop of a report. */
import { conformanceProbability } from "../src/chance/index.js";
import type { Design } from "../src/index.js";
import { bareReports, REPORT_NUMBERS } from "./bare.js";
import { COMPOUND, randomNecks } from "./necks.js";
import type { Rival } from "./timing.js";

const normal = (limit: number) => ({ limit, shape: "normal" }) as const;

/** Every error may pass its limit, so that no rule is out of reach. */
export const NORMAL: Design = {
  ...COMPOUND,
  tolerance: {
    stop: normal(0.1),
    point: normal(0.1),
    layout: normal(0.25),
    thickness: normal(0.1),
    sanding: normal(0.05),
    crest: normal(0.5),
    radius: normal(0.02),
  },
};

/** At a travel where one neck in five thousand fails, and at one where about half do. */
const TRAVELS = { "nearly all hold": 2.6, "half of them hold": 2.33 } as const;

/** The bare loop over as many necks, and the chance at each travel. */
export function chanceRivals(): Rival[] {
  const count = 20;
  const columns = randomNecks(count, 10);
  const out = new Float64Array(count * REPORT_NUMBERS);
  return [
    { name: "bare loop over columns", run: () => bareReports(columns, out), repeats: 2000 },
    ...Object.entries(TRAVELS).map(([what, travels]) => ({
      name: `\`conformanceProbability\`, all normal, ${what}`,
      run: () => (conformanceProbability(NORMAL, { travels }).fails >= 0 ? 1 : 0),
    })),
  ];
}
