/** What a picture does not tell of the acrylic: its thickness, and the lines etched in it, by figure or by a tap. */

import type { TracedOutline } from '../engine/messages.ts';
import { InputField, NameField } from './fields.tsx';
import { inHers } from './her-lengths.ts';
import { tool } from './tapping.ts';
import { type EtchedLine, LEAST_HEIGHT, lengthSaid, saidLines, say, traceTold, tracing } from './tracing.ts';

export const Acrylic = ({ outline }: { readonly outline: TracedOutline | undefined }) => {
  const now = tracing.value;
  if (!now) return null;
  return (
    <fieldset class="trace-part">
      <legend>The acrylic</legend>
      <Figure
        label="Its thickness"
        placeholder="such as 1/4 in"
        value={now.thickness}
        onType={(thickness) => say({ thickness }, 'thickness')}
      />
      {outline?.source === 'capture-sheet' ? (
        <>
          <Figure
            label="How high the camera was over the sheet"
            placeholder="such as 16 in"
            value={now.height}
            onType={(height) => say({ height }, 'height')}
          />
          <p class="hint">
            {isNear(now.height)
              ? 'From nearer than 6 in no camera shows the whole sheet.'
              : 'Only where the acrylic itself lay on the sheet, and not a line drawn round it. Held level over its middle the camera sees the upper edge all round.'}
          </p>
        </>
      ) : null}
      <Lines
        kind="across"
        lines={now.across}
        outline={outline}
        add="Add a line etched across, near the heel"
        figure="from the heel"
      />
      <Lines
        kind="along"
        lines={now.along}
        outline={outline}
        add="Add a line etched along the edge"
        figure="inside the edge"
      />
    </fieldset>
  );
};

const isNear = (text: string): boolean => {
  const mm = lengthSaid(text);
  return typeof mm === 'number' && mm < LEAST_HEIGHT;
};

interface LinesProps {
  readonly kind: 'across' | 'along';
  readonly lines: readonly EtchedLine[];
  readonly outline: TracedOutline | undefined;
  readonly add: string;
  readonly figure: string;
}

const Lines = ({ kind, lines, outline, add, figure }: LinesProps) => {
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
          traceTold.value = 'A line is added: type its distance, or tap it in the picture.';
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
                  value={at === undefined ? line.text : inHers(at)}
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
                    traceTold.value = `${called} is taken out.`;
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
