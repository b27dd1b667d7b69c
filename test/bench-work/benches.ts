/** Specifications and markers set down by hand; their boards stand in ../layout/frames.ts. Lengths in mm. */
import type { Marker } from "../../src/board/markers.js";
import type { GroupSpec, Spec } from "../../src/design/spec.js";
import type { Point, Polygon } from "../../src/geometry/polygon.js";
import { groupOf } from "../layout/frames.js";

/** Tolerances that are whole parts of a binary number, so that sums stay exact; no channel, slot, dot or pour. */
export function specOf(stated: Partial<Spec> = {}): Spec {
  return {
    name: undefined,
    scale: { kind: "straight", positions: [100] },
    length: 500,
    width: 40,
    thickness: 16,
    channel: undefined,
    radius: 25,
    crown: 1,
    groups: [],
    web: 1,
    tolerance: { stop: 0.25, layout: 0.5, thickness: 0.25, crown: 0.5, radius: 0 },
    stopStep: undefined,
    slot: undefined,
    sideDots: undefined,
    pour: undefined,
    assumed: {},
    ...stated,
  };
}

/** A dot of 6 between the nut and fret 1 where nothing else is said. */
export function dotAt(along: number, offset: number, stated: Partial<Marker> = {}): Marker {
  return { group: groupOf(), fret: 1, side: "centre", along, offset, diameter: 6, ...stated };
}

/** A pocket square to the centre line, between two places along and two across. */
export function pocketOver(
  [from, to]: readonly [number, number],
  [bass, treble]: readonly [number, number],
  stated: Partial<Marker> = {},
): Marker {
  const corner = (along: number, offset: number): Point => ({ along, offset });
  const outline: Polygon = [
    corner(from, bass),
    corner(to, bass),
    corner(to, treble),
    corner(from, treble),
  ];
  const place = dotAt((from + to) / 2, (bass + treble) / 2, { diameter: treble - bass });
  return { ...place, outline, ...stated };
}

/** The group's holes are bored with this bit. */
export function boredBy(bit: GroupSpec["bit"]): Pick<Marker, "group"> {
  return { group: groupOf({ bit }) };
}
