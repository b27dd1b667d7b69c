/** Every sentence that a finding can say, each a function of the finding alone. */
import { elementAt } from "../geometry/element-at.js";
import { MILLIMETRES, type Unit } from "../text/length-text.js";
import { stationName } from "../text/plain-words.js";
import { ABOUT_HOLE_ALONE, type FindingCode, type FindingFacts } from "./findings.js";
import type { Remedy } from "./remedies.js";

/** The finding's sentence, its lengths in millimetres unless another unit is given. */
export function tell(finding: FindingFacts, unit: Unit = MILLIMETRES): string {
  const { value, limit, suits = [] } = finding;
  const words: Words = {
    unit,
    place: describePlace(finding),
    both: () => unit.beside(value, limit),
    miss: () => unit.miss(value - limit),
    range: () => suits.map(unit.full),
  };
  return SENTENCES[finding.code](words, finding);
}

/** A finding's numbers as words. */
interface Words {
  readonly unit: Unit;
  readonly place: string;
  /** The value, and the limit beside it. */
  readonly both: () => readonly [told: string, wanted: string];
  /** By how much the limit is missed. */
  readonly miss: () => string;
  readonly range: () => readonly string[];
}

type Sentence = (words: Words, finding: FindingFacts) => string;

const MAX_REASON = {
  web: "to leave the web under the bit",
  channel: "to leave the web above the rod channel",
  flush: "to keep the dot's top flush",
} as const;

const SENTENCES: Readonly<Record<FindingCode, Sentence>> = {
  "nothing-left": ({ place, miss }) =>
    `${capital(place)} may be sanded away: in the worst case the radius comes ${miss()} below its floor.`,
  "below-keep": compared(
    (place, told, wanted) =>
      `As little as ${told} of ${place} could remain after the radius; keep ${wanted}.`,
  ),
  "breaks-through": ({ place, miss }) =>
    `The bit may break through under ${place}: in the worst case it goes ${miss()} too far.`,
  "below-web": compared(
    (place, told, wanted) =>
      `As little as ${told} of wood could remain under the bit at ${place}; leave ${wanted}.`,
  ),
  "below-surface": ({ place, miss }) =>
    `The top of ${place} may end ${miss()} below the finished surface.`,
  "no-depth": compared(
    (place, told, wanted, { maxBy }) =>
      `No depth suits ${place}: it needs at least ${told} to outlast the radius, and at most ${wanted} ${MAX_REASON[maxBy ?? "web"]}.`,
  ),
  "several-settings": ({ range }, { value }) =>
    `One stop setting cannot serve all holes of a bit; ${value} settings do: travels ${joined(range())}.`,
  "several-travels": ({ range }, { value }) =>
    `One travel cannot serve all bits; zero and set the stop anew for each of ${value}: travels ${joined(range())}.`,
  "cuts-slot": ({ place, miss }) => `${capital(place)} cuts ${miss()} into a fret slot or the nut.`,
  "near-slot": compared(
    (place, told, wanted) =>
      `The rim of ${place} lies ${told} from a fret slot or the nut; ${wanted} is wanted.`,
  ),
  "past-edge": ({ place, miss }) =>
    `${capital(place)} passes the board's edge or end by ${miss()}.`,
  "dots-overlap": ({ place, miss }) => `${capital(place)} overlaps another hole by ${miss()}.`,
  "thin-edge": compared(
    (place, told, wanted) =>
      `The board's edge ${place} may be left ${told} thick after the radius; ${wanted} is wanted.`,
  ),
  "no-slot-depth": compared(
    (place, told, wanted) =>
      `No saw depth suits all slots: the one ${place} must be at least ${told} deep, and elsewhere ${wanted} is the most.`,
  ),
  "slot-too-shallow": compared(
    (place, told, wanted) =>
      `The slot ${place} is sawn ${told} deep; after the radius its tang needs ${wanted} at the edges. Saw it deeper before, or deepen it after.`,
  ),
  "slot-too-deep": compared(
    (place, told, wanted) =>
      `The slot ${place} is sawn ${told} deep; ${wanted} would leave the web under it.`,
  ),
  "side-dot-tight": compared(
    (place, told, wanted) =>
      `The edge's face beside the marker ${place} may be left ${told} high; the side dot and its margins need ${wanted}.`,
  ),
  "side-dot-meets-hole": ({ place, miss }) =>
    `The side dot's hole may meet the hole of ${place}: in the worst case they overlap by ${miss()} in height.`,
  "side-dot-meets-slot": ({ place, miss }) =>
    `The side dot ${place} may meet a fret slot: in the worst case they overlap by ${miss()} in height.`,
  "radius-not-reached": compared(
    (_, told, wanted) =>
      `Sanding ${told} off does not reach the new radius at the edges; ${wanted} is the least that does.`,
  ),
  "fret-past-end": compared(
    (_, told, wanted, { fret }) =>
      `Fret ${fret} lies ${told} from the nut, past the end of the board at ${wanted}.`,
  ),
  "no-step": ({ range, miss }) =>
    `No step of the stop lies between ${range().join(" and ")}, the nearest is ${miss()} off: set the stop between its steps.`,
  "near-channel": ({ place, both }) =>
    `Over the rod channel ${place} leaves ${both()[0]} beyond the web: epoxy may leak and glue the rod.`,
  "unlikely-value": (_, { path, value, suits }) =>
    suits === undefined
      ? `${path} is ${value} mm, which is unlikely.`
      : `${path} is ${value} mm, which is unlikely; were ${value} inches meant, ${elementAt(suits, 0).toFixed(1)} mm?`,
  "assumed-point": ({ unit }, { path, value }) =>
    `The point's length is assumed: measure your bit's and state it as ${path}. Travel = depth + point; here ${unit.full(value)} was taken.`,
  "assumed-zero": ({ place, miss }, { path }) =>
    `How the stop is zeroed is assumed: anew on the wood at every hole. Zeroed once, ${place} would come out ${miss()} off; state ${path}.`,
  "assumed-foot": (_, { path }) =>
    `What bears on the curved top at the touch is assumed: the bit's point alone. State its width as ${path}.`,
};

/** A sentence that sets the value beside its limit. */
function compared(
  say: (place: string, told: string, wanted: string, finding: FindingFacts) => string,
): Sentence {
  return ({ place, both }, finding) => say(place, ...both(), finding);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function describePlace({ code, fret, side, station }: FindingFacts): string {
  if (station === "nut") return "at the nut";
  if (station === "end") return "at the body end";
  if (fret === undefined) return "the board";
  if (!ABOUT_HOLE_ALONE.has(code) && !ABOUT_HOLE.has(code))
    return `at ${stationName(station ?? `fret${fret}`)}`;
  const dot = side === "bass" || side === "treble" ? `the ${side} marker` : "the marker";
  return `${dot} at fret ${fret}`;
}

/** Findings beside those about a marker alone that name one. */
const ABOUT_HOLE: ReadonlySet<FindingCode> = new Set([
  "side-dot-meets-hole",
  "dots-overlap",
  "near-channel",
  "assumed-zero",
  "assumed-foot",
] as const);

/** “a, b and c”. */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return String(words);
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** A remedy in a builder's words, its threshold rounded to the safe side; what was assumed is named as it is to be stated. */
export function tellRemedy(
  { change, from, to }: Remedy,
  unit: Unit = MILLIMETRES,
  assumed: Readonly<Record<string, number | string>> = {},
): string {
  const keys = change.split(".");
  const isListed = keys[0] === "markers";
  const last = elementAt(keys, keys.length - 1);
  const isStation = last === "nut" || last === "end" || /^fret\d+$/.test(last);
  const number = keys.slice(isListed ? 2 : 0, isStation ? -1 : undefined).join(".");
  const [more, less] = REMEDY_WORDS[number.replace(/^places\.\d+\./, "")] ?? [change, change];
  const station = isStation
    ? ` at ${last.startsWith("fret") ? stationName(last) : `the ${last}`}`
    : "";
  const group = isListed ? ` (group ${Number(keys[1]) + 1})` : "";
  const place = keys[2] === "places" ? ` (place ${Number(keys[3]) + 1})` : "";
  const kind = assumed[`${keys.slice(0, -1).join(".")}.kind`];
  const state = kind === undefined ? "" : `, stated with its kind "${kind}"`;
  const [now, was] = thresholdWords(change, from, to, unit);
  return `${to < from ? less : more}${station}${group}${place}, ${now} instead of ${was}${state}`;
}

/** The threshold on its safe side, and what stands; digits enough to tell them apart. */
function thresholdWords(change: string, from: number, to: number, unit: Unit): [string, string] {
  if (change.endsWith(".angle")) {
    const degrees = to > from ? Math.ceil(to) : Math.floor(to);
    return [`${degrees} degrees`, String(from)];
  }
  const bare = (value: number) => (value < Infinity ? unit.bare(value) : "flat");
  if (to === from || to === Infinity) return [bare(to), bare(from)];
  const safe = to > from ? unit.least(to) : unit.most(to);
  if (safe !== bare(from)) return [safe, bare(from)];
  const [was, now] = unit.beside(from, to);
  return [now, was];
}

/** Words for more and for less of each number that a remedy can change, wherever it stands. */
const REMEDY_WORDS: Readonly<Record<string, readonly [more: string, less: string]>> = {
  "board.thickness": ["a thicker board", "a thinner board"],
  "board.channel.width": ["a wider rod channel", "a narrower rod channel"],
  "board.channel.depth": ["a deeper rod channel", "a shallower rod channel"],
  "board.channel.from": ["a rod channel that begins later", "a rod channel that begins earlier"],
  "board.channel.to": ["a rod channel that ends later", "a rod channel that ends earlier"],
  "neck.thickness": ["a thicker neck", "a thinner neck"],
  radius: ["a flatter radius", "a tighter radius"],
  sanding: ["more sanding", "less sanding"],
  web: ["a thicker web", "a thinner web"],
  depth: ["a greater depth", "a smaller depth"],
  travel: ["a longer travel", "a shorter travel"],
  diameter: ["a larger dot", "a smaller dot"],
  spread: ["a pair farther apart", "a pair closer together"],
  gap: ["a wider gap at the edge", "a narrower gap at the edge"],
  along: ["a place farther from the nut", "a place nearer the nut"],
  offset: ["a place more to the treble side", "a place more to the bass side"],
  "shape.length": ["a longer pocket", "a shorter pocket"],
  "shape.width": ["a wider pocket", "a narrower pocket"],
  "shape.slotGap": ["more room beside the slots", "less room beside the slots"],
  "shape.edgeGap": ["more room beside the edges", "less room beside the edges"],
  "bit.point": ["a longer point", "a shorter point"],
  "bit.spur": ["a longer spur", "a shorter spur"],
  "bit.angle": ["a blunter twist bit", "a sharper twist bit"],
  "fill.keep": ["more to keep", "less to keep"],
  "fill.thickness": ["a thicker dot", "a thinner dot"],
  "stop.step": ["a coarser step of the stop", "a finer step of the stop"],
  "stop.foot": ["a wider foot", "a narrower foot"],
  "stop.correction": ["a greater correction of the stop", "a smaller correction of the stop"],
  "stop.zero": ["a touch farther from the nut", "a touch nearer the nut"],
  "stop.height": ["a crest higher above the table", "a crest lower above the table"],
  "slot.depth": ["a greater saw depth", "a smaller saw depth"],
  "slot.tang": ["a longer tang", "a shorter tang"],
  "slot.clearance": ["more clearance under the tang", "less clearance under the tang"],
  "slot.web": ["a thicker web under the slots", "a thinner web under the slots"],
  "sideDots.diameter": ["a larger side dot", "a smaller side dot"],
  "sideDots.margin": [
    "a wider margin around the side dots",
    "a narrower margin around the side dots",
  ],
  "sideDots.depth": ["deeper side dot holes", "shallower side dot holes"],
};
