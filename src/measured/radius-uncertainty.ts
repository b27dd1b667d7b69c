/** Uncertainties of what is fitted, as both fits read and give them. */
import type { DesignIssue } from "../errors/errors.js";
import { readOptional, SIZE } from "./read.js";

/** The standard uncertainty of one reading, mm; undefined where the points' scatter is to tell. */
export function readUncertainty(value: unknown, issues: DesignIssue[]): number | undefined {
  return readOptional(value, "options.uncertainty", SIZE, undefined, issues);
}

/** u(R) = u(κ)/κ², to first order; where nothing is uncertain, not even a flat board's. */
export function radiusUncertainty(curvature: number, uncertainty: number): number {
  return uncertainty === 0 ? 0 : uncertainty / curvature ** 2;
}
