/** What the options about the working edge of an outline say. */

import { MOST_TITLE, quoted } from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import type { Units } from '../length/index.ts';
import { titleOfFile } from '../template/index.ts';
import type { EdgeChoice, PlaceOnOutline } from '../trace/index.ts';
import type { EdgeOptions } from './add-edge.ts';
import { readPair, readWord } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

/** `toMm` takes coordinates as the person reads them to the outline's frame. */
export const readEdgeChoice = (options: EdgeOptions, toMm: (p: Point) => Point): EdgeChoice => ({
  heel: readPlace('--heel', options.heel, toMm),
  crown: readPlace('--crown', options.crown, toMm),
  foot: options.foot === undefined ? undefined : readWord('--foot', options.foot, ['left', 'right'] as const),
});

export const readFileUnits = (options: EdgeOptions): 'mm' | 'in' =>
  options.units === undefined ? 'mm' : readWord('--units', options.units, ['mm', 'in'] as const);

/** What a file is written in, as one says it. */
export const UNIT_WORDS: Readonly<Record<Units, string>> = { in: 'inches', cm: 'cm', mm: 'mm' };

const readPlace = (
  option: string,
  text: string | undefined,
  toMm: (p: Point) => Point,
): PlaceOnOutline | undefined => {
  if (text === undefined) return undefined;
  const corner = /^\s*(\d{1,3})\s*$/.exec(text);
  if (corner) return { kind: 'corner', number: Number(corner[1]) };
  const point = readPair(text);
  if (point) return { kind: 'point', point: toMm(point) };
  throw wrongValue(option, 'not a place', {
    found: quoted(text),
    expected: 'the number of a corner such as 3, or x,y such as 120,45',
  });
};

/** Throws wrong use where what is said is none: asked before anything is read. */
export const titleFrom = ({ title }: EdgeOptions, name: string): string => {
  if (title === undefined) return titleOfFile(name);
  const said = title.trim();
  if (said !== '' && said.length <= MOST_TITLE) return said;
  throw wrongValue('--title', said === '' ? 'empty' : 'too long', {
    ...(said === '' ? {} : { found: `${said.length} characters` }),
    expected: `a text of at most ${MOST_TITLE} characters`,
  });
};
