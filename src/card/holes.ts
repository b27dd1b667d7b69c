/** The table of the holes. Lengths in mm. */
import type { Hole, Outcome, Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { holeName, listNames } from "../text/plain-words.js";
import { table, wrapped } from "../text/text-layout.js";
import { findOutcome, type WrittenSetting } from "./settings.js";

const KEY =
  "size: diameter, or a pocket's width; taken: by the radius at the outer rim, nominal; least, most: depths of the floor that suit; left: of the marker after the radius, wood: under the bit, both in the worst case";
const KEY_PLANNED = "; planned: what you plan, or what is drilled already";

/** A table: what its columns mean, their heads, and its rows. */
export interface Table {
  readonly key: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A row for every hole, as lines. */
export function holeLines(
  report: Report,
  settings: readonly WrittenSetting[],
  unit: Unit,
): string[] {
  const { key, head, rows } = tabulateHoles(report, settings, unit);
  if (rows.length === 0) return [];
  return [...wrapped(`HOLES   (${key})`, "", "        "), ...table([head, ...rows], 2)];
}

/** A row for every hole, numbered as in the report. */
export function tabulateHoles(
  { holes }: Report,
  settings: readonly WrittenSetting[],
  unit: Unit,
): Table {
  const isPlanned = holes.some(({ planned }) => planned);
  const head = ["hole", "fret", "from nut", "off centre", "size", "taken", "least", "most"];
  const outcomes = ["travel", "depth", "left", "wood"];
  const planned = isPlanned ? outcomes.map((word) => `planned ${word}`) : [];
  const rows = holes.map((hole, i) => [
    ...placeCells(hole, i, findOutcome(hole, settings), unit),
    ...(settings.length > 1 ? [settings[hole.recommended?.setting ?? -1]?.letter ?? NOTHING] : []),
    ...outcomeCells(findOutcome(hole, settings), unit),
    ...(isPlanned ? outcomeCells(hole.planned, unit) : []),
  ]);
  const setHead = settings.length > 1 ? ["set"] : [];
  const key = `${KEY}${isPlanned ? KEY_PLANNED : ""}`;
  return { key, head: [...head, ...setHead, ...outcomes, ...planned], rows };
}

/** In a cell that has nothing to say. */
export const NOTHING = "-";

function placeCells(hole: Hole, i: number, outcome: Outcome | undefined, unit: Unit): string[] {
  const { along, offset, width, removal, window } = hole;
  const depths = [outcome, hole.planned].flatMap((each) => each?.depth ?? []);
  return [
    String(i + 1),
    listNames([holeName(hole)]).replace(/^frets? /, ""),
    unit.bare(along),
    unit.bare(offset),
    unit.bare(width),
    unit.bare(removal.outer),
    ...unit.range(window.min, window.max, ...depths),
  ];
}

function outcomeCells(outcome: Outcome | undefined, unit: Unit): string[] {
  if (outcome === undefined) return [NOTHING, NOTHING, NOTHING, NOTHING];
  const { travel, depth, markerLeft, woodLeft } = outcome;
  return [
    travel === undefined ? NOTHING : unit.bare(travel),
    unit.bare(depth),
    unit.most(markerLeft),
    unit.most(woodLeft),
  ];
}
