/** Random designs with random true values, all invented; many states of each design. */
import fc from "fast-check";
import { seeded } from "../../bench/random.js";
import { DEFAULTS, type Design, type Report } from "../../src/index.js";
import { dots, fannedNeck, linesOf, pockets } from "../fanned/fan.js";
import { anyNeck, type Drawn, spelledOut, tried } from "../properties/designs.js";
import { linesOf as piecesOf } from "../properties/oracle.js";
import { type Bench, type Drilled, type Errors, type Miss, missesOf } from "./truth.js";

const fanned: fc.Arbitrary<Drawn> = fannedNeck({
  bentEdges: true,
  markers: (frets) => fc.oneof(dots(frets), pockets(frets)),
}).map((design) => ({ design, layout: linesOf(design).layout }));

/** Three in four straight, ordinary or odd; the rest fanned, with pockets. */
const necks = fc.oneof({ weight: 3, arbitrary: anyNeck }, { weight: 1, arbitrary: fanned });

/** What a run has tried. */
export interface Tally {
  cases: number;
  /** Holes at whose every depth something would be lost; there is nothing to hold. */
  closed: number;
  refused: number;
  readonly misses: { readonly design: Design; readonly drilled: Drilled; readonly miss: Miss }[];
}

/** Tries so many states, of as many designs as that takes; the same for the same seed. */
export function tryStates(count: number, seed: number, states = 8): Tally {
  const tally: Tally = { cases: 0, closed: 0, refused: 0, misses: [] };
  const uniform = seeded(seed);
  const random = () => uniform(0, 1);
  for (let batch = 0; tally.cases < count; batch++) {
    for (const drawn of fc.sample(necks, { numRuns: 100, seed: seed + batch })) {
      tryDesign(drawn, tally, random, states);
      if (tally.cases >= count) break;
    }
  }
  return tally;
}

function tryDesign(
  { design: drawn, layout }: Drawn,
  tally: Tally,
  random: () => number,
  states: number,
): void {
  const report = tried(drawn);
  if (report === undefined) {
    tally.refused++;
    return;
  }
  const design = spelledOut(drawn);
  const bench = benchOf(design, layout, report);
  report.holes.forEach((hole, i) => {
    if (!(hole.window.min <= hole.window.max)) tally.closed++;
    else {
      for (let state = 0; state < states; state++) {
        const drilled = drilledOf(design, report, i, random);
        tally.cases++;
        for (const miss of missesOf(bench, drilled)) tally.misses.push({ design, drilled, miss });
      }
    }
  });
}

function benchOf(design: Design, layout: Drawn["layout"], report: Report): Bench {
  const { board, radius, crown = 0, web = 0 } = design;
  const [nut] = report.edges;
  return {
    from: Math.min(0, nut?.along ?? 0, report.edges[1]?.along ?? 0),
    to: board.length,
    radius: piecesOf(radius, layout),
    crown: piecesOf(crown, layout),
    thickness: piecesOf(board.thickness, layout),
    web,
    channel: report.board.channel,
  };
}

function drilledOf(design: Design, report: Report, i: number, random: () => number): Drilled {
  const hole = report.holes[i];
  if (hole === undefined) throw new Error("no such hole");
  const { min, max } = hole.window;
  return {
    hole,
    fill: hole.fill,
    bit: hole.bit,
    depth: Math.min(max, Math.max(min, min + (max - min) * pushed(random))),
    errors: errorsWithin(design, random),
  };
}

function errorsWithin({ tolerance = {} }: Design, random: () => number): Errors {
  const either = () => 2 * pushed(random) - 1;
  const by = (stated: number | undefined, usual: { readonly value: number }) =>
    (stated ?? usual.value) * either();
  const angle = 2 * Math.PI * random();
  const aside = (tolerance.layout ?? DEFAULTS.layoutTolerance.value) * Math.sqrt(pushed(random));
  return {
    stop: by(tolerance.stop, DEFAULTS.stopTolerance),
    // the library's disc holds the true one to rounding
    along: aside * Math.sin(angle),
    offset: aside * Math.cos(angle),
    thickness: by(tolerance.thickness, DEFAULTS.thicknessTolerance),
    crown: by(tolerance.crown, DEFAULTS.crownTolerance),
    radius: 1 + by(tolerance.radius, DEFAULTS.radiusTolerance),
  };
}

/** From 0 to 1, each end as likely as all between. */
function pushed(random: () => number): number {
  const at = random();
  if (at < 1 / 3) return 0;
  return at < 2 / 3 ? 1 : random();
}
