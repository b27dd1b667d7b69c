/**
 * Words on paper. Which font a reader has is not known, so widths are those of the widest plain fonts, rounded up: a
 * text never takes more room than is kept for it. Lengths in mm on paper.
 */
import { LETTER, type Mark, type Spot } from "./line.js";
import { element, plain } from "./xml.js";

/** How far letters rise above their base line, hang below it, and where their middle lies, as shares of their height. */
export const [RISE, HANG, MIDDLE] = [0.8, 0.25, 0.36];

/** Letters, and their width as a share of their height, most special first. */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijlIJ ,.:;'|!()[\]\\/\-frt]/, 0.42],
  [/[mMwW%@]/, 1],
  [/[+=<>~#±−×^&]/, 0.84],
  [/[A-ZØ]/, 0.79],
  [/[ -~–]/, 0.64],
  [/[\u00a1-\u024f…]/, 1.05],
  [/./su, 1.4],
];

/** How wide the widest of some texts is at most. */
export function measure(texts: string | readonly string[], height = LETTER): number {
  const share = (letter: string) => WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? 0;
  const widths = [texts].flat().map((words) => {
    return [...words].reduce((sum, letter) => sum + share(letter), 0) * height;
  });
  return Math.max(...widths);
}

/** Where a text begins, is centred or ends. */
export type Anchor = "start" | "middle" | "end";

/** A text at a spot of its base line; `turned`, it runs upward and is read from the right. */
export function text(
  words: string,
  [x, y]: Spot,
  anchor: Anchor = "start",
  turned = false,
  height = LETTER,
): Mark {
  const width = measure(words, height);
  const before = width * { start: 0, middle: 0.5, end: 1 }[anchor];
  const [rise, hang] = [RISE * height, HANG * height];
  const box = turned
    ? { left: x - rise, top: y + before - width, right: x + hang, bottom: y + before }
    : { left: x - before, top: y - rise, right: x - before + width, bottom: y + hang };
  const attributes = {
    x,
    y,
    "font-size": height === LETTER ? undefined : height,
    "text-anchor": anchor === "start" ? undefined : anchor,
    transform: turned ? `rotate(-90 ${plain(x)} ${plain(y)})` : undefined,
  };
  return { pen: "letter", name: undefined, svg: element("text", attributes, words), box };
}

/** A column of a table: its head, a cell for each row, and the end at which they are flush. */
export type Column = readonly [head: string, cells: readonly string[], anchor: Anchor];

/** Columns side by side from `left` on, their heads a little above `top`, the middles of rows where `middle` says. */
export function table(
  columns: readonly Column[],
  left: number,
  middle: (row: number) => number,
  top = 0,
): Mark[] {
  let x = left;
  return columns.flatMap(([head, cells, anchor]) => {
    const width = measure([head, ...cells]);
    const place = anchor === "end" ? x + width : x;
    x += width + 4;
    const rows = cells.map((words, i) => text(words, [place, middle(i) + MIDDLE * LETTER], anchor));
    return head === "" ? rows : [text(head, [place, top - 1.5], anchor), ...rows];
  });
}

/** One line without breaks or runs of spaces. */
export function oneLine(words: string): string {
  return words.replace(/\s+/gu, " ").trim();
}

/** Letters that are looked at: more than find room on any paper. */
const MOST_LETTERS = 2000;

/** A text in lines no wider than `width`, and no more than `most` of them; an ellipsis stands for what is cut. */
export function wrap(words: string, width: number, height = LETTER, most = 8): string[] {
  const rows: string[] = [];
  for (const word of oneLine(words.slice(0, MOST_LETTERS)).split(" ")) {
    const joined = [...rows.slice(-1), word].join(" ");
    if (rows.length === most || measure(joined, height) <= width) rows.splice(-1, 1, joined);
    else rows.push(word);
  }
  return rows.map((row) => shorten(row, width, height));
}

function shorten(words: string, width: number, height: number): string {
  if (measure(words, height) <= width) return words;
  let kept = "";
  for (const letter of words) {
    if (measure(`${kept}${letter}…`, height) > width) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
