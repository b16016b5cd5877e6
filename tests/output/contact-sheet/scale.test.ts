/** A contact sheet's pictures are all to the scale that it states. */

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { drawDesign } from '../../../src/drawing/index.ts';
import { captionOf, excerptOf, writeContactSheet } from '../../../src/output/contact-sheet/index.ts';
import { pageSetup } from '../../../src/output/pdf/index.ts';
import { evenMargins, PAPERS } from '../../../src/pagination/index.ts';
import { designOf } from '../../../src/swag/index.ts';
import { planOf, search, templateOf } from '../../swag/fit-helpers.ts';

const require = createRequire(import.meta.url);
const font = (name: string): Promise<Uint8Array> => readFile(require.resolve(`dejavu-fonts-ttf/ttf/${name}`));

/** One arc, whose needle runs an arc with a chord of 6.4 in (see the marking tests for the figures). */
const ARC = templateOf('units: in\nedge: [{ start: [0, 0] }, { arc: { to: [6, 0], rise: 1 1/2 } }]', 'arc');

/** The curves' end points on a page, in points: the stitching is the only thing that is not straight. */
const curveEnds = (doc: PDFDocument, page: number): readonly (readonly [number, number])[] => {
  const stream = doc.context.lookup(doc.getPage(page).node.get(PDFName.of('Contents')));
  if (!(stream instanceof PDFRawStream)) throw new Error('a page without its content');
  const text = new TextDecoder().decode(stream.contents);
  const ends: [number, number][] = [];
  let from: [number, number] = [Number.NaN, Number.NaN];
  for (const [, numbers, operator] of text.matchAll(/((?:-?[\d.]+\s+)+)([mlc])\b/g)) {
    const n = numbers!.trim().split(/\s+/).map(Number);
    const to: [number, number] = [n.at(-2)!, n.at(-1)!];
    if (operator === 'c') ends.push(from, to);
    from = to;
  }
  return ends;
};

describe('a contact sheet', () => {
  it.each(['letter', 'a4'] as const)(
    'shows spans and depths at the scale that it states, on %s',
    async (paper) => {
      const plan = planOf(
        'layout: { strip: { length: 36, width: 4 } }\nswag: { repeats: 3, gap: 0, setting: crown-on-centre, side: inside, direction: heel-first }\n',
      );
      const best = search(plan, [ARC]).results[0]!;
      const design = designOf(best.field, best.fit);
      const drawing = drawDesign(design, excerptOf(design), { title: '', ghosts: false });
      const caption = captionOf(best, plan.marks.style);
      const sheet = await writeContactSheet([{ number: 1, drawing, caption }], {
        title: 'Strip',
        summary: 'One way.',
        units: 'in',
        setups: [pageSetup(PAPERS[paper], 'portrait', evenMargins(12.7))],
        // Left as it is, to be read below.
        deflate: (bytes) => bytes,
        fonts: { regular: await font('DejaVuSans.ttf'), bold: await font('DejaVuSans-Bold.ttf') },
      });
      const ends = curveEnds(await PDFDocument.load(sheet.bytes), 0);
      const xs = ends.map(([x]) => x);
      const ys = ends.map(([, y]) => y);
      const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
      const points = 72 / sheet.reduction;
      // Two repeats of 12 in; each has its crown in its middle, sqrt(6.4² − 6²) in high.
      expect(Math.max(...xs) - left).toBeCloseTo(24 * points, 2);
      const crown = [left + 6 * points, bottom + Math.sqrt(6.4 ** 2 - 6 ** 2) * points] as const;
      const apart = Math.min(...ends.map(([x, y]) => Math.hypot(x - crown[0], y - crown[1])));
      expect(apart).toBeLessThan(0.003);
      // As large as the paper lets it be: 24 in on 7 1/2 in, or 184.6 mm, is no less than 1 : 3.2.
      expect(sheet.reduction).toBeGreaterThan(3.2);
      expect(sheet.reduction).toBeLessThanOrEqual(4);
    },
  );

  it('captions with what was chosen and what comes of it', () => {
    const plan = planOf('layout: { border: { width: 4, inner: 36, corners: turn } }\n');
    const best = search(plan, [ARC]).results[0]!;
    const caption = captionOf(best, plan.marks.style);
    // One arc of 6.4 in: four sides alike, of which each has as many swags.
    expect(caption).toEqual([
      expect.stringMatching(
        /^\d+ swags on each side, [\d /]+ in wide, [\d /]+ in deep, touching; fills .*the border$/,
      ),
      expect.stringMatching(
        /^Arc, heel to crown end; crown on centre, .*, .* first; corners turn; .*uses \d+ %$/i,
      ),
    ]);
    expect(captionOf(best, plan.marks.style, 12)[1]).toMatch(/; and 12 like it$/);
  });
});
