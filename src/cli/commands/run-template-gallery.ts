/** What `template gallery` does. */

import { gallery } from '../../jobs/gallery.ts';
import type { Units } from '../../length/index.ts';
import { USUAL_PAPER } from '../../pagination/index.ts';
import { asAsked } from '../asked.ts';
import { readClearance } from '../clearance.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { MEANS } from '../means.ts';
import { printJson } from '../messages.ts';
import { readLengthOption } from '../option-values.ts';
import type { OutputOptions, PaperOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions } from '../sheets.ts';
import { readTemplateFile } from '../template-file.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface GalleryOptions extends OutputOptions, PaperOptions {
  readonly clearance?: string;
  readonly spans?: string;
}

const MOST_SPANS = 12;

export const runGallery = async (io: Io, name: string, options: GalleryOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const file = await readTemplateFile(io, name);
  const clearance = readClearance(options.clearance, file.units);
  const spans = options.spans === undefined ? [] : readSpans(options.spans, file.units);
  const pages = readSheetOptions(options, file.units, USUAL_PAPER[file.units]);
  const usual = defaultName(file.path, 'gallery');
  const output = await openOutput(io, { asked: options.output, usual }, [file.path]);
  const made = await asAsked(
    options,
    () => gallery(file, { clearance, spans, pages }, MEANS),
    (problem) => {
      if (problem.code !== 'no-swags' || spans.length === 0) return problem;
      // What is wrong is the option, and nothing of the file.
      const { place: _, ...asked } = problem;
      return { ...asked, hint: 'leave --spans out to see which it makes' };
    },
  );
  const { swags, notices } = made;
  await output.write(made.bytes);
  const more = `the first ${swags.length} swags are shown, and there are more; name fewer with --spans`;
  await sayMade(io, output, { ...made, notices: made.hasMore ? [...notices, more] : notices });
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      swags: swags.map((swag, i) => ({
        number: i + 1,
        from: swag.shape.from.label,
        to: swag.shape.to.label,
        side: swag.shape.side,
        direction: swag.shape.direction,
        span: 2 * swag.seat.pose.halfSpan,
        depth: swag.seat.pose.depth,
        gap: swag.seat.gap,
      })),
    });
};

const readSpans = (text: string, units: Units): readonly number[] => {
  const parts = text.split(',').map((part) => part.trim());
  if (parts.length > MOST_SPANS)
    throw wrongValue('--spans', 'too many', {
      found: String(parts.length),
      expected: `at most ${MOST_SPANS}`,
    });
  return parts.map((part) => readLengthOption('--spans', part, units, 'positive'));
};
