/**
 * Touches: what a stop's travel is counted from. From the wood it is the top at each hole, where a foot of some width
 * bears; from the table it is one height, and what lies below the crest plane counts less where the crest lies higher.
 * Lengths in mm.
 */
import type { Board, Finish, RodChannel } from "../board/board.js";
import { trackOn } from "../board/board.js";
import type { Bore } from "../board/markers.js";
import type { GroupSpec, Spec, StopSpec } from "../design/spec.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { sag } from "../geometry/sagitta.js";
import {
  combined,
  constantTrack,
  isConstant,
  pieceAt,
  type Track,
  valueAt,
  valueOnPiece,
} from "../geometry/track.js";

/** A touch, and the board as it counts from there. */
export interface Touch {
  /** What bears on the top; from the table there is none, and every hole has one height. */
  readonly bears: "wood" | "table";
  readonly foot: number;
  /** Height of the crest line above that of the touch; 0 from the wood. */
  readonly height: Track;
  /** The error that stop and seat have together. */
  readonly error: number;
  /** The surfaces and the wood less the crest's height: add `height` at a hole. */
  readonly deepest: Finish;
  readonly shallowest: Finish;
  readonly whole: Track;
  readonly channel: RodChannel | undefined;
}

/** The crest line's slope above which the work does not lie level. */
const STEEPEST = 0.02;

/** The touch of a stop; undefined, with issues, where its height is none. */
export function buildTouch(
  board: Board,
  spec: Spec,
  stop: StopSpec,
  path: string,
  issues: DesignIssue[],
): Touch | undefined {
  const { tolerance } = spec;
  const error = tolerance.stop.limit;
  const { deepest, shallowest, wood } = board;
  if (stop.from === "wood") {
    const { whole, channel } = wood;
    const height = constantTrack(0);
    return { bears: "wood", foot: stop.foot, height, error, deepest, shallowest, whole, channel };
  }
  const crest =
    stop.height === undefined ? wood.whole : trackOn(board, stop.height, `${path}.height`, issues);
  if (crest === undefined) return undefined;
  mustLieLevel(crest, stop, path, issues);
  const zero = stop.zero ?? placeZero(board);
  const height = combined(crest, constantTrack(valueAt(crest, zero)), -1);
  const { whole, channel } = wood;
  return {
    bears: "table",
    foot: 0,
    height,
    error: error + tolerance.seat.limit,
    deepest: below(deepest, height),
    shallowest: below(shallowest, height),
    whole: below(whole, height),
    channel: channel && { ...channel, over: below(channel.over, height) },
  };
}

/** The touch from which the depth of a hole that is drilled was measured: its own top. */
export function measuredTouch({ deepest, shallowest, wood: { whole, channel } }: Board): Touch {
  const height = constantTrack(0);
  return { bears: "wood", foot: 0, height, error: 0, deepest, shallowest, whole, channel };
}

/** The touch of each group, by the group's path. */
export function buildTouches(
  board: Board,
  spec: Spec,
  issues: DesignIssue[],
): ReadonlyMap<string, Touch> {
  const touches = new Map<string, Touch>();
  for (const group of spec.groups) {
    const touch = group.drilled
      ? measuredTouch(board)
      : buildTouch(board, spec, group.stop, group.path.stop, issues);
    if (touch) touches.set(group.path.group, touch);
  }
  return touches;
}

function mustLieLevel(
  crest: Track,
  { height }: StopSpec & { height?: unknown },
  path: string,
  issues: DesignIssue[],
): void {
  const steepest = crest.slope.find((slope) => !(Math.abs(slope) <= STEEPEST));
  if (steepest === undefined) return;
  const expected = `a height of the crest that changes by at most ${STEEPEST} mm per mm, as on level work; it changes by ${steepest}`;
  issues.push(makeIssue(`${path}.height`, height, expected));
}

/** A track, or a finish, less the height of the crest; itself where that does not change. */
export function below(what: Finish, height: Track): Finish;
export function below(what: Track, height: Track): Track;
export function below(what: Finish | Track, height: Track): Finish | Track {
  if (isConstant(height)) return what;
  if ("at" in what) return combined(what, height, -1);
  const { sanded, old } = what;
  return {
    sanded: { radius: sanded.radius, sanding: combined(sanded.sanding, height, -1) },
    old: old && { radius: old.radius, sanding: combined(old.sanding, height, -1) },
  };
}

/** How far an existing radius has dropped at a place. */
export function dropAt(old: Finish["old"], along: number, aside: number): number {
  if (old === undefined) return 0;
  const i = pieceAt(old.radius, along);
  return sag(
    valueOnPiece(old.radius, i, along),
    Math.max(0, aside),
    elementAt(old.radius.slope, i),
  );
}

/** Where a stop is zeroed that says nothing of it: half way between the nut and fret 1. */
export function placeZero({ alongs }: Pick<Board, "alongs">): number {
  return elementAt(alongs, 1) / 2;
}

/** What a touch asks of a hole. */
type Touched = Bore & { readonly group: Pick<GroupSpec, "bit" | "drilled"> };

/** Width of what bears on the top at the touch; an end mill has no point, and bears with its own width at least. */
export function placeFoot({ foot }: Touch, { group, outline, width }: Touched): number {
  const isMilled = group.bit.kind === "end-mill" && outline === undefined && !group.drilled;
  return isMilled ? Math.max(foot, width) : foot;
}

/**
 * Rise: how much deeper below the top the tip lies at a hole than the travel says. From the wood
 * sag(R0, max(0, |x| − foot/2)) − sag(R0, |x|); from the table H(s) − sag(R0, |x|) − H(zero).
 */
export function measureRise(touch: Touch, old: Finish["old"], hole: Touched): number {
  const { along, offset } = hole;
  const aside = Math.abs(offset);
  const drop = dropAt(old, along, aside);
  if (touch.bears === "table") return valueAt(touch.height, along) - drop;
  return dropAt(old, along, aside - placeFoot(touch, hole) / 2) - drop;
}
