/** The colours of fabric and thread that her plan says, read where she picks them: the picture follows at once. */

import { computed } from '@preact/signals';
import { type ClothColours, clothColours } from '../../drawing/index.ts';
import { type Colours, colourFrom } from '../../plan/index.ts';
import { textAt } from '../plan/plan-text.ts';
import { state } from './store.ts';

export const COLOURED = ['fabric', 'middle', 'thread'] as const satisfies readonly (keyof Colours)[];

const written = computed(
  (): Colours =>
    Object.fromEntries(
      COLOURED.map((part) => [part, colourFrom(textAt(state.value, ['colours', part]) ?? '')] as const),
    ),
);

/** Whether she has chosen any: until then the picture has the colours of the page, by day and by night. */
export const hasColours = computed(() => COLOURED.some((part) => written.value[part] !== undefined));

/** What she has not chosen among them is usual. */
export const coloursNow = computed(() => clothColours(written.value));

/** What the page's style sheet calls the colours of its drawings; nothing where she has chosen none. */
export const coloursOfPicture = computed((): Readonly<Record<string, string>> | undefined => {
  if (!hasColours.value) return undefined;
  const { fabric, middle, thread, seam, mark, template, words }: ClothColours = coloursNow.value;
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
});
