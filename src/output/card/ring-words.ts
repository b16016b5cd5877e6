/** The card of a round frame, in words: everything is measured from its centre, along rays. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  type Design,
  frameSize,
  type MarkKind,
  marksOf,
  type Placing,
  type RoundFrame,
  ringMeasures,
  roundFrame,
  type Setting,
} from '../../swag/index.ts';
import { bareLength as bare, unitWords } from '../text/index.ts';
import type { CardBlock } from './block.ts';
import { flatWords, swingWords } from './step-words.ts';

const DEGREES = 180 / Math.PI;

/**
 * To a tenth of a degree: finer than a protractor shows. Halves go up by more than rounding can hide, so that a ray
 * on which one swag stops and the next starts has one angle.
 */
const degrees = (radians: number): string => `${Math.round(10 * radians * DEGREES + HALF_UP) / 10}°`;
const HALF_UP = 1e-6;

const circling = ({ from }: RoundFrame): string => (from === 'inner' ? 'clockwise' : 'counterclockwise');

export const ringSizeWords = (design: Design, { marks: { style } }: Plan): readonly string[] => {
  const ring = roundFrame(design);
  const size = frameSize(design);
  if (!ring || !size) return [];
  const channels = ring.away > 0 ? ', channels included' : '';
  return [
    `Finished frame: ${formatLength(size.width, style)} across${channels}; ${formatLength(size.inside.width, style)} across is free inside it.`,
  ];
};

/** Where the first half starts, how the template lies for it (`stands` says what of it at the start mark), and how it is set. */
export const ringSettingWords = (
  design: Design,
  ring: RoundFrame,
  placing: Placing,
  stands: string,
  length: (mm: number) => string,
): readonly string[] => {
  const { setting, shape } = design.fit.way;
  const inward = ring.from === 'outer';
  const inside = inward ? 'between stitching and outer edge' : 'between stitching and motif';
  const lies =
    shape.side === 'inside' ? `inside the swag, ${inside}` : 'outside the swag, beyond the stitching';
  const face = placing.firstTurnedOver ? 'turned over, face down' : 'face up';
  return [
    `Mark the centre of the motif: all distances are from it. Start and stop marks are ${length(ring.startRadius)} from it, crowns ${length(ring.crownRadius)}.`,
    `First half, from the start mark to the centre line, with the motif ${inward ? 'away from you' : 'towards you'}: the template lies ${lies}, ${face}, ${stands}`,
    settingSteps(setting, design, ring, placing, length),
  ];
};

/** With a gap the template is set by the ray between neighbours, which is not the start mark's own. */
const rayWords = (design: Design, own = 'the start mark’s'): string =>
  hasGap(design) ? 'the ray halfway between neighbours' : `${own} ray`;

const hasGap = (design: Design): boolean => (design.sides[0]?.fit.seat.gap ?? 0) > 0;

/** The line from which a template's places are measured outward or inward. */
export const ringLevelWords = (design: Design): string =>
  `the line through the start mark square to ${rayWords(design, 'its')}`;

const settingSteps = (
  setting: Setting,
  design: Design,
  ring: RoundFrame,
  placing: Placing,
  length: (mm: number) => string,
): string => {
  switch (setting.kind) {
    case 'crown-on-centre':
      return swingWords(
        design.fit.way.shape,
        `on the centre line, ${length(ring.crownRadius)} from the centre`,
      );
    case 'alignment-line': {
      const where =
        setting.laid === 'square'
          ? hasGap(design)
            ? `through the start mark, parallel to ${rayWords(design)}`
            : `along ${rayWords(design)}`
          : `through the start mark, square to ${rayWords(design)}`;
      return `Lay line ${setting.line.name} ${where}, and slide the template along it until the edge meets the foot at the start mark.`;
    }
    case 'flat-on-guide': {
      const guide = placing.guide ?? 0;
      const farther = guide > 0 === (ring.from === 'inner');
      return (
        `Draw a guide line square to ${rayWords(design)}, ${length(Math.abs(guide))} ${farther ? 'farther from' : 'nearer to'} the centre than the start mark` +
        flatWords(setting.flat.label, placing, length)
      );
    }
    default:
      return setting satisfies never;
  }
};

/** The marks of a bent run as rays from its centre: radians from the first centre line, in the order of the swags. */
const raysOf = (design: Design, style: LengthStyle) =>
  marksOf(design, style).flatMap(({ marks, curvature }) =>
    marks.map(({ kind, repeat, at }) => ({ kind, repeat, angle: at * Math.abs(curvature) })),
  );

/** The rays with their distances, and how to find them with and without a protractor. */
export const ringMarkBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const ring = roundFrame(design);
  const measures = ringMeasures(design, style);
  if (!ring || !measures) return [];
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
