/** What is wrong with a design, or wants care: each finding a code, a place, a value and its limit. */
import type { Board } from "./board.js";
import { edgeGap, overlaps, slotGap } from "./clearances.js";
import { SLOT_GAP, type Station } from "./design.js";
import { type Edge, worstEdgeAt } from "./edges.js";
import type { Marker } from "./markers.js";
import { sentenceOf } from "./sentences.js";
import type { Spec } from "./spec.js";
import type { StopPlan } from "./stops.js";
import { type Bounds, deepestForWeb, markerLeft, type Window, webUnder } from "./windows.js";

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
  | "thin-edge";

/** What a finding knows; its sentence follows from this alone. */
export interface FindingFacts {
  readonly code: FindingCode;
  readonly severity: "error" | "warning";
  readonly fret?: number;
  readonly side?: "bass" | "centre" | "treble";
  /** The place, where it is not a fret's marker. */
  readonly station?: Station;
  /** What is, in mm (or a count). */
  readonly value: number;
  /** What it is held against. */
  readonly limit: number;
  /** Which rule sets the limit, for "no-depth". */
  readonly maxBy?: Window["maxBy"];
  /** The rim depths of the settings that do, for "several-settings". */
  readonly depths?: readonly number[];
}

/** A finding, with its sentence for a builder. */
export interface Finding extends FindingFacts {
  readonly message: string;
}

/** A hole with all that its findings rest on. */
export interface CheckedHole {
  readonly marker: Marker;
  readonly bounds: Bounds;
  readonly window: Window;
}

/** All findings, errors first; within a severity, hole by hole, then the stop, then the edges. */
export function findingsOf(
  spec: Spec,
  board: Board,
  holes: readonly CheckedHole[],
  stops: StopPlan,
  edges: readonly Edge[],
): Finding[] {
  const facts = [
    ...holes.flatMap((hole) => [
      ...depthFindings(hole),
      ...plannedFindings(spec, hole),
      ...placeFindings(board, hole.marker),
    ]),
    ...overlapFindings(holes.map(({ marker }) => marker)),
    ...stopFindings(stops),
    ...edgeFindings(spec, board, edges),
  ];
  const errors = facts.filter(({ severity }) => severity === "error");
  const warnings = facts.filter(({ severity }) => severity === "warning");
  return [...errors, ...warnings].map(withMessage);
}

function depthFindings({ marker, window }: CheckedHole): FindingFacts[] {
  if (window.min <= window.max) return [];
  const { min: value, max: limit, maxBy } = window;
  return [{ ...placed(marker), code: "no-depth", severity: "error", value, limit, maxBy }];
}

/** What the planned depth does wrong. Judged by the window, so that its very ends still pass. */
function plannedFindings(spec: Spec, { marker, bounds, window }: CheckedHole): FindingFacts[] {
  const { depth, fill } = marker.group;
  if (depth === undefined) return [];
  const found: FindingFacts[] = [];
  const error = (code: FindingCode, value: number, limit: number) =>
    found.push({ ...placed(marker), code, severity: "error", value, limit });
  const left = markerLeft(bounds, depth, spec);
  if (!(left > 0)) error("nothing-left", left, 0);
  else if (!(depth >= window.min)) error("below-keep", left, fill.keep);
  const web = webUnder(bounds, depth);
  if (!(web > 0)) error("breaks-through", web, 0);
  else if (!(depth <= deepestForWeb(bounds, spec.web))) error("below-web", web, spec.web);
  if (!(depth <= bounds.flush)) error("below-surface", bounds.flush - depth, 0);
  return found;
}

function placeFindings(board: Board, marker: Marker): FindingFacts[] {
  const found: FindingFacts[] = [];
  const slot = slotGap(board, marker);
  if (!(slot >= SLOT_GAP)) {
    const code = slot < 0 ? "cuts-slot" : "near-slot";
    const limit = slot < 0 ? 0 : SLOT_GAP;
    found.push({ ...placed(marker), code, severity: "warning", value: slot, limit });
  }
  const edge = edgeGap(board, marker);
  if (!(edge >= 0)) {
    found.push({ ...placed(marker), code: "past-edge", severity: "error", value: edge, limit: 0 });
  }
  return found;
}

function overlapFindings(markers: readonly Marker[]): FindingFacts[] {
  return overlaps(markers).map(({ fret, distance, touching }) => ({
    code: "dots-overlap",
    severity: "error",
    fret,
    value: distance,
    limit: touching,
  }));
}

function stopFindings({ settings }: StopPlan): FindingFacts[] {
  const found: FindingFacts[] = [];
  if (settings.length > 1) {
    const depths = settings.map(({ depth }) => depth);
    const value = settings.length;
    found.push({ code: "several-settings", severity: "warning", value, limit: 1, depths });
  }
  const travels = Math.max(0, ...settings.map((setting) => setting.travels.length));
  if (travels > 1) {
    found.push({ code: "several-travels", severity: "warning", value: travels, limit: 1 });
  }
  return found;
}

function edgeFindings(spec: Spec, board: Board, edges: readonly Edge[]): FindingFacts[] {
  const found: FindingFacts[] = [];
  for (const { station, side, along } of edges) {
    const { thickness } = worstEdgeAt(board, along, spec.tolerance.thickness);
    if (thickness >= spec.web) continue;
    const place = {
      ...(station === "nut" || station === "end" ? {} : { fret: Number(station.slice(4)) }),
      ...(side ? { side } : {}),
    };
    const code = "thin-edge";
    found.push({ ...place, station, code, severity: "error", value: thickness, limit: spec.web });
  }
  return found;
}

function placed({ fret, side }: Marker) {
  return { fret, side };
}

/** Adds the sentence, made only when it is read. */
function withMessage(facts: FindingFacts): Finding {
  return {
    ...facts,
    get message() {
      return sentenceOf(facts);
    },
  };
}
