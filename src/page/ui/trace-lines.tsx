/** What neither a picture nor points tell of the acrylic: its thickness, and the lines etched in it, by figure or by a tap. */

import type { ComponentChildren } from 'preact';
import type { EdgeShown } from '../engine/messages.ts';
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
      <legend>The acrylic</legend>
      <Figure
        label="Its thickness"
        placeholder="such as 1/4 in"
        value={now.thickness}
        onType={(thickness) => hand.say({ thickness }, 'thickness')}
      />
      {children}
      <Lines
        {...{ hand, outline }}
        kind="across"
        lines={now.across}
        add="Add a line etched across, near the heel"
        figure="from the heel"
      />
      <Lines
        {...{ hand, outline }}
        kind="along"
        lines={now.along}
        add="Add a line etched along the edge"
        figure="inside the edge"
      />
    </fieldset>
  );
};

interface LinesProps {
  readonly hand: Hand;
  readonly kind: 'across' | 'along';
  readonly lines: readonly EtchedLine[];
  readonly outline: EdgeShown | undefined;
  readonly add: string;
  readonly figure: string;
}

const Lines = ({ hand, kind, lines, outline, add, figure }: LinesProps) => {
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
          told.value = 'A line is added: type its distance, or tap it in the picture.';
        }}
      >
        {add}
      </button>
      {lines.length > 0 ? (
        <ul class="trace-list">
          {lines.map((line, i) => {
            const at = line.place && outline?.[kind][made.indexOf(line)]?.at;
            const called = kind === 'across' ? `Line ${line.name}` : `Line ${i + 1} along the edge`;
            const isTapping = tool.value?.kind === kind && tool.value.id === line.id;
            return (
              <li key={line.id}>
                {kind === 'across' ? (
                  <NameField
                    label={`Name of line ${i + 1} across`}
                    most={40}
                    value={line.name}
                    onType={(name) => {
                      if (name !== '') change(line.id, { name });
                    }}
                  />
                ) : null}
                <Figure
                  label={`${called}, ${figure}`}
                  placeholder={line.place ? 'tapped' : 'such as 1/4 in'}
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
                  Tap it in the picture
                </button>
                <button
                  type="button"
                  onClick={() => {
                    say({ [kind]: lines.filter((l) => l.id !== line.id) });
                    if (isTapping) tool.value = undefined;
                    told.value = `${called} is taken out.`;
                  }}
                >
                  Take out {called.toLowerCase().replace(line.name.toLowerCase(), line.name)}
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
  [...LETTERS].find((l) => lines.every((line) => line.name !== l)) ?? `line ${lines.length + 1}`;

/** A length that is no part of a plan. */
export const Figure = (
  field: Pick<Parameters<typeof InputField>[0], 'label' | 'placeholder' | 'value' | 'onType'>,
) => {
  const isWrong = lengthSaid(field.value) === 'wrong';
  return (
    <InputField
      {...field}
      isWrong={isWrong}
      more={isWrong ? 'Write a length, such as 1/4 in or 6 mm.' : undefined}
    />
  );
};
