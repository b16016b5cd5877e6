/** Where the template stands for the first half: each place of it by what it is measured from, for a figure and in words. */

import { capital } from '../../document/index.ts';
import type { LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type Cell, cornerSwag, type Design, type Placing, placingOf } from '../../swag/index.ts';
import { bareLength as bare, unitWords } from '../text/index.ts';
import type { CardBlock, PlaceId } from './block.ts';
import { bandWords } from './setting-words.ts';
import { othersWords, type Told, toldOf, toldWords } from './told.ts';

/** A sentence on how to read the measures, and one for each place. */
export const standingBlocks = (design: Design, { marks: { style } }: Plan): readonly CardBlock[] => {
  const { field } = design;
  const placings = design.cells.map(placingOf);
  const [first] = placings;
  if (!first) return [];
  const isAcross = cornerSwag(design)?.kind === 'across';
  const isOnChord = (p: Placing): boolean => isAcross && p.cell.name === 'corner';
  const told = (measureOf: (p: Placing) => string | undefined): Told =>
    toldOf(placings.map((p) => [p.cell.name, measureOf(p) ?? NONE]));
  const height = (p: Placing, up: number): string =>
    upWords(up + (isOnChord(p) ? 0 : field.startMargin), style);
  const far = placings.find((p) => p.crown)?.crown?.spoken;
  const near = (first.start ?? first.end).spoken;
  // Lines are etched near the heel: they help only where the heel is at the start mark.
  const { shape } = design.fit.way;
  const heelAtStart = shape.direction === 'heel-first' && (shape.from.section ?? 1) === 1;
  const lines = (heelAtStart ? first.lines : []).flatMap(({ line }, i) => {
    const along = told(({ lines: all }) => {
      const at = all[i]?.along;
      return at === undefined ? undefined : fromLine(at, style);
    });
    return along.most === NONE ? [] : [placeBlock(`line ${line.name}`, `line ${line.name}`, { along })];
  });
  const places: readonly CardBlock[] = [
    placeBlock('near', near, {
      along: told((p) => fromLine((p.start ?? p.end).along, style)),
      up: told((p) => height(p, (p.start ?? p.end).up)),
    }),
    ...lines,
    ...(far === undefined
      ? []
      : [
          placeBlock('far', far, {
            along: told(({ cell, crown }) => crown && fromLine(beyondCentre(cell, crown), style)),
            up: told((p) => p.crown && height(p, p.crown.up)),
          }),
        ]),
    ...(first.guide === undefined
      ? []
      : [
          placeBlock('guide', 'the guide line', {
            up: told((p) => (p.guide === undefined ? undefined : height(p, p.guide))),
          }),
        ]),
    placeBlock('needle', 'the needle at the crown', { up: told((p) => height(p, p.cell.crown.y)) }),
  ];
  const { level, crossed } = bandWords(design, style);
  // Its two halves meet on the mitre, and not on a line square to the seam.
  const corner = placings.some((p) => p.crown && p.cell.name === 'corner' && !isOnChord(p))
    ? ' (at the corner the mitre: measure square to it)'
    : '';
  const centre = far === undefined ? '' : `, of ${far} from the centre line${corner}`;
  const lettered =
    lines.length > 0 ? ` A lettered line is told by where it crosses the ${crossed} line.` : '';
  return [
    {
      kind: 'text',
      text:
        `Where the template's edge lies in the first half, ${unitWords(style)}. “Past” (into the swag) and “before” are from the start mark${centre}; ` +
        `“up” and “below” are from ${level}.${lettered}`,
    },
    ...places,
  ];
};

const placeBlock = (
  id: PlaceId,
  spoken: string,
  { along, up }: { readonly along?: Told; readonly up?: Told },
): CardBlock => {
  const measures = [along, up].filter((one) => one !== undefined);
  return {
    kind: 'place',
    id,
    name: spoken.replace(/^the /, ''),
    measures: measures.map((one) => ({ most: one.most, others: othersWords(one) })),
    text: `${capital(spoken)}: ${measures.map(toldWords).join(', ')}.`,
  };
};

/** Of a row that has no such place. */
const NONE = 'none';

/** How far (mm) a place lies past the line through the crown: the centre line, or at a corner the mitre. */
const beyondCentre = (cell: Cell, place: { readonly along: number; readonly up: number }): number =>
  (place.along - cell.crown.x) * Math.sin(cell.mirror) - (place.up - cell.crown.y) * Math.cos(cell.mirror);

const fromLine = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return text === '0' ? 'on it' : `${text} ${mm < 0 ? 'before' : 'past'}`;
};

const upWords = (mm: number, style: LengthStyle): string => {
  const text = bare(Math.abs(mm), style);
  return mm < 0 && text !== '0' ? `${text} below` : `${text} up`;
};
