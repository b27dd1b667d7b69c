/**
 * Remedies are complete: whatever single number cures a finding is offered. The judge is a scan that takes its paths
 * from the table of fields, tries 200 values each, and knows nothing of how remedies are sought.
 */

import { describe, expect, it } from "vitest";
import { seeded } from "../../bench/random.js";
import { kindAt, listPaths, withNumber } from "../../src/design/paths.js";
import {
  checkDesign,
  type Design,
  type Finding,
  type FindingCode,
  type NumberPath,
  type Report,
  remediesFor,
} from "../../src/index.js";
import { FAILING, type Random } from "./failing.js";

/** How many designs; 500 in the long run. */
const DESIGNS = Number(process.env.DESIGNS ?? 27);
const SEED = Number(process.env.SEED ?? 20261127);

/** What a builder can no longer change. */
const SETTLED = /^(name|scale|board\.(length|width)|existing|tolerance|pour)(\.|$)/;

/** Every number of a design that a builder can still change, by the table's paths. */
function pathsOf(design: Design): string[] {
  const stations = ["nut", "end"];
  return listPaths()
    .filter((path) => !SETTLED.test(path))
    .flatMap((path) =>
      path.startsWith("markers.0.")
        ? design.markers.map((_, i) => path.replace("markers.0", `markers.${i}`))
        : [path],
    )
    .flatMap((path) => [path, ...stations.map((station) => `${path}.${station}`)])
    .filter((path) => kindAt(path) !== undefined && !kindAt(path)?.whole);
}

/** 200 values about what stands, or about what is usual. */
function valuesFor(path: string, now: number): number[] {
  const base = now > 0 ? now : 1;
  const wide = Array.from({ length: 100 }, (_, i) => base * 10 ** (-2 + (i * 4) / 99));
  const near = Array.from({ length: 100 }, (_, i) => now + base * (-1 + (i * 3) / 99));
  return kindAt(path)?.kind === "radius" ? [...wide, ...near, Infinity] : [...wide, ...near];
}

function check(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch {
    return undefined;
  }
}

const place = (report: Report, { hole, other, fret, side, station, path }: Finding) =>
  hole === undefined
    ? [fret, side, station, path].join(" ")
    : [report.holes[hole]?.path, other === undefined ? "" : report.holes[other]?.path].join(" ");

/** Degrees of one rule are one. */
const MILD: Partial<Record<FindingCode, FindingCode>> = {
  "nothing-left": "below-keep",
  "breaks-through": "below-web",
  "cuts-slot": "near-slot",
  "several-settings": "several-travels",
};
const PLANNED = ["below-keep", "below-web", "below-surface"];
const rule = (code: FindingCode) => MILD[code] ?? code;

/** The finding is gone, a planned depth fails in no other way instead, and no error is new. */
function isCured(before: Report, finding: Finding, after: Report): boolean {
  const at = place(before, finding);
  const known = new Set(
    before.findings.flatMap((each) => [
      `${each.code} ${place(before, each)}`,
      `${rule(each.code)} ${place(before, each)}`,
    ]),
  );
  return after.findings.every((each) => {
    const here = place(after, each);
    const isSame =
      here === at &&
      (rule(each.code) === rule(finding.code) ||
        (PLANNED.includes(rule(finding.code)) && PLANNED.includes(rule(each.code))));
    const isNew = each.severity === "error" && !known.has(`${each.code} ${here}`);
    return !isSame && !isNew;
  });
}

/** What stands at a path, as a number; what is usual where nothing does. */
function numberAt(design: Design, report: Report, path: string): number {
  const stated = statedAt(design, path);
  const assumed = report.assumed[path];
  return typeof stated === "number" ? stated : typeof assumed === "number" ? assumed : 1;
}

/** What the design states at a path. */
function statedAt(design: Design, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>(
      (at, key) =>
        typeof at === "number" ? at : (at as Record<string, unknown> | undefined)?.[key],
      design,
    );
}

/** A profile of several numbers is not one number; nor is a step, a zero or a height that no one stated. */
function isOneNumber(design: Design, path: string): boolean {
  const stated = statedAt(design, path);
  if (typeof stated === "object") return false;
  return typeof stated === "number" || !/stop\.(step|zero|height)/.test(path);
}

/** A group's own stop is no cure for what one stop cannot do. */
function isOtherStop(finding: Finding, path: string): boolean {
  return rule(finding.code) === "several-travels" && /^markers\.\d+\.stop\./.test(path);
}

/** The paths of which some value cures the finding. */
function scan(design: Design, report: Report, finding: Finding): string[] {
  return pathsOf(design)
    .filter((path) => isOneNumber(design, path) && !isOtherStop(finding, path))
    .filter((path) =>
      valuesFor(path, numberAt(design, report, path)).some((value) => {
        const after = check(withNumber(design, path, value));
        return after !== undefined && isCured(report, finding, after);
      }),
    );
}

const draw = seeded(SEED);
const random: Random = () => draw(0, 1);
const codes = Object.keys(FAILING) as FindingCode[];

/** Designs that fail, code by code in turn, each with a finding of its code. */
const failing = Array.from({ length: DESIGNS }, (_, i) => {
  const code = codes[i % codes.length] as FindingCode;
  for (let tries = 0; tries < 200; tries++) {
    const design = FAILING[code]?.(random) as Design;
    const report = check(design);
    const found = report?.findings.filter((finding) => finding.code === code) ?? [];
    if (report && found.length > 0) {
      return {
        code,
        design,
        report,
        finding: found[Math.floor(random() * found.length)] as Finding,
      };
    }
  }
  throw new Error(`no design fails by ${code}`);
});

describe(`remedies of ${DESIGNS} designs, SEED=${SEED}`, () => {
  it.each(failing.map((each, i) => [i, each.code, each] as const))(
    "%i %s",
    (_, __, { design, report, finding }) => {
      const remedies = remediesFor(design, finding);
      const offered = remedies.map(({ change }) => change);
      const missed = scan(design, report, finding).filter((path) => !offered.includes(path));
      expect(missed, JSON.stringify(design)).toEqual([]);
      for (const { change, to } of remedies) {
        const after = checkDesign(withNumber(design, change as NumberPath, to));
        expect({ change, cured: isCured(report, finding, after) }).toEqual({ change, cured: true });
      }
    },
  );
});
