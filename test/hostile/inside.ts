/** Replacing a value anywhere inside of others, and telling whether anything inside was changed. */

export type Keys = readonly (string | number)[];

const MOST_ITEMS = 60;
const MOST_LEVELS = 8;

function isBox(value: unknown): value is Record<string | number, unknown> {
  return typeof value === "object" && value !== null;
}

/** The place of every value within, outermost first; of long lists just the first ones. */
export function placesIn(value: unknown, above: Keys = []): Keys[] {
  if (!isBox(value) || above.length > MOST_LEVELS) return [above];
  const keys = Object.keys(value).slice(0, MOST_ITEMS);
  return [above, ...keys.flatMap((key) => placesIn(value[key], [...above, key]))];
}

/** The value at a place; nothing where what was put in above does not let itself be read. */
export function valueAt(root: unknown, keys: Keys): unknown {
  try {
    return keys.reduce<unknown>((at, key) => (isBox(at) ? at[key] : undefined), root);
  } catch {
    return undefined;
  }
}

/** Puts a value at a place; whether the place was there, and let itself be changed. */
export function putAt(root: unknown, keys: Keys, value: unknown): boolean {
  try {
    const box = keys.slice(0, -1).reduce<unknown>((at, key) => (isBox(at) ? at[key] : at), root);
    const field = { value, enumerable: true, configurable: true, writable: true };
    return isBox(box) && Reflect.defineProperty(box, keys.at(-1) ?? "", field);
  } catch {
    // what was put in above does not let itself be touched
    return false;
  }
}

type Fields = readonly (readonly [PropertyKey, unknown, unknown])[];

/** What every object within holds, read without setting off a getter. */
export function snapshot(root: unknown): Map<object, Fields> {
  const seen = new Map<object, Fields>();
  const waiting = [root];
  for (
    let value = waiting.pop();
    value !== undefined || waiting.length > 0;
    value = waiting.pop()
  ) {
    if (!isBox(value) || seen.has(value)) continue;
    const fields = fieldsOf(value);
    seen.set(value, fields);
    for (const [, inner] of fields) waiting.push(inner);
  }
  return seen;
}

function fieldsOf(value: object): Fields {
  try {
    const keys = Reflect.ownKeys(value);
    const sampled = keys.length > 2000 ? [...keys.slice(0, 1000), ...keys.slice(-1000)] : keys;
    const fields = sampled.map((key) => {
      const field = Reflect.getOwnPropertyDescriptor(value, key);
      return [key, field?.value, field?.get] as const;
    });
    return [
      ["keys", keys.length, undefined],
      ["prototype", Reflect.getPrototypeOf(value), undefined],
      ...fields,
    ];
  } catch {
    // an untouchable object stays as it is
    return [];
  }
}

/** What is no longer as it was, in words. */
export function changesSince(before: ReadonlyMap<object, Fields>): string[] {
  const changes: string[] = [];
  for (const [value, fields] of before) {
    const now = fieldsOf(value);
    const isSame =
      now.length === fields.length &&
      now.every((field, i) => field.every((part, k) => Object.is(part, fields[i]?.[k])));
    if (!isSame) changes.push(`changed: ${fields.map(([key]) => String(key)).join(", ")}`);
  }
  return changes;
}

/** Freezes all that can be, so that a change throws. */
export function freeze(root: unknown): void {
  for (const value of snapshot(root).keys()) {
    try {
      if (!ArrayBuffer.isView(value) && !isNative(value)) Object.freeze(value);
    } catch {
      // an untouchable object stays as it is
    }
  }
}

/** Prototypes of the language are not for us to freeze. */
function isNative(value: object): boolean {
  return GLOBALS.includes(value);
}

const GLOBALS: readonly object[] = [
  globalThis,
  ...[Object, Array, Function, String, Number, Boolean, Symbol, BigInt, Date, RegExp, Map, Set],
  ...[Object, Array, Function, String, Number, Boolean, Symbol, BigInt, Date, RegExp, Map, Set].map(
    (made) => made.prototype as object,
  ),
  ...[Math, JSON, Reflect, Intl, Promise, Promise.prototype, Error, Error.prototype],
  ...[RangeError.prototype, Float64Array, Float64Array.prototype, Int32Array.prototype],
];

/** What the globals and prototypes of the language hold. */
export function worldNow(): string[] {
  return GLOBALS.map((value) => Reflect.ownKeys(value).map(String).join(" "));
}

/** Every member of the globals by identity: the same name with another function is a change too. */
export function worldSnapshot(): Map<object, Fields> {
  return new Map(GLOBALS.slice(1).map((value) => [value, fieldsOf(value)]));
}
