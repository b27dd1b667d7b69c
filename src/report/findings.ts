/** What is wrong with a design, or wants care: each finding a code, a place, a value and its limit. */
import type { Side } from "../board/markers.js";
import type { Station } from "../design/design.js";
import type { Spec } from "../design/spec.js";
import { edgeGap, findOverlaps, slotGap } from "../drilling/clearances.js";
import {
  buildEdges,
  type Edge,
  isOnBoard,
  type Reach,
  shortestReach,
  worstFaceAt,
} from "../drilling/edges.js";
import type { CheckedHole } from "../drilling/holes.js";
import { type NeckPlan, planNeck } from "../drilling/plan.js";
import { belowHole } from "../drilling/side-dots.js";
import { planSlots, type SlotDepth, type SlotPlan, sawDepths } from "../drilling/slots.js";
import { missStep } from "../drilling/stops.js";
import { type DepthWindow, markerLeft, woodLeft } from "../drilling/windows.js";
import { type Neck, type Work, workOut } from "../drilling/work.js";
import { elementAt } from "../geometry/element-at.js";
import { findUnlikely } from "./unlikely.js";
import { findUnseen } from "./unseen.js";

/** Every code that a finding can bear, with what it means. */
export const FINDING_CODES = {
  "nothing-left": "The marker may be sanded away at the planned depth.",
  "below-keep": "Less of the marker may remain than is to be kept, at the planned depth.",
  "breaks-through": "The bit may come through the board at the planned depth.",
  "below-web": "Less wood may remain under the bit than the web, at the planned depth.",
  "below-surface": "A solid dot's top may end below the finished surface at the planned depth.",
  "no-depth": "No depth keeps both the marker and the board.",
  "several-settings": "One tool needs more than one setting of its stop.",
  "several-travels": "One travel does not serve all tools; each takes its own.",
  "cuts-slot": "A hole cuts into a fret slot or the nut.",
  "near-slot": "A hole lies close to a fret slot or the nut.",
  "past-edge": "A hole passes the board's edge or its end.",
  "dots-overlap": "Two holes overlap.",
  "thin-edge": "The board's edge may be left thinner than the web.",
  "no-slot-depth": "No saw depth suits all slots.",
  "slot-too-shallow": "A slot is too shallow for its fret's tang after the radius.",
  "slot-too-deep": "A slot leaves less wood below it than its web.",
  "side-dot-tight": "The edge's face may be too low for the side dot and its margins.",
  "side-dot-meets-hole": "A side dot's hole may meet a marker's hole.",
  "side-dot-meets-slot": "A side dot's hole may meet a fret slot.",
  "radius-not-reached": "The sanding is too little to turn the existing radius into the new one.",
  "fret-past-end": "A fret lies past the end of the board.",
  "no-step": "No step of the stop lies within the travels that suit.",
  "near-channel": "A hole leaves little over the rod channel beyond its web: epoxy may leak in.",
  "unlikely-value": "A number is so unlikely that it may be a slip, inches for mm perhaps.",
  "assumed-point": "The point's length is assumed, and decides what to set.",
  "assumed-zero": "How the stop is zeroed is assumed, and decides what to set.",
  "assumed-foot": "What the stop bears on is assumed, and decides what to set.",
} as const;

/** What a finding is about. */
export type FindingCode = keyof typeof FINDING_CODES;

/** What a finding knows; its sentence follows from this alone. */
export interface FindingFacts {
  /** What it is about. */
  readonly code: FindingCode;
  /** An error must be cured before the work; a warning wants care. */
  readonly severity: "error" | "warning";
  /** What is, in mm, or a count. */
  readonly value: number;
  /** What it is held against, in the same unit. */
  readonly limit: number;
  /** Index of the hole in the report, where it is a hole's. */
  readonly hole?: number;
  /** Index of the other hole, where two are in each other's way. */
  readonly other?: number;
  /** The fret it is at. */
  readonly fret?: number;
  /** The side it is on. */
  readonly side?: Side;
  /** The place along the edges. */
  readonly station?: Station;
  /** The field of the design at fault. */
  readonly path?: string;
  /** What would suit: a range, or several travels. */
  readonly suits?: readonly number[];
  /** Which rule sets the limit of a window that is empty. */
  readonly maxBy?: DepthWindow["maxBy"];
}

/** A dot nearer than this to a fret slot is warned of, mm. Common practice, from memory, no source. */
export const SLOT_GAP = 0.5;
/** Less than this beyond the web over the rod channel is warned of, mm. Common practice, from memory, no source. */
export const CHANNEL_GAP = 0.3;

/** All that is to be found: errors first, then by how far beyond the limit. */
export function findAll(work: Work): FindingFacts[] {
  const { spec, holes } = work;
  const found: FindingFacts[] = [];
  judgeHoles(work, found);
  judgeChannel(work, found);
  judgeOverlaps(work, found);
  judgeStops(holes, work.plan, found);
  judgeReach(work.reach, found);
  judgeEdges(work, work.edges, found);
  judgeEnd(work, found);
  judgeSlots(spec, work.sawDepths, work.slots, found);
  judgeSideDots(work, found);
  findUnlikely(spec, found);
  findUnseen(work, found);
  return found.sort((a, b) => rankSeverity(a) - rankSeverity(b) || measureMiss(b) - measureMiss(a));
}

/** What is to be found of a code, and of those that are judged with it: no more is worked out than that takes. */
export function findByCode(code: FindingCode, neck: Neck): FindingFacts[] {
  const { spec, board, holes } = neck;
  const found: FindingFacts[] = [];
  if (ABOUT_HOLE_ALONE.has(code)) {
    judgeHoles(neck, found);
    return found;
  }
  switch (code) {
    case "dots-overlap":
      judgeOverlaps(neck, found);
      return found;
    case "several-settings":
    case "several-travels":
    case "no-step":
      judgeStops(holes, planNeck(holes, board), found);
      return found;
    case "radius-not-reached":
      judgeReach(shortestReach(board), found);
      return found;
    case "thin-edge":
      judgeEdges(neck, buildEdges(board, false), found);
      return found;
    case "fret-past-end":
      judgeEnd(neck, found);
      return found;
    case "no-slot-depth":
    case "slot-too-shallow":
    case "slot-too-deep": {
      const depths = sawDepths(board, spec);
      judgeSlots(spec, depths, planSlots(depths), found);
      return found;
    }
    default:
      return findAll(workOut(neck));
  }
}

/** Findings that hang on one hole, and on nothing else of the neck but its board. */
export const ABOUT_HOLE_ALONE: ReadonlySet<FindingCode> = new Set([
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

/** By how much a limit is missed. */
export function measureMiss({ value, limit }: Pick<FindingFacts, "value" | "limit">): number {
  return Math.abs(value - limit);
}

function rankSeverity({ severity }: FindingFacts): number {
  return severity === "error" ? 0 : 1;
}

function judgeHoles(neck: Neck, found: FindingFacts[]): void {
  const { holes } = neck;
  for (let hole = 0; hole < holes.length; hole++) {
    const checked = holes[hole] as CheckedHole;
    const { fret, side } = checked.marker;
    const add = (facts: FindingFacts) => found.push({ ...facts, hole, fret, side });
    judgeWindow(checked, add);
    judgePlanned(neck, checked, add);
    judgePlace(neck, checked, add);
  }
}

/** Takes what is found. */
type Add = (facts: FindingFacts) => void;

function judgeWindow({ window, marker }: CheckedHole, add: Add): void {
  const { min, max, maxBy } = window;
  if (min <= max || marker.group.drilled) return;
  add({ ...error("no-depth", min, max), maxBy });
}

/** What the planned depth does wrong. Judged by the window, so that its very ends still pass. */
function judgePlanned(
  { spec }: Neck,
  { marker, bounds, window, planned }: CheckedHole,
  add: Add,
): void {
  if (planned === undefined) return;
  const { fill, drilled } = marker.group;
  const { min, max } = window;
  const suits = min <= max ? { suits: [min, max] } : {};
  const fail = (code: FindingCode, value: number, limit: number) => {
    add({ ...error(code, value, limit), ...suits });
  };
  const left = markerLeft(bounds, planned);
  if (!(left > 0)) fail("nothing-left", left, 0);
  else if (!(planned >= min)) fail("below-keep", left, fill.keep);
  const web = woodLeft(bounds, planned);
  const least = drilled ? 0 : spec.web;
  if (!(web > 0)) fail("breaks-through", web, 0);
  else if (!(planned <= Math.min(bounds.wood, bounds.overChannel) - least)) {
    fail("below-web", web, least);
  }
  if (!(planned <= bounds.flush)) fail("below-surface", bounds.flush - planned, 0);
}

function judgePlace({ board }: Neck, { marker }: CheckedHole, add: Add): void {
  const slot = slotGap(board, marker);
  if (slot < 0) add(warning("cuts-slot", slot, 0));
  else if (!(slot >= SLOT_GAP)) add(warning("near-slot", slot, SLOT_GAP));
  const edge = edgeGap(board, marker);
  if (!(edge >= 0)) add(error("past-edge", edge, 0));
}

/** A depth that leaves little over the rod channel beyond the web. */
function judgeChannel({ holes, recommended, spec }: Work, found: FindingFacts[]): void {
  if (spec.channel === undefined) return;
  holes.forEach(({ bounds, planned, marker }, hole) => {
    const depth = planned ?? recommended[hole];
    if (depth === undefined) return;
    const beyond = bounds.overChannel - depth - spec.web;
    if (!(beyond >= 0 && beyond < CHANNEL_GAP)) return;
    const { fret, side } = marker;
    found.push({ ...warning("near-channel", beyond, CHANNEL_GAP), hole, fret, side });
  });
}

function judgeOverlaps({ holes }: Neck, found: FindingFacts[]): void {
  for (const { hole, other, gap } of findOverlaps(holes.map(({ marker }) => marker))) {
    const { fret, side } = elementAt(holes, hole).marker;
    found.push({ ...error("dots-overlap", gap, 0), hole, other, fret, side });
  }
}

function judgeStops(
  holes: readonly CheckedHole[],
  { settings, stops }: NeckPlan,
  found: FindingFacts[],
): void {
  if (settings.length > stops) {
    const tools = new Set(settings.map(({ bit, diameter }) => JSON.stringify([bit, diameter])));
    const [code, limit] =
      settings.length > tools.size
        ? (["several-settings", Math.max(tools.size, stops)] as const)
        : (["several-travels", stops] as const);
    const suits = settings.map(({ travel }) => travel);
    found.push({ ...warning(code, settings.length, limit), suits });
  }
  for (const { min, max, holes: served } of settings) {
    const { step } = elementAt(holes, elementAt(served, 0)).marker.group.stop;
    const miss = step === undefined ? 0 : missStep(min, max, step);
    if (miss > 0) found.push({ ...warning("no-step", miss, 0), suits: [min, max] });
  }
}

function judgeReach(reach: Reach | undefined, found: FindingFacts[]): void {
  if (reach === undefined) return;
  found.push({ ...error("radius-not-reached", reach.sanding, reach.needed), path: "sanding" });
}

function judgeEdges({ spec, board }: Neck, edges: readonly Edge[], found: FindingFacts[]): void {
  for (const { station, side, along } of edges) {
    const thickness = worstFaceAt(board, along, spec.tolerance.thickness.limit);
    if (thickness >= spec.web) continue;
    const fret = station === "nut" || station === "end" ? {} : { fret: Number(station.slice(4)) };
    const facts = error("thin-edge", thickness, spec.web);
    found.push({ ...facts, ...fret, ...(side ? { side } : {}), station });
  }
}

function judgeEnd({ board }: Neck, found: FindingFacts[]): void {
  const fret = board.slots.findIndex((line) => !isOnBoard(board, line));
  if (fret < 1) return;
  const { bass, treble } = elementAt(board.slots, fret);
  const facts = warning("fret-past-end", Math.max(bass, treble), board.length);
  found.push({ ...facts, fret, path: "board.length" });
}

/** A planned saw depth is held against every fret; without a depth that suits all, the board's own limits clash. */
function judgeSlots(
  { slot }: Spec,
  depths: readonly SlotDepth[],
  slots: SlotPlan | undefined,
  found: FindingFacts[],
): void {
  if (slots === undefined || slot === undefined) return;
  const { depth } = slot;
  const { min, max, minAt } = slots;
  if (!(min <= max)) found.push({ ...error("no-slot-depth", min, max), fret: minAt });
  if (depth === undefined) return;
  for (const { fret, ...saw } of depths) {
    const suits = saw.min <= saw.max ? { suits: [saw.min, saw.max] } : {};
    if (!(depth >= saw.min)) {
      found.push({ ...error("slot-too-shallow", depth, saw.min), fret, ...suits });
    }
    if (!(depth <= saw.max)) {
      found.push({ ...error("slot-too-deep", depth, saw.max), fret, ...suits });
    }
  }
}

function judgeSideDots(work: Work, found: FindingFacts[]): void {
  const { spec, board, holes, sideDots } = work;
  if (spec.sideDots === undefined) return;
  const wanted = spec.sideDots.diameter + 2 * spec.sideDots.margin;
  for (const { fret, face, belowSlot } of sideDots) {
    if (!(face >= wanted)) found.push({ ...error("side-dot-tight", face, wanted), fret });
    if (!(belowSlot >= 0)) found.push({ ...error("side-dot-meets-slot", belowSlot, 0), fret });
  }
  holes.forEach(({ marker, bounds, planned }, i) => {
    const depth = planned ?? work.recommended[i];
    const room = depth === undefined ? Infinity : belowHole(board, spec, marker, bounds, depth);
    if (room >= 0) return;
    const { fret, side } = marker;
    found.push({ ...error("side-dot-meets-hole", room, 0), fret, side, hole: i });
  });
}

function error(code: FindingCode, value: number, limit: number): FindingFacts {
  // −0 is no number to show
  return { code, severity: "error", value: value + 0, limit: limit + 0 };
}

/** A finding that wants care. */
export function warning(code: FindingCode, value: number, limit: number): FindingFacts {
  return { code, severity: "warning", value: value + 0, limit: limit + 0 };
}
