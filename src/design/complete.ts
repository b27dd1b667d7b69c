/** Fills in what a design leaves open. Each default comes from the table of fields, and is noted by its path. */
import type { Bit, Design, Fill, MarkerGroup, Stop, Tolerance } from "./design.js";
import { DESIGN, LAW, WITHOUT } from "./fields.js";
import type {
  BitSpec,
  ChannelSpec,
  FillSpec,
  GroupSpec,
  Inherited,
  LawSpec,
  PartialSpec,
  PourSpec,
  Spec,
  StopSpec,
  ToleranceName,
} from "./spec.js";

/** Every default used, by its path. */
type Assumed = Record<string, number | string>;

const { fields } = DESIGN;
const FILLS = fields.fill.variants[0].cases;
const BITS = fields.bit.variants[0].cases;
const FOOT = fields.stop.variants[0].cases.wood.fields.foot;
const END_MILL = { kind: "end-mill" } as const;

/** Completes what is stated of a design; what could not be read stays open. */
export function complete(design: Partial<Design>): PartialSpec {
  const assumed: Assumed = {};
  const groups: GroupSpec[] = [];
  design.markers?.forEach((group, i) => {
    if (group !== undefined) groups.push(completeGroup(group, i, design, assumed));
  });
  const { board, slot, sideDots } = design;
  const isPoured = groups.some(({ fill, drilled }) => fill.kind === "poured" && !drilled);
  return {
    name: design.name,
    scale: design.scale,
    length: board?.length,
    width: board?.width,
    thickness: board?.thickness,
    channel: completeChannel(design, assumed),
    neck: design.neck?.thickness,
    existing: design.existing?.radius as Spec["existing"],
    radius: design.radius as Spec["radius"] | undefined,
    sanding: design.sanding ?? assume(assumed, "sanding", fields.sanding),
    groups: design.markers && groups,
    web: design.web ?? assume(assumed, "web", fields.web),
    tolerance: completeTolerance(design, groups, assumed),
    slot: slot && {
      depth: slot.depth,
      tang: slot.tang,
      clearance: slot.clearance ?? assume(assumed, "slot.clearance", fields.slot.fields.clearance),
      web: slot.web ?? assume(assumed, "slot.web", fields.slot.fields.web),
    },
    sideDots: sideDots && {
      diameter: sideDots.diameter,
      margin: sideDots.margin ?? assume(assumed, "sideDots.margin", fields.sideDots.fields.margin),
      depth: sideDots.depth ?? assume(assumed, "sideDots.depth", fields.sideDots.fields.depth),
    },
    pour: isPoured ? completePour(design, assumed) : undefined,
    assumed,
  };
}

/** Notes a default that is used, where it has an effect. */
function assume(
  assumed: Assumed | undefined,
  path: string,
  { usual }: { readonly usual: number },
): number {
  if (assumed) assumed[path] = usual;
  return usual;
}

function completeGroup(
  group: MarkerGroup,
  index: number,
  design: Partial<Design>,
  assumed: Assumed,
): GroupSpec {
  const path = `markers.${index}`;
  const place = (key: Inherited) => (group[key] === undefined ? key : `${path}.${key}`);
  const isPocket = "shape" in group;
  const drilled = group.drilled === true;
  // what is drilled has neither bit nor stop
  const notes = drilled ? undefined : assumed;
  const goals = group.depth !== undefined || group.travel !== undefined ? group : design;
  const paths = {
    group: path,
    fill: place("fill"),
    bit: isPocket ? `${path}.bit` : place("bit"),
    stop: place("stop"),
    depth: goals === group ? `${path}.depth` : "depth",
    travel: goals === group ? `${path}.travel` : "travel",
  };
  // a pocket takes no part in the design's bit
  const bit = group.bit ?? (isPocket ? END_MILL : design.bit);
  return {
    where: group,
    diameter: "diameter" in group ? group.diameter : undefined,
    shape: isPocket ? group.shape : undefined,
    fill: completeFill(group.fill ?? design.fill, paths.fill, assumed),
    bit: completeBit(bit, paths.bit, notes),
    stop: completeStop(group.stop ?? design.stop, paths.stop, notes),
    depth: goals.depth,
    travel: drilled ? undefined : goals.travel,
    drilled,
    path: paths,
  };
}

/** A fill; without one, epoxy poured with the usual keep. */
export function completeFill(fill: Fill | undefined, path: string, assumed: Assumed): FillSpec {
  if (fill === undefined) assumed[`${path}.kind`] = WITHOUT.fill;
  if (fill?.kind === "solid") {
    const keep = fill.keep ?? assume(assumed, `${path}.keep`, FILLS.solid.fields.keep);
    return { kind: "solid", thickness: fill.thickness, keep };
  }
  const keep = fill?.keep ?? assume(assumed, `${path}.keep`, FILLS.poured.fields.keep);
  return { kind: "poured", keep };
}

/** A bit; without one, a Forstner bit with the usual point. */
export function completeBit(
  bit: Bit | undefined,
  path: string,
  assumed: Assumed | undefined,
): BitSpec {
  if (bit?.kind === "end-mill") return END_MILL;
  if (bit?.kind === "twist") {
    const angle = bit.angle ?? assume(assumed, `${path}.angle`, BITS.twist.fields.angle);
    return { kind: "twist", angle };
  }
  if (bit === undefined && assumed) assumed[`${path}.kind`] = WITHOUT.bit;
  const usual = BITS.forstner.fields;
  const point = bit?.point ?? assume(assumed, `${path}.point`, usual.point);
  const spur =
    bit?.spur ?? assume(assumed, `${path}.spur`, { usual: Math.min(usual.spur.usual, point) });
  return { kind: bit?.kind ?? WITHOUT.bit, point, spur };
}

/** A stop; without one, it is zeroed on the wood at every hole. */
export function completeStop(
  stop: Stop | undefined,
  path: string,
  assumed: Assumed | undefined,
): StopSpec {
  const step = stop?.step;
  const correction = stop?.correction ?? 0;
  if (stop?.from === "table") {
    const { zero, height } = stop;
    if (assumed && zero === undefined)
      assumed[`${path}.zero`] = "half way between the nut and fret 1";
    if (assumed && height === undefined)
      assumed[`${path}.height`] = "the thickness of board and neck";
    return { from: "table", zero, height, step, correction };
  }
  if (assumed && stop?.from === undefined) assumed[`${path}.from`] = WITHOUT.stop;
  const foot = stop?.foot ?? assume(assumed, `${path}.foot`, FOOT);
  return { from: WITHOUT.stop, foot, step, correction };
}

function completeChannel(
  { board, neck }: Partial<Design>,
  assumed: Assumed,
): ChannelSpec | undefined {
  const channel = board?.channel;
  if (channel === undefined || channel === "none") return undefined;
  const usual = fields.board.fields.channel.fields;
  const path = "board.channel";
  const depth =
    channel.depth ?? (neck === undefined ? 0 : assume(assumed, `${path}.depth`, usual.depth));
  const from = channel.from ?? assume(assumed, `${path}.from`, usual.from);
  const to =
    channel.to ?? assume(assumed, `${path}.to`, { usual: board?.length ?? Number.MAX_VALUE });
  return { width: channel.width, depth, from, to };
}

const TOLERANCES = Object.entries(fields.tolerance.fields).map(([name, field]) => ({
  name: name as ToleranceName,
  field,
  path: `tolerance.${name}`,
}));

function completeTolerance(
  design: Partial<Design>,
  groups: readonly GroupSpec[],
  assumed: Assumed,
): Spec["tolerance"] {
  const { tolerance } = design;
  // without what a tolerance is of, it is not assumed: it has no effect
  const inUse: Partial<Record<ToleranceName, boolean>> = {
    point: groups.some(({ bit, drilled }) => !drilled && bit.kind !== "end-mill"),
    seat: groups.some(({ stop, drilled }) => !drilled && stop.from === "table"),
    fill: groups.some(({ fill, drilled }) => !drilled && fill.kind === "solid"),
    existing: design.existing !== undefined,
  };
  const laws = { ...USUAL_LAWS };
  for (const { name, field, path } of TOLERANCES) {
    const stated = tolerance?.[name];
    if (stated !== undefined) laws[name] = completeLaw(stated);
    else if (inUse[name] !== false) assume(assumed, path, field);
  }
  return laws;
}

const { coverage } = LAW.variants[0].cases.normal.fields;

/** A tolerance with its law; a number is the limit of a rectangular one. */
export function completeLaw(
  tolerance:
    | Tolerance
    | ({ readonly per?: "hole" | "setting" | undefined } & Exclude<Tolerance, number>),
): LawSpec {
  if (typeof tolerance === "number") {
    return { limit: tolerance, shape: "rectangular", coverage: coverage.usual, per: "setting" };
  }
  const { limit, shape = "rectangular" } = tolerance;
  const stated = tolerance.shape === "normal" ? tolerance.coverage : undefined;
  const per = ("per" in tolerance ? tolerance.per : undefined) ?? "setting";
  return { limit, shape, coverage: stated ?? coverage.usual, per };
}

/** What is assumed of each tolerance. */
const USUAL_LAWS = Object.fromEntries(
  TOLERANCES.map(({ name, field }) => [name, completeLaw(field.usual)]),
) as Record<ToleranceName, LawSpec>;

function completePour({ pour }: Partial<Design>, assumed: Assumed): PourSpec {
  const { waste, ratio } = fields.pour.fields;
  const [resin, hardener] = pour?.ratio ?? [
    assume(assumed, "pour.ratio.0", ratio),
    assume(assumed, "pour.ratio.1", ratio),
  ];
  return { waste: pour?.waste ?? assume(assumed, "pour.waste", waste), resin, hardener };
}
