/** What is wrong with the sanding, and the sentences that say so. Lengths in mm. */
import { MILLIMETRES, type Unit } from "../text/length-text.js";
import { listNames } from "../text/plain-words.js";
import type { Across, MarkerLeft, ReadSanding } from "./sanding-progress.js";

/** What is wrong with the sanding, without its sentence. */
export interface SandingFacts {
  /** The sanding is past the finished surface, the marker is below its keep, or it may be gone. */
  readonly code: "past-surface" | "below-keep" | "nothing-left";
  /** An error costs a marker. */
  readonly severity: "error" | "warning";
  /** How far past, or the least that is left, mm. */
  readonly value: number;
  /** What it is held against, mm. */
  readonly limit: number;
  /** Index of the reading, where it is about one. */
  readonly reading?: number;
  /** The reading's distance from the nut, mm. */
  readonly along?: number;
  /** Where across the board. */
  readonly place?: keyof Across;
  /** The hole's path, where it is about one. */
  readonly path?: string;
  /** The hole's name, as on the card. */
  readonly name?: string;
}

/** What is wrong with the sanding. */
export interface SandingFinding extends SandingFacts {
  /** One plain sentence, lengths in mm. */
  readonly message: string;
}

/** Farther past than this is told, mm: nearer no one measures. */
const PAST = 0.01;

/** What is wrong, errors first, then by how far past the limit. `keeps` are those of the markers. */
export function findSandingFaults(
  read: readonly ReadSanding[],
  left: readonly MarkerLeft[],
  keeps: readonly number[],
): SandingFinding[] {
  const lost = left.flatMap((marker, i) => findLoss(marker, keeps[i] as number));
  const past = read.flatMap(pastAt);
  const beyond = ({ value, limit }: SandingFacts) => Math.abs(value - limit);
  return [lost, past].flatMap((facts) =>
    facts
      .sort((a, b) => beyond(b) - beyond(a))
      .map((each) => ({ ...each, message: tellSanding(each) })),
  );
}

function findLoss({ path, name, markerLeft: { now } }: MarkerLeft, keep: number): SandingFacts[] {
  if (now >= keep) return [];
  const [code, limit] = now > 0 ? (["below-keep", keep] as const) : (["nothing-left", 0] as const);
  return [{ code, severity: "error", value: now, limit, path, name }];
}

function pastAt({ toGo, along }: ReadSanding, reading: number): SandingFacts[] {
  return (["centre", "bass", "treble"] as const).flatMap((place): SandingFacts[] => {
    const value = -(toGo[place] ?? 0);
    if (!(value > PAST)) return [];
    const severity = "warning";
    return [{ code: "past-surface", severity, value, limit: PAST, reading, along, place }];
  });
}

/** The finding's sentence. */
export function tellSanding(finding: SandingFacts, unit: Unit = MILLIMETRES): string {
  const { code, value, limit, along = 0, place, name = "" } = finding;
  if (code === "past-surface") {
    const where = place === "centre" ? "on the centre line" : `at the ${place} edge`;
    return `The sanding is ${unit.miss(value)} past the finished surface ${where}, ${unit.full(along)} from the nut.`;
  }
  const marker = `the marker at ${listNames([name])}`;
  if (code === "nothing-left") {
    return `T${marker.slice(1)} may be sanded away: in the worst case the sanding is ${unit.miss(value)} below its floor.`;
  }
  const [told, wanted] = unit.beside(value, limit);
  return `As little as ${told} of ${marker} may be left; keep ${wanted}.`;
}
