/**
 * Splits a text into an exact number and a unit, as a builder types them. One pass from left to right over
 * a text of limited length; nothing is evaluated.
 *
 *   quantity  = [sign] number [spaces] [unit]
 *   number    = decimal | fraction | whole (spaces | "-") fraction | whole character
 *   decimal   = digits ["." digits] [exponent] | "." digits [exponent]
 *   fraction  = digits "/" digits | character      (a character such as ½)
 */

/** A number as numerator / denominator, and the unit as written. */
export interface Quantity {
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly unit: string;
  /** A fraction such as 1/4, which is never read as mm without a unit. */
  readonly isFraction: boolean;
}

/** The longest text that is read. */
export const LONGEST = 100;

/** What a length may look like, for a message. */
export const FORMS = 'a length as "1 1/2 in", "25.5 inch" or "6.35 mm"';

const MIXED = 'a fraction after the whole number, as in "1 1/2 in"';
const LONGEST_EXPONENT = 3;

/** Where the reading has come to. */
interface Cursor {
  readonly text: string;
  at: number;
}

type Ratio = Omit<Quantity, "unit">;

/** Reads a quantity, or returns what was expected in its place. */
export function scanQuantity(text: string): Quantity | string {
  if (text.length > LONGEST) return `a text of at most ${LONGEST} characters`;
  if (text.includes(",")) return "a decimal point and no comma";
  const cursor = { text: text.trim(), at: 0 };
  const isNegative = takeMinus(cursor);
  const size = scanNumber(cursor);
  if (typeof size === "string") return size;
  const numerator = isNegative ? -size.numerator : size.numerator;
  return { ...size, numerator, unit: cursor.text.slice(cursor.at).trim() };
}

function scanNumber(cursor: Cursor): Ratio | string {
  const character = takeCharacter(cursor);
  if (character !== undefined) return character;
  const whole = takeDigits(cursor);
  if (take(cursor, ".")) return scanDecimal(whole, takeDigits(cursor), cursor);
  if (whole === "") return FORMS;
  if (take(cursor, "/⁄")) return ratio(whole, takeDigits(cursor));
  return scanMixed(whole, cursor) ?? scanDecimal(whole, "", cursor);
}

/** digits . digits × 10^exponent */
function scanDecimal(whole: string, decimals: string, cursor: Cursor): Ratio | string {
  if (whole + decimals === "") return FORMS;
  const exponent = takeExponent(cursor);
  if (exponent.length > LONGEST_EXPONENT + 1) {
    return `an exponent of at most ${LONGEST_EXPONENT} digits`;
  }
  const power = BigInt(Number(exponent) - decimals.length);
  const digits = BigInt(whole + decimals);
  return power >= 0n
    ? { numerator: digits * 10n ** power, denominator: 1n, isFraction: false }
    : { numerator: digits, denominator: 10n ** -power, isFraction: false };
}

/** A fraction after a whole number, or undefined where none follows. */
function scanMixed(whole: string, cursor: Cursor): Ratio | string | undefined {
  const start = cursor.at;
  const isJoined = skipSpaces(cursor) ? false : take(cursor, "-") !== undefined;
  const part = takeCharacter(cursor) ?? takeFraction(cursor);
  if (part === undefined) {
    cursor.at = start;
    return isJoined ? MIXED : undefined;
  }
  if (typeof part === "string") return part;
  if (part.numerator >= part.denominator) return "a fraction less than 1 after the whole number";
  return { ...part, numerator: BigInt(whole) * part.denominator + part.numerator };
}

function takeFraction(cursor: Cursor): Ratio | string | undefined {
  const numerator = takeDigits(cursor);
  if (numerator === "") return undefined;
  return take(cursor, "/⁄") ? ratio(numerator, takeDigits(cursor)) : MIXED;
}

function ratio(numerator: string, denominator: string): Ratio | string {
  if (denominator === "") return "a denominator after the stroke of a fraction";
  if (BigInt(denominator) === 0n) return "a denominator other than 0";
  return {
    numerator: BigInt(numerator),
    denominator: BigInt(denominator),
    isFraction: true,
  };
}

/** One of the characters ¼ ½ ¾ ⅐ … ⅞, which Unicode spells out as digits and a stroke. */
function takeCharacter(cursor: Cursor): Ratio | string | undefined {
  const character = take(cursor, "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞");
  const [numerator, denominator] = character?.normalize("NFKC").split("⁄") ?? [];
  return numerator && denominator ? ratio(numerator, denominator) : undefined;
}

/** Takes a sign; whether it is a minus. */
function takeMinus(cursor: Cursor): boolean {
  const sign = take(cursor, "+-−");
  return sign === "-" || sign === "−";
}

/** The digits of an exponent with their sign; "0" where none stands here. */
function takeExponent(cursor: Cursor): string {
  const start = cursor.at;
  const sign = take(cursor, "eE") && take(cursor, "+-") === "-" ? "-" : "+";
  const digits = cursor.at > start ? takeDigits(cursor) : "";
  if (digits !== "") return sign + digits;
  cursor.at = start;
  return "0";
}

/** The next character if it is one of these. */
function take(cursor: Cursor, characters: string): string | undefined {
  const next = cursor.text.charAt(cursor.at);
  if (next === "" || !characters.includes(next)) return undefined;
  cursor.at++;
  return next;
}

function takeDigits(cursor: Cursor): string {
  const start = cursor.at;
  while (take(cursor, "0123456789") !== undefined);
  return cursor.text.slice(start, cursor.at);
}

/** Skips spaces of any kind; whether there were any. */
function skipSpaces(cursor: Cursor): boolean {
  const start = cursor.at;
  while (cursor.text.charAt(cursor.at).trim() === "" && cursor.at < cursor.text.length) cursor.at++;
  return cursor.at > start;
}
