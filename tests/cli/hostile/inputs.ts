/** Files that mean harm, or look as if they did: plans, templates, drawings and pictures, made as they are needed. */

import { crc32, deflateSync } from 'node:zlib';

const times = (n: number, make: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => make(i)).join('');

/** A plan of a strip that fits, with something put in place of its length, and something added. */
export const strip = (length: string, more = '', template = 'baluster'): string =>
  `template: ${template}\nlayout:\n  strip: { length: ${length}, width: 5 }\n${more}`;

/** So many parts in rows: strips, or blocks in frames, each of them in many places. */
export const strips = (count: number): string =>
  `template: [baluster, finial, newel]\nparts:\n${times(
    count,
    (i) =>
      `  strip ${i}: { at: [0, ${8 * i - 160}], layout: { strip: { length: 40, width: 6 } }, channels: { outward: [1/4] } }\n`,
  )}`;
export const crowd = (rows: number, places: number, more = ''): string =>
  `template: finial\nparts:\n${times(
    rows,
    (i) =>
      `  row ${i}: { at: [${times(places, (k) => `[${6 * k - 297}, ${6 * i - 117}],`)}], layout: { frame: { block: 2, within: 6, corners: meet } }${more} }\n`,
  )}`;

export const border = (
  size: number,
  width: number,
  more = '',
  template = '[baluster, finial, newel]',
): string =>
  `template: ${template}\nlayout:\n  border: { width: ${width}, inner: { top: ${size}, right: ${size}, bottom: ${size}, left: ${size} } }\n${more}`;

export const frame = (inside: string, template = 'baluster'): string =>
  `template: ${template}\nlayout: { frame: { ${inside} } }\n`;

/** Ten lists of ten of ten …: a few lines that stand for a thousand million values. */
export const explodingAnchors = (): string =>
  times(
    9,
    (i) => `a${i}: &a${i} [${Array.from({ length: 10 }, () => (i === 0 ? 'x' : `*a${i - 1}`)).join(', ')}]\n`,
  );

export const longKey = (): string => `? ${'k'.repeat(100_000)}\n: [${'1,'.repeat(48_000)}1]\n`;

/** `n` arcs in a row, each a section. */
export const scallops = (n: number): string =>
  `units: mm\nedge:\n  - start: [0, 0]\n${times(n, (i) => `  - arc: { to: [${(i + 1) * 10}, 0], rise: 2 }\n`)}`;

/** `n` lines up and down, each a section. */
export const zigzag = (n: number, step = 2): string =>
  `units: mm\nedge:\n  - start: [0, 0]\n${times(n, (i) => `  - line: { to: [${(i + 1) * step}, ${((i + 1) % 2) * step}] }\n`)}`;

/** A template of path data in mm. */
export const pathEdge = (d: string): string => `edge: { svg: "${d}", unit: mm }\n`;

/** Curves whose handles lie a kilometre off, there and back. */
export const farCurves = (n: number): string => `M0 0${times(n, () => ' C9e5 9e5-9e5 9e5 1 0')}`;

export const strokes = (n: number): string => `M0 0${times(n, (i) => `l.2 .${i % 3}`)}`;

/** Measured points half a millimetre apart, and a last one two metres off. */
export const unevenPoints = (): string =>
  `units: mm\nedge: { points: [${times(299, (i) => `[${(i * 0.51).toFixed(2)}, ${(i * 0.01).toFixed(2)}], `)}[2000, 3]] }\n`;

const OUTLINE = '<path d="M10 10 L150 10 L150 40 Q80 90 10 40 Z"/>';

export const svg = (body = OUTLINE, before = ''): string =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">${body}</svg>`;

/** A billion laughs, ten to the ninth. */
export const laughs = (): string =>
  svg(
    '<text>&l9;</text>',
    `<!DOCTYPE svg [<!ENTITY l0 "ha">${times(9, (i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`)}]>`,
  );

/** A drawing of several paths, each of thousands of curves that run off to a kilometre and back. */
export const farDrawing = (): string =>
  svg(`<path d="${'M0 0C9e5 9e5-9e5 9e5 1 0'.repeat(3900)}"/>`.repeat(12));

const chunk = (name: string, body: Uint8Array): Uint8Array => {
  const whole = new Uint8Array(12 + body.length);
  const view = new DataView(whole.buffer);
  view.setUint32(0, body.length);
  for (let i = 0; i < 4; i++) whole[4 + i] = name.charCodeAt(i);
  whole.set(body, 8);
  view.setUint32(8 + body.length, crc32(whole.subarray(4, 8 + body.length)));
  return whole;
};

export interface Png {
  readonly width: number;
  readonly height: number;
  readonly bits?: number;
  /** The rows as they are before compression; all black unless given. */
  readonly rows?: Uint8Array;
  /** Chunks before the pixels. */
  readonly before?: readonly (readonly [name: string, body: Uint8Array])[];
}

/** A PNG in greys, 300 dots to the inch, with every checksum right (PNG, W3C Recommendation 2003, chapter 11). */
export const png = ({ width, height, bits = 8, rows, before = [] }: Png): Uint8Array => {
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head[8] = bits;
  const density = new Uint8Array(9);
  new DataView(density.buffer).setUint32(0, 11_811);
  new DataView(density.buffer).setUint32(4, 11_811);
  density[8] = 1;
  const pixels = rows ?? new Uint8Array(height * (1 + Math.ceil((width * bits) / 8)));
  return Buffer.concat([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', head),
    chunk('pHYs', density),
    ...before.map(([name, body]) => chunk(name, body)),
    chunk('IDAT', deflateSync(pixels, { level: 1 })),
    chunk('IEND', new Uint8Array(0)),
  ]);
};

/** A chunk of a hundred bytes that unpacks to a hundred million, in the place of a colour profile. */
export const packedProfile = (): readonly [string, Uint8Array] => [
  'iCCP',
  Buffer.concat([Buffer.from('x\0\0', 'latin1'), deflateSync(new Uint8Array(100_000_000), { level: 1 })]),
];

/** A frame header of 4096 by 4096 pixels, an end, and nothing between (ITU-T T.81, annex B). */
export const emptyJpeg = (): Uint8Array =>
  Uint8Array.of(
    ...[
      0xff, 0xd8, 0xff, 0xc0, 0, 0x11, 8, 0x10, 0, 0x10, 0, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1, 0xff, 0xd9,
    ],
  );
