/** What a template is, and how one is read from a file. */

export { CORNER_TURN, findBreaks, type NamedPlace } from './breaks.ts';
export { type EdgeReading, type EdgeStep, edgeFromSteps, edgeFromSvg } from './edge.ts';
export { titleOfFile } from './file-title.ts';
export { type FromSvg, type FromSvgResult, type SvgImport, templateFromSvg } from './from-svg.ts';
export { edgeFromPoints, MEASURED_TOLERANCE, type MeasuredPoint } from './measured.ts';
export { readTemplate, type TemplateReading } from './read.ts';
export { templateJsonSchema, templateSchema } from './schema.ts';
export { type AlignmentLine, type Break, type Section, sectionsOf, type Template } from './template.ts';
export { type TemplateText, writeTemplate } from './write.ts';
