/** The fewest depth-stop settings that suit all holes. Depths in mm. */

import { isArray, refused, touched } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";

/** A window as a stop setting sees it: depths of the rim, and how far the bit leads it. */
export interface StopWindow {
  readonly min: number;
  readonly max: number;
  /** How far the bit's lowest part leads its rim; 0 where left out. */
  readonly lead?: number;
}

/** One setting of the depth stop, and the holes it serves. */
export interface StopSetting {
  /** Depth of the bit's rim. */
  readonly depth: number;
  /** What to set from the point's touch: depth + lead, the least of `travels`. */
  readonly travel: number;
  /** The depths that suit all holes served. */
  readonly min: number;
  readonly max: number;
  /** The holes that set the least and the most. */
  readonly minHole: number;
  readonly maxHole: number;
  /** Indices of the holes served, rising. */
  readonly holes: readonly number[];
  /** One travel for each bit that leads its rim by another length, least first. */
  readonly travels: readonly Travel[];
}

/** What to set for the bits of one lead. */
export interface Travel {
  readonly lead: number;
  readonly travel: number;
  readonly holes: readonly number[];
}

/** The depths that suit every hole, and the two holes that govern them. */
export interface Common {
  readonly min: number;
  readonly max: number;
  readonly minHole: number;
  readonly maxHole: number;
}

/** A stop plan: the common window, null where there is none, and the settings to use. */
export interface StopPlan {
  readonly common: Common | null;
  readonly settings: readonly StopSetting[];
}

/**
 * The fewest depth-stop settings that suit all holes, shallowest first.
 *
 * One setting suits all when the greatest min is not above the least max. Each setting is the middle of
 * the depths that suit the holes it serves, moved to the nearest step of the stop where a step
 * lies inside; the stop reads travel from the point's touch, so it is the travel that falls on a step.
 * A hole without any depth (min above max) is served by no setting.
 *
 * @param windows each hole's depths of the rim, mm, and its bit's lead, mm, 0 where left out; 10 000 at most
 * @param options `step`, the smallest step of the stop, mm, greater than 0
 * @returns the common window (null where none, or where there are no holes) and the settings; `holes` are indices into `windows`
 * @throws RangeError where a window or the step is not made of finite numbers in range
 * @example
 * stopSettings([{ min: 2.5, max: 4 }, { min: 3, max: 5 }]).settings[0].depth // 3.5
 * stopSettings([{ min: 1, max: 2 }, { min: 3, max: 4 }]).common // null
 */
export function stopSettings(
  windows: readonly StopWindow[],
  options: { readonly step?: number } = {},
): StopPlan {
  const step = touched("options", options, () => options.step);
  checkWindows(windows, step);
  return planStops(windows, step);
}

const MOST_WINDOWS = 10_000;

/** The same for windows known to be sound. */
export function planStops(windows: readonly StopWindow[], step: number | undefined): StopPlan {
  const every = windows.map((_, i) => i);
  const common = commonWindow(windows, every);
  if (common) return { common, settings: [settingFor(windows, every, step)] };
  const groups = fewestGroups(windows);
  return { common, settings: groups.map((holes) => settingFor(windows, holes, step)) };
}

/** The window that all holes share, or null. */
function commonWindow(windows: readonly StopWindow[], holes: readonly number[]): Common | null {
  if (holes.length === 0) return null;
  const common = governing(windows, holes);
  return common.min <= common.max ? common : null;
}

function governing(windows: readonly StopWindow[], holes: readonly number[]): Common {
  let minHole = elementAt(holes, 0);
  let maxHole = minHole;
  for (const i of holes) {
    if (elementAt(windows, i).min > elementAt(windows, minHole).min) minHole = i;
    if (elementAt(windows, i).max < elementAt(windows, maxHole).max) maxHole = i;
  }
  return {
    min: elementAt(windows, minHole).min,
    max: elementAt(windows, maxHole).max,
    minHole,
    maxHole,
  };
}

/**
 * Groups of holes, one for each setting. Stabbing the windows at the least max not yet served, again and
 * again, takes the fewest settings that any plan can; each hole then joins the stab that lies deepest
 * inside its window, which leaves every group more room.
 */
function fewestGroups(windows: readonly StopWindow[]): number[][] {
  const holes = windows
    .map((_, i) => i)
    .filter((i) => elementAt(windows, i).min <= elementAt(windows, i).max);
  const mins = holes.map((i) => elementAt(windows, i).min);
  const maxs = holes.map((i) => elementAt(windows, i).max);
  const columns = { mins, maxs, caps: maxs };
  const stabs: number[] = [];
  for (let stab = nextStab(columns, -Infinity); stab < Infinity; ) {
    stabs.push(stab);
    stab = nextStab(columns, stab);
  }
  const groups: number[][] = stabs.map(() => []);
  for (const i of holes) elementAt(groups, deepestInside(elementAt(windows, i), stabs)).push(i);
  return groups;
}

/** Windows as columns: a window's max is the lesser of its two. */
interface WindowColumns {
  readonly mins: ArrayLike<number>;
  readonly maxs: ArrayLike<number>;
  readonly caps: ArrayLike<number>;
}

/** The least max of the windows that begin after the last stab; Infinity where none is left. */
function nextStab({ mins, maxs, caps }: WindowColumns, last: number): number {
  let stab = Infinity;
  for (let i = 0; i < mins.length; i++) {
    const max = Math.min(elementAt(maxs, i), elementAt(caps, i));
    if (elementAt(mins, i) > last && max < stab) stab = max;
  }
  return stab;
}

/** How many settings these windows need; 0 where some window is empty. Makes nothing new, for a sweep's sake. */
export function settingsNeeded(columns: WindowColumns): number {
  const { mins, maxs, caps } = columns;
  for (let i = 0; i < mins.length; i++) {
    if (!(elementAt(mins, i) <= Math.min(elementAt(maxs, i), elementAt(caps, i)))) return 0;
  }
  let count = 0;
  for (let stab = nextStab(columns, -Infinity); stab < Infinity; count++) {
    stab = nextStab(columns, stab);
  }
  return count;
}

function deepestInside(window: StopWindow, stabs: readonly number[]): number {
  const depths = stabs.map((stab) => Math.min(stab - window.min, window.max - stab));
  return depths.indexOf(Math.max(...depths));
}

function settingFor(
  windows: readonly StopWindow[],
  holes: readonly number[],
  step: number | undefined,
): StopSetting {
  const { min, max, minHole, maxHole } = governing(windows, holes);
  const leads = [...new Set(holes.map((i) => leadAt(windows, i)))].sort((a, b) => a - b);
  const least = elementAt(leads, 0);
  const depth = onStep(min, max, least, step);
  const travels = leads.map((lead) => {
    const served = holes.filter((i) => leadAt(windows, i) === lead);
    return { lead, travel: depth + lead, holes: served };
  });
  return { depth, travel: depth + least, min, max, minHole, maxHole, holes, travels };
}

function leadAt(windows: readonly StopWindow[], i: number): number {
  return elementAt(windows, i).lead ?? 0;
}

/** The middle of [min, max], or the depth nearest to it whose travel falls on a step, where one lies inside. */
function onStep(min: number, max: number, lead: number, step: number | undefined): number {
  const sum = min + max;
  const middle = Number.isFinite(sum) ? sum / 2 : min / 2 + max / 2;
  if (step === undefined) return middle;
  const depth = Math.round((middle + lead) / step) * step - lead;
  return min <= depth && depth <= max ? depth : middle;
}

function checkWindows(windows: unknown, step: unknown): void {
  if (step !== undefined && !(Number.isFinite(step) && (step as number) > 0)) {
    throw refused("step", step, "a finite length greater than 0");
  }
  if (!(isArray(windows) && windows.length <= MOST_WINDOWS)) {
    throw refused("windows", windows, `an array of ${MOST_WINDOWS} windows at most`);
  }
  for (let i = 0; i < windows.length; i++) checkWindow(windows[i], `windows.${i}`);
}

function checkWindow(window: unknown, path: string): void {
  if (typeof window !== "object" || window === null) {
    throw refused(path, window, "an object with min and max");
  }
  const {
    min,
    max,
    lead = 0,
  } = touched(path, window, () => ({ ...window }) as Partial<StopWindow>);
  for (const [name, value] of Object.entries({ min, max, lead })) {
    if (!Number.isFinite(value)) throw refused(`${path}.${name}`, value, "a finite number");
  }
}
