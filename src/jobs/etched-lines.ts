/** The lines that a person says are etched in the acrylic of a traced outline: whether they lie on it, and where. */

import type { Problem } from '../document/index.ts';
import {
  containsPoint,
  move,
  nearnessOf,
  type Path,
  type Point,
  pieceAt,
  pieceLength,
} from '../geometry/index.ts';
import { INCH_SIXTYFOURTH, lengthsApart, MM_TENTH, roundLength, type Units } from '../length/index.ts';
import { fromHeel, lineBeyond, styleIn } from '../template/index.ts';
import type { WorkingEdge } from '../trace/index.ts';

/** An etched line by its distance (mm), or by a place in the outline's frame that it runs through. */
type Etched = number | Point;

export interface SaidLines {
  /** Square to the long axis, so far from the heel. */
  readonly across?: readonly { readonly name: string; readonly at: Etched }[] | undefined;
  /** Parallel to the edge, so far inside it. */
  readonly along?: readonly Etched[] | undefined;
}

export type EtchedLines =
  | {
      readonly ok: true;
      /** Distances from the heel, mm. */
      readonly across: readonly { readonly name: string; readonly at: number }[];
      /** Distances inside the edge, mm. */
      readonly along: readonly number[];
    }
  | { readonly ok: false; readonly problem: Problem };

/** mm: what a finger or a ruler is off by. */
const OFF = 1;

/**
 * The lines as distances from the heel and inside the edge, mm. Those said by places are measured as finely as a ruler is
 * read, to 1/64 in or 0.1 mm. `toEdge` brings a place into the edge's frame.
 */
export const measuredLines = (
  edge: Path,
  toEdge: (p: Point) => Point,
  { across = [], along = [] }: SaidLines,
  units: Units,
): Omit<Extract<EtchedLines, { ok: true }>, 'ok'> => {
  const near = nearnessOf(edge.pieces);
  const measured = (at: Etched, of: (p: Point) => number): number =>
    typeof at === 'number' ? at : roundLength(of(toEdge(at)), units === 'in' ? INCH_SIXTYFOURTH : MM_TENTH);
  return {
    across: across.map(({ name, at }) => ({ name, at: measured(at, (p) => fromHeel(edge, p.x)) })),
    along: along.map((at) => measured(at, near.distance)),
  };
};

export const etchedIn = (
  outline: Path,
  { edge, motion }: Pick<WorkingEdge, 'edge' | 'motion'>,
  said: SaidLines,
  units: Units,
): EtchedLines => {
  const { across = [], along = [] } = said;
  const near = nearnessOf(edge.pieces);
  const round = nearnessOf(outline.pieces);
  const isOn = (p: Point): boolean => containsPoint({ loops: [outline] }, p) || round.distance(p) <= OFF;
  const places = [
    ...across.map(({ at }) => ({ at, key: 'alignment' })),
    ...along.map((at) => ({ at, key: 'channelLines' })),
  ];
  for (const { at, key } of places)
    if (typeof at !== 'number' && !isOn(at)) return refuse(besideTemplate(round.distance(at), key));
  const widest = along.some((at) => typeof at === 'number') ? farthestFrom(near, outline, motion) : 0;
  for (const at of along)
    if (typeof at === 'number' && at > widest + OFF) return refuse(tooFarInside(at, widest, units));
  const lines = measuredLines(edge, (p) => move(motion, p), said, units);
  const beyond = lineBeyond(edge, lines.across, units);
  if (beyond) return refuse(beyond);
  return { ok: true, ...lines };
};

const refuse = (problem: Problem): EtchedLines => ({ ok: false, problem });

/** Places of an outline that are looked at, mm apart. */
const STEP = 1;

/** How far the template reaches from its edge, mm. */
const farthestFrom = (
  edge: ReturnType<typeof nearnessOf>,
  { pieces }: Path,
  motion: WorkingEdge['motion'],
): number => {
  let farthest = 0;
  for (const piece of pieces) {
    const steps = Math.ceil(pieceLength(piece) / STEP);
    for (let i = 0; i < steps; i++)
      farthest = Math.max(farthest, edge.distance(move(motion, pieceAt(piece, i / steps))));
  }
  return farthest;
};

const besideTemplate = (away: number, key: string): Problem => ({
  code: 'off-the-template',
  key,
  message: 'an etched line is said by a place that is not on the template',
  found: `a place ${Math.round(away)} mm outside its outline`,
  expected: 'a place inside the outline, on the line',
});

const tooFarInside = (at: number, widest: number, units: Units): Problem => {
  const [found, most] = lengthsApart(at, widest, styleIn(units));
  return {
    code: 'off-the-template',
    key: 'channelLines',
    message: 'this line lies farther inside the edge than the template reaches',
    found,
    expected: `at most ${most}, where the template ends`,
  };
};
