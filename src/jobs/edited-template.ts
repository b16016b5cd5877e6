/** A template's file with its edge set right: breaks, stretches, and its size by the print that the acrylic lay on. */

import { type Problem, plural, series } from '../document/index.ts';
import { distance, type Path, pathEnd, pathStart, scalePath } from '../geometry/index.ts';
import type { Units } from '../length/index.ts';
import {
  fromHeel,
  isBeyond,
  lineBeyond,
  readTemplate,
  type Template,
  writeTemplate,
} from '../template/index.ts';
import { cornersOf, mendOutline } from '../trace/index.ts';
import { breaksAlong, lostBreaks, placeAll, type SetRight, spoiltByStretch } from './set-right.ts';
import { type OffBy, sizeByPrint, sizeWords, tooFarOff } from './size-by-print.ts';

export interface EditedFrom {
  readonly template: Template;
  readonly units: Units;
  /** The file's text, of which the comments on top are kept. */
  readonly text: string;
}

export interface EditWants {
  /** The new file's name. */
  readonly fileName: string;
  /** Its places are in the template's frame. */
  readonly right: SetRight;
  readonly off: OffBy | undefined;
}

export type EditedTemplate =
  | {
      readonly ok: true;
      readonly text: string;
      readonly template: Template;
      /** What the edge is larger by than it was. */
      readonly size: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const editTemplate = ({ template, units, text }: EditedFrom, wants: EditWants): EditedTemplate => {
  const { right, off, fileName } = wants;
  const { edge } = template;
  const named = template.breaks.flatMap(({ name, point }) =>
    name === undefined ? [] : [{ name, at: point }],
  );
  const placed = placeAll(right, { outline: edge, edge, corners: [], breaks: named });
  if (!placed.ok) return placed;
  const whole = { path: edge, corners: [], deviation: 0, farthest: undefined, roughness: 0 };
  const mended = mendOutline(whole, placed.mends);
  if (!mended.ok) return { ok: false, problems: [{ ...mended.problem, key: '--stretch' }] };
  const { path } = mended.outline;
  const size = off ? sizeByPrint(chordOf(path), off) : 1;
  if (size === 'too-far') return { ok: false, problems: [tooFarOff] };
  const longer = scalePath(path, size);
  const lines = template.alignment.map(({ name, at }) => ({ name, at: fromHeel(edge, at) }));
  // A line that lay beyond the edge before is no fault of what is set right now.
  const beyond = lineBeyond(
    longer,
    lines.filter((_, i) => !isBeyond(edge, template.alignment[i]!)),
    units,
  );
  if (beyond) return { ok: false, problems: [beyond] };
  const breaks = breaksAlong(path, cornersOf(path), placed.breaks);
  const made = writeTemplate({
    title: template.title,
    units,
    thickness: template.thickness,
    comments: [...commentsOnTop(text), editedWords(right, size)],
    edge: longer,
    breaks: breaks.map(({ name, at }) => ({ name, at: at * size })),
    alignment: lines,
    channelLines: template.channelLines,
    rollsRoundCrown: template.rollsRoundCrown,
    decimals: { in: 4, cm: 4, mm: 3 }[units],
  });
  const reading = readTemplate(made, fileName);
  // Its places would be lines of a file that is never written.
  if (!reading.ok && right.stretches.length > 0)
    return { ok: false, problems: [spoiltByStretch(reading.problems[0]!)] };
  if (!reading.ok) return { ok: false, problems: reading.problems.map(({ place: _, ...rest }) => rest) };
  const lost = lostBreaks(right.breaks, reading.template.breaks);
  if (lost.length > 0) return { ok: false, problems: lost };
  return { ok: true, text: made, template: reading.template, size };
};

const chordOf = (edge: Path): number => {
  const [from, to] = [pathStart(edge), pathEnd(edge)];
  return from && to ? distance(from, to) : 0;
};

/** The lines before the first key. */
const commentsOnTop = (text: string): readonly string[] => {
  const lines = text.split(/\r?\n/);
  const first = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  return lines.slice(0, Math.max(0, first)).flatMap((line) => {
    const words = line.replace(/^#\s?/, '').trimEnd();
    return words === '' ? [] : [words];
  });
};

/** Whether comments of a file stand elsewhere than on top: those are not carried over. */
export const hasCommentsWithin = (text: string): boolean =>
  text
    .split(/\r?\n/)
    .slice(commentsOnTop(text).length)
    .some((line) => /(^|\s)#/.test(line));

const editedWords = ({ breaks, renames, takenOut, stretches }: SetRight, size: number): string => {
  const changed = breaks.length + renames.length + takenOut.length;
  const parts = [
    ...(stretches.length > 0 ? [`${plural(stretches.length, 'stretch', 'stretches')} set right`] : []),
    ...(changed > 0 ? [`${plural(changed, 'break')} changed`] : []),
    ...(size === 1 ? [] : [`made ${sizeWords(size)} by its print`]),
  ];
  return `Edited by swagwright: ${series(parts)}.`;
};
