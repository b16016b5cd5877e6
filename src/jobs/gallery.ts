/** What one template can make: swags side by side, a page for each part of its edge. */

import { ProblemError, plural } from '../document/index.ts';
import { exactLength, INCH_SIXTEENTH } from '../length/index.ts';
import { PAGE_TOO_SMALL, writeGallery } from '../output/contact-sheet/index.ts';
import { type GallerySwag, galleryOf, type Stitching } from '../swag/index.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { stitchingOf, type TemplateFile } from './outline.ts';
import { type PagesWanted, pageSetups } from './pages.ts';
import { unprintable } from './unprintable.ts';

/** More pictures than this nobody compares. */
const MOST_SHOWN = 200;

export interface GalleryWanted {
  /** mm */
  readonly clearance: number;
  /** mm; those that suit the template where there are none. */
  readonly spans: readonly number[];
  readonly pages: PagesWanted;
}

export interface Gallery extends Made {
  readonly notices: readonly string[];
  readonly swags: readonly GallerySwag[];
  /** Whether there are more than are shown. */
  readonly hasMore: boolean;
}

/** Throws a ProblemError where the template makes nothing at these spans, and for paper that is too small. */
export const gallery = async (
  file: TemplateFile,
  { clearance, spans, pages }: GalleryWanted,
  means: Means,
): Promise<Gallery> => {
  const { template, placeAt } = file;
  const stitching = stitchingOf(file, clearance);
  const { swags, cutShort } = galleryOf(stitching, spans, MOST_SHOWN);
  if (swags.length === 0)
    throw new ProblemError([
      {
        code: 'no-swags',
        message:
          cutShort === 'too-long'
            ? `no swag at these spans was found in the time that a gallery takes; ${sectionsWords(stitching)}`
            : 'this template makes no swag at these spans',
        place: placeAt(['edge']),
      },
    ]);
  const written = await writeGallery(
    swags,
    template.title,
    `At a foot clearance of ${exactLength(clearance, INCH_SIXTEENTH)}; two repeats of each, crown on centre.`,
    { units: 'in', setups: pageSetups(pages), ...(await pdfMeans(means)) },
  );
  if (!written) throw new ProblemError([PAGE_TOO_SMALL]);
  return {
    bytes: written.bytes,
    words: `${plural(swags.length, 'swag')} on ${plural(written.pages, 'page')} of ${written.paper}`,
    notices: [
      ...(await unprintable('', [template], means)),
      ...(cutShort === 'too-long'
        ? [`only the stretches from the first sections were tried; ${sectionsWords(stitching)}`]
        : []),
    ],
    swags,
    hasMore: cutShort === 'enough',
  };
};

const sectionsWords = ({ sections }: Stitching): string =>
  `the template has ${plural(sections.length, 'section')}`;
