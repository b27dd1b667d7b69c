/** What a picture of the sanding shows: at each reading what is off and what the finished surface asks for. Lengths in mm. */
import type { Design } from "../design/design.js";
import { finishedAt, topAt } from "../drilling/edges.js";
import { readNeck } from "../drilling/work.js";
import { valueAt } from "../geometry/track.js";
import {
  type Across,
  type ReadSanding,
  type SandingProgress,
  sandingProgress,
} from "../measured/sanding-progress.js";
import type { SandingReading } from "../measured/sanding-readings.js";
import { stationName } from "../text/plain-words.js";

/** Where across the board, from the bass edge on. */
export const PLACES = ["bass", "centre", "treble"] as const;

/** One place of a reading. */
export interface Sanded {
  /** What is off, below the top as it was. */
  readonly off: number;
  /** What the finished surface asks for in all. */
  readonly whole: number;
  readonly toGo: number;
  /** It is past the finished surface by more than anyone measures. */
  readonly past: boolean;
}

/** A reading to draw; a place that was not read is absent. */
export interface DrawnReading {
  readonly along: number;
  /** The station that it was read at, else undefined. */
  readonly station: string | undefined;
  readonly places: { readonly [place in keyof Across]?: Sanded };
}

/** A marker to draw. */
export interface DrawnMarker {
  readonly name: string;
  readonly now: number;
  readonly finished: number;
  readonly keep: number;
}

/** The progress, its readings from the nut on, and its markers. */
export interface DrawnSanding {
  readonly progress: SandingProgress;
  readonly readings: readonly DrawnReading[];
  readonly markers: readonly DrawnMarker[];
}

/** How far the sanding has come; throws where the design or the readings cannot be read. */
export function readSanding(design: Design, readings: readonly SandingReading[]): DrawnSanding {
  const progress = sandingProgress(design, readings);
  const { board, holes } = readNeck(design);
  const wholeAt = (along: number, offset: number) =>
    finishedAt(board.nominal, along, offset) - topAt(board.nominal, along, offset);
  const drawn = progress.readings.map((read, i): DrawnReading => {
    const { along } = readings[i] ?? {};
    const half = valueAt(board.width, read.along) / 2;
    return {
      along: read.along,
      station: typeof along === "string" ? stationName(along) : undefined,
      places: listPlaces(progress, read, i, (place) =>
        wholeAt(read.along, place === "centre" ? 0 : half),
      ),
    };
  });
  const keeps = new Map(holes.map(({ marker }) => [marker.path, marker.group.fill.keep]));
  return {
    progress,
    readings: drawn.sort((a, b) => a.along - b.along),
    markers: progress.holes.map(({ path, name, markerLeft }) => {
      return { name, ...markerLeft, keep: keeps.get(path) ?? 0 };
    }),
  };
}

function listPlaces(
  { findings }: SandingProgress,
  { toGo }: ReadSanding,
  reading: number,
  wholeAt: (place: keyof Across) => number,
): DrawnReading["places"] {
  const read = PLACES.flatMap((place) => {
    const left = toGo[place];
    if (left === undefined) return [];
    const whole = wholeAt(place);
    const past = findings.some((found) => found.reading === reading && found.place === place);
    return [[place, { off: whole - left, whole, toGo: left, past }] as const];
  });
  return Object.fromEntries(read);
}

/** The bounds of all that the readings show, and of all that the markers show. */
export function gatherValues({ readings, markers }: DrawnSanding) {
  const sanded = readings.flatMap(({ places }) => Object.values(places));
  return {
    removed: [0, ...sanded.flatMap(({ off, whole }) => [off, whole])],
    left: [0, ...markers.flatMap(({ now, finished, keep }) => [now, finished, keep])],
  };
}

/** A marker's state in a word. */
export function judgeMarker({
  now,
  finished,
  keep,
}: DrawnMarker): "gone" | "below" | "will" | "kept" {
  if (!(now > 0)) return "gone";
  if (!(now >= keep)) return "below";
  return finished >= keep ? "kept" : "will";
}
