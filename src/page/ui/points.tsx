/** A template from points that were measured off a cutting mat: typed or pasted, drawn as they come, and dragged. */

import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { MOST_POINTS, pointAt, withPoint } from '../plan/point-text.ts';
import { handWords, pointsWords } from '../words/words.ts';
import { isHandUnread, tapLine } from './by-hand.ts';
import { EdgeByHand } from './edge-by-hand.tsx';
import { NameField, Panel, Troubles, unitsNow } from './fields.tsx';
import { takeTemplate } from './files.tsx';
import { finely } from './her-lengths.ts';
import { keepTyped } from './kept-pictures.ts';
import { Knob } from './knob.tsx';
import { Inks } from './picture.tsx';
import { placeIn } from './pointer.ts';
import {
  answer,
  begunAnew,
  change,
  hand,
  isOpen,
  putAway,
  read,
  stepBack,
  stepOn,
  steps,
  told,
  work,
} from './pointing.ts';
import { PrintOutline } from './print-outline.tsx';
import { say } from './store.ts';
import { BreakList } from './trace-breaks.tsx';
import { Acrylic } from './trace-lines.tsx';

export const PointsView = () => {
  const id = useId();
  const place = useRef<HTMLDivElement>(null);
  const opened = isOpen.value;
  useEffect(() => {
    if (!opened) return;
    place.current?.scrollIntoView({ block: 'start' });
    place.current?.querySelector('textarea')?.focus();
  }, [opened]);
  if (!opened) return null;
  const { title, text } = steps.value.now;
  const { points, unread } = read.value;
  const keep = async (): Promise<void> => {
    const called = title.trim() || pointsWords.usualTitle;
    const made = await work();
    const { now } = steps.peek();
    const kept =
      made?.template &&
      (await takeTemplate(
        now.of ?? called,
        made.template.text,
        now.of === undefined ? 'beside' : 'in-place',
        (name) => keepTyped(JSON.stringify({ ...now, of: undefined }), name),
      ));
    if (!kept) return;
    begunAnew();
    say(handWords.onShelf(kept));
  };
  const isMuch = points.length > MOST_POINTS;
  const { card, outline, template } = (points.length > 0 && answer.value) || {};
  const problems = card?.problems ?? [];
  const troubles = problems.map(({ text: words, where }) => {
    const index = pointAt(where, points.length);
    return { text: words, where: index === undefined ? undefined : pointsWords.point({ number: index + 1 }) };
  });
  const wrong = new Set(problems.map(({ where }) => pointAt(where, points.length)));
  return (
    <div ref={place} class="tracing">
      <Panel
        id="points"
        title={pointsWords.title}
        lead={pointsWords.lead}
        aside={
          <div class="steps">
            <button type="button" disabled={steps.value.past.length === 0} onClick={stepBack}>
              {handWords.back}
            </button>
            <button type="button" disabled={steps.value.future.length === 0} onClick={stepOn}>
              {handWords.again}
            </button>
            <button type="button" onClick={putAway}>
              {pointsWords.putAway}
            </button>
          </div>
        }
      >
        <div class="trace-beside">
          <Plotted wrong={wrong} />
          <div class="trace-said">
            <NameField
              label={handWords.called}
              placeholder={pointsWords.usualTitle}
              value={title}
              onType={(next) => change({ title: next }, 'title')}
            />
            <div class="field">
              <label for={id}>{pointsWords.points}</label>
              <textarea
                id={id}
                rows={12}
                autocomplete="off"
                spellcheck={false}
                placeholder={pointsWords.example}
                value={text}
                aria-describedby={`${id}-more`}
                onInput={(event) => change({ text: event.currentTarget.value }, 'text')}
                // In a field the browser's own undo is meant.
                onKeyDown={(event) => event.stopPropagation()}
              />
              <p class={unread.length > 0 ? 'wrong' : 'hint'} id={`${id}-more`}>
                {unread.length > 0
                  ? pointsWords.notAPoint({ line: unread[0]!.line, text: unread[0]!.text.slice(0, 40) })
                  : pointsWords.onePerLine}
              </p>
            </div>
            {outline ? <BreakList {...{ hand, outline }} /> : null}
            <Acrylic {...{ hand, outline }} />
            {template ? (
              <fieldset class="trace-part">
                <legend>{handWords.fits}</legend>
                <PrintOutline {...{ template, told }} />
              </fieldset>
            ) : null}
            <p class="unseen" role="status">
              {told.value}
            </p>
            <div role="status">
              {isMuch ? (
                <p class="wrong">{pointsWords.tooMany({ most: MOST_POINTS })}</p>
              ) : troubles.length > 0 ? (
                <Troubles list={troubles} />
              ) : card?.picture ? (
                <p>{card.about}</p>
              ) : null}
            </div>
            <div class="steps">
              <button
                type="button"
                class="main"
                disabled={!template || unread.length > 0 || isMuch || isHandUnread(steps.value.now)}
                onClick={() => void keep()}
              >
                {handWords.toShelf}
              </button>
            </div>
          </div>
        </div>
      </Panel>
    </div>
  );
};

/** mm round the points. */
const ROOM = 8;

/** The curve, and each point to be dragged, those that something is said of with their names; in mm, y down. */
const Plotted = ({ wrong }: { readonly wrong: ReadonlySet<number | undefined> }) => {
  const held = useSignal<string | undefined>(undefined);
  const { points } = read.value;
  const units = unitsNow();
  if (points.length === 0) return <p class="hint">{pointsWords.drawnHere}</p>;
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => -p.y)];
  const [minX, minY] = [Math.min(...xs) - ROOM, Math.min(...ys) - ROOM];
  const [width, height] = [Math.max(...xs) + ROOM - minX, Math.max(...ys) + ROOM - minY];
  const whole = `${minX.toFixed(2)} ${minY.toFixed(2)} ${width.toFixed(2)} ${height.toFixed(2)}`;
  // While a point is dragged the picture stays where it is.
  const viewBox = held.value ?? whole;
  const size = Math.max(width, height) / 800;
  const { card, outline } = answer.value ?? {};
  const picture = card?.picture;
  const letGo = (): void => {
    held.value = undefined;
  };
  return (
    <figure
      class={`trace-picture trace-window${hand.tool.value ? ' tapping' : ''}`}
      aria-label={pointsWords.curve}
    >
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: the figure is labelled */}
      <svg
        class="drawn plotted"
        viewBox={viewBox}
        onPointerDown={() => {
          held.value = whole;
        }}
        onPointerUp={(event) => tapLine(hand, placeIn(event))}
        onPointerUpCapture={letGo}
        onPointerCancel={letGo}
      >
        {picture ? (
          <Inks inks={picture.inks} />
        ) : (
          <polyline class="unfinished" points={points.map((p) => `${p.x},${-p.y}`).join(' ')} />
        )}
        {outline ? <EdgeByHand {...{ hand, outline, size }} width={minX + width} /> : null}
        {points.map((p, i) => (
          <Knob
            key={i}
            label={pointsWords.point({ number: i + 1 })}
            class={`plain${p.isCorner ? ' corner' : ''}${wrong.has(i) ? ' wrong' : ''}`}
            at={{ x: p.x, y: -p.y }}
            line={undefined}
            perMm={1}
            {...{ size, width: minX + width }}
            says={(at) => pointsWords.acrossAndUp({ across: finely(at.x), up: finely(-at.y) })}
            onPut={(at) =>
              change({ text: withPoint(steps.value.now.text, i, { x: at.x, y: -at.y }, units) }, `point ${i}`)
            }
          />
        ))}
      </svg>
    </figure>
  );
};
