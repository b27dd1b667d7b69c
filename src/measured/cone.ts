/** The cone nearest to sections of points: each section's circle has the curvature that the cone has there. */
import { sag } from "../geometry/sagitta.js";
import { type Arc, distanceTo, LEVEL, movedArc, type Vector } from "./arc.js";
import { type Fit, leastSquares } from "./least-squares.js";
import { centred, type ProfilePoint, reach, scaled } from "./points.js";

/** Points across the board at one place. */
export interface Section {
  /** Distance from the nut, mm. */
  readonly along: number;
  /** Offsets from the centre line; heights from any level, in any turned frame: each section may have its own. */
  readonly points: readonly ProfilePoint[];
}

/** A cone that was fitted. */
export interface FittedCone {
  /** Of the points' distances, mm². */
  readonly sumOfSquares: number;
  /** Curvature at a place, per mm, and its standard uncertainty where that of a reading is 1 mm. */
  readonly at: (along: number) => { readonly curvature: number; readonly uncertainty: number };
}

/** The cone with the least sum of squares. */
export function fitCone(sections: readonly Section[]): FittedCone {
  const places = sections.map(({ along }) => along);
  const from = Math.min(...places);
  const way = Math.max(...places) - from;
  const frames = sections.map(({ points }) => centred(points));
  const unit = Math.max(...frames.map(reach));
  const framed = sections.map(({ along, points }, i) => ({
    share: (along - from) / way,
    points: scaled(frames[i] as (typeof frames)[number], unit),
    offsets: points.map(({ offset }) => offset / unit),
  }));
  const fit = fitFramed(framed, way / unit);
  return {
    sumOfSquares: fit.sumOfSquares * unit * unit,
    at: (along) => {
      const { value, slopes } = curvatureAt((along - from) / way, fit.state);
      const others = new Array<number>(2 * sections.length).fill(0);
      const spread = Math.sqrt(fit.variance([...others, ...slopes]));
      return { curvature: value / unit, uncertainty: spread / unit / unit };
    },
  };
}

interface FramedSection {
  /** Of the way from the first section to the last. */
  readonly share: number;
  readonly points: readonly Vector[];
  /** Of the points, from the centre line. */
  readonly offsets: readonly number[];
}

interface Cone {
  readonly arcs: readonly Arc[];
  /** Curvatures at the first and at the last section. */
  readonly first: number;
  readonly last: number;
}

/** How far a conic lies from its circle is taken from the cone before, until it stands: a few passes do. */
function fitFramed(sections: readonly FramedSection[], way: number): Fit<Cone> {
  let fit = fitCircles(sections, {
    arcs: sections.map(() => LEVEL),
    first: 0,
    last: 0,
  });
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const { state } = fit;
    fit = fitCircles(
      sections.map((section) => raised(section, state, way)),
      state,
    );
    const { first, last } = fit.state;
    if (Math.abs(first - state.first) + Math.abs(last - state.last) < FINE) break;
  }
  return fit;
}

const MOST_PASSES = 12;
const FINE = 1e-14;

/** Circles of which the curvature runs along the board as the cone's does. */
function fitCircles(sections: readonly FramedSection[], start: Cone): Fit<Cone> {
  const [first, last] = [2 * sections.length, 2 * sections.length + 1];
  return leastSquares<Cone>({
    start,
    parameters: last + 1,
    residuals: (cone) =>
      sections.flatMap(({ share, points }, i) => {
        const { value: curvature, slopes } = curvatureAt(share, cone);
        return points.map((point) => {
          const { value, move, turn, bend } = distanceTo(cone.arcs[i] as Arc, curvature, point);
          return {
            value,
            slopes: [
              [2 * i, move],
              [2 * i + 1, turn],
              [first, bend * slopes[0]],
              [last, bend * slopes[1]],
            ],
          };
        });
      }),
    moved: (cone, step) => ({
      arcs: cone.arcs.map((arc, i) => movedArc(arc, step[2 * i] ?? 0, step[2 * i + 1] ?? 0)),
      first: cone.first + (step[first] ?? 0),
      last: cone.last + (step[last] ?? 0),
    }),
  });
}

/** A section of circles, each point raised by what the cone's conic there lies below the circle of its crest. */
function raised(section: FramedSection, cone: Cone, way: number): FramedSection {
  // a radius that changes its sign on the way is no cone's
  if (!(cone.first * cone.last > 0)) return section;
  const slope = (1 / cone.last - 1 / cone.first) / way;
  const curvature = curvatureAt(section.share, cone).value;
  const points = section.points.map(({ x, y }, i) => ({
    x,
    y: y + excess(curvature, section.offsets[i] as number, slope),
  }));
  return { ...section, points };
}

/** How much farther a conic drops than the circle of its vertex: less than nothing on a cone. */
function excess(curvature: number, offset: number, slope: number): number {
  const radius = Math.abs(1 / curvature);
  const x = Math.abs(offset);
  return Math.sign(curvature) * (sag(radius, x, slope) - sag(radius, x, 0));
}

/** 1/R where R is linear from 1/first to 1/last: κ = first · last / ((1 − f) · last + f · first), and its slopes. */
function curvatureAt(
  share: number,
  { first, last }: Cone,
): { readonly value: number; readonly slopes: readonly [number, number] } {
  if (first === last) return { value: first, slopes: [1 - share, share] };
  const sum = (1 - share) * last + share * first;
  return {
    value: (first * last) / sum,
    slopes: [(1 - share) * (last / sum) ** 2, share * (first / sum) ** 2],
  };
}
