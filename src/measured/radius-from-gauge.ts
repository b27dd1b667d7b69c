/** The radius of a surface from a radius gauge and a feeler. Lengths in mm. */
import { type DesignIssue, makeIssue, refused } from "../errors/errors.js";
import { radiusFromSagitta, sag } from "../geometry/sagitta.js";
import { RADIUS, readFields, readNumber, refuseAll, SIZE, SIZE_OR_ZERO } from "./read.js";

/** A gauge on the board, and what fits under it. */
export interface GaugeReading {
  /** Radius of the gauge, mm; Infinity for a straightedge. */
  readonly gauge: number;
  /** The chord along which gauge and board face each other, mm. */
  readonly span: number;
  /** The gap, square to the chord, mm: under the middle where the edges touch, else under either edge. */
  readonly gap: number;
  /** Where the gauge touches the board: on its crest, or at both ends of the span. */
  readonly touches: "centre" | "edges";
}

/**
 * Radius of a board from a radius gauge and the gap that a feeler finds under it.
 *
 * Over half the span, c, the gauge has dropped by its sagitta and the board by a gap more (the gauge touches the
 * centre) or less (the edges): h = sag(gauge, c) ± gap, and R = (c² + h²)/(2h) (intersecting chords).
 *
 * @param reading `gauge`, mm, at least half the span and 1e12 at most, or Infinity; `span`, from 1e-6 to
 *   1e6 mm; `gap`, 0 or more, mm, such that the board drops by half the span at most; `touches`
 * @returns the radius, mm; Infinity where flat, negative where hollow
 * @throws RangeError where the reading cannot be read, with every path
 * @example
 * // a straightedge on the crest, feelers of 0.61 mm at the edges of a width of 44 mm
 * radiusFromGauge({ gauge: Infinity, span: 44, gap: 0.61, touches: "centre" }).toFixed(0) // "397"
 */
export function radiusFromGauge(reading: GaugeReading): number {
  const { gauge, span, gap, touches } = readReading(reading);
  const half = span / 2;
  const dropped = sag(gauge, half, 0);
  if (!(dropped < Infinity))
    throw refused("reading.gauge", gauge, `${half} mm, half the span, or more`);
  const h = touches === "centre" ? dropped + gap : dropped - gap;
  if (!(Math.abs(h) <= half)) {
    throw refused(
      "reading.gap",
      gap,
      `a gap that leaves a drop of ${half} mm, half the span, at most`,
    );
  }
  return h < 0 ? -radiusFromSagitta(half, -h) : radiusFromSagitta(half, h);
}

function readReading(reading: unknown): GaugeReading {
  const issues: DesignIssue[] = [];
  const fields = readFields(reading, "reading", ["gauge", "span", "gap", "touches"], issues);
  const read = {
    gauge: readNumber(fields?.gauge, "reading.gauge", RADIUS, issues),
    span: readNumber(fields?.span, "reading.span", SIZE, issues),
    gap: readNumber(fields?.gap, "reading.gap", SIZE_OR_ZERO, issues),
    touches: fields?.touches === "edges" ? "edges" : "centre",
  } as const;
  if (fields?.touches !== read.touches) {
    issues.push(makeIssue("reading.touches", fields?.touches, '"centre" or "edges"'));
  }
  refuseAll(issues);
  return read;
}
