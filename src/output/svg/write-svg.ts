/**
 * A drawing as an SVG file at true size: for people who look, and for programs that measure.
 *
 * Sizes are in mm and so is the viewBox, one group stands for each layer under the layer's own id, every
 * element has its own line, and the same drawing gives the same bytes. There are no scripts and
 * nothing from elsewhere: no links, style sheets or fonts.
 */

import type {
  Facts,
  LayerId,
  Stroke,
  StyledArea,
  StyledDrawing,
  StyledItem,
  StyledPath,
  StyledText,
} from '../../drawing/index.ts';
import { boxHeight, boxWidth } from '../../geometry/index.ts';
import { shownLayers, type ViewOptions, viewBox } from '../view/index.ts';
import { escapeXml } from './escape.ts';
import { formatNumber } from './number.ts';
import { pathData } from './path-data.ts';

export interface SvgOptions extends ViewOptions {
  /** A sentence or two about the drawing, for readers who cannot see it. */
  readonly description?: string;
}

/** The text of the file. Throws when the drawing holds a number that is not finite or a path with a hole. */
export const writeSvg = (drawing: StyledDrawing, options: SvgOptions = {}): string => {
  const box = viewBox(drawing, options);
  const width = formatNumber(boxWidth(box), SIZE_DECIMALS);
  const height = formatNumber(boxHeight(box), SIZE_DECIMALS);
  const left = formatNumber(box.minX, SIZE_DECIMALS);
  const top = formatNumber(-box.maxY, SIZE_DECIMALS);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    element(0, 'svg', {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `${left} ${top} ${width} ${height}`,
      fill: 'none',
      'stroke-linejoin': 'round',
      // Black lines would be lost on a dark page; unlike a rectangle, this is nothing that a cutter would cut.
      style: `background: ${drawing.ground ?? '#ffffff'}`,
    }),
    element(1, 'title', {}, drawing.title),
    element(1, 'desc', {}, [options.description, UNITS].filter((x) => x !== undefined).join(' ')),
    ...shownLayers(options).flatMap((id) => layerLines(id, drawing.layers[id])),
    '</svg>',
  ];
  return `${lines.join('\n')}\n`;
};

/** The page's own size needs no more than a micrometre; width and viewBox agree to the last digit. */
const SIZE_DECIMALS = 3;

const UNITS = 'All coordinates are in millimetres at true size; y points down.';

/**
 * Elements that are put together at once. A text that is built piece by piece stays a tree of its pieces until it
 * is joined, and the trees of half a million fill lines take ten times the room of the file.
 */
const AT_ONCE = 500;

const layerLines = (id: LayerId, items: readonly StyledItem[]): string[] => {
  const lines: string[] = [];
  for (let i = 0; i < items.length; i += AT_ONCE) {
    const some = items.slice(i, i + AT_ONCE).flatMap(itemLines);
    if (some.length > 0) lines.push(some.join('\n'));
  }
  return [element(1, 'g', { id }), ...lines, '  </g>'];
};

const itemLines = (item: StyledItem): string[] => {
  switch (item.kind) {
    case 'path':
      return pathLines(item);
    case 'area':
      return areaLines(item);
    case 'text':
      return textLines(item);
    default:
      return item satisfies never;
  }
};

const pathLines = (item: StyledPath): string[] => {
  const d = pathData(item.path);
  if (d === '') return [];
  return [element(2, 'path', { ...dataAttributes(item.facts), ...strokeAttributes(item.stroke), d }, '')];
};

const areaLines = (item: StyledArea): string[] => {
  const d = item.loops
    .map(pathData)
    .filter((x) => x !== '')
    .join(' ');
  if (d === '') return [];
  const paint = { fill: item.color, 'fill-rule': 'evenodd' };
  return [element(2, 'path', { ...dataAttributes(item.facts), ...paint, d }, '')];
};

/** The first is what the PDF embeds and this program's pictures use; the second is whatever the reader has. */
const FONTS = 'DejaVu Sans, sans-serif';

const textLines = (item: StyledText): string[] => {
  if (item.text.trim() === '') return [];
  const x = formatNumber(item.at.x);
  const y = formatNumber(-item.at.y);
  // SVG turns clockwise for positive degrees, the drawing counterclockwise.
  const degrees = formatNumber((-item.angle * 180) / Math.PI);
  return [
    element(
      2,
      'text',
      {
        x,
        y,
        'font-family': FONTS,
        'font-size': formatNumber(item.size),
        ...(item.bold ? { 'font-weight': 'bold' } : {}),
        ...(item.align === 'start' ? {} : { 'text-anchor': item.align }),
        ...(degrees === '0' ? {} : { transform: `rotate(${degrees} ${x} ${y})` }),
        fill: item.color,
      },
      item.text,
    ),
  ];
};

/** Dashes keep flat ends, so that the gaps stay as long as they are said to be; solid lines end round. */
const strokeAttributes = (stroke: Stroke): Record<string, string> => ({
  stroke: stroke.color,
  'stroke-width': formatNumber(stroke.width),
  ...(stroke.dash && stroke.dash.length > 0
    ? { 'stroke-dasharray': stroke.dash.map((x) => formatNumber(x)).join(' ') }
    : { 'stroke-linecap': 'round' }),
});

const dataAttributes = (facts: Facts = {}): Record<string, string> =>
  Object.fromEntries(Object.entries(facts).map(([name, value]) => [`data-${factName(name)}`, value]));

/** `centreMark` becomes `centre-mark`, as scripts that read `dataset` expect. The names are the program's own. */
const factName = (name: string): string => {
  const kebab = name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
  if (!/^[a-z][a-z0-9-]*$/.test(kebab)) throw new Error(`A fact cannot be named ${JSON.stringify(name)}`);
  return kebab;
};

/** An opening tag; a whole element when there is content; a tag that closes itself when that is empty. */
const element = (
  depth: number,
  name: string,
  attributes: Readonly<Record<string, string>>,
  content?: string,
): string => {
  const pairs = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(value)}"`);
  const open = `${'  '.repeat(depth)}<${name}${pairs.join('')}`;
  if (content === undefined) return `${open}>`;
  return content === '' ? `${open}/>` : `${open}>${escapeXml(content)}</${name}>`;
};
