/**
 * The parts of a quilt by their names: the one that is open is worked on, and the others stay as they are. Where it lies
 * on the quilt is said here, and parts are added and taken out.
 */

import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { fileWord, MOST_NAME } from '../../document/index.ts';
import { cornersOfWritten } from '../../plan/index.ts';
import { freeCornered, freeName, type Place, placeOf, placeWritten, turnOf } from '../plan/part-text.ts';
import { partsWords } from '../words/words.ts';
import { Choice, LengthField } from './fields.tsx';
import { addPart, edit, openPartNamed, partNames, partNow, removePart, state } from './store.ts';

export const Parts = () => {
  const names = partNames.value;
  const open = partNow.value;
  if (open === undefined)
    return (
      <section class="add-part" aria-label={partsWords.title}>
        <details>
          <summary>{partsWords.more}</summary>
          <AddPart />
        </details>
      </section>
    );
  return (
    <nav class="parts" aria-label={partsWords.title}>
      <p>{partsWords.lead}</p>
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
            {partsWords.takeOut({ name: open })}
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
          label={partsWords.lies}
          value={of}
          options={[
            ['', partsWords.ownPlace],
            ...squares.map((name) => [name, partsWords.inCornersOf({ name })] as const),
          ]}
          onChoose={(name) => edit([[['at'], name === '' ? undefined : cornersOfWritten(name)]])}
        />
      ) : null}
      {'cornersOf' in place ? <TurnField /> : <OwnPlace place={place} />}
    </>
  );
};

const OwnPlace = ({ place }: { readonly place: Exclude<Place, { readonly cornersOf: string }> }) => {
  if ('places' in place) return <p class="hint">{partsWords.inPlaces({ count: place.places })}</p>;
  const { right, up } = place;
  return (
    <>
      <LengthField
        label={partsWords.right}
        path={['at', 0]}
        sign="any"
        hint={partsWords.rightHint}
        part={{ written: right, change: (text) => [['at'], placeWritten(text, up)] }}
      />
      <LengthField
        label={partsWords.up}
        path={['at', 1]}
        sign="any"
        hint={partsWords.upHint}
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
      <label for={id}>{partsWords.turned}</label>
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
        {isWrong ? partsWords.turnedWrong : partsWords.turnedHint}
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
      ? partsWords.nameWrong
      : partNames.value.some((other) => fileWord(other) === word)
        ? partsWords.nameTaken
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
      <label for={id}>{partsWords.newName}</label>
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
        {partsWords.add}
      </button>
      {wrong === undefined ? null : (
        <p class="wrong" id={`${id}-more`}>
          {wrong}
        </p>
      )}
    </form>
  );
};
