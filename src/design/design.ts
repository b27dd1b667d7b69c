/**
 * The design: what a builder states about a neck. Millimetres and degrees. `along` runs from the nut along the centre
 * line, `offset` from the centre line (bass negative, treble positive). The top is the surface that is drilled into; the
 * floor is the hole's bottom at full diameter, where a filling rests; a depth is the floor's, downward from the top at
 * the hole's centre. What each field says stands in `fields.ts` too; a test holds the two alike.
 */

/** A named place along the board: the nut, the body end, or a fret. */
export type Station = "nut" | "end" | `fret${number}`;

/**
 * A quantity that varies along the board: one number, or values at stations, linear between neighbours. The first and
 * last pieces extend outward; one station alone is a constant.
 */
export type Profile = number | { readonly [station in Station]?: number | undefined };

/** A radius along the board, mm; "flat" is the same as `Infinity`, at every station or at none. */
export type RadiusProfile =
  | number
  | "flat"
  | { readonly [station in Station]?: number | "flat" | undefined };

/** How far a quantity may be off: ± a limit, rectangular where no law is stated. */
export type Tolerance = number | Law;

/** A tolerance of the stop, which may be each hole's own. */
export type StopTolerance =
  | number
  | (Law & {
      /** Whether all holes of a setting share the error, or each hole has its own. */
      readonly per?: "setting" | "hole" | undefined;
    });

/** A limit, and how errors are spread within it. */
export type Law = BoundedLaw | NormalLaw;

/** Errors that never pass the limit. */
export interface BoundedLaw {
  /** The limit: ± mm, of a radius ± a fraction. */
  readonly limit: number;
  /** How errors are spread within the limit. */
  readonly shape?: "rectangular" | "triangular" | undefined;
}

/** Errors that pass the limit now and then. */
export interface NormalLaw {
  /** The limit: ± mm, of a radius ± a fraction. */
  readonly limit: number;
  /** How errors are spread within the limit. */
  readonly shape: "normal";
  /** How many standard deviations the limit is. */
  readonly coverage?: number | undefined;
}

/** Where the frets lie: equal temperament, listed, or fanned. */
export type Scale = EqualScale | ListedScale | FannedScale;

/** Frets in twelve-tone equal temperament, square to the centre line. */
export interface EqualScale {
  /** Scale length, mm. */
  readonly length: number;
  /** How many frets there are. */
  readonly frets: number;
}

/** Frets at given places, square to the centre line. */
export interface ListedScale {
  /** Distances of frets 1, 2, … from the nut, mm, each more than the last. */
  readonly positions: readonly number[];
}

/** Frets in straight lines between two scale lengths, one along each edge. */
export interface FannedScale {
  /** Scale length along the bass edge, parallel to the centre line, mm. */
  readonly bass: number;
  /** Scale length along the treble edge, parallel to the centre line, mm. */
  readonly treble: number;
  /** The fret that stands square to the centre line; 0 is the nut, fractions allowed. */
  readonly square: number;
  /** How many frets there are. */
  readonly frets: number;
}

/** The rod channel, cut into the board's underside along the centre line. */
export interface Channel {
  /** Width of the channel, mm. */
  readonly width: number;
  /** Depth from the board's underside, mm; 0 where it lies in the neck alone. */
  readonly depth?: Profile | undefined;
  /** Where the channel begins, mm from the nut. */
  readonly from?: number | undefined;
  /** Where the channel ends, mm from the nut; the board's end where left out. */
  readonly to?: number | undefined;
}

/** The fretboard as it is drilled. */
export interface BoardDesign {
  /** From the nut to the body end, mm. */
  readonly length: number;
  /** Width of the board itself, without binding, mm. */
  readonly width: Profile;
  /** Thickness below the crest of the top as drilled, mm. */
  readonly thickness: Profile;
  /** Rod channel, cut into the board's underside along the centre line; "none" says that there is none. */
  readonly channel?: Channel | "none" | undefined;
}

/** What drills the holes: a bit by its kind. */
export type Bit = PointedBit | TwistBit | EndMill;

/** A Forstner or a brad-point bit: a point, and a rim or spurs, go below its floor. */
export interface PointedBit {
  /** Which kind of bit it is: by what of it goes below the floor. */
  readonly kind: "forstner" | "brad-point";
  /** How far the point's tip lies below the floor that the bit cuts, mm; real ones are 1 to 3. */
  readonly point: number;
  /** How far the rim or the spurs cut below the floor, mm; not more than the point. */
  readonly spur?: number | undefined;
}

/** A twist bit: its cone goes below its full diameter. */
export interface TwistBit {
  /** Which kind of bit it is: by what of it goes below the floor. */
  readonly kind: "twist";
  /** Included angle of the point, degrees. */
  readonly angle?: number | undefined;
}

/** An end mill: nothing of it goes below its floor. */
export interface EndMill {
  /** Which kind of bit it is: by what of it goes below the floor. */
  readonly kind: "end-mill";
}

/** What fills the holes: epoxy poured in place, or a solid dot. */
export type Fill = PouredFill | SolidFill;

/** Epoxy. */
export interface PouredFill {
  /** Epoxy poured in place, or a solid dot of shell, plastic, clay or wood. */
  readonly kind: "poured";
  /** Least of the marker to be left after radiusing, mm. */
  readonly keep?: number | undefined;
}

/** A dot of shell, plastic, clay or wood. */
export interface SolidFill {
  /** Epoxy poured in place, or a solid dot of shell, plastic, clay or wood. */
  readonly kind: "solid";
  /** Thickness of the dot, mm. */
  readonly thickness: number;
  /** Least of the marker to be left after radiusing, mm. */
  readonly keep?: number | undefined;
}

/** The depth stop: what its travel is counted from. */
export type Stop = WoodStop | TableStop;

interface AnyStop {
  /** The smallest step of the stop, mm of travel. */
  readonly step?: number | undefined;
  /** How much farther the tip goes than set, mm, as trial holes show; negative where less far. */
  readonly correction?: number | undefined;
}

/** A stop zeroed anew on the wood at every hole, a collar on the bit, a router's base. */
export interface WoodStop extends AnyStop {
  /** Zeroed anew on the wood at every hole, or set once, so that the tip stops at one height above the table. */
  readonly from?: "wood" | undefined;
  /** Width of what bears on the top at the touch, mm; 0 where the bit's point touches. */
  readonly foot?: number | undefined;
}

/** A quill stop zeroed once: the tip always stops at the same height above the table. */
export interface TableStop extends AnyStop {
  /** Zeroed anew on the wood at every hole, or set once, so that the tip stops at one height above the table. */
  readonly from: "table";
  /** Where the tip touched the centre line, mm from the nut; half way between the nut and fret 1 where left out. */
  readonly zero?: number | undefined;
  /** Height of the crest above the table, mm; the thickness of board and neck where left out. */
  readonly height?: Profile | undefined;
}

/** A corner of a pocket's outline. */
export interface Corner {
  /** Along the board from the marker's centre, mm. */
  readonly x: number;
  /** Across the board from the marker's centre, mm. */
  readonly y: number;
}

/** A routed pocket in place of a round dot. */
export type PocketShape = RectanglePocket | TrapezoidPocket | PolygonPocket;

/** A rectangle square to the centre line. */
export interface RectanglePocket {
  /** The pocket's shape: a rectangle square to the centre line, a trapezoid that follows slots and edges, or corners. */
  readonly kind: "rectangle";
  /** Length of the pocket along the board, mm. */
  readonly length: number;
  /** Width of the pocket across the board, mm. */
  readonly width: number;
}

/** A trapezoid whose sides run beside the slots and the board's edges. */
export interface TrapezoidPocket {
  /** The pocket's shape: a rectangle square to the centre line, a trapezoid that follows slots and edges, or corners. */
  readonly kind: "trapezoid";
  /** From the slots before and behind it, mm. */
  readonly slotGap: number;
  /** From the board's edges, mm. */
  readonly edgeGap: number;
}

/** A convex outline by its corners; a double is not mirrored. */
export interface PolygonPocket {
  /** The pocket's shape: a rectangle square to the centre line, a trapezoid that follows slots and edges, or corners. */
  readonly kind: "polygon";
  /** Corners of a convex outline in either order, about the marker's centre. */
  readonly corners: readonly Corner[];
}

/** A marker's place. */
export interface Place {
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** Distance from the centre line, mm, bass negative. */
  readonly offset: number;
  /** Depth of the floor at this place, mm. */
  readonly depth?: number | undefined;
}

/** Where the markers of a group lie: at given places, or in the spaces of some frets. */
export type Where = AtPlaces | (AtFrets & Arrangement);

/** Markers at given places. */
export interface AtPlaces {
  /** Where the markers lie, place by place. */
  readonly places: readonly Place[];
}

/** Markers in the spaces of some frets. */
export interface AtFrets {
  /** Fret numbers; a marker lies between its fret and the one before it. */
  readonly frets: readonly number[];
  /** Where between the slots: at the crossing of the diagonals, or midway. */
  readonly by?: "diagonals" | "midpoint" | undefined;
}

/** How the markers of one fret are arranged. */
export type Arrangement = Single | Double | Lengthwise | AtEdge;

/** One on the centre line. */
export interface Single {
  /** One marker at a fret, two across the board, two along it, or one at a gap from an edge. */
  readonly arrangement?: "single" | undefined;
}

/** Two across the board. */
export interface Double {
  /** One marker at a fret, two across the board, two along it, or one at a gap from an edge. */
  readonly arrangement: "double";
  /** Centre to centre of the two markers, mm; by the halves of the board where left out. */
  readonly spread?: number | undefined;
}

/** Two on the centre line, about the same spot. */
export interface Lengthwise {
  /** One marker at a fret, two across the board, two along it, or one at a gap from an edge. */
  readonly arrangement: "lengthwise";
  /** Centre to centre of the two markers, mm. */
  readonly spread: number;
}

/** One at an edge. */
export interface AtEdge {
  /** One marker at a fret, two across the board, two along it, or one at a gap from an edge. */
  readonly arrangement: "edge";
  /** Which edge the marker lies at. */
  readonly side: "bass" | "treble";
  /** From the bare board's edge to the marker's rim, mm. */
  readonly gap: number;
}

/** Markers that share a size, a fill and a bit: round dots of a `diameter`, or pockets of a `shape`. */
export type MarkerGroup = Where & Size & GroupWork;

/** A round dot, or a pocket. */
export type Size = DotSize | PocketSize;

/** Round dots, drilled. */
export interface DotSize {
  /** Diameter of the hole, mm. */
  readonly diameter: number;
}

/** Pockets, routed with an end mill. */
export interface PocketSize {
  /** A routed pocket in place of a round dot. */
  readonly shape: PocketShape;
}

/** How a group is worked; what it does not name the design names for it. */
export interface GroupWork {
  /** What fills the holes: epoxy poured in place, or a solid dot. */
  readonly fill?: Fill | undefined;
  /** What drills the holes: a bit by its kind. */
  readonly bit?: Bit | undefined;
  /** The depth stop: what its travel is counted from. */
  readonly stop?: Stop | undefined;
  /** Depth of the floor that the builder means to drill, or has drilled, below the top at the hole, mm. */
  readonly depth?: number | undefined;
  /** Travel that the builder means to set: how far the tip goes down from the touch, mm. */
  readonly travel?: number | undefined;
  /** These markers are in the board already, at the measured `depth`. */
  readonly drilled?: true | undefined;
}

/** How far things may be off: each ± mm, or a limit with its law; `radius` and `existing` ± a fraction. */
export interface Tolerances {
  /** Of the depth that the stop holds, ± mm. */
  readonly stop?: StopTolerance | undefined;
  /** Of the point's length, ± mm. */
  readonly point?: Tolerance | undefined;
  /** Of the height of the top at a hole, where the stop counts from the table, ± mm. */
  readonly seat?: Tolerance | undefined;
  /** Of a hole's place, in any direction, ± mm. */
  readonly layout?: Tolerance | undefined;
  /** Of the thickness, ± mm. */
  readonly thickness?: Tolerance | undefined;
  /** Of the sanding, ± mm. */
  readonly sanding?: Tolerance | undefined;
  /** How far to either side the crest of the sanded surface may lie, ± mm. */
  readonly crest?: Tolerance | undefined;
  /** Of a solid dot's thickness, ± mm. */
  readonly fill?: Tolerance | undefined;
  /** Of the finished radius, ± a fraction: 0.02 is 2 %. */
  readonly radius?: Tolerance | undefined;
  /** Of the existing radius, ± a fraction. */
  readonly existing?: Tolerance | undefined;
}

/** A neck design, in millimetres and degrees. */
export interface Design {
  /** What the design is called. */
  readonly name?: string | undefined;
  /** Where the frets lie: equal temperament, listed, or fanned. */
  readonly scale: Scale;
  /** The fretboard as it is drilled. */
  readonly board: BoardDesign;
  /** Wood under the board that the bit may go on into; `board.channel` must then be stated. */
  readonly neck?:
    | {
        /** Thickness of the neck's wood under the board, mm. */
        readonly thickness: Profile;
      }
    | undefined;
  /** The radius that the top has already, where it is not flat. */
  readonly existing?:
    | {
        /** Radius that the top has now, mm, as a gauge square to the board reads it. */
        readonly radius: RadiusProfile;
      }
    | undefined;
  /** Finished radius, mm, as a gauge square to the board reads it; "flat" for none. */
  readonly radius: RadiusProfile;
  /** What radiusing, levelling and fine sanding take off along the centre line itself, mm. */
  readonly sanding?: Profile | undefined;
  /** Groups of markers that share a size, a fill and a bit. */
  readonly markers: readonly MarkerGroup[];
  /** What fills the holes: epoxy poured in place, or a solid dot. */
  readonly fill?: Fill | undefined;
  /** What drills the holes: a bit by its kind. */
  readonly bit?: Bit | undefined;
  /** The depth stop: what its travel is counted from. */
  readonly stop?: Stop | undefined;
  /** Depth of the floor that the builder means to drill, or has drilled, below the top at the hole, mm. */
  readonly depth?: number | undefined;
  /** Travel that the builder means to set: how far the tip goes down from the touch, mm. */
  readonly travel?: number | undefined;
  /** Least wood to be left under every part of the bit, mm. */
  readonly web?: number | undefined;
  /** How far things may be off: each ± mm, or a limit with its law; `radius` and `existing` ± a fraction. */
  readonly tolerance?: Tolerances | undefined;
  /** Fret slots, sawn before the radius. */
  readonly slot?:
    | {
        /** Depth of the slot's floor below the crest as sawn, mm; where left out only the range is given. */
        readonly depth?: number | undefined;
        /** Depth of the fret's tang, mm. */
        readonly tang: number;
        /** Room left under the tang, mm. */
        readonly clearance?: number | undefined;
        /** Least wood to be left below the slot, mm. */
        readonly web?: number | undefined;
      }
    | undefined;
  /** Dots in the edge's face, drilled after radiusing. */
  readonly sideDots?:
    | {
        /** Diameter of a side dot, mm. */
        readonly diameter: number;
        /** Least wood above and below a side dot, mm. */
        readonly margin?: number | undefined;
        /** How far the holes of side dots go in from the edge's face, mm. */
        readonly depth?: number | undefined;
      }
    | undefined;
  /** How the epoxy is mixed. */
  readonly pour?:
    | {
        /** Epoxy mixed beyond the holes' volume, a fraction of it. */
        readonly waste?: number | undefined;
        /** Resin and hardener, parts by volume. */
        readonly ratio?: readonly [number, number] | undefined;
      }
    | undefined;
}

/**
 * A design in the making, as a form or an editor fills it in: anything may be missing yet. `designSchema` of
 * marker-depth/files tells what is, and gives the design when nothing is.
 *
 * @example
 * // an invented neck, half told
 * const draft = { scale: { length: 648 }, radius: 254 };
 * const { issues } = designSchema["~standard"].validate(draft);
 * issues.map(({ path }) => path.join(".")) // ["scale.frets", "board", "markers"]
 */
export type DesignDraft = Draft<Design>;

/** A value of which any part may be missing yet. */
export type Draft<T> = T extends readonly (infer Item)[]
  ? readonly Draft<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]?: Draft<T[Key]> | undefined }
    : T;
