/** The stop plan of a neck: the settings for each of its stops, as travels in mm. */
import type { Board } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import type { Profile } from "../design/design.js";
import type { BitSpec, GroupSpec, StopSpec } from "../design/spec.js";
import type { CheckedHole } from "./holes.js";
import { type Common, planStop, type Setting, type TravelWindow } from "./stops.js";
import { placeZero } from "./touches.js";

/** The stop of a setting, with nothing left open. */
export interface SetStop {
  /** What the travel counts from. */
  readonly from: "wood" | "table";
  /** Width of what bears on the top at the touch, mm; from the wood alone. */
  readonly foot?: number;
  /** Where the tip touches the centre line, mm from the nut; from the table alone. */
  readonly zero?: number;
  /** Height of the crest above the table, mm, where one is stated. */
  readonly height?: Profile;
  /** How much farther the tip goes than set, mm. */
  readonly correction: number;
}

/** A setting of one stop; with its bit where it is for one tool. */
export interface StopSetting extends Setting {
  /** The stop that is set. */
  readonly stop: SetStop;
  /** The bit, where the setting is for one tool. */
  readonly bit?: BitSpec;
  /** The bit's diameter, mm; a pocket's mill has none here. */
  readonly diameter?: number;
}

/** The settings for all holes, and the travels that suit every one where they have one stop. */
export interface NeckPlan {
  readonly common: Common | null;
  readonly settings: readonly StopSetting[];
  /** How many stops the holes have, and for each setting which one it is of. */
  readonly stops: number;
}

/** Plans the stops of holes; those that are drilled already take none. */
export function planNeck(holes: readonly CheckedHole[], board: Pick<Board, "alongs">): NeckPlan {
  const keys = makeKeys(holes.map(({ marker }) => marker));
  const windows = holes.map((hole, i) => shiftWindow(hole, keys.tools[i] as string));
  const settings: StopSetting[] = [];
  let common: Common | null = null;
  for (const served of servedByStop(keys)) {
    const { step } = (holes[served[0] as number] as CheckedHole).marker.group.stop;
    const plan = planStop(windows, served, step);
    common = keys.count === 1 ? plan.common : null;
    for (const setting of plan.settings) {
      settings.push(withTool(setting, holes, keys.tools, placeZero(board)));
    }
  }
  return { common, settings, stops: keys.count };
}

/** The holes of each stop, the stops in the order of their first holes. */
function servedByStop({ stops }: PlanKeys): Iterable<readonly number[]> {
  const served = new Map<string, number[]>();
  stops.forEach((stop, i) => {
    if (stop === undefined) return;
    const own = served.get(stop);
    if (own === undefined) served.set(stop, [i]);
    else own.push(i);
  });
  return served.values();
}

/** How far apart the travels are that one setting of each stop is to serve; 0 where one serves all. */
export function missPlan(holes: readonly CheckedHole[]): number {
  const { stops } = makeKeys(holes.map(({ marker }) => marker));
  const shared = new Map<string, { min: number; max: number }>();
  holes.forEach((hole, i) => {
    const stop = stops[i];
    const { min, max } = shiftWindow(hole, "");
    if (stop === undefined || !(min <= max)) return;
    const held = shared.get(stop) ?? { min, max };
    shared.set(stop, { min: Math.max(held.min, min), max: Math.min(held.max, max) });
  });
  return [...shared.values()].reduce((sum, { min, max }) => sum + Math.max(0, min - max), 0);
}

/** The travels that suit a hole: its window, as the tip goes. */
function shiftWindow({ window, toTravel }: CheckedHole, tool: string): TravelWindow {
  return { min: window.min + toTravel, max: window.max + toTravel, tool };
}

/** What tells stops and tools apart. */
export interface PlanKeys {
  /** Each hole's stop, one where it is the same in every value; undefined for what is drilled. */
  readonly stops: readonly (string | undefined)[];
  /** Each hole's tool: a bit with its diameter; all mills of pockets are one. */
  readonly tools: readonly string[];
  /** How many stops there are. */
  readonly count: number;
}

/** The stop and the tool of each hole. */
export function makeKeys(markers: readonly Marker[]): PlanKeys {
  const groups = new Map<GroupSpec, { stop: string; bit: string; width: number; tool: string }>();
  const kinds = new Set<string>();
  const stops: (string | undefined)[] = [];
  const tools: string[] = [];
  for (const { group, outline, width } of markers) {
    let own = groups.get(group);
    if (own === undefined) {
      const bit = bitText(group.bit);
      own = { stop: stopText(group.stop), bit, width, tool: `${bit} ${width}` };
      groups.set(group, own);
      if (!group.drilled) kinds.add(own.stop);
    }
    if (own.width !== width) {
      own.width = width;
      own.tool = `${own.bit} ${width}`;
    }
    tools.push(outline ? "pocket" : own.tool);
    stops.push(group.drilled ? undefined : own.stop);
  }
  return { stops, tools, count: kinds.size };
}

function bitText(bit: BitSpec): string {
  if ("point" in bit) return `${bit.kind} ${bit.point} ${bit.spur}`;
  return "angle" in bit ? `${bit.kind} ${bit.angle}` : bit.kind;
}

function stopText(stop: StopSpec): string {
  const { step, correction } = stop;
  if (stop.from === "wood") return `wood ${stop.foot} ${step} ${correction}`;
  const { height } = stop;
  const profile =
    typeof height === "object" ? JSON.stringify(Object.entries(height).sort()) : height;
  return `table ${stop.zero} ${step} ${correction} ${profile}`;
}

function withTool(
  setting: Setting,
  holes: readonly CheckedHole[],
  tools: readonly string[],
  zero: number,
): StopSetting {
  const first = setting.holes[0] as number;
  const { group, outline, width } = (holes[first] as CheckedHole).marker;
  const { min, max, minHole, maxHole, travel, holes: served } = setting;
  const stop = setStop(group.stop, zero);
  const { bit } = group;
  // literals, since objects of a known shape are made many times faster than spread ones
  if (served.some((i) => tools[i] !== tools[first])) {
    return { min, max, minHole, maxHole, travel, holes: served, stop };
  }
  return outline
    ? { min, max, minHole, maxHole, travel, holes: served, stop, bit }
    : { min, max, minHole, maxHole, travel, holes: served, stop, bit, diameter: width };
}

/** Plain data, with the zero where the stop is touched. */
function setStop(stop: StopSpec, usual: number): SetStop {
  const { from, correction } = stop;
  if (stop.from === "wood") return { from, foot: stop.foot, correction };
  const { zero = usual, height } = stop;
  return height === undefined ? { from, zero, correction } : { from, zero, height, correction };
}
