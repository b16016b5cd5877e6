/** The card of a round frame, in words: everything is measured from its centre, along rays. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import {
  type Design,
  type MarkKind,
  marksOf,
  type RoundFrame,
  ringMeasures,
  roundFrame,
} from '../../swag/index.ts';
import { bareLength as bare, unitWords } from '../text/index.ts';
import type { CardBlock } from './block.ts';
import { type BandWords, SLIDE } from './step-words.ts';

const DEGREES = 180 / Math.PI;

/**
 * To a tenth of a degree: finer than a protractor shows. Halves go up by more than rounding can hide, so that a ray
 * on which one swag stops and the next starts has one angle.
 */
const degrees = (radians: number): string => `${Math.round(10 * radians * DEGREES + HALF_UP) / 10}°`;
const HALF_UP = 1e-6;

const circling = ({ from }: RoundFrame): string => (from === 'inner' ? 'clockwise' : 'counterclockwise');

/** Everything is measured from the motif's centre, along rays. */
export const roundWords = (design: Design, ring: RoundFrame, style: LengthStyle): BandWords => {
  const length = (mm: number): string => formatLength(mm, style);
  const inward = ring.from === 'outer';
  const hasGap = (design.sides[0]?.fit.seat.gap ?? 0) > 0;
  // With a gap the template is set by the ray between neighbours, which is not the start mark's own.
  const ray = hasGap ? 'the ray halfway between neighbours' : 'the start mark’s ray';
  const startRay = hasGap ? `through the start mark, parallel to ${ray}` : `along ${ray}`;
  return {
    ground: `Mark the centre of the motif: all distances are from it. Start and stop marks are ${length(ring.startRadius)} from it, crowns ${length(ring.crownRadius)}.`,
    near: inward ? 'outer edge' : 'motif',
    towards: `the motif ${inward ? 'away from you' : 'towards you'}`,
    crown: `${length(ring.crownRadius)} from the centre`,
    line: {
      square: `${startRay}${SLIDE} at the start mark`,
      along: `through the start mark, square to ${ray}${SLIDE} at the start mark`,
    },
    guide: (up) => {
      const farther = up > 0 === (ring.from === 'inner');
      return `Draw a guide line square to ${ray}, ${length(Math.abs(up))} ${farther ? 'farther from' : 'nearer to'} the centre than the start mark`;
    },
    // There is no line to be above or below.
    up: (up) => (up < 0 !== inward ? 'nearer to the centre' : 'farther from the centre'),
    level: 'the centre of the motif',
    crossed: `the line through the start mark square to ${ray.replace('the start mark’s', 'its')}`,
    marks: markBlocks(design, ring, style),
  };
};

/** The marks of a bent run as rays from its centre: radians from the first centre line, in the order of the swags. */
const raysOf = (design: Design, style: LengthStyle) =>
  marksOf(design, style).flatMap(({ marks, curvature }) =>
    marks.map(({ kind, repeat, at }) => ({ kind, repeat, angle: at * Math.abs(curvature) })),
  );

/** The rays with their distances, and how to find them with and without a protractor. */
const markBlocks = (design: Design, ring: RoundFrame, style: LengthStyle): readonly CardBlock[] => {
  const measures = ringMeasures(design, style);
  if (!measures) return [];
  const text = (words: string): CardBlock => ({ kind: 'text', text: words });
  const length = (mm: number): string => formatLength(mm, style);
  const { count } = ring;
  const rays = raysOf(design, style);
  const angleOf = (repeat: number, kind: MarkKind): string => {
    const ray = rays.find((r) => r.repeat === repeat && r.kind === kind);
    return ray ? degrees(ray.angle) : '';
  };
  const rows = Array.from({ length: count }, (_, i): readonly string[] => {
    const n = i + 1;
    return [String(n), angleOf(n, 'start'), angleOf(n, 'centre'), angleOf(n, 'stop')];
  });
  return [
    text(
      `With a ruler and a protractor: draw the first centre line from the centre straight up. Lay the protractor on the centre, its 0 along that line, and mark the rays ${circling(ring)} at the angles below. ` +
        `Then measure from the centre, ${unitWords(style)}: ${bare(measures.start, style)} along each start and stop ray, ${bare(measures.crown, style)} along each centre ray. Every distance is rounded once, and no rounding adds to the next.`,
    ),
    text(
      `Without a protractor: draw two circles round the centre, ${length(measures.start)} and ${length(measures.crown)} in radius. On the ${ring.from === 'inner' ? 'larger' : 'smaller'} one, which carries the crowns, begin straight up and step off ${length(measures.crownChord)}, straight from crown to crown, ` +
        `${count} times; the last step comes back to the first, and what is left over is shared among all. From each crown measure ${length(measures.reach)} to the other circle, to both sides: there lie its start and its stop. ` +
        `Check: straight from start to stop is ${length(measures.startChord)}${measures.gapChord > 0 ? `, and from a stop to the next start ${length(measures.gapChord)}` : ''}.`,
    ),
    {
      kind: 'table',
      name: 'Rays',
      title: `Rays ${circling(ring)}: ${bare(measures.start, style)}, crown ${length(measures.crown)}`,
      columns: [
        { head: 'swag', align: 'left' },
        { head: 'start ray', align: 'right' },
        { head: 'centre ray', align: 'right' },
        { head: 'stop ray', align: 'right' },
      ],
      rows,
    },
  ];
};

/** The same for programs: mm and degrees. */
export const ringAsData = (design: Design, style: LengthStyle): object | null => {
  const ring = roundFrame(design);
  const measures = ringMeasures(design, style);
  if (!ring || !measures) return null;
  const { step, half, ...lengths } = measures;
  return {
    count: ring.count,
    from: ring.from,
    turns: circling(ring),
    startRadius: ring.startRadius,
    crownRadius: ring.crownRadius,
    nearest: ring.nearest,
    farthest: ring.farthest,
    step: step * DEGREES,
    half: half * DEGREES,
    rounded: lengths,
    rays: raysOf(design, style).map(({ kind, repeat, angle }) => ({
      kind,
      repeat: `frame ${repeat}`,
      angle: angle * DEGREES,
      radius: kind === 'centre' ? ring.crownRadius : ring.startRadius,
    })),
  };
};
