/** What a design leaves open and the check assumed, in plain words from the table of fields. */
import { DESIGN } from "../design/fields.js";
import { type Form, listFields } from "../design/kinds.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { wrapped } from "../text/text-layout.js";

/** One assumption in plain words, and where the design can say otherwise. */
export interface Assumption {
  readonly words: string;
  readonly path: string;
}

/** A line for each assumption, with its place in the design. */
export function assumedLines(report: Report, unit: Unit): string[] {
  const lines = tellAssumed(report, unit).map(({ words, path }) => `- ${words} (${path})`);
  if (lines.length === 0) return [];
  const head = "ASSUMED   (the design does not say; in brackets where it can)";
  return [head, ...lines.flatMap((line) => wrapped(line, "  ", "    "))];
}

/** Every assumption, in the report's order. */
export function tellAssumed({ assumed }: Report, unit: Unit): Assumption[] {
  const paths = Object.keys(assumed).filter((path) => path !== "pour.ratio.1");
  return paths.map((path) => ({
    words: wordsFor(path, assumed, unit),
    path: path === "pour.ratio.0" ? "pour.ratio" : path,
  }));
}

/** “Least wood to be left under every part of the bit: 1.00 mm”. */
function wordsFor(path: string, assumed: Report["assumed"], unit: Unit): string {
  const value = assumed[path] as number | string;
  if (path === "pour.ratio.0") {
    return `Resin and hardener, parts by volume: ${value} and ${assumed["pour.ratio.1"]}`;
  }
  const word = WORDS[value];
  if (word !== undefined) return word;
  const said = findSentence(path.split("."), DESIGN) ?? path;
  // “…, ± mm; 0 where …” → “…: ± 0.10 mm”
  const [clause = ""] = said.replace(/\.$/, "").split(/[;:]/);
  const [, what = "", sign = "", kind = "", more = ""] = CLAUSE.exec(clause) ?? [];
  const told = typeof value === "number" ? sign + amountWords(value, kind, unit) + more : value;
  return `${what.replace(/^Of /, "Tolerance of ")}: ${told}`;
}

/** What a field is, and the unit that it is in. */
const CLAUSE = /^(.*?)(?:, (± )?(mm|degrees|a fraction)\b(.*))?$/;

const WORDS: Readonly<Record<number | string, string>> = {
  poured: "The holes are filled with poured epoxy",
  forstner: "A Forstner bit drills the holes",
  wood: "The stop is zeroed anew on the wood at every hole",
};

function amountWords(value: number, kind: string, unit: Unit): string {
  if (kind === "mm") return unit.full(value);
  return kind === "a fraction" ? `${100 * value} %` : `${value} ${kind}`;
}

/** What the table says of the field at a path. */
function findSentence([key, ...rest]: readonly string[], form: Form): string | undefined {
  for (const [name, field] of listFields(form)) {
    if (name !== key) continue;
    if (rest.length === 0) return field.says;
    const inner = field.kind === "list" ? field.item : field;
    const under = field.kind === "list" ? rest.slice(1) : rest;
    if (inner.kind === "object") return findSentence(under, inner);
  }
  return undefined;
}
