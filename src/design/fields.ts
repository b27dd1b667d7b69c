/**
 * What a design may hold: each field once, with its bounds, what is assumed without it, and what it is. Reading, defaults,
 * paths, the JSON Schema and the documentation are all derived from this. Millimetres and degrees; `along` runs from the
 * nut along the centre line, `offset` from the centre line, bass negative, treble positive.
 */
import { LENGTHS, MANY } from "./bounds.js";
import type { Field, Form, NumberKind, ObjectField } from "./kinds.js";

const COMMON_PRACTICE = "common practice, from memory, no source";

const length = { kind: "length", unit: "mm", ...LENGTHS } as const;
const lengthOrZero = { ...length, orZero: true } as const;
const scaleLength = { ...length, plausible: [200, 1200] } as const;
const thickness = { ...length, plausible: [1.5, 40] } as const;
const radius = { ...length, kind: "radius", plausible: [75, LENGTHS.most] } as const;
const position = { ...length, kind: "position", least: -LENGTHS.most } as const;
const fraction = { kind: "fraction", unit: "fraction", least: 0, most: 1, below: true } as const;
const part = { kind: "factor", unit: "part", least: 0.001, most: 1000 } as const;
const frets = { kind: "count", unit: "frets", least: 1, most: MANY, whole: true } as const;

/** A field that is assumed as common practice where it is left out. */
function usually<const Value extends number>(usual: Value) {
  return { optional: true, usual, source: COMMON_PRACTICE } as const;
}

const scale = {
  kind: "object",
  says: "Where the frets lie: equal temperament, listed, or fanned.",
  fields: {},
  variants: [
    {
      cases: {
        listed: {
          fields: {
            positions: {
              kind: "list",
              item: length,
              one: "position",
              many: "fret positions",
              least: 1,
              most: MANY,
              rising: true,
              says: "Distances of frets 1, 2, … from the nut, mm, each more than the last.",
            },
          },
        },
        fanned: {
          fields: {
            bass: {
              ...scaleLength,
              says: "Scale length along the bass edge, parallel to the centre line, mm.",
            },
            treble: {
              ...scaleLength,
              says: "Scale length along the treble edge, parallel to the centre line, mm.",
            },
            square: {
              kind: "count",
              unit: "frets",
              least: 0,
              most: MANY,
              says: "The fret that stands square to the centre line; 0 is the nut, fractions allowed.",
            },
            frets: { ...frets, says: "How many frets there are." },
          },
        },
        equal: {
          fields: {
            length: { ...scaleLength, says: "Scale length, mm." },
            frets: { ...frets, says: "How many frets there are." },
          },
        },
      },
    },
  ],
} as const;

const channel = {
  kind: "object",
  optional: true,
  or: "none",
  says: 'Rod channel, cut into the board\'s underside along the centre line; "none" says that there is none.',
  fields: {
    width: { ...length, says: "Width of the channel, mm." },
    depth: {
      kind: "profile",
      of: lengthOrZero,
      optional: true,
      usual: 0,
      source: "it opens at the board's underside",
      says: "Depth from the board's underside, mm; 0 where it lies in the neck alone.",
    },
    from: {
      ...lengthOrZero,
      optional: true,
      usual: 0,
      source: "it begins at the nut",
      says: "Where the channel begins, mm from the nut.",
    },
    to: {
      ...length,
      optional: true,
      says: "Where the channel ends, mm from the nut; the board's end where left out.",
    },
  },
} as const;

const board = {
  kind: "object",
  says: "The fretboard as it is drilled.",
  fields: {
    length: { ...length, says: "From the nut to the body end, mm." },
    width: {
      kind: "profile",
      of: { ...length, plausible: [20, 100] },
      says: "Width of the board itself, without binding, mm.",
    },
    thickness: {
      kind: "profile",
      of: thickness,
      says: "Thickness below the crest of the top as drilled, mm.",
    },
    channel,
  },
} as const;

const pointed = {
  point: {
    ...lengthOrZero,
    says: "How far the point's tip lies below the floor that the bit cuts, mm; real ones are 1 to 3.",
  },
  spur: {
    ...lengthOrZero,
    ...usually(0.5),
    says: "How far the rim or the spurs cut below the floor, mm; not more than the point.",
  },
} as const;
// assumed where the design names no bit at all
const usualPoint = { ...pointed.point, usual: 1, source: COMMON_PRACTICE } as const;

const bit = {
  kind: "object",
  optional: true,
  says: "What drills the holes: a bit by its kind.",
  fields: {},
  variants: [
    {
      tag: "kind",
      says: "Which kind of bit it is: by what of it goes below the floor.",
      cases: {
        forstner: { fields: { ...pointed, point: usualPoint } },
        "brad-point": { fields: pointed },
        twist: {
          fields: {
            angle: {
              kind: "angle",
              unit: "degrees",
              least: 1,
              most: 179,
              ...usually(118),
              says: "Included angle of the point, degrees.",
            },
          },
        },
        "end-mill": { fields: {} },
      },
    },
  ],
} as const;

const fill = {
  kind: "object",
  optional: true,
  says: "What fills the holes: epoxy poured in place, or a solid dot.",
  fields: {},
  variants: [
    {
      tag: "kind",
      says: "Epoxy poured in place, or a solid dot of shell, plastic, clay or wood.",
      cases: {
        poured: {
          fields: {
            keep: {
              ...lengthOrZero,
              ...usually(0.8),
              says: "Least of the marker to be left after radiusing, mm.",
            },
          },
        },
        solid: {
          fields: {
            thickness: { ...length, says: "Thickness of the dot, mm." },
            keep: {
              ...lengthOrZero,
              ...usually(0.5),
              says: "Least of the marker to be left after radiusing, mm.",
            },
          },
        },
      },
    },
  ],
} as const;

const stop = {
  kind: "object",
  optional: true,
  says: "The depth stop: what its travel is counted from.",
  fields: {
    step: { ...length, optional: true, says: "The smallest step of the stop, mm of travel." },
    correction: {
      ...position,
      optional: true,
      says: "How much farther the tip goes than set, mm, as trial holes show; negative where less far.",
    },
  },
  variants: [
    {
      tag: "from",
      optional: true,
      says: "Zeroed anew on the wood at every hole, or set once, so that the tip stops at one height above the table.",
      cases: {
        wood: {
          fields: {
            foot: {
              ...lengthOrZero,
              ...usually(0),
              says: "Width of what bears on the top at the touch, mm; 0 where the bit's point touches.",
            },
          },
        },
        table: {
          fields: {
            zero: {
              ...lengthOrZero,
              optional: true,
              says: "Where the tip touched the centre line, mm from the nut; half way between the nut and fret 1 where left out.",
            },
            height: {
              kind: "profile",
              of: length,
              optional: true,
              says: "Height of the crest above the table, mm; the thickness of board and neck where left out.",
            },
          },
        },
      },
    },
  ],
} as const;

const depth = {
  ...length,
  optional: true,
  says: "Depth of the floor that the builder means to drill, or has drilled, below the top at the hole, mm.",
} as const;
const travel = {
  ...length,
  optional: true,
  says: "Travel that the builder means to set: how far the tip goes down from the touch, mm.",
} as const;

const shape = {
  kind: "object",
  says: "A routed pocket in place of a round dot.",
  fields: {},
  variants: [
    {
      tag: "kind",
      says: "The pocket's shape: a rectangle square to the centre line, a trapezoid that follows slots and edges, or corners.",
      cases: {
        rectangle: {
          fields: {
            length: { ...length, says: "Length of the pocket along the board, mm." },
            width: { ...length, says: "Width of the pocket across the board, mm." },
          },
        },
        trapezoid: {
          fields: {
            slotGap: { ...lengthOrZero, says: "From the slots before and behind it, mm." },
            edgeGap: { ...lengthOrZero, says: "From the board's edges, mm." },
          },
        },
        polygon: {
          fields: {
            corners: {
              kind: "list",
              one: "corner",
              many: "corners",
              least: 3,
              most: MANY,
              item: {
                kind: "object",
                fields: {
                  x: { ...position, says: "Along the board from the marker's centre, mm." },
                  y: { ...position, says: "Across the board from the marker's centre, mm." },
                },
              },
              says: "Corners of a convex outline in either order, about the marker's centre.",
            },
          },
        },
      },
    },
  ],
} as const;

/** Where along a fret's space the markers of a group lie. */
const arrangements = {
  tag: "arrangement",
  optional: true,
  says: "One marker at a fret, two across the board, two along it, or one at a gap from an edge.",
  cases: {
    single: { fields: {} },
    double: {
      fields: {
        spread: {
          ...length,
          optional: true,
          says: "Centre to centre of the two markers, mm; by the halves of the board where left out.",
        },
      },
    },
    lengthwise: {
      fields: {
        spread: { ...length, says: "Centre to centre of the two markers, mm." },
      },
    },
    edge: {
      fields: {
        side: { kind: "word", words: ["bass", "treble"], says: "Which edge the marker lies at." },
        gap: { ...lengthOrZero, says: "From the bare board's edge to the marker's rim, mm." },
      },
    },
  },
} as const;

const group = {
  kind: "object",
  fields: {
    fill,
    bit,
    stop,
    depth,
    travel,
    drilled: {
      kind: "flag",
      optional: true,
      says: "These markers are in the board already, at the measured `depth`.",
    },
  },
  variants: [
    {
      cases: {
        places: {
          fields: {
            places: {
              kind: "list",
              one: "place",
              many: "places",
              least: 1,
              most: MANY,
              item: {
                kind: "object",
                fields: {
                  along: { ...position, says: "Distance from the nut along the centre line, mm." },
                  offset: {
                    ...position,
                    says: "Distance from the centre line, mm, bass negative.",
                  },
                  depth: { ...depth, says: "Depth of the floor at this place, mm." },
                },
              },
              says: "Where the markers lie, place by place.",
            },
          },
        },
        frets: {
          fields: {
            frets: {
              kind: "list",
              one: "fret number",
              many: "fret numbers",
              least: 1,
              most: MANY,
              item: { ...frets, kind: "fret" },
              distinct: true,
              says: "Fret numbers; a marker lies between its fret and the one before it.",
            },
            by: {
              kind: "word",
              words: ["diagonals", "midpoint"],
              optional: true,
              says: "Where between the slots: at the crossing of the diagonals, or midway.",
            },
          },
          variants: [arrangements],
        },
      },
    },
    {
      cases: {
        pocket: { fields: { shape } },
        dot: {
          fields: {
            diameter: {
              ...length,
              plausible: [0.8, LENGTHS.most],
              says: "Diameter of the hole, mm.",
            },
          },
        },
      },
    },
  ],
} as const;

const plusMinus = { kind: "tolerance", of: lengthOrZero } as const;
const plusMinusPart = { kind: "tolerance", of: fraction } as const;

const tolerance = {
  kind: "object",
  optional: true,
  says: "How far things may be off: each ± mm, or a limit with its law; `radius` and `existing` ± a fraction.",
  fields: {
    stop: {
      ...plusMinus,
      perHole: true,
      ...usually(0.1),
      says: "Of the depth that the stop holds, ± mm.",
    },
    point: { ...plusMinus, ...usually(0.1), says: "Of the point's length, ± mm." },
    seat: {
      ...plusMinus,
      ...usually(0.1),
      says: "Of the height of the top at a hole, where the stop counts from the table, ± mm.",
    },
    layout: {
      ...plusMinus,
      ...usually(0.25),
      says: "Of a hole's place, in any direction, ± mm.",
    },
    thickness: { ...plusMinus, ...usually(0.1), says: "Of the thickness, ± mm." },
    sanding: { ...plusMinus, ...usually(0.05), says: "Of the sanding, ± mm." },
    crest: {
      ...plusMinus,
      ...usually(0.5),
      says: "How far to either side the crest of the sanded surface may lie, ± mm.",
    },
    fill: {
      ...plusMinus,
      ...usually(0.05),
      says: "Of a solid dot's thickness, ± mm.",
    },
    radius: {
      ...plusMinusPart,
      ...usually(0),
      says: "Of the finished radius, ± a fraction: 0.02 is 2 %.",
    },
    existing: {
      ...plusMinusPart,
      ...usually(0),
      says: "Of the existing radius, ± a fraction.",
    },
  },
} as const;

/** The whole design. */
export const DESIGN = {
  kind: "object",
  says: "A neck design, in millimetres and degrees.",
  fields: {
    name: { kind: "text", optional: true, says: "What the design is called." },
    scale,
    board,
    neck: {
      kind: "object",
      optional: true,
      says: "Wood under the board that the bit may go on into; `board.channel` must then be stated.",
      fields: {
        thickness: {
          kind: "profile",
          of: thickness,
          says: "Thickness of the neck's wood under the board, mm.",
        },
      },
    },
    existing: {
      kind: "object",
      optional: true,
      says: "The radius that the top has already, where it is not flat.",
      fields: {
        radius: {
          kind: "profile",
          of: radius,
          says: "Radius that the top has now, mm, as a gauge square to the board reads it.",
        },
      },
    },
    radius: {
      kind: "profile",
      of: radius,
      says: 'Finished radius, mm, as a gauge square to the board reads it; "flat" for none.',
    },
    sanding: {
      kind: "profile",
      of: lengthOrZero,
      ...usually(0.15),
      says: "What radiusing, levelling and fine sanding take off along the centre line itself, mm.",
    },
    markers: {
      kind: "list",
      item: group,
      one: "marker group",
      many: "marker groups",
      least: 0,
      most: 20,
      says: "Groups of markers that share a size, a fill and a bit.",
    },
    fill,
    bit,
    stop,
    depth,
    travel,
    web: {
      ...lengthOrZero,
      ...usually(1),
      says: "Least wood to be left under every part of the bit, mm.",
    },
    tolerance,
    slot: {
      kind: "object",
      optional: true,
      says: "Fret slots, sawn before the radius.",
      fields: {
        depth: {
          ...length,
          optional: true,
          says: "Depth of the slot's floor below the crest as sawn, mm; where left out only the range is given.",
        },
        tang: { ...length, says: "Depth of the fret's tang, mm." },
        clearance: { ...lengthOrZero, ...usually(0.2), says: "Room left under the tang, mm." },
        web: {
          ...lengthOrZero,
          ...usually(1.5),
          says: "Least wood to be left below the slot, mm.",
        },
      },
    },
    sideDots: {
      kind: "object",
      optional: true,
      says: "Dots in the edge's face, drilled after radiusing.",
      fields: {
        diameter: { ...length, says: "Diameter of a side dot, mm." },
        margin: {
          ...lengthOrZero,
          ...usually(0.5),
          says: "Least wood above and below a side dot, mm.",
        },
        depth: {
          ...length,
          ...usually(3),
          says: "How far the holes of side dots go in from the edge's face, mm.",
        },
      },
    },
    pour: {
      kind: "object",
      optional: true,
      says: "How the epoxy is mixed.",
      fields: {
        waste: {
          kind: "factor",
          unit: "fraction",
          least: 0,
          most: 1000,
          ...usually(0.5),
          says: "Epoxy mixed beyond the holes' volume, a fraction of it.",
        },
        ratio: {
          kind: "list",
          item: part,
          one: "part",
          many: "parts",
          least: 2,
          most: 2,
          optional: true,
          usual: 1,
          source: COMMON_PRACTICE,
          says: "Resin and hardener, parts by volume.",
        },
      },
    },
  },
} as const satisfies ObjectField;

/** What is assumed where several fields are left out at once: no fill is poured epoxy, no bit a Forstner bit. */
export const WITHOUT = { fill: "poured", bit: "forstner", stop: "wood" } as const;

/** What a tolerance holds that is stated as an object. */
export const LAW = {
  limit: { says: "The limit: ± mm, of a radius ± a fraction." },
  perHole: {
    per: {
      kind: "word",
      words: ["setting", "hole"],
      optional: true,
      says: "Whether all holes of a setting share the error, or each hole has its own.",
    },
  },
  variants: [
    {
      tag: "shape",
      optional: true,
      says: "How errors are spread within the limit.",
      cases: {
        rectangular: { fields: {} },
        triangular: { fields: {} },
        normal: {
          fields: {
            coverage: {
              kind: "factor",
              unit: "standard deviations",
              least: 0.001,
              most: 1000,
              optional: true,
              usual: 2,
              source: COMMON_PRACTICE,
              says: "How many standard deviations the limit is.",
            },
          },
        },
      },
    },
  ],
} as const;

/** A form's own type is checked where it stands above; this names it for those that walk the table. */
export type { Field, Form, NumberKind };
