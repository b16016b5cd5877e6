/** All parts of a quilt where they lie, to scale, as one picture of any kind that there is a writer for. */

import { ProblemError } from '../document/index.ts';
import {
  type ClothArea,
  clothOf,
  type Drawing,
  drawPlan,
  drawQuilt,
  fromTheBack,
  LAYERS,
  type LayerId,
  movedCloth,
  type QuiltPart,
  quiltPlaces,
  SHEET,
  styled,
} from '../drawing/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { coloured, IN_COLOURS } from './coloured.ts';
import { correctionLines, type Made, type Means } from './made.ts';
import { type Part, shownOf } from './part.ts';
import type { PictureWanted } from './picture.ts';
import { labelSizeFor, leftByWriter, leftOutBy, transferred, transferWords } from './transfer.ts';
import { designsOf, underName } from './under-name.ts';
import { unprintable } from './unprintable.ts';

/** Lines and arcs of all parts, each copy counted: as many take 1 GB, as those of fills do. */
const MOST_QUILT_LINES = 500_000;

const linesOf = ({ layers }: Drawing): number =>
  LAYERS.reduce(
    (sum, id) =>
      layers[id].reduce((n, item) => n + (item.kind === 'path' ? item.path.pieces.length : 0), sum),
    0,
  );

interface Cloth {
  readonly cloth: readonly ClothArea[];
}

/** The cloth from the back. */
export interface QuiltDrawing extends Cloth {
  readonly drawing: Drawing;
  readonly notices: readonly string[];
}

/** `title` is the quilt's. Throws a ProblemError with all that is wrong with the parts' fills. */
export const quiltDrawing = (
  title: string,
  parts: readonly Part[],
  without: readonly LayerId[],
  labelSize?: number,
): QuiltDrawing => {
  const drawn = parts.map((part) => {
    const { plan, design } = part;
    const options = { withFills: !without.includes('fill'), ghosts: false, labelSize };
    return { part, ...drawPlan(design, plan, shownOf(design, 'all').scope, options) };
  });
  const problems = drawn.flatMap((each) => each.problems.map(each.part.placed));
  if (problems.length > 0) throw new ProblemError(problems);
  const placed = drawn.flatMap(({ part: { plan, design }, drawing }): readonly (QuiltPart & Cloth)[] =>
    plan.part ? [{ part: plan.part, drawing, cloth: clothOf(design, shownOf(design, 'all').scope) }] : [],
  );
  const lines = placed.reduce((sum, each) => sum + each.part.places.length * linesOf(each.drawing), 0);
  if (lines > MOST_QUILT_LINES)
    throw new ProblemError([
      {
        code: 'too-many-lines',
        key: 'parts',
        message: 'the quilt holds too much for one picture',
        found: `${lines} lines and arcs`,
        expected: `at most ${MOST_QUILT_LINES}`,
        hint: 'draw some parts alone, or leave the fills out',
      },
    ]);
  return {
    drawing: drawQuilt(title, placed),
    cloth: fromTheBack(
      placed.flatMap((each) => quiltPlaces(each).map((motion) => movedCloth(each.cloth, motion))),
    ),
    notices: drawn.flatMap(({ part, messages }) => underName(part, messages)),
  };
};

/** Throws a ProblemError for fills that are not known, and pictures that are too large. */
export const quiltPicture = async (
  title: string,
  parts: readonly Part[],
  { writer, without = [], transfer, inColours = false, measured, pixels }: Omit<PictureWanted, 'show'>,
  means: Means,
): Promise<Made<string | Uint8Array>> => {
  const [first] = parts;
  if (!first) throw new Error('A quilt without parts');
  const { drawing, cloth, notices } = quiltDrawing(
    title,
    parts,
    [...without, ...leftOutBy(transfer)],
    labelSizeFor(transfer),
  );
  const summary = designsOf(parts);
  const { units } = first.plan;
  const onMiddle = parts.some(({ design }) => design.field.around.kind !== 'quilt');
  const shown = inColours ? coloured(drawing, cloth, first.plan, without, onMiddle) : undefined;
  const { bytes, size } = await writer.write(
    shown?.drawing ?? transferred(shownDrawing(styled(drawing, SHEET), { without }), transfer, units),
    { title, summary, units, without: leftByWriter(without, { transfer, inColours }), measured, pixels },
    means,
  );
  const templates = parts.flatMap((part) => part.templates);
  return {
    bytes,
    words: [
      'the whole quilt',
      ...(inColours ? [IN_COLOURS] : []),
      ...transferWords(transfer, units),
      size,
    ].join(', '),
    notices: [
      ...notices,
      ...(shown?.notices ?? []),
      ...(writer.hasOurLetters ? await unprintable(title, templates, means) : []),
    ],
    summary,
    corrections: measured ? correctionLines(measured) : [],
  };
};
