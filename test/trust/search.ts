/** Extremes and crossings of functions of one number, by search; each takes what holds of a convex function. */

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const SECTIONS = 44;

/** The least of a convex function over a stretch, its ends included. */
export function least(f: (t: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [atC, atD] = [f(c), f(d)];
  for (let i = 0; i < SECTIONS; i++) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - GOLDEN * (b - a);
      atC = f(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + GOLDEN * (b - a);
      atD = f(d);
    }
  }
  return Math.min(atC, atD, f(from), f(to));
}

const SAMPLES = 8;

/** The greatest of a smooth function over a stretch: near the best of a few samples. */
export function greatest(f: (t: number) => number, from: number, to: number): number {
  const at = (i: number) => from + ((to - from) * Math.min(SAMPLES, Math.max(0, i))) / SAMPLES;
  let [best, most] = [0, -Infinity];
  for (let i = 0; i <= SAMPLES; i++) {
    const value = f(at(i));
    if (value > most) [best, most] = [i, value];
  }
  return Math.max(most, -least((t) => -f(t), at(best - 1), at(best + 1)));
}

/** Where a function that is below 0 at one end and not at the other crosses it; the end where it is below. */
export function crossing(f: (t: number) => number, below: number, above: number): number {
  let [low, high] = [below, above];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

/** What of a stretch a convex function is below 0 on; undefined where nowhere. */
export function stretchBelow(f: (t: number) => number, from: number, to: number) {
  let valley = { at: from, value: f(from) };
  const look = (at: number) => {
    const value = f(at);
    if (value < valley.value) valley = { at, value };
    return value;
  };
  look(to);
  least(look, from, to);
  if (!(valley.value < 0)) return undefined;
  const end = (t: number) => (f(t) < 0 ? t : crossing(f, valley.at, t));
  return [end(from), end(to)] as const;
}
