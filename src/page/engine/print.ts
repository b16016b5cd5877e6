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
import type { Part } from '../../jobs/part.ts';
import { MM_PER_INCH } from '../../length/index.ts';
import { chosenFit, readOwn } from './desk.ts';
import type { Fonts, Input, OwnTemplate, PaperChoices, Printed, PrintKind } from './messages.ts';
import { findTemplate } from './profiles.ts';

/** zlib's own usual level; inflated, the pages are the same at any. */
const deflate = (bytes: Uint8Array): Uint8Array => zlibSync(bytes, { level: 6 });

const meansWith = (fonts: Fonts): Means => ({ deflate, fonts: async () => fonts });

/** Empty frames on one page: enough to try three ideas on, each large enough for a pencil. */
const EMPTY_FRAMES = 3;
/** As many as a page of letter shows large enough to choose by. */
const CONTACTS = 12;

export const print = async (
  input: Input,
  what: PrintKind,
  choices: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const fit = chosenFit(input);
  const means = meansWith(fonts);
  switch (what) {
    case 'sheets':
      return printed(
        fit,
        'mockup',
        await mockup(
          fit,
          { show: choices.show, layout: { paper: choices.paper, measured: choices.measured } },
          means,
        ),
      );
    case 'card':
      return printed(fit, 'card', await cardSheets(fit.plan.title, [fit], { paper: choices.paper }, means));
    case 'audition':
    case 'frames':
      return printed(
        fit,
        what,
        await audition(
          fit,
          {
            show: choices.show,
            empty: what === 'frames' ? EMPTY_FRAMES : undefined,
            pages: { paper: choices.paper },
          },
          means,
        ),
      );
    case 'contact':
      return printed(
        fit,
        'choices',
        await contactSheet(fit, fit.results.slice(0, CONTACTS), { paper: choices.paper }, means),
      );
    default:
      return what satisfies never;
  }
};

/** What was made, with its name and what is said of it. */
const printed = ({ plan, name }: Part, kind: FileKind, { bytes, words, notices }: Made): Printed => ({
  name: proposedName({ called: calledAfter(plan.title), part: name, kind }),
  bytes,
  words,
  notices,
});

/** The foot that most have: the outline itself does not depend on it. Common practice, no source. */
const USUAL_CLEARANCE = MM_PER_INCH / 4;

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
  const { bytes, words, notices } = await outline(reading, wanted, meansWith(fonts));
  const { title } = reading.template;
  return {
    name: proposedName({ called: baseName(found.file), kind: 'outline' }),
    bytes,
    words: `the outline of ${title}, ${words}`,
    notices: [...notices, 'Lay the acrylic on the dashed edge: it must cover it from heel to crown end.'],
  };
};
