/** How the template is set for the first half and the second, in words; and where hands are moved. */

import { capital } from '../../document/index.ts';
import { exactLength, formatLength, type LengthStyle } from '../../length/index.ts';
import { type Plan, SIDES } from '../../plan/index.ts';
import {
  type Cell,
  cornerSwag,
  type Design,
  outOfReach,
  ownCorner,
  type Placing,
  pausesOf,
  placingOf,
  roundFrame,
  type Setting,
  type Shape,
  type Standing,
} from '../../swag/index.ts';
import { bareLength as bare, rangeWords, smallLength, unitWords } from '../text/index.ts';
import type { CardBlock, CardTable } from './block.ts';
import { lineName, seamName, straightWords } from './mark-words.ts';
import { roundWords } from './ring-words.ts';
import { type BandWords, flatWords, swingWords } from './step-words.ts';

const point = (text: string): CardBlock => ({ kind: 'point', text });

/** From a seam with a tape, or from a centre with a ruler and a protractor. */
export const bandWords = (design: Design, style: LengthStyle): BandWords => {
  const ring = roundFrame(design);
  return ring ? roundWords(design, ring, style) : straightWords(design, style);
};

export const setBlocks = (design: Design, plan: Plan): readonly CardBlock[] => {
  const { style } = plan.marks;
  const length = (mm: number): string => formatLength(mm, style);
  const words = bandWords(design, style);
  const placings = design.cells.map(placingOf);
  const placing = placings[0]!;
  const { shape, setting } = design.fit.way;
  const lies =
    shape.side === 'inside'
      ? `inside the swag, between stitching and ${words.near}`
      : 'outside the swag, beyond the stitching';
  const stands = `${atStart(shape)} at the start mark.${beyondWords(placings, style)}`;
  return [
    ...kindWords(design).map(point),
    point(words.ground),
    point(
      `First half, from the start mark to the centre line, with ${words.towards}: the template lies ${lies}, ` +
        `${faceWords(placing.firstTurnedOver)}, ${stands}`,
    ),
    point(settingSteps(setting, shape, placing, words, length)),
    ...backWords(placings, plan, words).map(point),
    point(
      `${stopWords(design.cells)} Second half, from the crown to the stop mark: turn the template over (now ${faceWords(!placing.firstTurnedOver)}). ` +
        'Everything is the mirror image: what stood before the start mark stands beyond the stop mark.',
    ),
    ...cornerWords(design, length).map(point),
  ];
};

/**
 * Where a kind stands that takes turns with another: its fit is told by itself, and the sides by both. So are a corner's
 * swags that are made otherwise than those of the sides.
 */
const kindWords = ({ cells, sides, fit }: Design): readonly string[] => {
  if (ownCorner(fit))
    return ['This is how the swags over the corners are made; those of the sides are made otherwise.'];
  if (sides.every((side) => side.cells.length === 1)) return [];
  const { kind } = cells[0]!;
  return [
    `This is how the swags of kind ${kind} are made: ${kind === 1 ? '1, 3, 5' : '2, 4, 6'} and so on, on every side.`,
  ];
};

/** Face up is as the outline prints: the foot on the left on the way from heel to crown end. */
const faceWords = (turnedOver: boolean): string => (turnedOver ? 'turned over, face down' : 'face up');

/** The part's own end that is put to the start mark: the heel only where the part starts there. */
const atStart = ({ direction, from, to }: Shape): string => (direction === 'heel-first' ? from : to).spoken;

/** Where the part starts later, what comes before it hangs out beyond the start mark: on one side farther than on another. */
const beyondWords = (placings: readonly Placing[], style: LengthStyle): string => {
  const [first] = placings;
  if (!first || first.start?.label === first.end.label) return '';
  if (!placings.every(({ end }) => end.along < -NOTICEABLE)) return '';
  const out = rangeWords(
    placings.map(({ end }) => -end.along),
    style,
  );
  return ` The rest of the template lies beyond it: its ${first.end.label} is ${out} ${style.unit} before the start mark.`;
};

const settingSteps = (
  setting: Setting,
  shape: Shape,
  placing: Placing,
  words: BandWords,
  length: (mm: number) => string,
): string => {
  switch (setting.kind) {
    case 'crown-on-centre':
      return swingWords(shape, `on the centre line, ${words.crown}`);
    case 'alignment-line':
      return `Lay line ${setting.line.name} ${words.line[setting.laid]}.`;
    case 'flat-on-guide':
      return `${words.guide(placing.guide ?? 0)}${flatWords(setting.flat.label, placing, length)}`;
    default:
      return setting satisfies never;
  }
};

/** A place on the edge is never on the start mark itself: the foot stands between. Which way is told as in the table. */
const backWords = (
  placings: readonly Placing[],
  { marks: { style }, foot }: Plan,
  words: BandWords,
): readonly string[] => {
  const [first] = placings;
  if (!first?.start) return [];
  const { spoken, back } = first.start;
  const more =
    back > foot.clearance + NOTICEABLE
      ? ' (more than the clearance, because the foot does not reach into the notch)'
      : '';
  const away =
    back - foot.clearance < SAME_AS_FOOT ? exactLength(foot.clearance, style) : smallLength(back, style);
  const wheres = new Set(placings.map(({ start }) => (start ? whereWords(start, words, style) : '')));
  // Each side leans the template a little differently.
  const where =
    wheres.size === 1 ? `: ${[...wheres].join()}` : '; the table of guide lines says where on each side';
  return [
    `${capital(spoken)} is not on the start mark itself: the foot stands between. It lies ${away} ` +
      `from the needle${more}, ${first.templateSide === 'inside' ? 'inside' : 'outside'} the swag${where}.`,
  ];
};

/** `3 mm past the start mark and 5.5 mm below the start line` */
const whereWords = ({ along, up }: Standing, words: BandWords, style: LengthStyle): string => {
  const [past, height] = [along, up].map((mm) => bare(Math.abs(mm), style));
  return [
    past === '0' ? '' : `${past} ${style.unit} ${pastOrBefore(along)} the start mark`,
    height === '0' ? '' : `${height} ${style.unit} ${words.up(up)}`,
  ]
    .filter((text) => text !== '')
    .join(' and ');
};

/** So little (mm) farther than the clearance is the clearance: rounding of lengths. */
const SAME_AS_FOOT = 1e-3;

/** Less than this (mm) nobody sees: half of 1/64 in. */
const NOTICEABLE = 0.2;

const stopWords = (cells: readonly Cell[]): string => {
  const cutShort = cells.some((c) => placingOf(c).crown === undefined);
  return cutShort
    ? 'Stop with the needle down where it comes to the centre line, though the edge goes on.'
    : 'Stop with the needle down on the centre line.';
};

const cornerWords = (design: Design, length: (mm: number) => string): readonly string[] => {
  const corner = cornerSwag(design);
  if (design.corner.kind === 'half' && design.cells[0]!.kind > 1) return [];
  if (design.corner.kind === 'half')
    return [
      'Corners: the corner square stays free. Each side begins with a second half alone, whose centre line is at the tape’s 0: ' +
        'set the template by the stop mark, turned over as for every second half, and start the thread at the crown. ' +
        'Each side ends with a first half alone, whose centre line is at the tape’s end: set the template by the start mark, and tie off at the crown.',
    ];
  if (!corner) return [];
  const start = cornerStart(design, length(corner.fit.toCorner));
  if (corner.kind === 'turn')
    return [
      `Corners: the first half starts ${start}, and ends on the mitre, ` +
        'its centre line; the second half goes on from there along the next side.',
    ];
  const { guide } = placingOf(corner.cell);
  return [
    `Corners: the swag stands across the corner. It starts ${start}, and stops as far from there on the next side. ` +
      `Draw a line from start mark to stop mark: at the corner this line stands for the ${lineName(design.field)}, ` +
      `and the mitre, square to it, is the centre line. The crown is ${length(corner.cell.crown.y)} from this line${guide === undefined ? '' : `, ${chordGuide(guide, length)}`}.`,
  ];
};

/** Where the guide line of a swag across a corner lies: `and the guide line 1/2 in from it, towards the corner`. */
const chordGuide = (guide: number, length: (mm: number) => string): string => {
  const away = length(Math.abs(guide));
  if (away === length(0)) return 'and the guide line is this line itself';
  return `and the guide line ${away} from it${guide < 0 ? ', towards the corner' : ''}`;
};

/** A further row's corner swags start on the first one's marks. */
const cornerStart = ({ row, field }: Design, away: string): string => {
  if (row > 1) return 'where row 1’s mark for the corner says';
  return `${away} from ${field.startMargin > 0 ? 'where the start lines of two sides cross' : `the corner of the ${seamName(field)}`}`;
};

/** Rows that read the same are told together. */
const grouped = (rows: readonly (readonly string[])[]): readonly (readonly string[])[] => {
  const groups = new Map<string, { names: string[]; cells: readonly string[] }>();
  for (const [name, ...cells] of rows) {
    const key = cells.join('|');
    const known = groups.get(key);
    if (known) known.names.push(name ?? '');
    else groups.set(key, { names: [name ?? ''], cells });
  }
  return [...groups.values()].map(({ names, cells }) => [
    groups.size === 1 && names.length > 1
      ? 'all'
      : names.length === SIDES.length
        ? 'sides'
        : names.join(', '),
    ...cells,
  ]);
};

export const guideBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const { field } = design;
  const placings = design.cells.map(placingOf);
  const [first] = placings;
  if (!first) return [];
  const near = (first.start ?? first.end).spoken;
  const far = placings.find((p) => p.crown)?.crown?.spoken;
  // Lines are etched near the heel: they help only where the heel is at the start mark.
  const { shape } = design.fit.way;
  const heelAtStart = shape.direction === 'heel-first' && (shape.from.section ?? 1) === 1;
  const lines = heelAtStart ? first.lines : [];
  const right = (head: string): CardTable['columns'][number] => ({ head, align: 'right' });
  const columns: CardTable['columns'] = [
    { head: '' },
    right('near end along'),
    right('near end up'),
    ...lines.map(({ line }) => right(`line ${line.name}`)),
    ...(far === undefined ? [] : [right('far end along'), right('far end up')]),
    ...(first.guide === undefined ? [] : [right('flat up')]),
    right('crown up'),
  ];
  const isAcross = cornerSwag(design)?.kind === 'across';
  const isOnChord = (p: Placing): boolean => isAcross && p.cell.name === 'corner';
  const rows = placings.map((p): readonly string[] => {
    const at = p.start ?? p.end;
    const up = (mm: number): string => fromSeam(mm + (isOnChord(p) ? 0 : field.startMargin), style);
    return [
      placings.length === 1 ? 'each' : p.cell.name,
      fromMark(at.along, style),
      up(at.up),
      ...p.lines.slice(0, lines.length).map((l) => (l.along === undefined ? '-' : fromMark(l.along, style))),
      ...(far === undefined
        ? []
        : p.crown
          ? [fromMark(beyondCentre(p.cell, p.crown.along, p.crown.up), style), up(p.crown.up)]
          : ['-', '-']),
      ...(p.guide === undefined ? [] : [up(p.guide)]),
      up(p.cell.crown.y),
    ];
  });
  const ends = far === undefined ? `the near end is ${near}` : `the near end is ${near}, the far end ${far}`;
  const { level, crossed } = bandWords(design, style);
  // Its two halves meet on the mitre, and not on a line square to the seam.
  const corner = placings.some((p) => p.crown && p.cell.name === 'corner' && !isOnChord(p))
    ? ', which at the corner is the mitre: measure square to it'
    : '';
  const centre = far === undefined ? '' : `; of the far end, past or before the centre line${corner}`;
  const lettered =
    lines.length > 0 ? ` A lettered line is told by where it crosses the ${crossed} line.` : '';
  return [
    {
      kind: 'text',
      text:
        `The template's edge in the first half, ${unitWords(style)}: ${ends}. “along” is past the start mark (into the swag) or before it${centre}; ` +
        `“up” is from ${level}.${lettered} “crown up” is for the needle: where the stitching turns.`,
    },
    { kind: 'table', columns, rows: grouped(rows) },
  ];
};

/** How far (mm) a place lies past the line through the crown: the centre line, or at a corner the mitre. */
const beyondCentre = (cell: Cell, along: number, up: number): number =>
  (along - cell.crown.x) * Math.sin(cell.mirror) - (up - cell.crown.y) * Math.cos(cell.mirror);

const fromMark = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return text === '0' ? 'on it' : `${text} ${pastOrBefore(mm)}`;
};

const pastOrBefore = (mm: number): string => (mm < 0 ? 'before' : 'past');

const fromSeam = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return mm < 0 && text !== '0' ? `${text} below` : text;
};

export const pauseBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const length = (mm: number): string => formatLength(mm, style);
  // All halves follow the same edge; where one stops earlier at the centre line it only leaves out the last.
  const cells = [...design.cells].sort((a, b) => pausesOf(b).length - pausesOf(a).length);
  const longest = cells[0];
  if (!longest) return [];
  const pauses = pausesOf(longest);
  const reach = outOfReach(longest);
  const intro: CardBlock = {
    kind: 'text',
    text:
      pauses.length > 0
        ? 'Stop here with the needle down, and move your hands. In the second half the places come in the reverse order, each as far before the stop mark.'
        : 'No break lies on the way: wherever your hands must move, stop with the needle down first.',
  };
  return [
    intro,
    ...pauses.map((p) => point(`${capital(p.label)}, ${length(p.after)} of stitching after the start mark.`)),
    ...reach.map((u) =>
      point(
        `The foot does not reach into the edge from ${length(u.from)} to ${length(u.to)} along it: the stitching turns in a point ${smallLength(u.away, style)} away.`,
      ),
    ),
  ];
};
