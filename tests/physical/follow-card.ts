/**
 * Does what a card says, with tape, template and foot, and tells where that differs from the drawing. The card's own
 * figures and words are followed; from the program come only the plan, the template's edge, and the picture.
 */

import type { PathItem } from '../../src/drawing/drawing.ts';
import { drawDesign, scopeOf } from '../../src/drawing/index.ts';
import { stepOf } from '../../src/length/index.ts';
import { cardOf } from '../../src/output/card/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import { cornerSwag, type Design, rowsOf } from '../../src/swag/index.ts';
import { Acrylic, apart, onCloth } from './acrylic.ts';
import { type Read, readCard } from './card-reader.ts';
import { type Half, ringHalves, sideHalves } from './halves.ts';
import { directionOf, follow } from './setting.ts';
import { faultsOfStanding, layBetween } from './standing.ts';

/** More than this (mm) between the card and the drawing is a fault of the card: some times its rounding. */
const most = (rounding: number): number => 0.9 + 2 * rounding;

/** All that is wrong with a card; nothing where it leads to what is drawn. */
export const faultsOf = (design: Design, plan: Plan): readonly string[] => {
  const card = cardOf(design, plan, []);
  const { own } = cornerSwag(design.fit) ?? {};
  if (own)
    return (['sides', 'corners'] as const).flatMap((on) =>
      faultsOfRow(
        { row: design, way: on === 'sides' ? design.fit.way : own, kind: undefined },
        design,
        readCard(card, 1, undefined, on),
        plan,
      ),
    );
  return rowsOf(design).flatMap((row) => {
    const kinds = row.fit.pattern.kind === 'in turn' ? [1, 2] : [undefined];
    return kinds.flatMap((kind, k) => {
      const made = k === 0 ? row.fit : row.fit.pattern;
      if (!('way' in made)) throw new Error('a second kind without its way');
      return faultsOfRow({ row, way: made.way, kind }, design, readCard(card, row.row, kind), plan);
    });
  });
};

/** What is sewn by one section of the card: a row, or one of its kinds. */
interface Sewn {
  readonly row: Design;
  readonly way: Design['fit']['way'];
  readonly kind: number | undefined;
}

const faultsOfRow = (sewn: Sewn, design: Design, read: Read, plan: Plan): readonly string[] => {
  const { row, kind } = sewn;
  const rounding = stepOf(plan.marks.style) / 2;
  const faults: string[] = [];
  for (const [halves, picture] of plan.layout.kind === 'frame'
    ? [[ringHalves(read, design), pictureOf(design, 'all', row)] as const]
    : read.sides.map(
        (side) =>
          [
            sideHalves(read, plan, side.side),
            pictureOf(design, side.side === 'strip' ? 'all' : side.side, row, kind),
          ] as const,
      )) {
    for (const half of halves) {
      // Where the corners are told by themselves, each section is for its own halves.
      if (read.on && (half.repeat.startsWith('corner') ? 'corners' : 'sides') !== read.on) continue;
      const where = `row ${row.row}${kind ? `, kind ${kind}` : ''}, ${half.repeat}, ${half.half} half: `;
      faults.push(...faultsOfHalf(half, read, sewn, plan, picture, rounding).map((f) => where + f));
    }
  }
  return faults;
};

interface Picture {
  readonly edge: (h: Half) => PathItem['path'];
  readonly stitch: (h: Half) => PathItem['path'];
}

const pictureOf = (whole: Design, wanted: string, { row }: Design, kind?: number): Picture => {
  const scoped = scopeOf(whole, wanted);
  if (!scoped.ok) throw new Error(`No picture of ${wanted}`);
  const { layers } = drawDesign(scoped.design, scoped.scope, { title: '' });
  const find = (items: readonly unknown[], h: Half, part?: string): PathItem['path'] => {
    const item = (items as PathItem[]).find(({ facts }) => {
      const { repeat, half, part: drawn, row: of = '1', kind: ofKind } = facts ?? {};
      return (
        repeat === h.repeat &&
        half === h.half &&
        drawn === part &&
        of === String(row) &&
        ofKind === kind?.toString()
      );
    });
    if (!item) throw new Error(`${h.repeat}, ${h.half} half, is not in the picture`);
    return item.path;
  };
  return { edge: (h) => find(layers.template, h, 'edge'), stitch: (h) => find(layers.stitch, h) };
};

const faultsOfHalf = (
  half: Half,
  read: Read,
  { row: design, way }: Sewn,
  plan: Plan,
  picture: Picture,
  rounding: number,
): string[] => {
  const { shape } = way;
  const acrylic = new Acrylic(shape.stitching.template, plan.foot.clearance);
  const faults: string[] = [];
  const wrong = (what: string, by: number, limit = 1.5 * rounding + 0.1): void => {
    if (!(by <= limit)) faults.push(`${what} is ${by.toFixed(2)} mm off`);
  };
  const stitch = picture.stitch(half).pieces;
  // Angles are told to a tenth of a degree.
  const rays = read.rays ? read.rays.start * 0.0009 : 0;
  // Its distance from the tape's 0 is rounded, where that 0 lies, and how high the start line.
  wrong('the start mark', apart(half.stand.at, stitch[0]!.from), Math.hypot(1, 2) * rounding + 0.1 + rays);
  // Rounded along the side once, and square to it twice: the start line's own distance, and the crown's from there.
  wrong('the crown', apart(half.crown, stitch.at(-1)!.to), Math.hypot(1, 2) * rounding + 0.1 + rays);
  if (faults.length > 0) return faults;

  const { instruction } = read;
  const isFirst = half.half === 'first';
  const inward = read.rays && !read.near.isTowards ? -1 : 1;
  const found = follow(acrylic, {
    instruction,
    over: isFirst ? read.over.first : read.over.second,
    stand: half.stand,
    crown: half.crown,
    guide:
      instruction.kind !== 'flat'
        ? 0
        : read.rays
          ? inward * instruction.guide
          : (half.chord?.guide ?? instruction.guide - half.startUp),
    direction: directionOf(read),
    rounding,
  });
  if (found.length === 0) return ['the words lay the template nowhere'];
  if (found.length > 1) return [`the words lay the template in ${found.length} ways`];
  const [{ lie, spread }] = found as [(typeof found)[number]];
  if (spread > mostPlay(rounding)) return [`the words leave the template ${spread.toFixed(1)} mm of play`];
  const ghost = picture.edge(half).pieces;
  const ends = [acrylic.place(0).spot, acrylic.place(acrylic.length).spot].map((p) => onCloth(lie, p));
  const lever = acrylic.length / apart(half.stand.at, half.crown);
  wrong(
    'the template',
    Math.max(apart(ends[0]!, ghost[0]!.from), apart(ends[1]!, ghost.at(-1)!.to)),
    most(rounding + rays) * Math.max(1, lever),
  );
  // Marks are rounded: what is told of the template is told from where the stitching starts.
  const drawnHalf: Half = {
    ...half,
    stand: { ...half.stand, at: stitch[0]!.from },
    crown: stitch.at(-1)!.to,
    startUp: half.chord ? 0 : marginOf(plan) + (design.row > 1 ? plan.rows[0]!.at : 0),
  };
  const laid = layBetween(acrylic, lie.over, ghost[0]!.from, ghost.at(-1)!.to);
  faults.push(...faultsOfStanding({ half: drawnHalf, read, plan, acrylic, lie: laid, stitch, rounding }));
  return faults;
};

/** From the seam of the swags to the line that they start on, as the plan has it, mm. */
const marginOf = ({ layout }: Plan): number =>
  layout.kind === 'frame'
    ? 0
    : layout.kind === 'border' && layout.from === 'outer'
      ? layout.margin.outer
      : layout.margin.inner;

/** The template may be left this much play, mm: the foot is set by hand, to figures that are rounded. */
const mostPlay = (rounding: number): number => 4 + 6 * rounding;
