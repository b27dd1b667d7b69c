/** The stop's settings as a builder sets them: travels that can be read off a rule, and what each hole then comes to. */
import type { StopSetting } from "../drilling/plan.js";
import { elementAt } from "../geometry/element-at.js";
import type { Hole, Outcome, Report } from "../report/report.js";
import type { Figure, Unit } from "../text/length-text.js";
import { settingLetter } from "../text/plain-words.js";

/** A setting, as it is written. */
export interface WrittenSetting extends StopSetting {
  /** “setting A”, or nothing where it is the only one. */
  readonly name: string;
  readonly letter: string;
  /** The travel to set. */
  readonly set: Figure;
}

/** The report's settings in their order. */
export function writeSettings({ stops: { settings } }: Report, unit: Unit): WrittenSetting[] {
  return settings.map((setting, i) => {
    const letter = settingLetter(i);
    const name = settings.length > 1 ? `setting ${letter}` : "";
    return { ...setting, letter, name, set: unit.set(setting.travel, setting.min, setting.max) };
  });
}

/** What a hole comes to at the travel that is written; undefined where no setting serves it. */
export function findOutcome(
  { recommended }: Hole,
  settings: readonly WrittenSetting[],
): Required<Outcome> | undefined {
  if (recommended === undefined) return undefined;
  const { set, travel } = elementAt(settings, recommended.setting);
  const deeper = set.mm - travel;
  return {
    travel: set.mm,
    depth: recommended.depth + deeper,
    markerLeft: recommended.markerLeft + deeper,
    woodLeft: recommended.woodLeft - deeper,
  };
}
