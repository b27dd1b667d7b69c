/** The fewest settings of the depth stop that suit all holes. A setting is a travel, in mm down from the touch. */
import { refused, tryRead } from "../errors/errors.js";
import { isArray } from "../errors/unknown.js";
import { elementAt } from "../geometry/element-at.js";

/** The travels that suit one hole. */
export interface TravelWindow {
  /** Least travel, mm. */
  readonly min: number;
  /** Greatest travel, mm. */
  readonly max: number;
  /** Holes of one tool share a zero; a change of tool means zeroing anew. Alike where left out. */
  readonly tool?: string | undefined;
}

/** The travels that suit every hole, and the two holes that govern them. */
export interface Common {
  /** Least travel that suits every hole, mm. */
  readonly min: number;
  /** Greatest travel that suits every hole, mm. */
  readonly max: number;
  /** Index of the hole that sets the least. */
  readonly minHole: number;
  /** Index of the hole that sets the greatest. */
  readonly maxHole: number;
}

/** One setting of the stop, and the holes it serves. */
export interface Setting extends Common {
  /** What to set: the middle of the travels that suit its holes, on a step of the stop where one lies inside, mm. */
  readonly travel: number;
  /** Indices of the holes served, rising. */
  readonly holes: readonly number[];
}

/** A stop plan: the common travels, null where there are none, and the settings to use. */
export interface StopPlan {
  /** The travels that suit every hole; null where there are none. */
  readonly common: Common | null;
  /** The fewest settings, each with the holes that it serves. */
  readonly settings: readonly Setting[];
}

/**
 * The fewest settings of one depth stop that suit all holes.
 *
 * One travel serves all where the greatest min is not above the least max. Otherwise each tool has the fewest travels
 * that serve its holes, shallowest first. A travel is the middle of those that suit the holes it serves, moved to the
 * nearest step of the stop where a step lies inside. A hole without any travel (min above max) is left aside.
 *
 * @param windows each hole's travels, mm, and its tool where tools differ; 10 000 at most
 * @param options `step`, the smallest step of the stop, mm, greater than 0
 * @returns the travels that suit all (null where there are none, or no holes) and the settings; `holes` are indices into `windows`
 * @throws RangeError where a window or the step is not made of finite numbers in range
 * @example
 * stopSettings([{ min: 2.5, max: 4 }, { min: 3, max: 5 }]).settings[0].travel // 3.5
 * stopSettings([{ min: 1, max: 2 }, { min: 3, max: 4 }]).common // null
 */
export function stopSettings(
  windows: readonly TravelWindow[],
  options: {
    /** The smallest step of the stop, mm, greater than 0. */
    readonly step?: number | undefined;
  } = {},
): StopPlan {
  const step = tryRead("options", options, () => options.step);
  if (step !== undefined && !(Number.isFinite(step) && step > 0)) {
    throw refused("step", step, "a finite length greater than 0");
  }
  const read = readWindows(windows);
  return planStop(read, [...read.keys()], step);
}

const MOST_WINDOWS = 10_000;

/** The plan of one stop for some holes; `windows` are known to be sound. */
export function planStop(
  windows: readonly TravelWindow[],
  holes: readonly number[],
  step: number | undefined,
): StopPlan {
  const suited = holes.filter((i) => isOpen(windows[i] as TravelWindow));
  const all = governing(windows, holes);
  const common = all && isOpen(all) ? all : null;
  const shared = governing(windows, suited);
  if (shared === undefined) return { common, settings: [] };
  if (isOpen(shared)) return { common, settings: [settingFor(windows, suited, step)] };
  const tools = [...new Set(suited.map((i) => (windows[i] as TravelWindow).tool))];
  const groups = tools.flatMap((tool) =>
    fewestGroups(
      windows,
      suited.filter((i) => (windows[i] as TravelWindow).tool === tool),
    ),
  );
  const settings = groups.map((served) => settingFor(windows, served, step));
  return { common, settings: settings.sort((a, b) => a.travel - b.travel) };
}

function isOpen({ min, max }: TravelWindow): boolean {
  return min <= max;
}

/** The travels that holes share, and the first holes that set them; undefined where there are no holes. */
function governing(windows: readonly TravelWindow[], holes: readonly number[]): Common | undefined {
  const [first] = holes;
  if (first === undefined) return undefined;
  let minHole = first;
  let maxHole = first;
  for (const i of holes) {
    if ((windows[i] as TravelWindow).min > (windows[minHole] as TravelWindow).min) minHole = i;
    if ((windows[i] as TravelWindow).max < (windows[maxHole] as TravelWindow).max) maxHole = i;
  }
  const { min } = windows[minHole] as TravelWindow;
  const { max } = windows[maxHole] as TravelWindow;
  return { min, max, minHole, maxHole };
}

/**
 * Groups of holes, one for each setting. Stabbing the windows at the least max not yet served, again and again, takes
 * the fewest settings that any plan can; each hole then joins the stab that lies deepest inside its window, which leaves
 * every group more room.
 */
function fewestGroups(windows: readonly TravelWindow[], holes: readonly number[]): number[][] {
  const mins = holes.map((i) => (windows[i] as TravelWindow).min);
  const maxs = holes.map((i) => (windows[i] as TravelWindow).max);
  const stabs: number[] = [];
  for (let stab = nextStab(mins, maxs, -Infinity); stab < Infinity; ) {
    stabs.push(stab);
    stab = nextStab(mins, maxs, stab);
  }
  const groups: number[][] = stabs.map(() => []);
  for (const i of holes)
    elementAt(groups, deepestInside(windows[i] as TravelWindow, stabs)).push(i);
  return groups;
}

/** The least max of the windows that begin after the last stab; Infinity where none is left. */
export function nextStab(mins: ArrayLike<number>, maxs: ArrayLike<number>, last: number): number {
  let stab = Infinity;
  for (let i = 0; i < mins.length; i++) {
    if ((mins[i] as number) > last && (maxs[i] as number) < stab) stab = maxs[i] as number;
  }
  return stab;
}

function deepestInside(window: TravelWindow, stabs: readonly number[]): number {
  const depths = stabs.map((stab) => Math.min(stab - window.min, window.max - stab));
  return depths.indexOf(Math.max(...depths));
}

function settingFor(
  windows: readonly TravelWindow[],
  holes: readonly number[],
  step: number | undefined,
): Setting {
  const { min, max, minHole, maxHole } = governing(windows, holes) as Common;
  return {
    travel: stepWithin(min, max, step) ?? findMiddle(min, max),
    min,
    max,
    minHole,
    maxHole,
    holes,
  };
}

function findMiddle(min: number, max: number): number {
  const sum = min + max;
  return Number.isFinite(sum) ? sum / 2 : min / 2 + max / 2;
}

/** What a sum of decimals may be off by: far below what any stop can hold, mm. */
const HAIR = 1e-9;

/** The step nearest to the middle of [min, max], the first at the least; undefined where the stop has none. */
function nearestStep(min: number, max: number, step: number): number {
  // a decimal step is no binary number: 23 · 0.1 is to be 2.3
  return Number((Math.max(1, Math.round(findMiddle(min, max) / step)) * step).toPrecision(15));
}

/** The step nearest to the middle of [min, max], where it lies inside; undefined where none does. */
function stepWithin(min: number, max: number, step: number | undefined): number | undefined {
  if (step === undefined || missStep(min, max, step) > 0) return undefined;
  return nearestStep(min, max, step);
}

/** How far outside [min, max] the nearest step lies; 0 inside. */
export function missStep(min: number, max: number, step: number): number {
  const travel = nearestStep(min, max, step);
  const miss = Math.max(min - travel, travel - max);
  return miss > HAIR ? miss : 0;
}

/** The windows, each read once. */
function readWindows(windows: unknown): TravelWindow[] {
  const items = tryRead("windows", windows, () =>
    isArray(windows) && windows.length <= MOST_WINDOWS ? [...windows] : undefined,
  );
  if (items === undefined) {
    throw refused("windows", windows, `an array of ${MOST_WINDOWS} windows at most`);
  }
  return items.map((window, i) => readWindow(window, `windows.${i}`));
}

function readWindow(window: unknown, path: string): TravelWindow {
  if (typeof window !== "object" || window === null) {
    throw refused(path, window, "an object with min and max");
  }
  const read = tryRead(path, window, () => ({ ...window }) as TravelWindow);
  const { min, max, tool } = read;
  for (const [name, value] of Object.entries({ min, max })) {
    if (!Number.isFinite(value)) throw refused(`${path}.${name}`, value, "a finite number");
  }
  if (tool !== undefined && typeof tool !== "string") throw refused(`${path}.tool`, tool, "a text");
  return read;
}
