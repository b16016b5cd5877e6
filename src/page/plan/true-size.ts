/** How large a millimetre is on this screen, found with a bank card, and kept per device. */

/** ISO/IEC 7810:2019, ID-1: 85.60 mm by 53.98 mm. */
export const CARD = { width: 85.6, height: 53.98 };

/**
 * A CSS pixel grows and shrinks with the browser's zoom, and its ratio to the screen's own pixels says by how much:
 * so what was found at one zoom holds at any other.
 */
export interface Calibration {
  readonly pixelsPerMm: number;
  /** window.devicePixelRatio when it was found. */
  readonly ratio: number;
}

/** CSS defines 96 px to the inch; screens are between half and three times that. */
export const NOMINAL = 96 / 25.4;
export const LEAST = 0.4 * NOMINAL;
export const MOST = 3 * NOMINAL;

/** CSS pixels to the millimetre, now. */
export const pixelsPerMm = (found: Calibration | undefined, ratio: number): number =>
  found ? (found.pixelsPerMm * found.ratio) / ratio : NOMINAL;

export const calibrationFrom = (text: string | null): Calibration | undefined => {
  const [pixels, ratio] = (text ?? '').split(' ').map(Number);
  if (!(pixels !== undefined && ratio !== undefined)) return undefined;
  return pixels >= LEAST && pixels <= MOST && ratio > 0 && ratio < 100
    ? { pixelsPerMm: pixels, ratio }
    : undefined;
};

export const calibrationText = ({ pixelsPerMm: pixels, ratio }: Calibration): string => `${pixels} ${ratio}`;
