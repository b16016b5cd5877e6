/** What goes with the stitching of a round frame: its circles, and the rays with their marks and names. */

import {
  arc,
  closedPath,
  type Motion,
  move,
  movePath,
  ORIGIN,
  openPath,
  type Path,
  type Point,
  polar,
  polyline,
  TURN,
} from '../geometry/index.ts';
import { type Design, type Placed, placingOf, type RoundFrame, ringMarks, wedgeOf } from '../swag/index.ts';
import type { Item, PathItem, TextItem } from './drawing.ts';
import type { LineRole } from './role.ts';

/** Half the length of a start or stop mark, and how far rays run on beyond the stitching, mm. */
const TICK = 5;
/** Words beside a tick, as a share of the labels' size. */
const SMALL_LABEL = 0.75;
/** Start and stop are named where their swag is this many times wider than a letter is high. */
const ROOM_FOR_NAMES = 9;

/** The motif, the circle kept clear round it and the limit: whole circles, or arcs over the repeats that are shown. */
export const ringCircles = (design: Design, ring: RoundFrame, halves: readonly Placed[]): readonly Item[] => {
  const { radius: motif, clear, within } = ring;
  const whole = halves.length === design.halves.length;
  const shown = (radius: number, role: LineRole, kind: string): readonly Item[] =>
    whole
      ? [circleItem(circle(radius), role, kind)]
      : repeatsOf(halves).map((repeat) => {
          const { centre } = marksFor(design, repeat);
          const w = wedgeOf(ring);
          return circleItem(openPath([arc(ORIGIN, radius, centre - w, 2 * w)]), role, kind);
        });
  return [
    ...shown(motif, 'motif', 'motif'),
    ...(clear > motif ? shown(clear, 'clear', 'clear circle') : []),
    ...(Number.isFinite(within) ? shown(within, 'limit', 'limit') : []),
  ];
};

const circle = (radius: number): Path =>
  closedPath([arc(ORIGIN, radius, 0, TURN / 2), arc(ORIGIN, radius, TURN / 2, TURN / 2)]);

const circleItem = (path: Path, role: LineRole, kind: string): PathItem => ({
  kind: 'path',
  path,
  role,
  facts: { side: 'frame', line: kind },
});

const repeatsOf = (halves: readonly Placed[]): readonly string[] => [...new Set(halves.map((h) => h.repeat))];

/** The rays of a repeat as angles counterclockwise from the x axis, as they lie in the drawing. */
const marksFor = (design: Design, repeat: string) => {
  const marks = ringMarks(design);
  const own = marks.filter((m) => m.repeat === repeat);
  const at = (kind: 'start' | 'centre' | 'stop'): number => {
    const mark = own.find((m) => m.kind === kind);
    if (!mark) throw new Error(`A frame without ${repeat}`);
    return mark.direction;
  };
  return { start: at('start'), centre: at('centre'), stop: at('stop') };
};

export const ringMarkItems = (
  design: Design,
  ring: RoundFrame,
  halves: readonly Placed[],
  size: number,
): readonly Item[] => {
  const { startRadius, farthest, span } = ring;
  const outer = farthest + ring.away + TICK;
  const small = SMALL_LABEL * size;
  const words = span > ROOM_FOR_NAMES * small;
  // Start and stop are named on the side that the swags turn their backs to.
  const namesAt =
    ring.from === 'inner' ? Math.min(startRadius, ring.clear) - TICK - 0.6 * small : outer + 0.7 * small;
  const items: Item[] = [];
  const radial = (angle: number, from: number, to: number, role: LineRole, facts: object): void => {
    items.push({
      kind: 'path',
      path: polyline([polar(angle, from), polar(angle, to)]),
      role,
      facts: { ...facts },
    });
  };
  for (const repeat of repeatsOf(halves)) {
    const { start, centre, stop } = marksFor(design, repeat);
    for (const [mark, angle, beside] of [
      ['start', start, stop],
      ['stop', stop, start],
    ] as const) {
      radial(angle, startRadius - TICK, startRadius + TICK, mark === 'start' ? 'startMark' : 'stopMark', {
        repeat,
        mark,
      });
      radial(angle, ring.radius, startRadius - TICK, 'ray', { repeat, mark: 'ray' });
      if (!words || namesAt < size) continue;
      const sense = Math.sign(Math.sin(beside - angle));
      const off = (1.7 * small) / namesAt;
      items.push(label(polar(angle + sense * off, namesAt), angle + sense * off, mark, small, false));
    }
    radial(centre, ring.radius, outer, 'centreLine', { repeat, mark: 'centre' });
    items.push(label(polar(centre, outer + 1.1 * size), centre, repeat, size, true));
  }
  return [...items, ...ringGuides(halves)];
};

/** The lines along which a flat of the template is laid: one for each half, square to its start mark's ray. */
const ringGuides = (halves: readonly Placed[]): readonly Item[] =>
  halves.flatMap((half): readonly Item[] => {
    const { guide } = placingOf(half.cell);
    if (guide === undefined) return [];
    const ends = [
      { x: 0, y: guide },
      { x: half.cell.crown.x, y: guide },
    ];
    return [
      {
        kind: 'path',
        path: movePath(polyline(ends), half.motion),
        role: 'guideLine',
        facts: { repeat: half.repeat, mark: 'guide' },
      },
    ];
  });

/** A word square to its ray, never on its head, its middle at a point. */
const label = (at: Point, ray: number, words: string, size: number, bold: boolean): TextItem => {
  let angle = ray - Math.PI / 2;
  angle -= TURN * Math.round(angle / TURN);
  if (Math.abs(angle) > Math.PI / 2 + 1e-9) angle -= Math.sign(angle) * Math.PI;
  // Letters stand on their base line: half their height is taken off on the side that is down.
  const down: Motion = { flip: false, angle, ...at };
  return {
    kind: 'text',
    text: words,
    at: move(down, { x: 0, y: -0.35 * size }),
    size,
    align: 'middle',
    angle,
    role: 'label',
    ...(bold ? { bold } : {}),
  };
};
