/** What the options that set an edge right say. */

import { MOST_NAME, oneLine, quoted } from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import type { SaidPlace, SetRight } from '../jobs/set-right.ts';
import type { OffBy } from '../jobs/size-by-print.ts';
import { readLength, type Units } from '../length/index.ts';
import type { SetRightOptions } from './add-set-right.ts';
import { readLengthOption, readPair } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

export interface HowPlacesAreSaid {
  /** What a bare length is in. */
  readonly units: Units;
  /** Whether a bare whole number is a corner's. */
  readonly numbered: boolean;
  /** Takes coordinates as the person reads them to the outline's frame. */
  readonly toMm: (p: Point) => Point;
}

export const isSetRight = ({ break: breaks, rename, takeOut, stretch, off }: SetRightOptions): boolean =>
  [breaks, rename, takeOut, stretch, off].some((option) => option !== undefined);

/** Throws wrong use. */
export const readSetRight = (options: SetRightOptions, how: HowPlacesAreSaid): SetRight => ({
  breaks: (options.break ?? []).map((text) => {
    const [name, place] = halves('--break', text, 'a name and a place, such as "shoulder=3 1/4 in"');
    return { name: readName('--break', name), at: readPlace('--break', place, how) };
  }),
  renames: (options.rename ?? []).map((text) => {
    const [from, to] = halves('--rename', text, 'two names, such as "dot 1=shoulder"');
    return { from, to: readName('--rename', to) };
  }),
  takenOut: (options.takeOut ?? []).map((name) => name.trim()),
  stretches: (options.stretch ?? []).map((text) => readStretch(text, how)),
});

export const readOff = (text: string | undefined, units: Units): OffBy | undefined => {
  if (text === undefined) return undefined;
  const said = /^\s*(.+?)\s+(longer|shorter)\s*$/i.exec(text);
  if (!said)
    throw wrongValue('--off', 'it does not say which way', {
      found: quoted(text),
      expected: 'what the acrylic is, such as "1/16 in longer" or "1 mm shorter"',
    });
  const by = readLengthOption('--off', said[1]!, units, 'positive');
  return { by, acrylic: said[2]!.toLowerCase() as OffBy['acrylic'] };
};

const halves = (option: string, text: string, expected: string): readonly [string, string] => {
  const at = text.indexOf('=');
  const [first, second] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  if (at > 0 && first !== '' && second !== '') return [first, second];
  throw wrongValue(option, 'not two things with = between them', { found: quoted(text), expected });
};

const readName = (option: string, text: string): string => {
  const name = oneLine(text);
  if (name.length <= MOST_NAME && name !== 'heel' && name !== 'crown') return name;
  throw wrongValue(option, name.length > MOST_NAME ? 'too long' : 'the name of an end', {
    found: quoted(name),
    expected: `a name of its own, of at most ${MOST_NAME} characters`,
  });
};

const readPlace = (option: string, text: string, { units, numbered, toMm }: HowPlacesAreSaid): SaidPlace => {
  const said = text.trim();
  if (numbered && /^\d{1,3}$/.test(said)) return { kind: 'corner', number: Number(said), said };
  const point = readPair(said);
  if (point) return { kind: 'point', point: toMm(point), said };
  const length = readLength(said, units);
  if (length.ok) return { kind: 'along', length: length.mm, said };
  // A break's name begins with no digit as a rule; a length that cannot be read is rather a slip.
  if (!/^[-+.]?\d/.test(said)) return { kind: 'name', said };
  throw wrongValue(option, `no place: ${length.reason}`, {
    found: quoted(said),
    expected: `${numbered ? 'the number of a corner such as 3, ' : ''}x,y such as 120,45, a length from the heel such as 3 1/4 in, or a break's name`,
  });
};

const readStretch = (text: string, how: HowPlacesAreSaid): SetRight['stretches'][number] => {
  const said = /^\s*(.+?)\s+to\s+(.+?)\s+(?:(straight)|through\s+(.+))$/i.exec(text.trim());
  if (!said)
    throw wrongValue('--stretch', 'not a stretch that is set right', {
      found: quoted(text),
      expected: '"PLACE to PLACE straight", or "PLACE to PLACE through x,y x,y"',
    });
  const [, from, to, straight, through] = said;
  return {
    from: readPlace('--stretch', from!, how),
    to: readPlace('--stretch', to!, how),
    through: straight
      ? []
      : through!
          .trim()
          .split(/\s+/)
          .map((one) => how.toMm(readThrough(one))),
  };
};

const readThrough = (text: string): Point => {
  const point = readPair(text);
  if (point) return point;
  throw wrongValue('--stretch', 'not a place to go through', {
    found: quoted(text),
    expected: 'x,y such as 120,45, with spaces between places',
  });
};
