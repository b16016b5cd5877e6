/** Pages for the visitor's paper: the same steps and the same words as the commands, with a compressor for browsers. */

import { zlibSync } from 'fflate';
import { baseName, ProblemError } from '../../document/index.ts';
import { audition } from '../../jobs/audition.ts';
import { cardSheets } from '../../jobs/card-sheets.ts';
import { contactSheet } from '../../jobs/contact-sheet.ts';
import type { Made, Means } from '../../jobs/made.ts';
import { mockup } from '../../jobs/mockup.ts';
import { calledAfter, type FileKind, proposedName } from '../../jobs/names.ts';
import { outline } from '../../jobs/outline.ts';
import { USUAL_CLEARANCE } from '../../jobs/template-facts.ts';
import { type ChosenFit, chosenFit, readOwn } from './desk.ts';
import type { Fonts, Input, OwnTemplate, PaperChoices, Printed, PrintKind } from './messages.ts';
import { findTemplate } from './profiles.ts';

/** zlib's own usual level; inflated, the pages are the same at any. */
const deflate = (bytes: Uint8Array): Uint8Array => zlibSync(bytes, { level: 6 });

const meansWith = (fonts: Fonts): Means => ({ deflate, fonts: async () => fonts });

/** Empty frames on one page: enough to try three ideas on, each large enough for a pencil. */
const EMPTY_FRAMES = 3;
/** As many as a page of letter shows large enough to choose by. */
const CONTACTS = 12;

interface Job {
  readonly kind: FileKind;
  readonly make: (fit: ChosenFit, choices: PaperChoices, means: Means) => Promise<Made>;
}

const JOBS: Readonly<Record<PrintKind, Job>> = {
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
    make: (fit, { show, ...pages }, means) => audition(fit, { show, pages }, means),
  },
  frames: {
    kind: 'frames',
    make: (fit, { show, ...pages }, means) => audition(fit, { show, pages, empty: EMPTY_FRAMES }, means),
  },
  contact: {
    kind: 'choices',
    make: (fit, pages, means) => contactSheet(fit, fit.results.slice(0, CONTACTS), pages, means),
  },
};

export const print = async (
  input: Input,
  what: PrintKind,
  choices: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const fit = chosenFit(input);
  const { kind, make } = JOBS[what];
  const { bytes, words, notices = [] } = await make(fit, choices, meansWith(fonts));
  const name = proposedName({ called: calledAfter(fit.plan.title), part: fit.name, kind });
  return { name, bytes, words, notices };
};

/** A template's outline at true size, to lay the acrylic on. */
export const printOutline = async (
  name: string,
  own: readonly OwnTemplate[],
  { paper, measured }: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const found = findTemplate(name, own);
  if (!found.ok) throw new ProblemError([found.problem]);
  const reading = readOwn({ name: found.file, text: found.template.text });
  if (!reading.ok) throw new ProblemError(reading.problems);
  const wanted = { clearance: USUAL_CLEARANCE, layout: { paper, measured } };
  const { bytes, words, notices = [] } = await outline(reading, wanted, meansWith(fonts));
  const { title } = reading.template;
  return {
    name: proposedName({ called: baseName(found.file), kind: 'outline' }),
    bytes,
    words: `the outline of ${title}, ${words}`,
    notices: [...notices, 'Lay the acrylic on the dashed edge: it must cover it from heel to crown end.'],
  };
};
