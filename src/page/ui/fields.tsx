/** Fields for what a plan says: lengths as people say them, words to choose from. */

import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useId } from 'preact/hooks';
import { type AllowedSign, readLength, type Units } from '../../length/index.ts';
import { shownLength } from '../plan/her-units.ts';
import { fieldName, plainWords } from '../plan/plain-words.ts';
import { type KeyPath, textAt, type Written } from '../plan/plan-text.ts';
import { fieldsWords } from '../words/words.ts';
import { explained } from './explained.tsx';
import { concerns, pairHint, troubles } from './pairs.ts';
import { edit, state } from './store.ts';
import { unbroken } from './unbroken.ts';
import { cannotRead, canRead, unreadAt } from './unread.ts';

/** A key as problems name it. */
export const keyName = (path: KeyPath): string =>
  path.map((step) => (typeof step === 'number' ? step + 1 : step)).join('.');

export const unitsNow = (): Units => (textAt(state.value, ['units']) as Units | undefined) ?? 'in';

interface InputProps {
  readonly label: string;
  readonly value: string;
  readonly class?: string | undefined;
  readonly inputMode?: 'text' | 'numeric';
  readonly placeholder?: string | undefined;
  readonly isWrong?: boolean;
  /** What is said below it: of what is wrong, or else as a hint. */
  readonly more?: string | undefined;
  readonly onType: (text: string) => void;
  readonly onLeave?: (text: string) => void;
}

/** A short figure with its label. */
export const InputField = ({
  label,
  value,
  class: name = '',
  inputMode = 'text',
  placeholder,
  isWrong = false,
  more,
  onType,
  onLeave,
}: InputProps) => {
  const id = useId();
  return (
    <div class={`field ${name}`}>
      <label for={id}>{label}</label>
      <input
        id={id}
        class="length"
        inputMode={inputMode}
        autocomplete="off"
        spellcheck={false}
        size={8}
        placeholder={placeholder}
        value={value}
        aria-invalid={isWrong ? 'true' : undefined}
        aria-describedby={more === undefined ? undefined : `${id}-more`}
        onInput={(event) => onType(event.currentTarget.value)}
        onBlur={(event) => onLeave?.(event.currentTarget.value)}
      />
      {more === undefined ? null : (
        <p class={isWrong ? 'wrong' : 'hint'} id={`${id}-more`}>
          {unbroken(more)}
        </p>
      )}
    </div>
  );
};

interface LengthProps {
  readonly label: string;
  readonly path: KeyPath;
  readonly hint?: string;
  readonly class?: string;
  /** What the plan means where the key is not written. */
  readonly usual?: string;
  readonly optional?: boolean;
  /** A length may lie to the other side, too. */
  readonly sign?: AllowedSign;
  /** Where a figure is written as part of something: what stands there, and what is changed. */
  readonly part?: {
    readonly written: string;
    readonly change: (text: string) => readonly [KeyPath, Written];
  };
  /** What an empty field says in its place, and what is said of one that must not be empty. */
  readonly placeholder?: string;
  readonly whenEmpty?: string;
  readonly onType?: () => void;
  readonly onLeave?: () => void;
}

/**
 * A length in the plan. Every state of the text that is a length goes into the plan at once, so that the picture
 * follows; what is none yet stays in the field, and is told when the field is left.
 */
export const LengthField = ({
  label,
  path,
  hint,
  class: name,
  usual,
  optional,
  sign,
  part,
  placeholder,
  whenEmpty,
  onType,
  onLeave,
}: LengthProps) => {
  const typed = useSignal<string | undefined>(undefined);
  const key = keyName(path);
  const unread = unreadAt(key);
  useEffect(() => () => canRead(key), [key]);
  const written = part?.written ?? textAt(state.value, path) ?? usual ?? '';
  const wrong = troubles.value.find((p) => concerns(p, key))?.text;
  const { text: shownText, exact } = shownLength(written, unitsNow());
  const more =
    wrong ?? pairHint(key) ?? (exact === undefined ? hint : fieldsWords.exactly({ length: exact }));
  const put = (text: string, isDone: boolean): void => {
    if (text.trim() === '' && optional) {
      typed.value = text;
      canRead(key);
      if (written !== '') edit([[path, undefined]], key);
      return;
    }
    const read = readLength(text, unitsNow(), sign);
    if (read.ok) {
      typed.value = text;
      canRead(key);
      if (text.trim() !== written) edit([part ? part.change(text) : [path, text]], key);
      return;
    }
    typed.value = undefined;
    const words =
      (text.trim() === '' ? whenEmpty : undefined) ??
      plainWords({ ...read, message: read.reason }, fieldName(key) ?? label.toLowerCase());
    cannotRead(key, text, words, isDone);
  };
  return (
    <InputField
      label={label}
      class={name}
      placeholder={placeholder}
      value={unread?.text ?? typed.value ?? shownText}
      isWrong={wrong !== undefined}
      more={more}
      onType={(text) => {
        onType?.();
        put(text, false);
      }}
      onLeave={(text) => {
        onLeave?.();
        // What is only shown is rounded: what was not typed over stays as it is in the plan.
        if (typed.value === undefined && unread === undefined && written !== '') return;
        put(text, true);
        typed.value = undefined;
      }}
    />
  );
};

interface NameProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly id?: string;
  /** Whether the label is for screen readers alone. */
  readonly isUnseen?: boolean;
  readonly class?: string;
  /** Characters at most. */
  readonly most?: number;
  readonly onType: (name: string) => void;
}

/** What something is called. While she types the field holds what she typed, blanks at its end too; a name has none. */
export const NameField = ({
  label,
  value,
  placeholder,
  id: own,
  isUnseen = false,
  class: name,
  most = 80,
  onType,
}: NameProps) => {
  const made = useId();
  const id = own ?? made;
  const typed = useSignal<string | undefined>(undefined);
  return (
    <div class={`field ${name ?? ''}`}>
      <label for={id} class={isUnseen ? 'unseen' : undefined}>
        {label}
      </label>
      <input
        id={id}
        autocomplete="off"
        maxLength={most}
        placeholder={placeholder}
        value={typed.value ?? value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          onType(typed.value.trim());
        }}
        onBlur={() => {
          typed.value = undefined;
        }}
      />
    </div>
  );
};

/** How many: a whole number, or as many as fit best where it is empty. */
export const CountField = ({ label, path }: { readonly label: string; readonly path: KeyPath }) => {
  const typed = useSignal<string | undefined>(undefined);
  const stands = textAt(state.value, path) ?? '';
  const written = stands === 'auto' ? '' : stands;
  const key = keyName(path);
  const unread = unreadAt(key);
  useEffect(() => () => canRead(key), [key]);
  const wrong = troubles.value.find((p) => p.key === key)?.text;
  const put = (text: string, isDone: boolean): void => {
    if (text !== '' && !/^\d{1,4}$/.test(text)) {
      typed.value = undefined;
      cannotRead(key, text, fieldsWords.wholeNumber, isDone);
      return;
    }
    typed.value = text;
    canRead(key);
    if (text !== written) edit([[path, text === '' ? undefined : Number(text)]], key);
  };
  return (
    <InputField
      label={label}
      inputMode="numeric"
      placeholder={fieldsWords.asFits}
      value={unread?.text ?? typed.value ?? written}
      isWrong={wrong !== undefined}
      more={wrong}
      onType={(text) => put(text.trim(), false)}
      onLeave={(text) => {
        if (unread !== undefined) put(text.trim(), true);
        typed.value = undefined;
      }}
    />
  );
};

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChoose: (value: string) => void;
  readonly class?: string;
  readonly onFocus?: () => void;
}

export const Choice = ({ label, value, options, onChoose, class: name, onFocus }: ChoiceProps) => {
  const id = useId();
  return (
    <div class={`field ${name ?? ''}`}>
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        onFocus={onFocus}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {options.map(([key, words]) => (
          <option key={key} value={key} selected={key === value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
};

/** A choice that stands at a key of the plan; the first option leaves the key out. */
export const PlanChoice = ({
  label,
  path,
  options,
}: {
  readonly label: string;
  readonly path: KeyPath;
  readonly options: readonly (readonly [string, string])[];
}) => (
  <Choice
    label={label}
    value={textAt(state.value, path) ?? options[0]![0]}
    options={options}
    onChoose={(value) => edit([[path, value === options[0]![0] ? undefined : value]])}
  />
);

export const Panel = ({
  id,
  title,
  lead,
  children,
  aside,
}: {
  readonly id: string;
  readonly title: string;
  readonly lead?: string;
  readonly children: ComponentChildren;
  readonly aside?: ComponentChildren;
}) => (
  <section class={`panel ${id}`} id={id} aria-labelledby={`${id}-title`}>
    <div class="panel-head">
      <h2 id={`${id}-title`}>{title}</h2>
      {aside}
    </div>
    {lead === undefined ? null : <p class="lead">{explained(lead)}</p>}
    {children}
  </section>
);

export const Troubles = ({
  list,
  most = MOST_TOLD,
}: {
  readonly list: readonly { text: string; where: string | undefined }[];
  readonly most?: number;
}) => (
  <ul class="troubles">
    {list.slice(0, most).map((t) => (
      <li key={t.where + t.text}>
        {t.where === undefined ? '' : `${t.where}: `}
        {t.text}
      </li>
    ))}
    {list.length > most ? <li>{fieldsWords.moreTroubles({ count: list.length - most })}</li> : null}
  </ul>
);

/** The first few say what is wrong; a file of another kind would fill the screen. */
const MOST_TOLD = 6;

/** A box to tick, for what the page alone remembers. */
export const Tick = ({ label, of }: { readonly label: string; readonly of: { value: boolean } }) => (
  <label class="with-marks">
    <input
      type="checkbox"
      checked={of.value}
      onChange={(event) => {
        of.value = event.currentTarget.checked;
      }}
    />{' '}
    {label}
  </label>
);
