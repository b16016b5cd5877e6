/** A template from points that were measured off a cutting mat: typed or pasted, drawn as they come, and dragged. */

import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { MOST_POINTS, pointAt, withPoint } from '../plan/point-text.ts';
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
    const called = title.trim() || 'My template';
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
    say(
      `The template “${kept.title}” is on the shelf, and ticked.${kept.note} Print its outline and lay the acrylic on it before you trust it.`,
    );
  };
  const isMuch = points.length > MOST_POINTS;
  const { card, outline, template } = (points.length > 0 && answer.value) || {};
  const problems = card?.problems ?? [];
  const troubles = problems.map(({ text: words, where }) => {
    const index = pointAt(where, points.length);
    return { text: words, where: index === undefined ? undefined : `Point ${index + 1}` };
  });
  const wrong = new Set(problems.map(({ where }) => pointAt(where, points.length)));
  return (
    <div ref={place} class="tracing">
      <Panel
        id="points"
        title="Your template, point by point"
        lead="Lay the acrylic on a cutting mat and read points off its edge, from the heel to the crown end with the foot on the left: one every inch, and more where it bends."
        aside={
          <div class="steps">
            <button type="button" disabled={steps.value.past.length === 0} onClick={stepBack}>
              Take the last step back
            </button>
            <button type="button" disabled={steps.value.future.length === 0} onClick={stepOn}>
              Do it again
            </button>
            <button type="button" onClick={putAway}>
              Put the points away
            </button>
          </div>
        }
      >
        <div class="trace-beside">
          <Plotted wrong={wrong} />
          <div class="trace-said">
            <NameField
              label="What it is called"
              placeholder="My template"
              value={title}
              onType={(next) => change({ title: next }, 'title')}
            />
            <div class="field">
              <label for={id}>Points: across, up; with the word corner where the edge has one</label>
              <textarea
                id={id}
                rows={12}
                autocomplete="off"
                spellcheck={false}
                placeholder={'0, 0\n1, 3/4\n2, 1, corner\n3 1/4, 1/2'}
                value={text}
                aria-describedby={`${id}-more`}
                onInput={(event) => change({ text: event.currentTarget.value }, 'text')}
                // In a field the browser's own undo is meant.
                onKeyDown={(event) => event.stopPropagation()}
              />
              <p class={unread.length > 0 ? 'wrong' : 'hint'} id={`${id}-more`}>
                {unread.length > 0
                  ? `Line ${unread[0]!.line} is no point: “${unread[0]!.text.slice(0, 40)}”. Write two lengths with a comma between them, such as 3 1/4, 1/2.`
                  : 'One a line. A column of a table can be pasted too.'}
              </p>
            </div>
            {outline ? <BreakList {...{ hand, outline }} /> : null}
            <Acrylic {...{ hand, outline }} />
            {template ? (
              <fieldset class="trace-part">
                <legend>Does it fit?</legend>
                <PrintOutline {...{ template, told }} />
              </fieldset>
            ) : null}
            <p class="unseen" role="status">
              {told.value}
            </p>
            <div role="status">
              {isMuch ? (
                <p class="wrong">These are more than {MOST_POINTS} points.</p>
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
                Put it on the shelf
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
  if (points.length === 0) return <p class="hint">The curve is drawn here as the points come.</p>;
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
      aria-label="The curve through the points"
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
            label={`Point ${i + 1}`}
            class={`plain${p.isCorner ? ' corner' : ''}${wrong.has(i) ? ' wrong' : ''}`}
            at={{ x: p.x, y: -p.y }}
            line={undefined}
            perMm={1}
            {...{ size, width: minX + width }}
            says={(at) => `${finely(at.x)} across, ${finely(-at.y)} up`}
            onPut={(at) =>
              change({ text: withPoint(steps.value.now.text, i, { x: at.x, y: -at.y }, units) }, `point ${i}`)
            }
          />
        ))}
      </svg>
    </figure>
  );
};
