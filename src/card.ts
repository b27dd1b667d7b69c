/** A report as a card to read at the drill press: plain text, at most 100 columns wide. */
import type { Edge } from "./edges.js";
import { INCHES, MILLIMETRES, type Unit } from "./length-text.js";
import type { Hole, Report } from "./report.js";
import { joined, sentenceOf } from "./sentences.js";
import type { StopSetting } from "./stops.js";

const COLUMNS = 100;

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
    assumedLines(report),
    cautionLines(report),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function unitOf(name: string): Unit {
  if (name === "mm") return MILLIMETRES;
  if (name === "in") return INCHES;
  throw new RangeError(`unit: expected "mm" or "in", received ${JSON.stringify(name)}`);
}

function heading({ name, ok }: Report, unit: Unit): string[] {
  const title = `DRILL CARD: ${name ?? "unnamed neck"}`.slice(0, COLUMNS);
  const verdict = ok
    ? "Nothing found that stops the work."
    : "DO NOT DRILL YET: see what is wrong.";
  return [title, "=".repeat(title.length), `${verdict} Lengths in ${unit.name}.`];
}

function stopLines({ stops, holes }: Report, unit: Unit): string[] {
  const { common, settings } = stops;
  if (holes.length === 0) return ["STOP", "  No holes."];
  const lines = settings.flatMap((setting, i) => {
    const name = settings.length > 1 ? `Setting ${letter(i)}: ` : "";
    return settingLines(name, setting, holes, unit);
  });
  if (common) {
    lines.push(`Least set by ${holeName(holes[common.minHole])}: ${MIN_RULE}.`);
    lines.push(`Most set by ${holeName(holes[common.maxHole])}: ${MAX_RULES[common.maxBy]}.`);
  }
  const unserved = holes.filter(({ window }) => !(window.min <= window.max)).length;
  if (unserved > 0) lines.push(`No setting serves ${unserved} of ${holes.length} holes.`);
  return ["STOP", ...lines.flatMap((line) => wrapped(line, "  "))];
}

const MIN_RULE = "the radius takes most there";

const MAX_RULES = {
  web: "the wood to be left under the bit",
  channel: "the wood to be left above the rod channel",
  flush: "the dot's top is to end flush",
} as const;

function settingLines(
  name: string,
  { depth, min, max, travels, holes: served }: StopSetting,
  holes: readonly Hole[],
  unit: Unit,
): string[] {
  const who = served.length === holes.length ? "every hole" : fretsOf(served, holes);
  const travel =
    travels.length === 1
      ? `${unit.full(travels[0]?.travel ?? depth)} of travel from the point's touch`
      : travels.map((t) => `${unit.full(t.travel)} for ${fretsOf(t.holes, holes)}`).join("; ");
  return [
    `${name}drill ${who} to a rim depth of ${unit.full(depth)}. Set the stop to ${travel}.`,
    `Any rim depth from ${unit.bare(min)} to ${unit.bare(max)} would do.`,
  ];
}

function problemLines({ findings }: Report, unit: Unit): string[] {
  if (findings.length === 0) return ["WRONG", "  Nothing."];
  const lines: string[] = [];
  for (const [i, finding] of findings.entries()) {
    const alike = findings.filter(({ code }) => code === finding.code);
    // edges go wrong in long rows: the worst one speaks for all
    if (finding.code === "thin-edge" && alike.length > 3) {
      const worst = alike.reduce((a, b) => (b.value < a.value ? b : a));
      if (finding !== alike[0]) continue;
      lines.push(`! ${sentenceOf(worst, unit)} (The worst of ${alike.length} places.)`);
    } else {
      lines.push(`${finding.severity === "error" ? "!" : "?"} ${sentenceOf(finding, unit)}`);
    }
    void i;
  }
  const legend = "WRONG   (! must be cured, ? wants care)";
  return [legend, ...lines.flatMap((line) => wrapped(line, "  ", "    "))];
}

function holeLines({ holes, stops }: Report, unit: Unit): string[] {
  if (holes.length === 0) return [];
  const several = stops.settings.length > 1;
  const planned = holes.some((hole) => hole.planned);
  const header = ["fret", "side", "from nut", "off centre", "dia.", "removed", "least", "most"];
  const rows = holes.map((hole, i) => [
    String(hole.fret),
    hole.side,
    unit.bare(hole.along),
    unit.bare(hole.offset),
    unit.bare(hole.diameter),
    unit.bare(hole.removal.outer),
    unit.bare(hole.window.min),
    unit.bare(hole.window.max),
    ...settingCells(i, hole, stops.settings, several, unit),
    ...(planned ? plannedCells(hole, unit) : []),
  ]);
  const travelHeader = several ? ["set", "travel"] : ["travel"];
  const plannedHeader = planned ? ["planned", "left", "web"] : [];
  return [
    "HOLES   (removed: by the radius, at the outer rim; least, most: depths of the bit's rim)",
    ...table([[...header, ...travelHeader, ...plannedHeader], ...rows]),
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
  const travel = unit.bare(setting.depth + lead);
  return several ? [letter(i), travel] : [travel];
}

function plannedCells({ planned }: Hole, unit: Unit): string[] {
  if (planned === undefined) return ["-", "-", "-"];
  return [unit.bare(planned.depth), unit.bare(planned.left), unit.bare(planned.web)];
}

function edgeLines({ edges }: Report, unit: Unit): string[] {
  const cells = edges.map((edge) => [
    edgeName(edge),
    unit.bare(edge.removal),
    unit.bare(edge.thickness),
  ]);
  const thinnest = edges.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const where = edgeName(thinnest);
  const rows = Math.ceil(cells.length / 3);
  const blank = ["", "", ""];
  const body = Array.from({ length: rows }, (_, r) =>
    [r, r + rows, r + 2 * rows].flatMap((i) => ["|", ...(cells[i] ?? blank)]).slice(1),
  );
  const head = [
    "at",
    "removed",
    "left",
    "|",
    "at",
    "removed",
    "left",
    "|",
    "at",
    "removed",
    "left",
  ];
  return [
    `EDGES   (thinnest: ${unit.full(thinnest.thickness)}, ${where === "nut" || where === "end" ? "at the" : "at"} ${where})`,
    ...table([head, ...body]),
  ];
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

function holeName(hole: Hole | undefined): string {
  if (hole === undefined) return "no hole";
  return hole.side === "centre" ? `fret ${hole.fret}` : `fret ${hole.fret}, ${hole.side}`;
}

function fretsOf(indices: readonly number[], holes: readonly Hole[]): string {
  const frets = [...new Set(indices.map((i) => holes[i]?.fret))].map(String);
  return `${frets.length === 1 ? "fret" : "frets"} ${joined(frets)}`;
}

function edgeName({ station }: Edge): string {
  return station.replace("fret", "fret ");
}

function letter(i: number): string {
  return i < 26 ? String.fromCharCode(65 + i) : String(i + 1);
}

/** Lines of cells, each column as wide as its widest cell; text to the left, numbers to the right. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0)));
  return rows.map((row) => {
    const cells = row.map((cell, c) => {
      const width = widths[c] ?? 0;
      return /^[-0-9]/.test(cell) || rows[1]?.[c]?.match(/^[-0-9]/)
        ? cell.padStart(width)
        : cell.padEnd(width);
    });
    return `  ${cells.join("  ")}`.trimEnd();
  });
}

/** A text cut into lines at its spaces. */
function wrapped(text: string, first: string, next = first): string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(" ")) {
    const start = lines.length === 0 ? first : next;
    if (line.length + word.length + 1 > COLUMNS && line.trim() !== "") {
      lines.push(line);
      line = next + word;
    } else {
      line = line === start && line.trim() === "" ? start + word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}
