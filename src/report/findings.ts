/** What is wrong with a design, or wants care: each finding a code, a place, a value and its limit. */

import type { Marker } from "../board/markers.js";
import { SLOT_GAP, type Station } from "../design/design.js";
import { edgeGap, overlaps, slotGap } from "../drilling/clearances.js";
import { worstFaceAt } from "../drilling/edges.js";
import { type CheckedHole, type Examined, settingDepths } from "../drilling/examine.js";
import { belowHole } from "../drilling/side-dots.js";
import { deepestForWeb, markerLeft, type Window, webUnder } from "../drilling/windows.js";

/** Every code that a finding can bear. */
export type FindingCode =
  | "nothing-left"
  | "below-keep"
  | "breaks-through"
  | "below-web"
  | "below-surface"
  | "no-depth"
  | "several-settings"
  | "several-travels"
  | "cuts-slot"
  | "near-slot"
  | "past-edge"
  | "dots-overlap"
  | "thin-edge"
  | "no-slot-depth"
  | "slot-too-shallow"
  | "slot-too-deep"
  | "side-dot-tight"
  | "side-dot-meets-hole"
  | "side-dot-meets-slot";

/** Findings that are about one marker, and hang on its hole alone. */
export const ABOUT_MARKER: ReadonlySet<FindingCode> = new Set([
  "nothing-left",
  "below-keep",
  "breaks-through",
  "below-web",
  "below-surface",
  "no-depth",
  "cuts-slot",
  "near-slot",
  "past-edge",
] as const);

/** What a finding knows; its sentence follows from this alone. */
export interface FindingFacts {
  readonly code: FindingCode;
  readonly severity: "error" | "warning";
  readonly fret?: number;
  readonly side?: "bass" | "centre" | "treble";
  /** The place, where it is not a fret's marker. */
  readonly station?: Station;
  /** Index of the hole, where it is a hole's. */
  readonly hole?: number;
  /** What is, in mm (or a count). */
  readonly value: number;
  /** What it is held against. */
  readonly limit: number;
  /** Which rule sets the limit, for "no-depth". */
  readonly maxBy?: Window["maxBy"];
  /** The rim depths of the settings that do, for "several-settings". */
  readonly depths?: readonly number[];
}

/** All that is to be found, errors first; within a severity hole by hole, then the stop, edges, slots, side dots. */
export function findingsOf(examined: Examined): FindingFacts[] {
  const facts: FindingFacts[] = [];
  examined.holes.forEach((hole, i) => {
    const { fret, side } = hole.marker;
    for (const finding of holeFindings(examined.neck, hole)) {
      facts.push({ ...finding, fret, side, hole: i });
    }
  });
  facts.push(
    ...overlapFindings(examined),
    ...stopFindings(examined),
    ...edgeFindings(examined),
    ...slotFindings(examined),
    ...sideDotFindings(examined),
  );
  return facts.sort((a, b) => rankOf(a) - rankOf(b));
}

function holeFindings(neck: Examined["neck"], hole: CheckedHole): FindingFacts[] {
  const found: FindingFacts[] = [];
  const { min, max, maxBy } = hole.window;
  if (!(min <= max)) found.push({ ...error("no-depth", min, max), maxBy });
  addPlanned(found, neck, hole);
  addPlace(found, neck, hole.marker);
  return found;
}

/** What the planned depth does wrong. Judged by the window, so that its very ends still pass. */
function addPlanned(
  found: FindingFacts[],
  { spec }: Examined["neck"],
  { marker, bounds, window }: CheckedHole,
): void {
  const { depth, fill } = marker.group;
  if (depth === undefined) return;
  const left = markerLeft(bounds, depth, spec);
  if (!(left > 0)) found.push(error("nothing-left", left, 0));
  else if (!(depth >= window.min)) found.push(error("below-keep", left, fill.keep));
  const web = webUnder(bounds, depth);
  if (!(web > 0)) found.push(error("breaks-through", web, 0));
  else if (!(depth <= deepestForWeb(bounds.board, bounds.overChannel, spec.web))) {
    found.push(error("below-web", web, spec.web));
  }
  if (!(depth <= bounds.flush)) found.push(error("below-surface", bounds.flush - depth, 0));
}

function addPlace(found: FindingFacts[], { board }: Examined["neck"], marker: Marker): void {
  const slot = slotGap(board, marker);
  if (slot < 0) found.push(warning("cuts-slot", slot, 0));
  else if (!(slot >= SLOT_GAP)) found.push(warning("near-slot", slot, SLOT_GAP));
  const edge = edgeGap(board, marker);
  if (!(edge >= 0)) found.push(error("past-edge", edge, 0));
}

function overlapFindings({ neck }: Examined): FindingFacts[] {
  return overlaps(neck.markers).map(({ fret, hole, distance, touching }) => ({
    ...error("dots-overlap", distance, touching),
    fret,
    hole,
  }));
}

function stopFindings({ stops: { settings } }: Examined): FindingFacts[] {
  const found: FindingFacts[] = [];
  if (settings.length > 1) {
    const depths = settings.map(({ depth }) => depth);
    found.push({ ...warning("several-settings", settings.length, 1), depths });
  }
  const travels = Math.max(0, ...settings.map((setting) => setting.travels.length));
  if (travels > 1) found.push(warning("several-travels", travels, 1));
  return found;
}

function edgeFindings({ neck: { spec, board }, edges }: Examined): FindingFacts[] {
  const found: FindingFacts[] = [];
  for (const { station, side, along } of edges) {
    const thickness = worstFaceAt(board, along, spec.tolerance.thickness);
    if (thickness >= spec.web) continue;
    const fret = station === "nut" || station === "end" ? {} : { fret: Number(station.slice(4)) };
    const place = { ...fret, ...(side ? { side } : {}), station };
    found.push({ ...error("thin-edge", thickness, spec.web), ...place });
  }
  return found;
}

/** A planned saw depth is held against every fret; without a depth that suits all, the board's own limits clash. */
function slotFindings({ neck: { spec }, slots }: Examined): FindingFacts[] {
  if (slots === undefined) return [];
  // there is a plan for the slots where the design states one
  const { depth } = spec.slot as NonNullable<typeof spec.slot>;
  const found: FindingFacts[] = [];
  const { least, most, leastAt } = slots;
  if (!(least <= most)) found.push({ ...error("no-slot-depth", least, most), fret: leastAt });
  for (const slot of slots.frets) {
    const place = { fret: slot.fret };
    if (!(depth >= slot.least)) {
      found.push({ ...error("slot-too-shallow", depth, slot.least), ...place });
    }
    if (!(depth <= slot.most))
      found.push({ ...error("slot-too-deep", depth, slot.most), ...place });
  }
  return found;
}

function sideDotFindings(examined: Examined): FindingFacts[] {
  const { neck, holes, sideDots } = examined;
  const { spec, board } = neck;
  if (spec.sideDots === undefined) return [];
  const wanted = spec.sideDots.diameter + 2 * spec.sideDots.margin;
  const found: FindingFacts[] = [];
  for (const { fret, face, belowSlot } of sideDots) {
    if (!(face >= wanted)) found.push({ ...error("side-dot-tight", face, wanted), fret });
    if (!(belowSlot >= 0)) found.push({ ...error("side-dot-meets-slot", belowSlot, 0), fret });
  }
  const settings = settingDepths(examined);
  holes.forEach(({ marker }, i) => {
    const depth = marker.group.depth ?? settings[i];
    const room = depth === undefined ? Infinity : belowHole(board, spec, marker, depth);
    if (room >= 0) return;
    const { fret, side } = marker;
    found.push({ ...error("side-dot-meets-hole", room, 0), fret, side, hole: i });
  });
  return found;
}

function rankOf({ severity }: FindingFacts): number {
  return severity === "error" ? 0 : 1;
}

function error(code: FindingCode, value: number, limit: number): FindingFacts {
  return { code, severity: "error", value, limit };
}

function warning(code: FindingCode, value: number, limit: number): FindingFacts {
  return { code, severity: "warning", value, limit };
}
