/** A card as it is printed on letter, opened to be read. */

import { cardSheets } from '../../../src/jobs/card-sheets.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { PROFILES, planOf } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages } from '../pdf/read-back.ts';

const MEANS = { deflate, fonts: async () => FONTS };

/** `text` is what a plan says besides its templates. */
export const printedCard = async (text: string) => {
  const plan = planOf(text);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { design } = made;
  const part = { name: undefined, plan, templates: PROFILES, design, placed: <T>(p: T): T => p };
  const { bytes } = await cardSheets('Card', [part], { paper: 'letter', orientation: 'portrait' }, MEANS);
  return { plan, design, doc: await openPages(bytes) };
};
