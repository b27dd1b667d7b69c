/**
 * How much epoxy the poured holes take. Each hole is a cylinder to its rim depth, and a twist bit's cone below it.
 * Left out: what the radius takes off again before pouring (it is poured first), the meniscus, shrinkage, and the small
 * pit of a Forstner or brad point. Volumes in ml, lengths in mm.
 */

import type { Marker } from "../board/markers.js";
import type { Spec } from "../design/spec.js";
import { areaOf } from "../geometry/polygon.js";
import { leadOf } from "./bits.js";

/** What to mix, waste included, ml. */
export interface Pour {
  readonly volume: number;
  readonly resin: number;
  readonly hardener: number;
}

const MM3_PER_ML = 1000;

/** What to mix for holes of these depths; undefined where none is poured. */
export function pourOf(
  spec: Spec,
  markers: readonly Marker[],
  depths: readonly (number | undefined)[],
): Pour | undefined {
  const { pour } = spec;
  const filled = markers.flatMap((marker, i) =>
    marker.group.fill.kind === "poured" ? [holeVolume(marker, depths[i])] : [],
  );
  if (pour === undefined || filled.length === 0) return undefined;
  const total = filled.reduce((sum, volume) => sum + volume, 0) / MM3_PER_ML;
  const volume = total * (1 + pour.waste);
  const parts = pour.resin + pour.hardener;
  return {
    volume,
    resin: (volume * pour.resin) / parts,
    hardener: (volume * pour.hardener) / parts,
  };
}

/** Volume of one hole, mm³: π(D/2)² · depth, and a third of π(D/2)² · lead for a twist bit; 0 where no depth suits. */
function holeVolume({ diameter, group, outline }: Marker, depth: number | undefined): number {
  if (depth === undefined) return 0;
  if (outline) return areaOf(outline) * depth;
  const cone = group.bit.kind === "twist" ? leadOf(group.bit, diameter) / 3 : 0;
  return Math.PI * (diameter / 2) ** 2 * (depth + cone);
}
