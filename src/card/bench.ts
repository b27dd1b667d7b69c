/** What the steps at the bench need beyond the report: it stands in the design, where that is given. Lengths in mm. */
import type { Design } from "../design/design.js";
import type { StopSpec } from "../design/spec.js";
import { finishedAt, topAt } from "../drilling/edges.js";
import { readNeck } from "../drilling/work.js";
import { refused } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import type { Report } from "../report/report.js";

/** A stop, and where it is zeroed. */
export type BenchStop = StopSpec & { readonly zero?: number | undefined };

/** What the design tells; each undefined where it is not given. */
export interface Bench {
  /** The stop of a hole. */
  readonly stopOf: (hole: number) => BenchStop | undefined;
  /** How far off the stop and a bit's point may be. */
  readonly errors: { readonly stop: number; readonly point: number } | undefined;
  /** What sanding takes off on the centre line there. */
  readonly sandingAt: (along: number) => number | undefined;
}

const UNKNOWN: Bench = {
  stopOf: () => undefined,
  errors: undefined,
  sandingAt: () => undefined,
};

/**
 * Reads what the steps need from the design of a report.
 * @throws DesignError where the design cannot be read
 * @throws RangeError where its holes are not the report's
 */
export function readBench({ holes }: Report, design: Design | undefined): Bench {
  if (design === undefined) return UNKNOWN;
  const { spec, board, holes: own } = readNeck(design);
  const isSame =
    own.length === holes.length && own.every(({ marker }, i) => marker.path === holes[i]?.path);
  if (!isSame) throw refused("options.design", design, "the design that the report is of");
  const { stop, point } = spec.tolerance;
  return {
    stopOf: (hole) => {
      const stated = elementAt(own, hole).marker.group.stop;
      const zero = elementAt(board.alongs, 1) / 2;
      return stated.from === "table" ? { ...stated, zero: stated.zero ?? zero } : stated;
    },
    errors: { stop: stop.limit, point: point.limit },
    sandingAt: (along) => finishedAt(board.nominal, along, 0) - topAt(board.nominal, along, 0),
  };
}
