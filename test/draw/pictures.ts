/** Every picture of a report, and of sweeps; all invented. */
import { drawBoard, drawSection, drawSweep, drawWindows } from "../../src/draw/index.js";
import { type Report, sweep } from "../../src/index.js";
import { NECK } from "./gallery.js";

/** A picture, by name. */
export interface Picture {
  readonly name: string;
  readonly svg: string;
}

/** All pictures of a report; with `sections`, no more sections than that. */
export function picturesOf(name: string, report: Report, sections = Infinity): Picture[] {
  const indices = report.holes.map((_, i) => i).slice(0, sections);
  return [
    { name: `${name}: board`, svg: drawBoard(report) },
    { name: `${name}: windows`, svg: drawWindows(report) },
    ...indices.flatMap((i) => [
      { name: `${name}: section ${i}`, svg: drawSection(report, i) },
      { name: `${name}: section ${i}, true`, svg: drawSection(report, i, { exaggeration: 1 }) },
    ]),
  ];
}

function range(from: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + i * step);
}

const THIN = { ...NECK, name: "Thin (invented)", web: 0.6 };

/** Sweeps: of ordinary sizes, and such as strain a drawing. */
export const sweeps = (): Picture[] => {
  const thickness = range(2.6, 0.2, 8);
  const radii = [203, 150, 184, 241, 254, 305, Infinity];
  const three = sweep(THIN, {
    radius: radii,
    "board.thickness": thickness,
    "fill.keep": [0.4, 0.6],
  });
  const tight = sweep(THIN, { radius: [20, 150, 254] });
  const axes = { radius: range(20, 3, 100), "board.thickness": range(1.5, 0.03, 100) };
  const part = sweep(
    THIN,
    { "bit.point": [1, 2, 3], web: [0.5, 1, 1.523456789] },
    { from: 2, to: 7 },
  );
  const none = sweep({ ...NECK, markers: [] }, { "board.thickness": [4, 5], radius: [1e5, 2e5] });
  const long = { ...THIN, name: `<b onload="x()">\u0000 ]]> & ${"very long ".repeat(40)}` };
  return [
    ["the keep held", drawSweep(three, { held: { "fill.keep": 1 } })],
    ["other axes than the first two", drawSweep(three, { x: "fill.keep", y: "radius" })],
    ["one axis, some of it cannot be made", drawSweep(tight)],
    ["as many values as can be", drawSweep(sweep(THIN, axes))],
    ["a part of it", drawSweep(part)],
    ["no holes", drawSweep(none)],
    ["nothing of it", drawSweep(sweep(THIN, { radius: [254] }, { from: 1, to: 1 }))],
    ["long figures", drawSweep(sweep(THIN, { radius: range(100.123456, 1234.5678, 30) }))],
    ["a long name", drawSweep(sweep(long, { "bit.point": [1, 2], web: [1] }))],
  ].map(([name = "", svg = ""]) => ({ name: `sweep: ${name}`, svg }));
};
