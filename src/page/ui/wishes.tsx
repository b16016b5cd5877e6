/** What she would like: how wide, how deep, how much of the border, how many. Each answers at once, also while a slider is dragged. */

import { useSignal } from '@preact/signals';
import { useEffect, useId } from 'preact/hooks';
import { MM_PER_INCH, readLength, type Units } from '../../length/index.ts';
import { readRepeatsWish, readShareWish, readWishOf, type WishReading } from '../../plan/index.ts';
import { FIRST_WISHES } from '../plan/first-figures.ts';
import { exactly, shownLength } from '../plan/her-units.ts';
import { fieldName, plainWords } from '../plan/plain-words.ts';
import { keysAt, listAt, textAt } from '../plan/plan-text.ts';
import { meantAs, type WishKind, type WishParts, wishParts, wishWritten } from '../plan/wish-text.ts';
import { wishesWords } from '../words/words.ts';
import { Choice, Panel, unitsNow } from './fields.tsx';
import { roomOf } from './layouts.ts';
import { troubles } from './pairs.ts';
import { state, wishFor } from './store.ts';
import { cannotRead, canRead, unreadAt } from './unread.ts';

export const Wishes = () => {
  const room = roomOf(state.value);
  return (
    <Panel id="wishes" title={wishesWords.title} lead={wishesWords.lead}>
      <div class="wish-list">
        <WishField label={wishesWords.span} quantity={lengthQuantity('span')} />
        <WishField label={wishesWords.depth} quantity={lengthQuantity('depth')} />
        <WishField label={room.isBorder ? wishesWords.useOfBorder : wishesWords.useOfRoom} quantity={SHARE} />
        {room.hasSides ? <Repeats /> : null}
        <Gap />
      </div>
    </Panel>
  );
};

const HOW = ['any', 'about', 'exactly', 'least', 'most', 'between'] as const;

/** What a wish is about: how its figures are read and shown, and where a slider takes them. */
interface Quantity {
  readonly key: 'span' | 'depth' | 'use';
  readonly usual: { readonly first: string; readonly second: string };
  readonly read: (text: string) => WishReading<unknown>;
  readonly shown: (figure: string) => string;
  /** A slider's steps, from and to, and what a step is as a figure. */
  readonly steps: { readonly least: number; readonly most: number };
  readonly stepAt: (figure: string) => number | undefined;
  readonly figureAt: (step: number) => string;
  /** Said after a figure. */
  readonly unit: string;
}

/** mm to a slider's step. */
const STEP: Readonly<Record<Units, number>> = { in: MM_PER_INCH / 8, cm: 5, mm: 5 };
/** The most that a slider offers, mm: 24 in wide, and 12 in deep. What is more can be typed. */
const MOST = { span: 24 * MM_PER_INCH, depth: 12 * MM_PER_INCH } as const;

const lengthQuantity = (key: 'span' | 'depth'): Quantity => {
  const units = unitsNow();
  const step = STEP[units];
  return {
    key,
    usual: FIRST_WISHES[units][key],
    read: (text) => readWishOf(key, text, units),
    shown: (figure) => shownLength(figure, units).text,
    steps: { least: Math.ceil(MM_PER_INCH / 2 / step), most: Math.floor(MOST[key] / step) },
    stepAt: (figure) => {
      const length = readLength(figure, units);
      return length.ok ? length.mm / step : undefined;
    },
    figureAt: (at) => exactly(at * step, units) ?? `${at * step} mm`,
    unit: units,
  };
};

const SHARE_STEP = 5;
const SHARE: Quantity = {
  key: 'use',
  usual: FIRST_WISHES.in.use,
  read: readShareWish,
  shown: (figure) => figure.replace(/ ?(%|percent)$/, ''),
  steps: { least: 2, most: 100 / SHARE_STEP },
  stepAt: (figure) => {
    const share = readShareWish(figure);
    return share.ok && typeof share.wish === 'number' ? (100 * share.wish) / SHARE_STEP : undefined;
  },
  figureAt: (at) => `${at * SHARE_STEP} %`,
  unit: '%',
};

/** A figure of hers: a share is in percent, also where she leaves the sign out. */
const figureOf = ({ key }: Quantity, text: string): string =>
  key === 'use' && /^[\d.]+$/.test(text.trim()) ? `${text.trim()} %` : text.trim();

const WishField = ({ label, quantity }: { readonly label: string; readonly quantity: Quantity }) => {
  const id = useId();
  const typed = useSignal<readonly [string | undefined, string | undefined]>([undefined, undefined]);
  const path = ['swag', quantity.key];
  const key = path.join('.');
  useEffect(() => () => canRead(key), [key]);
  const parts = wishParts(textAt(state.value, path));
  const wrong = troubles.value.find((t) => t.key === key)?.text;
  const put = (next: WishParts, isDone: boolean, isMoving = false): boolean => {
    const text = wishWritten(next);
    const read = text === undefined ? undefined : quantity.read(text);
    if (read?.ok === false) {
      cannotRead(key, text ?? '', plainWords({ ...read, message: read.reason }, fieldName(key)), isDone);
      return false;
    }
    canRead(key);
    if (text !== wishWritten(parts)) wishFor(quantity.key, text, isMoving);
    return true;
  };
  const mean = (kind: WishKind): void => {
    typed.value = [undefined, undefined];
    put(meantAs(parts, kind, quantity.usual), true);
  };
  const type = (at: 0 | 1, text: string, isDone: boolean): void => {
    const figures = [typed.value[0] ?? parts.first, typed.value[1] ?? parts.second];
    figures[at] = text;
    typed.value = at === 0 ? [text, typed.value[1]] : [typed.value[0], text];
    const [first = '', second = ''] = figures.map((figure) => figureOf(quantity, figure));
    const isRead = put(isWhole(text) ? wishParts(text) : { ...parts, first, second }, isDone);
    if (isRead && isDone) typed.value = [undefined, undefined];
  };
  const Figure = ({ at, name }: { readonly at: 0 | 1; readonly name: string }) => (
    <input
      class="length"
      inputMode="text"
      autocomplete="off"
      spellcheck={false}
      size={6}
      aria-label={name}
      aria-invalid={wrong === undefined ? undefined : 'true'}
      aria-describedby={wrong === undefined ? undefined : `${id}-more`}
      value={typed.value[at] ?? quantity.shown(at === 0 ? parts.first : parts.second)}
      onInput={(event) => type(at, event.currentTarget.value, false)}
      onBlur={(event) => {
        if (typed.value[at] !== undefined) type(at, event.currentTarget.value, true);
      }}
    />
  );
  const { least, most } = quantity.steps;
  const step = quantity.stepAt(parts.first);
  return (
    <fieldset class="field wish">
      <legend>{label}</legend>
      <div class="wish-row">
        <select
          aria-label={wishesWords.howOf({ wish: label })}
          value={parts.kind}
          onChange={(event) => mean(event.currentTarget.value as WishKind)}
        >
          {HOW.map((kind) => (
            <option key={kind} value={kind} selected={kind === parts.kind}>
              {wishesWords.how[kind]}
            </option>
          ))}
        </select>
        {parts.kind === 'any'
          ? null
          : Figure({ at: 0, name: parts.kind === 'between' ? wishesWords.fromOf({ wish: label }) : label })}
        {parts.kind === 'between' ? <span>{wishesWords.and}</span> : null}
        {parts.kind === 'between' ? Figure({ at: 1, name: wishesWords.toOf({ wish: label }) }) : null}
        {parts.kind === 'any' ? null : <span class="unit">{quantity.unit}</span>}
      </div>
      {parts.kind === 'any' || parts.kind === 'between' ? null : (
        <input
          type="range"
          aria-label={wishesWords.sliderOf({ label })}
          aria-valuetext={wishesWords.atSlider({
            how: wishesWords.how[parts.kind],
            figure: quantity.shown(parts.first),
            unit: quantity.unit,
          })}
          min={least}
          max={most}
          step={1}
          value={Math.min(most, Math.max(least, Math.round(step ?? least)))}
          onInput={(event) => {
            typed.value = [undefined, undefined];
            put({ ...parts, first: quantity.figureAt(Number(event.currentTarget.value)) }, false, true);
          }}
        />
      )}
      {wrong === undefined ? null : (
        <p class="wrong" id={`${id}-more`}>
          {wrong}
        </p>
      )}
    </fieldset>
  );
};

const COUNTS = ['any', 'odd', 'even', 'exactly', 'about', 'least', 'most'] as const;

/** One wish for all sides. What a plan asks of each side by itself stays as it is until another is chosen. */
const Repeats = () => {
  const id = useId();
  const path = ['swag', 'repeats'];
  const key = 'swag.repeats';
  const typed = useSignal<string | undefined>(undefined);
  useEffect(() => () => canRead(key), []);
  const isBySide = keysAt(state.value, path).length > 0 || listAt(state.value, path).length > 1;
  const written = textAt(state.value, path);
  const parts = wishParts(written);
  const word = written === 'odd' || written === 'even' ? written : undefined;
  const kind = isBySide ? 'sides' : (word ?? parts.kind);
  const wrong = troubles.value.find((t) => t.key === key)?.text;
  const put = (text: string | undefined, isDone: boolean): void => {
    const read = text === undefined ? undefined : readRepeatsWish(text);
    if (read?.ok === false) {
      cannotRead(key, text ?? '', plainWords({ ...read, message: read.reason }, fieldName(key)), isDone);
      return;
    }
    canRead(key);
    if (text !== written || isBySide) wishFor('repeats', text);
  };
  const mean = (next: string): void => {
    typed.value = undefined;
    if (next === 'any' || next === 'odd' || next === 'even') put(next === 'any' ? undefined : next, true);
    else {
      const first = /^\d+$/.test(parts.first) ? parts.first : '8';
      put(wishWritten({ kind: next as WishKind, first, second: '' }), true);
    }
  };
  const isCounted = !isBySide && word === undefined && parts.kind !== 'any';
  return (
    <fieldset class="field wish">
      <legend>{wishesWords.repeats}</legend>
      <div class="wish-row">
        <select
          aria-label={wishesWords.howOf({ wish: wishesWords.repeats })}
          value={kind}
          onChange={(event) => mean(event.currentTarget.value)}
        >
          {[
            ...COUNTS,
            ...(parts.kind === 'between' ? (['between'] as const) : []),
            ...(isBySide ? (['sides'] as const) : []),
          ].map((value) => (
            <option key={value} value={value} selected={value === kind}>
              {wishesWords.counts[value]}
            </option>
          ))}
        </select>
        {isCounted ? (
          <input
            class="length"
            inputMode="numeric"
            autocomplete="off"
            size={6}
            aria-label={wishesWords.repeats}
            aria-invalid={wrong === undefined ? undefined : 'true'}
            aria-describedby={wrong === undefined ? undefined : `${id}-more`}
            value={
              typed.value ?? (parts.kind === 'between' ? `${parts.first} to ${parts.second}` : parts.first)
            }
            onInput={(event) => {
              typed.value = event.currentTarget.value;
              put(countWritten(parts.kind, event.currentTarget.value.trim()), false);
            }}
            onBlur={(event) => {
              if (typed.value !== undefined)
                put(countWritten(parts.kind, event.currentTarget.value.trim()), true);
              if (unreadAt(key) === undefined) typed.value = undefined;
            }}
          />
        ) : null}
      </div>
      {wrong === undefined ? null : (
        <p class="wrong" id={`${id}-more`}>
          {wrong}
        </p>
      )}
    </fieldset>
  );
};

/** What is typed as a whole wish is one, however the field was meant. */
const countWritten = (kind: WishKind, text: string): string | undefined =>
  kind === 'between' || isWhole(text) ? text : wishWritten({ kind, first: text, second: '' });

const isWhole = (text: string): boolean => wishParts(text).kind !== 'exactly';

const Gap = () => {
  const written = textAt(state.value, ['swag', 'gap']);
  const isTouching = written !== undefined && Number(written) === 0;
  const value = written === undefined ? 'any' : isTouching ? '0' : written;
  const options: readonly (readonly [string, string])[] = [
    ['any', wishesWords.gaps.any],
    ['0', wishesWords.gaps.touching],
    ['auto', wishesWords.gaps.near],
  ];
  const isOther = !options.some(([known]) => known === value);
  return (
    <Choice
      label={wishesWords.gap}
      class="wish"
      value={value}
      options={isOther ? [...options, [value, wishesWords.apart({ gap: value })]] : options}
      onChoose={(next) => wishFor('gap', next === 'any' ? undefined : next)}
    />
  );
};
