/** The colours of fabric and thread that her plan says, read where she picks them: the picture follows at once. */

import { computed } from '@preact/signals';
import { type ClothColours, clothColours } from '../../drawing/index.ts';
import { type Colours, colourFrom } from '../../plan/index.ts';
import { type PlanSource, textAt } from '../plan/plan-text.ts';
import { state } from './store.ts';

export const COLOURED = ['fabric', 'middle', 'thread'] as const satisfies readonly (keyof Colours)[];

const writtenIn = (plan: PlanSource): Colours =>
  Object.fromEntries(
    COLOURED.map((part) => [part, colourFrom(textAt(plan, ['colours', part]) ?? '')] as const),
  );

const isChosen = (colours: Colours): boolean => COLOURED.some((part) => colours[part] !== undefined);

const written = computed(() => writtenIn(state.value));

/** Whether she has chosen any: until then the picture has the colours of the page, by day and by night. */
export const hasColours = computed(() => isChosen(written.value));

/** What she has not chosen among them is usual. */
export const coloursNow = computed(() => clothColours(written.value));

/** What the page's style sheet calls the colours of its drawings; nothing where the plan chooses none. */
export const coloursIn = (plan: PlanSource): Readonly<Record<string, string>> | undefined => {
  const colours = writtenIn(plan);
  if (!isChosen(colours)) return undefined;
  const { fabric, middle, thread, seam, mark, template, words }: ClothColours = clothColours(colours);
  return {
    '--fabric': fabric,
    '--middle': middle,
    '--on-middle': words,
    '--thread': thread,
    '--echo': thread,
    '--fill': thread,
    '--seam': seam,
    '--mark': mark,
    '--ghost': template,
  };
};

export const coloursOfPicture = computed(() => coloursIn(state.value));
