/** What a template is, and how one is read from a file. */

export { acrossAt, fromHeel, isBeyond, lineBeyond, styleIn } from './etched.ts';
export { templateFromSvg, titleOfFile } from './from-svg.ts';
export { notAnEdge } from './not-an-edge.ts';
export { readTemplate } from './read.ts';
export { templateJsonSchema } from './schema.ts';
export { type AlignmentLine, type Section, sectionsOf, type Template } from './template.ts';
export { etchedText, writeTemplate } from './write.ts';
