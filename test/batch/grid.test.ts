/** The grid of a sweep by itself: counted by hand on a grid of 2 × 3 × 4, and how often a stage is worked out. */
import { expect, test } from "vitest";
import { advanceRow, countRows, memoize, memoizeRows, splitIndex } from "../../src/batch/grid.js";

const SHAPE = [2, 3, 4];

test("as many combinations as the counts multiply to, the last varying fastest", () => {
  expect([countRows(SHAPE), countRows([]), countRows([5, 0])]).toEqual([24, 1, 0]);
  const digits = [0, 3, 4, 11, 12, 23].map((i) => splitIndex(SHAPE, i).join(""));
  expect(digits).toEqual(["000", "003", "010", "023", "100", "123"]);
});

test("the next row: the last axis left alone, the one before it counted up, and carried", () => {
  const digits = [0, 1, 2];
  advanceRow(digits, SHAPE);
  expect(digits).toEqual([0, 2, 2]);
  advanceRow(digits, SHAPE);
  expect(digits).toEqual([1, 0, 2]);
});

/** Work that writes down what it was asked for. */
function noted() {
  const asked: string[] = [];
  const work = (digits: readonly number[]) => {
    asked.push(digits.join(""));
    return digits.join("");
  };
  return { asked, work };
}

test("a result is worked out once for each combination of its own axes, even where it is undefined", () => {
  const { asked, work } = noted();
  const kept = memoize(SHAPE, [0, 2], work);
  const at = ["103", "123", "003", "110", "113"].map((d) => kept.at([...d].map(Number)));
  expect(at).toEqual(["103", "103", "003", "110", "103"]);
  expect(asked).toEqual(["103", "003", "110"]);
  let count = 0;
  const none = memoize<undefined>(SHAPE, [], () => {
    count++;
  });
  expect([none.at([0, 0, 0]), none.at([1, 2, 3]), count]).toEqual([undefined, undefined, 1]);
});

test("as many as 65 536 results are kept, of more only the last", () => {
  for (const [size, asked] of [
    [65_536, ["7", "9"]],
    [65_537, ["7", "9", "7"]],
  ] as const) {
    const most = noted();
    const kept = memoize([size], [0], most.work);
    for (const i of [7, 7, 9, 7]) expect(kept.at([i])).toBe(String(i));
    expect(most.asked).toEqual(asked);
    const rows = noted();
    const along = memoizeRows([size, 1], [0, 1], rows.work);
    for (const i of [7, 7, 9, 7]) expect(along.along([i, 0], 0, 1)[0]).toBe(`${i}0`);
    expect(rows.asked).toEqual(asked.map((each) => `${each}0`));
  }
});

test("along the last axis: from start to end, each once, whatever an axis that has no part in it", () => {
  const { asked, work } = noted();
  const rows = memoizeRows(SHAPE, [0, 2], work);
  expect(rows.along([1, 0, 0], 1, 3).slice(1, 3)).toEqual(["101", "102"]);
  expect(rows.along([1, 2, 0], 0, 4)).toEqual(["120", "101", "102", "123"]);
  expect(rows.along([1, 1, 3], 0, 4)).toEqual(["120", "101", "102", "123"]);
  expect(rows.along([0, 1, 0], 0, 1)[0]).toBe("010");
  expect(asked).toEqual(["101", "102", "120", "123", "010"]);
  // a result that the last axis has no part in is worked out once for its row
  const once = noted();
  const same = memoizeRows(SHAPE, [1], once.work);
  expect(same.along([0, 2, 0], 2, 3)).toEqual(["020", "020", "020", "020"]);
  expect(same.along([1, 2, 3], 0, 4)).toEqual(["020", "020", "020", "020"]);
  expect(once.asked).toEqual(["020"]);
});
