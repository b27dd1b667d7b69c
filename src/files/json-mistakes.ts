/** What makes a text no JSON, and the words for it. */

/** A mistake, by its name in jsonc-parser. */
export interface Mistake {
  readonly code: string;
  readonly start: number;
  readonly length: number;
}

const EXPECTED: Readonly<Record<string, string>> = {
  PropertyNameExpected: "a key in double quotes here",
  ValueExpected: "a value here",
  ColonExpected: "a colon after the key",
  CommaExpected: "a comma here",
  CloseBraceExpected: 'a "}" here',
  CloseBracketExpected: 'a "]" here',
  EndOfFileExpected: "nothing more after its end",
  InvalidCommentToken: "no comment",
  UnexpectedEndOfString: "a double quote that ends this text on its line",
  UnexpectedEndOfNumber: "a digit at the end of this number",
  InvalidUnicode: "four hexadecimal digits after \\u",
  InvalidEscapeCharacter: 'a backslash only before one of "\\/bfnrtu',
  InvalidCharacter: "no tab or other control character within a text",
};

/** Mistakes of one word or sign, which are mistakes whatever stands around them. */
const EVIDENT: readonly string[] = [
  "InvalidSymbol",
  "InvalidCommentToken",
  "UnexpectedEndOfNumber",
  "InvalidUnicode",
  "InvalidEscapeCharacter",
  "InvalidCharacter",
];

/** Whether it is a mistake whatever stands around it. */
export function isEvident(text: string, mistake: Mistake): boolean {
  return EVIDENT.includes(mistake.code) || commaBefore(text, mistake) !== undefined;
}

/** Whether it is just the place left empty by a word before it that is no value. */
export function isEcho({ code }: Mistake, before: Mistake | undefined): boolean {
  return before?.code === "InvalidSymbol" && code === "ValueExpected";
}

/** Whether the mistakes after it may be its consequences, since the reading may have lost its way. */
export function isConfusing({ code }: Mistake, next: Mistake | undefined): boolean {
  if (code === "InvalidSymbol") return next?.code === "PropertyNameExpected";
  return code !== "ValueExpected" && code !== "PropertyNameExpected" && !EVIDENT.includes(code);
}

/** What was expected in place of a mistake. */
export function mistakeExpected(text: string, mistake: Mistake, next: Mistake | undefined): string {
  const found = text.slice(mistake.start, mistake.start + mistake.length);
  if (commaBefore(text, mistake) !== undefined) return `no comma before "${found}"`;
  if (mistake.code !== "InvalidSymbol") return EXPECTED[mistake.code] ?? "no mistake here";
  if (next?.code === "PropertyNameExpected") return "every key in double quotes";
  if (found === "NaN") return "no NaN";
  if (found === "Infinity" || text.startsWith("-Infinity", mistake.start)) {
    return 'no Infinity; a flat radius is "flat"';
  }
  return 'a number, true, false, null, or text in double quotes as "1/4 in"';
}

/** Where a mistake is shown: a comma too many, rather than the bracket that follows it. */
export function mistakeStart(text: string, mistake: Mistake): Pick<Mistake, "start" | "length"> {
  const comma = commaBefore(text, mistake);
  return comma === undefined ? mistake : { start: comma, length: 1 };
}

/** Where a comma stands before a closing bracket, if that is the mistake. */
function commaBefore(text: string, { code, start }: Mistake): number | undefined {
  const isMissing = code === "PropertyNameExpected" || code === "ValueExpected";
  if (!isMissing || !/[}\]]/.test(text.charAt(start))) return undefined;
  let before = start - 1;
  while (/\s/.test(text.charAt(before))) before--;
  return text.charAt(before) === "," ? before : undefined;
}
