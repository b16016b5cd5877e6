/** What gives an idea of a template's size: how long its edge is in her units, and in how many sections. */

import { pathLength } from '../../geometry/index.ts';
import {
  CM_TENTH,
  formatLength,
  INCH_EIGHTH,
  type LengthStyle,
  MM_WHOLE,
  type Units,
} from '../../length/index.ts';
import { sectionsOf, type Template } from '../../template/index.ts';
import { answersWords } from '../words/words.ts';

const STYLES: Readonly<Record<Units, LengthStyle>> = { in: INCH_EIGHTH, cm: CM_TENTH, mm: MM_WHOLE };

export const edgeWords = (template: Template, units: Units): string => {
  const length = pathLength(template.edge);
  const sections = sectionsOf(template, length).length;
  return answersWords.edge({ length: formatLength(length, STYLES[units]), sections });
};
