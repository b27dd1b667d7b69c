/** One problem of a design's input: where, what came, what was expected. */
export interface DesignIssue {
  /** Dotted path in the design, as `markers.1.diameter`; empty for the design itself. */
  readonly path: string;
  /** What came. */
  readonly value: unknown;
  /** What was expected: the bound, or the kind of value. */
  readonly expected: string;
  /** The three in one line. */
  readonly message: string;
}

const SHOWN_ISSUES = 20;
const SHOWN_CHARACTERS = 60;

/**
 * Thrown for a design that cannot be read; it holds every problem at once.
 * Tell it by `error.name === "DesignError"` where two builds of this package may meet.
 */
export class DesignError extends RangeError {
  /** "DesignError". */
  override readonly name = "DesignError";
  /** Every problem of the design. */
  readonly issues: readonly DesignIssue[];

  constructor(issues: readonly DesignIssue[]) {
    super(summary(issues));
    this.issues = issues;
  }
}

/** Makes one issue, its message included. */
export function makeIssue(path: string, value: unknown, expected: string): DesignIssue {
  const message = `${path === "" ? "design" : path}: expected ${expected}, received ${show(value)}`;
  return { path, value, expected, message };
}

/** What was read, where no issue says that something could not be; throws them all where one does. */
export function whole<T extends object>(
  read: T,
  issues: readonly DesignIssue[],
): { readonly [Key in keyof T]: Exclude<T[Key], undefined> } {
  if (issues.length > 0) throw new DesignError(issues);
  return read as { readonly [Key in keyof T]: Exclude<T[Key], undefined> };
}

/** The error for one argument: its name, what was expected, what came. */
export function refused(name: string, value: unknown, expected: string): RangeError {
  return new RangeError(makeIssue(name, value, expected).message);
}

/** What a getter or a proxy gives, or the error for an argument that will not be read. */
export function tryRead<T>(name: string, value: unknown, read: () => T): T {
  try {
    return read();
  } catch {
    throw refused(name, value, "a value that can be read");
  }
}

/** A short text for any value at all, safe on proxies, cycles and getters. */
export function show(value: unknown): string {
  switch (typeof value) {
    case "string":
      return JSON.stringify(
        value.length > SHOWN_CHARACTERS ? `${value.slice(0, SHOWN_CHARACTERS)}…` : value,
      );
    case "number":
      return Object.is(value, -0) ? "-0" : String(value);
    case "bigint":
      return "a big integer";
    case "boolean":
    case "undefined":
      return String(value);
    case "object":
      return value === null ? "null" : arrayLike(value) ? "an array" : "an object";
    default:
      return `a ${typeof value}`;
  }
}

function summary(issues: readonly DesignIssue[]): string {
  const count = issues.length === 1 ? "1 problem" : `${issues.length} problems`;
  const lines = issues.slice(0, SHOWN_ISSUES).map((issue) => `  ${issue.message}`);
  const rest = issues.length - lines.length;
  if (rest > 0) lines.push(`  … and ${rest} more, in \`issues\``);
  return `${count} in the design:\n${lines.join("\n")}`;
}

function arrayLike(value: object): boolean {
  try {
    return Array.isArray(value);
  } catch {
    return false;
  }
}
