/**
 * How much epoxy the poured holes take. Each hole is a cylinder to its floor, and a twist bit's cone below it. Left out:
 * what the radius takes off again (it is poured first), the meniscus, shrinkage, and the small pit of a Forstner or
 * brad point. Volumes in ml, lengths in mm.
 */
import type { Marker } from "../board/markers.js";
import type { Spec } from "../design/spec.js";
import { areaOf } from "../geometry/polygon.js";
import { measureLead } from "./bits.js";

/** What to mix, waste included. */
export interface Pour {
  /** All of it, ml. */
  readonly volume: number;
  /** Resin in it, ml. */
  readonly resin: number;
  /** Hardener in it, ml. */
  readonly hardener: number;
}

const MM3_PER_ML = 1000;

/** What to mix for holes of these depths; undefined where none is poured. */
export function planPour(
  { pour }: Pick<Spec, "pour">,
  markers: readonly Marker[],
  depths: readonly (number | undefined)[],
): Pour | undefined {
  if (pour === undefined || !markers.some(isPoured)) return undefined;
  let filled = 0;
  markers.forEach((marker, i) => {
    if (isPoured(marker)) filled += measureVolume(marker, depths[i]);
  });
  const volume = (filled / MM3_PER_ML) * (1 + pour.waste);
  const parts = pour.resin + pour.hardener;
  return {
    volume,
    resin: (volume * pour.resin) / parts,
    hardener: (volume * pour.hardener) / parts,
  };
}

function isPoured({ group }: Marker): boolean {
  return group.fill.kind === "poured" && !group.drilled;
}

/** Volume of one hole, mm³: π(D/2)² · depth, and a third of π(D/2)² · lead for a twist bit; 0 where no depth suits. */
function measureVolume({ width, group, outline }: Marker, depth: number | undefined): number {
  if (depth === undefined) return 0;
  if (outline) return areaOf(outline) * depth;
  const cone = group.bit.kind === "twist" ? measureLead(group.bit, width) / 3 : 0;
  return Math.PI * (width / 2) ** 2 * (depth + cone);
}
