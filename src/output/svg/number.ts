/** Numbers as SVG path data wants them: plain decimals, nothing else. */

/**
 * Decimals after the point. 1e-9 mm is far below what the geometry promises (1e-6), so that a program that
 * measures the SVG sees the geometry's own error and not the writer's rounding.
 */
const DECIMALS = 9;

/** Beyond a kilometre and beyond any paper (mm); it also keeps `toFixed` from turning to exponents. */
const LARGEST = 1e9;

/** A finite number without exponent, trailing zeros or −0. Throws on anything else: no number is coerced. */
export const formatNumber = (value: number, decimals = DECIMALS): string => {
  if (!(Math.abs(value) <= LARGEST)) throw new Error(`A drawing cannot hold the number ${value}`);
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
};
