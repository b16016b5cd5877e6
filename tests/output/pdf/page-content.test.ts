import { describe, expect, it } from 'vitest';
import { line, openPath, point, polyline, turn } from '../../../src/geometry/index.ts';
import type { PageContent } from '../../../src/output/pdf/index.ts';
import { NO_CORRECTION, openContent } from '../../../src/output/pdf/page-content.ts';
import { fitText, typefacesOf, wrapText } from '../../../src/output/pdf/typeface.ts';
import { FONTS } from './read-back.ts';

const faces = typefacesOf(FONTS);
const INCH = 25.4;
const black = { width: INCH / 72, color: '#000000' };
const red = { width: INCH / 36, color: '#ff0000', dash: [INCH / 24, 0] };

const drawn = (draw: (content: PageContent) => void): string => {
  const content = openContent(faces, (text) => `<${text}>`, NO_CORRECTION);
  draw(content);
  return content.operators();
};

describe('page content', () => {
  it('is this text, byte by byte', () => {
    const text = drawn((content) => {
      content.path(openPath([line(point(0, 0), point(INCH, 2 * INCH))]), black);
      content.path(openPath([line(point(INCH, 0), point(0, 0))]), black);
      content.layer('stitch', () => content.path(openPath([line(point(0, 0), point(INCH, 0))]), red));
      content.area([polyline([point(0, 0), point(INCH, 0), point(0, INCH)], true)], '#0000ff');
      content.clipped({ minX: 0, minY: 0, maxX: INCH, maxY: INCH }, () =>
        content.placed(turn(Math.PI / 2), () =>
          content.path(openPath([line(point(0, 0), point(INCH, 0))]), black),
        ),
      );
      content.text({ text: 'ab', at: point(INCH, INCH), size: INCH, color: '#808080' });
      content.form({ name: 'X1' }, point(INCH, 0));
    });
    expect(text).toBe(
      [
        '1 j',
        '0 G 1 w 1 J [] 0 d',
        '0 0 m\n72 144 l',
        'S',
        '72 0 m\n0 0 l',
        'S',
        '/OC /stitch BDC',
        '1 0 0 RG 2 w 0 J [3 0] 0 d',
        '0 0 m\n72 0 l',
        'S',
        'EMC',
        '0 0 1 rg',
        '0 0 m\n72 0 l\n0 72 l\n0 0 l\nh',
        'f*',
        'q',
        '0 0 m 72 0 l 72 72 l 0 72 l h W n',
        '0 G 1 w 1 J [] 0 d',
        '0 0 m\n0 72 l',
        'S',
        'Q',
        '0.502 g',
        'BT /F1 1 Tf 72 0 0 72 72 72 Tm <ab> Tj ET',
        'q',
        '1 0 0 1 72 0 cm',
        '/X1 Do',
        'Q',
        '',
      ].join('\n'),
    );
  });

  it('draws a pattern of zeros as a solid line', () => {
    const text = drawn((c) => c.path(openPath([line(point(0, 0), point(1, 0))]), { ...black, dash: [0, 0] }));
    expect(text).toContain('1 J [] 0 d');
  });

  it('refuses colours and numbers that are none', () => {
    expect(() => drawn((c) => c.area([polyline([point(0, 0), point(1, 1)], true)], 'red'))).toThrow(/colour/);
    expect(() => drawn((c) => c.path(openPath([line(point(Number.NaN, 0), point(1, 1))]), black))).toThrow(
      /NaN/,
    );
  });

  it('keeps letters at their size in a small picture, and turns them with it', () => {
    const text = drawn((c) =>
      c.placed(
        turn(Math.PI / 2),
        () => c.text({ text: 'a', at: point(0, 0), size: INCH, color: '#000000' }),
        0.1,
      ),
    );
    expect(text).toContain('0 72 -72 0 0 0 Tm');
  });
});

describe('type', () => {
  it('has the advance widths of the font', () => {
    // DejaVu Sans 2.37, table hmtx: "n" 1298, "i" 569, space 651 of 2048 units (read from the file by a script of its own, not by fontkit).
    expect(faces.regular.width('n', 2048)).toBe(1298);
    expect(faces.regular.width('i n', 2048)).toBe(569 + 651 + 1298);
  });

  it('shows what the font lacks as a replacement mark, and controls as spaces', () => {
    expect(faces.regular.shown('5 ⅝ ″ ö')).toBe('5 ⅝ ″ ö');
    expect(faces.regular.shown('𓀀x')).toBe('\u{fffd}x');
    expect(faces.regular.shown('a\nb\u202ec')).toBe('a b c');
  });

  it('wraps at spaces, and breaks only a word that is too wide by itself', () => {
    const width = faces.regular.width('one two', 10);
    expect(wrapText(faces.regular, 'one two three', 10, width)).toEqual(['one two', 'three']);
    expect(wrapText(faces.regular, '  ', 10, width)).toEqual([]);
    const pieces = wrapText(faces.regular, 'a nnnnnnnnnnnnnnnnnnnn', 10, width);
    expect(pieces.join('')).toBe('annnnnnnnnnnnnnnnnnnn');
    for (const piece of pieces) expect(faces.regular.width(piece, 10)).toBeLessThanOrEqual(width);
    expect(wrapText(faces.regular, 'nn', 10, 0.001)).toEqual(['n', 'n']);
  });

  it('cuts a line that is too long and says so', () => {
    expect(fitText(faces.bold, 'short', 10, 1000)).toBe('short');
    const cut = fitText(faces.bold, 'a title that is much too long', 10, 80);
    expect(cut).toMatch(/^a title.*…$/);
    expect(faces.bold.width(cut, 10)).toBeLessThanOrEqual(80);
  });
});
