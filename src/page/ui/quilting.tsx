/** Channels and fills, switched on and off. */

import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { series } from '../../document/index.ts';
import { NO_START } from '../engine/client.ts';
import type { PlanFacts } from '../engine/messages.ts';
import { readWidths, SEVERAL } from '../plan/channel-widths.ts';
import { USUAL_WIDTH } from '../plan/first-figures.ts';
import { shownLength } from '../plan/her-units.ts';
import { fillKind, listAt, textAt, type Written } from '../plan/plan-text.ts';
import { Choice, Panel, unitsNow } from './fields.tsx';
import { Later, wantPart } from './later.tsx';
import { troubles } from './pairs.ts';
import { complain, edit, fillList, fills, look, shown, state, wantFills } from './store.ts';
import { unbroken } from './unbroken.ts';
import { cannotRead, canRead, unreadAt } from './unread.ts';

export const Quilting = () => (
  <Panel
    id="quilting"
    title="Channels and fills"
    lead="Echo lines beside the swags, and what is quilted into the shapes."
  >
    <div class="field-row">
      <Channels side="outward" label="Channels outside" />
      <Channels side="inward" label="Channels inside" />
      {textAt(state.value, ['channels', 'points']) !== undefined ||
      (look.value?.facts?.outward.length ?? 0) + (look.value?.facts?.inward.length ?? 0) > 0 ? (
        <Choice
          label="At a point they"
          value={textAt(state.value, ['channels', 'points']) ?? 'round'}
          options={[
            ['round', 'roll round it'],
            ['pivot', 'stay a point'],
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
            Widths: each from the line before
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
            {unbroken(
              fault ??
                `${lines.length > 0 ? linesWords(lines) : 'Counted from the stitching'}. Several: ${SEVERAL[unitsNow()]}`,
            )}
          </p>
        </>
      ) : null}
    </div>
  );
};

/** Where the lines lie: `Lines 1/4 in and 3/4 in from the stitching`. */
const linesWords = (lines: readonly string[]): string =>
  lines.length === 1
    ? `One line, ${lines[0]} from the stitching`
    : `Lines ${series(lines)} from the stitching`;

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
      <summary>Fills: feathers, pebbles, stippling …</summary>
      <div class="field-row">
        <FillChoice label="Inside the swags" at="swag" suits="area" />
        <FillChoice label="Round the swags" at="background" suits="area" />
        {shown.value?.corner ? (
          <FillChoice label="In the corners" at="corner" suits="area" none="as in the swags" />
        ) : shown.value?.hasSquares ? (
          <FillChoice label="In the corner squares" at="corner" suits="area" />
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
  none = 'nothing',
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
      label="In the channels"
      value={now}
      options={optionsFor('band', now, 'nothing')}
      onFocus={wantFills}
      onChoose={(name) => {
        const list: Written = name === '' ? undefined : Array.from({ length: bands }, () => name);
        edit([[['fills', 'channels'], list]]);
      }}
    />
  );
};
