/** Words that cards, drawings and the command share. */

/** “fret 12, bass”. */
export function holeName({ fret, side }: { readonly fret: number; readonly side: string }): string {
  return side === "centre" ? `fret ${fret}` : `fret ${fret}, ${side}`;
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
