/** Numbers so unlikely that they may be slips: inches for millimetres, most of all. */
import { DESIGN } from "../design/fields.js";
import type { NumberKind } from "../design/kinds.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import { INCH } from "../text/length-text.js";
import type { FindingFacts } from "./findings.js";

const { fields } = DESIGN;
const SCALES = fields.scale.variants[0].cases;
const DOTS = fields.markers.item.variants[1].cases.dot.fields;

type Plausible = Pick<NumberKind, "plausible">;
type Stated = readonly [path: string, value: unknown, kind: Plausible];

/** A warning for each number outside what is plausible; a profile's first one speaks for it. */
export function findUnlikely(spec: Spec): FindingFacts[] {
  const { scale } = spec;
  const lengths: Stated[] =
    "bass" in scale
      ? [
          ["scale.bass", scale.bass, SCALES.fanned.fields.bass],
          ["scale.treble", scale.treble, SCALES.fanned.fields.treble],
        ]
      : "length" in scale
        ? [["scale.length", scale.length, SCALES.equal.fields.length]]
        : [];
  const board = fields.board.fields;
  return [
    ...lengths,
    ["board.width", spec.width, board.width.of] as const,
    ["board.thickness", spec.thickness, board.thickness.of] as const,
    ["neck.thickness", spec.neck, fields.neck.fields.thickness.of] as const,
    ["radius", spec.radius, fields.radius.of] as const,
    ["existing.radius", spec.existing, fields.existing.fields.radius.of] as const,
    ...spec.groups.map(diameterOf),
  ].flatMap(judge);
}

function diameterOf({ diameter, path }: GroupSpec): Stated {
  return [`${path.group}.diameter`, diameter, DOTS.diameter];
}

const ANY = [0, Infinity] as const;

function judge([path, stated, { plausible = ANY }]: Stated): FindingFacts[] {
  const [least, most] = plausible;
  if (stated === undefined || (typeof stated === "number" && stated >= least && stated <= most)) {
    return [];
  }
  const numbers: [string, number][] =
    typeof stated === "number"
      ? [[path, stated]]
      : Object.entries(stated ?? {}).map(([station, value]) => [
          `${path}.${station}`,
          value as number,
        ]);
  // the width counts at the nut alone: boards widen as they will
  const judged =
    path === "board.width" ? numbers.filter(([at]) => !/\.(end|fret\d+)$/.test(at)) : numbers;
  const slip = judged.find(([, value]) => value < Infinity && !(value >= least && value <= most));
  if (slip === undefined) return [];
  const [at, value] = slip;
  const inches = value * INCH;
  const meant = inches >= least && inches <= most ? { suits: [inches] } : {};
  const limit = value < least ? least : most;
  return [{ code: "unlikely-value", severity: "warning", value, limit, path: at, ...meant }];
}
