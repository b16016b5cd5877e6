/**
 * What the things on a drawing are. What they look like is for a style sheet to say, one for each use: a sheet, a
 * screen, a page of small copies.
 */

export const LINE_ROLES = [
  // Quilting.
  'stitch',
  'channel',
  'fill',
  // How a fill is sewn: where it starts, which way it goes, where it stops.
  'way',
  // The cloth: a quilt's seams, a block's edge or a motif's, and how far a frame may reach.
  'seam',
  'block',
  'motif',
  'limit',
  // Where the swags start, what is kept clear, and where a corner is halved.
  'startLine',
  'margin',
  'clear',
  'mitre',
  // A template by itself, and a ghost of it in place.
  'edge',
  'etched',
  'break',
  'unreached',
  'measure',
  'ghostEdge',
  'ghostLine',
  // What is drawn on the cloth.
  'startMark',
  'stopMark',
  'centreLine',
  'guideLine',
  'ray',
  // A spacer to cut out.
  'spacer',
  'spacerCross',
] as const;
export type LineRole = (typeof LINE_ROLES)[number];

/** Filled areas. */
export const AREA_ROLES = ['silhouette'] as const;
export type AreaRole = (typeof AREA_ROLES)[number];

/** Words: names of what is marked on the cloth, names etched on a template, and all else that explains. */
export const WORD_ROLES = ['label', 'etchedName', 'note'] as const;
export type WordRole = (typeof WORD_ROLES)[number];
