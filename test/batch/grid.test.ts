/** The grid of a sweep by itself: counted by hand on a grid of 2 × 3 × 4, and how often a stage is worked out. */
import { expect, test } from "vitest";
import { advanceRow, digitsOf, keep, keepRows, sizeOf } from "../../src/batch/grid.js";

const SHAPE = [2, 3, 4];

test("as many combinations as the counts multiply to; one where nothing varies", () => {
  expect(sizeOf(SHAPE)).toBe(24);
  expect(sizeOf([])).toBe(1);
  expect(sizeOf([5, 0])).toBe(0);
});

test.each([
  [0, [0, 0, 0]],
  [3, [0, 0, 3]],
  [4, [0, 1, 0]],
  [11, [0, 2, 3]],
  [12, [1, 0, 0]],
  [23, [1, 2, 3]],
])("combination %d has the values %o, the last varying fastest", (i, digits) => {
  expect(digitsOf(SHAPE, i)).toEqual(digits);
});

test("the next row: the last axis left alone, the one before it counted up, and carried", () => {
  const digits = [0, 1, 2];
  advanceRow(digits, SHAPE);
  expect(digits).toEqual([0, 2, 2]);
  advanceRow(digits, SHAPE);
  expect(digits).toEqual([1, 0, 2]);
  const alone = [3];
  advanceRow(alone, [4]);
  expect(alone).toEqual([3]);
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

test("a result is worked out once for each combination of its own axes", () => {
  const { asked, work } = noted();
  const kept = keep(SHAPE, [0, 2], work);
  expect(kept.at([1, 0, 3])).toBe("103");
  expect(kept.at([1, 2, 3])).toBe("103");
  expect(kept.at([0, 0, 3])).toBe("003");
  expect(kept.at([1, 1, 0])).toBe("110");
  expect(kept.at([1, 1, 3])).toBe("103");
  expect(asked).toEqual(["103", "003", "110"]);
});

test("a result that hangs on nothing is worked out once, even where it is undefined", () => {
  let count = 0;
  const kept = keep<undefined>(SHAPE, [], () => {
    count++;
  });
  expect(kept.at([0, 0, 0])).toBeUndefined();
  expect(kept.at([1, 2, 3])).toBeUndefined();
  expect(count).toBe(1);
});

test("as many as 65 536 results are kept, of more only the last", () => {
  const most = noted();
  const kept = keep([65_536], [0], most.work);
  for (const i of [7, 65_535, 7, 65_535]) kept.at([i]);
  expect(most.asked).toEqual(["7", "65535"]);
  const more = noted();
  const last = keep([65_537], [0], more.work);
  for (const i of [7, 7, 65_536, 7]) expect(last.at([i])).toBe(String(i));
  expect(more.asked).toEqual(["7", "65536", "7"]);
});

test("along the last axis: from start to end, each once", () => {
  const { asked, work } = noted();
  const rows = keepRows(SHAPE, [0, 2], work);
  expect(rows.along([1, 0, 0], 1, 3).slice(1, 3)).toEqual(["101", "102"]);
  expect(asked).toEqual(["101", "102"]);
  // another value of an axis that has no part in it
  expect(rows.along([1, 2, 0], 0, 4)).toEqual(["120", "101", "102", "123"]);
  expect(asked).toEqual(["101", "102", "120", "123"]);
  expect(rows.along([1, 1, 3], 0, 4)).toEqual(["120", "101", "102", "123"]);
  expect(asked).toHaveLength(4);
  expect(rows.along([0, 1, 0], 0, 1)[0]).toBe("010");
  expect(asked).toHaveLength(5);
});

test("a result that the last axis has no part in is worked out once for its row", () => {
  const { asked, work } = noted();
  const rows = keepRows(SHAPE, [1], work);
  expect(rows.along([0, 2, 0], 2, 3)).toEqual(["020", "020", "020", "020"]);
  expect(rows.along([1, 2, 3], 0, 4)).toEqual(["020", "020", "020", "020"]);
  expect(asked).toEqual(["020"]);
  expect(rows.along([1, 1, 0], 0, 1)[0]).toBe("110");
  expect(asked).toEqual(["020", "110"]);
});

test("undefined is a result too, and is not asked for again", () => {
  let count = 0;
  const rows = keepRows<undefined>([4], [0], () => {
    count++;
  });
  for (let i = 0; i < 3; i++) rows.along([0], 0, 3);
  expect(count).toBe(3);
});

test("rows with 65 536 results are kept, of more only the last row", () => {
  const most = noted();
  const kept = keepRows([4, 16_384], [0, 1], most.work);
  for (const row of [0, 1, 0]) kept.along([row, 0], 0, 1);
  expect(most.asked).toEqual(["00", "10"]);
  const more = noted();
  const last = keepRows([4, 16_385], [0, 1], more.work);
  for (const row of [0, 0, 1, 0]) expect(last.along([row, 0], 0, 1)[0]).toBe(`${row}0`);
  expect(more.asked).toEqual(["00", "10", "00"]);
});
