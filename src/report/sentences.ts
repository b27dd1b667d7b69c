/** Every sentence that a finding can say, each a function of the finding alone. */
import { elementAt } from "../geometry/element-at.js";
import { MILLIMETRES, type Unit } from "../text/length-text.js";
import { stationName } from "../text/plain-words.js";
import { ABOUT_HOLE_ALONE, type FindingCode, type FindingFacts } from "./findings.js";

/** The finding's sentence, its lengths in millimetres unless another unit is given. */
export function tell(finding: FindingFacts, unit: Unit = MILLIMETRES): string {
  const { value, limit, suits = [] } = finding;
  return SENTENCES[finding.code]({
    ...finding,
    unit,
    place: placeOf(finding),
    both: () => unit.beside(value, limit),
    miss: () => unit.miss(value - limit),
    range: () => suits.map(unit.full),
  });
}

/** A finding with its numbers as words. */
interface Words extends FindingFacts {
  readonly unit: Unit;
  readonly place: string;
  /** The value, and the limit beside it. */
  readonly both: () => readonly [told: string, wanted: string];
  /** By how much the limit is missed. */
  readonly miss: () => string;
  readonly range: () => readonly string[];
}

const MAX_REASON = {
  web: "to leave the web under the bit",
  channel: "to leave the web above the rod channel",
  flush: "to keep the dot's top flush",
} as const;

const SENTENCES: Readonly<Record<FindingCode, (words: Words) => string>> = {
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
  "several-settings": ({ value, range }) =>
    `One stop setting cannot serve all holes of a bit; ${value} settings do: travels ${joined(range())}.`,
  "several-travels": ({ value, range }) =>
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
  "no-step": ({ range, value, unit }) =>
    `No step of ${unit.full(value)} lies between ${range().join(" and ")}: set the stop between its steps.`,
  "near-channel": ({ place, both }) =>
    `Over the rod channel ${place} leaves ${both()[0]} beyond the web: epoxy may leak and glue the rod.`,
  "unlikely-value": ({ path, value, suits }) =>
    suits === undefined
      ? `${path} is ${value} mm, which is unlikely.`
      : `${path} is ${value} mm, which is unlikely; were ${value} inches meant, ${elementAt(suits, 0).toFixed(1)} mm?`,
  "assumed-point": ({ path, value, unit }) =>
    `The point's length is assumed: measure your bit's and state it as ${path}. Travel = depth + point; here ${unit.full(value)} was taken.`,
  "assumed-zero": ({ place, miss, path }) =>
    `How the stop is zeroed is assumed: anew on the wood at every hole. Zeroed once, ${place} would come out ${miss()} off; state ${path}.`,
  "assumed-foot": ({ path }) =>
    `What bears on the curved top at the touch is assumed: the bit's point alone. State its width as ${path}.`,
};

/** A sentence that sets the value beside its limit. */
function compared(
  say: (place: string, told: string, wanted: string, words: Words) => string,
): (words: Words) => string {
  return (words) => say(words.place, ...words.both(), words);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function placeOf({ code, fret, side, station }: FindingFacts): string {
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
