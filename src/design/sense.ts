/** What of a design makes no sense together, though each field by itself may stand. */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { isConvex } from "../geometry/polygon.js";
import type { Bit, Design, GroupWork, MarkerGroup } from "./design.js";

/** Notes an issue for each pair of fields that do not go together. The design may have gaps where fields were refused. */
export function checkSense(design: Partial<Design>, issues: DesignIssue[]): void {
  const note = (path: string, value: unknown, expected: string) =>
    issues.push(makeIssue(path, value, expected));
  checkOneGoal(design, "", note);
  checkBit(design.bit, "bit", note);
  design.markers?.forEach((group, i) => {
    if (group !== undefined) checkGroup(group, design, `markers.${i}`, note);
  });
  const { board, neck, scale } = design;
  if (neck !== undefined && board !== undefined && board.channel === undefined) {
    note("board.channel", undefined, 'a rod channel, or "none", where there is a neck');
  }
  const channel = board?.channel;
  const isOpen = typeof channel === "object" && channel.depth === undefined;
  if (isOpen && neck === undefined) {
    note("board.channel.depth", undefined, "a depth, since no neck is stated that it could lie in");
  }
  if (scale && "square" in scale && scale.square > scale.frets) {
    note(
      "scale.square",
      scale.square,
      `a fret from 0 (the nut) to ${scale.frets}, fractions allowed`,
    );
  }
}

type Note = (path: string, value: unknown, expected: string) => void;

/** A depth and a travel state the same thing twice. */
function checkOneGoal({ depth, travel }: GroupWork, path: string, note: Note): void {
  if (depth === undefined || travel === undefined) return;
  note(
    path === "" ? "travel" : `${path}.travel`,
    travel,
    "none beside a depth: one follows from the other",
  );
}

function checkBit(bit: Bit | undefined, path: string, note: Note): void {
  if (bit === undefined || !("point" in bit) || bit.spur === undefined) return;
  if (!(bit.spur <= bit.point))
    note(`${path}.spur`, bit.spur, `no more than the point, ${bit.point} mm`);
}

function checkGroup(group: MarkerGroup, design: Partial<Design>, path: string, note: Note): void {
  if (!group.drilled) checkOneGoal(group, path, note);
  checkBit(group.bit, `${path}.bit`, note);
  const shape = "shape" in group ? group.shape : undefined;
  if (shape !== undefined && group.bit && group.bit.kind !== "end-mill") {
    note(`${path}.bit.kind`, group.bit.kind, '"end-mill" for a pocket');
  }
  if (shape?.kind === "polygon" && shape.corners.every((corner) => corner !== undefined)) {
    const outline = shape.corners.map(({ x, y }) => ({ along: x, offset: y }));
    if (!isConvex(outline))
      note(`${path}.shape.corners`, shape.corners, "corners of a convex outline");
  }
  if (shape?.kind === "trapezoid") {
    if ("places" in group)
      note(`${path}.shape.kind`, shape.kind, "frets: a trapezoid follows their slots");
    else if (group.arrangement !== undefined && group.arrangement !== "single") {
      note(`${path}.arrangement`, group.arrangement, '"single" for a trapezoid');
    }
  }
  if (group.drilled === undefined) return;
  if (group.travel !== undefined) note(`${path}.travel`, group.travel, "none for what is drilled");
  const hasDepth =
    (group.depth ?? design.depth) !== undefined ||
    ("places" in group && group.places.every((place) => place?.depth !== undefined));
  if (!hasDepth) note(`${path}.depth`, undefined, "the measured depth of what is drilled");
}
