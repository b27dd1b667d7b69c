/** Every sentence that a finding can say, each a function of the finding alone. */
import type { FindingFacts } from "./findings.js";
import { MILLIMETRES, type Unit } from "./length-text.js";

/** The finding's sentence, its lengths in millimetres unless another unit is given. */
export function sentenceOf(finding: FindingFacts, unit: Unit = MILLIMETRES): string {
  const length = unit.full;
  return SENTENCES[finding.code](finding, {
    place: placeOf(finding),
    value: length(finding.value),
    short: length(-finding.value),
    limit: length(finding.limit),
    depths: (finding.depths ?? []).map(length),
  });
}

interface Words {
  readonly place: string;
  readonly value: string;
  /** The value with its sign turned, for one that is negative where things are wrong. */
  readonly short: string;
  readonly limit: string;
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
  "no-depth": (finding, { place, value, limit }) =>
    `No depth suits ${place}: it needs at least ${value} to outlast the radius, and at most ${limit} ${MAX_REASON[finding.maxBy ?? "web"]}.`,
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
};

function placeOf({ code, fret, side, station }: FindingFacts): string {
  if (station === "nut") return "at the nut";
  if (station === "end") return "at the body end";
  if (fret === undefined) return "the board";
  if (code === "thin-edge" || code === "dots-overlap") return `at fret ${fret}`;
  const dot = side === "bass" || side === "treble" ? `the ${side} dot` : "the dot";
  return `${dot} at fret ${fret}`;
}

/** “a, b and c”. */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
