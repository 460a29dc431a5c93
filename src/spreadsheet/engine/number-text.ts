/**
 * A number as text, as the operator `&` joins it: at most 15 significant digits, exponents only beyond 1E+20 and
 * below 1E-9.
 *
 * Source: observed behaviour of spreadsheet programs (common practice, no source).
 */
export function formatPlainNumber(number: number): string {
  if (number === 0) return "0";
  const [digits = "", exponentText = "0"] = number.toExponential(14).split("e");
  const exponent = Number(exponentText);
  if (exponent > 20 || exponent < -9) {
    const mantissa = digits.includes(".") ? digits.replace(/\.?0+$/, "") : digits;
    return `${mantissa}E${exponent < 0 ? "-" : "+"}${String(Math.abs(exponent)).padStart(2, "0")}`;
  }
  if (exponent >= 14) return BigInt(Math.round(Number(digits) * 1e14)).toString() + "0".repeat(exponent - 14);
  const fixed = number.toFixed(Math.min(100, 14 - exponent));
  return fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
}
