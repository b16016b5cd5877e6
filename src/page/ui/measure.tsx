/** Her figures, each at its own side of the quilt, round a picture that changes with them. */

import { type ComponentChildren, Fragment } from 'preact';
import { joinBoxes } from '../../geometry/index.ts';
import type { Laid, Picture } from '../engine/messages.ts';
import { FIRST_FIGURES } from '../plan/first-figures.ts';
import { needsLimit } from '../plan/plain-words.ts';
import { keysAt, listAt, textAt } from '../plan/plan-text.ts';
import { Choice, CountField, LengthField, Panel, PlanChoice, Troubles, unitsNow } from './fields.tsx';
import { type Edge, kindNow, type LayoutKind, measureAlong, measuredAlong, setKind } from './layouts.ts';
import { awaited, cameToSides, leftSide, leftSides, SIDES, troubles, typedSide } from './pairs.ts';
import { Drawn, Inks, viewBoxOf } from './picture.tsx';
import { edit, fills, isOld, look, others, partNow, shelf, shown, state } from './store.ts';
import { unbroken } from './unbroken.ts';

const KINDS: readonly (readonly [LayoutKind, string])[] = [
  ['border', 'A border round a quilt'],
  ['strip', 'One straight strip'],
  ['frame', 'A round frame, for a motif'],
  ['block', 'A square frame, for a block'],
];

const ALONG: Readonly<Record<Edge, string>> = {
  inner: 'Measure each side along the seam that the border is sewn to, corner to corner.',
  outer: 'Measure each side of the finished outside, corner to corner.',
};

const LEADS: Readonly<Record<Exclude<LayoutKind, 'border'>, string>> = {
  strip: 'Measure the strip along its seam.',
  frame: 'Measure the wreath or medallion across its widest; the swags close round it.',
  block: 'Measure the block along its edges; the swags frame it, within the width that you allow.',
};

export const Measure = () => {
  const kind = kindNow(state.value);
  return (
    <Panel
      id="measure"
      title={kind === 'frame' ? 'Your motif' : kind === 'block' ? 'Your block' : 'Your quilt'}
      lead={kind === 'border' ? ALONG[measuredAlong(state.value)] : LEADS[kind]}
      aside={
        <Choice
          label="What is it?"
          class="inline"
          value={kind}
          options={KINDS}
          onChoose={(to) => setKind(to as LayoutKind, unitsNow())}
        />
      }
    >
      <div
        class={`quilt-form ${kind}`}
        onFocusCapture={(event) => {
          if (event.target instanceof HTMLInputElement) cameToSides();
        }}
        onFocusOut={(event) => {
          const to = event.relatedTarget;
          if (!(to instanceof Node && event.currentTarget.contains(to))) leftSides();
        }}
      >
        <Figures kind={kind} />
        <QuiltPicture />
      </div>
      <div class="field-row">
        <More kind={kind} />
        <LengthField
          label="Foot clearance"
          path={['foot', 'clearance']}
          usual="1/4 in"
          hint="Needle to the outside of the foot"
        />
        <Corners kind={kind} />
      </div>
      <Verdict />
    </Panel>
  );
};

interface KindProps {
  readonly kind: LayoutKind;
}

/** The figures that stand at the picture. One figure for all four sides is how a plan may say it, too. */
const Figures = ({ kind }: KindProps) => {
  const plan = state.value;
  const edge = ['layout', 'border', measuredAlong(plan)];
  switch (kind) {
    case 'strip':
      return <LengthField class="at-top" label="Length" path={['layout', 'strip', 'length']} />;
    case 'frame':
      return <LengthField class="at-top" label="Motif, across" path={['layout', 'frame', 'around']} />;
    case 'block':
      return keysAt(plan, ['layout', 'frame', 'block']).length === 0 ? (
        <LengthField class="at-top" label="Block, each side" path={['layout', 'frame', 'block']} />
      ) : (
        <>
          <LengthField class="at-top" label="Block width" path={['layout', 'frame', 'block', 'width']} />
          <LengthField class="at-left" label="Block height" path={['layout', 'frame', 'block', 'height']} />
        </>
      );
    case 'border':
      return textAt(plan, edge) !== undefined ? (
        <LengthField class="at-top" label="All four sides" path={edge} />
      ) : (
        SIDES.map((side) => (
          <LengthField
            key={side}
            class={`at-${side}`}
            label={`${side.charAt(0).toUpperCase()}${side.slice(1)} side`}
            path={[...edge, side]}
            onType={() => typedSide(side)}
            onLeave={leftSide}
          />
        ))
      );
    default:
      return kind satisfies never;
  }
};

/** How much room there is, and of a ring how many swags. */
const More = ({ kind }: KindProps) => {
  const plan = state.value;
  if (kind === 'frame' || kind === 'block')
    return (
      <>
        {kind === 'frame' ? <CountField label="How many swags" path={['layout', 'frame', 'count']} /> : null}
        <LengthField
          label={kind === 'frame' ? 'Clear of the motif' : 'Clear of the block'}
          path={['layout', 'frame', 'clearance']}
          usual="0"
        />
        <LengthField
          label="Finished, at most"
          path={['layout', 'frame', 'within']}
          optional={kind === 'frame'}
          hint={kind === 'frame' ? 'Empty: no limit' : 'The longer way'}
          placeholder={kind === 'frame' ? 'no limit' : `such as ${FIRST_FIGURES[unitsNow()].limit}`}
          {...(kind === 'block' ? { whenEmpty: needsLimit(FIRST_FIGURES[unitsNow()].limit) } : {})}
        />
        <PlanChoice
          label="Swags point"
          path={['layout', 'frame', 'from']}
          options={[
            ['inner', 'outward'],
            ['outer', 'inward'],
          ]}
        />
      </>
    );
  const hasTwo = keysAt(plan, ['layout', kind, 'margin']).length > 0;
  return (
    <>
      <LengthField
        label={kind === 'border' ? 'Border width' : 'Strip width'}
        path={['layout', kind, 'width']}
      />
      {kind === 'border' ? (
        <Choice
          label="Measured along"
          value={measuredAlong(plan)}
          options={[
            ['inner', 'the seam it is sewn to'],
            ['outer', 'the finished outside'],
          ]}
          onChoose={(to) => measureAlong(to as Edge, unitsNow())}
        />
      ) : null}
      {hasTwo ? (
        <>
          <LengthField label="Clear of the inner seam" path={['layout', kind, 'margin', 'inner']} usual="0" />
          <LengthField label="Clear of the outer seam" path={['layout', kind, 'margin', 'outer']} usual="0" />
        </>
      ) : (
        <LengthField label="Clear of both seams" path={['layout', kind, 'margin']} usual="0" />
      )}
      {kind === 'strip' ? (
        <LengthField label="Clear of both ends" path={['layout', 'strip', 'ends']} usual="0" />
      ) : null}
    </>
  );
};

const Corners = ({ kind }: KindProps) => {
  if (kind === 'strip' || kind === 'frame') return null;
  const key = kind === 'block' ? 'frame' : 'border';
  return (
    <>
      <PlanChoice
        label="At the corners"
        path={['layout', key, 'corners']}
        options={[
          ['auto', 'whatever fits best'],
          ['turn', 'a swag round each'],
          ['across', 'a swag across each'],
          ['half', 'half a swag beside each'],
          ['meet', 'the sides meet'],
          ['open', 'left open'],
        ]}
      />
      <OwnCorner
        isOver={['turn', 'across'].includes(textAt(state.value, ['layout', key, 'corners']) ?? '')}
      />
      {kind === 'border' ? (
        <PlanChoice
          label="Swags hang from"
          path={['layout', 'border', 'from']}
          options={[
            ['inner', 'the inner seam'],
            ['outer', 'the outer seam'],
          ]}
        />
      ) : null}
    </>
  );
};

/** What the swag over a corner is made with: which part of it, is chosen under “One swag”. */
const OwnCorner = ({ isOver }: { readonly isOver: boolean }) => {
  const plan = state.value;
  const has = keysAt(plan, ['corner']).length > 0;
  if (!isOver && !has) return null;
  const all = listAt(plan, ['template']);
  const own = listAt(plan, ['corner', 'template']);
  const isSmooth = textAt(plan, SMOOTH) === 'true';
  return (
    <>
      <Choice
        label="The corner’s swag"
        value={!has ? '' : own.length === 1 ? own[0]! : ANY}
        options={[
          ['', 'made as on the sides'],
          [ANY, 'its own part of any of yours'],
          ...shelf.value.map(({ name, title }) => [name, `its own part of ${title}`] as const),
        ]}
        onChoose={(name) =>
          edit([
            [['corner'], undefined],
            ...(name === '' ? [] : [[['corner', 'template'], name === ANY ? all : name] as const]),
            ...(name !== '' && isSmooth ? [[SMOOTH, true] as const] : []),
          ])
        }
      />
      {has ? (
        <Choice
          label="On the mitre"
          value={isSmooth ? 'smooth' : ''}
          options={[
            ['', 'in a point or not, as fits best'],
            ['smooth', 'one smooth curve, no point'],
          ]}
          onChoose={(how) => edit([[SMOOTH, how === 'smooth' ? true : undefined]])}
        />
      ) : null}
    </>
  );
};

const SMOOTH = ['corner', 'smooth'];

/** No template is called so: a name has no blank in it. */
const ANY = 'any of them';

const QuiltPicture = () => {
  const design = shown.value;
  if (!design) return <div class="quilt-picture waiting" aria-hidden="true" />;
  const words = [...design.summary, ...design.lines].join('; ');
  const isStale = isOld.value;
  const { laid, quilt } = design;
  return (
    <div class={`quilt-picture${isStale ? ' stale' : ''}${laid ? ' of-parts' : ''}`}>
      {laid ? (
        <WholeQuilt design={quilt} laid={laid} label={`Picture of the quilt. ${partNow.value}: ${words}`} />
      ) : (
        <Drawn picture={quilt} label={`Picture of the quilt. ${words}`} class="quilt">
          <FillsThere />
        </Drawn>
      )}
      <div class="quilt-middle" aria-hidden="true">
        <p class="big">{design.summary[0]}</p>
        <p>
          {design.summary.slice(1).map((line, i) => (
            <Fragment key={line}>
              {i > 0 ? <br /> : null}
              {unbroken(line)}
            </Fragment>
          ))}
        </p>
        {isStale ? <p class="before">Still the quilt of the figures before.</p> : null}
      </div>
    </div>
  );
};

const FillsThere = () => (
  <>
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
  </>
);

/** All parts where they lie, to scale: the open one as it is, and the others quieter round it. */
const WholeQuilt = ({
  design,
  laid,
  label,
}: {
  readonly design: Picture;
  readonly laid: Laid;
  readonly label: string;
}) => {
  const round = others.value.flatMap(({ name, drawn }) =>
    drawn && name !== partNow.value ? [{ name, drawn }] : [],
  );
  const box = round.reduce((b, { drawn }) => joinBoxes(b, drawn.box), laid.box);
  return (
    <svg class="drawn quilt" viewBox={viewBoxOf(box)} role="img" aria-label={label}>
      {round.map(({ name, drawn }) => (
        <g key={name} class="other-part" data-part={name}>
          <Copies places={drawn.places}>
            <Inks inks={drawn.inks} />
          </Copies>
        </g>
      ))}
      <g class="open-part" data-part={partNow.value}>
        <Copies places={laid.places}>
          <FillsThere />
          <Inks inks={design.inks} />
        </Copies>
      </g>
    </svg>
  );
};

const Copies = ({
  places,
  children,
}: {
  readonly places: Laid['places'];
  readonly children: ComponentChildren;
}) => (
  <>
    {places.map((place) => (
      <g key={place.join(' ')} transform={`matrix(${place.join(' ')})`}>
        {children}
      </g>
    ))}
  </>
);

/** What came of it, in words: the design, or what is in the way. */
const Verdict = () => {
  const answer = look.value;
  const design = shown.value;
  if (!answer) return <p class="verdict">Working it out …</p>;
  if (awaited.value.length > 0 && troubles.value.length === 0)
    return (
      <p class="verdict">
        Now type the {awaited.value.join(' and the ')} side too: opposite sides of a quilt are nearly equal.
        The picture still shows the figures before.
      </p>
    );
  if (troubles.value.length > 0)
    return (
      <section class="verdict wrong" aria-label="What is in the way">
        <p>
          <strong>This does not work out yet.</strong>
          {design ? ' The picture still shows the last design that did.' : ''}
        </p>
        <Troubles list={troubles.value} />
      </section>
    );
  if (isOld.value)
    return (
      <p class="verdict">
        A figure is half typed.{design ? ' The picture still shows the figures before.' : ''}
      </p>
    );
  if (!design) return null;
  return (
    <div class="verdict">
      <ul class="sides" aria-label="What it comes to">
        {design.lines.map((line) => (
          <li key={line} class={SIDES.some((side) => line.startsWith(`${side}:`)) ? 'of-side' : 'of-all'}>
            {unbroken(line)}
          </li>
        ))}
      </ul>
      {design.messages.map((message) => (
        <p key={message} class="hint">
          {message}
        </p>
      ))}
      {others.value
        .filter(({ name }) => name !== partNow.value)
        .flatMap(({ problems }) => problems)
        .map(({ text }) => (
          <p key={text} class="wrong">
            {text}
          </p>
        ))}
    </div>
  );
};
