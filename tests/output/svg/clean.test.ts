/** An SVG for cutting machines: lines joined, no words, and as much line as is stitched, measured by readers of others. */

import { DOMParser } from '@xmldom/xmldom';
import { svgPathProperties } from 'svg-path-properties';
import { expect, test } from 'vitest';
import { drawPlan, SHEET, styled, wholeScope } from '../../../src/drawing/index.ts';
import { pathLength } from '../../../src/geometry/index.ts';
import { picture } from '../../../src/jobs/picture.ts';
import { WRITERS } from '../../../src/output/writers/index.ts';
import { partOf } from '../../support/part-of.ts';
import { FONTS } from '../pdf/read-back.ts';
import { readPath } from './read-path.ts';

const PART = partOf(
  'template: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\nchannels: { outward: [1/4], inward: [1/4, 1/8] }\nfills: { swag: leaves }\n',
);

const SVG = WRITERS.find(({ ending }) => ending === 'svg')!;
const MEANS = { deflate: (bytes: Uint8Array) => bytes, fonts: async () => FONTS };

test('it holds what is stitched, joined, and nothing else', async () => {
  const { bytes } = await picture(PART, { writer: SVG, transfer: { kind: 'clean' } }, MEANS);
  const root = new DOMParser().parseFromString(String(bytes), 'image/svg+xml').documentElement!;
  expect(root.getElementsByTagName('text').length).toBe(0);
  const { layers } = styled(drawPlan(PART.design, PART.plan, wholeScope(PART.design)).drawing, SHEET);
  let most = 0;
  for (const group of Array.from(root.getElementsByTagName('g'))) {
    const id = group.getAttribute('id') as keyof typeof layers;
    const lengths = Array.from(group.getElementsByTagName('path')).map((path) =>
      new svgPathProperties(path.getAttribute('d')!).getTotalLength(),
    );
    const stitched = ['stitch', 'channel', 'fill'].includes(id) ? layers[id] : [];
    expect(lengths.length > 0, id).toBe(stitched.length > 0);
    const wanted = stitched.reduce(
      (sum, item) => sum + (item.kind === 'path' ? pathLength(item.path) : 0),
      0,
    );
    const found = lengths.reduce((a, b) => a + b, 0);
    most = Math.max(most, wanted);
    // What that package makes of arcs is off by up to 5e-6 of the length.
    expect(Math.abs(found - wanted), `${id}: ${found} for ${wanted}`).toBeLessThan(0.001 + 5e-6 * wanted);
    // Three swags that touch are one line, and so is each channel line of all of them that touch.
    if (id === 'stitch') expect(lengths.length).toBe(1);
    if (id === 'channel') expect(lengths.length).toBeLessThan(stitched.length);
  }
  expect(most).toBeGreaterThan(1000);
});

test('mirrored, it is turned over left for right and nothing else', async () => {
  const pointsOf = async (mirrored: boolean) => {
    const { bytes } = await picture(PART, { writer: SVG, transfer: { kind: 'clean', mirrored } }, MEANS);
    const root = new DOMParser().parseFromString(String(bytes), 'image/svg+xml').documentElement!;
    return Array.from(root.getElementsByTagName('path'))
      .flatMap((path) => readPath(path.getAttribute('d')!).flat())
      .map((piece) => ({ ...piece, turn: piece.kind === 'arc' ? piece.turn : 0 }));
  };
  const [plain, over] = [await pointsOf(false), await pointsOf(true)];
  expect(plain.length).toBeGreaterThan(50);
  expect(over.length).toBe(plain.length);
  plain.forEach(({ from, to, turn }, i) => {
    const other = over[i]!;
    for (const [a, b] of [
      [from, other.from],
      [to, other.to],
    ] as const) {
      expect(b[0]).toBeCloseTo(-a[0], 6);
      expect(b[1]).toBeCloseTo(a[1], 6);
    }
    expect(other.turn).toBeCloseTo(-turn, 3);
  });
});
