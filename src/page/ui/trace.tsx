/** A picture of a template, the outline that was found in it, and the ends of the working edge to be set right. */

import { useEffect, useId, useRef } from 'preact/hooks';
import { MM_PER_INCH } from '../../length/index.ts';
import type { TracedOutline } from '../engine/messages.ts';
import { freeName } from '../plan/shelf.ts';
import { readOwnName, saveAs } from './browser.ts';
import { Choice, NameField, Panel, Troubles } from './fields.tsx';
import { takeTemplate } from './files.tsx';
import type { Place } from './pointer.ts';
import { say as announce, state } from './store.ts';
import { Pictured } from './traced-picture.tsx';
import { putAway, resolutionSaid, type Scale, say, traced, tracing } from './tracing.ts';

export const TraceView = () => {
  const now = tracing.value;
  const answer = traced.value;
  const place = useRef<HTMLDivElement>(null);
  const key = now?.key;
  useEffect(() => {
    if (key !== undefined && answer !== undefined) place.current?.scrollIntoView({ block: 'start' });
  }, [key, answer === undefined]);
  if (!now || !answer) return null;
  const { outline, template } = answer;
  const keep = async (): Promise<void> => {
    if (!template) return;
    const card = await takeTemplate(freeName(state.value.own, readOwnName(template.name)), template.text);
    if (!card) return;
    putAway();
    announce(
      `The template “${card.title}” is on the shelf, and ticked. Print its outline and lay the acrylic on it before you trust it.`,
    );
  };
  return (
    <div ref={place} class="tracing">
      <Panel
        id="trace"
        title="Your template, from its picture"
        lead="The foot runs along the red line, outside the template. Drag its two ends to where the foot starts and stops."
        aside={
          <button type="button" onClick={putAway}>
            Put the picture away
          </button>
        }
      >
        <div class="trace-beside">
          <Pictured outline={outline} width={answer.width} height={answer.height} />
          <div class="trace-said">
            <NameField
              label="What it is called"
              placeholder={now.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}
              value={now.title}
              onType={(title) => say({ title })}
            />
            <ScaleFields ofFile={answer.pixelsPerMm} outline={outline} />
            {outline?.kind === 'line' ? (
              <Choice
                label="Of the drawn line take"
                value={now.line}
                options={[
                  ['middle', 'its middle'],
                  ['inner', 'its inner side'],
                  ['outer', 'its outer side'],
                ]}
                onChoose={(line) => say({ line: line as 'middle' | 'inner' | 'outer' })}
              />
            ) : null}
            {outline?.edge ? <EdgeButtons outline={outline} edge={outline.edge} /> : null}
            {answer.problems.length > 0 ? (
              <div class="notice wrong" role="status">
                <Troubles list={answer.problems} />
              </div>
            ) : (
              <div role="status">
                <ul>
                  {[...answer.doubts, ...answer.words].map((line) => (
                    <li key={line} class={answer.doubts.includes(line) ? 'wrong' : ''}>
                      {capital(line)}.
                    </li>
                  ))}
                </ul>
              </div>
            )}
            <div class="steps">
              <button type="button" class="main" disabled={!template} onClick={() => void keep()}>
                Put it on the shelf
              </button>
              <button
                type="button"
                disabled={!template}
                onClick={() => template && saveAs(template.name, 'text/yaml', template.text)}
              >
                Save its file
              </button>
            </div>
          </div>
        </div>
      </Panel>
    </div>
  );
};

const capital = (text: string): string => (text.charAt(0).toUpperCase() + text.slice(1)).replace(/\.$/, '');

/** How large the picture is. A capture sheet in it says so by its marks. */
const ScaleFields = ({
  ofFile,
  outline,
}: {
  readonly ofFile: number | undefined;
  readonly outline: TracedOutline | undefined;
}) => {
  const id = useId();
  const scale = tracing.value?.scale ?? { kind: 'own' };
  if (outline?.source === 'capture-sheet')
    return <p class="hint">The eight marks of the sheet say how large it is.</p>;
  const file =
    ofFile === undefined
      ? 'the file does not say'
      : `as its file says: ${Math.round(ofFile * MM_PER_INCH)} dots per inch`;
  const begin: Readonly<Record<Scale['kind'], Scale>> = {
    own: { kind: 'own' },
    dpi: { kind: 'dpi', text: '' },
    marks: { kind: 'marks', marks: [], apart: '' },
  };
  const isWrong = scale.kind !== 'own' && resolutionSaid(scale) === 'wrong';
  return (
    <>
      <Choice
        label="How large it is"
        value={scale.kind}
        options={[
          ['own', file],
          ['dpi', 'what the scanner was set to'],
          ['marks', 'two marks that I tap'],
        ]}
        onChoose={(kind) => say({ scale: begin[kind as Scale['kind']] })}
      />
      {scale.kind === 'dpi' ? (
        <div class="field">
          <label for={id}>Dots per inch</label>
          <input
            id={id}
            class="length"
            inputMode="numeric"
            autocomplete="off"
            size={8}
            placeholder="such as 300"
            value={scale.text}
            onInput={(event) => say({ scale: { kind: 'dpi', text: event.currentTarget.value } })}
          />
          {isWrong && scale.text !== '' ? <p class="wrong">Write a whole number from 100 to 2400.</p> : null}
        </div>
      ) : null}
      {scale.kind === 'marks' ? (
        <div class="field">
          <label for={id}>The two marks are apart by</label>
          <input
            id={id}
            class="length"
            autocomplete="off"
            size={8}
            placeholder="such as 6"
            value={scale.apart}
            onInput={(event) => say({ scale: { ...scale, apart: event.currentTarget.value } })}
          />
          <p class="hint">
            {scale.marks.length < 2
              ? 'Tap two lines of a ruler or a cutting mat in the picture, as far apart as they go; the ruler must lie as high as the template’s edge.'
              : 'Tap again to begin anew.'}
          </p>
        </div>
      ) : null}
    </>
  );
};

/** The outline goes both ways round from one end to the other. */
const EdgeButtons = ({
  outline,
  edge,
}: {
  readonly outline: TracedOutline;
  readonly edge: readonly Place[];
}) => {
  const [heel, crown] = [edge[0], edge.at(-1)];
  const other = outline.foot === 'left' ? 'right' : 'left';
  return (
    <div class="steps">
      <button type="button" onClick={() => say({ heel: crown, crown: heel, foot: other })}>
        Heel and crown end change places
      </button>
      <button type="button" onClick={() => say({ heel, crown, foot: other })}>
        Take the other part of the outline
      </button>
    </div>
  );
};
