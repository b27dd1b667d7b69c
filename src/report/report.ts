/** The whole check of a design, as one report. Lengths in mm. */

import type { Marker, Side } from "../board/markers.js";
import type { Channel, Design } from "../design/design.js";
import type { BitSpec, FillSpec } from "../design/spec.js";
import type { Edge } from "../drilling/edges.js";
import { type CheckedHole, type Examined, examine, settingDepths } from "../drilling/examine.js";
import { type Neck, prepare } from "../drilling/neck.js";
import { type Pour, pourOf } from "../drilling/pour.js";
import type { SlotPlan } from "../drilling/slots.js";
import type { Common, StopSetting } from "../drilling/stops.js";
import { markerLeft, type Window, webUnder } from "../drilling/windows.js";
import { elementAt } from "../geometry/element-at.js";
import type { Polygon } from "../geometry/polygon.js";
import { removalOn } from "../geometry/removal.js";
import { slopeAt, valueAt } from "../geometry/track.js";
import { cautionsFor } from "./cautions.js";
import { type FindingFacts, findingsOf } from "./findings.js";
import { type Remedy, remediesFor } from "./remedies.js";
import { sentenceOf } from "./sentences.js";

/** What is wrong with a design, or wants care, with its sentence for a builder. */
export interface Finding extends FindingFacts {
  readonly message: string;
  /**
   * Single changes that cure it, each alone; empty where there is none. They are sought when this is read, some
   * milliseconds each, and a copy or a JSON text of the report leaves them out.
   */
  readonly remedies?: readonly Remedy[];
}

/** One hole, laid out and checked. */
export interface Hole {
  readonly fret: number;
  readonly side: Side;
  readonly along: number;
  readonly offset: number;
  /** Of a dot; of a pocket its greatest width across the board. */
  readonly diameter: number;
  /** A pocket's corners in order; a dot has none. */
  readonly outline?: Polygon;
  /** Finished radius at `along`, Infinity is flat; how fast it changes there; and the crown there. */
  readonly radius: number;
  readonly slope: number;
  readonly crown: number;
  /** The blank there: its thickness, and half its width. */
  readonly blank: number;
  readonly halfWidth: number;
  readonly fill: FillSpec;
  readonly bit: BitSpec;
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
  /** Saw depths of the fret slots, where the design states a slot. */
  readonly slots?: SlotPlan;
  /** What to mix, ml, waste included, where a fill is poured. */
  readonly pour?: Pour;
  /** What of the board the windows rest on. */
  readonly board: {
    readonly length: number;
    readonly web: number;
    readonly channel?: Required<Channel>;
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
  const { spec } = neck;
  const examined = examine(neck);
  const { holes, edges, stops, slots } = examined;
  const findings = findingsOf(examined);
  const depths = settingDepths(examined).map(
    (depth, i) => depth ?? elementAt(holes, i).marker.group.depth,
  );
  const pour = pourOf(spec, neck.markers, depths);
  const report: Writable<Report> = {
    ok: findings.every(({ severity }) => severity !== "error"),
    findings: findings.map((facts) => toldOf(facts, examined)),
    holes: holes.map((hole) => holeOf(neck, hole)),
    edges,
    stops: { common: commonOf(stops.common, holes), settings: stops.settings },
    board: boardOf(neck),
    assumed: spec.assumed,
    cautions: cautionsFor(spec, pour?.volume),
  };
  if (spec.name !== undefined) report.name = spec.name;
  if (slots) report.slots = slots;
  if (pour) report.pour = pour;
  return report;
}

/** A report or a hole while it is being put together. Spreading its parts instead is many times slower. */
type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

function boardOf({ spec: { length, web, channel } }: Neck): Report["board"] {
  return channel === undefined ? { length, web } : { length, web, channel };
}

/** A finding with its sentence and its remedies, both made only when they are read. */
export function toldOf(facts: FindingFacts, examined: Examined): Finding {
  let remedies: readonly Remedy[] | undefined;
  const finding = {
    ...facts,
    get message() {
      return sentenceOf(facts);
    },
  };
  // not enumerable: a copy or a JSON text of the report must not set off the search for thresholds
  return Object.defineProperty(finding, "remedies", {
    get: () => {
      remedies ??= remediesFor(facts, examined);
      return remedies;
    },
  });
}

function holeOf(neck: Neck, { marker, bounds, window }: CheckedHole): Hole {
  const { spec, board } = neck;
  const { fret, side, along, offset, diameter, outline } = marker;
  const { depth, fill, bit } = marker.group;
  const hole: Writable<Hole> = {
    fret,
    side,
    along,
    offset,
    diameter,
    radius: valueAt(board.nominal.radius, along),
    slope: slopeAt(board.nominal.radius, along),
    crown: valueAt(board.nominal.crown, along),
    blank: valueAt(board.thickness, along),
    halfWidth: valueAt(board.width, along) / 2,
    fill,
    bit,
    removal: removalsOf(board, marker),
    window,
    lead: bounds.lead,
  };
  if (outline) hole.outline = outline;
  if (depth !== undefined) {
    const left = markerLeft(bounds, depth, spec);
    hole.planned = { depth, left, web: webUnder(bounds, depth) };
  }
  return hole;
}

/** Nearest the centre line, at the centre, and farthest out; of a pocket, at its corners. */
function removalsOf({ nominal }: Neck["board"], marker: Marker): Hole["removal"] {
  const { along, offset, diameter, outline } = marker;
  const aside = Math.abs(offset);
  const centre = removalOn(nominal, along, aside);
  if (outline) {
    const corners = outline.map((corner) => removalOn(nominal, corner.along, corner.offset));
    const inner = removalOn(nominal, along, Math.max(0, aside - diameter / 2));
    return { inner, centre, outer: Math.max(...corners) };
  }
  return {
    inner: removalOn(nominal, along, Math.max(0, aside - diameter / 2)),
    centre,
    outer: removalOn(nominal, along, aside + diameter / 2),
  };
}

function commonOf(common: Common | null, holes: readonly CheckedHole[]): Report["stops"]["common"] {
  if (common === null) return null;
  const { min, max, minHole, maxHole } = common;
  const maxBy = elementAt(holes, maxHole).window.maxBy;
  return { min, max, minBy: "keep", maxBy, minHole, maxHole };
}
