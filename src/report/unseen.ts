/** What an assumed value decides unseen: the point's length, how the stop is zeroed, what it bears on. */
import type { StopSpec } from "../design/spec.js";
import type { CheckedHole } from "../drilling/holes.js";
import { buildTouch, measureRise } from "../drilling/touches.js";
import type { Work } from "../drilling/work.js";
import { elementAt } from "../geometry/element-at.js";
import { isConstant } from "../geometry/track.js";
import type { FindingFacts } from "./findings.js";

/** A warning for each assumption that decides what to set. */
export function findUnseen(work: Work, found: FindingFacts[]): void {
  unseenPoint(work, found);
  unseenZero(work, found);
  unseenFoot(work, found);
}

/** The travel is the depth and the point's length. */
function unseenPoint({ spec: { assumed, groups } }: Work, found: FindingFacts[]): void {
  for (const { path: paths } of groups) {
    const path = `${paths.bit}.point`;
    const value = assumed[path] as number | undefined;
    if (value === undefined) continue;
    found.push({ code: "assumed-point", severity: "warning", value, limit: value, path });
    return;
  }
}

/** How far apart the tops must be for it to matter, mm. */
const HARDLY = 0.005;

/** Where tops differ in height, a stop zeroed once and one zeroed at every hole come to other depths. */
function unseenZero(work: Work, found: FindingFacts[]): void {
  const { spec, board, holes } = work;
  // a level top is as high at every hole
  if (isConstant(board.wood.whole) && board.nominal.old === undefined) return;
  const isAssumed = ({ marker: { group } }: CheckedHole) =>
    !group.drilled && spec.assumed[`${group.path.stop}.from`] !== undefined;
  const once: StopSpec = {
    from: "table",
    zero: undefined,
    height: undefined,
    step: undefined,
    correction: 0,
  };
  const touch = buildTouch(board, spec, once, "stop", []);
  if (touch === undefined) return;
  const apart = holes.map((hole) =>
    isAssumed(hole) ? measureRise(touch, board.nominal.old, hole.marker) - hole.bounds.rise : 0,
  );
  const hole = apart.reduce(
    (most, rise, i) => (Math.abs(rise) > Math.abs(elementAt(apart, most)) ? i : most),
    0,
  );
  const value = apart[hole] ?? 0;
  if (!(Math.abs(value) > HARDLY)) return;
  const { fret, side, group } = elementAt(holes, hole).marker;
  const path = `${group.path.stop}.from`;
  found.push({
    code: "assumed-zero",
    severity: "warning",
    value,
    limit: 0,
    hole,
    fret,
    side,
    path,
  });
}

/** On an existing radius a wide foot bears nearer the crest than a point does. */
function unseenFoot({ spec, board, holes }: Work, found: FindingFacts[]): void {
  const { old } = board.nominal;
  if (old === undefined) return;
  const hole = holes.findIndex(({ marker: { group, offset, outline } }) => {
    const isMilled = group.bit.kind === "end-mill" && outline === undefined;
    return (
      spec.assumed[`${group.path.stop}.foot`] !== undefined &&
      !group.drilled &&
      !isMilled &&
      offset !== 0
    );
  });
  if (hole < 0) return;
  const { fret, side, group } = elementAt(holes, hole).marker;
  const path = `${group.path.stop}.foot`;
  const value = spec.assumed[path] as number;
  found.push({
    code: "assumed-foot",
    severity: "warning",
    value,
    limit: value,
    hole,
    fret,
    side,
    path,
  });
}
