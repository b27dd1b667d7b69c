/** A design made ready: read, its board built, its markers laid out. Throws every problem at once. */
import { type Board, buildBoard } from "../board/board.js";
import { layOut, type Marker } from "../board/markers.js";
import { readSpec } from "../design/read-design.js";
import type { PartialSpec, Spec } from "../design/spec.js";
import { DesignError, type DesignIssue, issueOf } from "../errors/errors.js";
import { type Bounds, boundsOf } from "./windows.js";

/** A design made ready. */
export interface Neck {
  readonly spec: Spec;
  readonly board: Board;
  readonly markers: readonly Marker[];
  /** The worst case of each marker's hole. */
  readonly bounds: readonly Bounds[];
}

/**
 * Makes a design ready.
 * @throws DesignError that lists every problem of the design
 */
export function prepare(design: unknown): Neck {
  const issues: DesignIssue[] = [];
  const spec = readSpec(design, issues);
  const neck = spec && build(spec, issues);
  if (neck === undefined) throw new DesignError(issues);
  return neck;
}

/** Builds the neck of a specification; undefined, with issues, where its parts do not suit each other. */
export function build(partial: PartialSpec, issues: DesignIssue[]): Neck | undefined {
  const board = buildBoard(partial, issues);
  const laidOut = board && partial.groups && layOut(board, partial.groups, issues);
  if (issues.length > 0) return undefined;
  // no issue: every field was read and built
  const [spec, surface, markers] = [partial as Spec, board as Board, laidOut as readonly Marker[]];
  const bounds = markers.map((marker) => boundsOf(surface, spec, marker));
  const neck = { spec, board: surface, markers, bounds };
  mustReach(neck, issues);
  return issues.length > 0 ? undefined : neck;
}

/** Every hole must lie where the finished surface still is, within the tolerances. */
function mustReach({ spec, markers, bounds }: Neck, issues: DesignIssue[]): void {
  const lost = markers.find((_, i) => !(bounds[i] && bounds[i].removal < Infinity));
  if (lost === undefined) return;
  const reach = Math.abs(lost.offset) + lost.diameter / 2 + spec.tolerance.layout;
  const expected = `a radius that reaches ${reach} mm from the centre line, as the hole at fret ${lost.fret} does within the tolerances`;
  issues.push(issueOf("radius", spec.radius, expected));
}
