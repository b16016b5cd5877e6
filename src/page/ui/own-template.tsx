/** What can be done with a template of her own on the shelf. */

import type { ShelfCard } from '../engine/messages.ts';
import { renamed } from '../plan/own-template.ts';
import { textAt } from '../plan/plan-text.ts';
import { freeTitle, otherwiseCalled, withoutOwn } from '../plan/shelf.ts';
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
          aria-label={`Set its points right: ${title}`}
          onClick={() => goOnWithPoints(picture.typed ?? '', name, called ?? title)}
        >
          Set its points right
        </button>
      ) : picture ? (
        <button
          type="button"
          aria-label={`Set it right over its picture: ${title}`}
          onClick={() => void openKept(picture.key, called)}
        >
          Set it right over its picture
        </button>
      ) : null}
      <details>
        <summary>Rename, save or remove {title}</summary>
        <NameField
          label="What it is called"
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
            Save its file
          </button>
          <button type="button" onClick={() => void duplicate(file)}>
            Duplicate
          </button>
          <button
            type="button"
            onClick={() => {
              changeState(withoutOwn(state.value, name));
              say(`The template “${title}” is off the shelf. Undo brings it back.`, 'shelf');
            }}
          >
            Remove
          </button>
        </div>
      </details>
    </div>
  );
};
