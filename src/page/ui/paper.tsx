/** Pages for her paper: sheets at true size, the card, fills to choose from; corrected by what the last print measured. */

import { useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import { capital } from '../../document/index.ts';
import {
  correctionWords,
  PAPER_IDS,
  PAPERS,
  type PaperId,
  type PerEdge,
  scaledWords,
} from '../../pagination/index.ts';
import { NO_START } from '../engine/client.ts';
import { loadFonts } from '../engine/hire.ts';
import type { PagesKind, PaperChoices, PrintKind } from '../engine/messages.ts';
import {
  factorOf,
  factorsOf,
  type KeptMeasured,
  keptMeasured,
  measuredText,
  type Typed,
} from '../plan/measured.ts';
import { listAt, textAt } from '../plan/plan-text.ts';
import { paperWords, projectorWords } from '../words/words.ts';
import { Choice, InputField, Panel, unitsNow } from './fields.tsx';
import { type How, handOver } from './hand-over.ts';
import { type ClassPaper, Later, wantPart } from './later.tsx';
import { Said } from './said.tsx';
import { SheetCount, useCounted } from './sheet-count.tsx';
import {
  complain,
  during,
  edit,
  isOld,
  partNames,
  partNow,
  say,
  shelf,
  shown,
  state,
  swag,
  thorough,
} from './store.ts';

/** Kept in this browser and not in the plan: a correction belongs to one printer and one paper. */
const MEASURED_KEY = 'swagwright.measured-edges';
/** Where it was kept as across and up. */
const OLD_KEY = 'swagwright.measured';

export const rememberedMeasured = (): KeptMeasured => {
  try {
    return keptMeasured(localStorage.getItem(MEASURED_KEY), localStorage.getItem(OLD_KEY));
  } catch {
    return keptMeasured(null, null);
  }
};

export const Paper = () => {
  const kept = useMemo(rememberedMeasured, []);
  const typed = useSignal(kept.typed);
  const hasTyped = useSignal(false);
  const part = useSignal('');
  const written = textAt(state.value, ['paper']);
  const paper = PAPER_IDS.find((id) => id === written) ?? 'letter';
  const units = unitsNow();
  const design = shown.value;
  const isReady = design !== undefined && !isOld.value;
  const whole = `the whole ${design?.name ?? 'design'}`;
  const hasSides = (design?.sides.length ?? 0) > 1;
  const parts: readonly (readonly [string, string])[] = [
    ['', design?.usualShow === 'corner' ? 'a corner with its neighbours' : whole],
    ['repeat', 'one swag'],
    ...(design && hasSides
      ? ([
          ...design.sides.map((s) => [s.name, `the whole ${s.name} side`] as const),
          design.usualShow === 'corner'
            ? (['all', whole] as const)
            : (['corner', 'a corner with its neighbours'] as const),
        ] as const)
      : []),
  ];
  // What was chosen for another design may not be in this one.
  const shownPart = parts.some(([name]) => name === part.value) ? part.value : '';
  const measured = factorsOf(typed.value, units);
  const type = (more: Partial<Typed>): void => {
    typed.value = { ...typed.value, ...more };
    hasTyped.value = true;
    try {
      localStorage.setItem(MEASURED_KEY, measuredText(typed.value));
      localStorage.removeItem(OLD_KEY);
    } catch {
      // Without a store it is typed again the next time.
    }
  };
  const chosen: PaperChoices | undefined =
    measured === 'wrong' ? undefined : { paper, measured, show: shownPart === '' ? undefined : shownPart };
  const choices = (): PaperChoices | undefined => {
    if (!chosen)
      complain(
        'What you measured is not a length near 2 in (50.8 mm). Correct it, or leave it empty.',
        [],
        'paper',
      );
    return chosen;
  };
  const give: ClassPaper['give'] = async (ask, how) => {
    const now = choices();
    if (!now) return;
    const made = await handOver(how, async () => {
      const fonts = await during('the fonts', loadFonts());
      return during('the pages', ask(now, fonts));
    });
    if (made.kind === 'problems') complain('The pages could not be made.', made.problems, 'paper');
    if (made.kind === 'answer') say(sentences([made.answer.said, ...made.answer.notices]), 'paper');
  };
  const list = useRef<HTMLUListElement>(null);
  const outlines = listAt(state.value, ['template']);
  const what: readonly PagesKind[] = [...PAGES, ...(partNames.value.length > 0 ? QUILT_PAGES : [])];
  const input = state.value;
  const asked = isReady && chosen ? JSON.stringify([input, chosen, what]) : undefined;
  const counted = useCounted(list, asked, async () =>
    thorough.ask({ kind: 'count-pages', input, what, outlines, choices: chosen!, fonts: await loadFonts() }),
  );
  const both = (
    name: string,
    isThere: boolean,
    give: (how: How) => Promise<void>,
    words: string,
    isMain = false,
  ) => (
    <div class="save-or-print">
      <button
        type="button"
        class={isMain ? 'main' : ''}
        disabled={!isThere}
        onClick={() => void give('save')}
      >
        {words}
      </button>
      <button
        type="button"
        disabled={!isThere}
        aria-label={paperWords.printOf({ what: name })}
        onClick={() => void give('print')}
      >
        {paperWords.print}
      </button>
    </div>
  );
  const button = (what: PrintKind, name: string, words: string, more: string) => (
    <li>
      {both(
        name,
        isReady,
        (how) =>
          give(
            (choices, fonts) => thorough.ask({ kind: 'print', input: state.value, what, choices, fonts }),
            how,
          ),
        words,
        what === 'sheets',
      )}
      {what === 'sheets' || what === 'quilt-sheets' ? (
        <SheetCount what={what} choices={isReady ? chosen : undefined} words={more} />
      ) : (
        <span class="about">{counted?.[what] ? `${counted[what]}, ${more}` : more}</span>
      )}
    </li>
  );
  return (
    <Panel
      id="paper"
      title="On paper"
      lead="Print at 100 % or “actual size”, never “fit to page”, borderless off, one-sided. Then lay a ruler on the check square."
    >
      <div class="field-row">
        <Choice
          label="Paper"
          value={paper}
          options={PAPER_IDS.map((id: PaperId) => [id, PAPERS[id].name] as const)}
          onChoose={(id) => edit([[['paper'], id]])}
        />
        <Choice
          label="Sheets show"
          value={shownPart}
          options={parts}
          onChoose={(name) => {
            part.value = name;
          }}
        />
        <div class="pair">
          <MeasuredField
            label={`${SQUARE[units]} square measures, along the paper’s short edge`}
            value={typed.value.short}
            onType={(short) => type({ short })}
          />
          <MeasuredField
            label="and along its long edge"
            value={typed.value.long}
            onType={(long) => type({ long })}
          />
        </div>
      </div>
      <p class="hint">
        {kept.unclear !== undefined && !hasTyped.value
          ? `What you measured before (${kept.unclear}) may have been either edge of the paper, and is not used. Measure again along its short and its long edge: the check square says which is which.`
          : measured === undefined
            ? 'Leave the measurements empty for a first print. If its square is not 2 in (50.8 mm), type what it is, and print again.'
            : measured === 'wrong'
              ? 'A print that is off by more than a tenth was scaled: print again at 100 %.'
              : nextSheets(measured)}
      </p>
      {partNow.value === undefined ? null : <h3>{partNow.value}</h3>}
      <p class="hint">{paperWords.lead}</p>
      <ul class="prints" ref={list}>
        {button(
          'sheets',
          'the sheets',
          'True-size sheets',
          'to tape together, and a cover; with a map and a check square on each',
        )}
        {button('card', 'the card', 'Marking card', 'every mark and setting, for the sewing room')}
        {button('audition', 'the fills', 'Fills to choose from', 'small copies of one swag with each fill')}
        {button('frames', 'the empty ones', 'Empty swags', 'to draw your own quilting in')}
        {button('contact', 'the choices', 'What fits, in pictures', 'the best dozen side by side')}
        <li>
          <button
            type="button"
            disabled={!isReady || !swag.value}
            onClick={() => void openLater('glass', 'the screen')}
          >
            True size on the screen
          </button>
          <Later name="glass" />
          <span class="about">lay the acrylic on the glass of a tablet</span>
        </li>
        <li>
          <button
            type="button"
            disabled={!isReady}
            onClick={() => void openLater('projector', projectorWords.opening)}
          >
            {projectorWords.open}
          </button>
          <Later name="projector" choices={parts} />
          <span class="about">{projectorWords.openWhy}</span>
        </li>
        <li>
          <button type="button" disabled={!isReady} onClick={() => void openLater('class', 'the table')}>
            A class
          </button>
          <span class="about">a strip for each student, from a table of theirs</span>
        </li>
      </ul>
      {partNames.value.length === 0 ? null : (
        <>
          <h3>The whole quilt</h3>
          <ul class="prints">
            {button(
              'quilt-sheets',
              'the sheets of all parts',
              'True-size sheets of all parts',
              'in one file, and one cover with a map of each',
            )}
            {button(
              'quilt-card',
              'the cards of all parts',
              'Marking cards of all parts',
              'a card for each, and the thread of the whole quilt',
            )}
          </ul>
        </>
      )}
      <Later
        name="class"
        give={give}
        choices={measured === 'wrong' ? undefined : { paper, measured, show: undefined }}
      />
      <Said at="paper" />
      <div class="outlines">
        <p>A template of yours comes onto the shelf from a photograph of this sheet with its line on it:</p>
        <ul class="prints">
          <li>
            {both(
              'the sheet for photographs',
              true,
              (how) => give(({ paper }, fonts) => thorough.ask({ kind: 'capture-sheet', paper, fonts }), how),
              'Sheet for photographs',
            )}
            <span class="about">one sheet</span>
          </li>
        </ul>
        <p>Lay your acrylic on its own outline first, before you trust the rest:</p>
        <ul class="prints">
          {outlines.map((name) => {
            const title = shelf.value.find((c) => c.name === name)?.title ?? name;
            return (
              <li key={name}>
                {both(
                  `${title}’s outline`,
                  true,
                  (how) =>
                    give(
                      (choices, fonts) =>
                        thorough.ask({ kind: 'outline', name, own: state.value.own, choices, fonts }),
                      how,
                    ),
                  `Outline of ${title}`,
                )}
                <span class="about">{counted?.[name] ?? 'at true size'}</span>
              </li>
            );
          })}
        </ul>
      </div>
    </Panel>
  );
};

/** Those that are pages to read. */
const PAGES = ['card', 'audition', 'frames', 'contact'] as const;
const QUILT_PAGES = ['quilt-card'] as const;

const sentences = (words: readonly string[]): string =>
  words.map((one) => capital(one).replace(/\.?$/, '.')).join(' ');

const openLater = async (name: 'glass' | 'projector' | 'class', what: string): Promise<void> => {
  const part = await during(what, wantPart(name)).catch(() => complain(NO_START.text));
  part?.open();
};

const MeasuredField = ({
  label,
  value,
  onType,
}: Pick<Parameters<typeof InputField>[0], 'label' | 'value' | 'onType'>) => (
  <InputField
    label={label}
    placeholder={SQUARE[unitsNow()]}
    value={value}
    isWrong={value.trim() !== '' && factorOf(value, unitsNow()) === undefined}
    onType={onType}
  />
);

/** The check square as she calls it. */
const SQUARE = { in: '2 in', cm: '5.08 cm', mm: '50.8 mm' } as const;

const nextSheets = (measured: PerEdge): string => {
  const scaled = scaledWords(measured);
  return scaled === undefined
    ? `The next sheets make up for it: ${correctionWords(measured)}.`
    : `On your last print ${scaled}.`;
};
