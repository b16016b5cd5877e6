/** The marks that go on the fabric, with their names: start, centre and stop of each swag, guide lines, corners. */

import { add, move, movePath, polyline, subtract } from '../geometry/index.ts';
import {
  type Cell,
  type Channel,
  type Design,
  type Placed,
  type PlacedSide,
  placingOf,
  repeatMarks,
} from '../swag/index.ts';
import type { Facts, Item } from './drawing.ts';
import { label, labelLines, text } from './label.ts';
import type { LineRole } from './role.ts';
import type { Scope, Stretch } from './scope.ts';

/** Half the length of a start or stop mark, mm. */
const TICK = 5;
/** Words beside a tick, as a share of the labels' size. */
const SMALL_LABEL = 0.75;
/** Sizes of a label that `start`, a repeat's name and `stop` need beside one another. */
const ROOM_FOR_WORDS = 12;

/** Where the words beside the marks of a side stand: on the near side of the seam, clear of the ticks. */
const wordsAt = (near: number, size: number): number => near - TICK - 1.4 * size;

/** Start, stop and centre marks of the repeats on a stretch, with their names. */
export const markItems = (design: Design, { side, repeats }: Stretch, size: number): readonly Item[] => {
  const { field } = design;
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  const items: Item[] = [];
  const upright = (x: number, y0: number, y1: number, role: LineRole, facts: Facts): void => {
    items.push({
      kind: 'path',
      path: movePath(
        polyline([
          { x, y: y0 },
          { x, y: y1 },
        ]),
        side.motion,
      ),
      role,
      facts,
    });
  };
  for (const index of repeats) {
    const { start, centre, stop } = repeatMarks(side, index);
    const repeat = `${side.run.name} ${index + 1}`;
    upright(start, near - TICK, near + TICK, 'startMark', { repeat, mark: 'start' });
    upright(stop, near - TICK, near + TICK, 'stopMark', { repeat, mark: 'stop' });
    // To the far seam and no farther: beyond it an end of a line could cost a sheet of its own.
    upright(centre, near - TICK, far, 'centreLine', { repeat, mark: 'centre' });
    const below = wordsAt(near, size);
    items.push(label(side.motion, { x: centre, y: below }, repeat, size, 'label', true));
    // Each beside its own tick, so that where neighbours meet it reads “stop | start”.
    const small = SMALL_LABEL * size;
    // Narrow swags have room for their own name only.
    if (stop - start < ROOM_FOR_WORDS * size) continue;
    const aside = SMALL_LABEL * 2.2 * size;
    items.push(label(side.motion, { x: start + aside, y: below }, 'start', small, 'label', false));
    items.push(label(side.motion, { x: stop - aside, y: below }, 'stop', small, 'label', false));
  }
  items.push(...guideItems(side, repeats));
  return items;
};

/** The line along which a flat of the template is laid, where that is how the template is set. */
const guideItems = (side: PlacedSide, repeats: readonly number[]): readonly Item[] => {
  const height = placingOf(side.cell).guide;
  if (height === undefined) return [];
  return repeats.map((index) => {
    const { start, stop } = repeatMarks(side, index);
    return {
      kind: 'path',
      path: movePath(
        polyline([
          { x: start, y: height },
          { x: stop, y: height },
        ]),
        side.motion,
      ),
      role: 'guideLine',
      facts: { repeat: `${side.run.name} ${index + 1}`, mark: 'guide' },
    };
  });
};

/** The start and stop marks of corner swags, with the corner's name beyond its crown. */
export const cornerMarks = (
  design: Design,
  scope: Scope,
  size: number,
  channels: ReadonlyMap<Cell | Placed, readonly Channel[]> | undefined,
): readonly Item[] => {
  const corner = design.corner;
  if (!corner) return [];
  const shown = scope.halves.find((h) => h.cell === corner.cell);
  const ofCorner = (shown && channels?.get(shown)) ?? channels?.get(corner.cell) ?? [];
  const outward = ofCorner.filter((c) => c.side === 'outward');
  const outwardReach = Math.max(0, ...outward.map((c) => c.distance));
  return scope.halves
    .filter((h) => h.cell === corner.cell)
    .flatMap((h): readonly Item[] => {
      const near = -design.field.startMargin;
      const tick = polyline([
        { x: 0, y: near - TICK },
        { x: 0, y: near + TICK },
      ]);
      const facts = { repeat: h.repeat, mark: h.half === 'first' ? 'start' : 'stop' };
      const items: Item[] = [
        {
          kind: 'path',
          path: movePath(tick, h.motion),
          role: h.half === 'first' ? 'startMark' : 'stopMark',
          facts,
        },
      ];
      if (h.half === 'first') {
        // The corner's name stands where its crown is, just beyond it on the mitre.
        const crown = move(h.motion, corner.cell.crown);
        const start = move(h.motion, { x: corner.cell.crown.x, y: 0 });
        const outward = subtract(crown, start);
        const length = Math.hypot(outward.x, outward.y) || 1;
        const away = outwardReach + 2.5 * size;
        const at = add(crown, { x: (outward.x / length) * away, y: (outward.y / length) * away });
        items.push({ ...text(at, h.repeat.slice('corner '.length), size, 'label'), bold: true });
      }
      return items;
    });
};

/** Four square corners do not close round sides that differ: the drawing shows where it stands open for that. */
const TEAR_WORDS = ['open only in the drawing:', 'sew without this gap'] as const;
/** Sizes of a label from a start mark to the middle of these words in one line, clear of `start`. */
const TEAR_WORDS_FROM = 12.5;
/** Sizes of a label that half a swag needs for `start`, these words in one line, and half of the repeat's name. */
const ROOM_FOR_TEAR_WORDS = 26;

/**
 * Where a side is drawn open. A side’s own name needs no note, since each repeat carries it; and these words stand
 * among those of the marks, where a sheet is printed in any case. Only beside narrow swags they go one line farther in.
 */
export const tearNotes = (design: Design, { side, from, to }: Stretch, size: number): readonly Item[] => {
  const isWhole = from <= 0 && to >= side.run.length;
  const { tear } = side;
  if (!tear || tear.after >= side.fit.repeats || !isWhole) return [];
  const { start, centre } = repeatMarks(side, tear.after);
  const y = wordsAt(-design.field.startMargin, size);
  const small = SMALL_LABEL * size;
  if (centre - start > ROOM_FOR_TEAR_WORDS * size) {
    const at = { x: start + TEAR_WORDS_FROM * size, y };
    return [label(side.motion, at, TEAR_WORDS.join(' '), small, 'note', false)];
  }
  const at = { x: start - tear.by / 2, y: y - 1.6 * size };
  return labelLines(side.motion, at, TEAR_WORDS, small, 'note');
};
