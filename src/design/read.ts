/**
 * Reads a design of unknown shape, as the table of fields describes it: a plain copy of what is stated, every field
 * checked by itself, every problem noted, nothing clamped or repaired. An object's own fields count, as JSON and
 * `structuredClone` take them, each read once. What fields must be to each other is checked in `sense.ts` and where the
 * board is built.
 */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { isArray, isObject, isWhole } from "../errors/unknown.js";
import { didYouMean, nearestName, quoted } from "../text/nearest-name.js";
import { accepts, describeExpected, MANY } from "./bounds.js";
import type { Design, Station } from "./design.js";
import { DESIGN, LAW } from "./fields.js";
import type {
  Field,
  Form,
  ListField,
  NumberKind,
  ObjectKind,
  ToleranceField,
  Variant,
} from "./kinds.js";

/** Where issues go, and where in the design the reader stands. */
export interface Reading {
  readonly issues: DesignIssue[];
  readonly keys: (string | number)[];
  /** The frets that there are, once the scale is read. */
  frets?: number | undefined;
  /** Reads a length that is written as a text: in mm, or what was expected in its place. */
  readonly inMm?: ((text: string) => number | string) | undefined;
}

/** A reading at the top of a design. */
export function newReading(issues: DesignIssue[], inMm?: Reading["inMm"]): Reading {
  return { issues, keys: [], frets: undefined, inMm };
}

/** Reads a design; what could not be read is left out of it, with an issue. Undefined where it is no object. */
export function readStated(value: unknown, reading: Reading): Design | undefined {
  return readField(DESIGN, value, reading) as Design | undefined;
}

type Readable = Field | NumberKind | ObjectKind;

/** Reads a part of a design by its field. */
export function readField(field: Readable, value: unknown, reading: Reading): unknown {
  switch (field.kind) {
    case "text":
      return typeof value === "string" ? value : refuse(reading, value, "a text");
    case "flag":
      return value === true ? value : refuse(reading, value, "true, or nothing");
    case "word":
      return readWord(field.words, value, reading);
    case "list":
      return readList(field, value, reading);
    case "profile":
      return isObject(value)
        ? readStations(field.of, value, reading)
        : readNumber(field.of, value, reading, ", or values at stations");
    case "tolerance":
      return isObject(value)
        ? readForm(lawForm(field), value, reading)
        : readNumber(field.of, value, reading);
    case "object":
      return readObject(field, value, reading);
    default:
      return readNumber(field, value, reading);
  }
}

/** Reads what stands at a key of what is being read. */
function readKey(reading: Reading, key: string | number, field: Readable, value: unknown): unknown {
  reading.keys.push(key);
  const result = readField(field, value, reading);
  reading.keys.pop();
  return result;
}

/** Stands for what a getter or a proxy would not give. */
const UNREADABLE = Symbol("unreadable");

function refuse(reading: Reading, value: unknown, expected: string): undefined {
  const path = reading.keys.join(".");
  const issue =
    value === UNREADABLE
      ? makeIssue(path, undefined, "a value that can be read")
      : makeIssue(path, value, expected);
  reading.issues.push(issue);
}

function refuseKey(reading: Reading, key: string | number, value: unknown, expected: string) {
  reading.keys.push(key);
  refuse(reading, value, expected);
  reading.keys.pop();
}

function readNumber(kind: NumberKind, value: unknown, reading: Reading, or = "") {
  const number = typeof value === "string" ? numberIn(kind, value, reading) : value;
  const most = kind.kind === "fret" ? (reading.frets ?? kind.most) : kind.most;
  // −0 is read as 0
  if (
    typeof number === "number" &&
    accepts(kind, number) &&
    (kind.kind !== "fret" || number <= most)
  )
    return number + 0;
  if (typeof number === "string") return refuse(reading, value, number);
  const mayBeText = reading.inMm !== undefined && kind.unit === "mm";
  const text = mayBeText ? ', or a text with its unit, as "1/4 in"' : "";
  return refuse(reading, value, describeExpected({ ...kind, most }) + text + or);
}

/** The number that a text stands for, or what was expected in its place; undefined where no text may stand. */
function numberIn(kind: NumberKind, text: string, { inMm }: Reading): number | string | undefined {
  if (kind.kind === "radius" && text === "flat") return Infinity;
  if (kind.unit !== "mm") return undefined;
  if (inMm === undefined)
    return `${describeExpected(kind)} (\`readDesign\` reads texts such as "1/4 in")`;
  const mm = inMm(text);
  if (typeof mm === "number" || kind.kind !== "radius") return mm;
  return `${mm}, or "flat"${didYouMean(nearestName(text, ["flat"]))}`;
}

function readWord(words: readonly string[], value: unknown, reading: Reading) {
  if (words.includes(value as string)) return value as string;
  const near = typeof value === "string" ? nearestName(value, words) : undefined;
  return refuse(reading, value, quoted(words, "or") + didYouMean(near));
}

function readList(field: ListField, value: unknown, reading: Reading): unknown[] | undefined {
  const { item, one, many, least, most } = field;
  const length = isArray(value) ? valueAt(value, "length") : undefined;
  if (!isWhole(length, 0, most)) {
    const count = least === most ? `${most} ${many}` : `${many}, ${most} at most`;
    return refuse(reading, value, `an array of ${count}`);
  }
  if (length < least) {
    return refuse(reading, value, least === 1 ? `one ${one} or more` : `${least} ${many} or more`);
  }
  const before = reading.issues.length;
  const read: unknown[] = [];
  for (let i = 0; i < length; i++) {
    const given = valueAt(value as object, i);
    read.push(readKey(reading, i, item, given));
    if (field.distinct || field.rising) checkOrder(field, read, given, reading);
  }
  return reading.issues.length > before && item.kind !== "object" ? undefined : read;
}

/** Holds the last of the items against those before it. */
function checkOrder(
  { distinct, rising }: ListField,
  items: readonly unknown[],
  given: unknown,
  reading: Reading,
): void {
  const i = items.length - 1;
  const item = items[i];
  if (item === undefined) return;
  const last = items[i - 1];
  if (distinct && items.indexOf(item) < i) refuseKey(reading, i, given, "each number once");
  if (rising && last !== undefined && !((item as number) > (last as number))) {
    refuseKey(reading, i, given, `more than the one before it, ${last} mm`);
  }
}

/** Values at stations; the stations are checked against the number of frets, where that is known. */
function readStations(of: NumberKind, value: object, reading: Reading): object | undefined {
  const { issues } = reading;
  const before = issues.length;
  const given = ownFields(value, reading);
  const stations: { [name in Station]?: unknown } = {};
  for (const name of Object.keys(given ?? {})) {
    const stated = given?.[name];
    if (stated === undefined) continue;
    const wrong = stationProblem(name, reading.frets);
    if (wrong !== undefined) refuseKey(reading, name, stated, wrong);
    else stations[name as Station] = readKey(reading, name, of, stated);
  }
  const numbers = Object.values(stations);
  if (numbers.length === 0 && issues.length === before) {
    refuse(reading, value, `${describeExpected(of)}, or a value at one station or more`);
  }
  if (numbers.includes(Infinity) && numbers.some((number) => (number as number) < Infinity)) {
    refuse(reading, value, 'a radius that is "flat" at every station or at none');
  }
  return issues.length > before ? undefined : stations;
}

/** What is wrong with a station's name; undefined for one that there is. */
export function stationProblem(name: string, frets: number | undefined): string | undefined {
  if (name === "nut" || name === "end") return undefined;
  const most = frets ?? MANY;
  const fret = Number(name.slice(4));
  if (isWhole(fret, 1, most) && name === `fret${fret}`) return undefined;
  const known = ["nut", "end", ...Array.from({ length: most }, (_, i) => `fret${i + 1}`)];
  return `a station: "nut", "end", "fret1" to "fret${most}"${didYouMean(nearestName(name, known))}`;
}

function readObject(kind: ObjectKind, value: unknown, reading: Reading): unknown {
  if (kind.or !== undefined && value === kind.or) return value;
  if (isObject(value)) return readForm(kind, value, reading);
  if (kind === DESIGN && typeof value === "string") {
    return refuse(reading, value, "a design as an object; `readDesign` reads the text of a file");
  }
  const or = kind.or === undefined ? "" : `, or "${kind.or}"`;
  return refuse(reading, value, describeForm(kind) + or);
}

/** “an object with …” or “an object whose kind is …”. */
function describeForm({ fields, variants = [] }: Form): string {
  const tagged = variants.find(({ tag }) => tag !== undefined);
  if (tagged && Object.keys(fields).length === 0) {
    return `an object whose ${tagged.tag} is ${quoted(Object.keys(tagged.cases), "or")}`;
  }
  const usual = variants.flatMap(({ tag, cases }) =>
    tag === undefined ? Object.keys(Object.values(cases).at(-1)?.fields ?? {}) : [tag],
  );
  return `an object with ${quoted([...usual, ...Object.keys(fields)])}`;
}

/** A tolerance stated as an object. */
function lawForm({ of, perHole }: ToleranceField): Form {
  const limit = { ...of, ...LAW.limit };
  return { fields: perHole ? { limit, ...LAW.perHole } : { limit }, variants: LAW.variants };
}

type Given = { readonly [name: string]: unknown };

/** An object's own fields, each read once; undefined, with an issue, where it will not name them. */
function ownFields(value: object, reading: Reading): Given | undefined {
  try {
    return { ...value };
  } catch {
    return tryFields(value, reading);
  }
}

/** The same of an object of which something throws. */
function tryFields(value: object, reading: Reading): Given | undefined {
  try {
    return Object.fromEntries(Object.keys(value).map((name) => [name, valueAt(value, name)]));
  } catch {
    return refuse(reading, value, "an object whose keys can be read");
  }
}

function valueAt(value: object, key: string | number): unknown {
  try {
    return (value as Record<string | number, unknown>)[key];
  } catch {
    return UNREADABLE;
  }
}

/** Reads an object's fields in the table's order; keys that it does not have, or not in this case, are issues. */
function readForm(form: Form, value: object, reading: Reading): object | undefined {
  const given = ownFields(value, reading);
  if (given === undefined) return undefined;
  const read: Record<string, unknown> = {};
  const names = Object.keys(given);
  const count =
    readCases(form, given, read, reading) + readFields(form.fields, given, read, reading);
  if (count === names.length) return read;
  for (const name of names) {
    if (Object.hasOwn(read, name)) continue;
    const expected = expectedAt(name, form, given) ?? unknownKey(name, listKeys(form));
    // a key that is known takes nothing for an answer
    const isSilent = given[name] === undefined && expected.startsWith("none");
    if (expected !== "" && !isSilent) refuseKey(reading, name, given[name], expected);
  }
  return read;
}

/** Reads these fields; how many there were. */
function readFields(
  fields: Form["fields"],
  given: Given,
  read: Record<string, unknown>,
  reading: Reading,
): number {
  let count = 0;
  for (const key in fields) {
    const field = fields[key] as Field;
    const stated = given[key];
    if (stated === undefined && field.optional) continue;
    const result = readKey(reading, key, field, stated);
    if (field === DESIGN.fields.scale) reading.frets = countFrets(result);
    if (result === undefined) continue;
    read[key] = result;
    count++;
  }
  return count;
}

/** Reads the cases that an object is of, tags and fields; how many there were. */
function readCases(
  { variants = [] }: Form,
  given: Given,
  read: Record<string, unknown>,
  reading: Reading,
): number {
  let count = 0;
  for (const variant of variants) {
    const { tag, cases } = variant;
    const name = findCase(variant, given);
    if (name === undefined) {
      refuseTag(tag as string, Object.keys(cases), given, reading);
      continue;
    }
    if (tag !== undefined && given[tag] !== undefined) {
      read[tag] = name;
      count++;
    }
    const form = cases[name] as Form;
    count += readFields(form.fields, given, read, reading);
    count += readCases(form, given, read, reading);
  }
  return count;
}

function refuseTag(tag: string, words: readonly string[], given: Given, reading: Reading): void {
  reading.keys.push(tag);
  readWord(words, given[tag], reading);
  reading.keys.pop();
}

/** The frets of a scale that was read. */
function countFrets(scale: unknown): number | undefined {
  const { frets, positions } = (scale ?? {}) as { frets?: number; positions?: readonly number[] };
  return positions?.length ?? frets;
}

/** The case that an object is of: by its tag, else by a key that a case has alone; undefined where the tag is none. */
function findCase({ tag, optional, cases }: Variant, given: Given): string | undefined {
  const word = tag === undefined ? undefined : given[tag];
  if (typeof word === "string" && Object.hasOwn(cases, word)) return word;
  if (word !== undefined || (tag !== undefined && !optional)) return undefined;
  let last: string | undefined;
  for (const name in cases) {
    if (tag !== undefined) return name;
    for (const key in cases[name]?.fields) {
      if (given[key] !== undefined && isOwn(key, name, cases)) return name;
    }
    last = name;
  }
  return last;
}

function isOwn(key: string, name: string, cases: Variant["cases"]): boolean {
  for (const other in cases) if (other !== name && cases[other]?.fields[key]) return false;
  return true;
}

/** What is expected at a key that was not read: "" where that is told already or not known; undefined of an unknown key. */
function expectedAt(
  key: string,
  { fields, variants = [] }: Form,
  given: Given,
): string | undefined {
  if (Object.hasOwn(fields, key)) return "";
  for (const variant of variants) {
    const { tag, cases } = variant;
    if (tag === key) return "";
    const name = findCase(variant, given);
    const picked = name === undefined ? undefined : expectedAt(key, cases[name] as Form, given);
    if (picked !== undefined) return picked;
    const having = Object.keys(cases).filter((each) => listKeys(cases[each] as Form).includes(key));
    if (having.length === 0) continue;
    if (name === undefined) return "";
    if (tag !== undefined) return `none, unless ${tag} is ${quoted(having, "or")}`;
    return `none beside ${quoted(Object.keys(cases[name]?.fields ?? {}).slice(0, 1))}`;
  }
  return undefined;
}

/** The keys that a form's object may have, whatever its cases. */
function listKeys({ fields, variants = [] }: Form): string[] {
  const within = variants.flatMap(({ tag, cases }) => [
    ...(tag === undefined ? [] : [tag]),
    ...Object.values(cases).flatMap(listKeys),
  ]);
  return [...new Set([...within, ...Object.keys(fields)])];
}

function unknownKey(key: string, known: readonly string[]): string {
  return `a known key: ${quoted(known, "or")}${didYouMean(nearestName(key, known))}`;
}
