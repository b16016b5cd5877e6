/**
 * One swag by itself, as it stands on the quilt or at any other pose.
 *
 * A side's swag is laid on a strip of its own that is as long as its share of the side, upright whichever side it
 * is of; a corner's on a border of its own whose sides have one swag each. The steps are those of the whole design,
 * so channels and ghost are its own too. A round frame's swag is taken out of the frame, which decides its pose.
 */

import { type Drawing, drawDesign, type Scope, scopeOf } from '../../drawing/index.ts';
import { add, move, ORIGIN, type Point, scale, subtract } from '../../geometry/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  ALIKE,
  borderRuns,
  cornerSwag,
  crownPose,
  type Design,
  designOf,
  type Field,
  isRound,
  placedChannels,
  type Ranked,
  roundFrame,
  type Seat,
  straightRun,
  straightSeat,
  toCornerOf,
  WITHOUT_SWAG,
} from '../../swag/index.ts';

/** Labels as a share of the chord, so that they are read on a telephone and do not crowd on a large screen. */
export const LABEL_SHARE = 0.042;

export interface LoneSwag {
  readonly design: Design;
  readonly scope: Scope;
  readonly drawing: Drawing;
  /** What the drawing is moved by (mm, y up) to stand with its centre line at x = 0, or with its corner at the origin. */
  readonly moved: Point;
  /** Where the crown would be without depth, and by what it moves with every mm of it (drawing's frame, y up). */
  readonly ground: Point;
  readonly deeper: Point;
  /** Start and stop marks. */
  readonly ends: readonly [Point, Point];
}

export const CORNER = 'corner';

/** The half swag that a name of the page means: a side's, the corner's, the frame's. */
export const seatNamed = ({ fit }: Ranked, name: string): Seat | undefined =>
  name === CORNER ? cornerSwag(fit)?.seat : fit.sides.find((s) => s.run.name === name)?.seat;

/** The same half swag at another half span (mm), with nothing said about whether it fits; undefined beyond its chord. */
export const posed = (seat: Seat, halfSpan: number): Seat | undefined => {
  const pose = crownPose(seat.way.shape, halfSpan);
  return pose && straightSeat(seat.way, seat.way.shape, pose, seat.gap, seat.mirror);
};

export const loneSwag = (ranked: Ranked, name: string, seat: Seat, plan: Plan): LoneSwag => {
  if (isRound(ranked.fit)) return ringSwag(ranked, plan);
  return name === CORNER ? cornerAlone(ranked, seat, plan) : sideSwag(ranked.field, name, seat, plan);
};

/** Its two halves have the same neighbours, so their channels are worked out once: they are what a dragged swag waits for. */
const drawn = (design: Design, scope: Scope, plan: Plan): Pick<LoneSwag, 'design' | 'scope' | 'drawing'> => {
  const ofFirst = [...placedChannels(design, plan.channels, scope.halves.slice(0, 1)).values()][0] ?? [];
  const channels = new Map(scope.halves.map((half) => [half, ofFirst]));
  const labelSize = design.cells[0]!.seat.way.shape.chord * LABEL_SHARE;
  return { design, scope, drawing: drawDesign(design, scope, { title: plan.title, channels, labelSize }) };
};

const repeatOf = (design: Design): Scope => {
  const scoped = scopeOf(design, 'repeat');
  if (!scoped.ok) throw new Error('A swag without itself');
  return scoped.scope;
};

const sideSwag = (field: Field, name: string, seat: Seat, plan: Plan): LoneSwag => {
  const share = 2 * seat.pose.halfSpan + seat.gap;
  const known = field.runs.find((r) => r.name === name)?.name ?? field.name;
  const run = straightRun(known, share, field.startMargin);
  const own: Field = { ...field, runs: [run], corners: 'none' };
  const design = designOf(own, {
    way: seat.way,
    sides: [{ run, repeats: 1, seat }],
    corner: WITHOUT_SWAG,
    pattern: ALIKE,
  });
  const { halfSpan } = seat.pose;
  const y = field.startMargin;
  return {
    ...drawn(design, repeatOf(design), plan),
    moved: { x: -share / 2, y: 0 },
    ground: { x: share / 2, y },
    deeper: { x: 0, y: 1 },
    ends: [
      { x: share / 2 - halfSpan, y },
      { x: share / 2 + halfSpan, y },
    ],
  };
};

const cornerAlone = ({ field, fit }: Ranked, seat: Seat, plan: Plan): LoneSwag => {
  const beside = fit.sides[0]!.seat;
  if (field.corners === 'none') throw new Error('A corner on a run without one');
  const toCorner = toCornerOf(field, seat.pose);
  const offset = toCorner + seat.gap / 2;
  const length = 2 * offset + 2 * beside.pose.halfSpan + beside.gap;
  const { length: now, seam } = field.runs[0]!;
  const inner = length - now + (field.from === 'inner' ? seam : seam - 2 * field.width);
  const runs = borderRuns(field, { top: inner, right: inner, bottom: inner, left: inner });
  const design = designOf(
    { ...field, runs },
    {
      way: seat.way,
      sides: runs.map((run) => ({ run, repeats: 1, seat: beside })),
      corner: { kind: fit.corner.kind === 'across' ? 'across' : 'turn', seat, toCorner, offset },
      pattern: ALIKE,
    },
  );
  const laid = cornerSwag(design);
  const first = design.halves.find((h) => h.cell === laid?.cell);
  const halves = design.halves.filter((h) => h.repeat === first?.repeat);
  const [before, after] = halves.map((h) => design.sides.find((s) => s.run.name === h.side));
  if (!first || !before || !after) throw new Error('A corner without its sides');
  const scope: Scope = {
    label: first.repeat,
    halves,
    stretches: [
      { side: before, from: length - offset, to: length, repeats: [] },
      { side: after, from: 0, to: offset, repeats: [] },
    ],
  };
  const at = move(before.run.place, { x: length, y: 0 });
  // On the mitre, one deeper is one on along each of the two sides.
  const along = subtract(move(before.run.place, { x: length + 1, y: 1 }), at);
  const ahead = subtract(move(before.run.place, { x: length - 1, y: 1 }), at);
  const shared = { ...drawn(design, scope, plan), moved: { x: -at.x, y: -at.y } };
  // Across the corner depth is along the mitre, from the middle of the chord.
  const onMitre = { x: ahead.x * Math.SQRT1_2, y: ahead.y * Math.SQRT1_2 };
  const isAcross = laid?.kind === 'across';
  return {
    ...shared,
    ground: isAcross ? add(at, scale(onMitre, seat.pose.halfSpan)) : at,
    deeper: isAcross ? onMitre : field.from === 'inner' ? along : ahead,
    ends: [
      move(before.run.place, { x: length - toCorner, y: 0 }),
      move(after.run.place, { x: toCorner, y: 0 }),
    ],
  };
};

/** The first of the frame's swags, whose crown is straight above the frame's centre. */
const ringSwag = ({ field, fit }: Ranked, plan: Plan): LoneSwag => {
  const design = designOf(field, fit);
  const scope = repeatOf(design);
  const [start, stop] = scope.halves.map((h) => move(h.motion, { x: 0, y: 0 }));
  const { startRadius = 0 } = roundFrame({ field, fit }) ?? {};
  const out = field.from === 'outer' ? -1 : 1;
  return {
    ...drawn(design, scope, plan),
    moved: ORIGIN,
    ground: { x: 0, y: startRadius },
    deeper: { x: 0, y: out },
    ends: [start!, stop!],
  };
};
