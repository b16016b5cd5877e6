/** Pages for the visitor's paper: the same steps and the same words as the commands, with a compressor for browsers. */

import { zlibSync } from 'fflate';
import { baseName, ProblemError, plural } from '../../document/index.ts';
import { drawTemplate, SHEET, styled } from '../../drawing/index.ts';
import { audition } from '../../jobs/audition.ts';
import { cardSheets } from '../../jobs/card-sheets.ts';
import { contactSheet } from '../../jobs/contact-sheet.ts';
import type { Made, Means } from '../../jobs/made.ts';
import { mockup } from '../../jobs/mockup.ts';
import { calledAfter, type FileKind, proposedName } from '../../jobs/names.ts';
import type { Part } from '../../jobs/part.ts';
import { MM_PER_INCH } from '../../length/index.ts';
import { CAUTIONS } from '../../output/mockup/index.ts';
import { writeSheets } from '../../output/pdf/index.ts';
import { layOut } from '../../pagination/index.ts';
import { describeFault, stitchTemplate } from '../../swag/index.ts';
import { chosenFit, readOwn } from './desk.ts';
import type { Fonts, Input, OwnTemplate, PaperChoices, Printed, PrintKind } from './messages.ts';
import { findTemplate } from './profiles.ts';

/** zlib's own usual level; inflated, the pages are the same at any. */
const deflate = (bytes: Uint8Array): Uint8Array => zlibSync(bytes, { level: 6 });

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
  const means: Means = { deflate, fonts: async () => fonts };
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
export const outline = async (
  name: string,
  own: readonly OwnTemplate[],
  { paper, measured }: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const found = findTemplate(name, own);
  if (!found.ok) throw new ProblemError([found.problem]);
  const reading = readOwn({ name: found.file, text: found.template.text });
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { template } = reading;
  const stitched = stitchTemplate(template, USUAL_CLEARANCE);
  if (!stitched.ok) throw new ProblemError([describeFault(template, USUAL_CLEARANCE, stitched.fault)]);
  const drawing = styled(drawTemplate(stitched.stitching, template.title), SHEET);
  const laid = layOut(drawing, { paper, measured, units: 'in' });
  const { title } = template;
  const summary = ['Lay the acrylic on the dashed edge: it must cover it from heel to crown end.'];
  const bytes = await writeSheets(drawing, laid, {
    title,
    summary,
    units: 'in',
    cautions: CAUTIONS,
    deflate,
    fonts,
  });
  return {
    name: proposedName({ called: baseName(found.file), kind: 'outline' }),
    notices: [],
    bytes,
    words: `The outline of ${title}, ${plural(laid.sheets.length, 'sheet')} of ${laid.paper.name}, and a cover`,
  };
};
