/**
 * DXF as a reader of others understands it (dxf-parser), and the plain SVG: every line of the design is there to
 * 0.001 mm, as lines and arcs, on a layer of its role, and nothing else is.
 */

import type { DxfParser, IPolylineEntity } from 'dxf-parser';
import library from 'dxf-parser';
import { describe, expect, it, test } from 'vitest';
import {
  drawPlan,
  LAYERS,
  SHEET,
  type StyledDrawing,
  styled,
  wholeScope,
} from '../../../src/drawing/index.ts';
import {
  arc,
  openPath,
  type Path,
  pathLength,
  pieceAt,
  point,
  polyline,
} from '../../../src/geometry/index.ts';
import { writeDxf } from '../../../src/output/dxf/index.ts';
import { partOf } from '../../support/part-of.ts';
import { BLACK, drawingOf } from '../svg/fixture.ts';

interface Read {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  readonly bulge: number;
}

/** The package's types name what its file is as a whole. */
const Parser = library as unknown as typeof DxfParser;

const parse = (text: string) => {
  const read = new Parser().parseSync(text);
  if (!read) throw new Error('Nothing was read');
  return read;
};

/** The lines and arcs of each layer. */
const layersOf = (text: string): ReadonlyMap<string, readonly Read[]> => {
  const layers = new Map<string, Read[]>();
  for (const entity of parse(text).entities) {
    expect(entity.type).toBe('POLYLINE');
    const { vertices, shape, layer } = entity as IPolylineEntity;
    const own = layers.get(layer) ?? [];
    vertices.forEach((from, i) => {
      const to = vertices[i + 1] ?? (shape ? vertices[0] : undefined);
      if (to) own.push({ from, to, bulge: from.bulge ?? 0 });
    });
    layers.set(layer, own);
  }
  return layers;
};

/** By the definition of a bulge: the tangent of a quarter of the arc's angle (AutoCAD DXF reference, group 42 of VERTEX). */
const lengthOf = ({ from, to, bulge }: Read): number => {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const angle = 4 * Math.atan(bulge);
  return bulge === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2));
};

/** How far a point lies from a line or an arc. */
const away = ({ from, to, bulge }: Read, p: { readonly x: number; readonly y: number }): number => {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  const ends = Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - to.x, p.y - to.y));
  if (chord === 0) return ends;
  // Along the chord and to its left, from its middle.
  const [mx, my] = [p.x - (from.x + to.x) / 2, p.y - (from.y + to.y) / 2];
  const along = (mx * dx + my * dy) / chord;
  const left = (my * dx - mx * dy) / chord;
  if (bulge === 0) return Math.abs(along) <= chord / 2 ? Math.abs(left) : ends;
  // A positive bulge goes round counterclockwise: its height, bulge · chord / 2, lies to the right of the chord.
  const height = (-bulge * chord) / 2;
  const radius = (chord * chord) / 8 / height + height / 2;
  const up = (left - (height - radius)) * Math.sign(height);
  const isBeside = Math.atan2(Math.abs(along), up) <= 2 * Math.atan(Math.abs(bulge));
  return isBeside ? Math.abs(Math.hypot(along, up) - Math.abs(radius)) : ends;
};

/** Whether a point may lie this near to a piece: no farther from its chord than its height, and its ends. */
const mayLieNear = ({ from, to, bulge }: Read, p: { readonly x: number; readonly y: number }): boolean => {
  const room = 0.01 + (Math.abs(bulge) * Math.hypot(to.x - from.x, to.y - from.y)) / 2;
  const isBetween = (v: number, a: number, b: number) =>
    v >= Math.min(a, b) - room && v <= Math.max(a, b) + room;
  return isBetween(p.x, from.x, to.x) && isBetween(p.y, from.y, to.y);
};

/** The paths of each role, as the design has them. */
const rolesOf = ({ layers }: StyledDrawing): ReadonlyMap<string, readonly Path[]> => {
  const roles = new Map<string, Path[]>();
  for (const id of LAYERS)
    for (const item of layers[id])
      if (item.kind === 'path') roles.set(item.role!, [...(roles.get(item.role!) ?? []), item.path]);
  return roles;
};

const DESIGNS = {
  'a strip with channels and fills':
    'template: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\nchannels: { outward: [1/4], inward: [1/4, 1/8] }\nfills: { swag: leaves, background: pebbles, channels: [pearls] }\n',
  'a border whose swags turn the corners':
    'template: finial\nlayout: { border: { width: 6, inner: { top: 40, right: 44, bottom: 40, left: 44 }, margin: 1/2, corners: turn } }\nchannels: { outward: [1/4] }\n',
  'a wreath':
    'template: baluster\nlayout: { frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }\nchannels: { inward: [1/4] }\n',
} as const;

const drawingNamed = (name: keyof typeof DESIGNS): StyledDrawing => {
  const { plan, design } = partOf(DESIGNS[name]);
  return styled(drawPlan(design, plan, wholeScope(design)).drawing, SHEET);
};

describe.each(Object.keys(DESIGNS) as (keyof typeof DESIGNS)[])('the DXF of %s', (name) => {
  const drawing = drawingNamed(name);
  const read = layersOf(writeDxf(drawing));
  const roles = rolesOf(drawing);
  const onLayer = (role: string) => read.get(role.replace(/[A-Z]/g, (c) => `-${c}`).toUpperCase()) ?? [];

  it('has one layer a role and no other', () => {
    expect(roles.size).toBeGreaterThan(4);
    expect(read.size).toBe(roles.size);
    for (const role of roles.keys()) expect(onLayer(role).length, role).toBeGreaterThan(0);
  });

  it('holds on each layer as much line as the design', () => {
    for (const [role, paths] of roles) {
      const wanted = paths.reduce((sum, path) => sum + pathLength(path), 0);
      const found = onLayer(role).reduce((sum, piece) => sum + lengthOf(piece), 0);
      expect(Math.abs(found - wanted), `${role}: ${found} for ${wanted}`).toBeLessThan(0.001);
    }
  });

  it('has a line within 0.001 mm of every place of the design, on its own layer', () => {
    let worst = 0;
    let count = 0;
    for (const [role, paths] of roles) {
      const there = onLayer(role);
      // Of a fill's thousands every seventh piece tells as much.
      const pieces = paths
        .flatMap((path) => path.pieces)
        .filter((_, i, all) => all.length < 500 || i % 7 === 0);
      for (const piece of pieces)
        for (const share of [0.01, 0.4]) {
          const p = pieceAt(piece, share);
          let least = Number.POSITIVE_INFINITY;
          for (const each of there) if (mayLieNear(each, p)) least = Math.min(least, away(each, p));
          worst = Math.max(worst, least);
          count++;
        }
    }
    expect(count).toBeGreaterThan(200);
    expect(worst).toBeLessThan(0.001);
  });
});

test('what goes on is one line, which way ever its parts run', () => {
  const parts = [
    polyline([point(0, 0), point(10, 0)]),
    // From its far end back, as the second half of a swag runs.
    openPath([arc(point(20, 0), 10, 0, Math.PI)]),
    polyline([point(30, 0), point(30, 8)]),
    polyline([point(90, 0), point(95, 0)]),
  ];
  const text = writeDxf(
    drawingOf({ stitch: parts.map((path) => ({ kind: 'path', path, role: 'stitch', stroke: BLACK })) }),
  );
  const [long, short, ...none] = parse(text).entities as IPolylineEntity[];
  expect(none).toEqual([]);
  // Half a circle from 0 by the left: written in two quarters, turned clockwise over the top.
  expect(long!.vertices.map(({ x, y }) => [x, Math.round(1e6 * y) / 1e6])).toEqual([
    [0, 0],
    [10, 0],
    [20, 10],
    [30, 0],
    [30, 8],
  ]);
  expect(long!.vertices.map((v) => v.bulge ?? 0)).toEqual([
    0,
    expect.closeTo(-Math.tan(Math.PI / 8), 9),
    expect.closeTo(-Math.tan(Math.PI / 8), 9),
    0,
    0,
  ]);
  expect(short!.vertices.length).toBe(2);
});

test('a whole circle comes round, and its parts are less than half of it', () => {
  const circle = { ...openPath([arc(point(5, 7), 3, 1, 2 * Math.PI)]), closed: true };
  const [read] = parse(writeDxf(drawingOf({ marks: [{ kind: 'path', path: circle, stroke: BLACK }] })))
    .entities as IPolylineEntity[];
  expect(read!.shape).toBe(true);
  expect(read!.layer).toBe('MARKS');
  // A third of a circle: tan 30°.
  expect(read!.vertices.map((v) => v.bulge)).toEqual(Array(3).fill(expect.closeTo(1 / Math.sqrt(3), 9)));
  for (const { x, y } of read!.vertices) expect(Math.hypot(x - 5, y - 7)).toBeCloseTo(3, 8);
});

test('it says that it is release 12 in millimetres, and names its layers', () => {
  const { header, tables, entities } = parse(
    writeDxf(drawingNamed('a wreath'), { without: ['template', 'notes', 'marks'] }),
  );
  // Of $INSUNITS in later releases: 4 is millimetres.
  expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4 });
  const names = Object.keys(tables.layer.layers);
  expect(new Set(entities.map((e) => e.layer))).toEqual(new Set(names));
  expect(names).toContain('STITCH');
  expect(names.filter((name) => name.startsWith('GHOST'))).toEqual([]);
  for (const name of names) expect(name).toMatch(/^[A-Z0-9$_-]{1,31}$/);
});
