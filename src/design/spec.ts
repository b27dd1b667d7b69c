/** A design with nothing left open: every field read, every default filled in. Units as in the design. */
import type { Bit, Fill, PocketShape, Station } from "./design.js";

/** A profile as stated: one number, or values at stations. */
export type ProfileSpec = number | readonly (readonly [Station, number])[];

/** A fill with nothing left open. */
export type FillSpec = Fill & { readonly keep: number };

/** A bit with nothing left open. */
export type BitSpec =
  | Exclude<Bit, { readonly kind: "twist" }>
  | { readonly kind: "twist"; readonly angle: number };

/** Frets square to the centre line, at positions 1, 2, …, or fanned between two scale lengths. */
export type ScaleSpec =
  | { readonly kind: "straight"; readonly positions: readonly number[] }
  | {
      readonly kind: "fanned";
      readonly bass: number;
      readonly treble: number;
      readonly perpendicular: number;
      readonly frets: number;
    };

/** A marker group with nothing left open. */
export interface GroupSpec {
  readonly frets: readonly number[];
  /** Diameter of a dot; 0 for a routed pocket, whose shape stands in its place. */
  readonly diameter: number;
  readonly shape: PocketShape | undefined;
  readonly arrangement: "single" | "double";
  readonly spread: number | undefined;
  readonly along: "diagonals" | "midpoint";
  readonly fill: FillSpec;
  readonly bit: BitSpec;
  readonly depth: number | undefined;
  /** Where in the design each of these stands: the group's own place, or the shared one. */
  readonly path: {
    readonly group: string;
    readonly fill: string;
    readonly bit: string;
    readonly depth: string;
  };
}

/** The quantities that carry a tolerance. */
export type ToleranceName = "stop" | "layout" | "thickness" | "crown" | "radius";

/** A design with every default filled in. */
export interface Spec {
  readonly name: string | undefined;
  readonly scale: ScaleSpec;
  readonly length: number;
  readonly width: ProfileSpec;
  readonly thickness: ProfileSpec;
  readonly channel:
    | { readonly width: number; readonly depth: number; readonly from: number; readonly to: number }
    | undefined;
  readonly radius: ProfileSpec;
  readonly crown: ProfileSpec;
  readonly groups: readonly GroupSpec[];
  readonly web: number;
  readonly tolerance: Readonly<Record<ToleranceName, number>>;
  readonly stopStep: number | undefined;
  readonly slot:
    | {
        readonly depth: number;
        readonly tang: number;
        readonly clearance: number;
        readonly web: number;
      }
    | undefined;
  readonly sideDots:
    | { readonly diameter: number; readonly margin: number; readonly depth: number }
    | undefined;
  /** How epoxy is mixed; undefined where no group pours any. */
  readonly pour:
    | { readonly waste: number; readonly resin: number; readonly hardener: number }
    | undefined;
  /** Every default that was used, by its path in the design. */
  readonly assumed: Readonly<Record<string, number>>;
}

/** What could be read: a field that could not is undefined, and has an issue. */
export type PartialSpec = { readonly [K in keyof Spec]: Spec[K] | undefined };

/** How many frets a scale has. */
export function fretCount(scale: ScaleSpec): number {
  return scale.kind === "straight" ? scale.positions.length : scale.frets;
}
