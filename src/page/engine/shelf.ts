/** The templates to choose from, each by its picture: its edge, and what the needle stitches round it. */

import { drawTemplate } from '../../drawing/index.ts';
import { pathLength } from '../../geometry/index.ts';
import {
  CM_TENTH,
  formatLength,
  INCH_EIGHTH,
  type LengthStyle,
  MM_PER_INCH,
  MM_WHOLE,
  type Units,
} from '../../length/index.ts';
import { describeFault, stitchTemplate } from '../../swag/index.ts';
import { readOwn } from './desk.ts';
import type { OwnTemplate, ShelfCard } from './messages.ts';
import { pictureOf } from './picture.ts';
import { fileOf, PROFILES } from './profiles.ts';
import { troubleOf } from './trouble.ts';

/** The foot that most have: the picture shows about where the needle goes, and the plan's own foot decides. Common practice, no source. */
const USUAL_CLEARANCE = MM_PER_INCH / 4;

/** An edge's length is told to give an idea of its size. */
const STYLES: Readonly<Record<Units, LengthStyle>> = { in: INCH_EIGHTH, cm: CM_TENTH, mm: MM_WHOLE };

export const shelf = (own: readonly OwnTemplate[], units: Units = 'in'): readonly ShelfCard[] => [
  ...PROFILES.map((p) => cardOf(p.name, { name: `${p.name}.yaml`, text: p.text }, units)),
  ...own.map((t) => cardOf(t.name, t, units)),
];

const cardOf = (name: string, file: OwnTemplate, units: Units): ShelfCard => {
  const reading = readOwn(file);
  if (!reading.ok)
    return {
      name,
      title: fileOf(name),
      picture: undefined,
      about: '',
      problems: reading.problems.map(troubleOf),
    };
  const { template } = reading;
  const stitched = stitchTemplate(template, USUAL_CLEARANCE);
  if (!stitched.ok)
    return {
      name,
      title: template.title,
      picture: undefined,
      about: '',
      problems: [troubleOf(describeFault(template, USUAL_CLEARANCE, stitched.fault))],
    };
  const { sections } = stitched.stitching;
  const drawing = drawTemplate(stitched.stitching, template.title);
  const parts = sections.length === 1 ? 'one section' : `${sections.length} sections`;
  return {
    name,
    title: template.title,
    picture: pictureOf(drawing, ['notes', 'marks']),
    about: `${formatLength(pathLength(template.edge), STYLES[units])} of edge in ${parts}`,
    problems: [],
  };
};
