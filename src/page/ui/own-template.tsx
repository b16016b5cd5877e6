/** What can be done with a template of her own on the shelf. */

import type { ShelfCard } from '../engine/messages.ts';
import { renamed } from '../plan/own-template.ts';
import { textAt } from '../plan/plan-text.ts';
import { freeTitle, otherwiseCalled, withoutOwn } from '../plan/shelf.ts';
import { handWords, ownWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { NameField } from './fields.tsx';
import { pictureOf } from './kept-pictures.ts';
import { duplicate, openKept } from './own-pictures.ts';
import { goOnWithPoints } from './pointing.ts';
import { changeState, otherTitles, say, state } from './store.ts';

export const OwnTemplate = ({ name, title }: Pick<ShelfCard, 'name' | 'title'>) => {
  const file = state.value.own.find((t) => t.name === name);
  if (!file) return null;
  const picture = pictureOf(name);
  const called = textAt(file.text, ['title']);
  return (
    <div class="own">
      {picture?.typed !== undefined ? (
        <button
          type="button"
          aria-label={ownWords.setPointsOf({ title })}
          onClick={() => goOnWithPoints(picture.typed ?? '', name, called ?? title)}
        >
          {ownWords.setPoints}
        </button>
      ) : picture ? (
        <button
          type="button"
          aria-label={ownWords.setPictureOf({ title })}
          onClick={() => void openKept(picture.key, called)}
        >
          {ownWords.setPicture}
        </button>
      ) : null}
      <details>
        <summary>{ownWords.more({ title })}</summary>
        <NameField
          label={handWords.called}
          value={called ?? title}
          onType={(next) => {
            if (next === '') return;
            const free = freeTitle(otherTitles(name), next);
            changeState(renamed(state.value, name, free), `title of ${name}`);
            if (free !== next) say(otherwiseCalled(next, free));
          }}
        />
        <div class="steps">
          <button type="button" onClick={() => saveAs(name.replace(/^\.\//, ''), 'text/yaml', file.text)}>
            {handWords.saveFile}
          </button>
          <button type="button" onClick={() => void duplicate(file)}>
            {ownWords.duplicate}
          </button>
          <button
            type="button"
            onClick={() => {
              changeState(withoutOwn(state.value, name));
              say(ownWords.removed({ title }), 'shelf');
            }}
          >
            {ownWords.remove}
          </button>
        </div>
      </details>
    </div>
  );
};
