/** Least squares by Gauss and Newton, damped (Levenberg, Marquardt) only where the sum of squares rises. */

/** A distance that should be nothing, and how it changes with each parameter that it depends on. */
export interface Residual {
  readonly value: number;
  /** Pairs of a parameter's index and the slope along it. */
  readonly slopes: readonly (readonly [parameter: number, slope: number])[];
}

/** What a fit found. */
export interface Fit<State> {
  readonly state: State;
  readonly sumOfSquares: number;
  /** Variance of a linear function of the parameters, by its slopes, where that of a residual is 1. */
  readonly variance: (slopes: readonly number[]) => number;
}

/** What is fitted: `moved` gives the state after a step of the parameters. */
export interface Problem<State> {
  readonly start: State;
  readonly parameters: number;
  readonly residuals: (state: State) => readonly Residual[];
  readonly moved: (state: State, step: readonly number[]) => State;
}

const MOST_ROUNDS = 100;
/** A step below this, where lengths are near 1, is nothing. */
const FINE = 1e-14;
/** The least damping that is tried. */
const DAMPING = 1e-3;
/** A sum of squares this much greater, as a part of itself, differs by rounding alone. */
const ROUNDING = 1e-12;

/**
 * The state with the least sum of squares that is come to from the start. Where the points tell next to nothing (cones
 * through noise on a flat board) the last rounds still lower it a little, by far less than the noise.
 */
export function leastSquares<State>(problem: Problem<State>): Fit<State> {
  let state = problem.start;
  let here = normalEquations(problem, state);
  let damping = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const step = solve(here.matrix, here.descent, damping);
    const next = problem.moved(state, step);
    const there = normalEquations(problem, next);
    const lower = there.sumOfSquares <= here.sumOfSquares * (1 + ROUNDING);
    damping = lower ? (damping > DAMPING ? damping / 10 : 0) : Math.max(DAMPING, damping * 10);
    if (lower) [state, here] = [next, there];
    if (step.every((part) => Math.abs(part) < FINE)) break;
  }
  const { matrix, sumOfSquares } = here;
  const variance = (slopes: readonly number[]) => dot(solve(matrix, slopes, 0), slopes);
  return { state, sumOfSquares, variance };
}

interface NormalEquations {
  readonly matrix: readonly (readonly number[])[];
  readonly descent: readonly number[];
  readonly sumOfSquares: number;
}

/** JᵀJ, −Jᵀr and rᵀr. */
function normalEquations<State>(
  { parameters, residuals }: Problem<State>,
  state: State,
): NormalEquations {
  const matrix = Array.from({ length: parameters }, () => new Array<number>(parameters).fill(0));
  const descent = new Array<number>(parameters).fill(0);
  let sumOfSquares = 0;
  for (const { value, slopes } of residuals(state)) {
    sumOfSquares += value * value;
    for (const [i, slope] of slopes) {
      const row = matrix[i] as number[];
      descent[i] = (descent[i] as number) - slope * value;
      for (const [j, other] of slopes) row[j] = (row[j] as number) + slope * other;
    }
  }
  return { matrix, descent, sumOfSquares };
}

/** Solves a symmetric positive system, its diagonal raised by `damping` of itself: elimination without pivots. */
function solve(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
  damping: number,
): number[] {
  const rows = matrix.map((row, i) => [
    ...row.map((x, j) => (i === j ? x * (1 + damping) : x)),
    right[i] as number,
  ]);
  rows.forEach((pivot, i) => {
    for (const row of rows.slice(i + 1)) {
      const times = (row[i] as number) / (pivot[i] as number);
      for (let j = i; j < row.length; j++)
        row[j] = (row[j] as number) - times * (pivot[j] as number);
    }
  });
  const solution = new Array<number>(rows.length).fill(0);
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i] as number[];
    solution[i] = ((row[rows.length] as number) - dot(row, solution)) / (row[i] as number);
  }
  return solution;
}

/** Over the second's length. */
function dot(a: readonly number[], b: readonly number[]): number {
  return b.reduce((sum, x, i) => sum + x * (a[i] as number), 0);
}
