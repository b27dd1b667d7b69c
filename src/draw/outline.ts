/** The board's outline and frets as seen from above, from what the report says of its edges. Lengths in mm. */
import type { Edge } from "../drilling/edges.js";
import type { Point } from "../geometry/polygon.js";
import type { Report } from "../report/report.js";

/** A fret, or the nut: from the bass edge to the treble edge. */
export interface Fret {
  readonly name: string;
  readonly bass: Point;
  readonly treble: Point;
}

/** The board from above. */
export interface Plan {
  /** Corners in order: along the bass edge to the body end, and back along the treble edge. */
  readonly corners: readonly Point[];
  /** The nut and the frets on the board. */
  readonly frets: readonly Fret[];
  readonly end: Fret;
  /** The greatest distance from the centre line. */
  readonly half: number;
}

/** The plan of a report's board. */
export function planOf({ edges, holes }: Report): Plan {
  // the check always reports the nut and the end
  const nut = fretAt(edges, "nut") as Fret;
  const end = fretAt(edges, "end") as Fret;
  const beside = holes.map(({ along, halfWidth }) => ({ along, offset: halfWidth }));
  const side = (name: "bass" | "treble", sign: 1 | -1) => {
    const points = [
      ...edges.filter((edge) => edge.side === undefined || edge.side === name),
      ...beside,
    ]
      .filter(({ along }) => along >= nut[name].along && along <= end[name].along)
      .map(({ along, offset }) => ({ along, offset: sign * offset }));
    return points.sort((a, b) => a.along - b.along);
  };
  const names = [...new Set(edges.map(({ station }) => station))];
  return {
    corners: [...side("bass", -1), ...side("treble", 1).reverse()],
    frets: names.flatMap((name) => (name === "end" ? [] : (fretAt(edges, name) ?? []))),
    end,
    half: Math.max(...edges.map(({ offset }) => offset)),
  };
}

/** Both ends of a fret; undefined where one lies off the board. */
function fretAt(edges: readonly Edge[], station: Edge["station"]): Fret | undefined {
  const here = edges.filter((edge) => edge.station === station);
  const bass = here.find(({ side }) => side !== "treble");
  const treble = here.find(({ side }) => side !== "bass");
  if (bass === undefined || treble === undefined) return undefined;
  return {
    name: station.replace("fret", ""),
    bass: { along: bass.along, offset: -bass.offset },
    treble: { along: treble.along, offset: treble.offset },
  };
}
