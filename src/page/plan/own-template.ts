/** What is done with one template on her shelf: called otherwise, made once more. */

import type { OwnTemplate } from '../engine/messages.ts';
import { ownWords } from '../words/words.ts';
import { textAt } from './plan-text.ts';
import { entitled, freeName, freeTitle } from './shelf.ts';
import type { State } from './state.ts';

/** What a template is called is written in it; its file keeps its name, by which plans know it. */
export const renamed = (state: State, name: string, title: string): State => ({
  ...state,
  own: state.own.map((t) => (t.name === name ? { name, text: entitled(t.text, title) } : t)),
});

/** The same template once more, under a name that none of `taken` has, and a title that is none of `titles`. */
export const doubled = (
  { name, text }: OwnTemplate,
  taken: readonly Pick<OwnTemplate, 'name'>[],
  titles: readonly string[],
): OwnTemplate => {
  const title = textAt(text, ['title']) ?? ownWords.noTitle;
  return { name: freeName(taken, name), text: entitled(text, freeTitle(titles, ownWords.copy({ title }))) };
};
