/** The second sheet: what the edges come to, and how deep to saw. Lengths in mm. */
import type { Edge } from "../drilling/edges.js";
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import { stationName } from "../text/plain-words.js";
import { sideBySide, wrapped } from "../text/text-layout.js";
import type { Table } from "./holes.js";

/** The sections of the second sheet. */
export function secondSheet(report: Report, unit: Unit): string[][] {
  return [edgeLines(report, unit), slotLines(report, unit)];
}

function edgeLines(report: Report, unit: Unit): string[] {
  const { key, head, rows } = tabulateEdges(report, unit);
  return [...wrapped(`EDGES   (${key})`, "", "        "), ...sideBySide(head, rows)];
}

/** A row for every place along the edges. */
export function tabulateEdges({ edges }: Report, unit: Unit): Table {
  const hasLine = edges.some(({ sideDotLine }) => sideDotLine !== undefined);
  const head = ["at", "removed", "left", ...(hasLine ? ["line"] : [])];
  const rows = edges.map((edge) => [
    edgeName(edge),
    unit.bare(edge.removal),
    unit.bare(edge.thickness),
    ...(edge.sideDotLine === undefined ? [] : [unit.bare(edge.sideDotLine)]),
  ]);
  const thinnest = edges.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const where = `${thinnest.station.startsWith("fret") ? "at" : "at the"} ${edgeName(thinnest)}`;
  const line = hasLine
    ? "; line: height above the board's underside at which to scribe the side dots' line, after the radius"
    : "";
  const key = `removed, left: of the board's thickness at the very edge, nominal; thinnest ${unit.full(thinnest.thickness)}, ${where}${line}`;
  return { key, head, rows };
}

function slotLines(report: Report, unit: Unit): string[] {
  const text = tellSlots(report, unit);
  return text === undefined ? [] : ["SLOTS", ...wrapped(text, "  ")];
}

/** How deep to saw the slots; nothing where they are not asked for. */
export function tellSlots({ slots }: Report, unit: Unit): string | undefined {
  if (slots === undefined) return undefined;
  const { min, max, minAt, maxAt } = slots;
  const [least, most] = unit.range(min, max);
  return min <= max
    ? `Saw the fret slots from ${least} (fret ${minAt} sets it) to ${most} ${unit.short} (fret ${maxAt}) deep, from the crest of the top before the radius, in the worst case.`
    : `No saw depth suits all slots: fret ${minAt} needs ${least}, fret ${maxAt} allows ${most} ${unit.short}. Saw what all allow, and deepen the slots that need it after the radius.`;
}

/** “fret 12, bass”. */
export function edgeName({ station, side }: Edge): string {
  const name = stationName(station);
  return side === undefined ? name : `${name}, ${side}`;
}
