/** How likely all goes well, in a sentence or two. Lengths in mm. */
import type { ChanceSummary } from "../chance/summary.js";
import { refused, tryRead } from "../errors/errors.js";
import { failsWords, holdsWords } from "../text/chance-text.js";
import type { Unit } from "../text/length-text.js";
import { wrapped } from "../text/text-layout.js";

/** What was handed in as a summary, read once; throws RangeError where it is none. */
export function readSummary(given: unknown): ChanceSummary | undefined {
  if (given === undefined) return undefined;
  const summary = tryRead("options.chance", given, () => structuredClone(given) as ChanceSummary);
  const isSound = tryRead("options.chance", given, () => isSummary(summary));
  if (isSound) return summary;
  throw refused("options.chance", given, "what `summarizeChance` returned");
}

function isSummary({ count, fails, level, worst, best }: ChanceSummary): boolean {
  const isChance = (value: unknown) => typeof value === "number" && value >= 0 && value <= 1;
  return (
    Number.isSafeInteger(count) &&
    [fails, level, worst?.fails ?? 0, best?.fails ?? 0].every(isChance) &&
    (worst === null || (typeof worst.name === "string" && Object.hasOwn(RULES, worst.rule))) &&
    [best?.travel ?? 0, best?.range?.min ?? 0, best?.range?.max ?? 0].every(Number.isFinite)
  );
}

const RULES = {
  keep: "its keep",
  web: "the web under it",
  channel: "the web above the rod channel",
  flush: "its top, to be flush",
} as const;

/** What the card says of chances, a sentence each. */
export function tellChance(chance: ChanceSummary, unit: Unit): string[] {
  const { count, fails, worst, best, level } = chance;
  if (count === 0) return [];
  const all = count === 1 ? "The one hole holds" : `All ${count} holes hold`;
  const weakest =
    worst === null
      ? ""
      : `; most likely to fail: ${worst.name}, ${RULES[worst.rule]}, ${failsWords(worst.fails)}`;
  return [
    `${all}: ${holdsWords(fails)}${weakest}.`,
    ...(best ? [tellBest(best, level, unit)] : []),
  ];
}

function tellBest(
  { travel, fails, range }: NonNullable<ChanceSummary["best"]>,
  level: number,
  unit: Unit,
): string {
  const told = `The likeliest travel is ${unit.full(travel)}: ${holdsWords(fails)}.`;
  const share = `${Number((100 * level).toFixed(4))} %`;
  if (range === null) return `${told} No travel gives ${share}.`;
  const [least, most] = unit.range(range.min, range.max);
  return `${told} From ${least} to ${most} ${unit.short} it is ${share} or more.`;
}

/** The same as lines of a card. */
export function chanceLines(chance: ChanceSummary | undefined, unit: Unit): string[] {
  const told = chance ? tellChance(chance, unit) : [];
  if (told.length === 0) return [];
  const key = "CHANCE   (each tolerance as likely as its law says; all else as the design has it)";
  return [key, ...told.flatMap((text) => wrapped(text, "  "))];
}
