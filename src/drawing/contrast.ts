/** How well one colour stands out from another: WCAG 2.2, “relative luminance” and “contrast ratio”. */

/** Of `#rrggbb`, 0 for black to 1 for white. */
export const luminance = (colour: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** 1 for the same colour to 21 for black and white. */
export const contrast = (a: string, b: string): number => {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + FLARE) / (low + FLARE);
};

/** The light that even black gives back, as the ratio reckons it. */
const FLARE = 0.05;

/** Lines that say something stand out from what is beside them by this much at least (1.4.11). */
export const LEAST_CONTRAST = 3;

/**
 * Of some colours the one that stands out best from all that it may lie on. Where none does enough, the best of these,
 * black, white, and the grey between the lightest and the darkest: 4.58 at least on one colour, and 2.14 on any.
 */
export const standingOut = (colours: readonly string[], grounds: readonly string[]): string => {
  const least = (colour: string): number => Math.min(...grounds.map((ground) => contrast(colour, ground)));
  const bestOf = (all: readonly string[]): string =>
    all.reduce((best, colour) => (least(colour) > least(best) ? colour : best));
  const best = bestOf(colours);
  return least(best) >= LEAST_CONTRAST ? best : bestOf([best, '#000000', '#ffffff', greyBetween(grounds)]);
};

const greyBetween = (grounds: readonly string[]): string => {
  const lights = grounds.map((ground) => luminance(ground) + FLARE);
  const light = Math.sqrt(Math.min(...lights) * Math.max(...lights)) - FLARE;
  const part = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
  const digits = Math.round(255 * part)
    .toString(16)
    .padStart(2, '0');
  return `#${digits.repeat(3)}`;
};
