import { createRequire } from 'node:module';
import { crc32 } from 'node:zlib';
import { createCanvas, GlobalFonts, loadImage } from '@napi-rs/canvas';
import { beforeAll, describe, expect, it } from 'vitest';
import type { StyledDrawing, StyledItem, StyledText } from '../../../src/drawing/index.ts';
import { arc, arcByRise, closedPath, openPath, point, polyline } from '../../../src/geometry/index.ts';
import {
  type Canvas2D,
  type PictureOptions,
  paintDrawing,
  planPicture,
  withPhysicalSize,
} from '../../../src/output/png/index.ts';
import { BLACK, drawingOf } from '../svg/fixture.ts';

beforeAll(() => {
  const require = createRequire(import.meta.url);
  GlobalFonts.registerFromPath(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'), 'DejaVu Sans');
});

/** Darkness (0 white, 1 black) of each pixel of the drawing's picture, read back from the encoded file. */
const render = async (drawing: StyledDrawing, options: PictureOptions) => {
  const plan = planPicture(drawing, options);
  if (!plan.ok) throw new Error(plan.problems[0]?.message);
  const { picture } = plan;
  const canvas = createCanvas(picture.width, picture.height);
  const context: Canvas2D = canvas.getContext('2d');
  paintDrawing(context, drawing, picture, options);
  const image = await loadImage(canvas.toBuffer('image/png'));
  const back = createCanvas(image.width, image.height);
  back.getContext('2d').drawImage(image, 0, 0);
  const { data, width, height } = back.getContext('2d').getImageData(0, 0, image.width, image.height);
  const dark = (x: number, y: number): number => 1 - data[4 * (y * width + x)]! / 255;
  /** The ink's amount (mm²) and its middle (mm, in the drawing's coordinates) within a box of the drawing. */
  const ink = (minX: number, minY: number, maxX: number, maxY: number) => {
    let sum = 0;
    let sx = 0;
    let sy = 0;
    for (let j = 0; j < height; j++)
      for (let i = 0; i < width; i++) {
        const x = picture.box.minX + (i + 0.5) / picture.pixelsPerMm;
        const y = picture.box.maxY - (j + 0.5) / picture.pixelsPerMm;
        if (x < minX || x > maxX || y < minY || y > maxY) continue;
        const d = dark(i, j);
        sum += d;
        sx += d * x;
        sy += d * y;
      }
    return { area: sum / picture.pixelsPerMm ** 2, x: sx / sum, y: sy / sum };
  };
  return { picture, width, height, ink };
};

const stitched = (...items: StyledItem[]): StyledDrawing => drawingOf({ stitch: items });
const all = [-1e6, -1e6, 1e6, 1e6] as const;

describe('a picture of a drawing', () => {
  it('has as many pixels as its size at the resolution asked for', () => {
    // 50.8 mm of line with a margin of 25.4 mm, less half the line's width: (50.8 + 0.5 + 50.8)/25.4 in at 100.
    const line = polyline([point(0, 0), point(50.8, 0)]);
    const plan = planPicture(stitched({ kind: 'path', path: line, stroke: BLACK }), {
      margin: 25.4,
      dotsPerInch: 100,
    });
    expect(plan.ok && [plan.picture.width, plan.picture.height]).toEqual([402, 202]);
  });

  it('has exactly the width in pixels asked for', () => {
    const line = polyline([point(0, 0), point(77.7, 33.3)]);
    const plan = planPicture(stitched({ kind: 'path', path: line, stroke: BLACK }), { widthInPixels: 1234 });
    expect(plan.ok && plan.picture.width).toBe(1234);
  });

  it('puts ink where the drawing says, within 0.02 mm at 300 dots per inch, on both axes', async () => {
    // Two 2 mm dots, 50 mm and 40 mm apart: distances that are no whole number of pixels.
    const dot = (x: number, y: number): StyledItem => ({
      kind: 'area',
      loops: [closedPath([arc(point(x, y), 1, 0, 2 * Math.PI)])],
      color: '#000000',
    });
    const { ink } = await render(stitched(dot(10, 20), dot(60, 60)), { dotsPerInch: 300 });
    const first = ink(5, 15, 15, 25);
    const second = ink(55, 55, 65, 65);
    expect(Math.abs(first.x - 10)).toBeLessThan(0.02);
    expect(Math.abs(first.y - 20)).toBeLessThan(0.02);
    expect(Math.abs(second.x - first.x - 50)).toBeLessThan(0.02);
    expect(Math.abs(second.y - first.y - 40)).toBeLessThan(0.02);
    // A disc's area is π·r².
    expect(Math.abs(first.area - Math.PI)).toBeLessThan(0.03);
  });

  it('turns arcs the way they run', async () => {
    // Counterclockwise from right to left passes over the top, clockwise under the bottom. The middle of a
    // half circle's line is 2r/π from its centre (elementary).
    for (const sign of [1, -1]) {
      const half = openPath([arc(point(30, 30), 20, 0, sign * Math.PI)]);
      const { ink } = await render(stitched({ kind: 'path', path: half, stroke: BLACK }), {
        dotsPerInch: 200,
      });
      const found = ink(...all);
      // A rasteriser counts a pixel's cover in coarse steps, which moves the middle of a thin line by a pixel.
      expect(Math.abs(found.x - 30)).toBeLessThan(0.1);
      expect(Math.abs(found.y - (30 + (sign * 40) / Math.PI))).toBeLessThan(0.2);
      // Length times width, and the two round ends together one disc.
      expect(Math.abs(found.area - (Math.PI * 20 * 0.5 + Math.PI * 0.25 ** 2))).toBeLessThan(0.6);
    }
  });

  it('draws a nearly straight arc where it is', async () => {
    // r = (c² + 4h²)/(8h): a rise of 0.1 mm over 100 mm is a radius of 12.5 m. Its mean height over the chord is 2h/3.
    const flat = openPath([arcByRise(point(0, 0), point(100, 0), 0.1)]);
    const { ink } = await render(stitched({ kind: 'path', path: flat, stroke: BLACK }), { dotsPerInch: 300 });
    const found = ink(...all);
    expect(Math.abs(found.y - 0.0667)).toBeLessThan(0.01);
    expect(Math.abs(found.x - 50)).toBeLessThan(0.01);
    expect(Math.abs(found.area - 50.2)).toBeLessThan(0.4);
  });

  it('leaves holes in areas, and dashes in lines', async () => {
    const outer = polyline([point(0, 0), point(20, 0), point(20, 20), point(0, 20)], true);
    const inner = polyline([point(5, 5), point(15, 5), point(15, 15), point(5, 15)], true);
    const ring = await render(stitched({ kind: 'area', loops: [outer, inner], color: '#000000' }), {});
    expect(Math.abs(ring.ink(...all).area - 300)).toBeLessThan(2);
    const line = polyline([point(0, 0), point(100, 0)]);
    const dashed = await render(
      stitched({ kind: 'path', path: line, stroke: { width: 1, color: '#000000', dash: [3, 1] } }),
      { dotsPerInch: 200 },
    );
    expect(Math.abs(dashed.ink(...all).area - 75)).toBeLessThan(2);
  });

  it('stands texts on their anchor, aligned and turned', async () => {
    const word = (more: Partial<StyledText>): StyledText => ({
      kind: 'text',
      text: 'HHHHHH',
      at: point(50, 50),
      size: 10,
      align: 'start',
      angle: 0,
      color: '#000000',
      ...more,
    });
    const middleOf = async (more: Partial<StyledText>) =>
      (await render(drawingOf({ notes: [word(more)] }), { dotsPerInch: 100 })).ink(...all);
    const start = await middleOf({});
    const middle = await middleOf({ align: 'middle' });
    const end = await middleOf({ align: 'end' });
    const turned = await middleOf({ angle: Math.PI / 2 });
    expect(Math.abs(middle.x - 50)).toBeLessThan(0.2);
    expect(Math.abs(start.x - 50 + (end.x - 50))).toBeLessThan(0.3);
    expect(start.x).toBeGreaterThan(60);
    // A capital H of DejaVu Sans is 0.729 of the size high (its OS/2 sCapHeight, 1493 of 2048), standing on the base line.
    expect(Math.abs(start.y - (50 + 7.29 / 2))).toBeLessThan(0.2);
    expect(Math.abs(turned.x - (50 - 7.29 / 2))).toBeLessThan(0.2);
    expect(Math.abs(turned.y - start.x)).toBeLessThan(0.2);
  });

  it('leaves out layers, and keeps thin lines visible in small pictures', async () => {
    const drawing = drawingOf({
      stitch: [{ kind: 'path', path: polyline([point(0, 0), point(900, 0)]), stroke: BLACK }],
      fill: [
        {
          kind: 'area',
          loops: [polyline([point(0, 9), point(9, 9), point(9, 18)], true)],
          color: '#000000',
        },
      ],
    });
    const { ink } = await render(drawing, { widthInPixels: 200, without: ['fill'] });
    expect(ink(0, 5, 20, 30).area).toBe(0);
    expect(ink(...all).area).toBeGreaterThan(900);
  });
});

describe('limits of a picture', () => {
  const huge = stitched({ kind: 'path', path: polyline([point(0, 0), point(3000, 3000)]), stroke: BLACK });

  it('refuses more than a hundred million pixels, and says what would do', () => {
    const plan = planPicture(huge, { dotsPerInch: 300 });
    if (plan.ok) throw new Error('should be refused');
    expect(plan.problems[0]?.code).toBe('picture-too-large');
    const most = Number(/at most (\d+) dots per inch/.exec(plan.problems[0]?.hint ?? '')?.[1]);
    expect(planPicture(huge, { dotsPerInch: most }).ok).toBe(true);
    expect(planPicture(huge, { dotsPerInch: most * 1.02 }).ok).toBe(false);
  });

  it('takes a resolution that serves when none is asked for', () => {
    const small = stitched({ kind: 'path', path: polyline([point(0, 0), point(50.3, 0)]), stroke: BLACK });
    const usual = planPicture(small);
    expect(usual.ok && usual.picture.pixelsPerMm * 25.4).toBeCloseTo(150, 9);
    const plan = planPicture(huge);
    expect(plan.ok && plan.picture.width).toBe(6000);
  });

  it('refuses a side longer than canvases have', () => {
    const long = stitched({ kind: 'path', path: polyline([point(0, 0), point(9000, 0)]), stroke: BLACK });
    const plan = planPicture(long, { widthInPixels: 40_000 });
    if (plan.ok) throw new Error('should be refused');
    const most = Number(/at most (\d+) width/.exec(plan.problems[0]?.hint ?? '')?.[1]);
    expect(planPicture(long, { widthInPixels: most }).ok).toBe(true);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d dots per inch', (dotsPerInch) => {
    expect(planPicture(huge, { dotsPerInch }).ok).toBe(false);
  });
});

describe('the size that a PNG says it has', () => {
  it('is a pHYs chunk that an image library still reads the picture with', async () => {
    const png = withPhysicalSize(createCanvas(3, 2).toBuffer('image/png'), 300 / 25.4);
    const at = Buffer.from(png).indexOf('pHYs');
    // 300 dots per inch are 11811.02 per metre; the header's chunk ends at byte 33.
    expect(at).toBe(37);
    expect(Buffer.from(png).readUInt32BE(at + 4)).toBe(11811);
    expect(Buffer.from(png).readUInt32BE(at + 8)).toBe(11811);
    expect(png[at + 12]).toBe(1);
    expect(Buffer.from(png).readUInt32BE(at + 13)).toBe(crc32(png.subarray(at, at + 13)));
    const image = await loadImage(Buffer.from(png));
    expect([image.width, image.height]).toEqual([3, 2]);
  });

  it('is refused for what is no PNG', () => {
    expect(() => withPhysicalSize(new Uint8Array(100), 10)).toThrow('no PNG');
    expect(() => withPhysicalSize(new Uint8Array(0), 10)).toThrow('no PNG');
  });
});
