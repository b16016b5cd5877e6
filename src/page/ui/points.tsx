/** A template from points that were measured off a cutting mat: typed or pasted, drawn as they come, and dragged. */

import { batch, computed, effect, signal, useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { UNITS, type Units } from '../../length/index.ts';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { PointsAnswer } from '../engine/messages.ts';
import { beginning, changed, redone, undone } from '../plan/history.ts';
import {
  MOST_POINTS,
  pointAt,
  pointsIn,
  pointsTypedIn,
  templateOfPoints,
  withPoint,
} from '../plan/point-text.ts';
import {
  type ByHand,
  byHandIn,
  forWorker,
  type Hand,
  isHandUnread,
  NOTHING_BY_HAND,
  tapLine,
} from './by-hand.ts';
import { EdgeByHand } from './edge-by-hand.tsx';
import { NameField, Panel, Troubles, unitsNow } from './fields.tsx';
import { takeTemplate } from './files.tsx';
import { finely } from './her-lengths.ts';
import { keepTyped } from './kept-pictures.ts';
import { Knob } from './knob.tsx';
import { Inks } from './picture.tsx';
import { placeIn } from './pointer.ts';
import { PrintOutline } from './print-outline.tsx';
import { alsoStop, during, say } from './store.ts';
import { BreakList } from './trace-breaks.tsx';
import { Acrylic } from './trace-lines.tsx';

const KEY = 'swagwright.points';

interface Said extends ByHand {
  readonly title: string;
  readonly text: string;
  /** The template on the shelf that they are set right of; none where they become a new one. */
  readonly of?: string | undefined;
  /** Of the figures without a unit of their own; undefined where it was typed before that was written down. */
  readonly units?: Units | undefined;
}

const NOTHING: Said = { title: '', text: '', ...NOTHING_BY_HAND };

/** As plans are kept: of this window, as long as it is open, and of the one that was changed last. */
const stored = (): string => {
  try {
    return sessionStorage.getItem(KEY) ?? localStorage.getItem(KEY) ?? '{}';
  } catch {
    return '{}';
  }
};

const saidIn = (text: string): Said => {
  try {
    const found = JSON.parse(text) as Partial<Said> | null;
    const listed = <T,>(list: readonly T[] | undefined): readonly T[] | undefined =>
      Array.isArray(list) ? list : undefined;
    return {
      title: String(found?.title ?? ''),
      text: String(found?.text ?? ''),
      of: typeof found?.of === 'string' ? found.of : undefined,
      units: UNITS.find((unit) => unit === found?.units),
      breaks: listed(found?.breaks),
      thickness: String(found?.thickness ?? ''),
      across: listed(found?.across) ?? [],
      along: listed(found?.along) ?? [],
    };
  } catch {
    return NOTHING;
  }
};

let kept = stored();

const keepSaid = (now: Said): void => {
  const text = JSON.stringify(now);
  try {
    sessionStorage.setItem(KEY, text);
    // What is done with here may be begun in another window.
    if (text !== kept && (now.text !== '' || localStorage.getItem(KEY) === kept))
      localStorage.setItem(KEY, text);
  } catch {
    // Without a store they are there as long as the page is.
  }
  kept = text;
};

const steps = signal(beginning(saidIn(kept)));
const isOpen = signal(false);
const answer = signal<PointsAnswer | undefined>(undefined);
const told = signal('');
const hand: Hand = {
  ...{ said: computed(() => steps.value.now), say: (changes, about) => change(changes, about), told },
  ...{ tool: signal(undefined), lit: signal(undefined) },
};
const read = computed(() => pointsIn(steps.value.now.text, unitsNow()));

const change = (next: Partial<Said>, about?: string): void => {
  told.value = '';
  steps.value = changed(steps.value, { ...steps.value.now, ...next }, about);
};

export const openPoints = (): void => {
  isOpen.value = true;
};

/** Goes on with what was typed of a template on the shelf; what stood in the fields is a step back. */
export const goOnWithPoints = (typed: string, of: string, title: string): void => {
  change({ ...saidIn(typed), title, of });
  openPoints();
};

/** A worker of its own, as for pictures: it knows how a template is written. */
const reader = startClient(() => hire('thorough'));

/** What the points make now; undefined where there are none, or too many. */
const work = async (): Promise<PointsAnswer | undefined> => {
  const { now } = steps.peek();
  const { points } = read.peek();
  if (points.length === 0 || points.length > MOST_POINTS) return undefined;
  const units = unitsNow();
  const text = templateOfPoints(now.title.trim() || 'My template', points, units);
  const asked = { kind: 'points', points: { text, units, ...forWorker(now) } } as const;
  const answered = await during('the template', reader.ask(asked));
  return answered.kind === 'answer' ? answered.answer : answer.peek();
};

/** No figure means another length because the page is in other units by now. */
const inUnitsNow = (said: Said): Said => {
  const [then, now] = [said.units ?? unitsNow(), unitsNow()];
  if (said.units === now) return said;
  return { ...said, ...byHandIn(said, then, now), text: pointsTypedIn(said.text, then, now), units: now };
};

/** Follows what she types; called once. */
export const startPoints = (): void => {
  alsoStop(reader);
  effect(() => {
    const { now } = steps.value;
    const said = inUnitsNow(now);
    if (said !== now) steps.value = { ...steps.peek(), now: said };
  });
  effect(() => {
    const { now } = steps.value;
    keepSaid(now);
    unitsNow();
    if (!isOpen.value) return;
    void work().then((made) => {
      if (steps.peek().now === now) answer.value = made;
    });
  });
};

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
    batch(() => {
      isOpen.value = false;
      steps.value = beginning(NOTHING);
    });
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
            <button
              type="button"
              disabled={steps.value.past.length === 0}
              onClick={() => {
                steps.value = undone(steps.value);
              }}
            >
              Take the last step back
            </button>
            <button
              type="button"
              disabled={steps.value.future.length === 0}
              onClick={() => {
                steps.value = redone(steps.value);
              }}
            >
              Do it again
            </button>
            <button
              type="button"
              onClick={() => {
                isOpen.value = false;
              }}
            >
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
