/** An SVG drawing of her own becomes a template, as the command makes it. */

import { type Problem, ProblemError } from '../../document/index.ts';
import type { Units } from '../../length/index.ts';
import { templateFromSvg, titleOfFile } from '../../template/index.ts';
import { madeWords } from '../words/words.ts';
import { edgeWords } from './edge-words.ts';
import type { DrawnTemplate } from './messages.ts';

/** What helps at a terminal is an option; here it is another drawing. */
const inPageWords = ({ hint, ...problem }: Problem): Problem => {
  if (hint === undefined) return problem;
  if (!/--[a-z]/.test(hint)) return { ...problem, hint };
  return {
    ...problem,
    hint: /--scale/.test(hint) ? madeWords.drawnSize : madeWords.drawnLine,
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
  const words = [
    madeWords.drawnEdge({ edge: edgeWords(made.template, units) }),
    made.outline.size === 'pixels' ? madeWords.drawnInPixels : undefined,
    madeWords.layAcrylic,
  ];
  return { name, text: made.text, words: words.filter((w) => w !== undefined).join(' ') };
};
