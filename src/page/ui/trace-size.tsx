/** How large a traced picture is, and what is done where its printed outline does not fit the acrylic. */

import { useSignal } from '@preact/signals';
import { type OffBy, sizeByPrint, sizeWords } from '../../jobs/size-by-print.ts';
import { MM_PER_INCH } from '../../length/index.ts';
import type { OwnTemplate, TracedOutline } from '../engine/messages.ts';
import { lengthSaid } from './by-hand.ts';
import { Choice, InputField } from './fields.tsx';
import { focusFirst } from './focus-on.ts';
import { inHers } from './her-lengths.ts';
import { PrintOutline } from './print-outline.tsx';
import { Figure } from './trace-lines.tsx';
import { isTraced, resolutionSaid, type Scale, say, traceTold, tracing } from './tracing.ts';

/** How large the picture is. A capture sheet in it says so by its marks. */
export const ScaleFields = ({
  ofFile,
  outline,
}: {
  readonly ofFile: number | undefined;
  readonly outline: TracedOutline | undefined;
}) => {
  const scale = tracing.value?.scale ?? { kind: 'own' };
  if (outline?.source === 'capture-sheet')
    return <p class="hint">The eight marks of the sheet say how large it is.</p>;
  const file =
    ofFile === undefined
      ? 'the file does not say'
      : `as its file says: ${Math.round(ofFile * MM_PER_INCH)} dots per inch`;
  const begin: Readonly<Record<Scale['kind'], Scale>> = {
    own: { kind: 'own' },
    dpi: { kind: 'dpi', text: '' },
    marks: { kind: 'marks', marks: [], apart: '' },
  };
  const isWrong = scale.kind !== 'own' && resolutionSaid(scale) === 'wrong';
  return (
    <>
      <Choice
        label="How large it is"
        value={scale.kind}
        options={[
          ['own', file],
          ['dpi', 'what the scanner was set to'],
          ['marks', 'two marks that I tap'],
        ]}
        onChoose={(kind) => say({ scale: begin[kind as Scale['kind']] })}
      />
      {scale.kind === 'dpi' ? (
        <InputField
          label="Dots per inch"
          inputMode="numeric"
          placeholder="such as 300"
          value={scale.text}
          isWrong={isWrong && scale.text !== ''}
          more={isWrong && scale.text !== '' ? 'Write a whole number from 100 to 2400.' : undefined}
          onType={(text) => say({ scale: { kind: 'dpi', text } })}
        />
      ) : null}
      {scale.kind === 'marks' ? (
        <InputField
          label="The two marks are apart by"
          placeholder="such as 6"
          value={scale.apart}
          more={
            scale.marks.length < 2
              ? 'Tap two lines of a ruler or a cutting mat in the picture, as far apart as they go; the ruler must lie as high as the template’s edge.'
              : 'Tap again to begin anew.'
          }
          onType={(apart) => say({ scale: { ...scale, apart } })}
        />
      ) : null}
    </>
  );
};

/** The outline on paper at its true size, and the way back where the acrylic does not fit it. */
export const FitOfPrint = ({
  outline,
  template,
}: {
  readonly outline: TracedOutline | undefined;
  readonly template: OwnTemplate | undefined;
}) => {
  const off = useSignal('');
  const acrylic = useSignal<OffBy['acrylic']>('longer');
  const now = tracing.value;
  if (!now || !outline || !template) return null;
  const by = lengthSaid(off.value);
  const factor =
    typeof by === 'number' ? sizeByPrint(outline.chord, { by, acrylic: acrylic.value }) : undefined;
  return (
    <fieldset class="trace-part fitting">
      <legend>Does it fit?</legend>
      <PrintOutline template={template} told={traceTold} isOld={!isTraced.value} />
      <Figure
        label={`Between heel and crown end (${inHers(outline.chord)}) it is off by`}
        placeholder="such as 1/16 in"
        value={off.value}
        onType={(text) => {
          off.value = text;
        }}
      />
      <Choice
        label="The acrylic is"
        value={acrylic.value}
        options={[
          ['longer', 'longer than its outline'],
          ['shorter', 'shorter than its outline'],
        ]}
        onChoose={(next) => {
          acrylic.value = next as OffBy['acrylic'];
        }}
      />
      {factor === 'too-far' ? (
        <p class="wrong">
          That is more than a tenth. Look at how large the picture is, above, and whether the page was printed
          at 100 %.
        </p>
      ) : null}
      <button
        type="button"
        disabled={typeof factor !== 'number' || !isTraced.value}
        onClick={() => {
          if (typeof factor !== 'number') return;
          say({ correction: now.correction * factor });
          off.value = '';
          traceTold.value = `The outline is now ${sizeWords(factor)}. Print it once more.`;
          focusFirst('.fitting');
        }}
      >
        Put the size right
      </button>
      {now.correction === 1 ? null : (
        <p>
          Set right by hand: {sizeWords(now.correction)} than the picture says.{' '}
          <button type="button" onClick={() => say({ correction: 1 })}>
            As the picture says
          </button>
        </p>
      )}
    </fieldset>
  );
};
