/** A card as it is printed on letter, opened to be read. */

import { cardSheets } from '../../../src/jobs/card-sheets.ts';
import type { CardPlace } from '../../../src/output/card/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import type { Template } from '../../../src/template/index.ts';
import { PROFILES, planOf } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages } from '../pdf/read-back.ts';

const MEANS = { deflate, fonts: async () => FONTS };

/** `text` is what a plan says besides its templates. */
export const printedCard = async (text: string, templates: readonly Template[] = PROFILES) => {
  const plan = planOf(text);
  const made = designFromPlan(plan, templates);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { design } = made;
  const part = { name: undefined, plan, templates, design, placed: <T>(p: T): T => p };
  const { bytes } = await cardSheets('Card', [part], { paper: 'letter', orientation: 'portrait' }, MEANS);
  return { plan, design, doc: await openPages(bytes) };
};

/** What a figure has in one line of a place: its name, where the measures stand below it, or both. */
export const lineOnFigure = ({ id, name, measures }: CardPlace): string => {
  const [first = ''] = measures;
  if (id === 'near' || id === 'far') return name;
  if (id === 'needle') return `needle ${first}`;
  return id === 'guide' ? `guide line, ${first}` : `${id.slice('line '.length)} ${first}`;
};
