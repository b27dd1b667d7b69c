/** The holes to be drilled: the worst case of each, its window, and the travels that suit it. Lengths in mm. */
import type { Board } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { buildTouches } from "./touches.js";
import { type Bounds, closeWindow, type DepthWindow, findBounds } from "./windows.js";

/** A hole with its worst case, its window and its travels. */
export interface CheckedHole {
  readonly marker: Marker;
  readonly bounds: Bounds;
  readonly window: DepthWindow;
  /** What to add to a depth for its travel: lead − rise − correction. */
  readonly toTravel: number;
  /** Depth of the floor that is meant, or was measured. */
  readonly planned: number | undefined;
}

/** Checks each hole; issues where the finished surface does not reach one. */
export function checkHoles(
  board: Board,
  spec: Spec,
  markers: readonly Marker[],
  issues: DesignIssue[],
): CheckedHole[] {
  const touches = buildTouches(board, spec, issues);
  const holes: CheckedHole[] = [];
  for (const marker of markers) {
    const touch = touches.get(marker.group.path.group);
    if (touch) holes.push(checkHole(spec, marker, findBounds(board, spec, touch, marker)));
  }
  mustReach(spec, holes, issues);
  return holes;
}

/** A hole, from its worst case. */
export function checkHole(spec: Spec, marker: Marker, bounds: Bounds): CheckedHole {
  const { group, depth, travel } = marker;
  const toTravel = travelBeyond(bounds, group);
  const planned = depth ?? (travel === undefined ? undefined : travel - toTravel);
  return { marker, bounds, window: closeWindow(bounds, group, spec.web), toTravel, planned };
}

/** How much more than its depth a hole's travel is: lead − rise − correction; none for what is drilled. */
export function travelBeyond(
  { lead, rise }: Pick<Bounds, "lead" | "rise">,
  { drilled, stop }: GroupSpec,
): number {
  return drilled ? 0 : lead - rise - stop.correction;
}

/** Every hole must lie where the finished surface still is, within the tolerances. */
function mustReach(spec: Spec, holes: readonly CheckedHole[], issues: DesignIssue[]): void {
  const lost = holes.find(({ bounds }) => !(bounds.removal < Infinity));
  if (lost === undefined) return;
  const { offset, width, fret } = lost.marker;
  const { layout, crest } = spec.tolerance;
  const reach = Math.abs(offset) + width / 2 + layout.limit + crest.limit;
  const expected = `a radius that reaches ${reach} mm from the centre line, as the hole at fret ${fret} does within the tolerances`;
  issues.push(makeIssue("radius", spec.radius, expected));
}
