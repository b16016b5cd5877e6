/**
 * A marking card as a person reads it: what each sentence and table tells her to do, and nothing else. A sentence that
 * is not understood is refused, so that no word can go by unread.
 */

import type { Card, CardTable } from '../../src/output/card/index.ts';
import { readStands, type Stands } from './stands-reader.ts';

type Zero =
  | { readonly kind: 'left end' }
  /** Where the lines of two sides cross: their start lines, or the seam that is named. */
  | { readonly kind: 'corner'; readonly of: string }
  /** Where the next side's inner line, carried on, meets the line of the marks. */
  | { readonly kind: 'beside'; readonly inner: string; readonly on: string };

interface SideTable {
  readonly side: string;
  readonly length: number;
  readonly corner: string;
  /** By kind and repeat: `start 1`, `corner stop`; mm on the tape. */
  readonly marks: ReadonlyMap<string, number>;
  /** Of each swag by its number, where kinds take turns. */
  readonly kinds: ReadonlyMap<string, number>;
}

export interface Rays {
  readonly turns: 'clockwise' | 'counterclockwise';
  readonly start: number;
  readonly crown: number;
  /** `start 1`, `centre 1` …: radians from straight up, the way that is said. */
  readonly angles: ReadonlyMap<string, number>;
  /** Without a protractor: two circles, the one that crowns lie on, and what is stepped off, mm. */
  readonly compass: {
    readonly start: number;
    readonly crown: number;
    readonly crownsOn: 'larger' | 'smaller';
    readonly step: number;
    readonly steps: number;
    readonly reach: number;
    readonly span: number;
    readonly gap: number;
  };
}

/** What most rows have, and by their names those that have another. */
export interface Told<T> {
  readonly most: T;
  readonly others: ReadonlyMap<string, T>;
}

/** Where the end of the template lies when an instruction has been followed. */
export interface Landing {
  readonly end: string;
  readonly along: number;
}

export type Instruction =
  | {
      readonly kind: 'swing';
      readonly place: string | undefined;
      readonly far: string | undefined;
      readonly crown: Told<number>;
      readonly of: string;
    }
  | {
      readonly kind: 'line';
      readonly line: string;
      readonly laid: 'square' | 'along';
      readonly to: string;
      readonly landing: Landing | undefined;
    }
  | {
      readonly kind: 'flat';
      readonly flat: string;
      readonly guide: number;
      readonly of: string;
      readonly landing: Landing | undefined;
    };

/** Half a swag that has the side's end for its other half: where its centre line is, and by which mark it is set. */
export interface LoneHalf {
  readonly half: 'first' | 'second';
  readonly centreAt: '0' | 'end';
  readonly by: 'start' | 'stop';
  /** Whether the template lies face down. */
  readonly over: boolean;
}

const loneHalf = (found: readonly (string | undefined)[]): LoneHalf => ({
  half: found[0] as LoneHalf['half'],
  centreAt: found[1] as LoneHalf['centreAt'],
  by: found[2] as LoneHalf['by'],
  over: found[3] === 'face down',
});

type CornerWords =
  /** Each side begins at a crown with half a swag, and ends at one with another. */
  | { readonly kind: 'half'; readonly begins: LoneHalf; readonly ends: LoneHalf }
  /** From where its swag starts; undefined where the first row's mark says it. */
  | { readonly kind: 'turn'; readonly start: number | undefined; readonly of: string }
  /** A line from start mark to stop mark stands for the line that swags start on; heights are from it, mm. */
  | {
      readonly kind: 'across';
      readonly start: number;
      readonly of: string;
      readonly standsFor: string;
      readonly crown: number;
      readonly guide: number | undefined;
    };

export interface Read {
  /** The line that this row's swags start on, and the one that the tape is laid along. */
  readonly startLine: StartLine | undefined;
  readonly tapeLine: StartLine | undefined;
  readonly zero: Zero | undefined;
  /** Whether it is for the sides alone, or for the corners, where these are made by themselves. */
  readonly on: 'sides' | 'corners' | undefined;
  /** Where kinds take turns, which one it is, and the first swags that are said to be of it. */
  readonly kind: { readonly number: number; readonly swags: readonly number[] } | undefined;
  readonly sides: readonly SideTable[];
  readonly rays: Rays | undefined;
  readonly near: { readonly name: string; readonly isTowards: boolean };
  readonly inside: boolean;
  readonly over: { readonly first: boolean; readonly second: boolean };
  readonly place: string;
  /** How far out before the start mark an end of the template hangs: from one side to another, mm. */
  readonly rest: { readonly end: string; readonly least: number; readonly most: number } | undefined;
  readonly instruction: Instruction;
  readonly back:
    | {
        readonly place: string;
        readonly away: number;
        readonly inside: boolean;
      }
    | undefined;
  readonly corner: CornerWords | undefined;
  readonly stands: Stands;
  readonly pauses: readonly { readonly kind: string; readonly section: number; readonly after: number }[];
  readonly unreached: readonly { readonly from: number; readonly to: number; readonly away: number }[];
}

interface StartLine {
  readonly of: string;
  readonly up: number;
}

const UNITS = { mm: 1, cm: 10, in: 25.4 } as const;

/** `12 3/16`, `6.5` */
export const bareNumber = (text: string): number =>
  text.split(' ').reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/');
    const value = Number(top) / Number(bottom);
    if (!Number.isFinite(value)) throw new Error(`${text} is no number`);
    return sum + value;
  }, 0);

/** `12 3/16 in` in mm. */
const measure = (text: string): number => {
  const found = text.match(/^([\d./ ]+) (mm|cm|in)$/);
  if (!found) throw new Error(`${text} is no measure`);
  return bareNumber(found[1]!) * UNITS[found[2] as keyof typeof UNITS];
};

/** Told of each that is made by itself. */
const PLACED: ReadonlySet<string> = new Set(['set', 'stands', 'pauses']);

const L = '([\\d./ ]+ (?:mm|cm|in))';

/** What a card says of one of its rows, of one of two kinds, or of its sides or its corners alone. */
export const readCard = (card: Card, row = 1, kind?: number, alone?: 'sides' | 'corners'): Read => {
  const heads = { sides: 'Sides: ', corners: 'Corners: ' };
  const isAbout = (s: Card['sections'][number]): boolean =>
    (s.row ?? row) === row &&
    s.on === (PLACED.has(s.id) ? alone : undefined) &&
    (s.on === undefined || s.heading.startsWith(heads[s.on])) &&
    (s.kind === undefined || s.kind === kind) &&
    (kind === undefined || s.kind === undefined || s.heading.startsWith(`Kind ${kind}: `));
  const blocks = (id: string) => card.sections.find((s) => s.id === id && isAbout(s))?.blocks ?? [];
  const texts = (id: string): string[] => blocks(id).flatMap((b) => (b.kind === 'table' ? [] : [b.text]));
  const tables = (id: string): CardTable[] => blocks(id).flatMap((b) => (b.kind === 'table' ? [b] : []));
  const unit = JSON.stringify(card).includes(' in inches, to ')
    ? 25.4
    : /, in cm, to /.test(JSON.stringify(card))
      ? 10
      : 1;
  const left = texts('set');
  /** Takes the one sentence that begins so; its words must all be understood. */
  const take = (begins: RegExp, all: RegExp): RegExpMatchArray | undefined => {
    const i = left.findIndex((t) => begins.test(t));
    if (i < 0) return undefined;
    const [text] = left.splice(i, 1) as [string];
    const found = text.match(all);
    if (!found) throw new Error(`Not understood: ${text}`);
    return found;
  };
  const need = (begins: RegExp, all: RegExp): RegExpMatchArray => {
    const found = take(begins, all);
    if (!found) throw new Error(`Nothing begins like ${begins}`);
    return found;
  };

  const ofCorners = take(
    /^This is how the swags over/,
    /^This is how the swags over the corners are made; those of the sides are made otherwise\.$/,
  );
  if (Boolean(ofCorners) !== (alone === 'corners'))
    throw new Error('Nothing says that this is for the corners');
  const ofKind = take(
    /^This is how/,
    /^This is how the swags of kind (\d) are made: (\d+), (\d+), (\d+) and so on, on every side\.$/,
  );
  if (ofKind?.[1] !== kind?.toString()) throw new Error(`Kind ${kind} does not say which swags are of it`);
  const drawn = take(
    /^Draw the start line \d/,
    new RegExp(`^Draw the start line ${L} from the (.+?)\\. The stitching starts and ends on it\\.$`),
  );
  const raised = take(
    /^Draw the start line of this row/,
    new RegExp(
      `^Draw the start line of this row ${L} from the (.+?)\\. The stitching starts and ends on it, where the marks of row 1, carried on square to the (.+?), meet it\\.$`,
    ),
  );
  if (raised && raised[2] !== raised[3]) throw new Error('Its marks are carried on square to another seam');
  const shared = take(/marks of row 1\.$/, /^The stitching starts and ends on the marks of row 1\.$/);
  const on = take(/^The stitching starts/, /^The stitching starts and ends on the (.+)\.$/);
  const round = take(
    /^Mark the centre/,
    new RegExp(
      `^Mark the centre of the motif: all distances are from it\\. Start and stop marks are ${L} from it, crowns ${L}\\.$`,
    ),
  );
  const first = need(
    /^First half/,
    new RegExp(
      '^First half, from the start mark to the centre line, with the (.+?) (towards|away from) you: the template lies ' +
        '(?:(inside) the swag, between stitching and (.+?)|outside the swag, beyond the stitching), (face up|turned over, face down), ' +
        `(.+?) at the start mark\\.(?: The rest of the template lies beyond it: its (heel|crown end) is (?:([\\d./ ]+) to )?${L} before the start mark\\.)?$`,
    ),
  );
  const second = need(
    /^Stop with the needle down/,
    /^Stop with the needle down (?:on the centre line|where it comes to the centre line, though the edge goes on)\. Second half, from the crown to the stop mark: turn the template over \(now (face up|face down)\)\. Everything is the mirror image: what stood before the start mark stands beyond the stop mark\.$/,
  );
  const back = take(
    / is not on the start mark itself/,
    new RegExp(
      `^(.+) is not on the start mark itself: the foot stands between\\. It lies ${L} from the needle(?: \\(more than the clearance, because the foot does not reach into the notch\\))?, (inside|outside) the swag\\.$`,
    ),
  );
  const halved = take(
    /^Corners: the corner square stays free/,
    /^Corners: the corner square stays free\. Each side begins with a (second|first) half alone, whose centre line is at the tape’s (0|end): set the template by the (stop|start) mark, (face up|face down) as for every second half, and start the thread at the crown\. Each side ends with a (second|first) half alone, whose centre line is at the tape’s (0|end): set the template by the (stop|start) mark, (face up|face down) as for every first half, and tie off at the crown\.$/,
  );
  const across = take(
    /^Corners: the swag stands across/,
    new RegExp(
      `^Corners: the swag stands across the corner\\. It starts ${L} from (?:where the (start lines) of two sides cross|the corner of the (.+?)), and stops as far from there on the next side\\. ` +
        'Draw a line from start mark to stop mark: at the corner this line stands for the (.+?), and the mitre, square to it, is the centre line\\. ' +
        `The crown is ${L} from this line(?:, and the guide line (?:(is this line itself)|${L} from it(, towards the corner)?))?\\.$`,
    ),
  );
  const corner = take(
    /^Corners: /,
    new RegExp(
      `^Corners: the first half starts (?:where row 1’s mark for the corner says|${L} from (?:where the (start lines) of two sides cross|the corner of the (.+?))), and ends on the mitre, its centre line; the second half goes on from there along the next side\\.$`,
    ),
  );
  const instruction = readInstruction(left.splice(0, 1)[0] ?? '');
  if (left.length > 0) throw new Error(`Not understood: ${left[0]}`);

  const { pauses, unreached } = readPauses(texts('pauses'));

  const place = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
  const marks = texts('marks');
  const lined = drawn ?? raised;
  const startLine = lined
    ? { of: lined[2]!, up: measure(lined[1]!) }
    : on
      ? { of: on[1]!, up: 0 }
      : undefined;
  const stands = readStands(blocks('stands'), {
    isAcross: across !== undefined,
    turns: corner !== undefined,
  });
  const from = startLine ?? (shared ? readCard(card).startLine : undefined);
  if (!round && stands.level !== `the ${from?.of}`)
    throw new Error(`Heights are from ${stands.level}, and the start line from the ${from?.of}`);
  const isFirst = row === 1;
  if (isFirst === Boolean(raised ?? shared)) throw new Error(`Row ${row} does not say where it starts`);
  const tapeLine = isFirst ? startLine : readCard(card).startLine;
  return {
    startLine: shared ? tapeLine : startLine,
    tapeLine,
    zero: round ? undefined : readZero(marks[0] ?? '', kind !== undefined),
    on: alone,
    kind: ofKind && { number: kind!, swags: ofKind.slice(2, 5).map(Number) },
    sides: round ? [] : tables('marks').map((t) => readSide(t, unit)),
    rays: round ? readRays(marks, tables('marks')[0]!, unit) : undefined,
    near: { name: first[1]!, isTowards: first[2] === 'towards' },
    inside: first[3] !== undefined,
    over: { first: first[5] !== 'face up', second: second[1] !== 'face up' },
    place: first[6]!,
    rest:
      first[7] === undefined
        ? undefined
        : {
            end: `the ${first[7]}`,
            least: first[8] === undefined ? measure(first[9]!) : bareNumber(first[8]) * unit,
            most: measure(first[9]!),
          },
    instruction,
    back: back && {
      place: place(back[1]!),
      away: measure(back[2]!),
      inside: back[3] === 'inside',
    },
    corner: halved
      ? { kind: 'half', begins: loneHalf(halved.slice(1, 5)), ends: loneHalf(halved.slice(5)) }
      : across
        ? {
            kind: 'across',
            start: measure(across[1]!),
            of: across[2] ?? across[3]!,
            standsFor: across[4]!,
            crown: measure(across[5]!),
            guide: across[6]
              ? 0
              : across[7] === undefined
                ? undefined
                : measure(across[7]) * (across[8] ? -1 : 1),
          }
        : corner && {
            kind: 'turn',
            start: corner[1] === undefined ? undefined : measure(corner[1]),
            of: corner[2] ?? corner[3] ?? '',
          },
    stands,
    pauses,
    unreached,
  };
};

/** Where the hands are moved, which they are in the second half as well, and where the foot does not reach. */
const readPauses = ([intro = '', ...texts]: readonly string[]): Pick<Read, 'pauses' | 'unreached'> => {
  const pauses: Read['pauses'][number][] = [];
  const unreached: Read['unreached'][number][] = [];
  for (const text of texts) {
    const [, kind, section, after] =
      text.match(
        new RegExp(
          `^The (notch|corner|mark) at the start of section (\\d+)(?: \\(.*\\))?, ${L} of stitching after the start mark\\.$`,
        ),
      ) ?? [];
    if (kind !== undefined) {
      pauses.push({ kind, section: Number(section), after: measure(after!) });
      continue;
    }
    const [, places, away] =
      text.match(
        new RegExp(
          `^Along the edge from its heel, (between .+), the foot does not reach into it: the stitching turns there in a point ${L} from the deepest place\\.$`,
        ),
      ) ?? [];
    if (places === undefined) throw new Error(`Not understood: ${text}`);
    for (const place of places.split(/, (?=between)| and (?=between)/)) {
      const found = place.match(new RegExp(`^between ${L} and ${L}$`));
      if (!found) throw new Error(`This is no place on the edge: ${place}`);
      unreached.push({ from: measure(found[1]!), to: measure(found[2]!), away: measure(away!) });
    }
  }
  // A foot is moved round a needle that holds the cloth: common practice, no source.
  const wanted =
    pauses.length > 0
      ? 'Stop here with the needle down, and move your hands. In the second half the places come in the reverse order, each as far before the stop mark.'
      : 'No break lies on the way: wherever your hands must move, stop with the needle down first.';
  if (intro !== wanted) throw new Error(`Not understood: ${intro}`);
  return { pauses, unreached };
};

const LANDING = `(?:: its (heel|crown end) is then (?:(straight across from)|${L} (past|before)) the start mark)?`;

const readLanding = (found: readonly (string | undefined)[], i: number): Landing | undefined =>
  found[i] === undefined
    ? undefined
    : {
        end: `the ${found[i]}`,
        along: found[i + 1] !== undefined ? 0 : measure(found[i + 2]!) * (found[i + 3] === 'past' ? 1 : -1),
      };

const readInstruction = (text: string): Instruction => {
  const swing = text.match(
    new RegExp(
      '^Put the needle down on the start mark and the edge against the foot(?: at (.+?))?\\. Swing the template until the foot, slid along the edge(?: to (.+?))? with the needle up, ' +
        `brings the needle to the crown: on the centre line, ${L}(?: \\((.+?)\\))? from the (.+?)\\.$`,
    ),
  );
  if (swing)
    return {
      kind: 'swing',
      place: swing[1],
      far: swing[2],
      crown: {
        most: measure(swing[3]!),
        others: new Map([...readOthers(swing[4])].map(([name, text]) => [name, measure(text)])),
      },
      of: swing[5]!,
    };
  const square = text.match(
    new RegExp(
      `^Lay line (.+?) (?:on the start mark, square to the (.+?)|along (the start mark’s ray)|through the start mark, parallel to (.+?)), and slide the template along it until the edge meets the foot(?: at the start mark)?${LANDING}\\.$`,
    ),
  );
  if (square)
    return {
      kind: 'line',
      line: square[1]!,
      laid: 'square',
      to: square[2] ?? square[3] ?? square[4]!,
      landing: readLanding(square, 5),
    };
  const along = text.match(
    new RegExp(
      `^Lay line (.+?) (?:along the (.+?)|through the start mark, square to (.+?)), and slide the template along it until the edge meets the foot at the start mark${LANDING}\\.$`,
    ),
  );
  if (along)
    return {
      kind: 'line',
      line: along[1]!,
      laid: 'along',
      to: along[2] ?? along[3]!,
      landing: readLanding(along, 4),
    };
  const tail = `: it is for the template's edge and not for the stitching\\. Lay (.+?) along it, and slide the template until the edge meets the foot at the start mark${LANDING}\\.$`;
  const flat = text.match(
    new RegExp(
      `^(?:Draw a guide line ${L} from the (.+?)(, on the side towards you)?|The guide line is the (.+?) itself)${tail}`,
    ),
  );
  if (flat)
    return {
      kind: 'flat',
      flat: flat[5]!,
      guide: flat[1] === undefined ? 0 : measure(flat[1]) * (flat[3] === undefined ? 1 : -1),
      of: flat[2] ?? flat[4]!,
      landing: readLanding(flat, 6),
    };
  const ray = text.match(
    new RegExp(
      `^Draw a guide line square to (.+?), ${L} (farther from|nearer to) the centre than the start mark${tail}`,
    ),
  );
  if (ray)
    return {
      kind: 'flat',
      flat: ray[4]!,
      guide: measure(ray[2]!) * (ray[3] === 'farther from' ? 1 : -1),
      of: ray[1]!,
      landing: readLanding(ray, 5),
    };
  throw new Error(`Not understood: ${text}`);
};

const readZero = (text: string, inTurn: boolean): Zero => {
  const all = text.match(
    /^Running distances along the (start line|.+?), in (?:inches|mm|cm), to [\d./]+(?: mm| cm)?\. Lay the tape once, with its 0 (.+), and mark everything without lifting it, so that no rounding adds to the next\.(?: Both rows share these marks\.)?( Two kinds of swag take turns: write the kind beside each centre mark\.)?$/,
  );
  if (!all || (all[3] !== undefined) !== inTurn) throw new Error(`Not understood: ${text}`);
  const [, on, words] = all as unknown as [string, string, string];
  if (words === 'at its left end, the seam towards you') return { kind: 'left end' };
  const lines = words.match(
    /^at the named corner of the start lines: where the start lines of two sides cross, and not at the corner of the .+$/,
  );
  if (lines) return { kind: 'corner', of: 'start lines' };
  const beside = words.match(
    /^beside the named corner: where the (.+) on the neighbouring side, carried straight on, meets the (.+)$/,
  );
  if (beside) return { kind: 'beside', inner: beside[1]!, on: beside[2]! };
  const seam = words.match(/^at the named corner of the (.+)$/);
  if (seam) return { kind: 'corner', of: seam[1]! };
  throw new Error(`Not understood: ${words}, along ${on}`);
};

const readSide = (table: CardTable, unit: number): SideTable => {
  const title = table.title?.match(
    /^(Strip|Top|Right|Bottom|Left) ([\d./ ]+) (?:mm|cm|in), from (?:its )?(.+)$/,
  );
  if (!title) throw new Error(`Not understood: ${table.title}`);
  const length = bareNumber(title[2]!) * unit;
  const marks = new Map<string, number>();
  const kinds = new Map<string, number>();
  const heads = table.columns.map((c) => c.head);
  let corners = 0;
  for (const row of table.rows) {
    const name = row[0] === 'corner' ? (corners++ === 0 ? 'last' : 'next') : row[0];
    for (const [i, cell] of row.entries())
      if (heads[i] === 'kind') kinds.set(name!, Number(cell));
      else if (i > 0 && cell !== '')
        marks.set(`${heads[i]} ${name}`, cell === 'end' ? length : bareNumber(cell) * unit);
  }
  return { side: title[1]!.toLowerCase(), length, corner: title[3]!, marks, kinds };
};

const readRays = (texts: readonly string[], table: CardTable, unit: number): Rays => {
  const found = texts[0]?.match(
    /^With a ruler and a protractor: draw the first centre line from the centre straight up\. Lay the protractor on the centre, its 0 along that line, and mark the rays (clockwise|counterclockwise) at the angles below\. Then measure from the centre, .+: ([\d./ ]+) along each start and stop ray, ([\d./ ]+) along each centre ray\./,
  );
  if (!found) throw new Error(`Not understood: ${texts[0]}`);
  const compass = texts[1]?.match(
    new RegExp(
      `^Without a protractor: draw two circles round the centre, ${L} and ${L} in radius\\. On the (larger|smaller) one, which carries the crowns, begin straight up and step off ${L}, straight from crown to crown, ` +
        `(\\d+) times; the last step comes back to the first, and what is left over is shared among all\\. From each crown measure ${L} to the other circle, to both sides: there lie its start and its stop\\. ` +
        `Check: straight from start to stop is ${L}(?:, and from a stop to the next start ${L})?\\.$`,
    ),
  );
  if (!compass) throw new Error(`Not understood: ${texts[1]}`);
  if (!table.title?.startsWith(`Rays ${found[1]}:`)) throw new Error(`${table.title}: the other way round`);
  const angles = new Map<string, number>();
  for (const [number, start, centre, stop] of table.rows)
    for (const [kind, text] of [
      ['start', start],
      ['centre', centre],
      ['stop', stop],
    ] as const)
      angles.set(`${kind} ${number}`, (Number(text!.slice(0, -1)) * Math.PI) / 180);
  return {
    turns: found[1] as Rays['turns'],
    start: bareNumber(found[2]!) * unit,
    crown: bareNumber(found[3]!) * unit,
    angles,
    compass: {
      start: measure(compass[1]!),
      crown: measure(compass[2]!),
      crownsOn: compass[3] as 'larger' | 'smaller',
      step: measure(compass[4]!),
      steps: Number(compass[5]),
      reach: measure(compass[6]!),
      span: measure(compass[7]!),
      gap: compass[8] === undefined ? 0 : measure(compass[8]),
    },
  };
};

/** `right, left 4 5/16 up; corner none`, by name. */
const readOthers = (text: string | undefined): ReadonlyMap<string, string> =>
  new Map(
    (text?.split('; ') ?? []).flatMap((some): [string, string][] => {
      const [, names, told] = some.match(/^([a-z, ]+?) (\d.*|on it|none)$/) ?? [];
      if (names === undefined) throw new Error(`Not understood: ${some}`);
      return names.split(', ').map((name) => [name, told!]);
    }),
  );
