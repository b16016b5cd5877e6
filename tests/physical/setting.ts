/**
 * Follows a card's instruction with a template in the hand: tries every way to lay it that the words leave, and keeps
 * those in which the foot touches where they say.
 */

import { type Acrylic, apart, dot, type Lie, minus, onAcrylic, onCloth, type Spot } from './acrylic.ts';
import type { Instruction, Landing, Read } from './card-reader.ts';
import { from, type Stand, seenFrom } from './cloth.ts';

/** A finger feels no less than this between foot and edge, mm, beside what the rounding of the figures leaves. */
const TOUCH = 0.07;
/** The acrylic is moved on by this much at a time, mm: the foot comes to the edge no faster. */
const STEP = 0.15;
/** How far the foot may stand past an end of the edge, mm: what the rounding of a mark leaves. */
const PAST = 0.6;
/** “At” a place on the edge, as the eye sees it, mm. */
const AT = 2;

/**
 * Ways to lay the template that are one to the finger: the one that the eye would take, and how far apart (mm) they
 * hold the foot. What hangs beyond the swag swings farther, and nothing is stitched there.
 */
export interface Found {
  readonly lie: Lie;
  readonly spread: number;
}

export interface Task {
  readonly instruction: Instruction;
  readonly over: boolean;
  /** The start mark, on along the swag, and away from her. For a wreath up is along the ray that is told. */
  readonly stand: Stand;
  readonly crown: Spot;
  /** The guide line's place, mm up from the start mark. */
  readonly guide: number;
  /** The end of the edge that lies nearer to the start of the swag. */
  readonly direction: 'heel-first' | 'crown-first';
  /** Half a step of the card's figures, mm. */
  readonly rounding: number;
}

export const follow = (acrylic: Acrylic, task: Task): readonly Found[] => {
  const { instruction } = task;
  switch (instruction.kind) {
    case 'swing':
      return swing(acrylic, task, instruction);
    case 'line': {
      const line = acrylic.template.alignment.find((a) => a.name === instruction.line);
      if (!line) throw new Error(`No line ${instruction.line} is etched`);
      const axis = instruction.laid === 'square' ? task.stand.along : task.stand.up;
      return slid(acrylic, task, instruction.landing, [angleOf(axis), angleOf(axis) + Math.PI], (t) => ({
        acrylic: { x: line.at, y: t },
        cloth: task.stand.at,
      }));
    }
    case 'flat': {
      const flat = flatNamed(acrylic, instruction.flat);
      const turned = Math.atan2(flat.to.y - flat.from.y, flat.to.x - flat.from.x) * (task.over ? -1 : 1);
      const axis = angleOf(task.stand.along) - turned;
      return slid(acrylic, task, instruction.landing, [axis, axis + Math.PI], (t) => ({
        acrylic: flat.from,
        cloth: from(task.stand, t, task.guide),
      }));
    }
    default:
      return instruction satisfies never;
  }
};

const angleOf = (d: Spot): number => Math.atan2(d.y, d.x);

export const lieOf = (over: boolean, angle: number, acrylic: Spot, cloth: Spot): Lie => {
  const turned = onCloth({ over, angle, x: 0, y: 0 }, acrylic);
  return { over, angle, x: cloth.x - turned.x, y: cloth.y - turned.y };
};

/** The straight stretch that the card's words name: the only one of its section that is long enough to lay, or one by its number. */
export const flatNamed = ({ template, ...acrylic }: Acrylic, words: string) => {
  const found = words.match(/^(?:the flat of|flat (\d+) from the heel in) section (\d+)(?: \(.*\))?$/);
  if (!found) throw new Error(`${words}: no such flat`);
  const end = (i: number): number => (i < 0 ? 0 : (template.breaks[i]?.at ?? acrylic.length));
  const [low, high] = [end(Number(found[2]) - 2), end(Number(found[2]) - 1)];
  let at = 0;
  const flats = template.edge.pieces.filter((p) => {
    const from = at;
    at += p.kind === 'line' ? apart(p.from, p.to) : Math.abs(p.sweep) * p.radius;
    return p.kind === 'line' && at - from >= 12 && from >= low - 1e-6 && from < high - 1e-6;
  });
  if (found[1] === undefined && flats.length > 1) throw new Error(`${words}: there are ${flats.length}`);
  const flat = flats[Number(found[1] ?? 1) - 1];
  if (!flat) throw new Error(`${words}: it is nowhere straight`);
  return flat;
};

const swing = (
  acrylic: Acrylic,
  { over, stand, crown, direction, rounding }: Task,
  { place, far }: Instruction & { kind: 'swing' },
): readonly Found[] => {
  if (place === undefined) throw new Error('Nobody is told where on the edge the foot begins');
  const forward = direction === 'heel-first';
  const needleAt = (words: string): Spot => {
    const named = acrylic.named(words);
    if (named) return acrylic.needleAt(named.at, named.beside);
    const line = acrylic.template.alignment.find((a) => `line ${a.name}` === words);
    if (!line) throw new Error(`${words}: no such place`);
    return acrylic.needleOverLine(line.at);
  };
  const start = needleAt(place);
  const begin = acrylic.feel(start).at;
  const stop = far === undefined ? undefined : needleAt(far);
  const chord = apart(stand.at, crown);
  const tried = (angle: number): Try => {
    const lie = lieOf(over, angle, start, stand.at);
    const needle = onAcrylic(lie, crown);
    const { away, at, pastEnd } = acrylic.feel(needle);
    const isOn = forward ? at > begin + 1 : at < begin - 1;
    const off = offEdge(away, acrylic);
    const miss = stop === undefined ? Math.abs(off) : apart(needle, stop);
    const isFar = stop === undefined || miss < AT;
    return { lie, off, miss, isRight: away > 0 && isOn && isFar && pastEnd <= PAST + 2 * rounding };
  };
  return clusters(
    travel(0, TURN * chord, TOUCH + rounding, (t) => tried(t / chord)),
    stop === undefined ? endsOf(acrylic) : [start, stop],
    TOUCH + rounding,
    { isRound: true, isNamed: stop !== undefined },
  );
};

const slid = (
  acrylic: Acrylic,
  { over, stand, crown, direction, rounding }: Task,
  landing: Landing | undefined,
  angles: readonly number[],
  at: (t: number) => { readonly acrylic: Spot; readonly cloth: Spot },
): readonly Found[] => {
  const reach = acrylic.length + 60;
  const end = landing && acrylic.named(landing.end);
  return angles.flatMap((angle) => {
    const touch = TOUCH + rounding;
    const tries = travel(-reach, reach, touch, (t): Slid => {
      const pinned = at(t);
      const lie = lieOf(over, angle, pinned.acrylic, pinned.cloth);
      const { away, pastEnd } = acrylic.feel(onAcrylic(lie, stand.at));
      const along = (p: number): number => seenFrom(stand, onCloth(lie, acrylic.place(p).spot)).along;
      // The edge is to lead to the crown.
      const ends = endsOf(acrylic).map((p) => onCloth(lie, p));
      const leads =
        dot(minus(ends[1]!, ends[0]!), minus(crown, stand.at)) > 0 === (direction === 'heel-first');
      const lies = !landing || !end || Math.abs(along(end.at) - landing.along) <= rounding + STEP;
      const off = offEdge(away, acrylic);
      return {
        lie,
        off,
        miss: Math.abs(off),
        isRight: away > 0 && leads && lies && pastEnd <= PAST + 2 * rounding,
        isIn: off < -touch || (away < 0 && pastEnd === 0),
      };
    });
    // Told where an end lies, she may set the template down just there.
    const kept = landing ? tries : slidFree(tries, touch);
    return clusters(kept, endsOf(acrylic), touch, { isRound: false, isNamed: false });
  });
};

/** A place that the template is slid through, and whether the foot would be in the acrylic there, or behind its edge. */
interface Slid extends Try {
  readonly isIn: boolean;
}

/**
 * Of those places the right ones are where sliding brings an edge to a foot that stood free before. Where it only ever
 * touches between two places that it cannot come through, it is jammed, and nobody slides the template there.
 */
const slidFree = (tries: readonly Slid[], touch: number): readonly Try[] => {
  let pocket = 0;
  const pockets = tries.map(({ isIn }) => (isIn ? pocket++ : pocket));
  const free = new Set(pockets.filter((_, i) => !tries[i]!.isIn && tries[i]!.off > touch));
  return tries.map((one, i) => ({ ...one, isRight: one.isRight && free.has(pockets[i]!) }));
};

interface Try {
  readonly lie: Lie;
  /** mm between foot and edge. */
  readonly off: number;
  /**
   * mm by which it is not what the words say: of a swing, how far the needle is from where it stands with the foot at
   * the place that they name. Swung by t (mm of its far end) the template comes to the foot by t·cos φ, φ being the angle
   * between chord and stitching at the crown. Where that is 90°, as on a half circle, only t²/2·(1/R − 1/chord) is
   * left, and the touch by itself tells nothing: marks 0.04 mm too near would swing a half circle of R 17 mm by 1.6.
   */
  readonly miss: number;
  readonly isRight: boolean;
}

const offEdge = (away: number, { clearance }: Acrylic): number => Math.abs(away) - clearance;

/** Tries along a way (mm). No foot comes to an edge faster than the acrylic is moved, so where it is far off it may leap. */
const travel = <T extends Try>(
  start: number,
  end: number,
  touch: number,
  tried: (t: number) => T,
): readonly T[] => {
  const tries: T[] = [];
  for (let t = start; t <= end; ) {
    const one = tried(t);
    tries.push(one);
    t += Math.max(STEP, Math.abs(one.off) - touch);
  }
  return tries;
};

const endsOf = (acrylic: Acrylic): readonly Spot[] => [0, acrylic.length].map((at) => acrylic.place(at).spot);

const clusters = (
  tries: readonly Try[],
  watched: readonly Spot[],
  touch: number,
  { isRound, isNamed }: { readonly isRound: boolean; readonly isNamed: boolean },
): readonly Found[] => {
  const touches = ({ off, isRight }: Try): boolean => isRight && Math.abs(off) <= touch;
  const groups: Try[][] = [];
  let goesOn = false;
  for (const one of tries) {
    if (touches(one)) {
      if (goesOn) groups.at(-1)!.push(one);
      else groups.push([one]);
      goesOn = true;
      // A foot that comes off the edge and back at the very place that is named is at one place to the eye.
    } else if (!(isNamed && one.isRight)) goesOn = false;
  }
  // All the way round the last try stands beside the first.
  if (isRound && groups.length > 1 && touches(tries[0]!) && touches(tries.at(-1)!))
    groups[0] = [...groups.pop()!, ...groups[0]!];
  return groups.map((group) => {
    const best = group.reduce((a, b) => (b.miss < a.miss ? b : a));
    const [first, last] = [group[0]!, group.at(-1)!];
    const spread = Math.max(...watched.map((p) => apart(onCloth(first.lie, p), onCloth(last.lie, p))));
    return { lie: best.lie, spread };
  });
};

const TURN = 2 * Math.PI;

/** Which end of the edge comes first, by the place that is put to the start mark; etched lines stand near the heel. */
export const directionOf = ({ place, instruction }: Read): Task['direction'] =>
  instruction.kind !== 'line' && /^the (crown end|end of)/.test(place) ? 'crown-first' : 'heel-first';
