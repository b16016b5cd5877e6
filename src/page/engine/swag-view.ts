/**
 * One swag by itself, upright and large: as it stands in its side, or at any other span while it is dragged.
 *
 * The swag is laid on a strip of its own that is as long as its share of the side, by the same steps as on the
 * border; so its channels and its ghost are those of the border, but for the two ends where a corner begins.
 */

import { type Drawing, drawDesign, scopeOf } from '../../drawing/index.ts';
import { type Box, compose, movePath, pathBox, slicePath } from '../../geometry/index.ts';
import { formatLength } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  crownPose,
  type Design,
  describeMisfit,
  designOf,
  type Field,
  placedChannels,
  type Ranked,
  type Seat,
  seat,
} from '../../swag/index.ts';
import { type ChosenFit, chosenFit } from './desk.ts';
import type { Input, SectionFacts, SwagAnswer, SwagPose, SwagStop } from './messages.ts';
import { dataOf, inksOf, textsOf } from './picture.ts';

/** Room round the swag, mm: for marks and their labels, and for the part of a template that sticks out. */
const ROOM = { side: 14, below: 6, above: 9 };

/** Labels as a share of the chord, so that they are read on a telephone and do not crowd on a large screen. */
const LABEL_SHARE = 0.042;
/** Lines of labels below the seam, in their size. */
const LABELS_BELOW = 2.2;

/** A swag on a strip of its own. */
export interface LoneSwag {
  readonly design: Design;
  readonly drawing: Drawing;
  /** What the drawing is moved by (mm) to bring its centre line to x = 0. */
  readonly across: number;
}

export const swagView = (input: Input, side: string): SwagAnswer | undefined => {
  const fit = chosenFit(input);
  const placed = seatOf(fit, side);
  if (!placed) return undefined;
  const { way } = placed;
  const { chord } = way.shape;
  const { field } = fit.ranked;
  const lone = loneSwag(field, placed, fit.plan, side);
  return {
    pose: poseOf(lone, placed, fit.plan, undefined),
    box: boxFor(field, chord, lone),
    chord,
    turns: way.tilt === undefined && side !== 'corner',
    stops: side === 'corner' ? [] : stopsOf(fit, side),
    sections: sectionsOf(lone.design),
  };
};

/** The same at another half span (mm), held within what the template can do. */
export const dragged = (input: Input, side: string, halfSpan: number): SwagPose | undefined => {
  const fit = chosenFit(input);
  const now = seatOf(fit, side);
  if (!now || now.way.tilt !== undefined) return undefined;
  const { field } = fit.ranked;
  const { way } = now;
  const { chord } = way.shape;
  const h = Math.min(LARGEST * chord, Math.max(SMALLEST * chord, halfSpan));
  const pose = crownPose(way.shape, h);
  if (!pose) return undefined;
  const outward = fit.plan.channels.outward.reduce((a, b) => a + b, 0);
  const tried = seat(way, 2 * h + now.gap, { room: field.room - outward, gap: fit.plan.swag.gap ?? 'auto' });
  const laid: Seat = { way, shape: way.shape, pose, gap: now.gap };
  const lone = loneSwag(field, laid, fit.plan, side);
  return poseOf(lone, laid, fit.plan, tried.ok ? undefined : describeMisfit(tried.misfit, fit.plan));
};

/** Shares of the chord: flatter there is no drape to see, and steeper no span. */
const LARGEST = 0.9995;
const SMALLEST = 0.2;

const seatOf = ({ ranked, design }: ChosenFit, side: string): Seat | undefined =>
  side === 'corner' ? design.corner?.fit.seat : ranked.fit.sides.find((s) => s.run.name === side)?.seat;

export const loneSwag = (field: Field, placed: Seat, plan: Plan, side: string): LoneSwag => {
  const share = 2 * placed.pose.halfSpan + placed.gap;
  const name = field.runs.find((r) => r.name === side)?.name ?? 'strip';
  const run = { name, length: share, seam: share };
  const own: Field = { ...field, runs: [run], corners: 'none' };
  const sides = [{ run, repeats: 1, seat: placed }];
  const design = designOf(own, { way: placed.way, sides, corner: undefined });
  const scoped = scopeOf(design, 'repeat');
  if (!scoped.ok) throw new Error('A swag without itself');
  const channels = placedChannels(design, plan.channels, scoped.scope.halves);
  const labelSize = placed.way.shape.chord * LABEL_SHARE;
  const drawing = drawDesign(design, scoped.scope, { title: plan.title, channels, labelSize });
  return { design, drawing, across: -share / 2 };
};

const poseOf = (lone: LoneSwag, placed: Seat, plan: Plan, misfit: string | undefined): SwagPose => {
  const { halfSpan, depth } = placed.pose;
  const length = (mm: number): string => formatLength(mm, plan.marks.style);
  const { startMargin } = lone.design.field;
  return {
    inks: inksOf(lone.drawing, ['fill']),
    texts: textsOf(lone.drawing, ['notes']),
    halfSpan,
    depth,
    across: lone.across,
    startY: -startMargin,
    crownY: -(startMargin + depth),
    words: `${length(2 * halfSpan)} wide, ${length(depth)} deep`,
    misfit,
  };
};

/** The view holds the widest and the deepest pose, so that nothing jumps while a hand drags. */
const boxFor = (field: Field, chord: number, { drawing, across }: LoneSwag): Box => {
  const ghosts = drawing.layers.template.flatMap((item) =>
    item.kind === 'path' ? [pathBox(item.path)] : [],
  );
  const half = Math.max(chord, ...ghosts.map((b) => Math.max(-(b.minX + across), b.maxX + across)));
  const low = Math.min(0, ...ghosts.map((b) => b.minY));
  return {
    minX: -half - ROOM.side,
    maxX: half + ROOM.side,
    minY: -Math.max(field.width, field.startMargin + 0.75 * chord) - ROOM.above,
    maxY: Math.max(ROOM.below + LABELS_BELOW * LABEL_SHARE * chord, -low + 4),
  };
};

/** The counts that fit with the template set just as it is, one for each count of this side. */
const stopsOf = ({ results, keys, ranked, plan }: ChosenFit, side: string): readonly SwagStop[] => {
  const stops = new Map<number, SwagStop>();
  results.forEach((other, i) => {
    const here = other.fit.sides.find((s) => s.run.name === side);
    if (!here || !sameWay(other, ranked) || (stops.has(here.repeats) && other !== ranked)) return;
    const { halfSpan, depth } = here.seat.pose;
    const length = (mm: number): string => formatLength(mm, plan.marks.style);
    const words = `${here.repeats} ${here.repeats === 1 ? 'swag' : 'swags'}, ${length(2 * halfSpan)} wide, ${length(depth)} deep`;
    stops.set(here.repeats, { key: keys[i]!, halfSpan, depth, repeats: here.repeats, words });
  });
  return [...stops.values()].sort((a, b) => a.halfSpan - b.halfSpan || b.repeats - a.repeats);
};

/** Only counts may differ. */
const sameWay = (a: Ranked, b: Ranked): boolean => {
  const [v, w] = [a.fit.way, b.fit.way];
  return (
    a.field.corners === b.field.corners &&
    v.shape.stitching === w.shape.stitching &&
    v.shape.from.label === w.shape.from.label &&
    v.shape.to.label === w.shape.to.label &&
    v.shape.side === w.shape.side &&
    v.shape.direction === w.shape.direction &&
    v.setting.kind === w.setting.kind &&
    v.tilt === w.tilt
  );
};

/** The edge of the first half's template by its sections, where it stands. */
const sectionsOf = ({ cells, halves }: Design): readonly SectionFacts[] => {
  const { shape } = cells[0]!.seat;
  const { template } = shape.stitching;
  const { sections } = shape.stitching;
  const first = shape.from.section ?? 1;
  const last = shape.to.section ?? sections.length;
  const standing = compose(halves[0]!.motion, cells[0]!.motion);
  return sections.map((s) => ({
    number: s.number,
    label: s.name ? `section ${s.number} (${s.name})` : `section ${s.number}`,
    d: dataOf([movePath(slicePath(template.edge, s.from, s.to), standing)]),
    used: s.number >= first && s.number <= last,
  }));
};
