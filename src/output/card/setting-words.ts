/** How the template is set for the first half and the second, in words; and where hands are moved. */

import { capital, series } from '../../document/index.ts';
import { exactLength, formatLength, type LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
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
} from '../../swag/index.ts';
import { rangeWords, smallLength } from '../text/index.ts';
import type { CardBlock } from './block.ts';
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
    ...backWords(placings, plan).map(point),
    point(
      `${stopWords(design.cells)} Second half, from the crown to the stop mark: turn the template over (now ${faceUp(!placing.firstTurnedOver)}). ` +
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
const faceWords = (turnedOver: boolean): string =>
  `${turnedOver ? 'turned over, ' : ''}${faceUp(turnedOver)}`;
const faceUp = (turnedOver: boolean): string => (turnedOver ? 'face down' : 'face up');

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

/** A place on the edge is never on the start mark itself: the foot stands between. */
const backWords = (placings: readonly Placing[], { marks: { style }, foot }: Plan): readonly string[] => {
  const [first] = placings;
  if (!first?.start) return [];
  const { spoken, back } = first.start;
  const more =
    back > foot.clearance + NOTICEABLE
      ? ' (more than the clearance, because the foot does not reach into the notch)'
      : '';
  const away =
    back - foot.clearance < SAME_AS_FOOT ? exactLength(foot.clearance, style) : smallLength(back, style);
  return [
    `${capital(spoken)} is not on the start mark itself: the foot stands between. It lies ${away} ` +
      `from the needle${more}, ${first.templateSide === 'inside' ? 'inside' : 'outside'} the swag.`,
  ];
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
  if (design.corner.kind === 'half') {
    const { firstTurnedOver } = placingOf(design.cells[0]!);
    return [
      'Corners: the corner square stays free. Each side begins with a second half alone, whose centre line is at the tape’s 0: ' +
        `set the template by the stop mark, ${faceUp(!firstTurnedOver)} as for every second half, and start the thread at the crown. ` +
        'Each side ends with a first half alone, whose centre line is at the tape’s end: ' +
        `set the template by the start mark, ${faceUp(firstTurnedOver)} as for every first half, and tie off at the crown.`,
    ];
  }
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

export const pauseBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const length = (mm: number): string => formatLength(mm, style);
  // All halves follow the same edge; where one stops earlier at the centre line it only leaves out the last.
  const cells = [...design.cells].sort((a, b) => pausesOf(b).length - pausesOf(a).length);
  const longest = cells[0];
  if (!longest) return [];
  const pauses = pausesOf(longest);
  // What is as deep as another is told with it.
  const reach = outOfReach(longest).map((u) => ({ ...u, words: smallLength(u.away, style) }));
  const depths = [...new Set(reach.map(({ words }) => words))];
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
    ...depths.map((away) => {
      const places = reach
        .filter(({ words }) => words === away)
        .map((u) => `between ${length(u.from)} and ${length(u.to)}`);
      return point(
        `Along the edge from its heel, ${series(places)}, the foot does not reach into it: the stitching turns there in a point ${away} from the deepest place.`,
      );
    }),
  ];
};
