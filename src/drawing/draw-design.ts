/** A design as a picture: seams, stitching, the template's ghost, and the marks that go on the fabric. */

import { clipperOf, compose, movePath, type Path } from '../geometry/index.ts';
import {
  type Cell,
  type Channel,
  cellArea,
  centreMirror,
  type Design,
  type Placed,
  placedPath,
  rowsShown,
} from '../swag/index.ts';
import type { Drawing, Facts, Item, PathItem } from './drawing.ts';
import type { Filled } from './filling.ts';
import { ghostItems } from './ghost.ts';
import { cornerMarks, furtherMarks, markItems, TICK, tearNotes } from './marks.ts';
import type { OpenFilled } from './open-fills.ts';
import { onRow, type Scope } from './scope.ts';
import { seamItems } from './seams.ts';
import { LABEL_SIZE } from './sheet-style.ts';
import { wayMarks } from './way-marks.ts';

export interface DrawOptions {
  readonly title: string;
  /** Size of labels, mm. */
  readonly labelSize?: number | undefined;
  /** Half the length of a start or stop mark, mm. */
  readonly tick?: number;
  /** The channels of each cell, or of each half where they are known so closely. */
  readonly channels?: ReadonlyMap<Cell | Placed, readonly Channel[]>;
  /** For each half what fills its whole repeat. */
  readonly fills?: ReadonlyMap<Placed, readonly Filled[]>;
  /** What fills the background and what lies between two rows, where it is shown. */
  readonly open?: readonly OpenFilled[];
  /** How large the dots and arrows are that say how fills are sewn: 1 for true size. */
  readonly waySize?: number;
  /** Whether each half shows the template that makes it. */
  readonly ghosts?: boolean;
}

export const drawDesign = (design: Design, scope: Scope, options: DrawOptions): Drawing => {
  const size = options.labelSize ?? LABEL_SIZE;
  const tick = options.tick ?? TICK;
  const way = options.waySize ?? 1;
  const rows = rowsShown(design, scope.halves);
  const last = rows.at(-1)!.row;
  const channelsOf = (h: Placed): readonly Channel[] =>
    options.channels?.get(h) ?? options.channels?.get(h.cell) ?? [];
  return {
    title: options.title,
    layers: {
      fill: [
        ...(options.open ?? []).flatMap((open) => openItems(design, open)),
        ...rows.flatMap(({ row, halves }) =>
          halves.flatMap((h) => fillItems(row, halves, h, options.fills?.get(h) ?? [])),
        ),
      ],
      way: [
        ...(options.open ?? []).flatMap((open) => openWays(design, open, way)),
        ...rows.flatMap(({ row, halves }) =>
          halves.flatMap((h) => fillWays(row, halves, h, options.fills?.get(h) ?? [], way)),
        ),
      ],
      // The last row knows the lines that all of them start on.
      border: scope.stretches.flatMap((s) => seamItems(last, onRow(s, last))),
      template: options.ghosts === false ? [] : rows.flatMap(({ row, halves }) => ghosts(row, halves)),
      channel: rows.flatMap(({ row, halves }) => halves.flatMap((h) => channelItems(row, h, channelsOf(h)))),
      stitch: rows.flatMap(({ row, halves }) => halves.map((h) => stitchItem(row, h))),
      marks: [
        ...rows.flatMap(({ row }) =>
          scope.stretches.flatMap((s) =>
            row === design ? markItems(row, s, size, tick) : furtherMarks(row, onRow(s, row), tick),
          ),
        ),
        ...rows.flatMap(({ row, halves }) => cornerMarks(row, halves, size, tick, channelsOf)),
      ],
      notes: scope.stretches.flatMap((s) => tearNotes(design, s, size)),
    },
  };
};

/** The row is told where there are several, and so is the kind. */
const factsOf = ({ row, beyond, fit }: Design, { repeat, half, cell }: Placed): Facts => ({
  repeat,
  half,
  ...((row > 1 || beyond) && { row: String(row) }),
  ...(fit.pattern.kind === 'in turn' && { kind: String(cell.kind) }),
});

const stitchItem = (row: Design, half: Placed): PathItem => ({
  kind: 'path',
  path: placedPath(half),
  role: 'stitch',
  facts: factsOf(row, half),
});

const channelItems = (row: Design, half: Placed, channels: readonly Channel[]): readonly PathItem[] =>
  channels.flatMap((channel) =>
    channel.paths.map((path) => ({
      kind: 'path',
      path: movePath(path, half.motion),
      role: 'channel',
      facts: { ...factsOf(row, half), channel: `${channel.side} ${channel.number}` },
    })),
  );

/**
 * A fill belongs to a whole repeat: it is drawn with the first half, and where only one half of a repeat is
 * shown, as at the ends of a side, the half of it that lies there.
 */
const fillItems = (
  design: Design,
  shown: readonly Placed[],
  half: Placed,
  filled: readonly Filled[],
): readonly PathItem[] => {
  const isWhole = shown.some((h) => h.repeat === half.repeat && h.half !== half.half);
  if (isWhole && half.half === 'second') return [];
  const over = centreMirror(half.cell);
  const clip = isWhole ? undefined : clipperOf(cellArea(half.cell, design));
  const inside = (path: Path): readonly Path[] =>
    clip ? clip(half.half === 'first' ? path : movePath(path, over)) : [path];
  return filled.flatMap((f) => {
    const facts = { repeat: half.repeat, region: f.region.name, fill: f.fill };
    return f.paths.flatMap(inside).map((path): PathItem => {
      return { kind: 'path', path: movePath(path, half.motion), role: 'fill', facts };
    });
  });
};

/** How a repeat's fills are sewn, where the whole of it is shown. */
const fillWays = (
  row: Design,
  shown: readonly Placed[],
  half: Placed,
  filled: readonly Filled[],
  size: number,
): readonly PathItem[] => {
  const isWhole = shown.some((h) => h.repeat === half.repeat && h.half !== half.half);
  if (!isWhole || half.half === 'second') return [];
  return filled.flatMap(({ region, fill, paths }) => {
    const facts = { ...factsOf(row, half), region: region.name, fill };
    return wayMarks(paths, facts, true, size).map((item) => ({
      ...item,
      path: movePath(item.path, half.motion),
    }));
  });
};

const openWays = (
  design: Design,
  { kind, row, fill, paths, continuous }: OpenFilled,
  size: number,
): readonly PathItem[] => {
  const facts = { region: kind, fill, ...(design.beyond && { row: String(row) }) };
  return wayMarks(paths, facts, continuous && paths.length === 1, size);
};

const openItems = (design: Design, { kind, row, fill, paths }: OpenFilled): readonly PathItem[] => {
  const facts = { region: kind, fill, ...(design.beyond && { row: String(row) }) };
  return paths.map((path): PathItem => ({ kind: 'path', path, role: 'fill', facts }));
};

/** The etched lines are drawn once, on the first half that is shown: everywhere else the edge is enough. */
const ghosts = (row: Design, halves: readonly Placed[]): readonly Item[] =>
  halves.flatMap((half, i) => {
    const motion = compose(half.motion, half.cell.motion);
    return ghostItems(half.cell.seat.shape.stitching.template, motion, factsOf(row, half), i === 0);
  });
