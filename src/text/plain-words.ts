/** Words that cards, drawings and the command share. */

/** A hole, as far as its name goes. */
export interface NamedHole {
  readonly fret: number;
  readonly side: string;
  /** As in a report. */
  readonly path?: string;
}

/** “fret 12, bass”; of two lengthwise “fret 12, nut side” and “fret 12, body side”. */
export function holeName({ fret, side, path = "" }: NamedHole): string {
  const [, end] = /\.(nut|end)$/.exec(path) ?? [];
  if (end !== undefined) return `fret ${fret}, ${end === "nut" ? "nut" : "body"} side`;
  return side === "centre" ? `fret ${fret}` : `fret ${fret}, ${side}`;
}

/** Each hole's name; holes that would be called alike bear their number in the report too, counted from 1. */
export function holeNames(holes: readonly NamedHole[]): string[] {
  const names = holes.map(holeName);
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return names.map((name, i) => (counts.get(name) === 1 ? name : `${name} (hole ${i + 1})`));
}

/** Names of holes or places in a row: “frets 3, 5 and 12 bass”. */
export function listNames(names: readonly string[]): string {
  const isAllFrets = names.every((name) => name.startsWith("fret "));
  const words = names.map((name) => (isAllFrets ? name.slice(5) : name).replace(", ", " "));
  return isAllFrets ? `${words.length === 1 ? "fret" : "frets"} ${joined(words)}` : joined(words);
}

/** “a, b and c”. */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return String(words);
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** “fret 12” of a station; the nut and the end are called so already. */
export function stationName(station: string): string {
  return station.replace("fret", "fret ");
}

/** The text with control characters made visible, so that a design's name cannot steer a terminal. */
export function visible(text: string): string {
  return text.replace(/[^\P{Cc}\n]/gu, "\uFFFD");
}

/** A stop setting's letter among several: A, B, …, Z, 27, 28, … */
export function settingLetter(i: number): string {
  return i < 26 ? String.fromCharCode(65 + i) : String(i + 1);
}
