/** A template as the text of its file, as a person would write it: steps in order, plain numbers, a comment on top. */

import { oneLine } from '../document/index.ts';
import {
  distance,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pathStart,
  pieceLength,
  trimPiece,
} from '../geometry/index.ts';
import { MM_PER, type Units } from '../length/index.ts';

export interface TemplateText {
  readonly title: string;
  readonly units: Units;
  /** Of the acrylic, mm; undefined where nobody says. */
  readonly thickness?: number | undefined;
  /** A comment on top, a line each: where it came from, and how true it is. */
  readonly comments: readonly string[];
  /** Open, in mm, in the template's own frame. */
  readonly edge: Path;
  /** Places on smooth stretches where a section begins, in order. */
  readonly breaks: readonly { readonly at: number; readonly name: string }[];
  /** Etched square to the long axis, each so far from the heel, and parallel to the edge (mm). */
  readonly alignment?: readonly { readonly name: string; readonly at: number }[];
  readonly channelLines?: readonly number[];
  readonly rollsRoundCrown?: boolean;
  /** Decimals of the numbers. */
  readonly decimals: number;
}

/** Two breaks nearer than this (mm) are one; nearer to an end they are none. */
const APART = 0.5;

export const writeTemplate = (wanted: TemplateText): string => {
  const { title, units, comments, thickness, edge, breaks, decimals } = wanted;
  const number = numberIn(units, decimals);
  const pair = (p: Point): string => `[${number(p.x)}, ${number(p.y)}]`;
  const start = pathStart(edge) ?? { x: 0, y: 0 };
  const lines = [
    ...comments.map((c) => `# ${oneLine(c)}`),
    `title: ${quotedTitle(title)}`,
    `units: ${units}`,
    ...thicknessText(thickness, number),
    'edge:',
    `  - start: ${pair(start)}`,
  ];
  for (const step of steps(edge, breaks)) {
    if (step.name !== undefined) lines.push(`  - break: ${quotedTitle(step.name)}`);
    const { piece } = step;
    const rise = piece.kind === 'line' ? 0 : riseOf(piece);
    // A rise that prints as nothing is a line.
    if (number(rise) === '0') lines.push(`  - line: { to: ${pair(piece.to)} }`);
    else lines.push(`  - arc: { to: ${pair(piece.to)}, rise: ${number(rise)} }`);
  }
  return `${lines.join('\n')}\n${etchedText({ ...wanted, thickness: undefined })}${wanted.rollsRoundCrown ? 'crownEnd: corner\n' : ''}`;
};

const thicknessText = (thickness: number | undefined, number: (mm: number) => string): readonly string[] =>
  thickness === undefined ? [] : [`thickness: ${number(thickness)}`];

/** Lengths in mm as the file has them. */
const numberIn =
  (units: Units, decimals: number) =>
  (mm: number): string => {
    const text = (mm / MM_PER[units]).toFixed(decimals).replace(/\.?0+$/, '');
    return text === '-0' ? '0' : text;
  };

/** What stands in a template's file of the acrylic besides its edge: whole lines, or none. */
export const etchedText = ({
  units,
  decimals,
  thickness,
  alignment = [],
  channelLines = [],
}: Pick<TemplateText, 'units' | 'decimals' | 'thickness' | 'alignment' | 'channelLines'>): string => {
  // A 64th of an inch has six.
  const number = numberIn(units, units === 'in' ? 6 : decimals);
  const lines = [
    ...thicknessText(thickness, number),
    ...(alignment.length > 0 ? ['alignment:'] : []),
    ...alignment.map((a) => `  - { name: ${quotedTitle(a.name)}, at: ${number(a.at)} }`),
    ...(channelLines.length > 0 ? [`channelLines: [${channelLines.map(number).join(', ')}]`] : []),
  ];
  return lines.map((line) => `${line}\n`).join('');
};

/** Over its chord, positive to the left: a clockwise arc bulges to the left of its way. */
const riseOf = (piece: Extract<Piece, { kind: 'arc' }>): number =>
  (-distance(piece.from, piece.to) / 2) * Math.tan(piece.sweep / 4);

interface Step {
  readonly piece: Piece;
  /** Of the section that begins with it. */
  readonly name: string | undefined;
}

const steps = (edge: Path, breaks: TemplateText['breaks']): readonly Step[] => {
  const whole = pathLength(edge);
  const left = breaks.filter(
    (b, i) => b.at > APART && b.at < whole - APART && !(b.at - (breaks[i - 1]?.at ?? -APART) < APART),
  );
  const found: Step[] = [];
  let at = 0;
  let next = 0;
  let name: string | undefined;
  for (const piece of edge.pieces) {
    const length = pieceLength(piece);
    let done = 0;
    for (; next < left.length && left[next]!.at < at + length - APART / 2; next++) {
      const share = (left[next]!.at - at) / length;
      // So near to the joint before it, it stands at the joint.
      if ((share - done) * length > APART / 2) {
        found.push({ piece: trimPiece(piece, done, share), name });
        done = share;
      }
      name = left[next]!.name;
    }
    found.push({ piece: done > 0 ? trimPiece(piece, done, 1) : piece, name });
    name = undefined;
    at += length;
  }
  return found;
};

/** Plain where it can be: a word or several, with nothing that YAML reads. Names of files hold what steers a terminal. */
const quotedTitle = (said: string): string => {
  const text = oneLine(said);
  return /^[A-Za-z][A-Za-z0-9 -]*$/.test(text) && !/^(y|n|yes|no|on|off|true|false|null)$/i.test(text)
    ? text
    : JSON.stringify(text);
};
