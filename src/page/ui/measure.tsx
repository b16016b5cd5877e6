/** Her figures, each at its own side of the quilt, round a picture that changes with them. */

import { type ComponentChildren, Fragment } from 'preact';
import { joinBoxes } from '../../geometry/index.ts';
import type { Cloth, Laid, Picture } from '../engine/messages.ts';
import { keysAt, textAt } from '../plan/plan-text.ts';
import { measureWords } from '../words/words.ts';
import { coloursOfPicture, hasColours } from './colours-now.ts';
import { explained } from './explained.tsx';
import { Choice, LengthField, Panel, Troubles, unitsNow } from './fields.tsx';
import { kindNow, type LayoutKind, measuredAlong, setKind } from './layouts.ts';
import { awaited, cameToSides, leftSide, leftSides, SIDES, troubles, typedSide } from './pairs.ts';
import { Areas, Copied, Drawn, Ground, Inks, viewBoxOf } from './picture.tsx';
import { fills, isOld, look, others, partNow, shown, state } from './store.ts';
import { unbroken } from './unbroken.ts';

const KINDS = (['border', 'strip', 'frame', 'block'] as const).map(
  (kind) => [kind, measureWords.kinds[kind]] as const,
);

const leadOf = (kind: LayoutKind): string => {
  if (kind !== 'border') return measureWords.leads[kind];
  return measuredAlong(state.value) === 'outer' ? measureWords.alongOuter : measureWords.alongInner;
};

export const Measure = () => {
  const kind = kindNow(state.value);
  return (
    <Panel
      id="measure"
      title={
        kind === 'frame' ? measureWords.motif : kind === 'block' ? measureWords.block : measureWords.quilt
      }
      lead={leadOf(kind)}
      aside={
        <Choice
          label={measureWords.what}
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
        <Sides kind={kind} />
        <QuiltPicture />
      </div>
      <Verdict />
    </Panel>
  );
};

/** The figures that stand at the picture. One figure for all four sides is how a plan may say it, too. */
const Sides = ({ kind }: { readonly kind: LayoutKind }) => {
  const plan = state.value;
  const edge = ['layout', 'border', measuredAlong(plan)];
  switch (kind) {
    case 'strip':
      return <LengthField class="at-top" label={measureWords.length} path={['layout', 'strip', 'length']} />;
    case 'frame':
      return <LengthField class="at-top" label={measureWords.across} path={['layout', 'frame', 'around']} />;
    case 'block':
      return keysAt(plan, ['layout', 'frame', 'block']).length === 0 ? (
        <LengthField class="at-top" label={measureWords.eachSide} path={['layout', 'frame', 'block']} />
      ) : (
        <>
          <LengthField
            class="at-top"
            label={measureWords.blockWidth}
            path={['layout', 'frame', 'block', 'width']}
          />
          <LengthField
            class="at-left"
            label={measureWords.blockHeight}
            path={['layout', 'frame', 'block', 'height']}
          />
        </>
      );
    case 'border':
      return textAt(plan, edge) !== undefined ? (
        <LengthField class="at-top" label={measureWords.allSides} path={edge} />
      ) : (
        SIDES.map((side) => (
          <LengthField
            key={side}
            class={`at-${side}`}
            label={measureWords.side({ side })}
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

const QuiltPicture = () => {
  const design = shown.value;
  if (!design) return <div class="quilt-picture waiting" aria-hidden="true" />;
  const words = [...design.summary, ...design.lines].join('; ');
  const isStale = isOld.value;
  const { laid, quilt, cloth } = design;
  return (
    <div
      class={`quilt-picture${isStale ? ' stale' : ''}${laid ? ' of-parts' : ''}${hasColours.value ? ' coloured' : ''}`}
      style={coloursOfPicture.value}
    >
      {laid ? (
        <WholeQuilt
          design={quilt}
          cloth={cloth}
          laid={laid}
          label={measureWords.pictureOfPart({ part: partNow.value ?? '', words })}
        />
      ) : (
        <Drawn picture={quilt} label={measureWords.picture({ words })} class="quilt">
          {hasColours.value ? (
            <>
              <Ground box={quilt.box} />
              <Areas cloth={cloth} />
            </>
          ) : null}
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
        {isStale ? <p class="before">{measureWords.pictureBefore}</p> : null}
      </div>
    </div>
  );
};

const FillsThere = () => <Copied fills={fills.value?.quilt ?? []} />;

/** All parts where they lie, to scale: the open one as it is, and the others quieter round it. */
const WholeQuilt = ({
  design,
  cloth,
  laid,
  label,
}: {
  readonly design: Picture;
  readonly cloth: Cloth;
  readonly laid: Laid;
  readonly label: string;
}) => {
  const round = others.value.flatMap(({ name, drawn }) =>
    drawn && name !== partNow.value ? [{ name, drawn }] : [],
  );
  const box = round.reduce((b, { drawn }) => joinBoxes(b, drawn.box), laid.box);
  const cloths = [{ cloth, places: laid.places }, ...round.map(({ drawn }) => drawn)].toSorted(
    (a, b) => b.cloth.size - a.cloth.size,
  );
  return (
    <svg class="drawn quilt" viewBox={viewBoxOf(box)} role="img" aria-label={label}>
      {hasColours.value ? (
        <>
          <Ground box={box} />
          {cloths.map((each) => (
            <Copies key={each.places.join(';')} places={each.places}>
              <Areas cloth={each.cloth} />
            </Copies>
          ))}
        </>
      ) : null}
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
  if (!answer) return <p class="verdict">{measureWords.workingOut}</p>;
  if (awaited.value.length > 0 && troubles.value.length === 0)
    return <p class="verdict">{measureWords.typeOther({ sides: awaited.value })}</p>;
  if (troubles.value.length > 0)
    return (
      <section class="verdict wrong" aria-label={measureWords.inTheWay}>
        <p>
          <strong>{measureWords.notYet}</strong>
          {design ? ` ${measureWords.lastThatDid}` : ''}
        </p>
        <Troubles list={troubles.value} />
      </section>
    );
  if (isOld.value)
    return (
      <p class="verdict">
        {measureWords.halfTyped}
        {design ? ` ${measureWords.figuresBefore}` : ''}
      </p>
    );
  if (!design) return null;
  return (
    <div class="verdict">
      <ul class="sides" aria-label={measureWords.comesTo}>
        {design.lines.map((line) => (
          <li key={line} class={SIDES.some((side) => line.startsWith(`${side}:`)) ? 'of-side' : 'of-all'}>
            {explained(unbroken(line))}
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
