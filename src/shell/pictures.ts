/** The pictures of a design, as SVG files. */
import { mkdir, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { drawBoard, drawSection, drawWindows } from "../draw/index.js";
import type { Hole, Report } from "../report/report.js";
import type { Outcome } from "./outcome.js";

/** Writes the pictures of one design. */
export type PictureWriter = (outcome: Outcome) => Promise<void>;

/** A writer into a folder, which it makes. */
export async function picturesIn(folder: string): Promise<PictureWriter> {
  await mkdir(folder, { recursive: true });
  const taken = new Set<string>();
  return async (outcome) => {
    if (outcome.report === undefined) return;
    const name = nameFor(outcome, taken);
    for (const [part, svg] of picturesOf(outcome.report)) {
      await writeFile(join(folder, `${name}-${part}.svg`), svg);
    }
  };
}

/** The pictures of a report, one after the other: a name for each, and the SVG text. */
function* picturesOf(report: Report): Generator<readonly [string, string], void, undefined> {
  yield ["board", drawBoard(report)];
  yield ["windows", drawWindows(report)];
  const places = report.holes.map(placeOf);
  for (const [i, place] of places.entries()) {
    const before = places.slice(0, i).filter((other) => other === place).length;
    yield [before === 0 ? place : `${place}-${before + 1}`, drawSection(report, i)];
  }
}

function placeOf({ fret, side }: Hole): string {
  return side === "centre" ? `fret${fret}` : `fret${fret}-${side}`;
}

/** A name of its own for each design; lines of standard input have one already, and are not kept. */
function nameFor({ file, line }: Outcome, taken: Set<string>): string {
  if (line !== undefined) return `line${line}`;
  const base = basename(file).replace(/\.json$/i, "");
  let name = base;
  for (let i = 2; taken.has(name.toLowerCase()) || /^line\d+$/i.test(name); i++) {
    name = `${base}-${i}`;
  }
  taken.add(name.toLowerCase());
  return name;
}
