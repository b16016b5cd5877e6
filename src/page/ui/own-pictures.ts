/** Her templates and the pictures that they came from: gone on with, and made once more. */

import type { OwnTemplate } from '../engine/messages.ts';
import { doubled } from '../plan/own-template.ts';
import { ownWords, workWords } from '../words/words.ts';
import { takenNames } from './files.tsx';
import { keepTyped, pictureOf } from './kept-pictures.ts';
import { addOwn, complain, during, notice, otherTitles } from './store.ts';
import { copyKept, goOnWith } from './tracing.ts';

/** Goes on with a picture that this browser keeps. `title` is what its template is called by now. */
export const openKept = async (key: string, title?: string): Promise<void> => {
  notice.value = undefined;
  await during(workWords.picture, goOnWith(key, title)).catch(() => complain(ownWords.noPicture));
};

/** A template once more, with a picture of its own where it has one. */
export const duplicate = async (file: OwnTemplate): Promise<void> => {
  const copy = doubled(file, takenNames(), otherTitles());
  const picture = pictureOf(file.name);
  // Before it is on the shelf, as in `takeTemplate`. Where the browser has it no longer, the copy has none either.
  if (picture?.typed !== undefined) keepTyped(picture.typed, copy.name);
  else if (picture) await copyKept(picture.key, copy.name).catch(() => {});
  addOwn(copy);
};
