/** The command line, read by Node's own parser. Lengths in mm. */
import { parseArgs } from "node:util";
import { lengthIn } from "../files/length.js";
import { HALF_MILLIMETRES, SIXTEENTHS } from "../report/racks.js";
import type { MisdrilledHole } from "../report/repair.js";
import { didYouMean, nearestName } from "../text/nearest-name.js";

const OPTIONS = {
  json: { type: "boolean" },
  csv: { type: "boolean" },
  findings: { type: "boolean" },
  inches: { type: "boolean" },
  remedies: { type: "boolean" },
  chance: { type: "boolean" },
  "no-remedies": { type: "boolean" },
  recursive: { type: "boolean" },
  jobs: { type: "string" },
  repair: { type: "string" },
  rack: { type: "string" },
  sanding: { type: "string" },
  svg: { type: "string" },
  template: { type: "string" },
  paper: { type: "string" },
  help: { type: "boolean" },
  version: { type: "boolean" },
} as const;

/** How the designs are printed. */
export type Format = "cards" | "json" | "csv" | "findings" | "notes";

/** A repair that is asked for. */
export interface RepairOrder {
  readonly hole: MisdrilledHole;
  readonly rack: readonly number[];
}

/** What the command line asks for. */
export interface Options {
  readonly ask: "check" | "help" | "version";
  readonly inputs: readonly string[];
  /** Folders are searched with the folders in them. */
  readonly isDeep: boolean;
  readonly format: Format;
  readonly unit: "mm" | "in";
  /** Remedies are sought: always for cards, for JSON where asked for. */
  readonly remedies: boolean;
  /** Cards tell how likely all goes well. */
  readonly chance: boolean;
  /** How many threads work; with 1 none but the main one. */
  readonly jobs: number;
  readonly repair?: RepairOrder;
  /** The file of readings. */
  readonly sanding?: string;
  /** The folder for pictures, and that for templates on such paper. */
  readonly svg?: string;
  readonly template?: string;
  readonly paper: "a4" | "letter";
}

/** A mistake in the command line. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** Reads the words after the command's name. Throws a `UsageError`. */
export function readOptions(words: readonly string[]): Options {
  const { values, positionals } = parsed(words);
  const { svg, template, sanding } = values;
  const options: Options = {
    ask: values.help ? "help" : values.version ? "version" : "check",
    inputs: positionals,
    isDeep: values.recursive === true,
    format: formatFrom(values),
    unit: values.inches ? "in" : "mm",
    remedies: areRemediesSought(values),
    chance: values.chance === true,
    jobs: readJobs(values.jobs),
    paper: values.paper === "letter" ? "letter" : "a4",
    ...(svg === undefined ? {} : { svg }),
    ...(template === undefined ? {} : { template }),
    ...(sanding === undefined ? {} : { sanding }),
  };
  if (options.ask !== "check") return options;
  mustGoTogether(values);
  mustNameFiles(positionals);
  return { ...options, ...orderFrom(values) };
}

type Values = ReturnType<typeof parsed>["values"];

function formatFrom({ json, csv, findings, repair, sanding }: Values): Format {
  if (json) return "json";
  if (csv) return findings ? "findings" : "csv";
  return repair !== undefined || sanding !== undefined ? "notes" : "cards";
}

function areRemediesSought(values: Values): boolean {
  return values.json ? values.remedies === true : !values.csv && values["no-remedies"] !== true;
}

function mustNameFiles(inputs: readonly string[]): void {
  if (inputs.length === 0) throw new UsageError("no FILE is named");
  if (inputs.filter((input) => input === "-").length > 1) {
    throw new UsageError("standard input (-) can be read once");
  }
}

function orderFrom({ repair, rack, inches }: Values): Pick<Options, "repair"> {
  if (repair === undefined) return {};
  const bits = readRack(rack) ?? (inches ? SIXTEENTHS : HALF_MILLIMETRES);
  return { repair: { hole: readHole(repair), rack: bits } };
}

function mustGoTogether(values: Values): void {
  const { json, csv, inches, repair, rack, sanding, svg, template, paper } = values;
  const isDrawn = svg !== undefined || template !== undefined;
  const mistakes: readonly (readonly [unknown, string])[] = [
    [json && csv, "--json and --csv exclude each other"],
    [json && inches, "--json is in mm: --inches is for cards, notes and --csv"],
    [values.findings && !csv, "--findings is for --csv: cards and --json have them anyway"],
    [values.remedies && !json, "--remedies is for --json: cards have remedies anyway"],
    [values.chance && (json || csv || repair || sanding), "--chance is for cards"],
    [values["no-remedies"] && (json || csv || repair || sanding), "--no-remedies is for cards"],
    [
      repair !== undefined && (json || csv || isDrawn),
      "--repair prints notes: --json, --csv, --svg and --template are not for it",
    ],
    [
      sanding !== undefined && (json || csv || isDrawn),
      "--sanding prints notes: --json, --csv, --svg and --template are not for it",
    ],
    [
      sanding !== undefined && values.jobs !== undefined,
      "--sanding is for a board on the bench: --jobs is not for it",
    ],
    [sanding === "", "--sanding wants a file"],
    [repair !== undefined && sanding !== undefined, "--repair and --sanding exclude each other"],
    [rack !== undefined && repair === undefined, "--rack is for --repair"],
    [svg === "", "--svg wants a folder"],
    [template === "", "--template wants a folder"],
    [paper !== undefined && template === undefined, "--paper is for --template"],
    [paper !== undefined && paper !== "a4" && paper !== "letter", "--paper wants a4 or letter"],
  ];
  for (const [isMade, words] of mistakes) if (isMade) throw new UsageError(words);
}

const MOST_JOBS = 256;

/** “4”: one thread where nothing is said. */
function readJobs(text = "1"): number {
  const jobs = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (jobs >= 1 && jobs <= MOST_JOBS) return jobs;
  throw new UsageError(`--jobs wants a whole number from 1 to ${MOST_JOBS}`);
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
