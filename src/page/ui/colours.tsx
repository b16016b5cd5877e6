/** Her fabric and thread, and pictures of the quilt in them, to show. */

import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { capital } from '../../document/index.ts';
import { colourDoubts } from '../../drawing/index.ts';
import { orNoStart } from '../engine/client.ts';
import { loadFonts } from '../engine/hire.ts';
import { coloursWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { COLOURED, coloursNow, hasColours } from './colours-now.ts';
import { Choice, Panel, Tick } from './fields.tsx';
import { isFramePart, kindNow } from './layouts.ts';
import { Said } from './said.tsx';
import { complain, during, edit, isOld, partNames, partNow, say, shown, state, thorough } from './store.ts';

export const Colours = () => (
  <Panel id="colours" title={coloursWords.title} lead={coloursWords.lead}>
    <div class="field-row">
      {COLOURED.map((part) => {
        const label = labelOf(part);
        return label === undefined ? null : <ColourField key={part} part={part} label={label} />;
      })}
      {hasColours.value ? (
        <button type="button" class="no-colours" onClick={() => edit([[['colours'], undefined]])}>
          {coloursWords.none}
        </button>
      ) : null}
    </div>
    <div role="status">
      {doubts().map((words) => (
        <p key={words} class="hint">
          {words}
        </p>
      ))}
    </div>
    <ToShow />
  </Panel>
);

type Coloured = (typeof COLOURED)[number];

/** A strip has nothing in its middle. */
const labelOf = (part: Coloured): string | undefined => {
  if (part !== 'middle') return coloursWords[part];
  if (partNames.value.length > 0) return coloursWords.middle.parts;
  return coloursWords.middle[kindNow(state.value)];
};

const ColourField = ({ part, label }: { readonly part: Coloured; readonly label: string }) => {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="color"
        value={coloursNow.value[part]}
        onInput={(event) => edit([[['colours', part], event.currentTarget.value]], `colours.${part}`)}
      />
    </div>
  );
};

const doubts = (): readonly string[] => {
  if (!hasColours.value) return [coloursWords.noneWhy];
  // Frames lie on the quilt's middle.
  const { plan } = state.value;
  const onMiddle = partNames.value.some((name) => isFramePart(plan, name));
  return colourDoubts(coloursNow.value, onMiddle).map((words) => `${capital(words)}.`);
};

/** What is made of it; the whole quilt, or of its parts the open one. */
const ToShow = () => {
  const isWhole = useSignal(true);
  const withMarks = useSignal(false);
  const isReady = shown.value !== undefined && !isOld.value;
  const make = async (ending: 'png' | 'svg'): Promise<void> => {
    const asked = {
      kind: 'picture',
      input: state.value,
      ending,
      ofQuilt: partNames.value.length > 0 && isWhole.value,
      look: { kind: 'colours', withMarks: withMarks.value },
    } as const;
    const picture = async () =>
      thorough.ask({ ...asked, fonts: ending === 'png' ? await loadFonts() : undefined });
    const made = await during(coloursWords.making, orNoStart(picture()));
    if (made.kind === 'problems') complain(coloursWords.failed, made.problems, 'colours');
    if (made.kind !== 'answer') return;
    const { name, bytes, words, notices } = made.answer;
    saveAs(name, TYPES[ending], bytes);
    const sentences = [coloursWords.done({ name, words }), ...notices.map(capital)];
    say(sentences.map((sentence) => sentence.replace(/\.?$/, '.')).join(' '), 'colours');
  };
  return (
    <>
      <div class="field-row">
        {partNow.value === undefined ? null : (
          <Choice
            label={coloursWords.shows}
            value={isWhole.value ? '' : 'part'}
            options={[
              ['', coloursWords.whole],
              ['part', partNow.value],
            ]}
            onChoose={(which) => {
              isWhole.value = which === '';
            }}
          />
        )}
        <Tick label={coloursWords.withMarks} of={withMarks} />
      </div>
      <ul class="prints">
        {(['png', 'svg'] as const).map((ending) => (
          <li key={ending}>
            <button type="button" disabled={!isReady} onClick={() => void make(ending)}>
              {coloursWords[ending]}
            </button>
            <span class="about">{coloursWords[`${ending}Why`]}</span>
          </li>
        ))}
      </ul>
      <Said at="colours" />
    </>
  );
};

const TYPES = { png: 'image/png', svg: 'image/svg+xml' } as const;
