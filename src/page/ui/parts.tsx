/**
 * The parts of a quilt by their names: the one that is open is worked on, and the others stay as they are. Where it lies
 * on the quilt is said here, and parts are added and taken out.
 */

import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { fileWord, MOST_NAME } from '../../document/index.ts';
import { cornersOfWritten } from '../../plan/index.ts';
import { freeCornered, freeName, type Place, placeOf, placeWritten, turnOf } from '../plan/part-text.ts';
import { Choice, LengthField } from './fields.tsx';
import { addPart, edit, openPartNamed, partNames, partNow, removePart, state } from './store.ts';

export const Parts = () => {
  const names = partNames.value;
  const open = partNow.value;
  if (open === undefined)
    return (
      <section class="add-part" aria-label="Parts of the quilt">
        <details>
          <summary>More than one design on this quilt?</summary>
          <AddPart />
        </details>
      </section>
    );
  return (
    <nav class="parts" aria-label="Parts of the quilt">
      <p>This quilt has parts. The one that you choose is open:</p>
      <div class="steps">
        {names.map((name) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => openPartNamed(name)}>
            {name}
          </button>
        ))}
      </div>
      <div class="part-place" key={open}>
        <PlaceFields />
        {names.length > 1 ? (
          <button type="button" onClick={() => removePart(open)}>
            Take “{open}” out
          </button>
        ) : null}
        <AddPart />
      </div>
    </nav>
  );
};

const PlaceFields = () => {
  const place = placeOf(state.value);
  const of = 'cornersOf' in place ? place.cornersOf : '';
  const squares = [...new Set([...freeCornered(state.value), ...(of === '' ? [] : [of])])];
  return (
    <>
      {squares.length > 0 ? (
        <Choice
          label="Where it lies"
          value={of}
          options={[
            ['', 'At a place of its own'],
            ...squares.map((name) => [name, `In the corners of “${name}”`] as const),
          ]}
          onChoose={(name) => edit([[['at'], name === '' ? undefined : cornersOfWritten(name)]])}
        />
      ) : null}
      {'cornersOf' in place ? <TurnField /> : <OwnPlace place={place} />}
    </>
  );
};

const OwnPlace = ({ place }: { readonly place: Exclude<Place, { readonly cornersOf: string }> }) => {
  if ('places' in place)
    return (
      <p class="hint">
        It lies in {place.places} places: the plan’s file says where, and how far it is turned.
      </p>
    );
  const { right, up } = place;
  return (
    <>
      <LengthField
        label="Right of the middle"
        path={['at', 0]}
        sign="any"
        hint="Of the quilt; less than 0 is left"
        part={{ written: right, change: (text) => [['at'], placeWritten(text, up)] }}
      />
      <LengthField
        label="Up from the middle"
        path={['at', 1]}
        sign="any"
        hint="Less than 0 is down"
        part={{ written: up, change: (text) => [['at'], placeWritten(right, text)] }}
      />
      <TurnField />
    </>
  );
};

const TURN = /^-?\d{1,3}(\.\d{1,4})?$/;
const isTurn = (text: string): boolean => TURN.test(text) && Math.abs(Number(text)) <= 360;

const TurnField = () => {
  const id = useId();
  const typed = useSignal<string | undefined>(undefined);
  const written = turnOf(state.value);
  const isWrong = typed.value !== undefined && !isTurn(typed.value);
  return (
    <div class="field">
      <label for={id}>Turned, degrees</label>
      <input
        id={id}
        class="length"
        inputMode="text"
        autocomplete="off"
        size={6}
        value={typed.value ?? written}
        aria-invalid={isWrong ? 'true' : undefined}
        aria-describedby={`${id}-more`}
        onInput={(event) => {
          const text = event.currentTarget.value.trim();
          typed.value = text;
          if (isTurn(text) && text !== written)
            edit([[['turn'], Number(text) === 0 ? undefined : Number(text)]], 'turn');
        }}
        onBlur={() => {
          if (!isWrong) typed.value = undefined;
        }}
      />
      <p class={isWrong ? 'wrong' : 'hint'} id={`${id}-more`}>
        {isWrong ? 'Type degrees from -360 to 360, such as 90.' : 'Against the clock'}
      </p>
    </div>
  );
};

const AddPart = () => {
  const id = useId();
  const typed = useSignal('');
  const usual = freeName(state.value.plan);
  const name = typed.value.trim() || usual;
  const word = fileWord(name);
  const wrong =
    word === '' || name.includes(',')
      ? 'A name has a letter or a digit, and no commas.'
      : partNames.value.some((other) => fileWord(other) === word)
        ? 'Another part is called so.'
        : undefined;
  return (
    <form
      class="field"
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong !== undefined) return;
        typed.value = '';
        addPart(name);
      }}
    >
      <label for={id}>Name of a new part</label>
      <input
        id={id}
        autocomplete="off"
        maxLength={MOST_NAME}
        placeholder={usual}
        value={typed.value}
        aria-invalid={wrong === undefined ? undefined : 'true'}
        aria-describedby={wrong === undefined ? undefined : `${id}-more`}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
      <button type="submit" disabled={wrong !== undefined}>
        Add a part
      </button>
      {wrong === undefined ? null : (
        <p class="wrong" id={`${id}-more`}>
          {wrong}
        </p>
      )}
    </form>
  );
};
