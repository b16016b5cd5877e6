/** Templates chosen by their pictures, and what fits with them as small drawings. */

import type { ComponentType } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { ShelfCard } from '../engine/messages.ts';
import { keysAt, listAt, textAt } from '../plan/plan-text.ts';
import { fitsWords, templatesWords } from '../words/words.ts';
import { explained } from './explained.tsx';
import { Panel, Troubles } from './fields.tsx';
import { FileButton, openPoints, saveShelf } from './files.tsx';
import { keptPictures } from './kept-pictures.ts';
import { parts, wantPart } from './later.tsx';
import { troubles } from './pairs.ts';
import { Drawn } from './picture.tsx';
import { Said } from './said.tsx';
import { edit, fitCards, isOld, look, SOME_FITS, shelf, shown, state, take, wantedFits } from './store.ts';
import { unbroken } from './unbroken.ts';

export const Templates = () => {
  const chosen = listAt(state.value, ['template']);
  const toggle = (name: string, isOn: boolean): void => {
    const next = isOn ? [...chosen, name] : chosen.filter((n) => n !== name);
    if (next.length === 0) return;
    edit([[['template'], next.length === 1 ? next[0]! : next]]);
  };
  const { Own, InWork } = parts.value.trace ?? {};
  const isHers = state.value.own.length + keptPictures.value.length > 0;
  useEffect(() => {
    // Without it the shelf can be used, and nothing on it changed.
    if (isHers) void wantPart('trace').catch(() => {});
  }, [isHers]);
  return (
    <Panel
      id="templates"
      title={templatesWords.title}
      lead={templatesWords.lead}
      aside={
        <div class="steps">
          <FileButton label={templatesWords.add} />
          <FileButton label={templatesWords.photograph} camera />
          <button type="button" onClick={() => void openPoints()}>
            {templatesWords.points}
          </button>
        </div>
      }
    >
      <ul class="shelf">
        {shelf.value.map((card) => (
          <Template
            key={card.name}
            {...{ card, Own }}
            isOn={chosen.includes(card.name)}
            isLast={chosen.length === 1 && chosen.includes(card.name)}
            onToggle={(isOn) => toggle(card.name, isOn)}
          />
        ))}
      </ul>
      <Said at="shelf" />
      {InWork ? <InWork /> : null}
      {state.value.own.length > 0 ? (
        <p>
          <button type="button" onClick={saveShelf}>
            {templatesWords.saveAll}
          </button>
        </p>
      ) : null}
    </Panel>
  );
};

const Template = ({
  card,
  Own,
  isOn,
  isLast,
  onToggle,
}: {
  readonly card: ShelfCard;
  /** What can be done with one of hers. */
  readonly Own: ComponentType<{ readonly name: string; readonly title: string }> | undefined;
  readonly isOn: boolean;
  readonly isLast: boolean;
  readonly onToggle: (isOn: boolean) => void;
}) => (
  <li>
    <label class="template">
      <input
        type="checkbox"
        checked={isOn}
        disabled={isLast || card.picture === undefined}
        onChange={(event) => onToggle(event.currentTarget.checked)}
      />
      <span class="name">{card.title}</span>
      {card.picture ? <Drawn picture={card.picture} /> : null}
      <span class="about">{card.about}</span>
    </label>
    {card.problems.length > 0 ? <Troubles list={card.problems} /> : null}
    {Own ? <Own name={card.name} title={card.title} /> : null}
  </li>
);

/** Whether something is asked of the swags that ranks them. */
const asksAbout = (): boolean =>
  ['span', 'depth', 'use', 'repeats', 'gap'].some((key) =>
    textAt(state.value, ['swag', key])?.startsWith('about '),
  );

export const Fits = () => {
  const answer = look.value;
  const found = answer?.found ?? 0;
  const now = shown.value?.key;
  const decides = keysAt(state.value, ['swag']).length > 0;
  const cards = fitCards.value;
  const best = fitsWords.best[shown.value?.round ?? 'quilt'];
  const isStale = answer !== undefined && isOld.value;
  const isNone = troubles.value.some(({ code }) => code === 'nothing-fits');
  const likely = now === undefined ? undefined : cards.find((card) => card.like.includes(now));
  const chosenIsShown = cards.some((card) => card.key === now);
  const different = cards[0]?.of ?? 0;
  const list = useRef<HTMLFieldSetElement>(null);
  const before = useRef(0);
  // What was asked for is brought into view: the list scrolls by itself, and new cards lie below its end.
  useEffect(() => {
    if (before.current > 0 && cards.length > before.current) {
      list.current?.querySelectorAll('.fit')[before.current]?.scrollIntoView({ block: 'nearest' });
      before.current = 0;
    }
  }, [cards.length]);
  return (
    <Panel
      id="fits"
      title={fitsWords.title}
      lead={
        answer === undefined
          ? fitsWords.workingOut
          : isStale
            ? isNone
              ? fitsWords.none
              : fitsWords.before
            : fitsWords.ways({ count: found, best: asksAbout() ? fitsWords.nearest({ best }) : best })
      }
      aside={
        decides ? (
          <button type="button" onClick={() => edit([[['swag'], undefined]])}>
            {fitsWords.showAll}
          </button>
        ) : null
      }
    >
      <p class="hint">{explained(fitsWords.captions)}</p>
      <fieldset ref={list} class={`fit-list${isStale ? ' stale' : ''}`} tabIndex={isStale ? 0 : undefined}>
        <legend class="unseen">{fitsWords.choose}</legend>
        {cards.map((card) => (
          <label key={card.key} class="fit">
            <input
              type="radio"
              name="fit"
              checked={card.key === now}
              disabled={isStale}
              onChange={() => take(card.key)}
              aria-label={fitsWords.card(card)}
            />
            <Drawn picture={card.picture} />
            <span class="caption">
              <strong>
                {card.number} · {unbroken(card.caption[0] ?? '')}
              </strong>
              {card.caption.slice(1).map((line) => (
                <span key={line}>{unbroken(line)}</span>
              ))}
            </span>
          </label>
        ))}
      </fieldset>
      {chosenIsShown || !shown.value || cards.length === 0 ? null : (
        <p class="hint">{likely ? fitsWords.looksLike(likely) : fitsWords.furtherDown}</p>
      )}
      {different > cards.length ? (
        <p class="more">
          <button
            type="button"
            onClick={() => {
              before.current = cards.length;
              wantedFits.value += SOME_FITS;
            }}
          >
            {fitsWords.more({ count: Math.min(SOME_FITS, different - cards.length) })}
          </button>{' '}
          <span class="hint" role="status">
            {fitsWords.shown({ count: cards.length, all: different })}
          </span>
        </p>
      ) : null}
    </Panel>
  );
};
