/** The cells of a sweep's picture, the edge of what works, and the values along its axes. */
import { LETTER, widthOf } from "./lettering.js";
import { circle, line, type Mark, rectangle, type Spot, strokes, text } from "./marks.js";
import type { DrawnAxis, SweepGrid, Verdict } from "./sweep-grid.js";

/** The room for the cells, and how small and how large one may be. */
const ROOM = { width: 140, height: 96 };
const WIDTHS = { least: 1.7, most: 20 };
const HEIGHTS = { least: 1.7, most: 10 };

/** How large the cells are, and whether figures find room in them. */
export interface CellSize {
  readonly width: number;
  readonly height: number;
  readonly figures: boolean;
}

/** The chart. */
export function sweepChart(grid: SweepGrid): Mark[] {
  const size = cellSizeOf(grid);
  const [columns, rows] = [grid.x.values.length, grid.y?.values.length ?? 1];
  const corner = cornersOf(size, rows);
  return [
    ...grid.cells.flatMap(({ column, row, verdict, settings }) => {
      return cellMarks(verdict, settings, corner(column, row + 1), size);
    }),
    rectangle("narrow", corner(0, rows), corner(columns, 0), "frame"),
    ...frontierMarks(grid, corner),
    ...acrossMarks(grid.x, size, rows * size.height),
    ...(grid.y ? upwardMarks(grid.y, size, corner) : []),
  ];
}

/** The size of a grid's cells. */
export function cellSizeOf({ x, y, cells }: SweepGrid): CellSize {
  const width = within(ROOM.width / x.values.length, WIDTHS);
  const height = within(ROOM.height / (y?.values.length ?? 1), HEIGHTS);
  const widest = Math.max(...cells.map(({ settings }) => widthOf(String(settings))));
  return { width, height, figures: width >= widest + 1.5 && height >= 1.4 * LETTER };
}

function within(size: number, { least, most }: { least: number; most: number }): number {
  return Math.min(most, Math.max(least, size));
}

/** Where the corner between cells lies: columns from the left, rows from below. */
function cornersOf({ width, height }: CellSize, rows: number) {
  return (column: number, row: number): Spot => [column * width, (rows - row) * height];
}

/** What a cell shows, from its top left corner. Each verdict has a mark of its own, so that shade alone never tells. */
export function cellMarks(
  verdict: Verdict,
  settings: number,
  corner: Spot,
  size: CellSize,
): Mark[] {
  const [x, y] = corner;
  const tint = rectangle("tint", corner, [x + size.width, y + size.height], "region");
  const mark = verdictMark(verdict, settings, [x + size.width / 2, y + size.height / 2], size);
  const named = mark.map((one) => ({ ...one, name: `cell ${verdict}` }));
  return verdict === "one" ? [tint, ...named] : named;
}

/** A dot, a figure or a rising stroke, a cross, a level stroke, nothing. */
function verdictMark(
  verdict: Verdict,
  settings: number,
  [x, y]: Spot,
  { width, height, figures }: CellSize,
): Mark[] {
  const r = 0.3 * Math.min(width, height, 2 * LETTER);
  const stroke = (rise: number): [Spot, Spot] => [
    [x - r, y + rise],
    [x + r, y - rise],
  ];
  if (verdict === "one") return [circle("solid", [x, y], Math.min(0.9, r))];
  if (verdict === "none") return [strokes("narrow", [stroke(r), stroke(-r)])];
  if (verdict === "unread") return [line("narrow", stroke(0))];
  if (verdict === "left out") return [];
  return figures
    ? [text(String(settings), [x, y + 0.36 * LETTER], { anchor: "middle" })]
    : [strokes("narrow", [stroke(r)])];
}

/** The edge of the region in which one setting does: wide lines between its cells and all else. */
function frontierMarks({ x, y, cells }: SweepGrid, corner: (c: number, r: number) => Spot): Mark[] {
  const [columns, rows] = [x.values.length, y?.values.length ?? 1];
  const isIn = (column: number, row: number) =>
    column >= 0 && column < columns && cells[row * columns + column]?.verdict === "one";
  const upright = rising(columns + 1).flatMap((column) =>
    runs(rows, (row) => isIn(column - 1, row) !== isIn(column, row)).map(([from, to]) => {
      return [corner(column, from), corner(column, to)] as const;
    }),
  );
  const level = rising(rows + 1).flatMap((row) =>
    runs(columns, (column) => isIn(column, row - 1) !== isIn(column, row)).map(([from, to]) => {
      return [corner(from, row), corner(to, row)] as const;
    }),
  );
  const sides = [...upright, ...level];
  return sides.length > 0 ? [strokes("wide", sides, "frontier")] : [];
}

function rising(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i);
}

/** Stretches of places at which something holds: the first, and the one after the last. */
export function runs(count: number, holds: (place: number) => boolean): [number, number][] {
  const found: [number, number][] = [];
  for (let place = 0; place < count; place++) {
    if (!holds(place)) continue;
    const last = found.at(-1);
    if (last && last[1] === place) last[1] = place + 1;
    else found.push([place, place + 1]);
  }
  return found;
}

const TICK = 1.5;

/** Values below the cells; where they find no room, only every so many. */
function acrossMarks(axis: DrawnAxis, { width }: CellSize, bottom: number): Mark[] {
  const words = axis.values.map(valueWords);
  const widest = Math.max(...words.map((word) => widthOf(word)));
  const shown = everySoMany(words, Math.ceil((widest + 2.5) / width));
  const foot = bottom + TICK + 1 + LETTER;
  const middle = (axis.values.length * width) / 2;
  return [
    ...shown.flatMap(([word, i]) => {
      const x = (i + 0.5) * width;
      const ends: Spot[] = [
        [x, bottom],
        [x, bottom + TICK],
      ];
      return [line("narrow", ends, "tick"), text(word, [x, foot], { anchor: "middle" })];
    }),
    text(axisWords(axis.path), [middle, foot + 1.8 * LETTER], { anchor: "middle" }),
  ];
}

/** Values left of the cells, and the axis' name above them. */
function upwardMarks(
  axis: DrawnAxis,
  { height }: CellSize,
  corner: (c: number, r: number) => Spot,
): Mark[] {
  const words = axis.values.map(valueWords);
  const shown = everySoMany(words, Math.ceil((1.3 * LETTER) / height));
  const widest = Math.max(...words.map((word) => widthOf(word)));
  return [
    ...shown.flatMap(([word, i]) => {
      const [, y] = corner(0, i + 0.5);
      const ends: Spot[] = [
        [-TICK, y],
        [0, y],
      ];
      const foot: Spot = [-TICK - 1, y + 0.36 * LETTER];
      return [line("narrow", ends, "tick"), text(word, foot, { anchor: "end" })];
    }),
    text(axisWords(axis.path), [-TICK - 1 - widest, -0.8 * LETTER]),
  ];
}

function everySoMany(words: readonly string[], step: number): [string, number][] {
  return words.flatMap((word, i): [string, number][] => (i % step === 0 ? [[word, i]] : []));
}

/** A value of an axis: “305”, “6.35”, “flat”. */
export function valueWords(value: number): string {
  return value === Infinity ? "flat" : String(Number(value.toPrecision(6))).replace("-", "−");
}

/** An axis' path with its unit. */
export function axisWords(path: string): string {
  if (path === "tolerance.radius") return `${path}, a fraction`;
  if (path === "scale.perpendicular") return `${path}, fret`;
  return `${path}, ${path.endsWith("bit.angle") ? "degrees" : "mm"}`;
}
