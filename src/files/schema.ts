/**
 * The shape of a design as a valibot schema: what each field may be for itself. What fields must be to each
 * other is for `checkDesign`. The published JSON Schema is made of this.
 */
import * as v from "valibot";
import { type Design, LIMITS } from "../design/design.js";
import {
  choice,
  expecting,
  field,
  isObject,
  kinds,
  list,
  object,
  only,
  optional,
  strict,
  word,
} from "./choice.js";
import type { DesignInput } from "./design-input.js";
import {
  angle,
  fraction,
  fret,
  fretPlace,
  part,
  radii,
  radius,
  share,
  size,
  sizeOrZero,
  sizes,
  sizesOrZero,
  text,
} from "./fields.js";

const frets = list(fret, { one: "fret number", many: "fret numbers" }, 1, LIMITS.frets.value);
const positions = list(size, { one: "position", many: "fret positions" }, 1, LIMITS.frets.value);

const equalScale = object({
  length: field(size, "Scale length, mm."),
  frets: field(fret, "How many frets."),
});

const listedScale = object({
  positions: field(
    positions,
    "Distances of frets 1, 2, … from the nut, mm, each more than the last.",
  ),
});

const fannedScale = object({
  bass: field(size, "Scale length along the bass edge, parallel to the centre line, mm."),
  treble: field(size, "Scale length along the treble edge, parallel to the centre line, mm."),
  perpendicular: field(
    fretPlace,
    "The fret that is square to the centre line; 0 is the nut, fractions allowed.",
  ),
  frets: field(fret, "How many frets."),
});

/** The keys tell the kind, as they do for `checkDesign`. */
const scale = choice([equalScale, listedScale, fannedScale], (input) => {
  if (!isObject(input)) return equalScale;
  if ("positions" in input) return listedScale;
  return "bass" in input || "treble" in input ? fannedScale : equalScale;
});

const channel = object({
  width: field(size, "Width, mm."),
  depth: field(size, "Depth from the underside, mm."),
  from: optional(sizeOrZero, "Where it begins, mm from the nut; 0 where left out."),
  to: optional(size, "Where it ends, mm from the nut; the board's length where left out."),
});

const board = object({
  length: field(size, "From the nut to the body end, mm."),
  width: field(sizes, "Width, mm."),
  thickness: field(sizes, "Thickness of the flat blank, as drilled, mm."),
  channel: optional(
    channel,
    "Rod channel, cut into the underside along the centre line; sizes in mm.",
  ),
});

const fill = kinds(
  ["poured", "solid"],
  [
    strict({
      kind: field(v.literal("poured"), "Epoxy, poured in place."),
      keep: optional(sizeOrZero, "Least epoxy to be left after radiusing, mm."),
    }),
    strict({
      kind: field(v.literal("solid"), "A dot of shell, plastic, clay or wood."),
      thickness: field(size, "Thickness of the dot, mm."),
      keep: optional(sizeOrZero, "Least of the dot to be left after radiusing, mm."),
    }),
  ],
);

const bit = kinds(
  ["forstner", "brad-point", "twist", "end-mill"],
  [
    strict({
      kind: field(v.picklist(["forstner", "brad-point"]), "A bit with a point of its own."),
      point: field(sizeOrZero, "How far the point leads the rim, mm."),
    }),
    strict({
      kind: field(v.literal("twist"), "A twist bit."),
      angle: optional(angle, "Included angle of the point, degrees."),
    }),
    strict({ kind: field(v.literal("end-mill"), "A bit without a point.") }),
  ],
);

const shape = kinds(
  ["rectangle", "trapezoid"],
  [
    strict({
      kind: field(v.literal("rectangle"), "A pocket square to the centre line."),
      length: field(size, "Along the board, mm."),
      width: field(size, "Across the board, mm."),
    }),
    strict({
      kind: field(v.literal("trapezoid"), "A pocket that follows the slots and the edges."),
      slotGap: field(sizeOrZero, "From the slots, mm."),
      edgeGap: field(sizeOrZero, "From the board's edges, mm."),
    }),
  ],
);

const depth = optional(size, "Depth of the bit's rim that the builder means to drill, mm.");

const common = {
  frets: field(frets, "Fret numbers; a marker sits between its fret and the one before it."),
  arrangement: optional(word(["single", "double"]), "One marker at a fret, or two."),
  spread: optional(size, "A double's centre to centre, mm, in place of the crossed diagonals."),
  along: optional(
    word(["diagonals", "midpoint"]),
    "Where between the slots: crossed diagonals, or half way.",
  ),
  fill: optional(fill, "What fills the holes; lengths in mm."),
  bit: optional(bit, "What drills the holes; lengths in mm, angles in degrees."),
  depth,
};

const dots = object({ ...common, diameter: field(size, "Diameter of the hole, mm.") });
const pockets = object({ ...common, shape: field(shape, "A routed pocket, sizes in mm.") });

const group = choice([dots, pockets], (input) =>
  isObject(input) && "shape" in input ? pockets : dots,
);

const markers = list(group, { one: "marker group", many: "marker groups" }, 0, LIMITS.groups.value);

const tolerance = object({
  stop: optional(sizeOrZero, "Of the depth stop, ± mm."),
  layout: optional(sizeOrZero, "Of a hole's place, ± mm."),
  thickness: optional(sizeOrZero, "Of the blank's thickness, ± mm."),
  crown: optional(sizeOrZero, "Of the crown, ± mm."),
  radius: optional(fraction, "Of the radius, ± a fraction: 0.02 is 2 %."),
});

const slot = object({
  depth: field(size, "Depth sawn from the flat, mm."),
  tang: field(size, "Depth of the fret's tang, mm."),
  clearance: optional(sizeOrZero, "Left under the tang, mm."),
  web: optional(sizeOrZero, "Least wood to be left below the slot, mm."),
});

const sideDots = object({
  diameter: field(size, "Diameter, mm."),
  margin: optional(sizeOrZero, "Least wood above and below, mm."),
  depth: optional(size, "How far their holes go in from the edge face, mm."),
});

const TWO_PARTS = "two parts, resin and hardener";
const ratio = only(
  v.pipe(v.strictTuple([part, part], expecting(TWO_PARTS)), v.readonly()),
  (input) => Array.isArray(input) && input.length === 2,
  TWO_PARTS,
);

const pour = object({
  waste: optional(share, "Epoxy mixed beyond the holes' volume, a fraction."),
  ratio: optional(ratio, "Resin and hardener, parts by volume."),
});

/** The design as it is written, `$schema` and all. */
export const designObject = strict({
  $schema: optional(text, "Where this JSON Schema is, for the editor."),
  name: optional(text, "What the design is called."),
  scale: field(scale, "Where the frets lie; lengths in mm."),
  board: field(board, "The blank; lengths in mm."),
  radius: field(
    radii,
    'Finished radius, mm, as a gauge square to the board reads it; "flat" for none.',
  ),
  crown: optional(
    sizesOrZero,
    "What radiusing and sanding take off along the centre line itself, mm.",
  ),
  markers: field(markers, "Groups of markers that share a size, a fill and a bit; lengths in mm."),
  fill: optional(fill, "For every group that names none of its own; lengths in mm."),
  bit: optional(
    bit,
    "For every group that names none of its own; lengths in mm, angles in degrees.",
  ),
  depth,
  web: optional(sizeOrZero, "Least wood to be left under the lowest part of the bit, mm."),
  tolerance: optional(tolerance, "Each ± mm; that of the radius a fraction."),
  stopStep: optional(size, "The smallest step of the depth stop, mm of travel."),
  slot: optional(slot, "Fret slots; lengths in mm."),
  sideDots: optional(sideDots, "Dots on the edge face; lengths in mm."),
  pour: optional(pour, "How the epoxy is mixed: a fraction and parts by volume."),
});

/** The schemas that the JSON Schema names. */
export const definitions = {
  length: size,
  lengthOrZero: sizeOrZero,
  radius,
  lengthProfile: sizes,
  lengthOrZeroProfile: sizesOrZero,
  radiusProfile: radii,
  scale,
  equalScale,
  listedScale,
  fannedScale,
  positions,
  board,
  channel,
  markers,
  group,
  dots,
  pockets,
  frets,
  shape,
  fill,
  bit,
  tolerance,
  slot,
  sideDots,
  pour,
  ratio,
} as const;

/**
 * The shape of a design, as a valibot schema and so a Standard Schema: lengths may be numbers of mm or
 * texts with a unit, a radius may be "flat", and what comes out is a `Design` in mm. It checks each field
 * for itself; `readDesign` checks the rest too, and tells the lines.
 *
 * @example
 * const result = designSchema["~standard"].validate({ radius: "flat" });
 * result.issues.map(({ message }) => message)[0] // 'expected an object with "length" and "frets"'
 */
export const designSchema: v.GenericSchema<DesignInput, Design> = only(
  v.pipe(
    designObject,
    v.transform(({ $schema, ...design }) => design),
  ),
  isObject,
  "an object with a design's keys",
);
