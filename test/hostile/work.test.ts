/** The work on any input is bounded: counted in reads, not in time. */
import { expect, test } from "vitest";
import { FILE_LIMITS, readDesign } from "../../src/files/index.js";
import {
  checkDesign,
  type Design,
  fretLines,
  fretPositions,
  holeWindow,
  LIMITS,
  profileAt,
  removalAt,
  repairHole,
} from "../../src/index.js";
import { checkDesign as shown } from "../../src/notebook/index.js";

/** A list that goes on for ever: whatever is asked of it is another such list, and each read is counted. */
function endless(length: number, reads: { count: number }): never {
  const inner = () => endless(length, reads);
  const list = new Proxy([], {
    get: (_, key) => {
      reads.count++;
      if (key === "length") return length;
      return typeof key === "symbol" ? undefined : inner();
    },
    ownKeys: () => {
      reads.count++;
      return ["length", "0", "kind", "nut", "positions"];
    },
  });
  return list as never;
}

/** An object whose every field is an endless list. */
function endlessBox(length: number, reads: { count: number }): never {
  return new Proxy({}, { get: () => endless(length, reads) }) as never;
}

const SMALL: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: 50, thickness: 6 },
  radius: 254,
  markers: [{ frets: [5], diameter: 6 }],
};

type Take = (value: never) => unknown;

/** Each function that takes what a user made, with its endless argument. */
const TAKERS: Readonly<Record<string, Take>> = {
  checkDesign,
  fretLines,
  fretPositions,
  "notebook checkDesign": shown,
  "holeWindow, design": (design) => holeWindow(design, { along: 1, offset: 0, diameter: 1 }),
  "holeWindow, hole": (hole) => holeWindow(SMALL, hole),
  "profileAt, profile": (profile) => profileAt(profile, 1, SMALL),
  "profileAt, design": (design) => profileAt(1, 1, design),
  "removalAt, design": (design) => removalAt(design, 1, 1),
  "repairHole, hole": (hole) => repairHole(SMALL, hole, [6]),
  "repairHole, rack": (rack) => repairHole(SMALL, { fret: 5, error: 0 }, rack),
};
/** 20 groups of 250 frets, and as much again for what is asked of each. */
const MOST_READS = 2 * LIMITS.groups.value * LIMITS.frets.value;
const LENGTHS = [LIMITS.groups.value, LIMITS.frets.value, 1000, 1e6, 2 ** 32 - 1, Infinity];

test.each(Object.entries(TAKERS))("%s: an endless input is refused after few reads", (_, take) => {
  for (const length of LENGTHS) {
    for (const endlessly of [endless, endlessBox]) {
      const reads = { count: 0 };
      expect(() => take(endlessly(length, reads))).toThrow(RangeError);
      expect(reads.count).toBeLessThan(MOST_READS);
    }
  }
});

/** Counts the reads of everything within. */
function counted<T>(value: T, reads: { count: number }): T {
  if (typeof value !== "object" || value === null) return value;
  return new Proxy(value, {
    get: (target, key, receiver) => {
      reads.count++;
      return counted(Reflect.get(target, key, receiver), reads);
    },
  });
}

function values(value: unknown): number {
  if (typeof value !== "object" || value === null) return 1;
  return Object.values(value).reduce((sum: number, inner) => sum + values(inner), 1);
}

/** Invented: so many groups, each at every fret that there may be. */
function crowded(groups: number): Design {
  const frets = Array.from({ length: LIMITS.frets.value }, (_, i) => i + 1);
  return {
    scale: { positions: frets.map((fret) => 2 * fret) },
    board: { length: 600, width: 50, thickness: 6 },
    radius: 254,
    markers: Array.from({ length: groups }, () => ({ frets, diameter: 1 })),
  };
}

test("the largest design is read once, field by field", () => {
  for (const groups of [1, LIMITS.groups.value]) {
    const design = crowded(groups);
    const reads = { count: 0 };
    const { holes } = checkDesign(counted(design, reads));
    expect(holes).toHaveLength(groups * LIMITS.frets.value);
    // each value once, each list's length, and the fields of a group that are left out
    expect(reads.count).toBeGreaterThan(values(design) / 2);
    expect(reads.count).toBeLessThan(2 * values(design) + 50);
  }
});

test("one more of anything is refused", () => {
  expect(() => checkDesign(crowded(LIMITS.groups.value + 1))).toThrow(
    /markers: expected .*20 at most/,
  );
  const frets = LIMITS.frets.value + 1;
  expect(() => checkDesign({ ...SMALL, scale: { length: 648, frets } })).toThrow(/from 1 to 250/);
});

test.each([
  ["characters", `"${"x".repeat(FILE_LIMITS.text.value)}"`, FILE_LIMITS.text],
  ["levels", "[".repeat(FILE_LIMITS.depth.value + 1), FILE_LIMITS.depth],
  ["levels, a great many", "[".repeat(900_000), FILE_LIMITS.depth],
  [
    "keys",
    `{${Array.from({ length: FILE_LIMITS.keys.value + 1 }, (_, i) => `"a${i}":1`).join()}}`,
    FILE_LIMITS.keys,
  ],
])("a file beyond its limit of %s is refused for that alone", (_, text, { value, unit }) => {
  expect(() => readDesign(text)).toThrow(`1 problem in the design:`);
  expect(() => readDesign(text)).toThrow(new RegExp(`at most ${value} ${unit}`));
});
