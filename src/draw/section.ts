/** The board cut across at a marker, as a picture. */

import { refused } from "../errors/errors.js";
import type { Report } from "../report/report.js";
import { holeName } from "../text/plain-words.js";
import {
  bitProfile,
  type Cut,
  type CutHole,
  cutAt,
  filling,
  finishedTop,
  markerLeft,
  type Place,
  underside,
  woodTop,
  woodUnder,
} from "./cut.js";
import { hatching } from "./hatch.js";
import { type Entry, farFrom, middled, withLegend } from "./legend.js";
import { line, type Mark, outline, type Spot } from "./marks.js";
import { svgOf } from "./page.js";
import { scaleWords } from "./scale.js";
import { sectionDimensions } from "./section-dimensions.js";
import { type Paper, paperFor } from "./section-paper.js";
import { windowBar } from "./window-bar.js";
import { amount, figure, hasWindow, markerWord, titled, windowWords } from "./words.js";

/** How a section is drawn. */
export interface SectionOptions {
  /** How many times larger heights are drawn than widths: 1 is true proportions; 4 where left out. */
  readonly exaggeration?: number;
}

/** Bounds of the exaggeration, and what it is where nothing is said. */
const EXAGGERATION = { least: 1, most: 100, usual: 4 } as const;

/**
 * A section: the board cut across at a marker, square to the centre line, as SVG text. It shows the flat blank and
 * what the radius removes, the hole with the bit's point, its filling, the rod channel, the hole's window and the
 * depth to drill: the planned one, else that of its stop setting. Heights are drawn larger than widths by a factor
 * that the picture states.
 *
 * The drawing is as designed, without tolerances; the window holds in the worst case. Line weights and
 * dimensions follow ISO 128 and ISO 129. Colours follow the page: dark on light, light on dark, black in print.
 *
 * @param report what `checkDesign` returned
 * @param holeIndex index into `report.holes`
 * @param options `exaggeration` from 1 (true proportions) to 100; 4 where left out
 * @returns an SVG document, its size in mm
 * @throws RangeError where there is no such hole, or the exaggeration is out of range
 * @example
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * drawSection(report, 0).includes("<title") // true
 * drawSection(report, 1, { exaggeration: 1 }).includes("True proportions.") // true
 */
export function drawSection(
  report: Report,
  holeIndex: number,
  options: SectionOptions = {},
): string {
  const cut = cutAt(report, holeIndex);
  if (cut === undefined) {
    throw refused(
      "holeIndex",
      holeIndex,
      `an index into the report's ${report.holes.length} holes`,
    );
  }
  const paper = paperFor(cut, exaggerationOf(options));
  const marks = [...boardMarks(cut, paper), ...sectionDimensions(report, cut, paper)];
  return svgOf({
    title: titled(`Section at ${holeName(cut.main.hole)}`, report),
    lines: [scaleLine(paper), placeLine(cut)],
    marks: withLegend(marks, legend(cut)),
    notes: notesOn(cut),
    description: descriptionOf(cut, paper),
  });
}

function exaggerationOf({ exaggeration = EXAGGERATION.usual }: SectionOptions): number {
  const { least: from, most: to } = EXAGGERATION;
  if (!(exaggeration >= from && exaggeration <= to)) {
    throw refused("exaggeration", exaggeration, `a number from ${from} to ${to}`);
  }
  return exaggeration;
}

/** The wood, what fills its holes, and the blank that it was. */
function boardMarks(cut: Cut, { spot }: Paper): Mark[] {
  const wood = [...woodTop(cut), ...underside(cut)].map(spot);
  return [
    ...hatching(wood, -1, WOOD, "wood"),
    ...cut.holes.flatMap((hole) => fillingMarks(cut, hole, spot)),
    outline("wide", wood, "board"),
    line("wide", finishedTop(cut).map(spot), "finished"),
    ...beforeMarks(cut, spot),
  ];
}

/** Between hatching lines; the filling's run the other way, and closer. */
const WOOD = 3;
const FILLING = 1.2;

function fillingMarks(cut: Cut, hole: CutHole, spot: Paper["spot"]): Mark[] {
  const area = filling(cut, hole)?.map(spot);
  if (area === undefined) return [];
  return [
    ...hatching(area, 1, FILLING, "filling"),
    outline("wide", area, hole.index === cut.main.index ? "marker" : "marker other"),
  ];
}

/** The blank's flat top and edges where the radius takes them, and the bits, which show where no wood is left. */
function beforeMarks(cut: Cut, spot: Paper["spot"]): Mark[] {
  const { half, surface } = cut;
  const blank: Place[] = [
    [-half, surface(half)],
    [-half, 0],
    [half, 0],
    [half, surface(half)],
  ];
  return [
    line("before", blank.map(spot)),
    ...cut.holes.map((hole) => line("before", bitProfile(hole).map(spot), "bit")),
  ];
}

function scaleLine({ across, upright, exaggeration }: Paper): string {
  return exaggeration === 1
    ? `True proportions. Scale ${scaleWords(across)}.`
    : `Heights are drawn ${Number(exaggeration.toFixed(2))} times too large. Scale ${scaleWords(across)} across, ${scaleWords(upright)} in height.`;
}

function placeLine({ along }: Cut): string {
  return `Cut square to the centre line, ${figure(along)} from the nut. Lengths in mm; depths from the flat top.`;
}

function legend({ main }: Cut): Entry[] {
  const open = hasWindow(main.hole);
  return [
    { words: "board", sample: (corner) => areaSample(corner, -1, WOOD) },
    {
      words: main.hole.fill.kind === "solid" ? `solid ${markerWord(main.hole)}` : "epoxy",
      sample: (corner) => areaSample(corner, 1, FILLING),
    },
    {
      words: "flat blank and bit, before the radius",
      sample: (corner) => [line("before", [corner, farFrom(corner)].map(middled))],
    },
    {
      words: open ? "window: the depths that suit" : "no window: the least lies beyond the most",
      sample: (corner) => windowBar(corner, farFrom(corner), open),
    },
  ];
}

function areaSample(corner: Spot, slope: 1 | -1, apart: number): Mark[] {
  const far = farFrom(corner);
  const corners: Spot[] = [corner, [far[0], corner[1]], far, [corner[0], far[1]]];
  return [outline("wide", corners), ...hatching(corners, slope, apart)];
}

function notesOn(cut: Cut): string[] {
  const { hole, why } = cut.main;
  const notes = [windowWords(hole)];
  if (hole.planned) {
    const { depth, left, web } = hole.planned;
    notes.push(
      `In the worst case the planned depth of ${figure(depth)} leaves ${amount(left)} of the marker and ${amount(web)} of wood under the bit.`,
    );
  }
  if (why === "least") notes.push("Drawn to the least depth, as no setting serves this hole.");
  return notes;
}

/** The picture in words. */
function descriptionOf(cut: Cut, paper: Paper): string {
  const { channel } = cut;
  return [
    placeLine(cut),
    scaleLine(paper),
    boardWords(cut),
    ...(channel ? [`The roof of the rod channel lies ${figure(channel.roof)} deep.`] : []),
    holeWords(cut),
    ...notesOn(cut),
  ].join(" ");
}

function boardWords({ half, blank, main, surface }: Cut): string {
  const { radius } = main.hole;
  const finish = radius === Infinity ? "flat" : `finished to a radius of ${figure(radius)}`;
  return `The board is ${figure(2 * half)} wide there, its blank ${figure(blank)} thick; it is ${finish}, which leaves ${figure(blank - surface(half))} at the edges.`;
}

function holeWords(cut: Cut): string {
  const { hole, depth, from, to } = cut.main;
  const aside = figure(Math.abs(hole.offset));
  const place = hole.offset === 0 ? "on the centre line" : `${aside} from the centre line`;
  const deep = `${figure(depth)} deep at the rim, ${figure(depth + hole.lead)} at the bit's lowest part`;
  const left = `${amount(markerLeft(cut))} of the marker and ${amount(woodUnder(cut))} of wood`;
  return `The hole lies ${place} and is ${figure(to - from)} wide. It is drawn ${deep}, which leaves ${left}.`;
}
