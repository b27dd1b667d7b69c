/** All words of the pictures: figures, labels, legends and sentences. Lengths in mm, written in the unit asked for. */
import type { Axis } from "../batch/sweep.js";
import { tellChance } from "../card/chance.js";
import type { NumberKind } from "../design/kinds.js";
import { kindAt } from "../design/paths.js";
import { elementAt } from "../geometry/element-at.js";
import { failsWords } from "../text/chance-text.js";
import { fixed, INCH, type Unit } from "../text/length-text.js";
import type { ChanceCurve } from "./chance-reading.js";
import type { Cut } from "./cut.js";
import { type Column, oneLine } from "./label.js";
import type { DrawnHole, DrawnSetting } from "./reading.js";
import { type DrawnMarker, judgeMarker, type Sanded } from "./sanding-rows.js";
import type { SweepCells, Verdict } from "./sweep-cells.js";

/** A length as a unit writes it, with a true minus. */
export function figure(mm: number, { bare }: Unit): string {
  return withMinus(bare(mm));
}

/** A least length: never read too small. */
export function least(mm: number, unit: Unit): string {
  return withMinus(unit.least(mm));
}

/** A greatest length: never read too great. */
export function most(mm: number, unit: Unit): string {
  return withMinus(unit.most(mm));
}

/** One of the unit, mm. */
export function millimetresIn({ short }: Unit): number {
  return short === "in" ? INCH : 1;
}

/** A place on an axis, in the unit. */
export function tickFigure(value: number, decimals: number): string {
  return withMinus(fixed(value, decimals));
}

function withMinus(text: string): string {
  return text.replace("-", "−");
}

/** A title with the neck's name. */
export function titled(
  words: string,
  { name = "" }: { readonly name?: string | undefined },
): string {
  const known = oneLine(name);
  return known === "" ? words : `${words}: ${known}`;
}

/** What sets a window's greatest depth. */
export const LIMITS = {
  web: "web under the bit",
  channel: "web above the channel",
  flush: "must end flush",
} as const;

/** What marks stand for, and other words that never change. */
export const WORDS = {
  wood: "board",
  before: "top and bit, before the radius",
  window: "window: the depths that suit",
  noWindow: "no window: the least lies beyond the most",
  suits: "travels that suit",
  nothingSuits: "no depth suits",
  common: "what all share",
  served: "served by the setting",
  governs: "governs a stop setting",
  planned: "planned",
  channel: "rod channel",
  counted: "so many settings are needed",
  noHoles: "There are no holes to drill.",
  windows:
    "A bar holds the travels of the bit's tip, from its touch, that suit a hole in the worst case.",
  cells: "Each cell is one combination of two numbers of the design.",
  spokenCells: "Settings needed, 0 where no depth suits some hole:",
  print:
    "1 : 1, seen from above. Print at 100 %, not fitted to the page; both rulers must measure.",
  join: " Lay the ringed crosses of two pages over each other.",
  ruler: "100 mm (3 15/16 in)",
  sanding:
    "A row for each reading, from the nut on; a bar begins at the top as it was and tells what is off there.",
  off: "off",
  go: "to go",
  past: "past the finished surface",
  finished: "the finished surface",
  markersLeft: "What is left of each marker above its floor, in the worst case of its depth",
  stays: "stays when finished",
  leftNow: "left now",
  keep: "least to keep",
  lost: "missing",
  noDepth: "No marker's depth is known.",
  chance: "How likely at least one hole fails, over the travel that is set.",
  fails: "chance that a hole fails",
  worstCase: "the worst case's window: nothing fails within the tolerances' limits",
  noWorstCase: "no window: the worst case refuses every travel",
  set: "what is set",
  best: "the likeliest travel",
  settingsAlone: "This tells of stop settings alone: a report may find more that is wrong.",
} as const;

/** A chance as a share of a hundred: “0.001 %”. */
export function tellShare(share: number): string {
  return `${Number((100 * share).toPrecision(6))} %`;
}

/** The likeliest travel, and the travels that are likely to do. */
export function tellBest({ summary }: ChanceCurve, unit: Unit): string {
  return tellChance(summary, unit).join(" ");
}

/** The chances for those who cannot see the curve: some travels with what fails there. */
export function tellChances({ curve }: ChanceCurve, unit: Unit): string[] {
  const every = Math.ceil(curve.length / TOLD);
  return curve
    .filter((_, i) => i % every === 0)
    .map(([travel, fails]) => `${figure(travel, unit)}: ${failsWords(fails)}.`);
}
/** About so many chances are told in words. */
const TOLD = 12;

/** “Lengths in mm.” */
export function tellUnit({ name }: Unit): string {
  return `Lengths in ${name}.`;
}

function count(number: number, noun: string): string {
  return number === 1 ? `1 ${noun}` : `${number} ${noun}s`;
}

/** A drawing's scale: “2.5 : 1”, “1 : 2”. */
function tellScale(scale: number): string {
  const digits = (value: number) => String(Number(value.toPrecision(4)));
  return scale >= 1 ? `${digits(scale)} : 1` : `1 : ${digits(1 / scale)}`;
}

/** The stop plan: each setting with the travels that would do and the holes that govern; holes that no depth suits. */
export function tellPlan(
  holes: readonly DrawnHole[],
  settings: readonly DrawnSetting[],
  unit: Unit,
) {
  const toDrill = holes.filter(({ drilled }) => !drilled);
  const served = settings.map(({ name, set, min, max, minHole, maxHole, ...setting }) => {
    const [low, high] = [elementAt(holes, minHole), elementAt(holes, maxHole)];
    const [floor, roof] = unit.range(min, max, set.mm).map(withMinus);
    const from = `${floor} (${low.name})`;
    const to = `${roof} (${high.name}: ${LIMITS[high.window.maxBy]})`;
    const serves = `for ${setting.holes.length} of ${count(toDrill.length, "hole")}`;
    return `${name.charAt(0).toUpperCase()}${name.slice(1)}: travel ${withMinus(set.text)}, ${serves}; travels from ${from} to ${to} would do.`;
  });
  const closed = toDrill.filter(({ open }) => !open).length;
  const none = `No depth suits ${closed} of ${count(toDrill.length, "hole")}.`;
  return closed === 0 ? served : [...served, none];
}

const NOTHING = "–";

/** The columns behind the windows' bars; those that say nothing are left out. */
export function windowColumns(holes: readonly DrawnHole[], unit: Unit): Column[] {
  const length = (mm: number | undefined) => (mm === undefined ? NOTHING : figure(mm, unit));
  const columns: Column[] = [
    ["least", holes.map(({ window, shift }) => least(window.min + shift, unit)), "end"],
    ["most", holes.map(({ window, shift }) => most(window.max + shift, unit)), "end"],
    ["by", holes.map(({ window }) => window.maxBy), "start"],
    ["set", holes.map(({ setting }) => setting?.letter ?? NOTHING), "start"],
    ["depth", holes.map(({ setting }) => length(setting?.depth)), "end"],
    ["planned", holes.map(({ planned }) => length(planned?.depth)), "end"],
    ["", holes.map(({ open }) => (open ? "" : WORDS.nothingSuits)), "start"],
  ];
  return columns.filter(([, cells]) => cells.some((words) => words !== "" && words !== NOTHING));
}

/** The columns' rows in words: “fret 12, bass: least 1.55, most 3.40, by web.” */
export function tellRows(
  holes: readonly { readonly name: string }[],
  columns: readonly Column[],
): string[] {
  return holes.map(({ name }, i) => {
    const cells = columns.map(([head, cells]) => `${head} ${elementAt(cells, i)}`.trim());
    return `${name}: ${cells.filter((words) => words !== "").join(", ")}.`;
  });
}

/** A section's scales, and where the cut lies. */
export function tellCut(
  { along, curved, main }: Cut,
  across: number,
  exaggeration: number,
  unit: Unit,
) {
  const { offset } = main;
  const scale = `Scale ${tellScale(across)}`;
  const side = offset < 0 ? "bass" : "treble";
  const aside =
    offset === 0 ? "" : `; the hole ${figure(Math.abs(offset), unit)} to the ${side} side`;
  const from = curved
    ? "depths of the hole from the top there, of the board from its crest"
    : "depths from the flat top";
  return [
    exaggeration === 1
      ? `True proportions. ${scale}.`
      : `Vertical scale ×${Number(exaggeration.toFixed(2))}. ${scale} across, ${tellScale(across * exaggeration)} in height.`,
    `Cut square to the centre line, ${figure(along, unit)} from the nut${aside}. Lengths in ${unit.name}; ${from}.`,
  ];
}

/** “Ø 6.35”, of a pocket “33.52”. */
export function tellWidth({ main: { outline, walls } }: Cut, unit: Unit): string {
  const width = walls[1] - walls[0];
  return outline ? figure(width, unit) : `Ø ${unit.bit(width)}`;
}

/** “R 254.00”. */
export function tellRadius({ radius }: Cut, unit: Unit): string {
  return radius === Infinity ? "flat" : `R ${figure(radius, unit)}`;
}

/** “epoxy”, “solid dot”, “solid inlay”. */
export function tellFill({ dot, outline }: DrawnHole): string {
  return dot === undefined ? "epoxy" : `solid ${outline ? "inlay" : "dot"}`;
}

/** A place in a section and its words. */
export type PlaceLabel = readonly [offset: number, depth: number, words: string];

/** Every depth that matters in a section. */
export function labelDepths(cut: Cut, unit: Unit): PlaceLabel[] {
  const { half, thickness, neck, sanding, channel, curved, main } = cut;
  const { window, dot, lead, depth, planned, setting, start, walls, removed } = main;
  const side = main.offset < 0 ? -1 : 1;
  const wall = side < 0 ? walls[0] : walls[1];
  const low = cut.surface(Math.min(half, Math.abs(wall)));
  const deepest = start + window.max;
  const limit = `${LIMITS[window.maxBy]}${deepest > cut.lowest ? "; not to scale" : ""}`;
  const of = (at: number | undefined, words: string, offset = side * half, told = at) => {
    return at === undefined ? [] : [[offset, at, `${figure(told ?? at, unit)} ${words}`] as const];
  };
  const inHole = (depth: number | undefined, words: string) =>
    of(depth === undefined ? undefined : start + depth, words, wall, depth);
  // told apart from the depths that are held against them
  const depths = [planned, setting].flatMap((each) => each?.depth ?? []);
  const [shallow, deep] = unit.range(window.min, window.max, ...depths).map(withMinus);
  const planning = planned?.travel === undefined ? "" : `, travel ${figure(planned.travel, unit)}`;
  return [
    ...of(0, curved ? "crest of the top" : "flat top", curved ? 0 : undefined),
    ...of(sanding, "crest, sanded", 0),
    ...of(thickness, neck > 0 ? "underside of the board" : "underside"),
    ...of(neck > 0 ? thickness + neck : undefined, "underside of the neck"),
    ...of(channel?.roof, "roof of the channel", side * (channel?.half ?? 0)),
    [wall, low, `${figure(removed, unit)} removed at the outer wall`],
    ...inHole(dot && depth - dot, `top of the ${tellFill(main)}, as glued`),
    [wall, start + window.min, `${shallow} least depth`],
    [wall, Math.min(cut.lowest, deepest), `${deep} most depth (${limit})`],
    ...inHole(planned?.depth, `${main.drilled ? "drilled" : "planned depth"}${planning}`),
    ...inHole(setting?.depth, `${setting?.name}, travel ${withMinus(setting?.set.text ?? "")}`),
    ...of(lead > 0 ? start + depth + lead : undefined, "tip of the bit", main.offset, depth + lead),
  ];
}

/** The widths that a section shows, and the radius, in words. */
export function speakWidths(cut: Cut, unit: Unit): string {
  const edge = figure(cut.thickness - cut.surface(cut.half), unit);
  const width = figure(2 * cut.half, unit);
  return `The board is ${width} wide there, finished ${edge} thick at its edges and ${tellRadius(cut, unit)}; the hole ${tellWidth(cut, unit)}.`;
}

/** What the depth drawn leaves, or why the hole is drawn so deep. */
export function tellLeft({ main: { planned, setting } }: Cut, unit: Unit): string[] {
  const drawn = planned ?? setting;
  if (drawn === undefined) return ["Drawn to the least depth, as no setting serves this hole."];
  const amount = (mm: number) =>
    mm > 0 ? most(mm, unit) : `none (${least(-mm, unit)} too little)`;
  const [marker, wood] = [amount(drawn.markerLeft), amount(drawn.woodLeft)];
  return [
    `In the worst case a depth of ${figure(drawn.depth, unit)} leaves ${marker} of the marker and ${wood} of wood under the bit.`,
  ];
}

/** A plan's scale, and what is written below. */
export function tellView(scale: number, holes: number, { name }: Unit): string {
  const below = "; below: each marker's distance from the nut, then from the centre line";
  return `Seen from above, the nut on the left. Scale ${tellScale(scale)}. Lengths in ${name}${holes === 0 ? "" : below}.`;
}

/** Markers of one fret, all equally far from the nut: “fret 12: 314.32, ± 13.03”. */
export function labelPlace(group: readonly DrawnHole[], unit: Unit): string {
  const { fret, along } = elementAt(group, 0);
  const asides = new Map<string, string>();
  for (const { offset } of group) {
    const [aside, side] = [figure(Math.abs(offset), unit), offset < 0 ? "bass" : "treble"];
    asides.set(aside, (asides.get(aside) ?? side) === side ? side : "±");
  }
  asides.delete(figure(0, unit));
  const sides = [...asides].map(([aside, side]) => `, ${side} ${aside}`);
  return `fret ${fret}: ${figure(along, unit)}${sides.join("")}`;
}

/** The body end's distance from the nut. */
export function labelEnd(length: number, unit: Unit): string {
  return `end: ${figure(length, unit)}`;
}

/** What a sweep's cells stand for. */
export const VERDICTS: Readonly<Record<Verdict, string>> = {
  one: "one setting suits all holes",
  several: "more settings are needed",
  none: "no depth suits some hole",
  unread: "cannot be made, or has no hole",
  "left out": "not worked out",
};

/** The values of an axis: “305”, “6.35”, “flat”. Inches are as short as tells them apart. */
export function labelValues({ path, values }: Axis, unit: Unit): string[] {
  const size = isLength(path) ? millimetresIn(unit) : 1;
  const write = (digits: number) =>
    values.map((value) =>
      value === Infinity ? "flat" : withMinus(String(Number((value / size).toPrecision(digits)))),
    );
  const short = write(4);
  return size === 1 || new Set(short).size < values.length ? write(6) : short;
}

/** Units by kinds of number; others are lengths. */
const UNITS: Partial<Record<NumberKind["kind"], string>> = {
  angle: "degrees",
  fraction: "a fraction",
  count: "fret",
  factor: "a number",
};

function isLength(path: string): boolean {
  return UNITS[kindAt(path)?.kind ?? "length"] === undefined;
}

/** An axis' path with its unit. */
export function labelAxis(path: string, { short }: Unit): string {
  return `${path}, ${UNITS[kindAt(path)?.kind ?? "length"] ?? short}`;
}

/** The values that are held. */
export function tellHeld({ held }: SweepCells, unit: Unit): string[] {
  const each = held.map(({ path, value, of }) => {
    const [label] = labelValues({ path, values: [value] }, unit);
    return `${labelAxis(path, unit)}: ${label}${of > 1 ? ` (one of ${of} values)` : ""}`;
  });
  return each.length === 0 ? [] : [`Held: ${each.join("; ")}.`];
}

/** How many cells one setting does for. */
export function tellCells({ rows }: SweepCells): string {
  const known = rows.flat().filter(({ verdict }) => verdict !== "left out");
  const ones = known.filter(({ verdict }) => verdict === "one").length;
  const which = known.length < rows.flat().length ? " worked out" : "";
  return `One stop setting suits all holes in ${ones} of ${count(known.length, "combination")}${which}.`;
}

/** How many settings the cells of each row need: “board.thickness 3, radius from 184 to 254: 0, 2, 1.” */
export function tellSweep({ x, y, rows }: SweepCells, unit: Unit): string[] {
  const [columns, names] = [labelValues(x, unit), y && labelValues(y, unit)];
  const ends = [columns[0], columns.at(-1)].join(" to ");
  return rows.map((row, i) => {
    const name = y ? `${y.path} ${names?.[i]}, ` : "";
    return `${name}${x.path} from ${ends}: ${row.map(({ settings }) => settings).join(", ")}.`;
  });
}

/** Where across the board a reading was taken. */
export const PLACES = { bass: "bass edge", centre: "centre line", treble: "treble edge" } as const;

/** The columns beside the bars of one place: what is off, and what is still to go, never read too great. */
export function sandedColumns(sanded: readonly (Sanded | undefined)[], unit: Unit): Column[] {
  const toGo = (each: Sanded) =>
    each.past ? `${unit.miss(-each.toGo)} past` : most(each.toGo, unit);
  return [
    [WORDS.off, sanded.map((each) => (each ? figure(each.off, unit) : NOTHING)), "end"],
    [WORDS.go, sanded.map((each) => (each ? toGo(each) : NOTHING)), "end"],
  ];
}

const STATES = {
  gone: "may be gone",
  below: "below its keep",
  will: "will be below",
  kept: "",
} as const;

/** The columns beside the markers' bars. */
export function markerColumns(markers: readonly DrawnMarker[], unit: Unit): Column[] {
  const columns: Column[] = [
    ["now", markers.map(({ now }) => most(now, unit)), "end"],
    ["finished", markers.map(({ finished }) => most(finished, unit)), "end"],
    ["keep", markers.map(({ keep }) => least(keep, unit)), "end"],
    ["", markers.map((marker) => STATES[judgeMarker(marker)]), "start"],
  ];
  return columns.filter(([, cells]) => cells.some((cell) => cell !== ""));
}

/** “page 1 of 2”. */
export function tellPage(page: number, pages: number): string {
  return `page ${page + 1} of ${pages}`;
}

/** Holes on a page, by their numbers in the report: “5 fret 12, bass”. */
export function labelHole({ name, drilled }: DrawnHole, index: number): string {
  return `${index + 1} ${name}${drilled ? " (drilled)" : ""}`;
}
