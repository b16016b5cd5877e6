/** Her designs: kept by name, shown with their pictures, opened again, copied, thrown away, and looked at side by side. */

import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import {
  called,
  type Design,
  designOf,
  designsFrom,
  designsText,
  freeTitleIn,
  MOST_DESIGNS,
} from '../plan/designs.ts';
import { designsWords, planWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { coloursIn } from './colours-now.ts';
import { type DrawnDesign, drawAll, drawnOf } from './design-pictures.ts';
import { NameField, Panel } from './fields.tsx';
import { focusFirst } from './focus-on.ts';
import { designs, dropDesign, newDesignId, nextPlace, putDesign, unreadDesigns } from './kept-designs.ts';
import { Areas, Copied, Drawn, Ground } from './picture.tsx';
import { complain, isOld, look, openFrom, say, shown, state } from './store.ts';

/** Whether it is kept; what keeps it from that is said. */
const keep = (design: Design): boolean => {
  const answer = putDesign(design);
  if (answer === 'full') complain(designsWords.full({ most: MOST_DESIGNS }));
  if (answer === 'refused') complain(designsWords.refused);
  return answer === 'kept';
};

/** Keeps what is open as a design of its own, whatever was kept before. */
export const keepDesign = (): void => {
  const design = shown.value;
  if (!design || isOld.value) {
    complain(designsWords.noneYet);
    return;
  }
  const asked = look.value?.facts?.title ?? planWords.title;
  const title = freeTitleIn(designs.value, asked);
  const more = { id: newDesignId(), at: nextPlace(), words: design.summary };
  if (!keep(designOf(state.value, title, more))) return;
  say(designsWords.kept({ title, asked }), 'head', { words: designsWords.rename, to: nameId(more.id) });
};

const nameId = (design: string): string => `design-${design}`;

/** Puts those of a file beside those that are there, each under a name that is free. */
export const takeDesigns = (fileName: string, text: string): void => {
  const read = designsFrom(text);
  if (!read) {
    complain(designsWords.unread({ file: fileName }));
    return;
  }
  const { bad } = read;
  const added: string[] = [];
  for (const one of read.designs) {
    const title = freeTitleIn(designs.peek(), one.title);
    const design = { ...called(one, title), id: newDesignId(), at: nextPlace() };
    if (!keep(design)) return;
    added.push(title);
  }
  const of = { count: added.length, file: fileName };
  if (bad > 0) complain(designsWords.takenSome({ ...of, bad }));
  else say(designsWords.taken(of));
};

const saveDesigns = (): void => {
  saveAs(DESIGNS_FILE, 'application/json', designsText(designs.value));
  say(designsWords.saved({ file: DESIGNS_FILE }));
};

const DESIGNS_FILE = 'my-designs.json';

/** Whether it has been in sight since it is there. */
const useSeen = (place: RefObject<HTMLElement | null>, isThere: boolean): boolean => {
  const isSeen = useSignal(false);
  useEffect(() => {
    if (!place.current) return undefined;
    const eye = new IntersectionObserver((entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      isSeen.value = true;
      eye.disconnect();
    });
    eye.observe(place.current);
    return () => eye.disconnect();
  }, [isThere]);
  return isSeen.value;
};

/** At most as many stand side by side. */
const MOST_BESIDE = 4;

export const DesignsView = () => {
  const pinned = useSignal<readonly string[]>([]);
  const thrown = useSignal<readonly Design[]>([]);
  const all = designs.value;
  const beside = all.filter(({ id }) => pinned.value.includes(id));
  const place = useRef<HTMLUListElement>(null);
  const isSeen = useSeen(place, all.length > 0);
  // Those that she looks at closely come first.
  useEffect(() => drawAll([...beside, ...all], isSeen), [all, beside.length, isSeen]);
  if (all.length + thrown.value.length + unreadDesigns.value === 0) return null;
  const widest = Math.max(...beside.map((design) => widthOf(drawnOf(design))));
  return (
    <Panel
      id="designs"
      title={designsWords.title}
      lead={designsWords.lead}
      aside={
        all.length > 0 ? (
          <button type="button" onClick={saveDesigns}>
            {designsWords.saveAll}
          </button>
        ) : null
      }
    >
      {unreadDesigns.value > 0 ? (
        <p class="wrong">{designsWords.unreadHere({ count: unreadDesigns.value })}</p>
      ) : null}
      <ul class="kept-designs" ref={place}>
        {all.map((design) => (
          <DesignCard
            key={design.id}
            design={design}
            isPinned={pinned.value.includes(design.id)}
            mayPin={beside.length < MOST_BESIDE}
            onPin={(isOn) => {
              pinned.value = isOn
                ? [...beside.map(({ id }) => id), design.id]
                : pinned.value.filter((id) => id !== design.id);
            }}
            onThrow={() => {
              dropDesign(design.id);
              thrown.value = [...thrown.value, design];
              focusFirst('.thrown-designs > :last-child');
            }}
          />
        ))}
      </ul>
      {thrown.value.length > 0 ? (
        <ul class="steps thrown-designs">
          {thrown.value.map((design) => (
            <li key={design.id}>
              <button
                type="button"
                onClick={() => {
                  if (keep(design)) thrown.value = thrown.value.filter((other) => other !== design);
                }}
              >
                {designsWords.takeBack(design)}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {beside.length > 1 ? (
        <section class="beside-one-another" aria-label={designsWords.beside}>
          <h3>{designsWords.beside}</h3>
          <ul>
            {beside.map((design) => (
              <li key={design.id}>
                <h4>{design.title}</h4>
                <Scaled design={design} widest={widest} />
                <Figures words={design.words} />
                <button type="button" onClick={() => void open(design)}>
                  {designsWords.takeThis}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </Panel>
  );
};

const widthOf = (drawn: DrawnDesign | undefined): number =>
  drawn ? drawn.picture.box.maxX - drawn.picture.box.minX : 0;

/** As it would be on the quilt, in its own colours where it has some. */
const DesignPicture = ({ design }: { readonly design: Design }) => {
  const drawn = drawnOf(design);
  if (!drawn) return <div class="undrawn" aria-hidden="true" />;
  const { picture, cloth, fills = [] } = drawn;
  const colours = coloursIn(design.state);
  return (
    <div style={colours}>
      <Drawn picture={picture} class="quilt">
        {colours ? (
          <>
            <Ground box={picture.box} />
            <Areas cloth={cloth} />
          </>
        ) : null}
        <Copied fills={fills} />
      </Drawn>
    </div>
  );
};

/** As wide beside the widest as it is. */
const Scaled = ({ design, widest }: { readonly design: Design; readonly widest: number }) =>
  drawnOf(design) ? (
    <div class="scaled" style={{ width: `${((100 * widthOf(drawnOf(design))) / widest).toFixed(2)}%` }}>
      <DesignPicture design={design} />
    </div>
  ) : null;

const Figures = ({ words }: { readonly words: readonly string[] }) => (
  <ul class="figures">
    {words.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);

const open = (design: Design): Promise<boolean> => openFrom(design.state, `“${design.title}”`);

const DesignCard = ({
  design,
  isPinned,
  mayPin,
  onPin,
  onThrow,
}: {
  readonly design: Design;
  readonly isPinned: boolean;
  readonly mayPin: boolean;
  readonly onPin: (isOn: boolean) => void;
  readonly onThrow: () => void;
}) => {
  const { title } = design;
  const others = designs.value.filter((other) => other.id !== design.id);
  return (
    <li>
      <DesignPicture design={design} />
      <NameField
        label={designsWords.name({ title })}
        id={nameId(design.id)}
        isUnseen
        value={title}
        onType={(name) => {
          if (name !== '') keep(called(design, freeTitleIn(others, name)));
        }}
      />
      <Figures words={design.words} />
      <label class="pin">
        <input
          type="checkbox"
          checked={isPinned}
          disabled={!isPinned && !mayPin}
          aria-label={designsWords.pinOf({ title })}
          onChange={(event) => onPin(event.currentTarget.checked)}
        />
        {designsWords.pin}
      </label>
      <div class="steps">
        <button type="button" aria-label={designsWords.openOf({ title })} onClick={() => void open(design)}>
          {designsWords.open}
        </button>
        <button
          type="button"
          aria-label={designsWords.copyOf({ title })}
          onClick={() => {
            const copy = called(design, freeTitleIn(designs.value, title));
            keep({ ...copy, id: newDesignId(), at: nextPlace() });
          }}
        >
          {designsWords.copy}
        </button>
        <button type="button" aria-label={designsWords.throwAwayOf({ title })} onClick={onThrow}>
          {designsWords.throwAway}
        </button>
      </div>
    </li>
  );
};
