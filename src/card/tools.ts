/** The tools of a job, as a builder calls them. */
import { elementAt } from "../geometry/element-at.js";
import type { Hole } from "../report/report.js";
import type { Unit } from "../text/length-text.js";

/** Bits of one kind and size, and what they drill; all pockets' mills are one. */
export interface Tool {
  /** “brad-point bit of 6.35 mm”. */
  readonly name: string;
  /** The first hole that it drills. */
  readonly hole: Hole;
  /** Indices of all that it drills. */
  readonly holes: readonly number[];
  /** It has no point that could touch first. */
  readonly isMill: boolean;
}

const KINDS = {
  forstner: "Forstner bit",
  "brad-point": "brad-point bit",
  twist: "twist bit",
  "end-mill": "end mill",
} as const;

/** The tools that drill some holes, in the order of these; what is drilled already takes none. */
export function listTools(holes: readonly Hole[], indices: readonly number[], unit: Unit): Tool[] {
  const tools = new Map<string, Tool & { readonly holes: number[] }>();
  for (const index of indices) {
    const hole = elementAt(holes, index);
    const { bit, diameter } = hole;
    if (bit === undefined) continue;
    const key = diameter === undefined ? "pocket" : JSON.stringify([bit, diameter]);
    const known = tools.get(key);
    if (known) known.holes.push(index);
    else {
      const isMill = bit.kind === "end-mill";
      tools.set(key, { name: nameTool(hole, unit), hole, holes: [index], isMill });
    }
  }
  return [...tools.values()];
}

function nameTool({ bit, diameter }: Hole, unit: Unit): string {
  const kind = KINDS[bit?.kind ?? "end-mill"];
  return diameter === undefined
    ? `${kind} for the pockets`
    : `${kind} of ${unit.bit(diameter)} ${unit.short}`;
}
