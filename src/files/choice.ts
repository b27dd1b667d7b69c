/**
 * Schemas that look at the input before they check it. A union of valibot tells no more than that nothing
 * fitted; one option picked beforehand tells its own issues, each with its path.
 *
 * Every message here is "expected …", so that an issue of a design can be made of it.
 */
import * as v from "valibot";
import { didYouMean, listOf } from "../design/read-fields.js";
import { nearestName } from "../text/nearest-name.js";

/** The message of an issue. */
export function expecting(what: string): string {
  return `expected ${what}`;
}

/** What was expected, by a message. */
export function expectedBy(message: string): string {
  return message.replace(/^expected /, "");
}

/** One of several schemas, as `pick` tells by the input. Without an input it stands for any of them. */
export function choice<const Options extends v.UnionOptions>(
  options: Options,
  pick: (input: unknown) => Options[number],
) {
  const any = v.union(options, () => expecting(wantedBy(pick(undefined))));
  return v.lazy((input): Options[number] | typeof any => (input === undefined ? any : pick(input)));
}

/** A schema for the inputs that `accepts` lets through. */
export function only<Schema extends v.GenericSchema>(
  schema: Schema,
  accepts: (input: unknown) => boolean,
  what: string,
) {
  const none = v.never(expecting(what));
  return v.lazy((input): Schema | typeof none =>
    input === undefined || accepts(input) ? schema : none,
  );
}

/** Whether the input is an object with keys; a list is none. */
export function isObject(input: unknown): input is Readonly<Record<string, unknown>> {
  return typeof input === "object" && input !== null && !Array.isArray(input);
}

/** An object with these keys and no others. */
export function object<const Entries extends v.ObjectEntries>(entries: Entries) {
  return only(strict(entries), isObject, objectWith(entries));
}

/** The object itself, for a variant: a list is not yet refused. */
export function strict<const Entries extends v.ObjectEntries>(
  entries: Entries,
  unknown = unknownKey(namesOf(entries)),
) {
  return v.strictObject(entries, ({ path }) => {
    if (path === undefined) return expecting(objectWith(entries));
    const key = String(path[0].key);
    const missing = Object.hasOwn(entries, key) ? entries[key] : undefined;
    return expecting(missing === undefined ? unknown(key) : wantedBy(missing as v.GenericSchema));
  });
}

/** What a schema wants where there is nothing. */
function wantedBy(schema: v.GenericSchema): string {
  // what may be left out is not missing: there is an issue
  const { issues } = v.safeParse(schema, undefined) as v.SafeParseResult<typeof schema> & {
    typed: false;
  };
  return expectedBy(issues[0].message);
}

function objectWith(entries: v.ObjectEntries): string {
  return `an object with ${listOf(namesOf(entries))}`;
}

function unknownKey(known: readonly string[]): (key: string) => string {
  return (key) => `a known key: ${listOf(known, "or")}${didYouMean(nearestName(key, known))}`;
}

/** The keys of a design; `$schema` is for the editor alone. */
function namesOf(entries: v.ObjectEntries): string[] {
  return Object.keys(entries).filter((name) => name !== "$schema");
}

/** One of a few words. */
export function word<const Words extends readonly [string, ...string[]]>(words: Words) {
  return v.picklist(words, ({ input }) => expecting(wordExpected(input, words)));
}

/** What was expected in place of a word, with the near one. */
function wordExpected(input: unknown, words: readonly string[]): string {
  const near = typeof input === "string" ? nearestName(input, words) : undefined;
  return listOf(words, "or") + didYouMean(near);
}

/** A list of so many items. */
export function list<Item extends v.GenericSchema>(
  item: Item,
  names: { readonly one: string; readonly many: string },
  least: number,
  most: number,
) {
  const what = `an array of ${names.many}, ${most} at most`;
  const items = v.pipe(
    v.array(item, expecting(what)),
    v.minLength(least, expecting(`one ${names.one} or more`)),
    v.maxLength(most, expecting(what)),
    v.readonly(),
  );
  return only(items, (input) => Array.isArray(input) && input.length <= most, what);
}

/** A field that must be there. */
export function field<Schema extends v.GenericSchema>(schema: Schema, description: string) {
  return v.pipe(schema, v.description(description));
}

/** A field that may be left out. */
export function optional<Schema extends v.GenericSchema>(schema: Schema, description: string) {
  return v.pipe(v.exactOptional(schema), v.description(description));
}

/** An object that comes in several kinds. */
export function kinds<const Options extends v.VariantOptions<"kind">>(
  words: readonly string[],
  options: Options,
) {
  const what = `an object whose kind is ${wordExpected(undefined, words)}`;
  const variant = v.variant("kind", options, ({ input, path }) =>
    expecting(path === undefined ? what : wordExpected(input, words)),
  );
  return only(variant, isObject, what);
}
