/** What may come of a hostile call: what is wrong with it, in words, or nothing. */

const MOST_BOXES = 20_000;

/** A problem with an error: not promised, or a message that does not name path, bound and value. */
export function problemsOfError(error: unknown, promised: ReadonlySet<string>): string[] {
  if (!(error instanceof Error)) return [`threw ${typeof error}`];
  const { name, message } = error;
  if (!isPromised(error, promised)) return [`${name} is not promised: ${message}`];
  if (name !== "DesignError") return problemsOfMessage(message);
  const { issues } = error as Error & { issues?: readonly { message: string }[] };
  if (!Array.isArray(issues) || issues.length === 0) return ["DesignError without issues"];
  return issues.flatMap((issue) => problemsOfMessage(issue.message));
}

/** A DesignError is a RangeError. */
function isPromised(error: Error, promised: ReadonlySet<string>): boolean {
  if (promised.has(error.name)) return true;
  return error.name === "DesignError" && error instanceof RangeError && promised.has("RangeError");
}

/** A path, what was expected, and what came. */
function problemsOfMessage(message: string): string[] {
  const said = /^.+?: expected .+?(?:, received (.+))?$/su.exec(message);
  if (said === null) return [`no path or bound in the message: ${message}`];
  return said[1] === undefined ? [`no value in the message: ${message}`] : [];
}

/** Errors that are results: `checkMany` gives one for each design that cannot be read. */
const PER_DESIGN = new Set(["DesignError"]);

/** Numbers that are none, and words that a computer left behind. Errors inside of results are judged as errors. */
export function problemsOfResult(result: unknown): string[] {
  const problems: string[] = [];
  const seen = new Set<unknown>();
  const waiting: unknown[] = [result];
  while (waiting.length > 0 && seen.size < MOST_BOXES) {
    const value = waiting.pop();
    if (Number.isNaN(value)) problems.push("NaN in the result");
    else if (typeof value === "string") problems.push(...problemsOfText(value));
    else if (value instanceof Error) problems.push(...problemsOfError(value, PER_DESIGN));
    else if (typeof value === "object" && value !== null && !seen.has(value)) {
      seen.add(value);
      // not by spreading: a column may be longer than a call's arguments
      for (const inner of Object.values(value)) waiting.push(inner);
    }
  }
  return problems;
}

function problemsOfText(text: string): string[] {
  const found = /.{0,30}(?:NaN|undefined|\[object).{0,30}/.exec(text);
  return found ? [`in a text: ${found[0]}`] : [];
}
