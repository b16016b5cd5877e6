/** Channels and fills, switched on and off. */

import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { NO_START } from '../engine/client.ts';
import type { PlanFacts } from '../engine/messages.ts';
import { readWidths, SEVERAL } from '../plan/channel-widths.ts';
import { USUAL_WIDTH } from '../plan/first-figures.ts';
import { shownLength } from '../plan/her-units.ts';
import { fillKind, listAt, textAt, type Written } from '../plan/plan-text.ts';
import { quiltingWords } from '../words/words.ts';
import { Choice, Panel, unitsNow } from './fields.tsx';
import { Later, wantPart } from './later.tsx';
import { troubles } from './pairs.ts';
import { complain, edit, fillList, fills, look, shown, state, wantFills } from './store.ts';
import { unbroken } from './unbroken.ts';
import { cannotRead, canRead, unreadAt } from './unread.ts';

export const Quilting = () => (
  <Panel id="quilting" title={quiltingWords.title} lead={quiltingWords.lead}>
    <div class="field-row">
      <Channels side="outward" label={quiltingWords.outside} />
      <Channels side="inward" label={quiltingWords.inside} />
      {textAt(state.value, ['channels', 'points']) !== undefined ||
      (look.value?.facts?.outward.length ?? 0) + (look.value?.facts?.inward.length ?? 0) > 0 ? (
        <Choice
          label={quiltingWords.points.label}
          value={textAt(state.value, ['channels', 'points']) ?? 'round'}
          options={[
            ['round', quiltingWords.points.round],
            ['pivot', quiltingWords.points.pivot],
          ]}
          onChoose={(value) => edit([[['channels', 'points'], value]])}
        />
      ) : null}
    </div>
    <Fills />
  </Panel>
);

/** Switched on they come back as they were. */
const Channels = ({ side, label }: { readonly side: 'outward' | 'inward'; readonly label: string }) => {
  const id = useId();
  const path = ['channels', side] as const;
  const written = listAt(state.value, path);
  const before = useSignal<readonly string[]>([]);
  const typed = useSignal<string | undefined>(undefined);
  const key = `channels.${side}`;
  const unread = unreadAt(key);
  useEffect(() => () => canRead(key), [key]);
  const fault = troubles.value.find((t) => t.key === key)?.text;
  const isOn = written.length > 0;
  const lines = look.value?.facts?.[side === 'outward' ? 'outwardAt' : 'inwardAt'] ?? [];
  const put = (text: string, isDone: boolean): void => {
    const read = readWidths(text, unitsNow());
    if (!read.ok) {
      typed.value = undefined;
      cannotRead(key, text, read.fault, isDone);
      return;
    }
    typed.value = text;
    canRead(key);
    if (read.widths.join() !== written.join()) edit([[path, read.widths.map(asWritten)]], key);
  };
  return (
    <div class="field switch">
      <label>
        <input
          type="checkbox"
          checked={isOn}
          onChange={(event) => {
            if (event.currentTarget.checked) {
              const widths = before.value.length > 0 ? before.value : [USUAL_WIDTH[unitsNow()]];
              edit([[path, widths.map(asWritten)]]);
            } else {
              before.value = written;
              canRead(key);
              edit([[path, undefined]]);
            }
          }}
        />{' '}
        {label}
      </label>
      {isOn ? (
        <>
          <label for={id} class="small">
            {quiltingWords.widths}
          </label>
          <input
            id={id}
            class="length"
            autocomplete="off"
            spellcheck={false}
            size={12}
            value={
              unread?.text ?? typed.value ?? written.map((w) => shownLength(w, unitsNow()).text).join(', ')
            }
            aria-invalid={fault === undefined ? undefined : 'true'}
            aria-describedby={`${id}-more`}
            onInput={(event) => put(event.currentTarget.value, false)}
            onBlur={(event) => {
              if (typed.value !== undefined || unread !== undefined) put(event.currentTarget.value, true);
              typed.value = undefined;
            }}
          />
          <p class={fault === undefined ? 'hint' : 'wrong'} id={`${id}-more`}>
            {unbroken(fault ?? quiltingWords.lines({ lines, several: SEVERAL[unitsNow()] }))}
          </p>
        </>
      ) : null}
    </div>
  );
};

const asWritten = (text: string): string | number => (/^\d+(\.\d+)?$/.test(text) ? Number(text) : text);

const Fills = () => {
  // While the plan cannot be read, what was known of it stays: nothing folds up under her hand.
  const known = useRef<PlanFacts | undefined>(undefined);
  known.current = look.value?.facts ?? known.current;
  const facts = known.current;
  const bands = (facts?.outward.length ?? 0) + (facts?.inward.length ?? 0);
  return (
    <details
      open={facts?.hasFills ?? false}
      onToggle={(event) => {
        if (!event.currentTarget.open) return;
        wantFills();
        void wantPart('fills').catch(() => complain(NO_START.text));
      }}
    >
      <summary>{quiltingWords.fills}</summary>
      <div class="field-row">
        <FillChoice label={quiltingWords.inSwags} at="swag" suits="area" />
        <FillChoice label={quiltingWords.roundSwags} at="background" suits="area" />
        {shown.value?.corner ? (
          <FillChoice
            label={quiltingWords.inCorners}
            at="corner"
            suits="area"
            none={quiltingWords.asInSwags}
          />
        ) : shown.value?.hasSquares ? (
          <FillChoice label={quiltingWords.inSquares} at="corner" suits="area" />
        ) : null}
        {bands > 0 ? <BandChoice bands={bands} /> : null}
      </div>
      <Later name="fills" />
      {fills.value?.messages.map((message) => (
        <p key={message} class="hint">
          {message}
        </p>
      ))}
      {fills.value?.problems.map(({ text }) => (
        <p key={text} class="wrong">
          {text}
        </p>
      ))}
    </details>
  );
};

/** A fill's name, whether it stands alone or with its figures. */
const kindAt = (path: readonly (string | number)[]): string => fillKind(state.value, path) ?? '';

const optionsFor = (
  suits: 'area' | 'band',
  now: string,
  none: string,
): readonly (readonly [string, string])[] => {
  const names = fillList.value.filter((f) => f.suits === suits).map((f) => f.name);
  const known = now === '' || names.includes(now) ? names : [now, ...names];
  return [['', none], ...known.map((name) => [name, name] as const)];
};

const FillChoice = ({
  label,
  at,
  suits,
  none = quiltingWords.none,
}: {
  readonly label: string;
  readonly at: string;
  readonly suits: 'area' | 'band';
  readonly none?: string;
}) => {
  const now = kindAt(['fills', at]);
  return (
    <Choice
      label={label}
      value={now}
      options={optionsFor(suits, now, none)}
      onFocus={wantFills}
      onChoose={(name) => edit([[['fills', at], name === '' ? undefined : name]])}
    />
  );
};

/** One fill for all channels: one for each is a thing for the plan's text. */
const BandChoice = ({ bands }: { readonly bands: number }) => {
  const now = kindAt(['fills', 'channels', 0]) || (listAt(state.value, ['fills', 'channels'])[0] ?? '');
  return (
    <Choice
      label={quiltingWords.inChannels}
      value={now}
      options={optionsFor('band', now, quiltingWords.none)}
      onFocus={wantFills}
      onChoose={(name) => {
        const list: Written = name === '' ? undefined : Array.from({ length: bands }, () => name);
        edit([[['fills', 'channels'], list]]);
      }}
    />
  );
};
