/** Where the template stands for the first half: each place of it by what it is measured from, for a figure and in words. */

import { capital, series } from '../../document/index.ts';
import type { LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  type Cell,
  cornerSwag,
  type Design,
  type Placing,
  placingOf,
  type RoundFrame,
  roundFrame,
} from '../../swag/index.ts';
import { bareLength as bare, unitWords } from '../text/index.ts';
import type { CardBlock, CardTable, PlaceId } from './block.ts';
import { bandWords } from './setting-words.ts';
import { type Alike, alikeRows } from './told.ts';

/** What is measured of the template on one row. */
interface Measure {
  readonly id: PlaceId;
  readonly spoken: string;
  readonly head: 'along' | 'up';
  readonly of: (p: Placing) => string | undefined;
}

/** A sentence on how to read the measures, one for each place of the first row, and a table of the rows that differ. */
export const standingBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const { field } = design;
  const placings = design.cells.map(placingOf);
  const [first] = placings;
  if (!first) return [];
  const isAcross = cornerSwag(design)?.kind === 'across';
  const isOnChord = (p: Placing): boolean => isAcross && p.cell.name === 'corner';
  const ring = roundFrame(design);
  const height = (p: Placing, at: Spot): string =>
    ring
      ? `${bare(fromCentre(p.cell, ring, at), style)} out`
      : upWords(at.up + (isOnChord(p) ? 0 : field.startMargin), style);
  const far = placings.find((p) => p.crown)?.crown?.spoken;
  const near = (first.start ?? first.end).spoken;
  // Lines are etched near the heel: they help only where the heel is at the start mark.
  const { shape } = design.fit.way;
  const heelAtStart = shape.direction === 'heel-first' && (shape.from.section ?? 1) === 1;
  const lines = (heelAtStart ? first.lines : []).filter((_, i) =>
    placings.some((p) => p.lines[i]?.along !== undefined),
  );
  const measure = (id: PlaceId, spoken: string, head: Measure['head'], of: Measure['of']): Measure => ({
    id,
    spoken,
    head,
    of,
  });
  const measures: readonly Measure[] = [
    measure('near', near, 'along', (p) => fromLine((p.start ?? p.end).along, style)),
    measure('near', near, 'up', (p) => height(p, p.start ?? p.end)),
    ...lines.map(({ line: { name } }) =>
      measure(`line ${name}`, `line ${name}`, 'along', (p) => {
        const at = p.lines.find(({ line }) => line.name === name)?.along;
        return at === undefined ? undefined : fromLine(at, style);
      }),
    ),
    ...(far === undefined
      ? []
      : [
          measure('far', far, 'along', ({ cell, crown }) =>
            crown ? fromLine(beyondCentre(cell, crown), style) : undefined,
          ),
          measure('far', far, 'up', (p) => (p.crown ? height(p, p.crown) : undefined)),
        ]),
    // Round a motif a guide line is square to a ray, and told of by itself.
    ...(first.guide === undefined || ring
      ? []
      : [
          measure('guide', 'the guide line', 'up', (p) =>
            p.guide === undefined ? undefined : height(p, { along: 0, up: p.guide }),
          ),
        ]),
    measure('needle', 'the needle at the crown', 'up', (p) =>
      height(p, { along: p.cell.crown.x, up: p.cell.crown.y }),
    ),
  ];
  const groups = alikeRows(
    placings.map((p) => [p.cell.name, measures.map((one) => one.of(p) ?? NONE)] as const),
  );
  // The drawing is of the first side's swag.
  const base = groups[0]!;
  const { level, crossed } = bandWords(design, style);
  // Its two halves meet on the mitre, and not on a line square to the seam.
  const corner = placings.some((p) => p.crown && p.cell.name === 'corner' && !isOnChord(p))
    ? ' (at the corner the mitre: measure square to it)'
    : '';
  const centre = far === undefined ? '' : `, of ${far} from the centre line${corner}`;
  const lettered = lines.length > 0 ? ` A lettered line is told by where it crosses ${crossed}.` : '';
  const whose =
    groups.length > 1 ? ` The drawing is of ${series(base.names)}; the table is of what differs.` : '';
  return [
    {
      kind: 'text',
      text:
        `Where the template's edge lies in the first half, ${unitWords(style)}. “Past” (into the swag) and “before” are from the start mark${centre}; ` +
        `${ring ? '“out” is from the centre of the motif' : `“up” and “below” are from ${level}`}.${lettered}${whose}`,
    },
    ...placesOf(measures, base.cells),
    ...(groups.length > 1 ? [tableOf(measures, groups.slice(1))] : []),
  ];
};

/** One for each place, with the measures of it that one row has. */
const placesOf = (measures: readonly Measure[], cells: readonly string[]): readonly CardBlock[] => {
  const ids = [...new Set(measures.map(({ id }) => id))];
  return ids.flatMap((id): readonly CardBlock[] => {
    const own = cells.filter((cell, i) => measures[i]!.id === id && cell !== NONE);
    const { spoken } = measures.find((one) => one.id === id)!;
    if (own.length === 0) return [];
    return [
      {
        kind: 'place',
        id,
        name: spoken.replace(/^the /, ''),
        measures: own,
        text: `${capital(spoken)}: ${own.join(', ')}.`,
      },
    ];
  });
};

const tableOf = (measures: readonly Measure[], groups: readonly Alike[]): CardTable => ({
  kind: 'table',
  columns: [
    { head: '' },
    ...measures.map(({ id, spoken, head }): CardTable['columns'][number] => ({
      head: id.startsWith('line ')
        ? spoken
        : `${id === 'needle' ? 'needle' : spoken.replace(/^the /, '')} ${head}`,
      align: 'right',
    })),
  ],
  rows: groups.map(({ names, cells }) => [names.join(', '), ...cells]),
});

/** Of a row that has no such place. */
const NONE = '-';

interface Spot {
  readonly along: number;
  readonly up: number;
}

/** How far (mm) a place is from the motif's centre, which lies on the centre line, as far from the crown as crowns are. */
const fromCentre = ({ crown, mirror }: Cell, { crownRadius, from }: RoundFrame, place: Spot): number => {
  const away = from === 'inner' ? -crownRadius : crownRadius;
  return Math.hypot(
    place.along - (crown.x + away * Math.cos(mirror)),
    place.up - (crown.y + away * Math.sin(mirror)),
  );
};

/** How far (mm) a place lies past the line through the crown: the centre line, or at a corner the mitre. */
const beyondCentre = (cell: Cell, place: Spot): number =>
  (place.along - cell.crown.x) * Math.sin(cell.mirror) - (place.up - cell.crown.y) * Math.cos(cell.mirror);

const fromLine = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return text === '0' ? 'on it' : `${text} ${mm < 0 ? 'before' : 'past'}`;
};

const upWords = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return mm < 0 && text !== '0' ? `${text} below` : `${text} up`;
};
