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
import { paperIn } from '../plan/first-figures.ts';
import {
  factorOf,
  factorsOf,
  type KeptMeasured,
  keptMeasured,
  measuredText,
  type Typed,
} from '../plan/measured.ts';
import { listAt } from '../plan/plan-text.ts';
import { paperWords, projectorWords, sheetsWords, workWords } from '../words/words.ts';
import { readKept } from './browser.ts';
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

export const rememberedMeasured = (): KeptMeasured => keptMeasured(readKept(MEASURED_KEY), readKept(OLD_KEY));

export const Paper = () => {
  const kept = useMemo(rememberedMeasured, []);
  const typed = useSignal(kept.typed);
  const hasTyped = useSignal(false);
  const part = useSignal('');
  const paper = paperIn(state.value, unitsNow());
  const units = unitsNow();
  const design = shown.value;
  const isReady = design !== undefined && !isOld.value;
  const whole = sheetsWords.whole({ what: design?.name ?? sheetsWords.design });
  const hasSides = (design?.sides.length ?? 0) > 1;
  const parts: readonly (readonly [string, string])[] = [
    ['', design?.usualShow === 'corner' ? sheetsWords.corner : whole],
    ['repeat', sheetsWords.oneSwag],
    ...(design && hasSides
      ? ([
          ...design.sides.map((s) => [s.name, sheetsWords.wholeSide({ side: s.name })] as const),
          design.usualShow === 'corner'
            ? (['all', whole] as const)
            : (['corner', sheetsWords.corner] as const),
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
    if (!chosen) complain(sheetsWords.squareWrong, [], 'paper');
    return chosen;
  };
  const give: ClassPaper['give'] = async (ask, how) => {
    const now = choices();
    if (!now) return;
    const made = await handOver(how, async () => {
      const fonts = await during(workWords.fonts, loadFonts());
      return during(workWords.pages, ask(now, fonts));
    });
    if (made.kind === 'problems') complain(sheetsWords.notMade, made.problems, 'paper');
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
  const button = (what: PrintKind, { name, button: words, about: more }: typeof sheetsWords.sheets) => (
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
    <Panel id="paper" title={sheetsWords.title} lead={sheetsWords.lead}>
      <div class="field-row">
        <Choice
          label={sheetsWords.paper}
          value={paper}
          options={PAPER_IDS.map((id: PaperId) => [id, PAPERS[id].name] as const)}
          onChoose={(id) => edit([[['paper'], id]])}
        />
        <Choice
          label={sheetsWords.show}
          value={shownPart}
          options={parts}
          onChoose={(name) => {
            part.value = name;
          }}
        />
        <div class="pair">
          <MeasuredField
            label={sheetsWords.square({ side: SQUARE[units] })}
            value={typed.value.short}
            onType={(short) => type({ short })}
          />
          <MeasuredField
            label={sheetsWords.squareLong}
            value={typed.value.long}
            onType={(long) => type({ long })}
          />
        </div>
      </div>
      <p class="hint">
        {kept.unclear !== undefined && !hasTyped.value
          ? sheetsWords.unclear({ before: kept.unclear })
          : measured === undefined
            ? sheetsWords.firstPrint
            : measured === 'wrong'
              ? sheetsWords.wasScaled
              : nextSheets(measured)}
      </p>
      {partNow.value === undefined ? null : <h3>{partNow.value}</h3>}
      <p class="hint">{paperWords.lead}</p>
      <ul class="prints" ref={list}>
        {button('sheets', sheetsWords.sheets)}
        {button('card', sheetsWords.card)}
        {button('audition', sheetsWords.audition)}
        {button('frames', sheetsWords.frames)}
        {button('contact', sheetsWords.contact)}
        <li>
          <button
            type="button"
            disabled={!isReady || !swag.value}
            onClick={() => void openLater('glass', workWords.screen)}
          >
            {sheetsWords.trueSize}
          </button>
          <Later name="glass" />
          <span class="about">{sheetsWords.trueSizeAbout}</span>
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
          <button type="button" disabled={!isReady} onClick={() => void openLater('class', workWords.table)}>
            {sheetsWords.class}
          </button>
          <span class="about">{sheetsWords.classAbout}</span>
        </li>
      </ul>
      {partNames.value.length === 0 ? null : (
        <>
          <h3>{sheetsWords.wholeQuilt}</h3>
          <ul class="prints">
            {button('quilt-sheets', sheetsWords.quiltSheets)}
            {button('quilt-card', sheetsWords.quiltCard)}
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
        <p>{sheetsWords.photographLead}</p>
        <ul class="prints">
          <li>
            {both(
              sheetsWords.photograph.name,
              true,
              (how) => give(({ paper }, fonts) => thorough.ask({ kind: 'capture-sheet', paper, fonts }), how),
              sheetsWords.photograph.button,
            )}
            <span class="about">{sheetsWords.photograph.about}</span>
          </li>
        </ul>
        <p>{sheetsWords.outlinesLead}</p>
        <ul class="prints">
          {outlines.map((name) => {
            const title = shelf.value.find((c) => c.name === name)?.title ?? name;
            return (
              <li key={name}>
                {both(
                  sheetsWords.outlineName({ title }),
                  true,
                  (how) =>
                    give(
                      (choices, fonts) =>
                        thorough.ask({ kind: 'outline', name, own: state.value.own, choices, fonts }),
                      how,
                    ),
                  sheetsWords.outlineOf({ title }),
                )}
                <span class="about">{counted?.[name] ?? sheetsWords.atTrueSize}</span>
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
    ? sheetsWords.makesUp({ correction: correctionWords(measured) })
    : sheetsWords.lastPrint({ scaled });
};
