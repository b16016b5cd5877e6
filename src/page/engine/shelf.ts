/** The templates to choose from, each by its picture: its edge, and what the needle stitches round it. */

import { drawTemplate } from '../../drawing/index.ts';
import { USUAL_CLEARANCE } from '../../jobs/template-facts.ts';
import type { Units } from '../../length/index.ts';
import { describeFault, stitchTemplate } from '../../swag/index.ts';
import { readOwn } from './desk.ts';
import { edgeWords } from './edge-words.ts';
import type { OwnTemplate, ShelfCard } from './messages.ts';
import { pictureOf } from './picture.ts';
import { fileOf, PROFILES } from './profiles.ts';
import { troubleOf } from './trouble.ts';

export const shelf = (own: readonly OwnTemplate[], units: Units = 'in'): readonly ShelfCard[] => [
  ...PROFILES.map((p) => cardOf(p.name, { name: `${p.name}.yaml`, text: p.text }, units)),
  ...own.map((t) => cardOf(t.name, t, units)),
];

export const cardOf = (name: string, file: OwnTemplate, units: Units): ShelfCard => {
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
  const drawing = drawTemplate(stitched.stitching, template.title);
  return {
    name,
    title: template.title,
    picture: pictureOf(drawing, ['notes', 'marks']),
    about: edgeWords(template, units),
    problems: [],
  };
};
