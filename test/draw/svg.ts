/** Reads a drawing back: its elements, where its texts stand and where its lines run. Lengths in mm on paper. */
import { XMLParser, XMLValidator } from "fast-xml-parser";

/** An element, with the pen of the group that it stands in. */
export interface Element {
  readonly tag: string;
  readonly pen: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/** A drawing read back. */
export interface Drawing {
  readonly root: Readonly<Record<string, string>>;
  readonly elements: readonly Element[];
}

type Node = Readonly<Record<string, unknown>>;

const PARSER = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: "",
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  processEntities: false,
});

const ENTITIES: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#39;": "'",
};

/** Reads a drawing; throws where it is not well-formed XML. */
export function read(svg: string): Drawing {
  const verdict = XMLValidator.validate(svg);
  if (verdict !== true) throw new Error(`not well-formed: ${verdict.err.msg}`);
  // what that parser lets pass: characters and entities that XML does not know, "]]>" in a text
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to find
  const foreign = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}|\]\]>/u;
  const found = foreign.exec(svg) ?? /&(?!(?:amp|lt|gt|quot|#39);)/.exec(svg);
  if (found) throw new Error(`not well-formed at ${found.index}: ${JSON.stringify(found[0])}`);
  const nodes = PARSER.parse(svg) as Node[];
  const root = nodes[0];
  if (nodes.length !== 1 || root === undefined || !("svg" in root)) throw new Error("no svg");
  return { root: attributesIn(root), elements: elementsIn(root, "svg", "") };
}

function elementsIn(node: Node, tag: string, pen: string): Element[] {
  return (node[tag] as Node[]).flatMap((child) => {
    const name = Object.keys(child).find((key) => key !== ":@" && key !== "#text");
    if (name === undefined) return [];
    const attributes = attributesIn(child);
    const parts = (child[name] as Node[]).map((part) => String(part["#text"] ?? ""));
    const text = decode(parts.join(""));
    const inside = name === "g" ? (attributes.class ?? "") : pen;
    return [{ tag: name, pen, attributes, text }, ...elementsIn(child, name, inside)];
  });
}

function attributesIn(node: Node): Record<string, string> {
  const attributes = Object.entries((node[":@"] ?? {}) as Record<string, string>);
  return Object.fromEntries(attributes.map(([name, value]) => [name, decode(value)]));
}

function decode(text: string): string {
  return text.replace(/&[^;]+;/g, (entity) => ENTITIES[entity] ?? entity);
}

/** A box on paper. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The paper. */
export function paperIn({ root }: Drawing): Box {
  const [left = 0, top = 0, width = 0, height = 0] = (root.viewBox ?? "").split(" ").map(Number);
  return { left, top, right: left + width, bottom: top + height };
}

/** A text, the box that it fills and where its base line starts. */
export interface Written {
  readonly words: string;
  readonly box: Box;
  readonly at: readonly [number, number];
}

/** Every text of the drawing. */
export function textsIn({ elements }: Drawing): Written[] {
  return elements
    .filter(({ tag }) => tag === "text")
    .map(({ text, attributes }) => ({
      words: text,
      box: boxOfText(text, attributes),
      at: [Number(attributes.x), Number(attributes.y)],
    }));
}

/** The words of every text. */
export function wordsIn(svg: string): string[] {
  return textsIn(read(svg)).map(({ words }) => words);
}

function boxOfText(words: string, attributes: Readonly<Record<string, string>>): Box {
  const [x, y] = [Number(attributes.x), Number(attributes.y)];
  const height = Number(attributes["font-size"] ?? 3.5);
  const width = advance(words) * height;
  const shares: Readonly<Record<string, number>> = { start: 0, middle: 0.5, end: 1 };
  const before = width * (shares[attributes["text-anchor"] ?? "start"] ?? Number.NaN);
  const [rise, hang] = [0.76 * height, 0.24 * height];
  if (attributes.transform === undefined) {
    return { left: x - before, top: y - rise, right: x - before + width, bottom: y + hang };
  }
  if (attributes.transform !== `rotate(-90 ${attributes.x} ${attributes.y})`) {
    throw new Error(`a text turned by ${attributes.transform}`);
  }
  return { left: x - rise, top: y + before - width, right: x + hang, bottom: y + before };
}

/**
 * Advance widths of " " to "~" in thousandths of an em, measured in a browser in its plain font, a wide one; others
 * are as wide as they are high.
 */
const ADVANCES = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636,
  636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
  575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685,
  611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579,
  278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];

/** Width of a text in ems. */
export function advance(words: string): number {
  const widths = [...words].map((letter) => ADVANCES[(letter.codePointAt(0) ?? 0) - 32] ?? 1000);
  return widths.reduce((sum, width) => sum + width, 0) / 1000;
}

/** A place on paper, and a straight line between two. */
export type Spot = readonly [number, number];
export interface Line {
  readonly pen: string;
  readonly name: string;
  readonly from: Spot;
  readonly to: Spot;
}

/** Every straight line, those of filled arrowheads too. */
export function linesIn(drawing: Drawing): Line[] {
  return drawing.elements.flatMap(({ tag, pen, attributes }) => {
    if (tag !== "path") return [];
    const runs = runsOf(attributes.d ?? "");
    return runs.flatMap((run) =>
      run.slice(1).map((to, i) => ({ pen, name: attributes.class ?? "", from: run[i] ?? to, to })),
    );
  });
}

/** The spots of each run of a path, a closed one back to its start. */
export function runsOf(d: string): Spot[][] {
  if (!/^(?:M[-.\de]+ [-.\de]+(?:L[-.\de]+ [-.\de]+)*Z?)+$/.test(d)) throw new Error(`path ${d}`);
  return d
    .split("M")
    .slice(1)
    .map((run) => {
      const spots = run
        .replace("Z", "")
        .split("L")
        .map((spot): Spot => {
          const [x = Number.NaN, y = Number.NaN] = spot.split(" ").map(Number);
          return [x, y];
        });
      const first = spots[0];
      return run.endsWith("Z") && first ? [...spots, first] : spots;
    });
}

/** The spots of a path of one class. */
export function spotsIn(drawing: Drawing, name: string): Spot[] {
  return classed(drawing, name).flatMap(({ attributes }) => runsOf(attributes.d ?? "").flat());
}

/** Elements of one class. */
export function classed(drawing: Drawing, name: string): Element[] {
  return drawing.elements.filter(({ attributes }) =>
    (attributes.class ?? "").split(" ").includes(name),
  );
}

/** A plot: its axis on paper, and what a place across it means, from two figures of the axis. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly valueAt: (x: number) => number;
}

/** The plots of a drawing, from the top down, each row from the left on. */
export function plotsIn(drawing: Drawing): Plot[] {
  const [lines, texts] = [linesIn(drawing), textsIn(drawing)];
  const axes = lines.filter(({ name }) => name === "axis");
  return axes.map(({ from: [left, bottom], to: [right] }) => {
    const ticks = lines.filter(({ name, from: [x, y] }) => {
      return name === "tick" && y === bottom && left <= x && x <= right;
    });
    const marked = ticks.map(({ from: [x] }) => {
      const below = texts.find(({ words, box }) => {
        const isNear = Math.abs((box.left + box.right) / 2 - x) < 0.05;
        return /^−?[\d.]+$/.test(words) && isNear && box.top > bottom && box.top < bottom + 5;
      });
      return [x, Number(below?.words.replace("−", "-"))] as const;
    });
    const [[x0, d0] = [0, NaN], [x1, d1] = [0, NaN]] = [marked[0], marked.at(-1)];
    if (!(x1 > x0 && marked.every(([, value]) => Number.isFinite(value)))) {
      throw new Error("an axis that cannot be read");
    }
    const valueAt = (x: number) => d0 + ((x - x0) * (d1 - d0)) / (x1 - x0);
    return { left, right, bottom, valueAt };
  });
}

/** The rooms of all elements of one class. */
export function boxesIn(drawing: Drawing, name: string): Box[] {
  return classed(drawing, name).map(({ attributes }) => {
    const spots = runsOf(attributes.d ?? "").flat();
    const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    return { left, right, top: Math.min(...ys), bottom: Math.max(...ys) };
  });
}
