/** How a drawing looks in the figures of a card: small, in black and greys, without words of its own. */

import type { Stroke, StyleSheet } from '../../drawing/index.ts';

const SEAM: Stroke = { width: 0.35, color: '#707070' };
const LEVEL: Stroke = { width: 0.25, color: '#707070', dash: [0.6, 1.4] };
const CENTRE: Stroke = { width: 0.25, color: '#333333', dash: [4, 1, 0.8, 1] };
const GUIDE: Stroke = { width: 0.25, color: '#333333', dash: [2, 1] };
const MARK: Stroke = { width: 0.5, color: '#111111' };

export const FIGURE: StyleSheet = {
  lines: {
    stitch: { width: 0.75, color: '#111111' },
    seam: SEAM,
    block: SEAM,
    motif: SEAM,
    limit: SEAM,
    startLine: LEVEL,
    clear: LEVEL,
    mitre: CENTRE,
    ghostEdge: { width: 0.5, color: '#8a8a8a' },
    ghostLine: { width: 0.18, color: '#8a8a8a', dash: [0.8, 0.8] },
    startMark: MARK,
    stopMark: MARK,
    centreLine: CENTRE,
    guideLine: GUIDE,
    ray: GUIDE,
  },
  areas: {},
  words: {},
};

/** The second half, which is stitched with the template turned over. */
export const SECOND: Stroke = { width: 0.45, color: '#111111', dash: [2.2, 1.4] };
export const LEADER: Stroke = { width: 0.18, color: '#555555' };
export const FOOT: Stroke = { width: 0.25, color: '#8a8a8a' };
