/** The stop plan in sentences: what suits every hole, or what clashes. */

import type { StopSetting } from "../drilling/stops.js";
import type { Hole, Report } from "../report/report.js";
import { holeName } from "../text/plain-words.js";
import { figure, hasWindow, LIMITS, least, most, settingName } from "./words.js";

/** The sentences; none where there are no holes. */
export function planWords({ holes, stops: { common, settings } }: Report): string[] {
  if (holes.length === 0) return [];
  if (common) return [commonWords(common, holes), ...settings.map(settingWords)];
  const shallow = holes.reduce((a, b) => (b.window.max < a.window.max ? b : a));
  const deep = holes.reduce((a, b) => (b.window.min > a.window.min ? b : a));
  return [
    clashWords(shallow, deep),
    ...settings.map((setting, i) => rangeWords(setting, settingName(i, settings.length))),
    ...unservedWords(holes),
  ];
}

type Common = NonNullable<Report["stops"]["common"]>;

function commonWords(common: Common, holes: readonly Hole[]): string {
  const { min, max, maxBy, minHole, maxHole } = common;
  const name = (i: number) => (holes[i] ? holeName(holes[i]) : "");
  const range = `Depths from ${least(min)} to ${most(max)} suit every hole`;
  const both = `${name(minHole)} sets the least and the most`;
  const each = `${name(minHole)} sets the least, ${name(maxHole)} the most`;
  return `${range}: ${minHole === maxHole ? both : each} (${LIMITS[maxBy]}).`;
}

function settingWords({ depth }: StopSetting): string {
  return `The stop setting is ${figure(depth)}, at the bit's rim.`;
}

function clashWords(shallow: Hole, deep: Hole): string {
  const needs = `${holeName(deep)} needs at least ${least(deep.window.min)}`;
  const allows = `${holeName(shallow)} allows at most ${most(shallow.window.max)} (${LIMITS[shallow.window.maxBy]})`;
  return `No depth suits every hole: ${needs}, ${allows}.`;
}

function rangeWords({ min, max, depth, holes }: StopSetting, name: string): string {
  const count = holes.length === 1 ? "1 hole" : `${holes.length} holes`;
  const served = `${capital(name)} serves ${count} at ${figure(depth)}`;
  return `${served}; ${least(min)} to ${most(max)} would do.`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function unservedWords(holes: readonly Hole[]): string[] {
  const without = holes.filter((hole) => !hasWindow(hole)).length;
  return without === 0 ? [] : [`No depth suits ${without} of ${holes.length} holes.`];
}
