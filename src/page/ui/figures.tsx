/** The figures that stand at no side: how much room there is, the foot, and what happens at the corners. */

import { FIRST_FIGURES } from '../plan/first-figures.ts';
import { needsLimit } from '../plan/plain-words.ts';
import { keysAt, listAt, textAt } from '../plan/plan-text.ts';
import { measureWords } from '../words/words.ts';
import { Choice, CountField, LengthField, Panel, PlanChoice, unitsNow } from './fields.tsx';
import { type Edge, kindNow, type LayoutKind, measureAlong, measuredAlong } from './layouts.ts';
import { edit, shelf, state } from './store.ts';

export const Figures = () => {
  const kind = kindNow(state.value);
  return (
    <Panel id="figures" title={measureWords.figures[kind]}>
      <div class="field-row">
        <More kind={kind} />
        <LengthField
          label={measureWords.foot}
          path={['foot', 'clearance']}
          usual="1/4 in"
          hint={measureWords.footHint}
        />
        <Corners kind={kind} />
      </div>
    </Panel>
  );
};

interface KindProps {
  readonly kind: LayoutKind;
}

/** How much room there is, and of a ring how many swags. */
const More = ({ kind }: KindProps) => {
  const plan = state.value;
  if (kind === 'frame' || kind === 'block')
    return (
      <>
        {kind === 'frame' ? (
          <CountField label={measureWords.howMany} path={['layout', 'frame', 'count']} />
        ) : null}
        <LengthField
          label={kind === 'frame' ? measureWords.clearMotif : measureWords.clearBlock}
          path={['layout', 'frame', 'clearance']}
          usual="0"
        />
        <LengthField
          label={measureWords.limit}
          path={['layout', 'frame', 'within']}
          optional={kind === 'frame'}
          hint={kind === 'frame' ? measureWords.emptyNoLimit : measureWords.longerWay}
          placeholder={
            kind === 'frame'
              ? measureWords.noLimit
              : measureWords.suchAs({ figure: FIRST_FIGURES[unitsNow()].limit })
          }
          {...(kind === 'block' ? { whenEmpty: needsLimit(FIRST_FIGURES[unitsNow()].limit) } : {})}
        />
        <PlanChoice
          label={measureWords.point}
          path={['layout', 'frame', 'from']}
          options={[
            ['inner', measureWords.outward],
            ['outer', measureWords.inward],
          ]}
        />
      </>
    );
  const hasTwo = keysAt(plan, ['layout', kind, 'margin']).length > 0;
  return (
    <>
      <LengthField
        label={kind === 'border' ? measureWords.borderWidth : measureWords.stripWidth}
        path={['layout', kind, 'width']}
      />
      {kind === 'border' ? (
        <Choice
          label={measureWords.along}
          value={measuredAlong(plan)}
          options={[
            ['inner', measureWords.alongSeam],
            ['outer', measureWords.alongOutside],
          ]}
          onChoose={(to) => measureAlong(to as Edge, unitsNow())}
        />
      ) : null}
      {hasTwo ? (
        <>
          <LengthField label={measureWords.clearInner} path={['layout', kind, 'margin', 'inner']} usual="0" />
          <LengthField label={measureWords.clearOuter} path={['layout', kind, 'margin', 'outer']} usual="0" />
        </>
      ) : (
        <LengthField label={measureWords.clearSeams} path={['layout', kind, 'margin']} usual="0" />
      )}
      {kind === 'strip' ? (
        <LengthField label={measureWords.clearEnds} path={['layout', 'strip', 'ends']} usual="0" />
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
        label={measureWords.corners.label}
        path={['layout', key, 'corners']}
        options={[
          ['auto', measureWords.corners.auto],
          ['turn', measureWords.corners.turn],
          ['across', measureWords.corners.across],
          ['half', measureWords.corners.half],
          ['meet', measureWords.corners.meet],
          ['open', measureWords.corners.open],
        ]}
      />
      <OwnCorner
        isOver={['turn', 'across'].includes(textAt(state.value, ['layout', key, 'corners']) ?? '')}
      />
      {kind === 'border' ? (
        <PlanChoice
          label={measureWords.hang}
          path={['layout', 'border', 'from']}
          options={[
            ['inner', measureWords.innerSeam],
            ['outer', measureWords.outerSeam],
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
        label={measureWords.cornerSwag}
        value={!has ? '' : own.length === 1 ? own[0]! : ANY}
        options={[
          ['', measureWords.asOnSides],
          [ANY, measureWords.ofAny],
          ...shelf.value.map(({ name, title }) => [name, measureWords.ofTemplate({ title })] as const),
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
          label={measureWords.mitre}
          value={isSmooth ? 'smooth' : ''}
          options={[
            ['', measureWords.mitreAny],
            ['smooth', measureWords.mitreSmooth],
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
