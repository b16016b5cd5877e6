/** One swag, large: parts of the edge to start and end at, and handles that tilt the template as far as it fits. */

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Chosen, SectionFacts, SwagAnswer, SwagPose, SwagStop } from '../engine/messages.ts';
import { type Ends, endsNow, noneWithBoth, withEnd } from '../plan/ends.ts';
import { keysAt } from '../plan/plan-text.ts';
import { swagWords } from '../words/words.ts';
import { isNarrow } from './browser.ts';
import { explained } from './explained.tsx';
import { Choice, Panel, PlanChoice } from './fields.tsx';
import { Handles, nearestStop } from './handles.tsx';
import { Inks, Letterings, viewBoxOf } from './picture.tsx';
import { edit, fills, look, shown, side, state, swag, take } from './store.ts';
import { unbroken } from './unbroken.ts';

export const Swag = () => {
  const design = shown.value;
  const answer = swag.value;
  const names = design ? [...design.sides.map((s) => s.name), ...(design.corner ? ['corner'] : [])] : [];
  return (
    <Panel
      id="swag"
      title={swagWords.title}
      lead={answer ? leadOf(answer, isDecided()) : swagWords.lead}
      aside={
        names.length > 1 ? (
          <Choice
            label={swagWords.onThe}
            class="inline"
            value={side.value}
            options={names.map(
              (name) =>
                [name, name === 'corner' ? swagWords.corner : swagWords.side({ side: name })] as const,
            )}
            onChoose={(name) => {
              side.value = name;
            }}
          />
        ) : null
      }
    >
      {answer && design ? <Board answer={answer} design={design} /> : <div class="board waiting" />}
    </Panel>
  );
};

/**
 * Letters are drawn for a view of about two chords. In a wider one they would be too small to read, and on a
 * telephone, where the whole swag is a hand wide, in any; but more than this they would run into one another.
 */
const WIDTH_IN_CHORDS = 2.2;
const ON_TELEPHONES = 1.8;
const LARGEST = 2.2;
/** Round a motif the words lie along its circle, nearer to the lines. */
const LARGEST_ROUND = 1.4;

const largerIn = ({ box, chord, kind }: SwagAnswer): number => {
  const wider = Math.max(1, (box.maxX - box.minX) / (WIDTH_IN_CHORDS * chord));
  return Math.min(kind === 'closed' ? LARGEST_ROUND : LARGEST, wider * (isNarrow.value ? ON_TELEPHONES : 1));
};

const Board = ({
  answer,
  design,
}: {
  readonly answer: NonNullable<typeof swag.value>;
  readonly design: Chosen;
}) => {
  const moving = useSignal<SwagPose | undefined>(undefined);
  const picked = useSignal<SectionFacts | undefined>(undefined);
  // A new answer is where the swag stands now, whatever a hand was at.
  useEffect(() => {
    moving.value = undefined;
  }, [answer]);
  const pose = moving.value ?? answer.pose;
  const at = answer.stops.findIndex((stop) => stop.key === design.key);
  const here = answer.sections.find((s) => s.number === picked.value?.number);
  return (
    <>
      <svg class="drawn board" viewBox={viewBoxOf(answer.box)} aria-labelledby="board-words">
        <title id="board-words">{swagWords.picture({ pose: answer.pose.words })}</title>
        <g transform={`translate(${pose.moved.x.toFixed(3)} ${pose.moved.y.toFixed(3)})`}>
          {fills.value?.side === answer.side && !moving.value ? (
            <path class="ink fill" d={fills.value.swag} />
          ) : null}
          <Inks inks={pose.inks} />
          <Letterings texts={pose.texts} larger={largerIn(answer)} />
          {moving.value ? null : (
            <Sections
              sections={answer.sections}
              picked={here?.number}
              onPick={(s) => {
                picked.value = picked.value?.number === s.number ? undefined : s;
              }}
            />
          )}
        </g>
        {answer.turns ? <Handles answer={answer} pose={pose} at={at} moving={moving} /> : null}
      </svg>
      <p class="reading" aria-live="off">
        <strong>{unbroken(pose.words)}</strong>
        {moving.value === undefined
          ? repeatsWords(answer, at)
          : pose.misfit
            ? ` · ${pose.misfit}`
            : ` · ${snapWords(answer.stops[nearestStop(answer.stops, pose.halfSpan)])}`}
      </p>
      {answer.kind === 'corner' ? <p class="hint">{swagWords.cornerDepth}</p> : null}
      {answer.turns ? null : <p class="hint">{swagWords.fixed[answer.kind]}</p>}
      {answer.stops.length > 1 ? <Counts stops={answer.stops} at={at} kind={answer.kind} /> : null}
      <EdgeChoice answer={answer} picked={here} />
    </>
  );
};

/** For those who would rather pick than drag: the same counts by name. */
const Counts = ({
  stops,
  at,
  kind,
}: {
  readonly stops: readonly SwagStop[];
  readonly at: number;
  readonly kind: SwagAnswer['kind'];
}) => (
  <div class="steps">
    <button type="button" disabled={at <= 0} onClick={() => take(stops[at - 1]!.key)}>
      {kind === 'closed' ? swagWords.moreRound : swagWords.narrower}
    </button>
    <button
      type="button"
      disabled={at < 0 || at >= stops.length - 1}
      onClick={() => take(stops[at + 1]!.key)}
    >
      {kind === 'closed' ? swagWords.fewerRound : swagWords.wider}
    </button>
  </div>
);

/** Whether the plan leaves nothing to choose: such is what “Save plan” writes. */
const isDecided = (): boolean => look.value?.facts?.decides === true && look.value.found === 1;

const leadOf = ({ kind, turns }: SwagAnswer, decided: boolean): string => {
  if (decided) return swagWords.leadDecided;
  if (!turns) return swagWords.leadFixed;
  return kind === 'corner' ? swagWords.leadCorner : swagWords.leadSide;
};

const repeatsWords = ({ stops, kind }: SwagAnswer, at: number): string => {
  const repeats = stops[at]?.repeats;
  if (repeats === undefined) return '';
  return ` · ${kind === 'closed' ? swagWords.roundMotif({ repeats }) : swagWords.onThisSide({ repeats })}`;
};

const snapWords = (stop: SwagStop | undefined): string =>
  stop ? swagWords.snapsTo({ fit: stop.words }) : swagWords.snapsBack;

const EdgeChoice = ({
  answer: { sections, uses, kind },
  picked,
}: {
  readonly answer: SwagAnswer;
  readonly picked: SectionFacts | undefined;
}) => {
  // Where a corner has a swag of its own, what is chosen there is the corner's alone.
  const group = kind === 'corner' && keysAt(state.value, ['corner']).length > 0 ? 'corner' : 'swag';
  const ends: Ends = endsNow(state.value, uses.ends, group);
  const none = look.value ? noneWithBoth(look.value.problems, state.value, group) : undefined;
  const move = (which: keyof Ends, at: number | string): void => edit(withEnd(ends, which, at, group));
  return (
    <div class="edge-choice">
      {none === undefined ? (
        <p>
          {swagWords.uses({
            from: <strong>{explained(uses.from)}</strong>,
            to: <strong>{explained(uses.to)}</strong>,
          })}
        </p>
      ) : (
        <p class="wrong">{none}</p>
      )}
      {sections.length > 1 ? (
        <div class="steps">
          {sections.map((s) => (
            <span key={s.number} class={`edge-part${s.number === picked?.number ? ' picked' : ''}`}>
              <span class="name">{s.label}</span>
              <button
                type="button"
                aria-label={swagWords.startAt({ section: s.label })}
                aria-pressed={none === undefined ? s.starts : ends.from === s.number}
                onClick={() => move('from', s.number)}
              >
                {swagWords.start}
              </button>
              <button
                type="button"
                aria-label={swagWords.endAt({ section: s.label })}
                aria-pressed={
                  none === undefined
                    ? s.ends
                    : ends.to === (s.number === sections.length ? 'crown' : s.number)
                }
                onClick={() => move('to', s.number === sections.length ? 'crown' : s.number)}
              >
                {swagWords.end}
              </button>
            </span>
          ))}
          <button
            type="button"
            onClick={() =>
              edit([
                [[group, 'from'], undefined],
                [[group, 'to'], undefined],
              ])
            }
          >
            {swagWords.anyPart}
          </button>
        </div>
      ) : null}
      <details>
        <summary>{swagWords.wishes}</summary>
        <p class="hint">{explained(swagWords.wishesHint)}</p>
        <div class="field-row">
          {group === 'corner' ? null : (
            <PlanChoice
              label={swagWords.setting.label}
              path={['swag', 'setting']}
              options={[
                ['auto', swagWords.setting.auto],
                ['crown-on-centre', swagWords.setting.crown],
                ['alignment-line', swagWords.setting.line],
                ['flat-on-guide', swagWords.setting.flat],
              ]}
            />
          )}
          <PlanChoice
            label={swagWords.lies.label}
            path={[group, 'side']}
            options={[
              ['auto', swagWords.lies.auto],
              ['inside', swagWords.lies.inside],
              ['outside', swagWords.lies.outside],
            ]}
          />
          <PlanChoice
            label={swagWords.seam.label}
            path={[group, 'direction']}
            options={[
              ['auto', swagWords.seam.auto],
              ['heel-first', swagWords.seam.heel],
              ['crown-first', swagWords.seam.crown],
            ]}
          />
        </div>
      </details>
    </div>
  );
};

const Sections = ({
  sections,
  picked,
  onPick,
}: {
  readonly sections: readonly SectionFacts[];
  readonly picked: number | undefined;
  readonly onPick: (section: SectionFacts) => void;
}) => (
  <>
    {sections.map((s) => (
      // The buttons under the picture do the same by keyboard and by name; this is for hands on the picture.
      <g key={s.number} class={`section${s.number === picked ? ' picked' : ''}`}>
        <path class="shown" d={s.d} />
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons below are the keyboard's way */}
        <path class="touch" d={s.d} onClick={() => onPick(s)} />
      </g>
    ))}
  </>
);
