/** The design as one picture at true size, as any kind of file that there is a writer for. */

import { ProblemError } from '../document/index.ts';
import { clothOf, LAYERS, type LayerId } from '../drawing/index.ts';
import { describeDesign } from '../output/mockup/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import type { Writer, PictureWanted as WriterWanted } from '../output/writers/index.ts';
import { coloured, IN_COLOURS } from './coloured.ts';
import { drawnPart } from './drawn-part.ts';
import { correctionLines, type Made, type Means } from './made.ts';
import { type Part, type Shown, shownOf } from './part.ts';
import {
  labelSizeFor,
  leftByWriter,
  leftOutBy,
  type Transfer,
  transferred,
  transferWords,
} from './transfer.ts';
import { unprintable } from './unprintable.ts';

export interface PictureWanted extends Pick<WriterWanted, 'measured' | 'pixels'> {
  readonly writer: Writer;
  /** What of the design; all of it where it is undefined. */
  readonly show?: string | undefined;
  readonly without?: readonly LayerId[] | undefined;
  /** How it goes onto cloth; undefined for a picture to look at. */
  readonly transfer?: Transfer | undefined;
  /** To show: in the plan's colours of fabric and thread, on the cloth. Not together with a transfer. */
  readonly inColours?: boolean | undefined;
}

export interface Picture extends Made<string | Uint8Array> {
  readonly shown: Shown;
}

/** Throws a ProblemError for what is not in the design, fills that are not known, and pictures that are too large. */
export const picture = async (part: Part, wanted: PictureWanted, means: Means): Promise<Picture> => {
  const { plan, design, templates } = part;
  const { writer, show = 'all', without = [], transfer, inColours = false, measured, pixels } = wanted;
  const shown = shownOf(design, show);
  const drawn = drawnPart(part, shown, [...without, ...leftOutBy(transfer)], {
    asWhole: true,
    labelSize: labelSizeFor(transfer),
  });
  const { title, units } = plan;
  const summary = describeDesign(shown.design, plan.marks.style, plan.channels);
  const shownColours = inColours
    ? coloured(drawn.plain, clothOf(shown.design, shown.scope), plan, without)
    : undefined;
  const drawing =
    shownColours?.drawing ?? transferred(shownDrawing(drawn.drawing, { without }), transfer, units);
  if (LAYERS.every((id) => without.includes(id) || drawing.layers[id].length === 0))
    throw new ProblemError([
      {
        code: 'nothing-to-draw',
        message: 'nothing is left to draw',
        ...(without.length > 0 && { found: `left out: ${without.join(', ')}`, hint: 'leave out less' }),
      },
    ]);
  const { bytes, size } = await writer.write(
    drawing,
    { title, summary, units, without: leftByWriter(without, { transfer, inColours }), measured, pixels },
    means,
  );
  return {
    bytes,
    words: [
      `${shown.scope.label}${onceOf(plan)}`,
      ...(inColours ? [IN_COLOURS] : []),
      ...transferWords(transfer, units),
      size,
    ].join(', '),
    notices: [
      ...drawn.notices,
      ...(shownColours?.notices ?? []),
      ...(writer.hasOurLetters ? await unprintable(title, templates, means) : []),
    ],
    summary,
    corrections: measured ? correctionLines(measured) : [],
    shown,
  };
};

/** A part is drawn by itself once, wherever and how often it lies on its quilt. */
const onceOf = ({ part }: Part['plan']): string =>
  part && part.places.length > 1 ? ` once, of ${part.places.length} on the quilt` : '';
