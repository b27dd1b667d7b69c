/** The stop plan in sentences: what suits every hole, or what clashes. */
import type { Hole, Report } from "../report.js";
import { figure, hasWindow, holeName, LIMITS, least, most, settingLetter } from "./words.js";

/** The sentences; none where there are no holes. */
export function planWords(report: Report): string[] {
  if (report.holes.length === 0) return [];
  return [...commonWords(report), ...unservedWords(report)];
}

function commonWords({ holes, stops: { common, settings } }: Report): string[] {
  if (common) {
    const range = `Depths from ${least(common.min)} to ${most(common.max)} suit every hole`;
    const [first, last] = [holes[common.minHole], holes[common.maxHole]];
    if (first === undefined || last === undefined) return [`${range}.`];
    const why = LIMITS[last.window.maxBy];
    if (first === last)
      return [`${range}: ${holeName(first)} sets the least and the most (${why}).`];
    return [`${range}: ${holeName(first)} sets the least, ${holeName(last)} the most (${why}).`];
  }
  const shallow = holes.reduce((a, b) => (b.window.max < a.window.max ? b : a));
  const deep = holes.reduce((a, b) => (b.window.min > a.window.min ? b : a));
  return [clashWords(shallow, deep), ...settings.map((_, i) => rangeWords(settings, i))];
}

function clashWords(shallow: Hole, deep: Hole): string {
  const needs = `${holeName(deep)} needs at least ${least(deep.window.min)}`;
  const allows = `${holeName(shallow)} allows at most ${most(shallow.window.max)} (${LIMITS[shallow.window.maxBy]})`;
  return `No depth suits every hole: ${needs}, ${allows}.`;
}

function rangeWords(settings: Report["stops"]["settings"], i: number): string {
  const setting = settings[i];
  if (setting === undefined) return "";
  const name = settings.length > 1 ? `Setting ${settingLetter(i)}` : "The setting";
  const { min, max, depth, holes } = setting;
  const count = holes.length === 1 ? "1 hole" : `${holes.length} holes`;
  return `${name} serves ${count} at ${figure(depth)}; ${least(min)} to ${most(max)} would do.`;
}

function unservedWords({ holes }: Report): string[] {
  const without = holes.filter((hole) => !hasWindow(hole)).length;
  return without === 0 ? [] : [`No depth suits ${without} of ${holes.length} holes.`];
}
