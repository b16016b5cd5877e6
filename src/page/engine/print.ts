/** Pages for the visitor's paper: the same steps and the same words as the commands, with a compressor for browsers. */

import { zlibSync } from 'fflate';
import { baseName, ProblemError } from '../../document/index.ts';
import { audition, auditionPaper } from '../../jobs/audition.ts';
import { CAPTURE_PAPERS, captureSheet } from '../../jobs/capture-sheet.ts';
import { cardSheets } from '../../jobs/card-sheets.ts';
import { contactSheet } from '../../jobs/contact-sheet.ts';
import { countSheets } from '../../jobs/laid-part.ts';
import type { Made, Means } from '../../jobs/made.ts';
import { mockup } from '../../jobs/mockup.ts';
import { calledAfter, type FileKind, type Naming, proposedName } from '../../jobs/names.ts';
import { outline } from '../../jobs/outline.ts';
import type { Part } from '../../jobs/part.ts';
import { quiltMockup } from '../../jobs/quilt-mockup.ts';
import { USUAL_CLEARANCE } from '../../jobs/template-facts.ts';
import type { PaperId } from '../../pagination/index.ts';
import { kindsOf } from '../../swag/index.ts';
import { madeWords } from '../words/words.ts';
import { type ChosenFit, chosenFit, fitsOfQuilt, readOwn } from './desk.ts';
import type {
  Fonts,
  Input,
  OwnTemplate,
  PaperChoices,
  Printed,
  PrintKind,
  Question,
  QuiltPrintKind,
  SheetsKind,
} from './messages.ts';
import { findTemplate } from './profiles.ts';

/** zlib's own usual level; inflated, the pages are the same at any. */
const deflate = (bytes: Uint8Array): Uint8Array => zlibSync(bytes, { level: 6 });

export const meansWith = (fonts: Fonts): Means => ({ deflate, fonts: async () => fonts });

/** Empty frames on one page: enough to try three ideas on, each large enough for a pencil. */
const EMPTY_FRAMES = 3;
/** As many as a page of letter shows large enough to choose by. */
const CONTACTS = 12;

interface Job {
  readonly kind: FileKind;
  /** How much paper it takes, where that can be told without making it. */
  readonly paper?: (fit: ChosenFit, choices: PaperChoices) => string | undefined;
  readonly make: (fit: ChosenFit, choices: PaperChoices, means: Means) => Promise<Made>;
}

const JOBS: Readonly<Record<Exclude<PrintKind, QuiltPrintKind>, Job>> = {
  sheets: {
    kind: 'mockup',
    make: (fit, { show, ...layout }, means) => mockup(fit, { show, layout }, means),
  },
  card: {
    kind: 'card',
    make: (fit, pages, means) => cardSheets(fit.plan.title, [fit], pages, means),
  },
  audition: {
    kind: 'audition',
    paper: (fit, { show, ...pages }) => auditionPaper(fit, { show, pages }),
    make: (fit, { show, ...pages }, means) => audition(fit, { show, pages }, means),
  },
  frames: {
    kind: 'frames',
    make: (fit, { show, ...pages }, means) => audition(fit, { show, pages, empty: EMPTY_FRAMES }, means),
  },
  contact: {
    kind: 'choices',
    make: (fit, pages, means) => contactSheet(fit, kindsOf(fit.results).slice(0, CONTACTS), pages, means),
  },
};

interface QuiltJob {
  readonly kind: FileKind;
  readonly make: (
    title: string,
    parts: readonly Part[],
    choices: PaperChoices,
    means: Means,
  ) => Promise<Made>;
}

/** Of all parts of a quilt in one file; what of each is shown is what is usual. */
const QUILT_JOBS: Readonly<Record<QuiltPrintKind, QuiltJob>> = {
  'quilt-sheets': {
    kind: 'mockup',
    make: (title, parts, { show: _, ...layout }, means) => quiltMockup(title, parts, { layout }, means),
  },
  'quilt-card': { kind: 'card', make: cardSheets },
};

const isOfQuilt = (what: PrintKind): what is QuiltPrintKind => what in QUILT_JOBS;

export const print = async (
  input: Input,
  what: PrintKind,
  choices: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const means = meansWith(fonts);
  if (isOfQuilt(what)) {
    const { title, parts } = fitsOfQuilt(input);
    const { kind, make } = QUILT_JOBS[what];
    return printed({ called: calledAfter(title), kind }, await make(title, parts, choices, means));
  }
  const fit = chosenFit(input);
  const { kind, make } = JOBS[what];
  return printed({ called: calledAfter(fit.title), part: fit.name, kind }, await make(fit, choices, means));
};

/** A line for each part that is printed. Throws a ProblemError as printing does. */
export const sheetCount = (
  input: Input,
  what: SheetsKind,
  { show, ...layout }: PaperChoices,
): readonly string[] =>
  isOfQuilt(what)
    ? countSheets(fitsOfQuilt(input).parts, { layout })
    : countSheets([{ ...chosenFit(input), name: undefined }], { show, layout });

/** How much paper each takes: laid out as for printing, and put together without the work of making it small. */
export const pageCounts = async ({
  input,
  what,
  outlines,
  choices,
  fonts,
}: Extract<Question, { kind: 'count-pages' }>): Promise<Readonly<Record<string, string>>> => {
  const means: Means = { deflate: (bytes) => bytes, fonts: async () => fonts };
  const counted: Record<string, string> = {};
  const count = async (name: string, paper: () => Promise<string | undefined>): Promise<void> => {
    try {
      counted[name] = (await paper()) ?? '';
    } catch (error) {
      // What is wrong with it is said when it is asked for.
      if (!(error instanceof ProblemError)) throw error;
    }
  };
  for (const kind of what)
    await count(kind, async () => {
      if (isOfQuilt(kind)) {
        const { title, parts } = fitsOfQuilt(input);
        return (await QUILT_JOBS[kind].make(title, parts, choices, means)).paper;
      }
      const { paper, make } = JOBS[kind];
      const fit = chosenFit(input);
      return paper ? paper(fit, choices) : (await make(fit, choices, means)).paper;
    });
  for (const name of outlines)
    await count(name, async () => (await outlineOf(name, input.own, choices, means)).made.paper);
  return counted;
};

export const printed = (naming: Naming, { bytes, words, notices = [] }: Made): Printed => ({
  name: proposedName(naming),
  bytes,
  words,
  notices,
});

/** What a template is photographed on; a paper that does not hold its marks gives the nearest that does. */
export const printCaptureSheet = async (paper: PaperId, fonts: Fonts): Promise<Printed> => {
  const held = CAPTURE_PAPERS.find((id) => id === paper) ?? 'a4';
  const { bytes, words } = await captureSheet(held, meansWith(fonts));
  return {
    name: 'capture-sheet.pdf',
    bytes,
    words,
    notices: [madeWords.captureSheet],
  };
};

/** A template's outline at true size, to lay the acrylic on. */
export const printOutline = async (
  name: string,
  own: readonly OwnTemplate[],
  choices: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const { file, title, made } = await outlineOf(name, own, choices, meansWith(fonts));
  const { bytes, words, notices = [] } = made;
  return {
    name: proposedName({ called: baseName(file), kind: 'outline' }),
    bytes,
    words: madeWords.outline({ title, words }),
    notices: [...notices, madeWords.outlineUse],
  };
};

const outlineOf = async (
  name: string,
  own: readonly OwnTemplate[],
  { paper, measured }: PaperChoices,
  means: Means,
): Promise<{ readonly file: string; readonly title: string; readonly made: Made }> => {
  const found = findTemplate(name, own);
  if (!found.ok) throw new ProblemError([found.problem]);
  const { file, template } = found;
  const reading = readOwn({ name: file, text: template.text });
  if (!reading.ok) throw new ProblemError(reading.problems);
  const wanted = { clearance: USUAL_CLEARANCE, layout: { paper, measured } };
  return { file, title: reading.template.title, made: await outline(reading, wanted, means) };
};
