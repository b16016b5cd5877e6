/** Where a card puts every half swag on the cloth: tape, rays and marks as its words lay them. */

import { stepOf } from '../../src/length/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import type { Design } from '../../src/swag/index.ts';
import { apart, dot, minus, plus, type Spot } from './acrylic.ts';
import { bareNumber, type LoneHalf, type Rays, type Read, type Told } from './card-reader.ts';
import { BorderCloth, borderOf, from, type Stand } from './cloth.ts';

/** One half swag by the card: where she begins, which way she works, and where the crown is to be. */
export interface Half {
  /** As the drawing calls it. */
  readonly repeat: string;
  readonly half: 'first' | 'second';
  /** What the card calls it where sides differ. */
  readonly row: string;
  readonly stand: Stand;
  readonly crown: Spot;
  /** The way of the centre line, or of the mitre that stands for it. */
  readonly centre: Spot;
  /** Where the start line lies over the line that heights are told from, mm. */
  readonly startUp: number;
  /** Of a swag that stands across a corner: the guide line's height over its chord (mm), where there is one. */
  readonly chord?: { readonly guide: number | undefined };
}

/** What is told of a side, or of the corner. */
const ofRow = <T>({ most, others }: Told<T>, row: string): T => others.get(row) ?? most;

/** `12 1/2 before`, `3 below`, `4 up`, `on it`. */
export const told = (cell: string, { marks: { style } }: Plan): number => {
  if (cell === 'on it') return 0;
  const [, number, word] = cell.match(/^([\d./ ]+?)(?: (before|past|up|below|out))?$/) ?? [];
  if (number === undefined) throw new Error(`Not understood: ${cell}`);
  const unit = { in: 25.4, cm: 10, mm: 1 }[style.unit];
  return bareNumber(number) * unit * (word === 'before' || word === 'below' ? -1 : 1);
};

export const sideHalves = (read: Read, plan: Plan, name: string): readonly Half[] => {
  const rounding = stepOf(plan.marks.style) / 2;
  const table = read.sides.find((s) => s.side === name)!;
  const start = read.startLine!;
  const { along, up, zero, end } = tapeOf(read, plan, name);
  const line: Stand = { at: zero, along, up };
  // Marks of another row are carried on to this row's own line.
  const lift = start.up - read.tapeLine!.up;
  if (apart(end, from(line, table.length, 0)) > 3 * rounding + 0.01)
    throw new Error(`${name}: the tape ends beside the side`);
  const mark = (kind: string): Spot => {
    const at = table.marks.get(kind);
    if (at === undefined) throw new Error(`${name} has no mark ${kind}`);
    return from(line, at, lift);
  };
  const count = [...table.marks.keys()].filter((k) => /^centre \d/.test(k)).length;
  const crownUp = (row: string): number => {
    const { instruction } = read;
    if (instruction.kind === 'swing') return ofRow(instruction.crown, row);
    return told(read.stands.toldOf(row).get('the needle at the crown up')!, plan);
  };
  const back = { x: -along.x, y: -along.y };
  const row = name === 'strip' ? 'each' : name;
  const halfOf = (n: number, half: Half['half']): Half => {
    const crown = plus(mark(`centre ${n}`), up, crownUp(row) - start.up);
    const shared = { repeat: `${name} ${n}`, row, crown, centre: up, startUp: start.up };
    return half === 'first'
      ? { ...shared, half, stand: { at: mark(`start ${n}`), along, up } }
      : { ...shared, half, stand: { at: mark(`stop ${n}`), along: back, up } };
  };
  if (read.kind) return kindHalves(read, table, count, halfOf);
  if (read.corner?.kind === 'half') {
    const { begins, ends } = read.corner;
    const loneAt = (n: number, { half, centreAt, by, over }: LoneHalf): Half => {
      if (table.marks.get(`centre ${n}`) !== (centreAt === '0' ? 0 : table.length))
        throw new Error(`The centre line of ${name} ${n} is not at the tape’s ${centreAt}`);
      if ((half === 'first') !== (by === 'start') || !table.marks.has(`${by} ${n}`))
        throw new Error(`A ${half} half has no ${by} mark`);
      if (over !== read.over[half]) throw new Error(`A ${half} half lies on its other face`);
      if (table.marks.has(`${by === 'start' ? 'stop' : 'start'} ${n}`))
        throw new Error('Half a swag has both its marks');
      return halfOf(n, half);
    };
    return [loneAt(1, begins), halfOf(2, 'first'), loneAt(count, ends)];
  }
  // The first half at one end of the side, and the second half at the other.
  const halves = [halfOf(1, 'first'), halfOf(count, 'second')];
  if (!read.corner) return halves;
  const layout = borderOf(plan);
  const cloth = new BorderCloth(layout, name as 'top');
  // The mitre goes from inner corner to outer corner.
  const corners = cornersOf(table.corner, name);
  const onMitre = (corner: string): Spot => {
    const out = cloth.out(start.of) + (cloth.out(start.of) === 0 ? 1 : -1) * crownUp('corner');
    return cloth.corner(corner, out);
  };
  const turned = (corner: string) => ({
    repeat: `corner ${corner}`,
    row: 'corner',
    crown: onMitre(corner),
    centre: minus(cloth.corner(corner, layout.width), cloth.corner(corner, 0)),
    startUp: start.up,
  });
  const { corner } = read;
  const begins = mark('start next');
  const lineOut = cloth.out(start.of) + (cloth.out(start.of) === 0 ? start.up : -start.up);
  if (corner.start !== undefined) {
    const out = corner.of === 'start lines' ? lineOut : cloth.out(corner.of);
    const away = apart(begins, cloth.corner(corners.last, out));
    if (Math.abs(away - corner.start) > 3 * rounding + 0.01)
      throw new Error(`The corner's first half starts ${away} mm from the corner`);
  }
  if (corner.kind === 'across') {
    if (corner.standsFor !== (lineOut === cloth.out(start.of) ? start.of : 'start line'))
      throw new Error(`At a corner nothing stands for the ${corner.standsFor}`);
    const first = cloth.corner(corners.first, lineOut);
    const last = cloth.corner(corners.last, lineOut);
    const ends = mark('stop last');
    if (Math.abs(apart(ends, first) - corner.start) > 3 * rounding + 0.01)
      throw new Error(`The corner's second half stops ${apart(ends, first)} mm from the corner`);
    const over = (zero: Spot, at: Spot) => acrossCorner(zero, at, up, corner.start);
    const shared = { row: 'corner', startUp: 0, chord: { guide: corner.guide } };
    const crownOf = ({ middle, away }: ReturnType<typeof acrossCorner>): Spot =>
      plus(middle, away, corner.crown);
    const [next, before] = [over(last, begins), over(first, ends)];
    return [
      ...halves,
      {
        ...shared,
        repeat: `corner ${corners.last}`,
        half: 'first',
        stand: { at: begins, along: next.along, up: next.away },
        crown: crownOf(next),
        centre: next.away,
      },
      {
        ...shared,
        repeat: `corner ${corners.first}`,
        half: 'second',
        stand: { at: ends, along: before.along, up: before.away },
        crown: crownOf(before),
        centre: before.away,
      },
    ];
  }
  return [
    ...halves,
    { ...turned(corners.last), half: 'first', stand: { at: begins, along, up } },
    { ...turned(corners.first), half: 'second', stand: { at: mark('stop last'), along: back, up } },
  ];
};

/** Of one kind the halves nearest to both ends of a side, and where it ends at a crown, that one. */
const kindHalves = (
  { kind, corner }: Read,
  table: Read['sides'][number],
  count: number,
  halfOf: (n: number, half: Half['half']) => Half,
): readonly Half[] => {
  const own = Array.from({ length: count }, (_, i) => i + 1).filter(
    (n) => table.kinds.get(String(n)) === kind!.number,
  );
  const said = kind!.swags.filter((n) => n <= count);
  if (said.join() !== own.slice(0, said.length).join())
    throw new Error(`The words say ${said} are of kind ${kind!.number}, and the table ${own}`);
  const [first, last] = [own[0]!, own.at(-1)!];
  const has = (mark: string): boolean => table.marks.has(mark);
  if (corner?.kind === 'half' && (has('start 1') || has(`stop ${count}`)))
    throw new Error('Half a swag has both its marks');
  return [...new Set([first, last])].flatMap((n) => [
    ...(has(`start ${n}`) ? [halfOf(n, 'first')] : []),
    ...(has(`stop ${n}`) ? [halfOf(n, 'second')] : []),
  ]);
};

/** The line from a mark on this side to the one as far (mm) from the corner on the next, which runs up from here. */
const acrossCorner = (zero: Spot, mark: Spot, up: Spot, far: number) => {
  const other = plus(zero, up, far);
  const length = apart(mark, other);
  const along = { x: (other.x - mark.x) / length, y: (other.y - mark.y) / length };
  const square = { x: -along.y, y: along.x };
  const middle = plus(mark, minus(other, mark), 0.5);
  const away = dot(square, minus(middle, zero)) > 0 ? square : { x: -square.x, y: -square.y };
  return { along, away, middle };
};

/** The corner where a side's tape begins, and the one where it ends. */
const cornersOf = (first: string, side: string): { readonly first: string; readonly last: string } => {
  const other = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' } as const;
  const beside = first.replace(side, '').trim() as keyof typeof other;
  const last = side === 'top' || side === 'bottom' ? `${side} ${other[beside]}` : `${other[beside]} ${side}`;
  return { first, last };
};

interface Tape extends Pick<Stand, 'along' | 'up'> {
  readonly zero: Spot;
  readonly end: Spot;
}

/** Where the words lay the tape on the cloth. */
const tapeOf = (read: Read, plan: Plan, name: string): Tape => {
  const { zero, near } = read;
  const start = read.tapeLine!;
  const table = read.sides.find((s) => s.side === name)!;
  if (plan.layout.kind === 'strip') {
    if (zero?.kind !== 'left end' || start.of !== 'seam') throw new Error('A strip has ends and a seam');
    const ways = { along: { x: 1, y: 0 }, up: { x: 0, y: 1 } };
    return { ...ways, zero: { x: 0, y: start.up }, end: { x: plan.layout.length, y: start.up } };
  }
  const layout = borderOf(plan);
  const cloth = new BorderCloth(layout, name as 'top');
  const ways = cloth.ways(name as 'top', table.corner, start.of);
  if (!near.isTowards) throw new Error('The seam of the swags is to be towards her');
  const isInner = cloth.out(start.of) === 0;
  const lineOut = cloth.out(start.of) + (isInner ? start.up : -start.up);
  const { first, last } = cornersOf(table.corner, name);
  if (zero?.kind === 'corner') {
    const out = zero.of === 'start lines' ? lineOut : cloth.out(zero.of);
    if (out !== lineOut)
      throw new Error(`The tape lies along a line ${lineOut} mm out, and its 0 is ${out} mm out`);
    return { ...ways, zero: cloth.corner(first, out), end: cloth.corner(last, out) };
  }
  if (zero?.kind !== 'beside') throw new Error('Nobody knows where the tape begins');
  if (zero.on !== 'start line' && cloth.out(zero.on) !== lineOut)
    throw new Error(`The ${zero.on} is not where the marks are`);
  if (cloth.out(zero.inner) !== 0) throw new Error(`The ${zero.inner} does not bound the corner square`);
  const off = (corner: string): Spot => plus(cloth.corner(corner, 0), ways.up, isInner ? start.up : -lineOut);
  return { ...ways, zero: off(first), end: off(last) };
};

export const ringHalves = (read: Read, design: Design): readonly Half[] => {
  const rays = read.rays!;
  const ray = (kind: string): Spot => {
    const angle = rays.angles.get(kind);
    if (angle === undefined) throw new Error(`No ray ${kind}`);
    return { x: (rays.turns === 'clockwise' ? 1 : -1) * Math.sin(angle), y: Math.cos(angle) };
  };
  const count = [...rays.angles.keys()].filter((k) => k.startsWith('start')).length;
  if (count !== design.fit.sides[0]!.repeats) throw new Error('Too many swags or too few');
  for (const fault of compassFaults(rays, ray)) throw new Error(fault);
  const { instruction } = read;
  const named =
    instruction.kind === 'swing' ? '' : instruction.kind === 'line' ? instruction.to : instruction.of;
  const outward = read.near.isTowards ? 1 : -1;
  const crownRadius = instruction.kind === 'swing' ? instruction.crown.most : rays.crown;
  return [1, count].flatMap((n): Half[] => {
    const centre = ray(`centre ${n}`);
    const crown = plus({ x: 0, y: 0 }, centre, crownRadius);
    const half = (kind: 'start' | 'stop', beside: string): Stand => {
      const own = ray(`${kind} ${n}`);
      const sum = plus(own, ray(beside));
      const halfway = plus({ x: 0, y: 0 }, sum, 1 / Math.hypot(sum.x, sum.y));
      const up = named === 'the start mark’s ray' ? own : halfway;
      const away = plus({ x: 0, y: 0 }, up, outward);
      const at = plus({ x: 0, y: 0 }, own, rays.start);
      const across = { x: -away.y, y: away.x };
      // Into the swag is towards its centre line; the crown may lie straight across from the start mark.
      const along = dot(across, centre) > 0 ? across : { x: -across.x, y: -across.y };
      return { at, along, up: away };
    };
    const shared = { repeat: `frame ${n}`, row: 'each', crown, centre, startUp: 0 };
    return [
      { ...shared, half: 'first', stand: half('start', `stop ${n === 1 ? count : n - 1}`) },
      { ...shared, half: 'second', stand: half('stop', `start ${n === count ? 1 : n + 1}`) },
    ];
  });
};

/** Where compasses put the marks otherwise than the protractor does, which reads to a tenth of a degree. */
const compassFaults = ({ compass, start, crown }: Rays, ray: (kind: string) => Spot): string[] => {
  const on = (kind: string, radius: number): Spot => plus({ x: 0, y: 0 }, ray(kind), radius);
  const [first, next] = [on('centre 1', crown), on('centre 2', crown)];
  const carrying =
    compass.crownsOn === 'larger'
      ? Math.max(compass.start, compass.crown)
      : Math.min(compass.start, compass.crown);
  const pairs: [string, number, number][] = [
    ['the circle of the starts', compass.start, start],
    ['the circle of the crowns', carrying, crown],
    ['from crown to crown', compass.step, apart(first, next)],
    ['a step', compass.step, 2 * crown * Math.sin(Math.PI / compass.steps)],
    ['from crown to start', compass.reach, apart(first, on('start 1', start))],
    ['from crown to stop', compass.reach, apart(first, on('stop 1', start))],
    ['from start to stop', compass.span, apart(on('start 1', start), on('stop 1', start))],
    ['from stop to start', compass.gap, apart(on('stop 1', start), on('start 2', start))],
  ];
  return pairs
    .filter(([, said, is]) => !(Math.abs(said - is) <= 0.9 + 0.002 * (start + crown)))
    .map(([what, said, is]) => `${what}: ${said} by the compasses, and ${is} by the rays`);
};
