/** A drawing as an SVG file. */

export { type SvgOptions, writeSvg } from './write-svg.ts';
