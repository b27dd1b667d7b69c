/**
 * Letters on a drawing: heights, and how much room a text takes. Lengths in mm on paper.
 * Which font a reader has is not known, so widths are those of the widest plain fonts, rounded up: a text never
 * takes more room than is kept for it.
 */

/** Height of plain letters, of the series 2.5, 3.5, 5 of ISO 3098 (memory). */
export const LETTER = 3.5;
/** Height of a heading's letters. */
export const HEADING = 5;
/** How far letters rise above their base line and hang below it, as a share of their height. */
export const RISE = 0.8;
export const HANG = 0.25;

/** The narrowest letter's share. */
const NARROWEST = 0.42;

/** Letters, and their width as a share of their height. */
type LetterWidth = readonly [RegExp, number];

/** Widths, most special first. */
const WIDTHS: readonly LetterWidth[] = [
  [/[ijlIJ ,.:;'|!()[\]\\/\-frt]/, NARROWEST],
  [/[mMwW%@]/, 1],
  [/[+=<>~#±−×^&]/, 0.84],
  [/[A-ZØ]/, 0.79],
  [/[ -~–]/, 0.64],
  [/[\u00a1-\u024f…]/, 1.05],
  [/./su, 1.4],
];

/** How wide a text is at most. */
export function widthOf(text: string, height = LETTER): number {
  let shares = 0;
  for (const letter of text) {
    // the last one fits any letter
    const [, share] = WIDTHS.find(([letters]) => letters.test(letter)) as LetterWidth;
    shares += share;
  }
  return shares * height;
}

/** One line without breaks or runs of spaces. */
export function oneLine(text: string): string {
  return text.replace(/\s+/gu, " ").trim();
}

/** A text in lines no wider than `width`, and no more than `most` of them; an ellipsis stands for what is cut. */
export function wrapped(text: string, width: number, height = LETTER, most = 8): string[] {
  const lines: string[] = [];
  // no more letters than could find room, plus one so that the cut shows
  const letters = Math.ceil((most * width) / (NARROWEST * height)) + most;
  const kept = [...oneLine(text)].slice(0, letters).join("");
  for (const word of pieces(kept, width, height)) {
    const last = lines[lines.length - 1];
    const joined = `${last} ${word}`;
    if (last !== undefined && widthOf(joined, height) <= width) lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), shortened(lines.slice(most - 1).join(" "), width, height)];
}

/** The words, those too long for a line cut to its width. */
function pieces(text: string, width: number, height: number): string[] {
  return text.split(" ").flatMap((word) => {
    const parts: string[] = [];
    let part = "";
    for (const letter of word) {
      if (part !== "" && widthOf(part + letter, height) > width) {
        parts.push(part);
        part = "";
      }
      part += letter;
    }
    return [...parts, part];
  });
}

/** A text cut to a width, with an ellipsis where something is cut. */
export function shortened(text: string, width: number, height = LETTER): string {
  if (widthOf(text, height) <= width) return text;
  let kept = "";
  for (const letter of text) {
    if (widthOf(`${kept}${letter}…`, height) > width) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
