/** Every sentence that a finding can say, each a function of the finding alone. */
import { elementAt } from "../geometry/element-at.js";
import { MILLIMETRES, type Unit } from "../text/length-text.js";
import { stationName } from "../text/plain-words.js";
import { ABOUT_MARKER, type FindingFacts } from "./findings.js";
import type { Remedy } from "./remedies.js";

/** The finding's sentence, its lengths in millimetres unless another unit is given. */
export function sentenceOf(finding: FindingFacts, unit: Unit = MILLIMETRES): string {
  const length = unit.full;
  return SENTENCES[finding.code](finding, {
    place: placeOf(finding),
    value: length(finding.value),
    short: length(-finding.value),
    limit: length(finding.limit),
    leastValue: `${unit.least(finding.value)} ${unit.short}`,
    leastLimit: `${unit.least(finding.limit)} ${unit.short}`,
    mostLimit: `${unit.most(finding.limit)} ${unit.short}`,
    depths: (finding.depths ?? []).map(length),
  });
}

interface Words {
  readonly place: string;
  readonly value: string;
  /** The value with its sign turned, for one that is negative where things are wrong. */
  readonly short: string;
  readonly limit: string;
  /** Where they are bounds: never written on the wrong side. */
  readonly leastValue: string;
  readonly leastLimit: string;
  readonly mostLimit: string;
  readonly depths: readonly string[];
}

const MAX_REASON = {
  web: "to leave the web under the bit",
  channel: "to leave the web above the rod channel",
  flush: "to keep the dot's top flush",
} as const;

const SENTENCES: Readonly<
  Record<FindingFacts["code"], (finding: FindingFacts, words: Words) => string>
> = {
  "nothing-left": (_, { place, short }) =>
    `Nothing may be left of ${place}: in the worst case the radius reaches ${short} below the bottom of its hole.`,
  "below-keep": (_, { place, value, limit }) =>
    `Only ${value} of ${place} may be left after the radius; ${limit} should be.`,
  "breaks-through": (_, { place, short }) =>
    `The bit may break through under ${place}: in the worst case it goes ${short} too far.`,
  "below-web": (_, { place, value, limit }) =>
    `Only ${value} of wood may be left under the bit at ${place}; ${limit} should be.`,
  "below-surface": (_, { place, short }) =>
    `The top of ${place} may end ${short} below the finished surface.`,
  "no-depth": (finding, { place, leastValue, mostLimit }) =>
    `No depth suits ${place}: it needs at least ${leastValue} to outlast the radius, and at most ${mostLimit} ${MAX_REASON[finding.maxBy ?? "web"]}.`,
  "several-settings": (finding, { depths }) =>
    `One stop setting cannot serve all holes; ${finding.value} settings do: rim depths ${joined(depths)}.`,
  "several-travels": (finding) =>
    `The bits used at one depth lead their rims by ${finding.value} different lengths; touch off and set the stop for each bit anew.`,
  "cuts-slot": (_, { place, short }) =>
    `The edge of ${place} cuts ${short} into a fret slot or the nut.`,
  "near-slot": (_, { place, value, limit }) =>
    `The edge of ${place} lies ${value} from a fret slot or the nut; ${limit} is wanted.`,
  "past-edge": (_, { place, short }) => `The edge of ${place} passes the board's edge by ${short}.`,
  "dots-overlap": (_, { place, value, limit }) =>
    `Two dots ${place} overlap: their centres lie ${value} apart, and they touch at ${limit}.`,
  "thin-edge": (_, { place, value, limit }) =>
    `The board's edge ${place} may be left ${value} thick after the radius; ${limit} should be.`,
  "no-slot-depth": (_, { place, leastValue, mostLimit }) =>
    `No saw depth suits all slots: ${place} one must be at least ${leastValue} deep, and elsewhere at most ${mostLimit}.`,
  "slot-too-shallow": (_, { place, value, leastLimit }) =>
    `The slot ${place} is ${value} deep from the flat; after the radius its tang needs ${leastLimit} at the edges.`,
  "slot-too-deep": (_, { place, value, mostLimit }) =>
    `The slot ${place} is ${value} deep from the flat; ${mostLimit} would leave the web under it.`,
  "side-dot-tight": (_, { place, value, limit }) =>
    `The edge face beside the marker ${place} may be left ${value} high; the side dot and its margins need ${limit}.`,
  "side-dot-meets-hole": (_, { place, short }) =>
    `The side dot's hole meets the hole of ${place}: they overlap by ${short} in height.`,
  "side-dot-meets-slot": (_, { place, short }) =>
    `The side dot ${place} meets a fret slot: they overlap by ${short} in height.`,
};

function placeOf({ code, fret, side, station }: FindingFacts): string {
  if (station === "nut") return "at the nut";
  if (station === "end") return "at the body end";
  if (fret === undefined) return "the board";
  if (!ABOUT_MARKER.has(code) && code !== "side-dot-meets-hole") return `at fret ${fret}`;
  const dot = side === "bass" || side === "treble" ? `the ${side} dot` : "the dot";
  return `${dot} at fret ${fret}`;
}

/** A remedy in a builder's words, its threshold rounded to the safe side. */
export function remedyWords({ change, from, to }: Remedy, unit: Unit = MILLIMETRES): string {
  const keys = change.split(".");
  const isGroups = keys[0] === "markers";
  const last = elementAt(keys, keys.length - 1);
  const isStation = last === "nut" || last === "end" || last.startsWith("fret");
  const number = keys.slice(isGroups ? 2 : 0, isStation ? -1 : undefined).join(".");
  const words = (isGroups && GROUP_WORDS[number]) || REMEDY_WORDS[number] || change;
  const place = isStation ? ` at ${stationWords(last)}` : "";
  const which = isGroups ? ` (group ${Number(keys[1]) + 1})` : "";
  const what = `${words}${place}${which},`;
  // a blunter bit has a greater angle: the whole degree above is on the safe side
  if (last === "angle") return `${what} ${Math.ceil(to)} degrees instead of ${from}`;
  const safe = to > from ? unit.least(to) : unit.most(to);
  return `${what} ${safe} instead of ${unit.bare(from)}`;
}

/** Words for each number that a change can change, wherever it stands. */
const REMEDY_WORDS: Readonly<Record<string, string>> = {
  "board.thickness": "a thicker blank",
  "board.channel.depth": "a shallower rod channel",
  radius: "a flatter radius",
  web: "a thinner web",
  depth: "another depth for all",
  diameter: "a smaller dot",
  spread: "the pair's spread",
  "bit.point": "a shorter point",
  "bit.angle": "a blunter twist bit",
  "fill.keep": "a thinner keep",
  "fill.thickness": "a thicker dot",
  "slot.depth": "another saw depth",
  "slot.tang": "a shorter tang",
  "slot.clearance": "less clearance under the tang",
  "slot.web": "a thinner web under the slots",
  "sideDots.diameter": "a smaller side dot",
  "sideDots.margin": "a smaller margin around the side dots",
  "sideDots.depth": "shallower side dot holes",
};

/** Words for a number that in a group is another thing than in the design. */
const GROUP_WORDS: Readonly<Record<string, string>> = { depth: "a separate setting" };

function stationWords(station: string): string {
  return station.startsWith("fret") ? stationName(station) : `the ${station}`;
}

/** “a, b and c”. */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return String(words);
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
