/** Sweeps to draw, all invented: of ordinary sizes, and such as strain a drawing. Lengths in mm. */
import { readFileSync } from "node:fs";
import { drawSweep, type SweepPictureOptions } from "../../src/draw/index.js";
import { type Design, type Sweep, sweep } from "../../src/index.js";
import type { Picture } from "./pictures.js";

function example(name: string): Design {
  return JSON.parse(
    readFileSync(new URL(`../../docs/examples/${name}.json`, import.meta.url), "utf8"),
  );
}

function range(from: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + i * step);
}

const WREN = example("wren-tenor");
const LARCH = example("larch-22");

/** A sweep with the picture asked of it. */
export interface DrawnSweep {
  readonly name: string;
  readonly sweep: Sweep;
  readonly options?: SweepPictureOptions;
}

/** Every sweep to draw. */
export const sweeps: readonly DrawnSweep[] = [
  {
    name: "sweep: radius and thickness, the keep held",
    sweep: sweep(WREN, {
      radius: [203, 150, 184, 241, 254, 305, Infinity],
      "board.thickness.end": range(2.6, 0.1, 8),
      "fill.keep": [0.4, 0.6],
    }),
    options: { held: { "fill.keep": 1 } },
  },
  {
    name: "sweep: other axes than the first two",
    sweep: sweep(LARCH, {
      "markers.0.diameter": [5, 6.35],
      "board.thickness": [3, 3.5, 4, 5, 6],
      "markers.1.spread": [20, 26, 32, 80],
      radius: [20, 100, 184, 254],
    }),
    options: { x: "radius", y: "board.thickness", held: { "markers.1.spread": 2 } },
  },
  {
    name: "sweep: as many values as can be",
    sweep: sweep(WREN, { radius: range(20, 3, 100), "board.thickness.end": range(1.5, 0.03, 100) }),
  },
  {
    name: "sweep: long figures",
    sweep: sweep(LARCH, {
      radius: range(100.123456, 1234.5678, 30),
      "tolerance.radius": [0, 0.000123, 0.02],
    }),
  },
  { name: "sweep: one axis", sweep: sweep(LARCH, { radius: [20, 150, 254] }) },
  {
    name: "sweep: one combination",
    sweep: sweep(LARCH, { radius: [254], "board.thickness": [6] }),
  },
  {
    name: "sweep: a range",
    sweep: sweep(
      example("heron-bass"),
      { "bit.angle": [90, 118, 135], "board.channel.depth": [1, 1.5, 2.123456789, 3, 4] },
      { from: 4, to: 12 },
    ),
  },
  { name: "sweep: nothing of it", sweep: sweep(LARCH, { radius: [254] }, { from: 1, to: 1 }) },
  {
    name: "sweep: no holes",
    sweep: sweep({ ...LARCH, markers: [] }, { "board.thickness": [4, 5], radius: [1e5, 2e5] }),
  },
  {
    name: "sweep: a long name with markup",
    sweep: sweep(
      { ...LARCH, name: `<b onload="x()">\u0000 ]]> & ${"very long ".repeat(40)}` },
      { "bit.point": [0.5, 1, 2, 3], "board.thickness": [3, 4, 5] },
    ),
  },
];

/** A sweep's picture. */
export function sweepPicture({ name, sweep: rows, options }: DrawnSweep): Picture {
  return { name, svg: drawSweep(rows, options) };
}
