/** The rows of a sweep, held against the check of each design. */
import { expect } from "vitest";
import { DesignError, type Report, type Sweep } from "../../src/index.js";

/** Holds every row against the check of its design. */
export function holdRows(rows: Sweep): {
  common: number;
  several: number;
  none: number;
  unread: number;
} {
  const seen = { common: 0, several: 0, none: 0, unread: 0 };
  for (let i = 0; i < rows.size; i++) {
    const report = reportOf(rows, i);
    const settings = rows.settings[i] ?? -1;
    if (report === undefined) {
      expect([settings, rows.min[i], rows.max[i]]).toEqual([0, Infinity, -Infinity]);
      expect([rows.minHole[i], rows.maxHole[i]]).toEqual([-1, -1]);
      seen.unread++;
      continue;
    }
    const windows = report.holes.map(({ window }) => window);
    const min = Math.max(...windows.map((window) => window.min));
    const max = Math.min(...windows.map((window) => window.max));
    expect(rows.min[i]).toBe(min);
    expect(rows.max[i]).toBe(max);
    expect(rows.minHole[i]).toBe(windows.findIndex((window) => window.min === min));
    expect(rows.maxHole[i]).toBe(windows.findIndex((window) => window.max === max));
    const { common, settings: plan } = report.stops;
    if (common) {
      expect([common.min, common.max]).toEqual([rows.min[i], rows.max[i]]);
      expect([common.minHole, common.maxHole]).toEqual([rows.minHole[i], rows.maxHole[i]]);
    }
    const fails = windows.some((window) => !(window.min <= window.max));
    expect(settings).toBe(fails ? 0 : plan.length);
    seen[fails ? "none" : common ? "common" : "several"]++;
  }
  return seen;
}

export function reportOf(rows: Sweep, i: number): Report | undefined {
  try {
    return rows.report(i);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return undefined;
  }
}
