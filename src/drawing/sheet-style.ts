/** The look of a drawing at true size: on paper, and in the files that show the whole of it. */

import type { LineRole } from './role.ts';
import type { Stroke, StyleSheet } from './style.ts';

const INK = {
  stitch: '#16233a',
  channel: '#3a5878',
  fill: '#6a7d97',
  seam: '#6b6f76',
  ghost: '#b08d57',
  mark: '#2c6e6a',
  note: '#4a4e55',
  /** The sharpest edge that a printer makes. */
  black: '#000000',
} as const;

const SEAM: Stroke = { width: 0.3, color: INK.seam };
const DOTTED: Stroke = { width: 0.18, color: INK.seam, dash: [0.4, 1.6] };
const MARK: Stroke = { width: 0.35, color: INK.mark };
const GUIDE: Stroke = { width: 0.2, color: INK.mark, dash: [2.4, 1.2] };

export const SHEET = {
  lines: {
    // Each about half the one before: told apart on a printer without colour, and in a picture a tenth the size.
    stitch: { width: 0.75, color: INK.stitch },
    channel: { width: 0.4, color: INK.channel },
    fill: { width: 0.22, color: INK.fill },
    way: { width: 0.4, color: INK.mark },
    seam: SEAM,
    block: SEAM,
    motif: SEAM,
    limit: SEAM,
    startLine: { width: 0.22, color: INK.seam, dash: [1.2, 1.2] },
    margin: DOTTED,
    clear: DOTTED,
    mitre: { width: 0.18, color: INK.seam, dash: [6, 1.5, 0.8, 1.5] },
    edge: { width: 0.4, color: INK.ghost },
    etched: { width: 0.2, color: INK.ghost },
    break: MARK,
    unreached: GUIDE,
    measure: { width: 0.15, color: INK.note },
    ghostEdge: { width: 0.25, color: INK.ghost, dash: [3, 1.2] },
    ghostLine: { width: 0.15, color: INK.ghost, dash: [1, 1] },
    startMark: MARK,
    stopMark: MARK,
    centreLine: { width: 0.2, color: INK.mark, dash: [5, 1.2, 0.8, 1.2] },
    guideLine: GUIDE,
    ray: GUIDE,
    spacer: { width: 0.25, color: INK.stitch },
    spacerCross: { width: 0.12, color: INK.stitch },
  } satisfies Record<LineRole, Stroke>,
  areas: { silhouette: INK.black },
  words: { label: INK.mark, etchedName: INK.ghost, note: INK.note },
} as const satisfies StyleSheet;

/** The size of labels on a true-size sheet, mm: 10 point, read easily at a table. */
export const LABEL_SIZE = 3.5;
