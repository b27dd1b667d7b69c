/** Tables of a card as tables of a page. */
import { NOTHING, type Table } from "../card/holes.js";
import { element } from "../draw/xml.js";

/** A table that may be wider than the page; nothing where it has no rows. The first cell of a row is its head. */
export function writeTable({ key, head, rows }: Table): string[] {
  if (rows.length === 0) return [];
  const heads = head.map((words) => element("th", { scope: "col" }, words));
  const cells = rows.map((row) =>
    row.map((cell, i) => {
      return i === 0 ? element("th", { scope: "row" }, cell) : element("td", {}, shown(cell));
    }),
  );
  return [
    element("p", {}, `${key}.`),
    '<div style="overflow-x:auto">',
    '<table style="white-space:nowrap;text-align:right;border-spacing:0.8em 0">',
    `<thead>${layRow(heads)}</thead>`,
    "<tbody>",
    ...cells.map(layRow),
    "</tbody>",
    "</table>",
    "</div>",
  ];
}

function layRow(cells: readonly string[]): string {
  return `<tr>${cells.join("")}</tr>`;
}

function shown(cell: string): string {
  return cell === NOTHING ? "–" : cell.replace(/^-/, "−");
}
