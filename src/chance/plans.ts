/** Which travel each hole is drilled at, and which errors go with it. Lengths in mm. */

import type { CheckedHole } from "../drilling/holes.js";
import { makeKeys, planNeck } from "../drilling/plan.js";
import type { Neck } from "../drilling/work.js";
import type { Plan } from "./model.js";
import type { SettingGroup } from "./shares.js";

/** The travels as planned, else as recommended, else in the middle of each hole's bounds; none for what is drilled. */
export function usualTravels({ holes, board }: Neck): (number | undefined)[] {
  const { settings } = planNeck(holes, board);
  return holes.map(({ marker, planned, window, toTravel }, i) => {
    if (marker.group.drilled) return undefined;
    if (planned !== undefined) return planned + toTravel;
    const setting = settings.find((each) => each.holes.includes(i));
    return setting?.travel ?? (window.min + window.max) / 2 + toTravel;
  });
}

/** Travels closer than this are one setting. */
const HAIR = 1e-9;

/** The plan of these travels: who shares a bit, and who a setting of it. */
export function readPlan({ holes }: Neck, travels: readonly (number | undefined)[]): Plan {
  const { stops, tools } = makeKeys(holes.map(({ marker }) => marker));
  const bits = new Map<string, Map<string, number[]>>();
  const drilled: number[] = [];
  holes.forEach((_, i) => {
    const travel = travels[i];
    if (travel === undefined) {
      drilled.push(i);
      return;
    }
    const tool = tools[i] as string;
    const settings = bits.get(tool) ?? new Map<string, number[]>();
    bits.set(tool, settings);
    const key = `${Math.round(travel / HAIR)} ${stops[i]}`;
    settings.set(key, [...(settings.get(key) ?? []), i]);
  });
  const groups = [...bits.values()].map((settings) => {
    const each = [...settings.values()];
    const [first = 0] = each.flat();
    const { group, outline } = (holes[first] as CheckedHole).marker;
    return {
      settings: each.map((served): SettingGroup => ({ holes: served, stops: true })),
      // a mill has no point
      pointed: group.bit.kind !== "end-mill" && outline === undefined,
    };
  });
  const old = { settings: [{ holes: drilled, stops: false }], pointed: false };
  return {
    bits: drilled.length > 0 ? [...groups, old] : groups,
    sets: holes.map(({ marker, planned }, i) => {
      const travel = travels[i];
      if (travel === undefined) return planned ?? Number.NaN;
      return travel + marker.group.stop.correction;
    }),
  };
}
