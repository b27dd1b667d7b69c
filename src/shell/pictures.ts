/** The pictures of a design, as SVG files. */
import { writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { drawBoard, drawSection, drawTemplate, drawWindows } from "../draw/index.js";
import type { Hole, Report } from "../report/report.js";
import { errorWords } from "./error-words.js";
import type { Options } from "./options.js";
import type { Outcome } from "./outcome.js";
import type { Source } from "./sources.js";

/** What is to be drawn, and where to. */
type Drawing = Pick<Options, "svg" | "template" | "paper" | "unit">;

/**
 * Writes the pictures that are asked for, their names begun with this one. The outcome as it was; a board that the paper
 * of its template is too narrow for is told in its place.
 */
export async function drawn(outcome: Outcome, name: string, drawing: Drawing): Promise<Outcome> {
  const { file, line, report } = outcome;
  if (report === undefined) return outcome;
  const { svg, template, unit } = drawing;
  if (svg !== undefined) await writeAll(svg, name, drawPictures(report, unit));
  if (template === undefined) return outcome;
  const pages = drawPages(report, drawing);
  if (Array.isArray(pages)) {
    await writeAll(
      template,
      name,
      pages.map((page, i) => [`template-${i + 1}`, page] as const),
    );
    return outcome;
  }
  const issues = [{ path: "", message: `no template: ${pages}` }];
  return line === undefined ? { file, issues } : { file, line, issues };
}

/** The template's pages, or why there are none. */
function drawPages(report: Report, { paper }: Drawing): string[] | string {
  try {
    return drawTemplate(report, { paper });
  } catch (error) {
    return errorWords(error);
  }
}

type Picture = readonly [part: string, svg: string];

async function writeAll(folder: string, name: string, pictures: Iterable<Picture>): Promise<void> {
  for (const [part, svg] of pictures) await writeFile(join(folder, `${name}-${part}.svg`), svg);
}

/** Gives each design a name of its own; lines of standard input have one already, and are not kept. */
export function newNames(): (source: Source) => string {
  const taken = new Set<string>();
  return ({ file, line }) => {
    if (line !== undefined) return `line${line}`;
    const base = basename(file).replace(/\.json$/i, "");
    let name = base;
    for (let i = 2; taken.has(name.toLowerCase()) || /^line\d+$/i.test(name); i++) {
      name = `${base}-${i}`;
    }
    taken.add(name.toLowerCase());
    return name;
  };
}

/** The pictures of a report, one after the other: a name for each, and the SVG text. */
function* drawPictures(report: Report, unit: "mm" | "in"): Generator<Picture, void, undefined> {
  yield ["board", drawBoard(report, { unit })];
  yield ["windows", drawWindows(report, { unit })];
  const places = report.holes.map(namePlace);
  for (const [i, place] of places.entries()) {
    const before = places.slice(0, i).filter((other) => other === place).length;
    const section = drawSection(report, i, { unit });
    yield [before === 0 ? place : `${place}-${before + 1}`, section];
  }
}

function namePlace({ fret, side }: Hole): string {
  return side === "centre" ? `fret${fret}` : `fret${fret}-${side}`;
}
