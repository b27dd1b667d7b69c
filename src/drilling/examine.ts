/** Everything that is computed of a neck, before it is judged. */

import type { Marker } from "../board/markers.js";
import { elementAt } from "../geometry/element-at.js";
import { type Edge, edgesOf } from "./edges.js";
import type { Neck } from "./neck.js";
import { type SideDot, sideDotsOf } from "./side-dots.js";
import { type SlotPlan, slotsOf } from "./slots.js";
import { planStops, type StopPlan } from "./stops.js";
import { type Bounds, type Window, windowOf } from "./windows.js";

/** A hole with its worst case and its window. */
export interface CheckedHole {
  readonly marker: Marker;
  readonly bounds: Bounds;
  readonly window: Window;
}

/** A neck with its windows, stop settings, edges, slots and side dots. */
export interface Examined {
  readonly neck: Neck;
  readonly holes: readonly CheckedHole[];
  readonly stops: StopPlan;
  readonly edges: readonly Edge[];
  readonly slots: SlotPlan | undefined;
  readonly sideDots: readonly SideDot[];
}

/** Works out all of it. */
export function examine(neck: Neck): Examined {
  const { spec, board, markers } = neck;
  const holes = checkedHoles(neck);
  return {
    neck,
    holes,
    stops: stopsOf(holes, spec.stopStep),
    edges: edgesOf(board, spec.sideDots !== undefined),
    slots: slotsOf(board, spec),
    sideDots: sideDotsOf(board, spec, markers),
  };
}

/** Each hole with its window. */
export function checkedHoles({ spec, markers, bounds }: Neck): CheckedHole[] {
  return markers.map((marker, i) => {
    const worst = elementAt(bounds, i);
    return { marker, bounds: worst, window: windowOf(worst, marker.group.fill.keep, spec) };
  });
}

/** The stop settings that suit these holes. */
export function stopsOf(holes: readonly CheckedHole[], step: number | undefined): StopPlan {
  const windows = holes.map(({ window: { min, max }, bounds: { lead } }) => ({ min, max, lead }));
  return planStops(windows, step);
}

/** The depth that each hole is to be drilled to: the setting that serves it, undefined where none does. */
export function settingDepths({ holes, stops }: Pick<Examined, "holes" | "stops">) {
  const depths: (number | undefined)[] = holes.map(() => undefined);
  for (const { depth, holes: served } of stops.settings) {
    for (const i of served) depths[i] = depth;
  }
  return depths;
}
