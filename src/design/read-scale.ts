/** Reads scales: equal temperament, listed positions, or two lengths along the edges. */

import { type DesignIssue, issueOf } from "../errors/errors.js";
import { equalTemperament } from "../geometry/temperament.js";
import { LIMITS } from "./design.js";
import {
  type Bound,
  complete,
  join,
  namesOf,
  readFields,
  readItems,
  readNumber,
  SIZE,
  wholeUpTo,
} from "./read-fields.js";
import type { ScaleSpec } from "./spec.js";

/** Reads a scale, as the keys it bears tell its kind. */
export function readScale(value: unknown, issues: DesignIssue[]): ScaleSpec | undefined {
  const given = typeof value === "object" && value !== null ? namesOf(value, "scale", issues) : [];
  if (given.includes("positions")) {
    const fields = readFields(value, "scale", ["positions"], issues);
    const positions = fields && readPositions(fields.positions, issues);
    return positions && { kind: "straight", positions };
  }
  if (given.includes("bass") || given.includes("treble")) return readFanned(value, issues);
  const fields = readFields(value, "scale", ["length", "frets"], issues);
  if (fields === undefined) return undefined;
  const read = complete({
    length: readNumber(fields.length, "scale.length", SIZE, issues),
    frets: readNumber(fields.frets, "scale.frets", FRETS, issues),
  });
  return read && { kind: "straight", positions: equalTemperament(read.length, read.frets) };
}

const FRETS = wholeUpTo(LIMITS.frets.value);

function readFanned(value: unknown, issues: DesignIssue[]): ScaleSpec | undefined {
  const fields = readFields(value, "scale", ["bass", "treble", "perpendicular", "frets"], issues);
  if (fields === undefined) return undefined;
  const bass = readNumber(fields.bass, "scale.bass", SIZE, issues);
  const treble = readNumber(fields.treble, "scale.treble", SIZE, issues);
  const frets = readNumber(fields.frets, "scale.frets", FRETS, issues);
  const most = frets ?? LIMITS.frets.value;
  const onBoard: Bound = {
    what: `a fret from 0 (the nut) to ${most}, fractions allowed`,
    accepts: (fret) => fret >= 0 && fret <= most,
  };
  const perpendicular = readNumber(fields.perpendicular, "scale.perpendicular", onBoard, issues);
  const read = complete({ bass, treble, perpendicular, frets });
  return read && { kind: "fanned", ...read };
}

function readPositions(value: unknown, issues: DesignIssue[]): readonly number[] | undefined {
  const path = "scale.positions";
  const items = readItems(value, path, "fret positions", LIMITS.frets.value, issues);
  if (items === undefined) return undefined;
  const before = issues.length;
  if (items.length === 0) issues.push(issueOf(path, value, "one position or more"));
  const positions = items.map((item, i) => readNumber(item, join(path, i), SIZE, issues));
  positions.forEach((position, i) => {
    const last = positions[i - 1];
    if (position !== undefined && last !== undefined && !(position > last)) {
      issues.push(issueOf(join(path, i), position, `more than the position before it, ${last} mm`));
    }
  });
  // no issue: every one was read
  return issues.length > before ? undefined : (positions as number[]);
}
