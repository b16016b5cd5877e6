/** An SVG drawing of her own becomes a template, as the command makes it. */

import { type Problem, ProblemError } from '../../document/index.ts';
import { pathLength } from '../../geometry/index.ts';
import { CM_TENTH, formatLength, INCH_EIGHTH, MM_HALF, type Units } from '../../length/index.ts';
import { sectionsOf, templateFromSvg, titleOfFile } from '../../template/index.ts';
import type { DrawnTemplate } from './messages.ts';

const STYLES = { in: INCH_EIGHTH, cm: CM_TENTH, mm: MM_HALF } as const;

/** What helps at a terminal is an option; here it is another drawing. */
const inPageWords = ({ hint, ...problem }: Problem): Problem => {
  if (hint === undefined) return problem;
  if (!/--[a-z]/.test(hint)) return { ...problem, hint };
  return {
    ...problem,
    hint: /--scale/.test(hint)
      ? 'save the drawing with its real width and height, in mm or inches'
      : 'save the line that the foot follows, or the whole outline, alone',
  };
};

export const drawing = (fileName: string, svg: string, units: Units): DrawnTemplate => {
  const name = fileName.replace(/\.svg$/i, '.yaml');
  const made = templateFromSvg(svg, {
    name: fileName,
    fileName: name,
    title: titleOfFile(fileName),
    units: units === 'in' ? 'in' : 'mm',
    choice: {},
  });
  if (!made.ok) throw new ProblemError(made.problems.map(inPageWords));
  const length = pathLength(made.template.edge);
  const parts = sectionsOf(made.template, length).length;
  const words = [
    `Its working edge is ${formatLength(length, STYLES[units])} long, in ${parts === 1 ? 'one section' : `${parts} sections`}.`,
    made.outline.size === 'pixels'
      ? 'The drawing does not say how large it is; 96 of its pixels were taken as an inch.'
      : undefined,
    'Print its outline and lay the acrylic on it before you trust it.',
  ];
  return { name, text: made.text, words: words.filter((w) => w !== undefined).join(' ') };
};
