/**
 * Every public function with hostile and random values at any place of a good call: an error that is documented, a
 * DesignError or a RangeError which names path, bound and value; or an answer without a NaN. Nothing is changed, and
 * every call ends. FUZZ sets how many calls are made in all.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type AnyFunction, CALLS, type Call, MODULES, publicFunctions } from "./calls.js";
import { type Edit, edit, edited } from "./values.js";

const NAMES = Object.keys(CALLS);
const FUNCTIONS = publicFunctions();
const RUNS = Math.ceil(Number(process.env.FUZZ ?? 10_000) / NAMES.length);

type Box = Record<string, unknown>;
type Place = readonly [box: Box, key: string];

/** Every place within, as the object and the key; of long lists just the first ones. */
function placesIn(box: object): Place[] {
  const keys = Object.keys(box).slice(0, 40);
  return keys.flatMap((key) => {
    const inner = (box as Box)[key];
    const deeper = typeof inner === "object" && inner !== null ? placesIn(inner) : [];
    return [[box as Box, key] as const, ...deeper];
  });
}

/** A good call with some of its values replaced; then nothing of it can be changed any more. */
function attack(call: Call, variant: number, edits: readonly Edit[]) {
  const args = call.args(variant);
  const given = new Set(call.given?.map(String));
  const shown = Object.fromEntries(Object.entries(args).filter(([i]) => !given.has(i)));
  const places = placesIn(shown);
  const done = edits.flatMap((each) => {
    const [box, key] = places[each.at % places.length] ?? [];
    if (box === undefined || key === undefined) return [];
    const [was, now] = [box[key], edited(box[key], each)];
    if (each.how === "delete") delete box[key];
    else box[key] = now;
    return [{ box, key, was, now, how: each.how === "hostile" ? each.name : each.how }];
  });
  for (const [box] of places) Object.freeze(box);
  return { args: args.map((arg, i) => (given.has(String(i)) ? arg : shown[i])), done };
}

/** Calls it, and says what is wrong with what came of it. */
async function judge(name: string, call: Call, args: unknown[]) {
  try {
    const result = (FUNCTIONS.get(name) as AnyFunction)(...args);
    const all = await (call.spend ?? ((value: unknown) => value))(result as never);
    return { isAnswered: true, problems: problemsOf(all, call) };
  } catch (error) {
    const isOwn = call.passesOn && /not to be touched|has been revoked/.test(String(error));
    return { isAnswered: false, problems: isOwn ? [] : problemsOfError(error) };
  }
}

function problemsOfError(error: unknown): string[] {
  const {
    name,
    message,
    issues = [{ message }],
  } = error as Error & { issues?: { message: string }[] };
  if (!(error instanceof RangeError)) return [`${name} is not documented: ${message}`];
  if (name === "DesignError" && issues.length === 0) return ["a DesignError without issues"];
  const silent = issues.filter(
    (issue) => !/^.+?: expected .+?, received .+$/su.test(issue.message),
  );
  return silent.map((issue) => `no path, bound or value: ${issue.message}`);
}

/** Numbers that are none, and words that a computer left behind. */
function problemsOf(result: unknown, { mayBeFlat }: Call): string[] {
  const problems: string[] = [];
  const waiting: unknown[] = [result];
  for (let seen = 0; waiting.length > 0 && seen < 20_000; seen++) {
    const value = waiting.pop();
    if (typeof value === "number") {
      if (Number.isNaN(value) || (Math.abs(value) === Infinity && !mayBeFlat))
        problems.push(`${value}`);
    } else if (value instanceof Error) problems.push(...problemsOfError(value));
    else if (typeof value === "string") {
      const found = /.{0,30}(?:NaN|undefined|\[object).{0,30}/.exec(value);
      if (found) problems.push(`in a text: ${found[0]}`);
    } else if (typeof value === "object" && value !== null) waiting.push(...Object.values(value));
  }
  return problems;
}

/** What no number is stands where one was, and the call was answered all the same. */
function takenForNumbers(done: ReturnType<typeof attack>["done"]): string[] {
  // of several, one may have gone with another
  if (done.length > 1) return [];
  return done.flatMap(({ box, key, was, now, how }) => {
    const isOther =
      typeof now === "object"
        ? now === null || Array.isArray(now) || now instanceof Number
        : typeof now !== "number" && now !== undefined;
    const isTaken = typeof was === "number" && how !== "delete" && isOther && box[key] === now;
    return isTaken ? [`taken for a number: ${key} = ${how}`] : [];
  });
}

test("the table has every public function of every entry", () => {
  const { exports } = JSON.parse(readFileSync("package.json", "utf8")) as { exports: object };
  const entries = Object.keys(exports).flatMap((name) =>
    name.endsWith(".json") ? [] : [name === "." ? "core" : name.slice(2)],
  );
  expect(Object.keys(MODULES).sort()).toEqual(entries.sort());
  expect([...FUNCTIONS.keys()].sort()).toEqual(NAMES.sort());
});

const world = () =>
  [Object, Array, Function, String, Number, Error, RangeError, Map, Float64Array]
    .flatMap((each) => [...Reflect.ownKeys(each), ...Reflect.ownKeys(each.prototype)])
    .concat(Reflect.ownKeys(globalThis), Reflect.ownKeys(Math))
    .map(String)
    .join();

describe(`hostile calls, ${RUNS} for each function`, () => {
  const told = { refused: 0, answered: 0 };
  const before = world();

  test.each(NAMES)("%s", async (name) => {
    const calls = CALLS[name] ?? [];
    const tried = async (variant: number, edits: readonly Edit[]) => {
      const call = calls[variant % calls.length] as Call;
      const { args, done } = attack(call, variant, edits);
      const { isAnswered, problems } = await judge(name, call, args);
      told[isAnswered ? "answered" : "refused"]++;
      const taken = isAnswered && !call.isLoose ? takenForNumbers(done) : [];
      const story = done.map(({ key, how, now }) => `${key}: ${how} ${typeof now}`).join("; ");
      expect([...problems, ...taken], story).toEqual([]);
    };
    for (let variant = 0; variant < 6; variant++) await tried(variant, []);
    const edits = fc.array(edit, { minLength: 1, maxLength: 3 });
    const numRuns = Math.ceil(calls.some(({ isSlow }) => isSlow) ? RUNS / 10 : RUNS);
    await fc.assert(fc.asyncProperty(fc.nat(11), edits, tried), { numRuns });
    expect(world()).toBe(before);
  });

  test("some were refused, some answered", () => {
    console.log(`hostile: ${JSON.stringify(told)}`);
    expect(told.refused).toBeGreaterThan(RUNS);
    expect(told.answered).toBeGreaterThan(RUNS);
  });
});
