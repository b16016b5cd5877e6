/** What neither a picture nor points tell of the acrylic: its thickness, and the lines etched in it, by figure or by a tap. */

import type { ComponentChildren } from 'preact';
import type { EdgeShown } from '../engine/messages.ts';
import { handWords } from '../words/words.ts';
import { type EtchedLine, type Hand, lengthSaid, saidLines } from './by-hand.ts';
import { InputField, NameField } from './fields.tsx';
import { asMeasured } from './her-lengths.ts';

interface AcrylicProps {
  readonly hand: Hand;
  readonly outline: EdgeShown | undefined;
  /** What else has to be said, below the thickness. */
  readonly children?: ComponentChildren;
}

export const Acrylic = ({ hand, outline, children }: AcrylicProps) => {
  const now = hand.said.value;
  if (!now) return null;
  return (
    <fieldset class="trace-part">
      <legend>{handWords.acrylic}</legend>
      <Figure
        label={handWords.thickness}
        placeholder={handWords.quarterInch}
        value={now.thickness}
        onType={(thickness) => hand.say({ thickness }, 'thickness')}
      />
      {children}
      <Lines {...{ hand, outline }} kind="across" lines={now.across} />
      <Lines {...{ hand, outline }} kind="along" lines={now.along} />
    </fieldset>
  );
};

interface LinesProps {
  readonly hand: Hand;
  readonly kind: 'across' | 'along';
  readonly lines: readonly EtchedLine[];
  readonly outline: EdgeShown | undefined;
}

const Lines = ({ hand, kind, lines, outline }: LinesProps) => {
  const { say, told, tool } = hand;
  const made = saidLines(lines);
  const change = (id: number, changes: Partial<EtchedLine>): void =>
    say({ [kind]: lines.map((l) => (l.id === id ? { ...l, ...changes } : l)) }, `${kind} ${id}`);
  return (
    <>
      <button
        type="button"
        onClick={() => {
          const id = Math.max(0, ...lines.map((l) => l.id)) + 1;
          const name = kind === 'across' ? freeLetter(lines) : '';
          say({ [kind]: [...lines, { id, name, text: '', place: undefined }] });
          told.value = handWords.lineAdded;
        }}
      >
        {handWords[kind].add}
      </button>
      {lines.length > 0 ? (
        <ul class="trace-list">
          {lines.map((line, i) => {
            const at = line.place && outline?.[kind][made.indexOf(line)]?.at;
            const called = { name: line.name, number: i + 1 };
            const isTapping = tool.value?.kind === kind && tool.value.id === line.id;
            return (
              <li key={line.id}>
                {kind === 'across' ? (
                  <NameField
                    label={handWords.across.nameLabel(called)}
                    most={40}
                    value={line.name}
                    onType={(name) => {
                      if (name !== '') change(line.id, { name });
                    }}
                  />
                ) : null}
                <Figure
                  label={handWords[kind].label(called)}
                  placeholder={line.place ? handWords.tapped : handWords.quarterInch}
                  value={at === undefined ? line.text : asMeasured(at)}
                  onType={(text) => change(line.id, { text, place: undefined })}
                />
                <button
                  type="button"
                  aria-pressed={isTapping}
                  onClick={() => {
                    tool.value = isTapping ? undefined : { kind, id: line.id };
                  }}
                >
                  {handWords.tapIt}
                </button>
                <button
                  type="button"
                  onClick={() => {
                    say({ [kind]: lines.filter((l) => l.id !== line.id) });
                    if (isTapping) tool.value = undefined;
                    told.value = handWords[kind].takenOut(called);
                  }}
                >
                  {handWords[kind].takeOut(called)}
                </button>
              </li>
            );
          })}
        </ul>
      ) : null}
    </>
  );
};

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

const freeLetter = (lines: readonly EtchedLine[]): string =>
  [...LETTERS].find((l) => lines.every((line) => line.name !== l)) ??
  handWords.across.freeName({ number: lines.length + 1 });

/** A length that is no part of a plan. */
export const Figure = (
  field: Pick<Parameters<typeof InputField>[0], 'label' | 'placeholder' | 'value' | 'onType'>,
) => {
  const isWrong = lengthSaid(field.value) === 'wrong';
  return <InputField {...field} isWrong={isWrong} more={isWrong ? handWords.notALength : undefined} />;
};
