/** What the steps at the bench are written from, and what they are. */
import type { Report } from "../report/report.js";
import type { Unit } from "../text/length-text.js";
import type { WrittenSetting } from "./settings.js";

/** All that the steps are written from. */
export interface Job {
  readonly report: Report;
  readonly settings: readonly WrittenSetting[];
  readonly unit: Unit;
}

/** One step: its sentences, and the lines of a list below them. */
export interface Step {
  readonly text: string;
  readonly list?: readonly string[];
}
