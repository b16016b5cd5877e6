/** What a template can do at one clearance, in words for the terminal and in numbers for programs. */

import { plural } from '../document/index.ts';
import { distance, pathEnd, pathLength, pathStart, pieceDirection, turnBetween } from '../geometry/index.ts';
import {
  formatLength,
  INCH_SIXTEENTH,
  INCH_THIRTYSECOND,
  MM_PER_INCH,
  MM_TENTH,
  roundLength,
} from '../length/index.ts';
import { flatsOf, type Stitching, telling } from '../swag/index.ts';
import { fromHeel, isBeyond, type Template } from '../template/index.ts';

/**
 * The foot that most have (mm), for what is said of a template without a plan. Common practice, no source: the radius of
 * a round ruler foot of half an inch.
 */
export const USUAL_CLEARANCE = MM_PER_INCH / 4;

/** Both systems, because a template's file may be in either and a ruler shows what it shows. */
const both = (mm: number): string => `${formatLength(mm, INCH_SIXTEENTH)} (${formatLength(mm, MM_TENTH)})`;

/** The smallest radius of the curves, mm, or undefined when the edge has only straight stretches. */
const tightest = (template: Template): number | undefined => {
  const radii = template.edge.pieces.flatMap((p) => (p.kind === 'arc' ? [p.radius] : []));
  return radii.length > 0 ? Math.min(...radii) : undefined;
};

/** A radius that a ruler would read as nothing is a corner, drawn as a tiny curve. */
const tightestWords = (radius: number): string =>
  roundLength(radius, INCH_SIXTEENTH) > 0
    ? `tightest curve: radius ${both(radius)}`
    : `tightest curve: a corner, rounded by less than ${radius < 0.1 ? '0.1 mm' : '1/32 in (0.8 mm)'}`;

/** A corner that turns by less than this (radians) may have been meant to be smooth: a traced one is taken so. */
const SLIGHT = (20 * Math.PI) / 180;

/** Sections that begin, without a name, at a corner so slight that it may be a slip. */
const slightCorners = ({ template, sections }: Stitching): readonly string[] => {
  const { pieces } = template.edge;
  return template.breaks.flatMap((b, i) => {
    if (b.kind === 'mark' || b.name !== undefined) return [];
    const after = pieces.findIndex((p) => distance(p.from, b.point) === 0);
    if (!(after > 0)) return [];
    const turn = turnBetween(pieceDirection(pieces[after - 1]!, 1), pieceDirection(pieces[after]!, 0));
    if (!(Math.abs(turn) < SLIGHT)) return [];
    const degrees = Math.round((Math.abs(turn) * 180) / Math.PI);
    return [
      `a kink of ${degrees}° at ${both(b.point.x)} across is taken as a corner: section ${sections[i + 1]!.number} begins there`,
    ];
  });
};

/** Lines etched across that meet none of the edge. */
const linesBeyond = ({ edge, alignment }: Template): readonly string[] =>
  alignment
    .filter((line) => isBeyond(edge, line))
    .map(
      (line) =>
        `line ${line.name} is etched ${both(fromHeel(edge, line.at))} from the heel, beyond the end of the edge: look whether that is right`,
    );

/** Heel to crown end as a ruler measures it, mm. */
const reach = (template: Template): number => {
  const from = pathStart(template.edge);
  const to = pathEnd(template.edge);
  return from && to ? distance(from, to) : 0;
};

/** Lines of each kind that are told: an edge drawn in thousands of strokes has a section for each. */
const MOST_TOLD = 40;

const toldOf = <T>(all: readonly T[], many: string, tell: (one: T) => string): readonly string[] =>
  all.length > MOST_TOLD
    ? [...all.slice(0, MOST_TOLD).map(tell), `and ${all.length - MOST_TOLD} more ${many}`]
    : all.map(tell);

export const describeTemplate = (stitching: Stitching): readonly string[] => {
  const { template, stitched, sections } = stitching;
  const radius = tightest(template);
  const flats = flatsOf(stitching);
  const unreached = telling(stitched);
  return [
    `${template.title}: ${both(reach(template))} from heel to crown end, ${plural(sections.length, 'section')}`,
    ...(sections.length < 2
      ? []
      : toldOf(
          sections,
          'sections',
          (s) => `section ${s.number}${s.name ? ` (${s.name})` : ''}: ${both(s.to - s.from)}`,
        )),
    ...toldOf(slightCorners(stitching), 'such corners', (line) => line),
    ...linesBeyond(template),
    ...toldOf(flats, 'flats', (f) => `flat ${f.number}, ${f.label}: ${both(f.to - f.from)}`),
    ...(radius === undefined ? [] : [tightestWords(radius)]),
    ...(unreached.length === 0
      ? [`the foot reaches the whole edge at a clearance of ${both(stitched.clearance)}`]
      : []),
    ...toldOf(
      unreached,
      'such places',
      (u) =>
        `the foot does not reach the edge between ${both(u.from)} and ${both(u.to)} from the heel; ` +
        `the stitching stays ${formatLength(u.away, INCH_THIRTYSECOND)} (${formatLength(u.away, MM_TENTH)}) away there`,
    ),
  ];
};

/** mm */
export const templateAsData = (stitching: Stitching): object => {
  const { template, stitched, sections } = stitching;
  return {
    template: template.name,
    title: template.title,
    thickness: template.thickness ?? null,
    clearance: stitched.clearance,
    edgeLength: stitched.edgeLength,
    stitchedLength: pathLength(stitched.path),
    heelToCrownEnd: reach(template),
    tightestRadius: tightest(template) ?? null,
    flats: flatsOf(stitching).map((f) => ({ number: f.number, from: f.from, to: f.to })),
    sections: sections.map((s) => ({ number: s.number, name: s.name ?? null, from: s.from, to: s.to })),
    unreached: telling(stitched).map((u) => ({ from: u.from, to: u.to, away: u.away })),
  };
};
