/**
 * How each kind of line looks. Weight and dash tell them apart in black and white; colour comes second and
 * only helps. Widths and dashes in mm, as they come out on paper at true size.
 */

import type { Stroke } from './drawing.ts';

export const INK = {
  stitch: '#16233a',
  channel: '#3a5878',
  fill: '#6a7d97',
  seam: '#6b6f76',
  ghost: '#b08d57',
  mark: '#2c6e6a',
  note: '#4a4e55',
} as const;

export const STROKES = {
  // Each about half the one before: told apart on a printer without colour, and in a picture a tenth the size.
  stitch: { width: 0.75, color: INK.stitch },
  channel: { width: 0.4, color: INK.channel },
  fill: { width: 0.22, color: INK.fill },
  seam: { width: 0.3, color: INK.seam },
  margin: { width: 0.18, color: INK.seam, dash: [0.4, 1.6] },
  mitre: { width: 0.18, color: INK.seam, dash: [6, 1.5, 0.8, 1.5] },
  edge: { width: 0.4, color: INK.ghost },
  etched: { width: 0.2, color: INK.ghost },
  ghostEdge: { width: 0.25, color: INK.ghost, dash: [3, 1.2] },
  ghostLine: { width: 0.15, color: INK.ghost, dash: [1, 1] },
  startMark: { width: 0.35, color: INK.mark },
  centreLine: { width: 0.2, color: INK.mark, dash: [5, 1.2, 0.8, 1.2] },
  guideLine: { width: 0.2, color: INK.mark, dash: [2.4, 1.2] },
} as const satisfies Record<string, Stroke>;

/** The size of labels on a true-size sheet, mm: 10 point, read easily at a table. */
export const LABEL_SIZE = 3.5;
