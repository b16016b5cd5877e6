/** The marking card on the screen: how the template is set, and where every mark goes, in words and tables. */

import type { CardBlock, CardSection, CardTable } from '../../output/card/index.ts';
import { marksWords } from '../words/words.ts';
import { Panel } from './fields.tsx';
import { cardWords, cardWordsFor, isOld, state } from './store.ts';
import { unbroken } from './unbroken.ts';

export const Words = () => {
  const inTheWay = isOld.value;
  const isStale = inTheWay || cardWordsFor.value !== state.value;
  return (
    <Panel
      id="words"
      title={marksWords.title}
      lead={!isStale ? marksWords.lead : inTheWay ? marksWords.before : marksWords.workingOut}
    >
      <div class={isStale ? 'card-words stale' : 'card-words'}>
        {cardWords.value.map((section) => (
          <Section key={section.heading} section={section} />
        ))}
      </div>
    </Panel>
  );
};

/** How to set the template is what is looked up most. */
const OPEN_AT_FIRST = 'set';

const Section = ({ section }: { readonly section: CardSection }) => (
  <details open={section.id === OPEN_AT_FIRST}>
    <summary>
      <h3>{section.heading}</h3>
    </summary>
    <Blocks blocks={section.blocks} />
  </details>
);

const Blocks = ({ blocks }: { readonly blocks: readonly CardBlock[] }) => {
  const points = blocks.flatMap((b) => (b.kind === 'point' ? [b.text] : []));
  const isList = points.length === blocks.length;
  if (isList)
    return (
      <ul>
        {points.map((text) => (
          <li key={text}>{unbroken(text)}</li>
        ))}
      </ul>
    );
  return (
    <>
      {blocks.map((block, i) =>
        block.kind === 'table' ? (
          <Table key={`${i} ${block.title ?? ''}`} table={block} />
        ) : (
          <p key={block.text} class={block.kind}>
            {unbroken(block.text)}
          </p>
        ),
      )}
    </>
  );
};

export const Table = ({ table: { title, columns, rows } }: { readonly table: CardTable }) => (
  // A wide table scrolls by itself, also by keyboard, and the page does not.
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
  <section class="table" tabIndex={0} aria-label={title ?? marksWords.table}>
    <table>
      {title === undefined ? null : <caption>{title}</caption>}
      <thead>
        <tr>
          {columns.map(({ head, align }, i) => (
            <th key={`${i} ${head}`} scope="col" class={align}>
              {head === '' ? <span class="unseen">{marksWords.which}</span> : head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.join('|')}>
            {row.map((cell, i) =>
              i === 0 ? (
                <th key={`${i}`} scope="row">
                  {unbroken(cell)}
                </th>
              ) : (
                <td key={`${i} ${cell}`} class={columns[i]?.align}>
                  {unbroken(cell)}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);
