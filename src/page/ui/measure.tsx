/** Her figures, each at its own side of the quilt, round a picture that changes with them. */

import { keysAt, textAt } from '../plan/plan-text.ts';
import { Choice, LengthField, Panel, PlanChoice, Troubles } from './fields.tsx';
import { Drawn } from './picture.tsx';
import { edit, fills, look, shown, state } from './store.ts';

const SIDES = ['top', 'right', 'bottom', 'left'] as const;

/** One figure for all four sides is how a plan may say it; here each side has its own. */
const isSquare = (plan: string): boolean => textAt(plan, ['layout', 'border', 'inner']) !== undefined;

const setKind = (kind: string): void => {
  const { plan } = state.value;
  const now = keysAt(plan, ['layout'])[0] ?? 'border';
  if (now === kind) return;
  const width = textAt(plan, ['layout', now, 'width']) ?? '6';
  const margin = textAt(plan, ['layout', now, 'margin']) ?? '1/2';
  const long =
    textAt(plan, ['layout', now, 'length']) ??
    textAt(plan, ['layout', 'border', 'inner', 'top']) ??
    textAt(plan, ['layout', 'border', 'inner']) ??
    '60';
  const layout =
    kind === 'strip'
      ? { strip: { length: long, width, margin } }
      : {
          border: {
            width,
            inner: { top: long, right: long, bottom: long, left: long },
            margin,
            corners: 'turn',
          },
        };
  edit([
    [['layout'], layout],
    [['swag', 'repeats'], undefined],
  ]);
};

export const Measure = () => {
  const { plan } = state.value;
  const kind = keysAt(plan, ['layout'])[0] ?? 'border';
  const isBorder = kind === 'border';
  return (
    <Panel
      id="measure"
      title="Your quilt"
      lead={
        isBorder
          ? 'Measure each side along the seam that the border is sewn to, corner to corner.'
          : 'Measure the strip along its seam.'
      }
      aside={
        <Choice
          label="What is it?"
          class="inline"
          value={kind}
          options={[
            ['border', 'A border round a quilt'],
            ['strip', 'One straight strip'],
            ...(kind === 'frame' ? ([['frame', 'A frame round a motif']] as const) : []),
          ]}
          onChoose={setKind}
        />
      }
    >
      {kind === 'frame' ? (
        <p>Frames round a motif are made with the command for now; the plan is kept as it is.</p>
      ) : (
        <div class={`quilt-form ${kind}`}>
          {isBorder ? (
            isSquare(plan) ? (
              <LengthField class="at-top" label="All four sides" path={['layout', 'border', 'inner']} />
            ) : (
              SIDES.map((side) => (
                <LengthField
                  key={side}
                  class={`at-${side}`}
                  label={`${side.charAt(0).toUpperCase()}${side.slice(1)} side`}
                  path={['layout', 'border', 'inner', side]}
                />
              ))
            )
          ) : (
            <LengthField class="at-top" label="Length" path={['layout', 'strip', 'length']} />
          )}
          <QuiltPicture />
        </div>
      )}
      {kind === 'frame' ? null : (
        <div class="field-row">
          <LengthField label={isBorder ? 'Border width' : 'Strip width'} path={['layout', kind, 'width']} />
          {keysAt(plan, ['layout', kind, 'margin']).length > 0 ? (
            <>
              <LengthField
                label="Clear of the inner seam"
                path={['layout', kind, 'margin', 'inner']}
                usual="0"
              />
              <LengthField
                label="Clear of the outer seam"
                path={['layout', kind, 'margin', 'outer']}
                usual="0"
              />
            </>
          ) : (
            <LengthField label="Clear of both seams" path={['layout', kind, 'margin']} usual="0" />
          )}
          <LengthField
            label="Foot clearance"
            path={['foot', 'clearance']}
            usual="1/4 in"
            hint="Needle to the outside of the foot"
          />
          {isBorder ? (
            <>
              <PlanChoice
                label="At the corners"
                path={['layout', 'border', 'corners']}
                options={[
                  ['auto', 'whatever fits best'],
                  ['turn', 'a swag across each'],
                  ['meet', 'the sides meet'],
                  ['open', 'left open'],
                ]}
              />
              <PlanChoice
                label="Swags hang from"
                path={['layout', 'border', 'from']}
                options={[
                  ['inner', 'the inner seam'],
                  ['outer', 'the outer seam'],
                ]}
              />
            </>
          ) : null}
        </div>
      )}
      <Verdict />
    </Panel>
  );
};

const QuiltPicture = () => {
  const design = shown.value;
  if (!design) return <div class="quilt-picture waiting" aria-hidden="true" />;
  const words = [...design.summary, ...design.lines].join('; ');
  return (
    <div class="quilt-picture">
      <Drawn picture={design.quilt} label={`Picture of the quilt. ${words}`} class="quilt">
        {fills.value?.quilt.map((copies, i) =>
          copies.places.map((place) => (
            <path
              key={`${i} ${place.join(' ')}`}
              class="ink fill"
              d={copies.d}
              transform={`matrix(${place.join(' ')})`}
            />
          )),
        )}
      </Drawn>
      <div class="quilt-middle" aria-hidden="true">
        <p class="big">{design.summary[0]}</p>
        <p>{design.summary[1]}</p>
      </div>
    </div>
  );
};

/** What came of it, in words: the design, or what is in the way. */
const Verdict = () => {
  const answer = look.value;
  const design = shown.value;
  if (!answer) return <p class="verdict">Working it out …</p>;
  if (answer.problems.length > 0)
    return (
      <section class="verdict wrong" aria-label="What is in the way">
        <p>
          <strong>This does not work out yet.</strong>
          {design ? ' The picture still shows the last design that did.' : ''}
        </p>
        <Troubles list={answer.problems} />
      </section>
    );
  if (!design) return null;
  return (
    <div class="verdict">
      <ul class="sides" aria-label="What each side comes to">
        {design.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {design.messages.map((message) => (
        <p key={message} class="hint">
          {message}
        </p>
      ))}
    </div>
  );
};
