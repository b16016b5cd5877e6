/** The figures of each fill, by slider or typed: while a slider moves the drawing follows, and all else when it is let go. */

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { bandSpacing, USUAL_SEED, USUAL_SPACING } from '../../drawing/index.ts';
import { MM_PER_INCH, readLength, type Units } from '../../length/index.ts';
import { LARGEST_SEED } from '../../plan/index.ts';
import type { FillFacts } from '../engine/messages.ts';
import {
  type FigureKey,
  type FillPlace,
  figureAt,
  figureChanges,
  type WrittenFill,
  writtenFills,
} from '../plan/fill-text.ts';
import { exactly, shownLength } from '../plan/her-units.ts';
import { plainWords } from '../plan/plain-words.ts';
import { listAt } from '../plan/plan-text.ts';
import { fillsWords, wishesWords } from '../words/words.ts';
import { InputField, keyName, unitsNow } from './fields.tsx';
import { troubles } from './pairs.ts';
import { edit, fillList, fills, letGo, partNow, shown, state } from './store.ts';
import { cannotRead, canRead, unreadAt } from './unread.ts';

export const FillFigures = () => (
  <>
    {writtenFills(state.value).flatMap((fill) => {
      const known = fillList.value.find(({ name }) => name === fill.kind);
      return known
        ? [<Figures key={`${partNow.value} ${fill.place} ${fill.kind}`} fill={fill} known={known} />]
        : [];
    })}
  </>
);

const titleOf = ({ kind, place }: WrittenFill): string => {
  const isSquare = place === 'corner' && !shown.value?.corner;
  return fillsWords.place[isSquare ? 'square' : place]({ fill: kind });
};

const Figures = ({ fill, known }: { readonly fill: WrittenFill; readonly known: FillFacts }) => {
  return (
    <fieldset class="field wish fill-figures">
      <legend>{titleOf(fill)}</legend>
      <div class="field-row">
        <Figure fill={fill} figure={spacingOf(fill, unitsNow())} />
        {known.usualAngle === undefined ? null : <Figure fill={fill} figure={angleFrom(known.usualAngle)} />}
        {known.takes.includes('seed') ? <Figure fill={fill} figure={SEED} /> : null}
      </div>
    </fieldset>
  );
};

/** One figure: how it is read and shown, and where a slider takes it. */
interface FigureKind {
  readonly key: FigureKey;
  readonly label: string;
  /** What is meant where nothing is written. */
  readonly usual: string;
  /** What is wrong with what is typed, in a sentence. */
  readonly fault: (text: string) => string | undefined;
  readonly shown: (written: string) => string;
  /** A slider's steps, from and to, and what a step is as a figure. */
  readonly least: number;
  readonly most: number;
  readonly stepAt: (written: string) => number;
  readonly figureAt: (step: number) => string;
  /** Said after a figure. */
  readonly unit: string;
}

/** mm to a slider's step, and the steps that it offers: from 1/8 in to 1 1/2 in. What is more or less can be typed. */
const STEP: Readonly<Record<Units, number>> = { in: MM_PER_INCH / 32, cm: 0.5, mm: 0.5 };
const FROM = MM_PER_INCH / 8;
const TO = 1.5 * MM_PER_INCH;

const spacingOf = ({ place }: WrittenFill, units: Units): FigureKind => {
  const step = STEP[units];
  const figureAt = (at: number): string => exactly(at * step, units) ?? `${at * step} mm`;
  const stepAt = (written: string): number => {
    const length = readLength(written, units);
    return length.ok ? length.mm / step : 0;
  };
  return {
    key: 'spacing',
    label: fillsWords.spacing,
    usual: figureAt(usualSpacing(place, units) / step),
    fault: (text) => {
      const read = readLength(text, units, 'positive');
      return read.ok ? undefined : plainWords({ ...read, message: read.reason }, fillsWords.spacingName);
    },
    shown: (written) => shownLength(written, units).text,
    least: Math.ceil(FROM / step),
    most: Math.floor(TO / step),
    stepAt,
    figureAt,
    unit: units,
  };
};

/** mm; of channels that of the first. */
const usualSpacing = (place: FillPlace, units: Units): number => {
  if (place !== 'channels') return USUAL_SPACING;
  const [first = ''] = [
    ...listAt(state.value, ['channels', 'outward']),
    ...listAt(state.value, ['channels', 'inward']),
  ];
  const width = readLength(first, units);
  return width.ok ? bandSpacing(width.mm) : USUAL_SPACING;
};

const ANGLE_STEP = 5;
const angleFrom = (usual: number): FigureKind => ({
  key: 'angle',
  label: fillsWords.angle,
  usual: String(usual),
  fault: (text) => (/^-?\d{1,3}(\.\d{1,4})?$/.test(text) ? undefined : fillsWords.angleWrong),
  shown: (written) => written,
  least: 0,
  most: 180 / ANGLE_STEP - 1,
  stepAt: (written) => (((Number(written) % 180) + 180) % 180) / ANGLE_STEP,
  figureAt: (at) => String(at * ANGLE_STEP),
  unit: '°',
});

const SEED: FigureKind = {
  key: 'seed',
  label: fillsWords.seed,
  usual: String(USUAL_SEED),
  fault: (text) => (/^\d{1,9}$/.test(text) ? undefined : fillsWords.seedWrong({ most: LARGEST_SEED })),
  shown: (written) => written,
  least: 1,
  most: 50,
  stepAt: Number,
  figureAt: String,
  unit: '',
};

const Figure = ({ fill, figure }: { readonly fill: WrittenFill; readonly figure: FigureKind }) => {
  const typed = useSignal<string | undefined>(undefined);
  const key = keyName([...fill.at[0]!, figure.key]);
  const unread = unreadAt(key);
  useEffect(() => () => canRead(key), [key]);
  const said = figureAt(state.value, fill, figure.key);
  const meant = said ?? figure.usual;
  const wrong = [...troubles.value, ...(fills.value?.problems ?? [])].find((t) => t.key === key)?.text;
  const change = (text: string, isSliding: boolean): void =>
    edit(figureChanges(state.value, fill, figure.key, text === '' ? undefined : text), key, isSliding);
  const put = (text: string, isDone: boolean): void => {
    const fault = text === '' ? undefined : figure.fault(text);
    if (fault !== undefined) {
      typed.value = undefined;
      cannotRead(key, text, fault, isDone);
      return;
    }
    typed.value = text;
    canRead(key);
    if (text !== (said ?? '')) change(text, false);
  };
  const { label, least, most, unit } = figure;
  return (
    <div class="field">
      <InputField
        label={label}
        placeholder={figure.shown(figure.usual)}
        value={unread?.text ?? typed.value ?? figure.shown(said ?? '')}
        isWrong={wrong !== undefined}
        more={wrong}
        onType={(text) => put(text.trim(), false)}
        onLeave={(text) => {
          if (typed.value !== undefined || unread !== undefined) put(text.trim(), true);
          typed.value = undefined;
        }}
      />
      <input
        type="range"
        aria-label={wishesWords.sliderOf({ label })}
        aria-valuetext={`${figure.shown(meant)} ${unit}`.trim()}
        min={least}
        max={most}
        step={1}
        value={Math.min(most, Math.max(least, Math.round(figure.stepAt(meant))))}
        onInput={(event) => {
          typed.value = undefined;
          canRead(key);
          change(figure.figureAt(Number(event.currentTarget.value)), true);
        }}
        onChange={letGo}
      />
    </div>
  );
};
