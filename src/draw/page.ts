/** A page: a drawing with its heading and notes, as one SVG text. */
import { HANG, HEADING, LETTER, oneLine, RISE, wrapped } from "./lettering.js";
import { type Box, boxOf, type Mark, PENS, type Pen, text } from "./marks.js";
import { type Attributes, element, plain, written } from "./xml.js";

/** What stands on a page. */
export interface Page {
  readonly title: string;
  /** Below the title. */
  readonly lines: readonly string[];
  readonly marks: readonly Mark[];
  /** Below the drawing. */
  readonly notes: readonly string[];
  /** All of it in words, for those who cannot see it. */
  readonly description: string;
}

const MARGIN = 4;
const LEADING = 1.6;
const LEAST_WIDTH = 150;

/**
 * Alone or as an image, a drawing is black on white, white on black where the reader's system is dark, and black on
 * nothing in print. It brings its ground along there, as the page around it may be of the other kind. Inside a page
 * (where it is not the root) it has no ground and takes the colour of the text around it.
 */
const STYLE =
  "svg.marker-depth{max-width:100%;height:auto}" +
  "svg.marker-depth:root{color:#000;background:#fff}" +
  "@media (prefers-color-scheme:dark){svg.marker-depth:root{color:#fff;background:#111}}" +
  "@media print{svg.marker-depth:root{color:#000;background:none}}";

/** The page as SVG: as large as what stands on it, in mm. */
export function svgOf(page: Page): string {
  const marks = composed(page);
  const title = oneLine(page.title);
  const description = oneLine(page.description);
  const drawing = grouped(marks).map(
    ([pen, svg]) => `<g${written({ class: pen, ...PENS[pen] })}>\n${svg.join("\n")}\n</g>`,
  );
  const id = `marker-depth-${fingerprint([title, description, ...drawing].join("\n"))}`;
  return [
    `<svg${written(rootOf(boxOf(marks), id))}>`,
    element("title", { id: `${id}-title` }, title),
    element("desc", { id: `${id}-desc` }, description),
    `<style>${STYLE}</style>`,
    ...drawing,
    "</svg>\n",
  ].join("\n");
}

/** The root's attributes: the box and a margin around it are its size in mm and its view. */
function rootOf(box: Box, id: string): Attributes {
  const left = box.left - MARGIN;
  const top = box.top - MARGIN;
  const width = box.right + MARGIN - left;
  const height = box.bottom + MARGIN - top;
  return {
    xmlns: "http://www.w3.org/2000/svg",
    class: "marker-depth",
    width: `${plain(width)}mm`,
    height: `${plain(height)}mm`,
    viewBox: [left, top, width, height].map(plain).join(" "),
    role: "img",
    "aria-labelledby": `${id}-title`,
    "aria-describedby": `${id}-desc`,
  };
}

/** Heading above the drawing, notes below it, all from its left edge on. */
function composed({ title, lines, marks, notes }: Page): Mark[] {
  const box = boxOf(marks);
  const width = Math.max(box.right - box.left, LEAST_WIDTH);
  const titles = wrapped(title, width, HEADING, 3);
  const heading = lines.flatMap((words) => wrapped(words, width));
  const step = LETTER * LEADING;
  const headingEnd = box.top - 2 * LETTER;
  const headingStart = headingEnd - step * (heading.length - 1);
  const titleEnd = headingStart - HEADING * LEADING;
  return [
    ...stacked(titles, box.left, titleEnd - (titles.length - 1) * HEADING * LEADING, HEADING),
    ...stacked(heading, box.left, headingStart, LETTER),
    ...marks,
    ...stacked(notesOf(notes, width), box.left, notesStart(box), LETTER),
  ];
}

function notesOf(notes: readonly string[], width: number): string[] {
  return notes.flatMap((words) => wrapped(words, width));
}

function notesStart(box: Box): number {
  return box.bottom + LETTER * (RISE + HANG) + LETTER;
}

function stacked(lines: readonly string[], x: number, y: number, height: number): Mark[] {
  return lines.map((words, i) => text(words, [x, y + i * height * LEADING], { height }));
}

/** Marks gathered by pen, light areas first and letters last, so that nothing covers what matters more. */
function grouped(marks: readonly Mark[]): [Pen, string[]][] {
  return (Object.keys(PENS) as Pen[]).flatMap((pen) => {
    const svg = marks
      .filter((mark) => mark.pen === pen)
      .map(({ name, tag, attributes, words }) =>
        element(tag, { class: name, ...attributes }, words),
      );
    return svg.length > 0 ? [[pen, svg] as [Pen, string[]]] : [];
  });
}

/** A short name for a text, always the same for the same one (FNV-1a, 32 bits). */
function fingerprint(words: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) {
    hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
