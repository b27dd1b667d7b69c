/** Numbers of a design by their path, as a sweep's axes name them. */
import { type Design, LIMITS, type Station } from "./design.js";

type ProfilePath = "board.width" | "board.thickness" | "radius" | "crown";
type HolePath = "fill.keep" | "fill.thickness" | "bit.point" | "bit.angle" | "depth";
type PocketPath = "shape.length" | "shape.width" | "shape.slotGap" | "shape.edgeGap";

/** A path to a number that a sweep can vary. */
export type SweepPath =
  | ProfilePath
  | `${ProfilePath}.${Station}`
  | "scale.length"
  | "scale.bass"
  | "scale.treble"
  | "scale.perpendicular"
  | "board.length"
  | `board.channel.${"width" | "depth" | "from" | "to"}`
  | HolePath
  | `markers.${number}.${HolePath | PocketPath | "diameter" | "spread"}`
  | "web"
  | "stopStep"
  | `tolerance.${"stop" | "layout" | "thickness" | "crown" | "radius"}`;

/** What of the work a number has a part in. */
export type Part =
  | "frame"
  | "surface"
  | "thickness"
  | "markers"
  | "layout"
  | "wood"
  | "stop"
  | "none";

const GROUP_PART =
  /^markers\.\d+\.(?:diameter|spread|shape\.(?:length|width|slotGap|edgeGap)|(?:fill\.(?:keep|thickness)|bit\.(?:point|angle)))$/;

const STATION = String.raw`(?:\.(?:nut|end|fret[1-9]\d{0,2}))?`;

/** The paths by what they have a part in. */
const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^scale\.(?:length|bass|treble|perpendicular)$/, "frame"],
  [/^board\.length$/, "frame"],
  [new RegExp(`^board\\.width${STATION}$`), "frame"],
  [new RegExp(`^(?:radius|crown)${STATION}$`), "surface"],
  [/^tolerance\.(?:crown|radius)$/, "surface"],
  [new RegExp(`^board\\.thickness${STATION}$`), "thickness"],
  [GROUP_PART, "markers"],
  [/^(?:fill\.(?:keep|thickness)|bit\.(?:point|angle))$/, "markers"],
  [/^tolerance\.layout$/, "layout"],
  [/^board\.channel\.(?:width|depth|from|to)$/, "wood"],
  [/^(?:web|tolerance\.thickness)$/, "wood"],
  [/^tolerance\.stop$/, "stop"],
  [/^(?:stopStep|depth|markers\.\d+\.depth)$/, "none"],
];

/** Paths to offer for a misspelt one. */
export const PATHS: readonly string[] = [
  "scale.length",
  "scale.bass",
  "scale.treble",
  "scale.perpendicular",
  "board.length",
  "board.width",
  "board.thickness",
  "board.channel.width",
  "board.channel.depth",
  "radius",
  "crown",
  "fill.keep",
  "fill.thickness",
  "bit.point",
  "bit.angle",
  "markers.0.diameter",
  "markers.0.spread",
  "web",
  "tolerance.stop",
  "tolerance.layout",
  "tolerance.thickness",
  "tolerance.crown",
  "tolerance.radius",
];

/** What a path has a part in; undefined for a path that no sweep can vary. */
export function partOf(path: string): Part | undefined {
  return PARTS.find(([pattern]) => pattern.test(path))?.[1];
}

/** The design with one number replaced; all else is shared with the design given. */
export function withNumber(design: Design, path: string, value: number): Design {
  return replaced(design, path.split("."), value, []) as Design;
}

function replaced(
  place: unknown,
  keys: readonly string[],
  value: number,
  from: readonly string[],
): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const old = place ?? MISSING[String(from.at(-1))] ?? {};
  // a list longer than any design's is refused when it is read: no need to copy it
  if (Array.isArray(old) && old.length > LIMITS.frets.value) return old;
  const copy = Array.isArray(old) ? [...old] : typeof old === "object" ? { ...old } : {};
  const fields = copy as Record<string, unknown>;
  fields[key] = replaced(fields[key], rest, value, [...from, key]);
  return copy;
}

/** What a design is taken to hold where it says nothing, so that a number of it can be set. */
const MISSING: Readonly<Record<string, object>> = {
  fill: { kind: "poured" },
  bit: { kind: "forstner" },
};
