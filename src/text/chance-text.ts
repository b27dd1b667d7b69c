/** Chances as a person at the bench reads them: never better than they are. */
import { notBelow } from "./length-text.js";

/** Less than this is not told as a figure. */
export const RARE = 1e-6;

/** The chance that something fails, 0 to 1, rounded up: "0.42 %", or in words where it is rare. */
export function failsWords(fails: number): string {
  return fails < RARE ? "less than one in a million" : `${percent(fails)} %`;
}

/** The chance that all holds, from the chance that something fails: the rest of what `failsWords` tells. */
export function holdsWords(fails: number): string {
  if (fails < RARE) return "more than 99.9999 %";
  const told = percent(fails);
  const decimals = told.split(".")[1]?.length ?? 0;
  return `${(100 - Number(told)).toFixed(decimals)} %`;
}

/** Per cent to two digits that count, the next one up. */
function percent(chance: number): string {
  const share = Math.min(1, chance) * 100;
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(share)));
  return Math.min(100, notBelow(share, decimals)).toFixed(decimals);
}
