/** Words and figures that the drawings share. */

import type { StopSetting } from "../drilling/stops.js";
import type { Hole, Report } from "../report/report.js";
import { fixed, MILLIMETRES } from "../text/length-text.js";
import { settingLetter } from "../text/plain-words.js";
import { oneLine } from "./lettering.js";

/** A length, mm, two decimals unless others are asked for. */
export function figure(mm: number, decimals = 2): string {
  return fixed(mm, decimals).replace("-", "−");
}

/** A least length: never read too small. */
export function least(mm: number): string {
  return MILLIMETRES.least(mm).replace("-", "−");
}

/** A greatest length: never read too great. */
export function most(mm: number): string {
  return MILLIMETRES.most(mm).replace("-", "−");
}

/** What is left of something: a length, or none and by how much. */
export function amount(mm: number): string {
  return mm > 0 ? figure(mm) : `none (${figure(-mm)} too little)`;
}

/** A title with the neck's name. */
export function titled(words: string, { name }: { readonly name?: string }): string {
  const known = name === undefined ? "" : oneLine(name);
  return known === "" ? words : `${words}: ${known}`;
}

/** What sets a window's greatest depth. */
export const LIMITS = {
  web: "web under the bit",
  channel: "web above the channel",
  flush: "must end flush",
} as const;

/** Some depth suits the hole. */
export function hasWindow({ window }: Hole): boolean {
  return window.min <= window.max;
}

/** A setting's name: “setting A” where there are several. */
export function settingName(i: number, count: number): string {
  if (count === 1) return "stop setting";
  return `setting ${settingLetter(i)}`;
}

/** The setting that serves a hole. */
export function settingOf(
  { stops }: Report,
  hole: number,
): { readonly setting: StopSetting; readonly name: string; readonly index: number } | undefined {
  const index = stops.settings.findIndex(({ holes }) => holes.includes(hole));
  const setting = stops.settings[index];
  return setting && { setting, index, name: settingName(index, stops.settings.length) };
}

/** What a window says in a sentence. */
export function windowWords({ window }: Hole): string {
  const { min, max, maxBy } = window;
  return min <= max
    ? `Depths from ${least(min)} to ${most(max)} suit this hole.`
    : `No depth suits this hole: it needs at least ${least(min)}, and at most ${most(max)} (${LIMITS[maxBy]}).`;
}

/** “inlay” for a pocket, “dot” for a round hole. */
export function markerWord({ outline }: Hole): string {
  return outline ? "inlay" : "dot";
}

/** A setting that a hole governs, and which ends of its range the hole sets. */
export interface Governs {
  readonly ends: readonly ("min" | "max")[];
  /** “sets the least of A”. */
  readonly words: string;
}

/** The settings that a hole governs. */
export function governed({ stops: { settings } }: Report, hole: number): Governs[] {
  return settings.flatMap(({ minHole, maxHole }, i): Governs[] => {
    const of = settings.length > 1 ? ` of ${settingLetter(i)}` : "";
    const [min, max] = [minHole === hole, maxHole === hole];
    if (min && max) return [{ ends: ["min", "max"], words: `sets least and most${of}` }];
    if (min) return [{ ends: ["min"], words: `sets the least${of}` }];
    return max ? [{ ends: ["max"], words: `sets the most${of}` }] : [];
  });
}
