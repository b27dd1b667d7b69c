const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where a function that falls and then rises is least between two places: golden section, so many times. */
export function lowestBetween(
  f: (x: number) => number,
  from: number,
  to: number,
  sections: number,
): number {
  let a = from;
  let b = to;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let atC = f(c);
  let atD = f(d);
  for (let i = 0; i < sections && a < b; i++) {
    if (atC <= atD) {
      b = d;
      d = c;
      atD = atC;
      c = b - GOLDEN * (b - a);
      atC = f(c);
    } else {
      a = c;
      c = d;
      atC = atD;
      d = a + GOLDEN * (b - a);
      atD = f(d);
    }
  }
  return (a + b) / 2;
}
