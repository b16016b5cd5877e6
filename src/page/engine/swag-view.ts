/** One swag, large: as it stands, or at any other pose while it is dragged, with the fits that it snaps to. */

import { SHEET, styled } from '../../drawing/index.ts';
import {
  type Box,
  compose,
  joinBoxes,
  movePath,
  type Point,
  pathBox,
  slicePath,
} from '../../geometry/index.ts';
import { formatLength } from '../../length/index.ts';
import { swagsWords } from '../../output/text/index.ts';
import { viewBox } from '../../output/view/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  checkCorner,
  choicesOf,
  describeMisfit,
  type Field,
  givenGap,
  isRound,
  kindsIn,
  type Misfit,
  ownCorner,
  type Ranked,
  type Seat,
  seat,
  toCornerOf,
} from '../../swag/index.ts';
import { answersWords } from '../words/words.ts';
import { type ChosenFit, chosenFit } from './desk.ts';
import { CORNER, LABEL_SHARE, type LoneSwag, loneSwag, posed, seatNamed } from './lone-swag.ts';
import type { Input, SectionFacts, SwagAnswer, SwagPose, SwagStop } from './messages.ts';
import { dataOf, inksOf, textsOf } from './picture.ts';

/** Room round the swag, mm: for marks and their labels, and for the part of a template that sticks out. */
const ROOM = { side: 14, below: 6, above: 9 };
/** Lines of labels below the seam, in their size. */
const LABELS_BELOW = 2.2;
/** Round a picture whose size its own lines give, mm: for a knob to be taken hold of. */
const KNOB_ROOM = 8;

export const swagView = (input: Input, side: string): SwagAnswer | undefined => {
  const fit = chosenFit(input);
  const { ranked, plan } = fit;
  const placed = seatNamed(ranked, side);
  if (!placed) return undefined;
  const lone = loneSwag(ranked, side, placed, plan);
  const stops = stopsOf(fit, side);
  const kind = isRound(ranked.fit) ? 'closed' : side === CORNER ? 'corner' : 'side';
  return {
    kind,
    pose: poseOf(lone, ranked, placed, plan, side, undefined),
    box:
      kind === 'side' ? sideBox(ranked.field, placed.way.shape.chord, lone) : ownBox(fit, side, stops, lone),
    chord: placed.way.shape.chord,
    // A corner has nothing to let go at but the other fits; a side springs back where there is none.
    turns:
      placed.way.tilt === undefined &&
      ranked.fit.pattern.kind === 'alike' &&
      (kind === 'side' || (kind === 'corner' && stops.length > 1)),
    stops,
    sections: sectionsOf(lone),
    uses: usedBy(ranked, placed),
  };
};

const usedBy = ({ field, fit }: Ranked, { way }: Seat): SwagAnswer['uses'] => {
  const { from, to } = choicesOf({ field, fit: { ...fit, way } });
  return { from: way.shape.from.label, to: way.shape.to.label, ends: { from, to } };
};

/** The same at another half span (mm), held within what the template can do. */
export const dragged = (input: Input, side: string, halfSpan: number): SwagPose | undefined => {
  const fit = chosenFit(input);
  const { ranked, plan } = fit;
  const now = seatNamed(ranked, side);
  // What one of two kinds is turned to, the other has to make up for: neither is turned by itself.
  if (!now || now.way.tilt !== undefined || isRound(ranked.fit) || ranked.fit.pattern.kind !== 'alike')
    return undefined;
  const { chord } = now.way.shape;
  const least = side === CORNER && ranked.field.from === 'inner' ? SMALLEST_AT_CORNER : SMALLEST;
  const laid = posed(now, Math.min(LARGEST * chord, Math.max(least * chord, halfSpan)));
  if (!laid) return undefined;
  const lone = loneSwag(ranked, side, laid, plan);
  const misfit = misfitOf(laid, ranked.field, plan, side);
  return poseOf(lone, ranked, laid, plan, side, misfit && describeMisfit(misfit, plan));
};

/** What is in the way of a pose, if anything is, by the same checks as in the search. */
const misfitOf = (laid: Seat, field: Field, plan: Plan, side: string): Misfit | undefined => {
  const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
  const rules = { room: field.room - outward, gap: givenGap(plan) };
  const { way, pose, gap } = laid;
  const tried =
    side === CORNER && field.corners !== 'none'
      ? checkCorner(way, pose, gap, field, rules)
      : seat(way, 2 * pose.halfSpan + gap, rules);
  return tried.ok ? undefined : tried.misfit;
};

/** Shares of the chord: flatter there is no drape to see, and steeper no span. */
const LARGEST = 0.9995;
const SMALLEST = 0.2;
/** Steeper, a corner swag that leaves the inner seam would start beyond its own corner. */
const SMALLEST_AT_CORNER = Math.SQRT1_2;

const poseOf = (
  lone: LoneSwag,
  { field }: Ranked,
  placed: Seat,
  plan: Plan,
  side: string,
  misfit: string | undefined,
): SwagPose => {
  const { pose, depth, span } = placed;
  const { moved, ground, deeper, ends } = lone;
  const length = (mm: number): string => formatLength(mm, plan.marks.style);
  const words =
    side === CORNER && field.corners !== 'none'
      ? answersWords.cornerPose({ deep: length(depth), marks: length(toCornerOf(field, pose)) })
      : answersWords.pose({ wide: length(span), deep: length(depth) });
  const shown = ({ x, y }: Point): Point => ({ x: x + moved.x, y: -(y + moved.y) });
  return {
    inks: inksOf(lone.drawing, ['fill']),
    texts: textsOf(lone.drawing, ['notes']),
    halfSpan: pose.halfSpan,
    depth,
    moved: { x: moved.x, y: -moved.y },
    ground: shown(ground),
    deeper: { x: deeper.x, y: -deeper.y },
    ends: [shown(ends[0]), shown(ends[1])],
    words,
    misfit,
  };
};

/** The view holds the widest and the deepest pose, so that nothing jumps while a hand drags. */
const sideBox = (field: Field, chord: number, { drawing, moved }: LoneSwag): Box => {
  const ghosts = drawing.layers.template.flatMap((item) =>
    item.kind === 'path' ? [pathBox(item.path)] : [],
  );
  const half = Math.max(chord, ...ghosts.map((b) => Math.max(-(b.minX + moved.x), b.maxX + moved.x)));
  const low = Math.min(0, ...ghosts.map((b) => b.minY));
  return {
    minX: -half - ROOM.side,
    maxX: half + ROOM.side,
    minY: -Math.max(field.width, field.startMargin + 0.75 * chord) - ROOM.above,
    maxY: Math.max(ROOM.below + LABELS_BELOW * LABEL_SHARE * chord, -low + 4),
  };
};

/** A corner's view holds the fits that it snaps to, a frame's the swag alone. */
const ownBox = (
  { ranked, plan }: ChosenFit,
  side: string,
  stops: readonly SwagStop[],
  lone: LoneSwag,
): Box => {
  const now = seatNamed(ranked, side)!;
  const ends = side === CORNER ? [stops[0], stops.at(-1)] : [];
  const others = ends.flatMap((stop) => {
    const laid = stop && posed(now, stop.halfSpan);
    return laid ? [loneSwag(ranked, side, laid, plan)] : [];
  });
  return [lone, ...others]
    .map(({ drawing, moved: { x, y } }) => {
      const { minX, maxX, minY, maxY } = viewBox(styled(drawing, SHEET), {
        without: ['notes'],
        margin: KNOB_ROOM,
      });
      return { minX: minX + x, maxX: maxX + x, minY: -(maxY + y), maxY: -(minY + y) };
    })
    .reduce(joinBoxes);
};

/**
 * The fits with the template set just as it is, one for each count of this side or of the frame; of a corner one
 * for each depth. From the narrowest to the widest.
 */
const stopsOf = ({ results, keys, ranked, plan }: ChosenFit, side: string): readonly SwagStop[] => {
  const stops = new Map<string | number, SwagStop>();
  const length = (mm: number): string => formatLength(mm, plan.marks.style);
  results.forEach((other, i) => {
    const here = seatNamed(other, side);
    if (!here || !sameWay(other, ranked)) return;
    const { depth, span } = here;
    const repeats = other.fit.sides.find((s) => s.run.name === side)?.repeats;
    const name = repeats ?? length(depth);
    if (stops.has(name) && other !== ranked) return;
    const deep = length(depth);
    const words =
      repeats === undefined
        ? answersWords.cornerStop({ deep, swags: swagsWords(other.fit, 'named') })
        : answersWords.stop({ count: repeats, wide: length(span), deep });
    stops.set(name, { key: keys[i]!, halfSpan: span / 2, depth, repeats, words });
  });
  return [...stops.values()].sort((a, b) => a.halfSpan - b.halfSpan || (b.repeats ?? 0) - (a.repeats ?? 0));
};

/** Only counts may differ. */
const sameWay = (a: Ranked, b: Ranked): boolean => {
  const [kinds, others] = [a, b].map(({ fit }) => [
    ...kindsIn(fit).map(({ way }) => way),
    ...(ownCorner(fit) ? [ownCorner(fit)!] : []),
  ]) as [Seat['way'][], Seat['way'][]];
  return (
    a.field.corners === b.field.corners &&
    kinds.length === others.length &&
    kinds.every((way, k) => isSameWay(way, others[k]!))
  );
};

const isSameWay = (v: Seat['way'], w: Seat['way']): boolean => {
  return (
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
const sectionsOf = ({ scope }: LoneSwag): readonly SectionFacts[] => {
  const { cell, motion } = scope.halves[0]!;
  // Where a flat or a line gives the tilt, less of the edge may be followed than the way says.
  const { shape } = cell.seat.way;
  const { sections, template } = shape.stitching;
  const standing = compose(motion, cell.motion);
  return sections.map((s) => ({
    number: s.number,
    label: s.name ? answersWords.namedSection({ number: s.number, name: s.name }) : answersWords.section(s),
    d: dataOf([movePath(slicePath(template.edge, s.from, s.to), standing)]),
    starts: s.number === shape.from.section,
    ends: s.number === shape.to.section,
  }));
};
