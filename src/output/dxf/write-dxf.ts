/**
 * A drawing's lines as a DXF file (release 12, AC1009, in ASCII), for cutting machines and drawing programs: one layer
 * for each role, lengths in mm, y up as in the drawing. No words.
 *
 * Release 12 is what every reader of DXF understands. It has no unit of its own: that of later releases is named beside
 * it, which older readers pass over, and a comment says it to people. Lines that follow on one another are one POLYLINE,
 * and its arcs are arcs: a VERTEX carries the bulge of what follows it, the tangent of a quarter of the swept angle
 * (group 42), positive to the left.
 */

import { joinedLines, type StyledDrawing, type StyledItem } from '../../drawing/index.ts';
import { closedPath, type Path, type Point, pieceAt } from '../../geometry/index.ts';
import { formatNumber } from '../svg/index.ts';
import { shownLayers, type ViewOptions } from '../view/index.ts';

/** The text of the file. Throws when the drawing holds a number that is not finite. */
export const writeDxf = (drawing: StyledDrawing, options: Pick<ViewOptions, 'without'> = {}): string => {
  const layers = new Map<string, Path[]>();
  for (const id of shownLayers(options))
    for (const item of linesOf(drawing.layers[id])) {
      const name = layerName(item.role ?? id);
      const known = layers.get(name);
      if (known) known.push(item.path);
      else layers.set(name, [item.path]);
    }
  const names = [...layers.keys()];
  const groups: Group[] = [
    [999, 'All lengths are in millimetres, at true size'],
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, MILLIMETRES],
    ]),
    ...section('TABLES', [
      ...table('LTYPE', [
        [
          [2, 'CONTINUOUS'],
          [70, 0],
          [3, 'Solid line'],
          [72, 65],
          [73, 0],
          [40, 0],
        ],
      ]),
      ...table(
        'LAYER',
        names.map((name, i) => [
          [2, name],
          [70, 0],
          [62, COLORS[i % COLORS.length]!],
          [6, 'CONTINUOUS'],
        ]),
      ),
    ]),
    ...section('ENTITIES', []).slice(0, -1),
  ];
  // The entities of a filled border are many thousands: they become text one by one.
  const entities = [...layers].flatMap(([name, paths]) => paths.map((path) => written(polyline(path, name))));
  return `${[written(groups), ...entities, written([ENDSEC, [0, 'EOF']])].join('')}`;
};

/** A group's code, and its value. */
type Group = readonly [code: number, value: string | number];

/** Of $INSUNITS. */
const MILLIMETRES = 4;

/** By the numbers of DXF: white or black, blue, red, green, magenta, cyan; yellow is lost on white. */
const COLORS = [7, 5, 1, 3, 6, 4] as const;

const ENDSEC: Group = [0, 'ENDSEC'];

const section = (name: string, groups: readonly Group[]): Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...groups,
  ENDSEC,
];

const table = (name: string, entries: readonly (readonly Group[])[]): Group[] => [
  [0, 'TABLE'],
  [2, name],
  [70, entries.length],
  ...entries.flatMap((entry): Group[] => [[0, name], ...entry]),
  [0, 'ENDTAB'],
];

/** An area is its outline. */
const linesOf = (items: readonly StyledItem[]) => [
  ...joinedLines(items),
  ...items.flatMap((item) =>
    item.kind === 'area'
      ? item.loops.map(({ pieces }) => ({ role: item.role, path: closedPath(pieces) }))
      : [],
  ),
];

/** `startLine` becomes `START-LINE`: release 12 takes capitals, digits, dashes and a few more signs. */
const layerName = (role: string): string => role.replace(/[A-Z]/g, (c) => `-${c}`).toUpperCase();

/** Larger arcs are written in parts, because some readers take no bulge beyond a half circle. */
const LARGEST_SWEEP = (2 * Math.PI) / 3;

const polyline = ({ pieces, closed }: Path, layer: string): Group[] => {
  const vertices: { at: Point; bulge: number }[] = [];
  for (const piece of pieces) {
    const parts = piece.kind === 'arc' ? Math.max(1, Math.ceil(Math.abs(piece.sweep) / LARGEST_SWEEP)) : 1;
    const bulge = piece.kind === 'arc' ? Math.tan(piece.sweep / parts / 4) : 0;
    for (let i = 0; i < parts; i++) vertices.push({ at: pieceAt(piece, i / parts), bulge });
  }
  if (!closed && pieces.length > 0) vertices.push({ at: pieces.at(-1)!.to, bulge: 0 });
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    [10, '0'],
    [20, '0'],
    [30, '0'],
    [70, closed ? 1 : 0],
    ...vertices.flatMap(({ at, bulge }): Group[] => [
      [0, 'VERTEX'],
      [8, layer],
      [10, formatNumber(at.x)],
      [20, formatNumber(at.y)],
      [30, '0'],
      ...(bulge === 0 ? [] : [[42, formatNumber(bulge, BULGE_DECIMALS)] as const]),
    ]),
    [0, 'SEQEND'],
    [8, layer],
  ];
};

/** A bulge is twice the arc's height over its chord: over a chord of 1 m the last digit is 5e-10 mm. */
const BULGE_DECIMALS = 12;

/** Codes are set to the right in three places, as release 12 writes them. */
const written = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
