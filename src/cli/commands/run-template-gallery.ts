/** What `template gallery` does. */

import { ProblemError, plural } from '../../document/index.ts';
import { exactLength, INCH_SIXTEENTH } from '../../length/index.ts';
import { PAGE_TOO_SMALL, writeGallery } from '../../output/contact-sheet/index.ts';
import { describeFault, galleryOf, type Stitching, stitchTemplate } from '../../swag/index.ts';
import { readTemplate } from '../../template/index.ts';
import { readClearance } from '../clearance.ts';
import { defaultName } from '../default-name.ts';
import { findNamedTemplate } from '../find-template.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { readLengthOption } from '../option-values.ts';
import { checkOutputOption } from '../output-option.ts';
import { readPages } from '../pages.ts';
import { readTextFile } from '../read-file.ts';
import { pdfMeans } from '../render-pdf.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';
import type { GalleryOptions } from './template-gallery.ts';

/** More pictures than this nobody compares. */
const MOST_SHOWN = 200;
const MOST_SPANS = 12;

export const runGallery = async (io: Io, name: string, options: GalleryOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const clearance = readClearance(options.clearance);
  const spans = options.spans === undefined ? [] : readSpans(options.spans);
  const setups = readPages(options, 'in', 'letter');
  const source = await readTextFile(io, await findNamedTemplate(io, name));
  const reading = readTemplate(source.text, source.name);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { template, placeAt } = reading;
  const stitched = stitchTemplate(template, clearance);
  if (!stitched.ok)
    throw new ProblemError([
      { ...describeFault(template, clearance, stitched.fault), place: placeAt(['edge']) },
    ]);
  const { swags: shown, cutShort } = galleryOf(stitched.stitching, spans, MOST_SHOWN);
  if (shown.length === 0)
    throw new ProblemError([
      {
        code: 'no-swags',
        message:
          cutShort === 'too-long'
            ? `no swag at these spans was found in the time that a gallery takes; ${sectionsOf(stitched.stitching)}`
            : 'this template makes no swag at these spans',
        place: placeAt(['edge']),
        ...(spans.length > 0 ? { hint: 'leave --spans out to see which it makes' } : {}),
      },
    ]);
  const output = await openOutput(io, { asked: options.output, usual: defaultName(source.path, 'gallery') }, [
    source.path,
  ]);
  const written = await writeGallery(
    shown,
    template.title,
    `At a foot clearance of ${exactLength(clearance, INCH_SIXTEENTH)}; two repeats of each, crown on centre.`,
    { units: 'in', setups, ...(await pdfMeans()) },
  );
  if (!written) throw new ProblemError([PAGE_TOO_SMALL]);
  await output.write(written.bytes);
  await sayUnprintable(io, '', [template]);
  if (cutShort === 'enough')
    await say(io, `the first ${shown.length} swags are shown, and there are more; name fewer with --spans`);
  if (cutShort === 'too-long')
    await say(io, `only the stretches from the first sections were tried; ${sectionsOf(stitched.stitching)}`);
  await say(
    io,
    `${output.name}: ${plural(shown.length, 'swag')} on ${plural(written.pages, 'page')} of ${written.paper}`,
  );
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      swags: shown.map((swag, i) => ({
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

const sectionsOf = ({ sections }: Stitching): string =>
  `the template has ${plural(sections.length, 'section')}`;

const readSpans = (text: string): readonly number[] => {
  const parts = text.split(',').map((part) => part.trim());
  if (parts.length > MOST_SPANS)
    throw wrongValue('--spans', 'too many', {
      found: String(parts.length),
      expected: `at most ${MOST_SPANS}`,
    });
  return parts.map((part) => readLengthOption('--spans', part, 'in', 'positive'));
};
