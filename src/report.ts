/** The whole check of a design, as one report. Lengths in mm. */
import { cautionsFor } from "./cautions.js";
import type { Design } from "./design.js";
import { type Edge, edgesOf } from "./edges.js";
import { type CheckedHole, type Finding, findingsOf } from "./findings.js";
import type { Side } from "./markers.js";
import { type Neck, prepare } from "./neck.js";
import { removalOn } from "./removal.js";
import { type Common, planStops, type StopSetting } from "./stops.js";
import { valueAt } from "./track.js";
import { markerLeft, type Window, webUnder, windowOf } from "./windows.js";

/** One hole, laid out and checked. */
export interface Hole {
  readonly fret: number;
  readonly side: Side;
  readonly along: number;
  readonly offset: number;
  readonly diameter: number;
  /** Finished radius at `along`; Infinity is flat. */
  readonly radius: number;
  /** What the radius removes, without tolerances: nearest the centre line, at the centre, farthest out. */
  readonly removal: { readonly inner: number; readonly centre: number; readonly outer: number };
  /** Depths of the bit's rim that keep the marker and the board; min > max where none does. */
  readonly window: Window;
  /** How far the bit's lowest part leads its rim; the travel to set is depth + lead. */
  readonly lead: number;
  /** What the planned depth leaves in the worst case: of the marker, and of wood under the bit. */
  readonly planned?: { readonly depth: number; readonly left: number; readonly web: number };
}

/** What `checkDesign` finds. */
export interface Report {
  readonly name?: string;
  /** No finding of severity "error". */
  readonly ok: boolean;
  /** Errors first. */
  readonly findings: readonly Finding[];
  /** By fret, bass before treble. */
  readonly holes: readonly Hole[];
  /** The nut, each fret, the end. */
  readonly edges: readonly Edge[];
  readonly stops: {
    /** The depths that suit every hole, and the holes that govern them; null where there are none. */
    readonly common: (Window & { readonly minHole: number; readonly maxHole: number }) | null;
    /** The fewest settings; hole numbers are indices into `holes`. */
    readonly settings: readonly StopSetting[];
  };
  /** Every default that was used, by its path in the design. */
  readonly assumed: Readonly<Record<string, number>>;
  readonly cautions: readonly string[];
}

/**
 * Checks a neck design: what the radius removes at each marker and edge, each hole's depth window, the
 * fewest depth-stop settings, and what fails and why.
 *
 * All bounds hold in the worst case of the stated tolerances. They are never on the wrong side of the true
 * extreme over a hole's disc, and within 0.01 mm of it on ordinary boards.
 *
 * @param design the neck, lengths in mm, angles in degrees; it is read once and not changed
 * @returns the report; what is wrong with the work is in its `findings`, as data
 * @throws DesignError where the design cannot be read; `issues` lists every problem
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [
 *     { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
 *     { frets: [12], diameter: 6.35, arrangement: "double" },
 *   ],
 * });
 * report.ok // true
 * report.stops.settings.length // 1
 */
export function checkDesign(design: Design): Report {
  return reportOn(prepare(design));
}

/** The report on a design made ready. */
export function reportOn(neck: Neck): Report {
  const { spec, board } = neck;
  const holes = neck.markers.map((marker, i): CheckedHole => {
    const bounds = neck.bounds[i] as CheckedHole["bounds"];
    return { marker, bounds, window: windowOf(bounds, marker.group.fill.keep, spec) };
  });
  const windows = holes.map(({ window, bounds }) => ({ ...window, lead: bounds.lead }));
  const plan = planStops(windows, spec.stopStep);
  const edges = edgesOf(board, spec.sideDots !== undefined);
  const findings = findingsOf(spec, board, holes, plan, edges);
  return {
    ...(spec.name === undefined ? {} : { name: spec.name }),
    ok: findings.every(({ severity }) => severity !== "error"),
    findings,
    holes: holes.map((hole) => holeOf(neck, hole)),
    edges,
    stops: { common: commonOf(plan.common, holes), settings: plan.settings },
    assumed: spec.assumed,
    cautions: cautionsFor(spec),
  };
}

function holeOf({ spec, board }: Neck, { marker, bounds, window }: CheckedHole): Hole {
  const { fret, side, along, offset, diameter } = marker;
  const { depth } = marker.group;
  const removal = (x: number) => removalOn(board.nominal, along, x);
  const aside = Math.abs(offset);
  return {
    fret,
    side,
    along,
    offset,
    diameter,
    radius: valueAt(board.nominal.radius, along),
    removal: {
      inner: removal(Math.max(0, aside - diameter / 2)),
      centre: removal(aside),
      outer: removal(aside + diameter / 2),
    },
    window,
    lead: bounds.lead,
    ...(depth === undefined
      ? {}
      : {
          planned: {
            depth,
            left: markerLeft(bounds, depth, spec),
            web: webUnder(bounds, depth),
          },
        }),
  };
}

function commonOf(common: Common | null, holes: readonly CheckedHole[]): Report["stops"]["common"] {
  if (common === null) return null;
  const { min, max, minHole, maxHole } = common;
  const maxBy = holes[maxHole]?.window.maxBy ?? "web";
  return { min, max, minBy: "keep", maxBy, minHole, maxHole };
}
