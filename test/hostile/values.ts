/** Values that no caller should hand in. Each is made anew, so that none can be worn out. */
import fc from "fast-check";

function refuse(): never {
  throw new Error("not to be touched");
}

/** A proxy whose every trap throws. */
function untouchable(target: object): object {
  const traps = Object.getOwnPropertyNames(Reflect).map((trap) => [trap, refuse]);
  return new Proxy(target, Object.fromEntries(traps));
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

/** A list, or an object, that goes on for ever: whatever is asked of it is another. */
function endless(target: object): unknown {
  return new Proxy(target, {
    get: (_, key) =>
      key === "length" ? Infinity : typeof key === "symbol" ? undefined : endless([]),
    ownKeys: () => ["length", "0", "kind", "nut", "positions"],
  });
}

const NUMBERS = "NaN Infinity -Infinity -0 0 1e308 -1e308 5e-324 1e-13 1e12 1e6 -1".split(" ");
const TEXTS = "254 Infinity 1e999 nut __proto__ constructor".split(" ");
const POLLUTED = '{ "__proto__": { "polluted": 1 } }';

/** By name, so that a failing case can be told. */
export const HOSTILE: Readonly<Record<string, () => unknown>> = {
  ...Object.fromEntries(NUMBERS.map((text) => [text, () => Number(text)])),
  ...Object.fromEntries(TEXTS.map((text) => [`"${text}"`, () => text])),
  "no text": () => "",
  "a lone surrogate": () => "\ud800\0\u202e</svg>]]>",
  "a long text": () => "ab 1/".repeat(20_000),
  "many spaces": () => " ".repeat(100_000),
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
  "a sparse list": () => new Array(3),
  "a long list": () => new Array(100_000).fill(7),
  "a list that claims to be long": () => Object.assign([], { length: 2 ** 32 - 1 }),
  "a typed array": () => new Float64Array([1, Number.NaN]),
  "nothing inside": () => ({}),
  "no prototype": () => Object.create(null),
  "a prototype in JSON": () => JSON.parse(POLLUTED),
  "a design that inherits": () => Object.create({ scale: { length: 648, frets: 22 } }),
  "many keys": () => Object.fromEntries(Array.from({ length: 500 }, (_, i) => [`fret${i}`, i])),
  "deep within": () => nested(10_000),
  cyclic,
  "getters that throw": throwing,
  "an untouchable object": () => untouchable({}),
  "an untouchable list": () => untouchable([]),
  "a revoked proxy": revoked,
  "an endless object": () => endless({}),
  "an endless list": () => endless([]),
  "an object without words": () => ({ toString: refuse, valueOf: refuse, toJSON: refuse }),
  "a profile": () => ({ nut: 1e308, end: -1e308 }),
  "a far station": () => ({ fret250: 6, fret999: 1 }),
};

/** Anything else that the language has. */
const anything = fc.anything({ maxDepth: 2, withBigInt: true, withSparseArray: true });

/** Something done to one place of a good call. */
export interface Edit {
  readonly at: number;
  readonly how: "hostile" | "anything" | "scale" | "delete";
  readonly name: string;
  readonly other: unknown;
  readonly power: number;
}

export const edit: fc.Arbitrary<Edit> = fc.record({
  at: fc.nat(1e6),
  how: fc.constantFrom("hostile", "hostile", "anything", "scale", "scale", "delete"),
  name: fc.constantFrom(...Object.keys(HOSTILE)),
  other: anything,
  power: fc.oneof(fc.double({ min: -0.6, max: 0.6 }), fc.integer({ min: -320, max: 300 })),
});

/** What stands there after the edit; nothing where the place is to go. */
export function edited(was: unknown, { how, name, other, power }: Edit): unknown {
  if (how === "anything") return other;
  if (how === "scale" && typeof was === "number") return was * 10 ** (power || 1);
  return how === "delete" ? undefined : HOSTILE[name]?.();
}
