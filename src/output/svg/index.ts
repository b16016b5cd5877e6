/** A drawing as an SVG file, and a path as the data that SVG takes. */

export { formatNumber } from './number.ts';
export { pathData } from './path-data.ts';
export { writeSvg } from './write-svg.ts';
