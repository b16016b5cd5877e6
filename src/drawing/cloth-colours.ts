/** The colours of a quilt in its picture: those that she chose, and with them those of all that is no cloth and no thread. */

import type { Colours } from '../plan/index.ts';
import { contrast, LEAST_CONTRAST, standingOut } from './contrast.ts';

/** `#rrggbb` each. */
export interface ClothColours {
  readonly fabric: string;
  readonly middle: string;
  readonly thread: string;
  /** Seams, and where the cloth is kept clear. */
  readonly seam: string;
  /** What is drawn on the cloth, and its names. */
  readonly mark: string;
  readonly template: string;
  /** Words on the middle: 4.5 to 1 at least (WCAG 2.2, 1.4.3). */
  readonly words: string;
}

/** Unbleached cloth and blue thread. */
const USUAL_COLOURS = { fabric: '#efe6d6', middle: '#faf6ee', thread: '#1b2a41' } as const;

/** For light cloth and for dark. */
const LINES = {
  seam: ['#6b6f76', '#a8acb4'],
  mark: ['#2c6e6a', '#79e0b0'],
  template: ['#8a6420', '#dfb562'],
} as const;

/** What she does not say of her colours is usual; a middle that she does not say is as her fabric. No line vanishes on any cloth. */
export const clothColours = ({ fabric, middle, thread }: Colours): ClothColours => {
  const cloth = {
    fabric: fabric ?? USUAL_COLOURS.fabric,
    middle: middle ?? fabric ?? USUAL_COLOURS.middle,
    thread: thread ?? USUAL_COLOURS.thread,
  };
  const on = [cloth.fabric, cloth.middle];
  return {
    ...cloth,
    seam: standingOut(LINES.seam, on),
    mark: standingOut(LINES.mark, on),
    template: standingOut(LINES.template, on),
    words: standingOut(['#000000', '#ffffff'], [cloth.middle]),
  };
};

/** What a person should know of her colours, a sentence each; `onMiddle` where the middle is quilted too. */
export const colourDoubts = (colours: ClothColours, onMiddle: boolean): readonly string[] =>
  (onMiddle ? (['fabric', 'middle'] as const) : (['fabric'] as const)).flatMap((cloth) => {
    const ratio = contrast(colours[cloth], colours.thread);
    if (ratio >= LEAST_CONTRAST) return [];
    // Rounded down, so that what is too little never reads as enough.
    const said = (Math.floor(ratio * 10) / 10).toFixed(1);
    return [
      `the thread can hardly be told from the ${cloth} in the picture: their contrast is ${said} to 1, and lines are easy to see from ${LEAST_CONTRAST} to 1 (WCAG 2.2, 1.4.11)`,
    ];
  });
