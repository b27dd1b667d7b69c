/** The paper: a drawing with its heading, legend and notes, as one SVG text. Lengths in mm on paper. */
import { HANG, measure, oneLine, RISE, text, wrap } from "./label.js";
import { type Box, boxAround, LETTER, type Mark, PENS, type Pen, type Spot } from "./line.js";
import { element, plain, written } from "./xml.js";

/** What stands on the paper. */
export interface Page {
  readonly title: string;
  /** Below the title. */
  readonly heading: readonly string[];
  readonly marks: readonly Mark[];
  readonly legend: readonly Entry[];
  /** Below the legend. */
  readonly notes: readonly string[];
  /** What the drawing shows, for those who cannot see it. */
  readonly spoken: readonly string[];
}

/** What marks of one name stand for, shown where there are any, and a sample drawn in a box between two corners. */
export type Entry = readonly [
  name: string,
  words: string,
  sample: (from: Spot, to: Spot, middle: Spot) => readonly Mark[],
];

const MARGIN = 4;
const LEAST_WIDTH = 150;
/** Height of a title's letters, and from one line to the next as a share of their height. */
const [TITLE, LEADING] = [5, 1.6];

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

/** The page as SVG: as large as what stands on it and a margin, in mm. */
export function writePage(page: Page): string {
  // a mark of no lines takes no room
  const drawn = page.marks.filter(({ box }) => box.left <= box.right);
  const marks = compose({ ...page, marks: drawn });
  const box = boxAround(marks);
  const [left, top] = [box.left - MARGIN, box.top - MARGIN];
  const [width, height] = [box.right + MARGIN - left, box.bottom + MARGIN - top];
  return writeSvg({
    name: "marker-depth",
    size: [plain(width), plain(height)],
    viewBox: [left, top, width, height],
    title: page.title,
    spoken: [...page.heading, ...page.spoken, ...page.notes],
    style: STYLE,
    marks,
  });
}

/** A document: its class, how large it is in mm, the room that it shows, its words for those who cannot see it. */
export interface Sheet {
  readonly name: string;
  readonly size: readonly [width: string, height: string];
  readonly viewBox: readonly number[];
  readonly title: string;
  readonly spoken: readonly string[];
  readonly style: string;
  readonly marks: readonly Mark[];
}

/** Marks as one SVG document. */
export function writeSvg({ name, size, viewBox, title, spoken, style, marks }: Sheet): string {
  const root = {
    xmlns: "http://www.w3.org/2000/svg",
    class: name,
    width: `${size[0]}mm`,
    height: `${size[1]}mm`,
    viewBox: viewBox.map(plain).join(" "),
    role: "img",
    "aria-label": oneLine(title),
  };
  // light areas first and letters last, so that nothing covers what matters more
  const drawing = (Object.keys(PENS) as Pen[]).flatMap((pen) => {
    const group = marks.filter((mark) => mark.pen === pen).map(({ svg }) => svg);
    const start = `<g${written({ class: pen, ...PENS[pen] })}>`;
    return group.length > 0 ? [start, ...group, "</g>"] : [];
  });
  return [
    `<svg${written(root)}>`,
    element("title", {}, oneLine(title)),
    element("desc", {}, oneLine(spoken.join(" "))),
    `<style>${style}</style>`,
    ...drawing,
    "</svg>\n",
  ].join("\n");
}

/** Title and heading above the drawing, legend and notes below it, all from its left edge on. */
function compose({ title, heading, marks, legend, notes }: Page): Mark[] {
  const box = boxAround(marks);
  const width = Math.max(box.right - box.left, LEAST_WIDTH);
  const fold = (paragraphs: readonly string[]) => paragraphs.flatMap((words) => wrap(words, width));
  const stack = (rows: readonly string[], y: number, height = LETTER) =>
    rows.map((row, i) => {
      return text(row, [box.left, y + i * LEADING * height], "start", false, height);
    });
  const [titles, headings] = [wrap(title, width, TITLE, 3), fold(heading)];
  const above = box.top - 2 * LETTER - (headings.length - 1) * LEADING * LETTER;
  const shown = legend.filter(([name]) => marks.some((mark) => mark.name === name));
  const all = [...marks, ...legendMarks(shown, box, width)];
  return [
    ...stack(titles, above - titles.length * LEADING * TITLE, TITLE),
    ...stack(headings, above),
    ...all,
    ...stack(fold(notes), boxAround(all).bottom + (RISE + HANG + 1) * LETTER),
  ];
}

/** The room for a sample, between it and its words, from one entry to the next, and from row to row. */
const SAMPLE = { width: 10, gap: 2, next: 7, row: 1.7 * LETTER };

/** Samples with their words in rows. */
function legendMarks(legend: readonly Entry[], { left, bottom }: Box, width: number): Mark[] {
  let [x, y] = [left, bottom + 2 * LETTER];
  return legend.flatMap(([, words, sample]) => {
    const room = SAMPLE.width + SAMPLE.gap + measure(words);
    if (x > left && x + room > left + width) [x, y] = [left, y + SAMPLE.row];
    const to: Spot = [x + SAMPLE.width, y + LETTER];
    const marks = sample([x, y], to, [x + SAMPLE.width / 2, y + LETTER / 2]);
    x += room + SAMPLE.next;
    // a sample is not what it stands for
    const unnamed = marks.map((mark) => ({ ...mark, svg: mark.svg.replace(/ class="[^"]*"/, "") }));
    return [...unnamed, text(words, [to[0] + SAMPLE.gap, y + 0.85 * LETTER])];
  });
}
