/** SVG drawings as outlines: published lengths, units, transforms, and drawings that mean harm. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { pathBox, pathLength, signedArea } from '../../src/geometry/index.ts';
import { svgOutline } from '../../src/trace/index.ts';
import type { SvgOutlineOptions } from '../../src/trace/svg-outline.ts';

/** A drawing of 1000 mm, a unit a mm. */
const drawing = (inside: string, root = 'width="1000mm" height="1000mm" viewBox="0 0 1000 1000"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`;

const outlineOf = (text: string, options: SvgOutlineOptions = {}) => {
  const made = svgOutline(text, options);
  if (!made.ok) throw new Error(describeProblem(made.problem));
  return made.outline;
};

const lengthOf = (text: string, options: SvgOutlineOptions = {}): number =>
  pathLength(outlineOf(text, options).path);

const problemOf = (text: string, options: SvgOutlineOptions = {}): string => {
  const made = svgOutline(text, options);
  return made.ok ? 'no problem' : describeProblem(made.problem);
};

describe('published lengths', () => {
  // rveciana/svg-path-properties, test/length.test.ts (ISC), whose own tolerance is 0.1.
  test.each([
    ['M100,200 C100,100 250,100 250,200 S400,300 400,200', 475.746],
    ['M200,300 Q400,50 600,300', 487.77],
    ['M0,100 Q50,-50 100,100 T200,100', 376.84],
    ['M50,20A50,50,0,0,0,150,20', 157.1],
    [
      'M240,100C290,100,240,225,290,200S290,75,340,50S515,100,390,150S215,200,90,150S90,25,140,50S140,175,190,200S190,100,240,100',
      1329.45,
    ],
  ])('%s', (d, length) => {
    expect(Math.abs(lengthOf(drawing(`<path d="${d}"/>`)) - length)).toBeLessThan(0.1);
  });

  test('a half circle of 50 is 50π to the last digit, turned and enlarged as it may be', () => {
    const half = '<path d="M50,20A50,50,0,0,0,150,20"/>';
    expect(lengthOf(drawing(half))).toBeCloseTo(50 * Math.PI, 9);
    expect(lengthOf(drawing(`<g transform="rotate(31) scale(2)">${half}</g>`))).toBeCloseTo(100 * Math.PI, 9);
    expect(lengthOf(drawing(`<g transform="scale(-1,1)">${half}</g>`))).toBeCloseTo(50 * Math.PI, 9);
  });

  test('a circle stretched to an ellipse of 30 and 20 has its perimeter', () => {
    // Perimeter 4aE(1 − b²/a²): 15.86543958929059 for half axes 3 and 2 (closed form, evaluated to 25 digits).
    const text = drawing('<circle cx="10" cy="10" r="10" transform="translate(50) scale(3 2)"/>');
    expect(Math.abs(lengthOf(text) - 158.6543958929059)).toBeLessThan(0.01);
  });
});

describe('real units', () => {
  test.each([
    ['width="1in" height="1in" viewBox="0 0 96 96"', 25.4, 'stated'],
    ['width="2.54cm" height="2.54cm" viewBox="0 0 96 96"', 25.4, 'stated'],
    ['width="72pt" height="72pt" viewBox="0 0 96 96"', 25.4, 'stated'],
    ['width="6pc" height="6pc" viewBox="0 0 96 96"', 25.4, 'stated'],
    ['width="96px" height="96px" viewBox="0 0 96 96"', 25.4, 'pixels'],
    ['width="96" height="96"', 25.4, 'pixels'],
    ['width="96mm" viewBox="0 0 96 96"', 96, 'stated'],
    // The narrower way counts: preserveAspectRatio is "meet" unless said otherwise.
    ['width="192mm" height="96mm" viewBox="0 0 96 96"', 96, 'stated'],
  ])('%s', (root, length, size) => {
    const outline = outlineOf(drawing('<path d="M0 0H96"/>', root));
    expect(pathLength(outline.path)).toBeCloseTo(length, 9);
    expect(outline.size).toBe(size);
  });

  test('a size that is not said is asked for, and a scale that is said counts', () => {
    const text = drawing('<path d="M0 0H96"/>', 'viewBox="0 0 96 96"');
    expect(problemOf(text)).toBe(
      'the drawing does not say how large it is; say what one unit of it measures, such as --scale 1mm',
    );
    expect(problemOf(drawing('<path d="M0 0H96"/>', 'width="100%" viewBox="0 0 96 96"'))).toContain(
      'how large',
    );
    expect(lengthOf(text, { unitMm: 2 })).toBeCloseTo(192, 9);
  });
});

describe('which path', () => {
  const two = '<g id="layer"><path id="short" d="M0 0H20"/><path id="long" d="M0 0H50"/></g>';

  test('the longest, or the one that is named', () => {
    expect(outlineOf(drawing(two)).id).toBe('long');
    expect(outlineOf(drawing(two), { id: 'short' }).id).toBe('short');
    expect(problemOf(drawing(two), { id: 'shirt' })).toBe(
      'no path of the drawing has the id "shirt"; expected one of short, long; did you mean "short"?',
    );
  });

  test('what is not seen is not taken, but by its name', () => {
    const hidden = `<defs><path id="in-defs" d="M0 0H900"/></defs><path id="off" style="display:none" d="M0 0H800"/>`;
    expect(outlineOf(drawing(hidden + two)).id).toBe('long');
    expect(outlineOf(drawing(hidden + two), { id: 'in-defs' }).id).toBe('in-defs');
  });

  test('of a path with several parts the longest is taken', () => {
    expect(lengthOf(drawing('<path d="M0 0H20 M0 50h70 m0 10h-30"/>'))).toBeCloseTo(70, 9);
  });

  test('nested transforms apply from the inside out', () => {
    // (10, 0) doubled is (20, 0), turned by 90° (0, 20), moved (5, 27).
    const text = drawing(
      '<g transform="translate(5 7)"><g transform="rotate(90)"><path d="M10 0h20" transform="scale(2)"/></g></g>',
    );
    const { path } = outlineOf(text);
    expect(path.pieces[0]!.from.x).toBeCloseTo(5, 9);
    expect(path.pieces[0]!.from.y).toBeCloseTo(-27, 9);
    expect(path.pieces[0]!.to.y).toBeCloseTo(-67, 9);
  });

  test('closed shapes run clockwise, with their area', () => {
    for (const d of ['M0 0H60V30H0Z', 'M0 0V30H60V0Z']) {
      const { path } = outlineOf(drawing(`<path d="${d}"/>`));
      expect(path.closed).toBe(true);
      expect(signedArea(path)).toBeCloseTo(-1800, 6);
    }
    const { path } = outlineOf(drawing('<rect x="5" y="6" width="60" height="30"/>'));
    expect(pathBox(path)).toEqual({ minX: 5, maxX: 65, minY: -36, maxY: -6 });
  });
});

describe('drawings that mean harm, or are none', () => {
  const deep = `${'<g>'.repeat(5000)}`;
  test.each([
    ['', 'this is no SVG drawing; expected a file that begins with <svg>'],
    ['hello', 'this is no SVG drawing; expected a file that begins with <svg>'],
    ['0\nSECTION\n2\nENTITIES\n0\nEOF\n', 'this is no SVG drawing; expected a file that begins with <svg>'],
    ['<html></html>', 'this is no SVG drawing; expected a file that begins with <svg>'],
    [drawing('<path d="M0 0 L1'), 'this is no well-formed SVG file'],
    [
      `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(50)}"><!ENTITY b "&a;&a;&a;&a;">]>${drawing('&b;')}`,
      'the drawing declares entities, which are not read; save it as plain SVG',
    ],
    [
      `<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>${drawing('&a;')}`,
      'the drawing declares entities, which are not read; save it as plain SVG',
    ],
    [drawing('&nothing;'), 'this is no well-formed SVG file'],
    [drawing(deep), 'the drawing holds too much'],
    [drawing('<script>while(true){}</script>'), 'the drawing has no path in it'],
    [drawing('<use href="other.svg#x"/>'), 'a copy (use) of a shape in another file is not followed'],
    [drawing('<path d="nonsense"/>'), 'path data must start with a move'],
    [drawing('<path d="M0 0 L1e300 1e300"/>'), 'path data has a number'],
    // Read, these are infinite: written again and read once more they were words that nobody had written.
    [drawing('<path d="M0 0 L1e309 5"/>'), 'path data has a number that is not finite'],
    [
      drawing('<path d="M0 0 L1e9 5" transform="matrix(1e300 0 1e300 1 0 0)"/>'),
      'path data has a number that is not finite',
    ],
    [drawing('<path d="M0 0H50" transform="scale(0)"/>'), 'a transform squeezes the path flat'],
    [drawing('<path d="M0 0H50" transform="wring(3)"/>'), 'a transform cannot be read; found "wring(3)"'],
    [
      drawing('<path d="M0 0H50" style="stroke:black; transform: scale(2)"/>'),
      'a style turns, moves or scales a part',
    ],
    [drawing('<g style="scale:2"><path d="M0 0H50"/></g>'), 'a style turns, moves or scales a part'],
    [drawing('<path d="M0 0h1"/>'), 'the path is not of a size that a template has'],
    [drawing('<path d="M0 0h100000"/>'), 'the path is not of a size that a template has'],
    [' '.repeat(4_000_001), 'the drawing is too large; expected at most 4 million characters'],
    [drawing('<path d="M0 0h50"/>'.repeat(6000)), 'the drawing holds too much'],
  ])('%#: one line, at once', (text, line) => {
    const start = performance.now();
    const said = problemOf(text);
    expect(said.startsWith(line) ? line : said).toBe(line);
    expect(said).not.toContain('\n');
    expect(performance.now() - start).toBeLessThan(5000);
  });
});

describe("a page's frame", () => {
  // A half circle of 100 mm on its diameter: π·50 + 100 = 257.08 mm long; the frame is 1160 mm long.
  const HALF = '<path d="M100 200 A50 50 0 0 1 200 200 Z"/>';
  const LENGTH = Math.PI * 50 + 100;

  test.each([
    ['a rect', '<rect x="5" y="5" width="290" height="290"/>'],
    ['a path', '<path d="M5 5H295V295H5Z"/>'],
  ])('drawn as %s is not taken for the template in it', (_, frame) => {
    expect(lengthOf(drawing(`${frame}${HALF}`))).toBeCloseTo(LENGTH, 2);
    expect(lengthOf(drawing(`${HALF}${frame}`))).toBeCloseTo(LENGTH, 2);
  });

  test('is what is taken where it is named, where nothing better lies in it, and where the other lies beside it', () => {
    const frame = '<rect id="frame" x="5" y="5" width="290" height="290"/>';
    expect(lengthOf(drawing(`${frame}${HALF}`), { id: 'frame' })).toBeCloseTo(1160, 6);
    expect(lengthOf(drawing(`${frame}<circle cx="50" cy="50" r="10"/>`))).toBeCloseTo(1160, 6);
    expect(lengthOf(drawing(`${frame}<g transform="translate(300 0)">${HALF}</g>`))).toBeCloseTo(1160, 6);
  });
});
