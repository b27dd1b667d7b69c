/**
 * A report as a card to read at the drill press: plain text, at most 100 columns wide.
 *
 * @module marker-depth/card
 */
import type { Edge } from "../drilling/edges.js";
import type { StopSetting } from "../drilling/stops.js";
import { elementAt } from "../geometry/element-at.js";
import type { Remedy } from "../report/remedies.js";
import type { Repair } from "../report/repair.js";
import type { Finding, Hole, Report } from "../report/report.js";
import { joined, remedyWords, sentenceOf } from "../report/sentences.js";
import { fixed, INCHES, MILLIMETRES, type Unit } from "../text/length-text.js";
import { holeName, settingLetter, stationName, visible } from "../text/plain-words.js";
import { COLUMNS, sideBySide, table, wrapped } from "../text/text-layout.js";

/**
 * The report as a card: the stop setting and who governs it, a row for every hole, what the edges come
 * to, what is wrong, what was assumed, and the cautions.
 *
 * @param report what `checkDesign` returned
 * @param options `unit` "mm" (two decimals) or "in" (nearest 1/64, the decimal beside it); "mm" where left out
 * @returns plain text, lines of at most 100 characters, ended by a newline
 * @throws RangeError for another unit
 * @example
 * const report = checkDesign({
 *   name: "Invented neck",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * });
 * drillCard(report).split("\n")[0] // "DRILL CARD: Invented neck"
 */
export function drillCard(report: Report, options: { readonly unit?: "mm" | "in" } = {}): string {
  const unit = unitOf(options.unit ?? "mm");
  const sections = [
    heading(report, unit),
    stopLines(report, unit),
    problemLines(report, unit),
    holeLines(report, unit),
    edgeLines(report, unit),
    slotLines(report, unit),
    pourLines(report),
    assumedLines(report),
    cautionLines(report),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

/**
 * A repair as a note to read at the bench: the bit to drill again with, its setting, and what ruled out the others.
 *
 * @param repair what `repairHole` returned
 * @param options `unit` as for `drillCard`
 * @returns plain text, lines of at most 100 characters, ended by a newline
 * @throws RangeError for another unit
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [5], diameter: 6 }],
 * };
 * const note = repairNote(repairHole(design, { fret: 5, error: 0.4 }, [6, 7, 8]));
 * note.split("\n")[0] // "REPAIR: the dot at fret 5"
 */
export function repairNote(repair: Repair, options: { readonly unit?: "mm" | "in" } = {}): string {
  const unit = unitOf(options.unit ?? "mm");
  const { least, diameter, report, ruledOut, hole } = repair;
  const dot = hole.side === "centre" ? "dot" : `${hole.side} dot`;
  const needed = `The next bit must be ${unit.least(least)} or more to swallow the old hole.`;
  const lines = [`REPAIR: the ${dot} at fret ${hole.fret}`, ...wrapped(needed, "  ")];
  const again = report?.holes[hole.index];
  if (diameter === null) lines.push("  No bit of the rack does.");
  else if (again?.planned === undefined) lines.push(`  Drill again with ${unit.full(diameter)}.`);
  else {
    const { depth } = again.planned;
    const travel = unit.full(depth + again.lead);
    const text = `Fill the hole, then drill again with ${unit.full(diameter)}, to a rim depth of ${unit.full(depth)} (travel ${travel}).`;
    lines.push(...wrapped(text, "  "));
  }
  for (const { diameter: bit, why } of ruledOut.filter(({ findings }) => findings.length > 0)) {
    lines.push(...wrapped(`Not ${unit.bare(bit)}: ${why.join(" ")}`, "  ", "    "));
  }
  return `${lines.join("\n")}\n`;
}

function unitOf(name: string): Unit {
  if (name === "mm") return MILLIMETRES;
  if (name === "in") return INCHES;
  throw new RangeError(`unit: expected "mm" or "in", received ${JSON.stringify(name)}`);
}

function heading({ name, ok }: Report, unit: Unit): string[] {
  const words = `DRILL CARD: ${name ?? "unnamed neck"}`.replace(/\s+/g, " ");
  const title = visible(words).slice(0, COLUMNS);
  const verdict = ok
    ? "Nothing found that stops the work."
    : "DO NOT DRILL YET: see what is wrong.";
  return [title, "=".repeat(title.length), verdict, `Lengths in ${unit.name}.`];
}

function stopLines(report: Report, unit: Unit): string[] {
  const { stops, holes } = report;
  if (holes.length === 0) return ["STOP", "  No holes."];
  const several = stops.settings.length > 1;
  const lines = stops.settings.flatMap((setting, i) =>
    settingLines(several ? `Setting ${settingLetter(i)}` : "Stop setting", setting, holes, unit),
  );
  const unserved = holes.filter(({ window }) => !(window.min <= window.max)).length;
  if (unserved > 0) lines.push(`No setting serves ${unserved} of ${holes.length} holes.`);
  lines.push(...plannedLines(report, unit));
  return ["STOP", ...lines.flatMap((line) => wrapped(line, "  "))];
}

function settingLines(
  name: string,
  setting: StopSetting,
  holes: readonly Hole[],
  unit: Unit,
): string[] {
  const { depth, min, max, travels, holes: served } = setting;
  const least = elementAt(holes, setting.minHole);
  const most = elementAt(holes, setting.maxHole);
  const who = served.length === holes.length ? "every hole" : fretsOf(served, holes);
  const text = (length: number, lead: number) =>
    `${unit.between(length, min + lead, max + lead)} ${unit.short}`;
  const travelText = (t: StopSetting["travels"][number]) => text(t.travel, t.lead);
  const travel =
    travels.length === 1
      ? `${travelText(elementAt(travels, 0))} of travel from the point's touch`
      : travels.map((t) => `${travelText(t)} for ${fretsOf(t.holes, holes)}`).join("; ");
  return [
    `${name}, for ${who}: ${travel}. Rim depth ${text(depth, 0)}.`,
    `Rim depths from ${unit.least(min)} to ${unit.most(max)} would do: ${holeName(least)} sets the least (the radius takes most there), ${holeName(most)} the most (${MAX_RULES[most.window.maxBy]}).`,
  ];
}

const MAX_RULES = {
  web: "the web under the bit",
  channel: "the web above the rod channel",
  flush: "its dot must end flush",
} as const;

/** Whether the planned depths hold, each with its travel. */
function plannedLines({ holes }: Report, unit: Unit): string[] {
  const depths = new Map<string, { depth: number; travel: number; fails: number }>();
  for (const { planned, lead, window } of holes) {
    if (planned === undefined) continue;
    const { depth } = planned;
    const key = `${depth} ${lead}`;
    const plan = depths.get(key) ?? { depth, travel: depth + lead, fails: 0 };
    const fails = !(depth >= window.min && depth <= window.max);
    depths.set(key, { ...plan, fails: plan.fails + Number(fails) });
  }
  return [...depths.values()].map(({ depth, travel, fails }) => {
    const verdict = fails === 0 ? "suits its holes" : `fails at ${fails} of its holes`;
    return `Planned rim depth ${unit.full(depth)} (travel ${unit.full(travel)}) ${verdict}.`;
  });
}

function problemLines({ findings, holes }: Report, unit: Unit): string[] {
  if (findings.length === 0) return ["WRONG", "  Nothing."];
  const codes = [...new Set(findings.map(({ code }) => code))];
  const lines = codes.flatMap((code) =>
    alikeLines(
      findings.filter((finding) => finding.code === code),
      holes.length,
      unit,
    ),
  );
  return ["WRONG   (! must be cured, ? wants care; each cure by itself is enough)", ...lines];
}

/** Findings of one code times holes: to seek what cures more than so many takes seconds. */
const MOST_SOUGHT = 3000;

/** Findings of one code as one entry: the worst one speaks, the other places follow, then what cures them all. */
function alikeLines(alike: readonly Finding[], holeCount: number, unit: Unit): string[] {
  const worst = alike.reduce((a, b) => (missBy(b) > missBy(a) ? b : a));
  const mark = worst.severity === "error" ? "!" : "?";
  const places = alike.map(placeWords).filter((place, i, all) => all.indexOf(place) === i);
  const others = alike.length > 1 ? ` (The worst of ${alike.length}: ${joined(places)}.)` : "";
  const lines = wrapped(`${mark} ${sentenceOf(worst, unit)}${others}`, "  ", "    ");
  if (alike.length * holeCount > MOST_SOUGHT) {
    return [...lines, "    cures: not sought, since there are so many; cure some and look again."];
  }
  const cures = curesOfAll(alike).map((remedy) => remedyWords(remedy, unit));
  return cures.length === 0
    ? lines
    : [...lines, ...wrapped(`cures: ${cures.join("; ")}.`, "    ", "      ")];
}

function missBy({ value, limit }: Finding): number {
  return Math.abs(value - limit);
}

function placeWords({ fret, side, station }: Finding): string {
  if (fret === undefined) return `the ${station}`;
  return side === undefined || side === "centre" ? `fret ${fret}` : `fret ${fret} ${side}`;
}

/** The changes that cure every one of these findings, each at the threshold that goes farthest. */
function curesOfAll(alike: readonly Finding[]): Remedy[] {
  const lists = alike.map(({ remedies }) => remedies ?? []);
  return elementAt(lists, 0).flatMap((remedy) => {
    const same = lists.flatMap(
      (remedies) => remedies.find(({ change }) => change === remedy.change) ?? [],
    );
    if (same.length < lists.length) return [];
    const thresholds = same.map((other) => other.to);
    const to = remedy.to > remedy.from ? Math.max(...thresholds) : Math.min(...thresholds);
    return [{ ...remedy, to }];
  });
}

function holeLines({ holes, stops }: Report, unit: Unit): string[] {
  if (holes.length === 0) return [];
  const several = stops.settings.length > 1;
  const planned = holes.some((hole) => hole.planned);
  const header = ["fret", "side", "from nut", "off centre", "size", "removed", "least", "most"];
  const rows = holes.map((hole, i) => [
    String(hole.fret),
    hole.side,
    unit.bare(hole.along),
    unit.bare(hole.offset),
    unit.bare(hole.diameter),
    unit.bare(hole.removal.outer),
    unit.least(hole.window.min),
    unit.most(hole.window.max),
    ...settingCells(i, hole, stops.settings, several, unit),
    ...(planned ? plannedCells(hole, unit) : []),
  ]);
  const travelHeader = several ? ["set", "travel"] : ["travel"];
  const plannedHeader = planned ? ["planned", "left", "web"] : [];
  return [
    "HOLES   (size: diameter, or a pocket's width; removed: at the outer rim; least, most: rim depth)",
    ...table([[...header, ...travelHeader, ...plannedHeader], ...rows], 2),
  ];
}

function settingCells(
  hole: number,
  { lead }: Hole,
  settings: readonly StopSetting[],
  several: boolean,
  unit: Unit,
): string[] {
  const i = settings.findIndex(({ holes }) => holes.includes(hole));
  const setting = settings[i];
  if (setting === undefined) return several ? ["-", "-"] : ["-"];
  const { depth, min, max } = setting;
  const travel = unit.between(depth + lead, min + lead, max + lead);
  return several ? [settingLetter(i), travel] : [travel];
}

function plannedCells({ planned }: Hole, unit: Unit): string[] {
  if (planned === undefined) return ["-", "-", "-"];
  return [unit.bare(planned.depth), unit.bare(planned.left), unit.bare(planned.web)];
}

function edgeLines({ edges }: Report, unit: Unit): string[] {
  const lines = edges.some(({ sideDotLine }) => sideDotLine !== undefined);
  const head = ["at", "removed", "left", ...(lines ? ["line"] : [])];
  const cells = edges.map((edge) => [
    edgeName(edge),
    unit.bare(edge.removal),
    unit.bare(edge.thickness),
    ...(edge.sideDotLine === undefined ? [] : [unit.bare(edge.sideDotLine)]),
  ]);
  const thinnest = edges.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const where = `${thinnest.station.startsWith("fret") ? "at" : "at the"} ${edgeName(thinnest)}`;
  const note = lines ? "; line: height of the side dots' line above the underside" : "";
  const title = `EDGES   (thinnest: ${unit.full(thinnest.thickness)}, ${where}${note})`;
  return [...wrapped(title, "", "        "), ...sideBySide(head, cells)];
}

function slotLines({ slots }: Report, unit: Unit): string[] {
  if (slots === undefined) return [];
  const { least, most, leastAt, mostAt } = slots;
  const range = `Saw from ${unit.least(least)} (fret ${leastAt} sets it) to ${unit.most(most)} (fret ${mostAt}) deep, measured from the flat.`;
  const clash = `No saw depth suits all: fret ${leastAt} needs ${unit.least(least)}, fret ${mostAt} allows ${unit.most(most)}.`;
  return ["SLOTS", ...wrapped(least <= most ? range : clash, "  ")];
}

function pourLines({ pour }: Report): string[] {
  if (pour === undefined) return [];
  const ml = (volume: number) => `${fixed(volume, 2)} ml`;
  const text = `Mix at least ${ml(pour.volume)}: ${ml(pour.resin)} of resin and ${ml(pour.hardener)} of hardener, waste included, for holes drilled to the stop setting.`;
  return ["EPOXY", ...wrapped(text, "  ")];
}

function assumedLines({ assumed }: Report): string[] {
  const words = Object.entries(assumed).map(([path, value]) => `${path} ${value}`);
  if (words.length === 0) return [];
  return [
    "ASSUMED   (the design does not say; mm, degrees or fractions)",
    ...wrapped(words.join(", "), "  "),
  ];
}

function cautionLines({ cautions }: Report): string[] {
  return ["CAUTIONS", ...cautions.flatMap((caution) => wrapped(`- ${caution}`, "  ", "    "))];
}

function fretsOf(indices: readonly number[], holes: readonly Hole[]): string {
  const frets = [...new Set(indices.map((i) => elementAt(holes, i).fret))].map(String);
  return `${frets.length === 1 ? "fret" : "frets"} ${joined(frets)}`;
}

function edgeName({ station, side }: Edge): string {
  const name = stationName(station);
  return side === undefined ? name : `${name} ${side}`;
}
