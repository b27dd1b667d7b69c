/** Numbers so unlikely that they may be slips: inches for millimetres, most of all. */
import { DESIGN } from "../design/fields.js";
import type { NumberKind } from "../design/kinds.js";
import type { Spec } from "../design/spec.js";
import { INCH } from "../text/length-text.js";
import type { FindingFacts } from "./findings.js";

const { fields } = DESIGN;
const SCALES = fields.scale.variants[0].cases;
const DOTS = fields.markers.item.variants[1].cases.dot.fields;

type Plausible = Pick<NumberKind, "plausible">;

/** A warning for each number outside what is plausible; a profile's first one speaks for it. */
export function findUnlikely(spec: Spec, found: FindingFacts[]): void {
  const { scale } = spec;
  const board = fields.board.fields;
  if ("bass" in scale) {
    judge(found, "scale.bass", scale.bass, SCALES.fanned.fields.bass);
    judge(found, "scale.treble", scale.treble, SCALES.fanned.fields.treble);
  } else if ("length" in scale) {
    judge(found, "scale.length", scale.length, SCALES.equal.fields.length);
  }
  judge(found, "board.width", spec.width, board.width.of);
  judge(found, "board.thickness", spec.thickness, board.thickness.of);
  judge(found, "neck.thickness", spec.neck, fields.neck.fields.thickness.of);
  judge(found, "radius", spec.radius, fields.radius.of);
  judge(found, "existing.radius", spec.existing, fields.existing.fields.radius.of);
  for (const { diameter, path } of spec.groups) {
    judge(found, `${path.group}.diameter`, diameter, DOTS.diameter);
  }
}

const ANY = [0, Infinity] as const;

function judge(
  found: FindingFacts[],
  path: string,
  stated: unknown,
  { plausible: [least, most] = ANY }: Plausible,
): void {
  if (typeof stated === "number") {
    tellSlip(found, path, stated, least, most);
    return;
  }
  const before = found.length;
  const profile = (stated ?? {}) as Readonly<Record<string, number>>;
  for (const station in profile) {
    // the width counts at the nut alone: boards widen as they will
    if (path === "board.width" && station !== "nut") continue;
    tellSlip(found, `${path}.${station}`, profile[station] as number, least, most);
    if (found.length > before) return;
  }
}

function tellSlip(
  found: FindingFacts[],
  path: string,
  value: number,
  least: number,
  most: number,
): void {
  if (value === Infinity || (value >= least && value <= most)) return;
  const inches = value * INCH;
  const meant = inches >= least && inches <= most ? { suits: [inches] } : {};
  const limit = value < least ? least : most;
  found.push({ code: "unlikely-value", severity: "warning", value, limit, path, ...meant });
}
