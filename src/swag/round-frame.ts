/** A round frame's figures, as a person sees and measures it from the motif's centre. */

import { TURN } from '../geometry/index.ts';
import { type LengthStyle, roundLength } from '../length/index.ts';
import type { Design } from './design.ts';
import type { Motif } from './field.ts';
import { type Circling, circlingOf, crownOf } from './seat.ts';

/** Lengths in mm. */
export interface RoundFrame extends Circling, Omit<Motif, 'kind'> {
  readonly from: 'inner' | 'outer';
  readonly span: number;
  readonly depth: number;
  /** How far outward channels reach from the stitching. */
  readonly outward: number;
}

/** Undefined for bands of straight runs. */
export const roundFrame = ({ field, fit }: Pick<Design, 'field' | 'fit'>): RoundFrame | undefined => {
  const { around, from } = field;
  const [side] = fit.sides;
  const circle = side && circlingOf(side.seat.centre, crownOf(side.seat));
  if (around.kind !== 'motif' || !circle) return undefined;
  const { span, depth } = side.seat;
  const outward = from === 'inner' ? around.away : around.towards;
  return { ...circle, ...around, from, span, depth, outward };
};

/** What a person measures for a frame: three distances from the centre, and chords between neighbouring marks. */
export interface RingMeasures {
  /** mm from the centre, rounded once. */
  readonly start: number;
  readonly crown: number;
  /** Radians from one swag's centre line to the next. */
  readonly step: number;
  /** Radians from a centre line to the stop mark's ray; less than half the step where there is a gap. */
  readonly half: number;
  /**
   * Straight lines between neighbouring marks on one circle, mm, rounded once: 2·r·sin(angle/2), Machinery's
   * Handbook, 31st ed., p. 82 (S = 2·R·sin(180°/n)).
   */
  readonly crownChord: number;
  readonly startChord: number;
  readonly gapChord: number;
  /** Straight from a crown to its own start or stop mark, mm, rounded once. */
  readonly reach: number;
}

export const ringMeasures = (design: Design, style: LengthStyle): RingMeasures | undefined => {
  const ring = roundFrame(design);
  if (!ring) return undefined;
  const { startRadius, crownRadius, span } = ring;
  const step = TURN / ring.count;
  const half = Math.asin(Math.min(1, span / 2 / startRadius));
  // What is stepped off is measured on the circles that she draws, which are the rounded ones.
  const [start, crown] = [roundLength(startRadius, style), roundLength(crownRadius, style)];
  const chord = (radius: number, angle: number): number =>
    roundLength(2 * radius * Math.sin(Math.max(0, angle) / 2), style);
  // From a crown to its start: two sides of a triangle at the centre, and the angle between them.
  const reach = Math.sqrt(start ** 2 + crown ** 2 - 2 * start * crown * Math.cos(half));
  return {
    start,
    crown,
    step,
    half,
    crownChord: chord(crown, step),
    startChord: chord(start, 2 * half),
    gapChord: chord(start, step - 2 * half),
    reach: roundLength(reach, style),
  };
};
