/** Hostile calls, one at a time, and what is wrong with what came of them. */
import fc from "fast-check";
import { isArray } from "../../src/errors/errors.js";
import { CALLS, type Call, METHODS } from "./calls.js";
import { type AnyFunction, promisedErrors, publicFunctions } from "./entries.js";
import {
  changesSince,
  freeze,
  type Keys,
  placesIn,
  putAt,
  snapshot,
  valueAt,
  worldNow,
  worldSnapshot,
} from "./inside.js";
import { problemsOfError, problemsOfResult } from "./judge.js";
import { HOSTILE, hostileName, isFickle, UNTOUCHED } from "./values.js";

/** One hostile call: up to three values replaced. */
export interface Attack {
  readonly variant: number;
  readonly call: number;
  readonly edits: readonly (readonly [at: number, name: string])[];
  readonly isFrozen: boolean;
}

export const attack: fc.Arbitrary<Attack> = fc.record({
  variant: fc.nat(2),
  call: fc.nat(7),
  edits: fc.array(fc.tuple(fc.nat(1e6), hostileName), { minLength: 1, maxLength: 3 }),
  isFrozen: fc.boolean(),
});

/** What came of it. */
export interface Outcome {
  readonly kind: "refused" | "answered";
  readonly problems: readonly string[];
  /** What was replaced, to tell it again. */
  readonly told: string;
  /** Only what comes from this package's own functions was replaced: nothing is promised. */
  readonly isTrusted: boolean;
}

const FUNCTIONS: ReadonlyMap<string, AnyFunction> = new Map([
  ...publicFunctions(),
  ...Object.entries(METHODS),
]);
const PROMISED = new Map(
  [...FUNCTIONS.keys()].map((name) => [name, promisedErrors(name.replace(/\(\).*/, ""))]),
);
const WORLD = { names: worldNow(), members: worldSnapshot() };

/** Makes the call. Results that are promises are waited for. */
export async function attacked(name: string, plan: Attack): Promise<Outcome> {
  const calls = CALLS[name] ?? [];
  const call = calls[plan.call % calls.length] as Call;
  const args = call.args(plan.variant);
  // the places of the good call: a value put in is replaced as a whole, never looked into
  const places = openPlaces(call, args);
  const edits = plan.edits.flatMap((edit) => edited(call, args, places, edit));
  const isTrusted = edits.some(({ keys }) => call.trusted?.includes(Number(keys[0])));
  if (plan.isFrozen) for (const arg of args) freeze(arg);
  const before = snapshot(args);
  const { kind, problems } = await outcomeOf(name, call, args, plan.variant);
  const isStrict = kind === "answered" && !call.isLoose;
  const left = edits.filter(({ keys, now }) => Object.is(valueAt(args, keys), now));
  const taken = isStrict ? left.filter(isTakenForNumber) : [];
  const all = [...problems, ...taken.map(({ words }) => `took for a number: ${words}`)];
  return {
    kind,
    problems: [...(isTrusted ? [] : all), ...changesSince(before), ...worldChanges()],
    told: `${name}: ${edits.map(({ words }) => words).join("; ")}`,
    isTrusted,
  };
}

interface Place {
  readonly keys: Keys;
  readonly was: unknown;
}

function openPlaces(call: Call, args: readonly unknown[]): Place[] {
  const open = placesIn(args).filter(
    (keys) =>
      keys.length > 0 &&
      !call.sealed?.includes(Number(keys[0])) &&
      !(call.isWhole && keys.length > 1),
  );
  return open.map((keys) => ({ keys, was: valueAt(args, keys) }));
}

/** A value that was replaced. */
interface Edit extends Place {
  readonly words: string;
  readonly now: unknown;
}

/** Replaces one value. Of what comes from this package, lists keep a length that can be walked. */
function edited(
  call: Call,
  args: unknown[],
  places: readonly Place[],
  [at, name]: readonly [number, string],
): Edit[] {
  const { keys, was } = places[at % places.length] as Place;
  const isTrusted = call.trusted?.includes(Number(keys[0]));
  if (isTrusted && name.includes("long")) return [];
  const now = (HOSTILE[name] as () => unknown)();
  return putAt(args, keys, now) ? [{ keys, words: `${keys.join(".")} = ${name}`, was, now }] : [];
}

/** No number, nothing left out, and no profile: all of these a number's place may hold. */
function isTakenForNumber({ was, now }: Edit): boolean {
  if (typeof was !== "number" || typeof now === "number" || now === undefined) return false;
  return typeof now !== "object" || now === null || isArray(now) || isFickle(now);
}

/** What hostile objects throw by themselves. */
const OWN = new RegExp(`^${UNTOUCHED}$|on a proxy that has been revoked$`);

async function outcomeOf(
  name: string,
  call: Call,
  args: readonly unknown[],
  variant: number,
): Promise<Pick<Outcome, "kind" | "problems">> {
  const promised = PROMISED.get(name) ?? new Set();
  try {
    const result = (FUNCTIONS.get(name) as AnyFunction)(...args);
    const all = await (call.spend ?? ((value) => value))(result, variant);
    return { kind: "answered", problems: problemsOfResult(all) };
  } catch (error) {
    const isOwn = call.passesOn && error instanceof Error && OWN.test(error.message);
    return { kind: "refused", problems: isOwn ? [] : problemsOfError(error, promised) };
  }
}

function worldChanges(): string[] {
  const names = worldNow().join("\n") === WORLD.names.join("\n") ? [] : ["a global has new names"];
  return [...names, ...changesSince(WORLD.members)];
}
