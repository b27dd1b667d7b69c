/** Figures as they stand in print. */
import { expect } from "vitest";

/** Asserts that `value`, rounded as the print is, gives the printed figure: ".0341", "11.9", "5.25e-8". */
export function expectPrinted(value: number, print: string): void {
  expect(roundedAs(value, print)).toBe(print.replace(/^\./, "0."));
}

/** `value` with as many digits as the printed figure shows. */
export function roundedAs(value: number, print: string): string {
  const [digits = "", power] = print.split("e");
  const places = digits.split(".")[1]?.length ?? 0;
  return power === undefined ? value.toFixed(places) : value.toExponential(places);
}

/** The numbers that round to a printed figure: half a unit of its last digit to either side. */
export function rangeOf(print: string): { low: number; high: number } {
  const places = print.split(".")[1]?.length ?? 0;
  const half = 10 ** -places / 2;
  return { low: Number(print) - half, high: Number(print) + half };
}
