/**
 * Every public function with hostile values at any place of a good call: a refusal that its docstring promises,
 * which names path, bound and value, or an answer without a NaN; nothing changed, and an end. HOSTILE sets how
 * many calls are made in all.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CALLS, METHODS } from "./calls.js";
import { MODULES, promisedErrors, publicFunctions, publishedEntries } from "./entries.js";
import { type Attack, attack, attacked } from "./fuzz.js";
import { changesSince, freeze, placesIn, snapshot, worldNow } from "./inside.js";
import { problemsOfError, problemsOfResult } from "./judge.js";
import { MENDED } from "./mended.js";

const NAMES = Object.keys(CALLS);
const RUNS = Math.ceil(Number(process.env.HOSTILE ?? 3000) / NAMES.length);

test("the table has every public function of every entry, and no other", () => {
  expect(Object.keys(MODULES).sort()).toEqual(publishedEntries().sort());
  expect([...publicFunctions().keys(), ...Object.keys(METHODS)].sort()).toEqual(NAMES.sort());
  expect(NAMES.length).toBeGreaterThan(25);
});

test("docstrings promise errors, and are found", () => {
  expect([...promisedErrors("core.sweep")].sort()).toEqual(["DesignError", "RangeError"]);
  expect([...promisedErrors("notebook.checkDesign")]).toEqual(["DesignError"]);
  expect([...promisedErrors("units.mathFunctions.sagitta")]).toEqual(["RangeError"]);
  const silent = [...publicFunctions().keys()].filter((name) => promisedErrors(name).size === 0);
  // what they are given comes from this package, or they pass on what comes of it
  expect(silent.sort()).toEqual([
    "draw.drawBoard",
    "draw.drawWindows",
    "files.designSchema.validate",
    "notebook.html",
    "notebook.show",
  ]);
});

test.each(NAMES)("%s: its good calls are answered", async (name) => {
  for (const variant of [0, 1, 2]) {
    for (const call of [0, 1]) {
      const outcome = await attacked(name, { variant, call, edits: [], isFrozen: true });
      expect(outcome).toMatchObject({ kind: "answered", problems: [] });
    }
  }
});

describe(`hostile calls, ${RUNS} for each function`, () => {
  const seen = { refused: 0, answered: 0, trusted: 0 };

  test.each(NAMES)("%s", async (name) => {
    let ran = 0;
    const tried = async (plan: Attack) => {
      ran++;
      const { kind, problems, told, isTrusted } = await attacked(name, plan);
      seen[kind]++;
      if (isTrusted) seen.trusted++;
      expect(problems, told).toEqual([]);
    };
    await fc.assert(fc.asyncProperty(attack, tried), { numRuns: RUNS, endOnFailure: true });
    expect(ran).toBe(RUNS);
  });

  test("some were refused, some answered", () => {
    console.log(`hostile: ${JSON.stringify(seen)}`);
    expect(seen.refused).toBeGreaterThan((RUNS * NAMES.length) / 10);
    expect(seen.answered).toBeGreaterThan((RUNS * NAMES.length) / 10);
  });
});

test("NaN at each place of each good call", async () => {
  let tried = 0;
  for (const name of NAMES) {
    if (CALLS[name]?.some(({ trusted }) => trusted)) continue;
    for (const [call, { args }] of (CALLS[name] ?? []).entries()) {
      const most = placesIn(args(0)).length;
      for (let at = 0; at < most; at++) {
        const plan = { variant: 0, call, edits: [[at, "NaN"] as const], isFrozen: false };
        const { problems, told } = await attacked(name, plan);
        expect(problems, told).toEqual([]);
        tried++;
      }
    }
  }
  expect(tried).toBeGreaterThan(500);
});

describe("found once, and mended", () => {
  test.each(MENDED)("$what", ({ holds }) => holds());
});

describe("the judge itself", () => {
  const promised = new Set(["RangeError"]);

  test("refuses errors that are not promised, or say too little", () => {
    expect(problemsOfError(new TypeError("x: expected 1, received 2"), promised)).toHaveLength(1);
    expect(problemsOfError(new RangeError("Invalid array length"), promised)).toHaveLength(1);
    expect(problemsOfError(new RangeError("x: expected 1"), promised)).toHaveLength(1);
    expect(problemsOfError(new RangeError("x: expected 1, received 2"), promised)).toEqual([]);
    expect(problemsOfError("x: expected 1, received 2", promised)).toHaveLength(1);
  });

  test("finds a NaN anywhere, in numbers and in words", () => {
    expect(problemsOfResult({ a: [1, { b: Number.NaN }] })).toHaveLength(1);
    expect(problemsOfResult(new Float64Array([1, Number.NaN]))).toHaveLength(1);
    expect(problemsOfResult({ text: 'x="NaN"' })).toHaveLength(1);
    expect(problemsOfResult({ text: "undefined mm" })).toHaveLength(1);
    expect(problemsOfResult({ a: [1, Infinity, null, "none"] })).toEqual([]);
  });

  test("sees a change deep inside, and in the prototypes of the language", () => {
    const input = { a: [{ b: 1 }] };
    const before = snapshot(input);
    expect(changesSince(before)).toEqual([]);
    (input.a[0] as { b: number }).b = -0;
    expect(changesSince(before)).toHaveLength(1);
    freeze(input);
    expect(() => Object.assign(input.a[0] ?? {}, { b: 2 })).toThrow(TypeError);
    const world = worldNow();
    Object.defineProperty(Object.prototype, "polluted", { value: 1, configurable: true });
    expect(worldNow()).not.toEqual(world);
    Reflect.deleteProperty(Object.prototype, "polluted");
    expect(worldNow()).toEqual(world);
  });
});
