/** Plain text laid out within the width of a card: sentences cut into lines, tables. */
import { elementAt } from "../geometry/element-at.js";

/** The most characters that a line has. */
export const COLUMNS = 100;

/** A table folded into as many columns beside each other as the card is wide. */
export function sideBySide(
  head: readonly string[],
  cells: readonly (readonly string[])[],
): string[] {
  for (const columns of [4, 3, 2]) {
    const rows = Math.ceil(cells.length / columns);
    const folded = Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => cells[r + c * rows] ?? head.map(() => "")),
    );
    const heads = Array.from({ length: columns }, () => head);
    const lines = table(
      [heads, ...folded].map((row) => row.flatMap((part) => ["|", ...part]).slice(1)),
    );
    // a table that is too wide takes more lines
    if (lines.length === rows + 1) return lines;
  }
  return table([head, ...cells]);
}

/** A table; one that is too wide goes on below itself, its first columns repeated. */
export function table(rows: readonly (readonly string[])[], repeated = 0): string[] {
  const columns = elementAt(rows, 0).map((_, c) => padColumn(rows.map((row) => elementAt(row, c))));
  const first = columns.slice(0, repeated);
  const blocks: string[][][] = [];
  let block = [...first];
  for (const column of columns.slice(repeated)) {
    if (block.length > repeated && measureWidth([...block, column]) > COLUMNS) {
      blocks.push(block);
      block = [...first];
    }
    block.push(column);
  }
  return [...blocks, block].flatMap((parts, i) => {
    const lines = rows.map((_, r) => `  ${parts.map((cells) => cells[r]).join("  ")}`.trimEnd());
    return i === 0 ? lines : ["", ...lines];
  });
}

/** Cells padded to the widest of them; text to the left, a column of numbers alone to the right. */
function padColumn(cells: readonly string[]): string[] {
  const width = Math.max(...cells.map(({ length }) => length));
  const told = cells.slice(1).filter((cell) => cell !== "" && cell !== "-");
  const isNumber = told.length > 0 && told.every((cell) => /^-?[.0-9]+$/.test(cell));
  return cells.map((cell) => (isNumber ? cell.padStart(width) : cell.padEnd(width)));
}

function measureWidth(columns: readonly (readonly string[])[]): number {
  return columns.reduce((sum, column) => sum + 2 + elementAt(column, 0).length, 0);
}

/** A text cut into lines at its spaces; a word that is longer than a line stands alone. */
export function wrapped(text: string, first: string, next = first): string[] {
  const [start, ...words] = text.split(" ");
  const lines: string[] = [];
  let line = `${first}${start}`;
  for (const word of words) {
    if (line.length + 1 + word.length > COLUMNS) {
      lines.push(line);
      line = next + word;
    } else line += ` ${word}`;
  }
  return [...lines, line];
}
