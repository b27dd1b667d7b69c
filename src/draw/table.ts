/** Columns of words. Lengths in mm on paper. */
import { LETTER, widthOf } from "./lettering.js";
import { type Mark, text } from "./marks.js";

/** A column: its head, and a cell for each row. */
export interface Column {
  readonly head: string;
  readonly cells: readonly string[];
  readonly anchor?: "start" | "end";
}

const BETWEEN = 4;
const HEAD = -1.5;

/** Columns side by side from `left` on; `rowY` is the middle of a row. */
export function tableMarks(
  columns: readonly Column[],
  left: number,
  rowY: (row: number) => number,
): Mark[] {
  let x = left;
  return columns.flatMap((column) => {
    const width = Math.max(...[column.head, ...column.cells].map((words) => widthOf(words)));
    const place = column.anchor === "end" ? x + width : x;
    x += width + BETWEEN;
    return columnMarks(column, place, rowY);
  });
}

/** One column at x. */
export function columnMarks(
  { head, cells, anchor }: Column,
  x: number,
  rowY: (row: number) => number,
): Mark[] {
  const marks = cells.flatMap((words, row) => {
    return words === "" ? [] : [text(words, [x, rowY(row) + 0.36 * LETTER], { anchor })];
  });
  return head === "" ? marks : [text(head, [x, HEAD], { anchor }), ...marks];
}
