/** The marks of a side as a table of running distances. */

import { capital } from '../../document/index.ts';
import { formatLength, type LengthStyle } from '../../length/index.ts';
import {
  cornerSwag,
  type Design,
  leavesSquare,
  type Mark,
  type MarkKind,
  marksOf,
  type SideMarks,
} from '../../swag/index.ts';
import { bareLength as bare, unitWords } from '../text/index.ts';
import type { CardTable } from './block.ts';
import { type BandWords, SLIDE } from './step-words.ts';
import { toldWords } from './told.ts';

/** The sides whose marks are measured with a tape laid along them. */
export const tapesOf = (design: Design, style: LengthStyle): readonly SideMarks[] =>
  marksOf(design, style).filter(({ curvature }) => curvature === 0);

const introOf = ({ field, beyond, fit }: Design, style: LengthStyle): string => {
  const kinds =
    fit.pattern.kind === 'in turn'
      ? ' Two kinds of swag take turns: write the kind beside each centre mark.'
      : '';
  return (
    `Running distances along the ${lineName(field)}${beyond && beyond.field.marksAt !== 0 ? ' of row 1' : ''}, ${unitWords(style)}. Lay the tape once, with its 0 ${zeroWords(field)}, and mark ` +
    `everything without lifting it, so that no rounding adds to the next.${beyond ? ' Both rows share these marks.' : ''}${kinds}`
  );
};

/** Where a row starts that is on the marks of the first. */
const groundBeyond = ({ field }: Design, style: LengthStyle): string => {
  if (field.marksAt === 0) return 'The stitching starts and ends on the marks of row 1.';
  const seam = seamName(field);
  return (
    `Draw the start line of this row ${formatLength(field.startMargin, style)} from the ${seam}. The stitching starts and ends on it, ` +
    `where the marks of row 1, carried on square to the ${seam}, meet it.`
  );
};

/** What the swags start on. */
export const lineName = (field: Design['field']): string =>
  field.startMargin > 0 ? 'start line' : seamName(field);

/** Where the runs along a side begin: at its corner, or, where the corner squares are left free, beside them. */
const zeroWords = (field: Design['field']): string => {
  const { corners, from, startMargin } = field;
  if (corners === 'none') return 'at its left end, the seam towards you';
  const inner = seamName({ ...field, from: 'inner' });
  if (leavesSquare(field) && (from === 'outer' || startMargin > 0))
    return `beside the named corner: where the ${inner} on the neighbouring side, carried straight on, meets the ${lineName(field)}`;
  return startMargin > 0
    ? `at the named corner of the start lines: where the start lines of two sides cross, and not at the corner of the ${nearLine(field)}`
    : `at the named corner of the ${seamName(field)}`;
};

/** What the swags leave from: a seam of the quilt, or what a frame runs along. */
export const seamName = ({ corners, from, around }: Design['field']): string => {
  if (around.kind === 'block') return from === 'inner' ? 'edge of the block' : 'outer edge of the frame';
  return corners === 'none' ? 'seam' : `${from} seam`;
};

/** The same in a word, where it is clear which is meant. */
const nearLine = ({ from, around }: Design['field']): string =>
  around.kind !== 'block' ? 'seam' : from === 'inner' ? 'block' : 'outer edge';

/** Everything is measured from a seam, with a tape laid along it. */
export const straightWords = (design: Design, style: LengthStyle): BandWords => {
  const { cells, field } = design;
  const length = (mm: number): string => formatLength(mm, style);
  const { startMargin } = field;
  const seam = seamName(field);
  const near = nearLine(field);
  const chord = cornerSwag(design)?.kind === 'across';
  // What stands across a corner has its own line, and is told of by itself.
  const alongSides = chord ? cells.filter((c) => c.name !== 'corner') : cells;
  const crown =
    alongSides.length > 0
      ? `${toldWords(alongSides.map((c) => [c.name, length(startMargin + c.crown.y)]))} from the ${seam}`
      : `${length(cells[0]!.crown.y)} from the line across the corner`;
  return {
    ground:
      design.row > 1
        ? groundBeyond(design, style)
        : startMargin > 0
          ? `Draw the start line ${length(startMargin)} from the ${seam}. The stitching starts and ends on it.`
          : `The stitching starts and ends on the ${seam}.`,
    near,
    towards: `the ${near} towards you`,
    crown,
    line: {
      square: `on the start mark, square to the ${near}${SLIDE}`,
      along: `along the ${lineName(field)}${SLIDE} at the start mark`,
    },
    // Beyond the seam the guide line is nearer to her, and may be the seam.
    guide: (fromStart) => {
      const up = startMargin + fromStart;
      const away = length(Math.abs(up));
      if (away === length(0)) return `The guide line is the ${seam} itself`;
      return `Draw a guide line ${away} from the ${seam}${up < 0 ? ', on the side towards you' : ''}`;
    },
    up: (up) => `${up < 0 ? 'below' : 'above'} the ${lineName(field)}`,
    level: chord ? `the ${seam}, and at a corner from the line across it` : `the ${seam}`,
    crossed: 'the start line',
    marks: [
      { kind: 'text', text: introOf(design, style) },
      ...tapesOf(design, style).map((side, _, all) => marksTable(side, style, all.length === 1)),
    ],
  };
};

const COLUMNS: CardTable['columns'] = [
  { head: 'swag', align: 'left' },
  { head: 'start', align: 'right' },
  { head: 'centre', align: 'right' },
  { head: 'stop', align: 'right' },
];

const KIND: CardTable['columns'][number] = { head: 'kind', align: 'left' };

const marksTable = (side: SideMarks, style: LengthStyle, isOnly: boolean): CardTable => {
  const find = (kind: MarkKind, repeat?: number): string => {
    const mark = side.marks.find((m) => m.kind === kind && m.repeat === repeat);
    return mark ? markText(mark, side, style) : '';
  };
  const count = side.marks.filter((m) => m.kind === 'centre').length;
  const inTurn = side.kinds > 1;
  const rows = Array.from({ length: count }, (_, i): readonly string[] => [
    String(i + 1),
    ...(inTurn ? [String((i % side.kinds) + 1)] : []),
    find('start', i + 1),
    find('centre', i + 1),
    find('stop', i + 1),
  ]);
  const hasCorner = side.marks.some((m) => m.kind === 'corner stop');
  return {
    kind: 'table',
    name: capital(side.side),
    title: `${capital(side.side)} ${bare(side.length, style)} ${style.unit}, from ${isOnly ? 'its ' : ''}${side.corner}`,
    columns: inTurn ? [COLUMNS[0]!, KIND, ...COLUMNS.slice(1)] : COLUMNS,
    rows: hasCorner
      ? [['corner', '', '', find('corner stop')], ...rows, ['corner', find('corner start'), '', '']]
      : rows,
  };
};

/** A mark at the side's own end is the corner itself, wherever the tape then reads. */
const markText = (mark: Mark, side: SideMarks, style: LengthStyle): string =>
  mark.at === side.length ? 'end' : bare(mark.rounded, style);
