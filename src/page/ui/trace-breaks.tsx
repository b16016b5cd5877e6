/** The breaks of an edge: where one section ends and the next begins, by name. */

import { BREAK_KINDS } from '../../jobs/break-kinds.ts';
import type { EdgeShown, SaidBreak, TracedBreak } from '../engine/messages.ts';
import { handWords } from '../words/words.ts';
import { type Line, lineThrough, placeAlong } from './along-line.ts';
import type { Hand } from './by-hand.ts';
import { NameField } from './fields.tsx';
import { chosen, focusOn } from './focus-on.ts';
import { inHers } from './her-lengths.ts';
import type { Place } from './pointer.ts';

/** Breaks as they were said, or as the dots in the picture say them. */
export const breaksSaid = (hand: Hand, outline: EdgeShown): readonly SaidBreak[] =>
  hand.said.value?.breaks ??
  outline.breaks.flatMap(({ at, name }) => (name === undefined ? [] : [{ at, name }]));

/** A place that was said and a break that was made of it are this near (mm). */
const SAME = 2.5;

/**
 * Which of those that were said a break is; -1 for a corner without a name. While she types a name, what was made of it
 * still has the one before: so it is the place that tells.
 */
export const placeInSaid = (made: TracedBreak, said: readonly SaidBreak[], outline: EdgeShown): number => {
  const most = SAME * outline.pixelsPerMm;
  const apart = ({ at }: TracedBreak, b: SaidBreak): number => Math.hypot(at.x - b.at.x, at.y - b.at.y);
  return said.findIndex((b) => {
    const near = outline.breaks
      .filter((one) => apart(one, b) <= most)
      .sort((p, q) => apart(p, b) - apart(q, b));
    return (near.find(({ name }) => name === b.name) ?? near[0]) === made;
  });
};

const freeBreakName = (said: readonly SaidBreak[]): string => {
  for (let number = 1; ; number++) {
    const name = handWords.breakName({ number });
    if (said.every((b) => b.name !== name)) return name;
  }
};

export const addBreak = (hand: Hand, outline: EdgeShown, at: Place, along: number): void => {
  const said = breaksSaid(hand, outline);
  const name = freeBreakName(said);
  hand.say({ breaks: [...said, { at, name }] });
  focusOn.value = name;
  hand.told.value = handWords.breakAdded({ name, length: inHers(along) });
};

export const moveBreak = (hand: Hand, outline: EdgeShown, index: number, at: Place): void =>
  hand.say(
    { breaks: breaksSaid(hand, outline).map((b, i) => (i === index ? { ...b, at } : b)) },
    `break ${index}`,
  );

export const removeBreak = (hand: Hand, outline: EdgeShown, index: number): void => {
  const said = breaksSaid(hand, outline);
  hand.say({ breaks: said.filter((_, i) => i !== index) });
  hand.told.value = handWords.takenOut({ name: said[index]?.name ?? '' });
};

const nameBreak = (hand: Hand, outline: EdgeShown, made: TracedBreak, index: number, name: string): void => {
  const said = breaksSaid(hand, outline);
  if (index < 0) {
    if (name !== '') hand.say({ breaks: [...said, { at: made.at, name }] }, `name ${made.along}`);
    return;
  }
  // A break on a smooth stretch is there by its name; a corner is there without one.
  if (name === '' && made.kind === 'mark') return;
  const next = said.map((b, i) => (i === index ? { ...b, name } : b));
  hand.say({ breaks: next.filter((b) => b.name !== '') }, `name ${made.along}`);
};

/** The middle of the longest section. */
const roomiest = (outline: EdgeShown, edge: Line): { readonly at: Place; readonly along: number } => {
  const { breaks, edgeLength, pixelsPerMm } = outline;
  const ends = [0, ...breaks.map((b) => b.along), edgeLength];
  let along = edgeLength / 2;
  let longest = 0;
  for (let i = 1; i < ends.length; i++) {
    const length = ends[i]! - ends[i - 1]!;
    if (length > longest) [longest, along] = [length, ends[i - 1]! + length / 2];
  }
  return { at: placeAlong(edge, along * pixelsPerMm), along };
};

export const BreakList = ({ hand, outline }: { readonly hand: Hand; readonly outline: EdgeShown }) => {
  const { edge } = outline;
  if (!edge) return null;
  const said = breaksSaid(hand, outline);
  const indices = outline.breaks.map((b) => placeInSaid(b, said, outline));
  const elsewhere = said.flatMap((b, i) => (indices.includes(i) ? [] : [{ ...b, i }]));
  return (
    <fieldset class="trace-part">
      <legend>{handWords.breaks}</legend>
      <p class="hint">{handWords.breaksHint}</p>
      <button
        type="button"
        onClick={() => {
          const { at, along } = roomiest(outline, lineThrough(edge, false));
          addBreak(hand, outline, at, along);
        }}
      >
        {handWords.addBreak}
      </button>
      <ul class="trace-list">
        {outline.breaks.map((b, i) => (
          // By its number: it stays the same field while she types in it.
          <li
            key={i}
            onFocusIn={() => {
              chosen.value = b.at;
              hand.lit.value = i;
            }}
            onFocusOut={() => {
              hand.lit.value = undefined;
            }}
          >
            <NameField
              label={handWords.breakLabel({ kind: BREAK_KINDS[b.kind], length: inHers(b.along) })}
              placeholder={handWords.noName}
              most={40}
              value={b.name ?? ''}
              onType={(name) => nameBreak(hand, outline, b, indices[i]!, name)}
            />
            {b.kind === 'mark' && indices[i]! >= 0 ? (
              <button type="button" onClick={() => removeBreak(hand, outline, indices[i]!)}>
                {handWords.takeOut({ name: b.name ?? '' })}
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      {elsewhere.map((b) => (
        <p key={`${b.name} ${b.i}`} class="hint">
          {handWords.notOnEdge(b)}{' '}
          <button type="button" onClick={() => removeBreak(hand, outline, b.i)}>
            {handWords.takeOut(b)}
          </button>
        </p>
      ))}
    </fieldset>
  );
};
