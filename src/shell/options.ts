/** The command line, read by Node's own parser. Lengths in mm. */
import { parseArgs } from "node:util";
import { lengthIn } from "../files/length.js";
import { HALF_MILLIMETRES, SIXTEENTHS } from "../report/racks.js";
import type { MisdrilledHole } from "../report/repair.js";
import { didYouMean, nearestName } from "../text/nearest-name.js";

const OPTIONS = {
  json: { type: "boolean" },
  csv: { type: "boolean" },
  inches: { type: "boolean" },
  remedies: { type: "boolean" },
  "no-remedies": { type: "boolean" },
  repair: { type: "string" },
  rack: { type: "string" },
  sanding: { type: "string" },
  svg: { type: "string" },
  help: { type: "boolean" },
  version: { type: "boolean" },
} as const;

/** How the designs are printed. */
export type Format = "cards" | "json" | "csv" | "notes";

/** A repair that is asked for. */
export interface RepairOrder {
  readonly hole: MisdrilledHole;
  readonly rack: readonly number[];
}

/** What the command line asks for. */
export interface Options {
  readonly ask: "check" | "help" | "version";
  readonly inputs: readonly string[];
  readonly format: Format;
  readonly unit: "mm" | "in";
  /** Remedies are sought: always for cards, for JSON where asked for. */
  readonly remedies: boolean;
  readonly repair?: RepairOrder;
  /** The file of readings. */
  readonly sanding?: string;
  /** The folder for pictures. */
  readonly svg?: string;
}

/** A mistake in the command line. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** Reads the words after the command's name. Throws a `UsageError`. */
export function readOptions(words: readonly string[]): Options {
  const { values, positionals } = parsed(words);
  const { json = false, csv = false, inches = false, help, version, svg, repair, sanding } = values;
  const unit = inches ? "in" : "mm";
  const hasNotes = repair !== undefined || sanding !== undefined;
  const format = json ? "json" : csv ? "csv" : hasNotes ? "notes" : "cards";
  const remedies = json ? values.remedies === true : values["no-remedies"] !== true;
  const base = {
    inputs: positionals,
    format,
    unit,
    remedies,
    ...(svg === undefined ? {} : { svg }),
    ...(sanding === undefined ? {} : { sanding }),
  } as const;
  if (help || version) return { ask: help ? "help" : "version", ...base };
  mustGoTogether(values);
  if (positionals.length === 0) throw new UsageError("no FILE is named");
  if (positionals.filter((input) => input === "-").length > 1) {
    throw new UsageError("standard input (-) can be read once");
  }
  if (repair === undefined) return { ask: "check", ...base };
  const rack = readRack(values.rack) ?? (inches ? SIXTEENTHS : HALF_MILLIMETRES);
  return { ask: "check", ...base, repair: { hole: readHole(repair), rack } };
}

type Values = ReturnType<typeof parsed>["values"];

function mustGoTogether(values: Values): void {
  const { json, csv, inches, repair, rack, sanding, svg } = values;
  const mistakes: readonly (readonly [unknown, string])[] = [
    [json && csv, "--json and --csv exclude each other"],
    [json && inches, "--json is in mm: --inches is for cards, notes and --csv"],
    [values.remedies && !json, "--remedies is for --json: cards have remedies anyway"],
    [values["no-remedies"] && (json || csv || repair || sanding), "--no-remedies is for cards"],
    [
      repair !== undefined && (json || csv || svg),
      "--repair prints notes: --json, --csv and --svg are not for it",
    ],
    [
      sanding !== undefined && (json || csv || svg),
      "--sanding prints notes: --json, --csv and --svg are not for it",
    ],
    [sanding === "", "--sanding wants a file"],
    [repair !== undefined && sanding !== undefined, "--repair and --sanding exclude each other"],
    [rack !== undefined && repair === undefined, "--rack is for --repair"],
    [svg === "", "--svg wants a folder"],
  ];
  for (const [isMade, words] of mistakes) if (isMade) throw new UsageError(words);
}

const HOLE = "--repair wants FRET=ERROR, FRET:SIDE=ERROR or PATH=ERROR, as 12:bass=0.4";

/** “12:bass=0.4”: the hole, and how far off its mark it is. */
function readHole(text: string): MisdrilledHole {
  const [, where = "", off = ""] = /^([^=]*)=(.*)$/.exec(text) ?? [];
  const error = lengthIn(off);
  if (typeof error !== "number") throw new UsageError(HOLE);
  if (where.startsWith("markers.")) return { path: where, error };
  const [, fret, side] = /^(\d+)(?::(bass|centre|treble))?$/.exec(where) ?? [];
  if (fret === undefined) throw new UsageError(HOLE);
  const named = side === undefined ? {} : { side: side as "bass" | "centre" | "treble" };
  return { fret: Number(fret), ...named, error };
}

function readRack(text: string | undefined): number[] | undefined {
  return text?.split(",").map((each) => {
    const size = lengthIn(each);
    if (typeof size === "number") return size;
    throw new UsageError(
      `--rack wants sizes of bits with commas between, as 6,6.5 or "1/4 in,5/16 in"`,
    );
  });
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    throw new UsageError(mistakeIn(error));
  }
}

/** The parser's first sentence, with the option that may be meant. */
function mistakeIn(error: unknown): string {
  const [sentence = ""] = (error instanceof Error ? error.message : String(error)).split(/\. |\n/);
  const [, unknown] = /^Unknown option '--(.*)'/.exec(sentence) ?? [];
  if (unknown === undefined) return sentence;
  const near = nearestName(unknown, Object.keys(OPTIONS));
  return sentence + didYouMean(near === undefined ? undefined : `--${near}`);
}
