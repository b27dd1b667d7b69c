/** What comes of one source: a report, or why it cannot be read. */
import type { Design } from "../design/design.js";
import { workOut } from "../drilling/work.js";
import type { DesignIssue } from "../errors/errors.js";
import type { Place } from "../files/places.js";
import { readBuilt } from "../files/read-design.js";
import type { SandingProgress } from "../measured/sanding-progress.js";
import { type Repair, repairHole } from "../report/repair.js";
import { type Report, reportOn } from "../report/report.js";
import { errorWords } from "./error-words.js";
import type { RepairOrder } from "./options.js";
import { sandingIn } from "./readings.js";
import { readBytes, type Source } from "./sources.js";
import { decodeText } from "./text.js";

/** Why a source cannot be read; without a place where it is no design at all. */
export interface Trouble extends Partial<Place> {
  readonly path: string;
  readonly expected?: string;
  readonly message: string;
}

/** Where it came from, and what came of it. */
export type Outcome = Pick<Source, "file" | "line"> &
  (
    | {
        readonly design: Design;
        readonly report: Report;
        /** Where one was asked for. */
        readonly repair?: Repair;
        readonly sanding?: SandingProgress;
        readonly issues?: undefined;
      }
    | { readonly report?: undefined; readonly issues: readonly Trouble[] }
  );

/** What is asked for passes: a sanding that keeps its markers, a repair that some bit does, else the check. */
export function passes({
  report,
  repair,
  sanding,
}: Extract<Outcome, { design: unknown }>): boolean {
  if (sanding) return sanding.findings.every(({ severity }) => severity !== "error");
  return repair ? repair.diameter !== null : report.ok;
}

/** Readings of a board while it is sanded: the file that they stand in, and its bytes. */
export interface Readings {
  readonly file: string;
  readonly bytes: Promise<Uint8Array>;
}

/** The outcome of a source's design, with how far its sanding has come; what is wrong with the readings is of their file. */
export async function sandingOutcome(source: Source, readings: Readings): Promise<Outcome> {
  const outcome = await findOutcome(source);
  if (outcome.report === undefined) return outcome;
  try {
    return { ...outcome, sanding: sandingIn(decodeText(await readings.bytes), outcome.design) };
  } catch (error) {
    return { file: readings.file, issues: listTroubles(error) };
  }
}

/** Reads a source, checks its design, and works out the repair that is asked for. Every error is an outcome. */
export async function findOutcome(source: Source, order?: RepairOrder): Promise<Outcome> {
  const { file, line } = source;
  const place = line === undefined ? { file } : { file, line };
  try {
    const { design, neck } = readBuilt(decodeText(await readBytes(source)));
    const repair = order && { repair: repairHole(design, order.hole, order.rack) };
    return { ...place, design, report: reportOn(workOut(neck)), ...repair };
  } catch (error) {
    const issues = listTroubles(error);
    return {
      ...place,
      issues: line === undefined ? issues : issues.map((issue) => ({ ...issue, line })),
    };
  }
}

function listTroubles(error: unknown): Trouble[] {
  if (isDesignError(error)) return error.issues.map(tellTrouble);
  return [{ path: "", message: errorWords(error) }];
}

function isDesignError(
  error: unknown,
): error is { readonly issues: readonly (DesignIssue & Partial<Place>)[] } {
  return error instanceof Error && error.name === "DesignError" && "issues" in error;
}

/** The value is left out: it may be a whole file. */
function tellTrouble({ path, expected, message, line, column }: DesignIssue & Partial<Place>) {
  const place = line === undefined || column === undefined ? {} : { line, column };
  return { path, ...place, expected, message: message.replace(/ \(line \d+, column \d+\)$/, "") };
}
