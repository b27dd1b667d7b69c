/** A design with nothing left open: every default filled in, each group with all that it is worked with. */
import type {
  Arrangement,
  Channel,
  Place,
  PocketShape,
  Profile,
  Scale,
  TableStop,
} from "./design.js";

/** A fill with nothing left open. */
export type FillSpec =
  | {
      /** Two-part epoxy. */
      readonly kind: "poured";
      /** Least of it to be left after radiusing, mm. */
      readonly keep: number;
    }
  | {
      /** A dot of shell, plastic, clay or wood, glued in. */
      readonly kind: "solid";
      /** Of the dot, mm. */
      readonly thickness: number;
      /** Least of it to be left after radiusing, mm. */
      readonly keep: number;
    };

/** A bit with nothing left open. */
export type BitSpec =
  | {
      /** A bit with a point in the middle and a rim or spurs around it. */
      readonly kind: "forstner" | "brad-point";
      /** Length of its point below the floor, mm. */
      readonly point: number;
      /** How far its rim or spurs cut below the floor, mm. */
      readonly spur: number;
    }
  | {
      /** A bit whose tip is a cone. */
      readonly kind: "twist";
      /** Between the cone's sides, degrees. */
      readonly angle: number;
    }
  | {
      /** A mill, which has no point. */
      readonly kind: "end-mill";
    };

/** A stop with nothing left open; from the table its height is that of board and neck where undefined. */
export type StopSpec = {
  readonly step: number | undefined;
  readonly correction: number;
} & (
  | { readonly from: "wood"; readonly foot: number }
  | {
      readonly from: "table";
      readonly zero: number | undefined;
      readonly height: TableStop["height"];
    }
);

/** A tolerance with its law. */
export interface LawSpec {
  readonly limit: number;
  readonly shape: "rectangular" | "triangular" | "normal";
  readonly coverage: number;
  readonly per: "setting" | "hole";
}

/** The quantities that carry a tolerance. */
export type ToleranceName =
  | "stop"
  | "point"
  | "seat"
  | "layout"
  | "thickness"
  | "sanding"
  | "crest"
  | "fill"
  | "radius"
  | "existing";

/** What of a group may stand in the design instead. */
export type Inherited = "fill" | "bit" | "stop" | "depth" | "travel";

/** A marker group with nothing left open. */
export interface GroupSpec {
  readonly where:
    | { readonly places: readonly Place[] }
    | ({
        /** A fret that is left out of what is looked at stands as undefined, so that the others keep their index. */
        readonly frets: readonly (number | undefined)[];
        readonly by?: "diagonals" | "midpoint" | undefined;
      } & Arrangement);
  /** Of a dot. */
  readonly diameter: number | undefined;
  /** Of a pocket. */
  readonly shape: PocketShape | undefined;
  readonly fill: FillSpec;
  readonly bit: BitSpec;
  readonly stop: StopSpec;
  readonly depth: number | undefined;
  readonly travel: number | undefined;
  readonly drilled: boolean;
  /** Where in the design each of these stands: the group's own place, or the shared one. */
  readonly path: Readonly<Record<Inherited | "group", string>>;
}

/** The rod channel with nothing left open. */
export interface ChannelSpec extends Required<Omit<Channel, "depth" | "from" | "to">> {
  readonly depth: Profile;
  readonly from: number;
  readonly to: number;
}

/** A design with every default filled in. */
export interface Spec {
  readonly name: string | undefined;
  readonly scale: Scale;
  readonly length: number;
  readonly width: Profile;
  readonly thickness: Profile;
  readonly channel: ChannelSpec | undefined;
  readonly neck: Profile | undefined;
  readonly existing: Radii | undefined;
  readonly radius: Radii;
  readonly sanding: Profile;
  readonly groups: readonly GroupSpec[];
  readonly web: number;
  readonly tolerance: Readonly<Record<ToleranceName, LawSpec>>;
  readonly slot:
    | {
        readonly depth: number | undefined;
        readonly tang: number;
        readonly clearance: number;
        readonly web: number;
      }
    | undefined;
  readonly sideDots:
    | { readonly diameter: number; readonly margin: number; readonly depth: number }
    | undefined;
  /** How epoxy is mixed; undefined where no group pours any. */
  readonly pour: PourSpec | undefined;
  /** Every default that was used, by its path in the design. */
  readonly assumed: Readonly<Record<string, number | string>>;
}

export interface PourSpec {
  readonly waste: number;
  readonly resin: number;
  readonly hardener: number;
}

/** Radii along the board, mm; `Infinity` is flat. */
export type Radii = Profile;

/** What could be read: a field that could not is undefined, and has an issue. */
export type PartialSpec = { readonly [K in keyof Spec]: Spec[K] | undefined };

/** How many frets a scale has. */
export function countFrets(scale: Scale): number {
  return "positions" in scale ? scale.positions.length : scale.frets;
}
