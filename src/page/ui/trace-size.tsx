/** How large a traced picture is, and what is done where its printed outline does not fit the acrylic. */

import { useSignal } from '@preact/signals';
import { type OffBy, sizeByPrint, sizeWords } from '../../jobs/size-by-print.ts';
import { MM_PER_INCH } from '../../length/index.ts';
import type { OwnTemplate, TracedOutline } from '../engine/messages.ts';
import { handWords, traceWords } from '../words/words.ts';
import { lengthSaid } from './by-hand.ts';
import { Choice, InputField } from './fields.tsx';
import { focusFirst } from './focus-on.ts';
import { inHers } from './her-lengths.ts';
import { PrintOutline } from './print-outline.tsx';
import { Figure } from './trace-lines.tsx';
import { isTraced, resolutionSaid, type Scale, say, traceTold, tracing } from './tracing.ts';

const { size, fit } = traceWords;

/** How large the picture is. A capture sheet in it says so by its marks. */
export const ScaleFields = ({
  ofFile,
  outline,
}: {
  readonly ofFile: number | undefined;
  readonly outline: TracedOutline | undefined;
}) => {
  const scale = tracing.value?.scale ?? { kind: 'own' };
  if (outline?.source === 'capture-sheet') return <p class="hint">{size.bySheet}</p>;
  const file =
    ofFile === undefined ? size.fileSilent : size.byFile({ dots: Math.round(ofFile * MM_PER_INCH) });
  const begin: Readonly<Record<Scale['kind'], Scale>> = {
    own: { kind: 'own' },
    dpi: { kind: 'dpi', text: '' },
    marks: { kind: 'marks', marks: [], apart: '' },
  };
  const isWrong = scale.kind !== 'own' && resolutionSaid(scale) === 'wrong';
  return (
    <>
      <Choice
        label={size.label}
        value={scale.kind}
        options={[
          ['own', file],
          ['dpi', size.byScanner],
          ['marks', size.byMarks],
        ]}
        onChoose={(kind) => say({ scale: begin[kind as Scale['kind']] })}
      />
      {scale.kind === 'dpi' ? (
        <InputField
          label={size.dots}
          inputMode="numeric"
          placeholder={size.dotsExample}
          value={scale.text}
          isWrong={isWrong && scale.text !== ''}
          more={isWrong && scale.text !== '' ? size.dotsWrong : undefined}
          onType={(text) => say({ scale: { kind: 'dpi', text } })}
        />
      ) : null}
      {scale.kind === 'marks' ? (
        <InputField
          label={size.apart}
          placeholder={size.apartExample}
          value={scale.apart}
          more={scale.marks.length < 2 ? size.tapMarks : size.tapAgain}
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
      <legend>{handWords.fits}</legend>
      <PrintOutline template={template} told={traceTold} isOld={!isTraced.value} />
      <Figure
        label={fit.offBy({ chord: inHers(outline.chord) })}
        placeholder={fit.example}
        value={off.value}
        onType={(text) => {
          off.value = text;
        }}
      />
      <Choice
        label={fit.acrylic}
        value={acrylic.value}
        options={[
          ['longer', fit.longer],
          ['shorter', fit.shorter],
        ]}
        onChoose={(next) => {
          acrylic.value = next as OffBy['acrylic'];
        }}
      />
      {factor === 'too-far' ? <p class="wrong">{fit.tooFar}</p> : null}
      <button
        type="button"
        disabled={typeof factor !== 'number' || !isTraced.value}
        onClick={() => {
          if (typeof factor !== 'number') return;
          say({ correction: now.correction * factor });
          off.value = '';
          traceTold.value = fit.isPut({ larger: sizeWords(factor) });
          focusFirst('.fitting');
        }}
      >
        {fit.put}
      </button>
      {now.correction === 1 ? null : (
        <p>
          {fit.byHand({ larger: sizeWords(now.correction) })}{' '}
          <button type="button" onClick={() => say({ correction: 1 })}>
            {fit.undo}
          </button>
        </p>
      )}
    </fieldset>
  );
};
