/** Doubles as exact decimals, for comparisons at 64 digits. Used by the tests and by bench/accuracy.ts. */
import { all, type BigNumber, create } from "mathjs";

/** mathjs with 64 significant digits. */
export const math64 = create({ ...all }, { number: "BigNumber", precision: 64 });

/** A whole number or a decimal as written, at 64 digits. */
export function big(value: string | number): BigNumber {
  if (typeof value === "number" && !Number.isSafeInteger(value)) {
    throw new RangeError(`big: expected a safe integer or a decimal as text, received ${value}`);
  }
  return math64.bignumber(String(value));
}

/** The parts of a finite double: value = sign · mantissa · 2^exponent (IEEE 754, binary64). */
export function partsOf(value: number): { sign: bigint; mantissa: bigint; exponent: number } {
  if (!Number.isFinite(value)) {
    throw new RangeError(`partsOf: expected a finite double, received ${value}`);
  }
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const bits = view.getBigUint64(0);
  const field = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & 0xfffffffffffffn;
  return {
    sign: bits >> 63n ? -1n : 1n,
    // a subnormal has no hidden bit, and the exponent of field 1
    mantissa: field === 0 ? fraction : fraction | (1n << 52n),
    exponent: Math.max(field, 1) - 1075,
  };
}

/**
 * The double as the exact decimal that it is. A power of two below 1 is a decimal that ends:
 * m · 2^(−k) = m · 5^k · 10^(−k). The digits are passed as text, which is not rounded to 64 digits.
 */
export function exactOf(value: number): BigNumber {
  const { sign, mantissa, exponent } = partsOf(value);
  const signed = sign * mantissa;
  if (exponent >= 0) return math64.bignumber(String(signed << BigInt(exponent)));
  return math64.bignumber(`${signed * 5n ** BigInt(-exponent)}e${exponent}`);
}

/** The gap between doubles at the size of `value`: 2^exponent. */
export function ulpOf(value: number): number {
  return 2 ** partsOf(value).exponent;
}

/** Error of a double against the exact value, in units in the last place of the exact value. */
export function ulpsBetween(value: number, exact: BigNumber): number {
  const error = exactOf(value).minus(exact).abs();
  return error.div(exactOf(ulpOf(exact.toNumber()))).toNumber();
}

/** The sagitta from exact doubles: h = x² / (R + √(R² − (1 + K)x²)), K = −slope² (ISO 10110-12). */
export function sagitta64(radius: number, x: number, slope: number): BigNumber {
  const [r, xx, kk] = [exactOf(radius), exactOf(x).pow(2), exactOf(slope).pow(2)];
  const root = r.pow(2).minus(big(1).minus(kk).times(xx)).sqrt();
  return xx.div(r.plus(root));
}

/** The radius from exact doubles: R = (x² + h²) / (2h). */
export function radius64(x: number, h: number): BigNumber {
  const height = exactOf(h);
  return exactOf(x).pow(2).plus(height.pow(2)).div(height.times(2));
}

/** Share of the string between the nut and fret n: 1 − 2^(−n/12). Its position is L times that. */
export function fretShare64(n: number): BigNumber {
  return big(1).minus(big(2).pow(big(-n).div(12)));
}

/** A value of a formula as mathjs writes it, such as "cot(59 deg) / 2", at 64 digits. */
export function evaluated64(formula: string): number {
  const value: unknown = math64.evaluate(formula);
  return Number(String(value));
}

/** The crossing from exact doubles: along = gap · Wa / (Wa + Wb), offset = Wa · Wb / (2(Wa + Wb)). */
export function crossing64(gap: number, widthA: number, widthB: number) {
  const [a, b] = [exactOf(widthA), exactOf(widthB)];
  const share = a.div(a.plus(b));
  return { along: exactOf(gap).times(share), offset: share.times(b).div(2) };
}
