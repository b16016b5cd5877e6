/**
 * Words of the trade, each a button where it stands: pressed, it opens a note with a picture and one plain sentence. The
 * note lies over the page and moves nothing; there is one at a time.
 */

import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { termsWords } from '../words/words.ts';
import { type Term, termIn, WORDS } from './terms.ts';

interface Opened {
  readonly term: Term;
  readonly button: HTMLElement;
}

const opened = signal<Opened | undefined>(undefined);

const close = (): void => {
  opened.value = undefined;
};

const Word = ({ term, children }: { readonly term: Term; readonly children: string }) => {
  const own = useRef<HTMLButtonElement>(null);
  // What is no longer there explains nothing.
  useEffect(
    () => () => {
      if (opened.peek()?.button === own.current) close();
    },
    [],
  );
  return (
    <button
      ref={own}
      type="button"
      class="word"
      aria-expanded={opened.value?.button === own.current && own.current !== null}
      onClick={({ currentTarget: button }) => {
        opened.value = opened.value?.button === button ? undefined : { term, button };
      }}
      onBlur={() => {
        if (opened.peek()?.button === own.current) close();
      }}
    >
      {children}
    </button>
  );
};

/** The text, with the first of each word that is known as a button. */
export const explained = (text: string): ComponentChildren => {
  const said = new Set<Term>();
  return text.split(WORDS).map((piece, i) => {
    const term = i % 2 === 1 ? termIn(piece) : undefined;
    if (term === undefined || said.has(term)) return piece;
    said.add(term);
    return (
      <Word key={term} term={term}>
        {piece}
      </Word>
    );
  });
};

/** px between a note and its word, and between a note and the window's edge. */
const GAP = 6;

/** Where notes are shown: screen readers say what comes into it. */
export const Note = () => {
  const note = useRef<HTMLDivElement>(null);
  const now = opened.value;
  useLayoutEffect(() => {
    const own = note.current;
    if (!now || !own) return undefined;
    const place = (): void => {
      const word = now.button.getBoundingClientRect();
      const { width, height } = own.getBoundingClientRect();
      const isBelow = word.bottom + GAP + height <= innerHeight || word.top < height + 2 * GAP;
      own.style.left = `${Math.max(GAP, Math.min(word.left, document.documentElement.clientWidth - width - GAP))}px`;
      own.style.top = `${isBelow ? word.bottom + GAP : word.top - GAP - height}px`;
    };
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') close();
    };
    // Safari gives a pressed button no focus, so that none is lost when another place is pressed.
    const onPress = (event: Event): void => {
      const at = event.target;
      if (at instanceof Node && !own.contains(at) && !now.button.contains(at)) close();
    };
    place();
    addEventListener('scroll', place, true);
    addEventListener('resize', place);
    addEventListener('keydown', onKey);
    addEventListener('pointerdown', onPress);
    return () => {
      removeEventListener('scroll', place, true);
      removeEventListener('resize', place);
      removeEventListener('keydown', onKey);
      removeEventListener('pointerdown', onPress);
    };
  }, [now]);
  return (
    <div role="status">
      {now ? (
        <div ref={note} class="note">
          <TermPicture term={now.term} />
          <p>{termsWords[now.term].says}</p>
        </div>
      ) : null}
    </div>
  );
};

/**
 * One swag of an invented template of two arcs, in the page's inks, with what the word means marked in it. The edge is of
 * radii 24 and 38, and the stitching lies the foot's 4 outside it: radii 28 and 42, which meet where both do.
 */
const TermPicture = ({ term }: { readonly term: Term }) => (
  <svg class="drawn" viewBox="0 0 120 68" aria-hidden="true">
    <path class="ink seam" d="M2 60H118" />
    <path class="ink centreLine" d="M60 6V66" />
    <path class="plate" d={`${EDGE}V60Z`} />
    {term === 'inside' ? (
      <path class="plate other" d="M4 60A32 32 0 0 1 25 30A46 46 0 0 1 60 14V6H4Z" />
    ) : null}
    <path class="ink edge" d={EDGE} />
    <path
      class="ink stitch"
      d="M8 60A28 28 0 0 1 27.58 33.29A42 42 0 0 1 60 18A42 42 0 0 1 92.42 33.29A28 28 0 0 1 112 60"
    />
    {MARKED[term]}
  </svg>
);

const EDGE = 'M12 60A24 24 0 0 1 29.92 36.78A38 38 0 0 1 60 22';

const MARKED: Readonly<Record<Term, ComponentChildren>> = {
  heel: <circle class="here" cx="12" cy="60" r="4" />,
  crown: <circle class="here" cx="60" cy="22" r="4" />,
  section: <path class="here" d="M12 60A24 24 0 0 1 29.92 36.78" />,
  setting: (
    <>
      <circle class="foot" cx="60" cy="18" r="4" />
      <circle class="foot" cx="8" cy="60" r="4" />
      <path class="here" d="M60 10V28M8 52V66" />
    </>
  ),
  inside: null,
};
