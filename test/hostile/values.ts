/** Values that no caller should hand in. Each is made anew, so that none can be worn out. */
import fc from "fast-check";

export type Make = () => unknown;

/** What the objects here throw. */
export const UNTOUCHED = "not to be touched";

function refuse(): never {
  throw new Error(UNTOUCHED);
}

/** A proxy whose every trap throws. */
function untouchable(target: object): object {
  const traps = Object.fromEntries(
    Object.getOwnPropertyNames(Reflect).map((trap) => [trap, refuse]),
  );
  return new Proxy(target, traps);
}

function revoked(): unknown {
  const { proxy, revoke } = Proxy.revocable([], {});
  revoke();
  return proxy;
}

function cyclic(): unknown {
  const box: Record<string, unknown> = { kind: "solid", nut: 1 };
  box.board = box;
  box.scale = [box];
  return box;
}

function nested(levels: number): unknown {
  let inner: unknown = 1;
  for (let i = 0; i < levels; i++) inner = i % 2 === 0 ? [inner] : { nut: inner };
  return inner;
}

/** Every field that a design may have throws when it is read. */
function throwing(): unknown {
  const fields = ["kind", "length", "frets", "nut", "min", "diameter", "path", "0", "toString"];
  const getters = fields.map((name) => [name, { get: refuse, enumerable: true }] as const);
  return Object.defineProperties({}, Object.fromEntries(getters));
}

/** An object that gives another value each time it is asked. */
function fickle(): unknown {
  let asked = 0;
  const next = () => (asked++ % 2 === 0 ? 6 : Number.NaN);
  return { valueOf: next, toString: () => String(next()), [Symbol.toPrimitive]: next };
}

/** Whether it is one that passes for a number by `valueOf`. */
export function isFickle(value: object): boolean {
  try {
    return Symbol.toPrimitive in value || value instanceof Number;
  } catch {
    return false;
  }
}

const NUMBERS: Readonly<Record<string, Make>> = {
  NaN: () => Number.NaN,
  Infinity: () => Infinity,
  "-Infinity": () => -Infinity,
  "-0": () => -0,
  0: () => 0,
  "1e308": () => 1e308,
  "-1e308": () => -1e308,
  "a denormal": () => 5e-324,
  "1e-13": () => 1e-13,
  "1e12": () => 1e12,
  "2^53": () => 2 ** 53,
  "1e6": () => 1e6,
  "-1": () => -1,
  "0.5": () => 0.5,
};

const TEXTS: Readonly<Record<string, Make>> = {
  "a number as text": () => "254",
  "an infinite text": () => "Infinity",
  "1e999": () => "1e999",
  "no text": () => "",
  nut: () => "nut",
  __proto__: () => "__proto__",
  constructor: () => "constructor",
  "a lone surrogate": () => "\ud800\u0000\u202e</svg>]]>",
  "a long text": () => "ab 1/".repeat(20_000),
  "many spaces": () => " ".repeat(100_000),
};

const OBJECTS: Readonly<Record<string, Make>> = {
  null: () => null,
  undefined: () => undefined,
  true: () => true,
  "a big integer": () => 254n,
  "a symbol": () => Symbol("a"),
  "a function": () => refuse,
  "a number object": () => Object(6),
  "a date": () => new Date(Number.NaN),
  "no items": () => [],
  "a list of a number": () => [6],
  "a list of lists": () => [[[]]],
  "a sparse list": () => new Array(3),
  "a long list": () => new Array(100_000).fill(7),
  "a list that claims to be long": () => Object.assign([], { length: 2 ** 32 - 1 }),
  "an object that claims to be long": () => ({ length: 1e308, 0: 1 }),
  "a typed array": () => new Float64Array([1, Number.NaN]),
  "nothing inside": () => ({}),
  "no prototype": () => Object.create(null),
  "a prototype in JSON": () => JSON.parse('{ "__proto__": { "polluted": 1 } }'),
  "a constructor in JSON": () =>
    JSON.parse('{ "constructor": { "prototype": { "polluted": 1 } } }'),
  "a design that inherits": () => Object.create({ scale: { length: 648, frets: 22 } }),
  "many keys": () => Object.fromEntries(Array.from({ length: 500 }, (_, i) => [`fret${i}`, i])),
  "deep within": () => nested(10_000),
  cyclic,
  "getters that throw": throwing,
  "an untouchable object": () => untouchable({}),
  "an untouchable list": () => untouchable([]),
  "a revoked proxy": revoked,
  "a fickle object": fickle,
  "an object without words": () => ({ toString: refuse, valueOf: refuse, toJSON: refuse }),
  // biome-ignore lint/suspicious/noThenProperty: a thenable is what it is for
  "a thenable": () => Object.fromEntries([["then", refuse]]),
  "a profile": () => ({ nut: 1e308, end: -1e308 }),
  "a far station": () => ({ fret250: 6, fret999: 1 }),
};

/** By name, so that a failing case can be told. */
export const HOSTILE: Readonly<Record<string, Make>> = { ...NUMBERS, ...TEXTS, ...OBJECTS };

/** One of them. */
export const hostileName: fc.Arbitrary<string> = fc.constantFrom(...Object.keys(HOSTILE));
