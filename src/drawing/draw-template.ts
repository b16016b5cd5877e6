/** A template at true size, to lay the acrylic on: its edge, what the needle stitches round it, and its etched lines. */

import {
  add,
  type Box,
  boxHeight,
  boxWidth,
  directionAlong,
  distance,
  joinBoxes,
  leftOf,
  movePath,
  type Point,
  pathBox,
  pathEnd,
  pathStart,
  pointAlong,
  polyline,
  STAY,
  scale,
} from '../geometry/index.ts';
import { formatLength, INCH_SIXTEENTH, MM_TENTH } from '../length/index.ts';
import { flatsOf, type Stitching, telling } from '../swag/index.ts';
import type { Drawing, Item, TextItem } from './drawing.ts';
import { etchedAlignment, etchedChannels } from './ghost.ts';
import type { LineRole, WordRole } from './role.ts';
import { LABEL_SIZE } from './sheet-style.ts';
import { drawSpacer } from './spacer.ts';

/** How far a section's number stands inside the edge, or inside the last line etched along it, mm. */
const NUMBER_INSIDE = 5;
/** How far below all lines the measurements stand, and the spacer below them, mm. */
const MEASURE_BELOW = 9;
const SPACER_BELOW = 9;
const MEASURE_TICK = 1.5;
/** Half the length of the tick across the edge at a break, mm. */
const BREAK_TICK = 2.5;

export const drawTemplate = (stitching: Stitching, title: string): Drawing => {
  const { template, stitched, sections } = stitching;
  const path = (p: Parameters<typeof movePath>[0], role: LineRole, part: string): Item => ({
    kind: 'path',
    path: movePath(p, STAY),
    role,
    facts: { part },
  });
  const at = (along: number): Point => pointAlong(template.edge, along) ?? { x: 0, y: 0 };
  const inward = (along: number): Point =>
    scale(leftOf(directionAlong(template.edge, along) ?? { x: 1, y: 0 }), -1);
  const box = pathBox(template.edge);
  const heel = pathStart(template.edge) ?? at(0);
  const ticks = template.breaks.map((b): Item => {
    const normal = inward(b.at);
    const tick = polyline([
      add(b.point, scale(normal, -BREAK_TICK)),
      add(b.point, scale(normal, BREAK_TICK)),
    ]);
    return path(tick, 'break', 'break');
  });
  const numberInside = Math.max(0, ...template.channelLines) + NUMBER_INSIDE;
  const numbers = sections.map((s): Item => {
    const middle = (s.from + s.to) / 2;
    const place = add(at(middle), scale(inward(middle), numberInside));
    return label(place, s.name ? `${s.number} ${s.name}` : String(s.number), LABEL_SIZE, 'note', true);
  });
  const alignment = etchedAlignment(template);
  const channels = etchedChannels(template);
  const crown = pathEnd(template.edge) ?? heel;
  const inked = [
    template.edge,
    stitched.path,
    ...alignment.map((a) => a.path),
    ...channels.map((c) => c.path),
  ]
    .map(pathBox)
    .reduce(joinBoxes);
  const measures = measurements(heel, crown, box, inked);
  const spacer = drawSpacer(stitched.clearance, {
    x: inked.minX,
    y: inked.minY - MEASURE_BELOW - 2 * LABEL_SIZE - SPACER_BELOW,
  });
  const flats = flatsOf(stitching).map((f): Item => {
    const middle = (f.from + f.to) / 2;
    const place = add(at(middle), scale(inward(middle), numberInside + 1.5 * LABEL_SIZE));
    return label(place, `flat ${f.number}`, 0.8 * LABEL_SIZE, 'note', false);
  });
  return {
    title,
    layers: {
      fill: [],
      way: [],
      border: [],
      template: [
        path(template.edge, 'edge', 'edge'),
        ...alignment.map((a) => path(a.path, 'etched', 'alignment')),
        ...channels.map((c) => path(c.path, 'etched', 'channel-line')),
      ],
      channel: [],
      stitch: [path(stitched.path, 'stitch', 'needle')],
      marks: [
        ...ticks,
        ...measures.filter((m) => m.kind === 'path'),
        ...spacer.lines,
        ...telling(stitched).map((u) => path(polyline([u.turn, u.deepest]), 'unreached', 'unreached')),
      ],
      notes: [
        ...numbers,
        ...flats,
        ...measures.filter((m) => m.kind === 'text'),
        ...spacer.words,
        ...alignment.map((a): Item => {
          const foot = a.path.pieces[0]?.to ?? heel;
          return label({ x: foot.x, y: foot.y - 1.2 * LABEL_SIZE }, a.name, LABEL_SIZE, 'etchedName', true);
        }),
        label(
          { x: heel.x - 1.5 * LABEL_SIZE, y: heel.y - 1.2 * LABEL_SIZE },
          'heel',
          LABEL_SIZE,
          'note',
          false,
          'end',
        ),
        label(
          { x: box.maxX + 1.5 * LABEL_SIZE, y: at(stitched.edgeLength).y },
          'crown end',
          LABEL_SIZE,
          'note',
          false,
          'start',
        ),
      ],
    },
  };
};

/** Both systems, because a ruler shows what it shows. */
const both = (mm: number): string => `${formatLength(mm, INCH_SIXTEENTH)} (${formatLength(mm, MM_TENTH)})`;

/** Across below everything, up beside the crown end, and the straight way from heel to crown end. */
const measurements = (heel: Point, crown: Point, box: Box, inked: Box): readonly Item[] => {
  const y = inked.minY - MEASURE_BELOW;
  const x = inked.maxX + 3 * MEASURE_BELOW;
  const line = (from: Point, to: Point): Item => ({
    kind: 'path',
    path: polyline([from, to]),
    role: 'measure',
  });
  const across = boxWidth(box);
  const up = boxHeight(box);
  return [
    line({ x: box.minX, y }, { x: box.maxX, y }),
    ...[box.minX, box.maxX].map((at) => line({ x: at, y: y - MEASURE_TICK }, { x: at, y: y + MEASURE_TICK })),
    label(
      { x: (box.minX + box.maxX) / 2, y: y - 1.4 * LABEL_SIZE },
      `${both(across)} across; heel to crown end ${both(distance(heel, crown))}`,
      LABEL_SIZE,
      'note',
      false,
    ),
    ...(up > LEAST_HEIGHT
      ? [
          line({ x, y: box.minY }, { x, y: box.maxY }),
          ...[box.minY, box.maxY].map((at) =>
            line({ x: x - MEASURE_TICK, y: at }, { x: x + MEASURE_TICK, y: at }),
          ),
          {
            ...label(
              { x: x + 1.4 * LABEL_SIZE, y: (box.minY + box.maxY) / 2 },
              both(up),
              LABEL_SIZE,
              'note',
              false,
            ),
            angle: Math.PI / 2,
          },
        ]
      : []),
  ];
};

/** An edge lower than this (mm) has no height worth measuring, and no room for the figure. */
const LEAST_HEIGHT = 8;

const label = (
  at: Point,
  text: string,
  size: number,
  role: WordRole,
  bold: boolean,
  align: TextItem['align'] = 'middle',
): TextItem => ({ kind: 'text', text, at, size, align, angle: 0, role, ...(bold ? { bold } : {}) });
