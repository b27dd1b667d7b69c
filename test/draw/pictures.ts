/** Every picture of a report, and of sweeps; all invented. */
import {
  drawBoard,
  drawSanding,
  drawSection,
  drawSweep,
  drawWindows,
} from "../../src/draw/index.js";
import { type Report, sweep } from "../../src/index.js";
import type { SandingReading } from "../../src/measured/index.js";
import { NECK } from "./gallery.js";

/** A picture, by name. */
export interface Picture {
  readonly name: string;
  readonly svg: string;
}

/** All pictures of a report; with `sections`, no more sections than that. */
export function picturesOf(
  name: string,
  report: Report,
  sections = Infinity,
  unit: "mm" | "in" = "mm",
): Picture[] {
  const indices = report.holes.map((_, i) => i).slice(0, sections);
  return [
    { name: `${name}: board`, svg: drawBoard(report, { unit }) },
    { name: `${name}: windows`, svg: drawWindows(report, { unit }) },
    ...indices.flatMap((i) => [
      { name: `${name}: section ${i}`, svg: drawSection(report, i, { unit }) },
      {
        name: `${name}: section ${i}, true`,
        svg: drawSection(report, i, { exaggeration: 1, unit }),
      },
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
    ["in inches", drawSweep(three, { unit: "in" })],
    ["a long name", drawSweep(sweep(long, { "bit.point": [1, 2], web: [1] }))],
  ].map(([name = "", svg = ""]) => ({ name: `sweep: ${name}`, svg }));
};

/** An invented board that is 50 wide all along: half-way sanded, past the surface, and such as strain a drawing. */
export const SANDED = {
  ...NECK,
  name: "Sanded (invented)",
  board: { length: 482, width: 50, thickness: 6 },
  sanding: 0.2,
  depth: 2.2,
};
const HALF_WAY: readonly SandingReading[] = [
  { along: "end", centre: 5.9, bass: 5.2, treble: 5.1 },
  { along: 100, centre: 5.88 },
  { along: "fret12", centre: 5.9, treble: 5.3 },
];
const TOO_FAR: readonly SandingReading[] = [
  { along: "nut", centre: 5.8, bass: 4.4, treble: 4.57 },
  { along: "fret12", centre: 4.6, bass: 3.3, treble: 3.3 },
  { along: 400, centre: 3, bass: 2.4, treble: 1.4 },
];

/** The sanding of that board. */
export const sandings = (): Picture[] => {
  const many = range(0, 12, 40).map((along) => ({ along, centre: 5.9 - along / 1000 }));
  const unknown = { ...SANDED, depth: undefined, board: { ...SANDED.board, thickness: 2 } };
  return [
    ["half-way", drawSanding(SANDED, HALF_WAY)],
    ["too far, in inches", drawSanding(SANDED, TOO_FAR, { unit: "in" })],
    ["too far", drawSanding(SANDED, TOO_FAR)],
    ["thicker than stated, no depth", drawSanding(unknown, [{ along: 5, centre: 2.25 }])],
    ["many readings", drawSanding({ ...SANDED, name: "&" }, many)],
  ].map(([name = "", svg = ""]) => ({ name: `sanding: ${name}`, svg }));
};
