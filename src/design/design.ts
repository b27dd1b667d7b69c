/**
 * The design: what a builder states about a neck, and what is assumed where nothing is stated.
 * Units: millimetres and degrees. `along` runs from the nut along the centre line, `offset` from the
 * centre line (bass negative, treble positive), depth from the blank's flat top downward.
 */

/** A named place along the board: the nut, the body end, or a fret. */
export type Station = "nut" | "end" | `fret${number}`;

/**
 * A quantity that varies along the board: one number, or values at stations, linear between
 * neighbours. The first and last pieces extend outward; one station alone is a constant.
 */
export type Profile = number | { readonly [station in Station]?: number };

/** A hole's filling: epoxy poured in place, or a solid dot of shell, plastic, clay or wood. */
export type Fill =
  | { readonly kind: "poured"; readonly keep?: number }
  | { readonly kind: "solid"; readonly thickness: number; readonly keep?: number };

/** A drill bit, by what leads its rim: a point of its own length, a cone, or nothing. */
export type Bit =
  | { readonly kind: "forstner" | "brad-point"; readonly point: number }
  | { readonly kind: "twist"; readonly angle?: number }
  | { readonly kind: "end-mill" };

/**
 * A routed pocket. A rectangle lies square to the centre line: `length` along the board, `width` across. A
 * trapezoid follows the board: its sides run parallel to the slots before and behind it at `slotGap`, and to the
 * board's edges at `edgeGap`. All in mm.
 */
export type PocketShape =
  | { readonly kind: "rectangle"; readonly length: number; readonly width: number }
  | { readonly kind: "trapezoid"; readonly slotGap: number; readonly edgeGap: number };

/** Markers that share a size, a fill and a bit: round dots of a `diameter`, or pockets of a `shape`. */
export type MarkerGroup = DotGroup | PocketGroup;

/** Round dots, drilled. */
export interface DotGroup extends GroupCommon {
  /** Diameter of the hole, mm. */
  readonly diameter: number;
  readonly shape?: undefined;
}

/** Pockets, routed with an end mill. */
export interface PocketGroup extends GroupCommon {
  readonly shape: PocketShape;
  readonly diameter?: undefined;
}

interface GroupCommon {
  /** Fret numbers; a marker sits between its fret and the one before it. */
  readonly frets: readonly number[];
  readonly arrangement?: "single" | "double";
  /** A double's centre to centre, mm, in place of the crossed diagonals. */
  readonly spread?: number;
  readonly along?: "diagonals" | "midpoint";
  readonly fill?: Fill;
  readonly bit?: Bit;
  /** Depth of the bit's rim that the builder means to drill, mm. */
  readonly depth?: number;
}

/**
 * Where the frets lie: twelve-tone equal temperament; the positions of frets 1, 2, … in mm; or fanned, with
 * one scale length along each edge (measured parallel to the centre line), frets straight between them, and the
 * fret `perpendicular` (fractions allowed) square to the centre line.
 */
export type Scale =
  | { readonly length: number; readonly frets: number }
  | { readonly positions: readonly number[] }
  | {
      readonly bass: number;
      readonly treble: number;
      readonly perpendicular: number;
      readonly frets: number;
    };

/** The rod channel, cut into the underside, centred on the centre line. */
export interface Channel {
  readonly width: number;
  readonly depth: number;
  readonly from?: number;
  readonly to?: number;
}

/** A neck design, in millimetres and degrees. */
export interface Design {
  readonly name?: string;
  readonly scale: Scale;
  readonly board: {
    /** From the nut to the body end, mm. */
    readonly length: number;
    readonly width: Profile;
    /** Thickness of the flat blank, as drilled, mm. */
    readonly thickness: Profile;
    readonly channel?: Channel;
  };
  /** Finished radius, mm, as a gauge square to the board reads it; `Infinity` is flat. */
  readonly radius: Profile;
  /** What radiusing, levelling and sanding take off along the centre line itself, mm. */
  readonly crown?: Profile;
  readonly markers: readonly MarkerGroup[];
  /** For every group that names none of its own. */
  readonly fill?: Fill;
  readonly bit?: Bit;
  readonly depth?: number;
  /** Least wood to be left under the lowest part of the bit, mm. */
  readonly web?: number;
  /** Each ± mm; `radius` ± a fraction (0.02 is 2 %). */
  readonly tolerance?: {
    readonly stop?: number;
    readonly layout?: number;
    readonly thickness?: number;
    readonly crown?: number;
    readonly radius?: number;
  };
  /** The smallest step of the depth stop, mm of travel. */
  readonly stopStep?: number;
  readonly slot?: {
    readonly depth: number;
    readonly tang: number;
    readonly clearance?: number;
    readonly web?: number;
  };
  /** Dots on the edge face; `depth` is how far their holes go in from it. */
  readonly sideDots?: {
    readonly diameter: number;
    readonly margin?: number;
    readonly depth?: number;
  };
  /** `waste` a fraction, `ratio` resin : hardener by volume. */
  readonly pour?: { readonly waste?: number; readonly ratio?: readonly [number, number] };
}

const COMMON_PRACTICE = "common practice, from memory, no source";

/** What is assumed where the design is silent. Each one used is listed in the report. */
export const DEFAULTS = {
  keepPoured: { value: 0.8, unit: "mm", source: COMMON_PRACTICE },
  keepSolid: { value: 0.5, unit: "mm", source: COMMON_PRACTICE },
  web: { value: 1, unit: "mm", source: COMMON_PRACTICE },
  crown: { value: 0.15, unit: "mm", source: COMMON_PRACTICE },
  stopTolerance: { value: 0.1, unit: "mm", source: COMMON_PRACTICE },
  layoutTolerance: { value: 0.25, unit: "mm", source: COMMON_PRACTICE },
  thicknessTolerance: { value: 0.1, unit: "mm", source: COMMON_PRACTICE },
  crownTolerance: { value: 0.05, unit: "mm", source: COMMON_PRACTICE },
  radiusTolerance: { value: 0, unit: "fraction", source: COMMON_PRACTICE },
  slotClearance: { value: 0.2, unit: "mm", source: COMMON_PRACTICE },
  slotWeb: { value: 1.5, unit: "mm", source: COMMON_PRACTICE },
  sideDotMargin: { value: 0.5, unit: "mm", source: COMMON_PRACTICE },
  sideDotDepth: { value: 3, unit: "mm", source: COMMON_PRACTICE },
  pourWaste: { value: 0.5, unit: "fraction", source: COMMON_PRACTICE },
  pourResin: { value: 1, unit: "part", source: COMMON_PRACTICE },
  pourHardener: { value: 1, unit: "part", source: COMMON_PRACTICE },
  twistAngle: { value: 118, unit: "degrees", source: COMMON_PRACTICE },
  forstnerPoint: { value: 1, unit: "mm", source: COMMON_PRACTICE },
} as const;

/** Bounds that keep the work finite and the arithmetic exact; a value outside is refused. */
export const LIMITS = {
  leastLength: { value: 1e-12, unit: "mm" },
  mostLength: { value: 1e12, unit: "mm" },
  frets: { value: 250, unit: "frets" },
  groups: { value: 20, unit: "marker groups" },
  remedyHoles: { value: 500, unit: "holes" },
  leastAngle: { value: 1, unit: "degrees" },
  mostAngle: { value: 179, unit: "degrees" },
} as const;

/** A dot nearer than this to a fret slot is warned of, mm. Common practice, from memory, no source. */
export const SLOT_GAP = 0.5;
