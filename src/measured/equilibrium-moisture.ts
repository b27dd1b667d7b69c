/** The moisture that wood comes to in air. */
import type { DesignIssue } from "../errors/errors.js";
import { between, readNumber, refuseAll } from "./read.js";

/**
 * Equilibrium moisture content of wood, in percent of its dry mass.
 *
 * With h the relative humidity as a fraction and T in °C (Wood Handbook, FPL-GTR-190, eq. 4-5):
 * 1800/W · [Kh/(1 − Kh) + (K₁Kh + 2K₁K₂K²h²)/(1 + K₁Kh + K₁K₂K²h²)]. The book's table 4-2 goes from −1 to 132 °C and
 * from 5 to 95 %; the wood's own kind and its history move it by a percent or so.
 *
 * @param celsius temperature of the air, °C, from −20 to 130
 * @param humidity relative humidity, percent, from 0 to 100
 * @returns moisture content, percent
 * @throws RangeError where an argument is not a number in its range, with every one
 * @example
 * equilibriumMoisture(21, 45).toFixed(1) // "8.5"
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
  const issues: DesignIssue[] = [];
  const t = readNumber(celsius, "celsius", between(-20, 130, "°C"), issues);
  const h = readNumber(humidity, "humidity", between(0, 100, "percent"), issues) / 100;
  refuseAll(issues);
  // the coefficients are from memory, checked against table 4-2
  const w = 349 + 1.29 * t + 0.0135 * t ** 2;
  const kh = (0.805 + 0.000736 * t - 0.00000273 * t ** 2) * h;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t ** 2;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t ** 2;
  const first = k1 * kh;
  const second = k1 * k2 * kh ** 2;
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}
