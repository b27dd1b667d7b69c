/** The walk from a design to all the work on its neck: read → board → markers → holes → stop plan → the rest. */
import { type Board, buildBoard } from "../board/board.js";
import { layOut } from "../board/markers.js";
import { complete } from "../design/complete.js";
import type { Design } from "../design/design.js";
import { newReading, readStated } from "../design/read.js";
import { checkSense } from "../design/sense.js";
import type { PartialSpec, Spec } from "../design/spec.js";
import { DesignError, type DesignIssue } from "../errors/errors.js";
import { buildEdges, type Edge, type Reach, shortestReach } from "./edges.js";
import { type CheckedHole, checkHoles } from "./holes.js";
import { type NeckPlan, planNeck } from "./plan.js";
import { type Pour, planPour } from "./pour.js";
import { buildSideDots, type SideDot } from "./side-dots.js";
import { planSlots, type SlotDepth, type SlotPlan, sawDepths } from "./slots.js";

/** A design read, its board built, its markers laid out and its holes checked. */
export interface Neck {
  readonly spec: Spec;
  readonly board: Board;
  readonly holes: readonly CheckedHole[];
}

/** All that is computed of a neck, before it is judged. */
export interface Work extends Neck {
  readonly plan: NeckPlan;
  /** The depth of each hole's floor at the setting that serves it; undefined where none does. */
  readonly recommended: readonly (number | undefined)[];
  readonly edges: readonly Edge[];
  readonly reach: Reach | undefined;
  readonly sawDepths: readonly SlotDepth[];
  readonly slots: SlotPlan | undefined;
  readonly sideDots: readonly SideDot[];
  readonly pour: Pour | undefined;
}

/**
 * Reads a design with every default filled in, as far as it can be read.
 * @throws nothing; what is wrong is added to `issues`
 */
export function readSpec(design: unknown, issues: DesignIssue[]): PartialSpec | undefined {
  const stated = readStated(design, newReading(issues));
  return stated && specFrom(stated, issues);
}

/** The specification of what is stated; a scale or groups that have issues of their own are left out. */
export function specFrom(stated: Design, issues: DesignIssue[]): PartialSpec {
  checkSense(stated, issues);
  return complete(withoutFaulty(stated, issues));
}

/** What is stated without a scale and without groups of which something could not be read. */
function withoutFaulty(stated: Design, issues: readonly DesignIssue[]): Partial<Design> {
  if (issues.length === 0) return stated;
  const isFaulty = (at: string) => issues.some(({ path }) => `${path}.`.startsWith(`${at}.`));
  const sound = <T>(part: T, at: string) => (isFaulty(at) ? undefined : part) as T;
  const markers = stated.markers?.map((group, i) => sound(group, `markers.${i}`));
  return { ...stated, scale: sound(stated.scale, "scale"), ...(markers && { markers }) };
}

/** Builds the neck of a specification; undefined, with issues, where its parts do not suit each other. */
export function buildNeck(partial: PartialSpec, issues: DesignIssue[]): Neck | undefined {
  const board = buildBoard(partial, issues);
  const markers = board && partial.groups && layOut(board, partial.groups, issues);
  if (issues.length > 0 || board === undefined || markers === undefined) return undefined;
  // no issue: every field was read and built
  const spec = partial as Spec;
  const holes = checkHoles(board, spec, markers, issues);
  return issues.length > 0 ? undefined : { spec, board, holes };
}

/**
 * Reads a design and builds its neck.
 * @throws DesignError that lists every problem of the design
 */
export function readNeck(design: unknown): Neck {
  return readDesigned(design).neck;
}

/**
 * The same, with what the design states, read once.
 * @throws DesignError that lists every problem of the design
 */
export function readDesigned(design: unknown): { readonly stated: Design; readonly neck: Neck } {
  const issues: DesignIssue[] = [];
  const stated = readStated(design, newReading(issues));
  const neck = stated && buildNeck(specFrom(stated, issues), issues);
  if (stated === undefined || neck === undefined) throw new DesignError(issues);
  return { stated, neck };
}

/** Works out all of a neck. */
export function workOut({ spec, board, holes }: Neck): Work {
  const markers = holes.map(({ marker }) => marker);
  const plan = planNeck(holes, board);
  const recommended = depthsAt(holes, plan);
  // enough to fill each hole whichever of the two it is drilled to
  const depths = holes.map(({ planned }, i) => deeper(planned, recommended[i]));
  const saw = sawDepths(board, spec);
  return {
    spec,
    board,
    holes,
    plan,
    recommended,
    edges: buildEdges(board, spec.sideDots !== undefined),
    reach: shortestReach(board),
    sawDepths: saw,
    slots: planSlots(saw),
    sideDots: buildSideDots(board, spec, markers),
    pour: planPour(spec, markers, depths),
  };
}

function deeper(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? (a ?? b) : Math.max(a, b);
}

/** The depth that each hole comes to at the setting that serves it. */
function depthsAt(holes: readonly CheckedHole[], { settings }: NeckPlan): (number | undefined)[] {
  const depths: (number | undefined)[] = holes.map(() => undefined);
  for (const { travel, holes: served } of settings) {
    for (const i of served) depths[i] = travel - (holes[i] as CheckedHole).toTravel;
  }
  return depths;
}
