/**
 * Drawings of which a wrong shape was once taken without a word. Each is taken as the standard paints it, or refused
 * with its place. Expected values are worked by hand from the sections that are named (W3C SVG 2; CSS Transforms 1).
 */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { type Path, pathBox, pathLength } from '../../src/geometry/index.ts';
import { svgOutline } from '../../src/trace/index.ts';

/** A drawing of 1000 mm, a unit a mm; its second line holds what is given. */
const drawing = (inside: string, root = 'width="1000mm" height="1000mm" viewBox="0 0 1000 1000"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${root}>\n${inside}\n</svg>`;

const taken = (text: string, id?: string): Path => {
  const made = svgOutline(text, { file: 'd.svg', id });
  if (!made.ok) throw new Error(describeProblem(made.problem));
  return made.outline.path;
};

/** Left, top, right and bottom in mm, y down as in the drawing. */
const boxOf = (text: string, id?: string): readonly number[] => {
  const { minX, maxX, minY, maxY } = pathBox(taken(text, id));
  return [minX, -maxY, maxX, -minY].map((v) => Math.round(v * 1e6) / 1e6 + 0);
};

const refusal = (text: string, id?: string): string => {
  const made = svgOutline(text, { file: 'd.svg', id });
  return made.ok ? `taken, ${pathLength(made.outline.path).toFixed(2)} mm` : describeProblem(made.problem);
};

describe('lines along the axes under a skew (SVG 2, 9.3.4; CSS Transforms 1, 13)', () => {
  // skewX(45) takes (x, y) to (x + y, y).
  test('h and v are lines before they are skewed', () => {
    const { pieces } = taken(drawing('<path d="M0 0 h50 v100 h-20" transform="skewX(45)"/>'));
    expect(
      pieces.map(({ from, to }) => [from.x, -from.y, to.x, -to.y].map((v) => Math.round(v * 1e6) / 1e6 + 0)),
    ).toEqual([
      [0, 0, 50, 0],
      [50, 0, 150, 100],
      [150, 100, 130, 100],
    ]);
  });

  test('so are the sides of a rect', () => {
    const text = drawing('<rect x="10" y="0" width="40" height="30" transform="skewX(45)"/>');
    expect(boxOf(text)).toEqual([10, 0, 80, 30]);
    expect(pathLength(taken(text))).toBeCloseTo(80 + 60 * Math.SQRT2, 9);
  });
});

describe('inner drawings and the size of the whole', () => {
  test('an inner svg with a viewBox and no width is as large as what it stands in (SVG 2, 8.2)', () => {
    // 1000 units wide, of which the box is 100: ten times as large.
    const inner = '<svg viewBox="0 0 100 100"><path d="M10 10H60"/></svg>';
    expect(boxOf(drawing(inner))).toEqual([100, 100, 600, 100]);
    // Half as wide: the narrower way counts, and it stands in the middle of the other.
    expect(boxOf(drawing(inner.replace('<svg', '<svg width="50%"')))).toEqual([50, 300, 300, 300]);
  });

  test('the size that a style says counts before the attribute (SVG 2, 6.6 and 8.12)', () => {
    const half = 'width="200mm" height="200mm" viewBox="0 0 100 100" style="width:100mm;height:100mm"';
    expect(boxOf(drawing('<path d="M0 0H50"/>', half))).toEqual([0, 0, 50, 0]);
    const inSheet = '<style>svg { width: 100mm; height: 100mm }</style><path d="M0 0H50"/>';
    expect(boxOf(drawing(inSheet, 'width="200mm" height="200mm" viewBox="0 0 100 100"'))).toEqual([
      0, 0, 50, 0,
    ]);
  });

  test.each([
    [
      'transform="scale(2)"',
      'd.svg:1:1: the drawing as a whole has a transform, which is not followed; flatten',
    ],
    ['style="max-width: 90mm"', 'd.svg:1:1: a style turns, moves or scales a part of the drawing'],
    ['style="transform: scale(2)"', 'd.svg:1:1: a style turns, moves or scales a part of the drawing'],
    ['style="width: 10em"', 'd.svg:1:1: the drawing does not say how large it is'],
    ['style="width: 100%"', 'd.svg:1:1: the drawing does not say how large it is'],
  ])('what else decides its size is refused: %s', (attribute, line) => {
    const root = `width="100mm" height="100mm" viewBox="0 0 100 100" ${attribute}`;
    expect(refusal(drawing('<path d="M0 0H50"/>', root))).toContain(line);
  });

  test.each([
    ['viewBox="0 0 100 100 9"', 'a viewBox cannot be read; found "0 0 100 100 9"'],
    [
      'viewbox="0 0 100 100"',
      'no browser reads this attribute: capital and small letters count; found "viewbox"; expected "viewBox"',
    ],
    ['ViewBox="0 0 100 100"', 'found "ViewBox"; expected "viewBox"'],
    ['viewBox="0 0 100px 100"', 'a viewBox cannot be read; found "0 0 100px 100"'],
    [
      'viewBox="0 0 100 100" preserveAspectRatio="middle"',
      'a preserveAspectRatio cannot be read; found "middle"',
    ],
  ])('%s', (attribute, line) => {
    expect(refusal(drawing('<path d="M0 0H50"/>', `width="9in" height="9in" ${attribute}`))).toContain(line);
  });
});

describe('a width or a height that nobody can read', () => {
  test.each(['200,5mm', '20 0mm', '-5mm', '200 mm', 'wide', '1.2.3in'])('is refused: %s', (width) => {
    const text = drawing('<path d="M0 0H50"/>', `width="${width}" height="100mm" viewBox="0 0 100 100"`);
    for (const unitMm of [undefined, 1]) {
      const made = svgOutline(text, { file: 'd.svg', unitMm });
      expect(made.ok ? 'taken' : describeProblem(made.problem)).toMatch(
        `d.svg:1:1: the drawing's width cannot be read; found "${width}"; expected a number with no unit, or with px, mm, cm, Q, in, pt or pc`,
      );
    }
  });

  test('but one of something else counts where a scale is said', () => {
    for (const width of ['100%', '40em', '50vw']) {
      const text = drawing('<path d="M0 0H50"/>', `width="${width}" viewBox="0 0 100 100"`);
      const made = svgOutline(text, { unitMm: 2 });
      expect(made.ok && pathLength(made.outline.path)).toBeCloseTo(100, 9);
    }
  });

  test('nor is a viewbox passed over in a drawing within the drawing', () => {
    const inner = '<svg width="100" height="100" viewbox="0 0 10 10"><path d="M0 0H5"/></svg>';
    expect(refusal(drawing(inner))).toMatch(
      'd.svg:2:1: no browser reads this attribute: capital and small letters count',
    );
  });
});

describe('rounded rects (SVG 2, 7.4 and 10.2)', () => {
  test.each([
    // Four quarter circles take the place of 8 r.
    ['rx="10"', 240 - 80 + 20 * Math.PI],
    ['ry="10"', 240 - 80 + 20 * Math.PI],
    // No rounder than half of the lower side.
    ['rx="20" ry="90"', 240 - 160 + 40 * Math.PI],
    ['rx="0" ry="10"', 240],
    // A tenth of the viewport's width is 100, which becomes half of the side: an ellipse of half axes 40 and 20, whose
    // perimeter is 20 times 9.688448220547675 (4aE(1 − b²/a²) for 2 and 1).
    ['rx="10%" ry="20"', 193.7689644],
  ])('%s', (radii, length) => {
    const path = taken(drawing(`<rect width="80" height="40" ${radii}/>`));
    const { minX, maxX, minY, maxY } = pathBox(path);
    for (const [i, side] of [minX, maxX - 80, minY + 40, maxY].entries())
      expect(Math.abs(side), `side ${i}`).toBeLessThan(0.002);
    expect(Math.abs(pathLength(path) - length)).toBeLessThan(0.002);
  });

  test('an ellipse takes the radius that is not said from the other', () => {
    expect(pathLength(taken(drawing('<ellipse rx="30"/>')))).toBeCloseTo(60 * Math.PI, 9);
  });
});

describe('what is not painted is not taken', () => {
  const seen = '<path id="seen" d="M0 0H50" stroke="black"/>';
  test.each([
    ['by a class (SVG 2, 6.4)', '<style>.off { display: none }</style><path class="off" d="M0 0H900"/>'],
    [
      'by its name in a style sheet',
      '<style>#a { display: none !important }</style><path id="a" style="display:inline" d="M0 0H900"/>',
    ],
    ['by visibility around it (SVG 2, 13.1)', '<g visibility="hidden"><path d="M0 0H900"/></g>'],
    ['in a gradient', '<linearGradient><path d="M0 0H900"/></linearGradient>'],
    ['in an element that nobody knows', '<thing><path d="M0 0H900"/></thing>'],
    ['in another namespace', '<m:g xmlns:m="urn:example"><path d="M0 0H900"/></m:g>'],
    ['as the second choice of a switch (SVG 2, 5.8.2)', '<switch><g/><path d="M0 0H900"/></switch>'],
    ['as it needs what nobody has', '<path requiredExtensions="http://example.org/x" d="M0 0H900"/>'],
    ['with no ink (SVG 2, 13.2)', '<rect fill="none" width="900" height="900"/>'],
    ['with no width of its line', '<g fill="none" stroke="black" stroke-width="0"><path d="M0 0H900"/></g>'],
    ['as it is clear', '<g opacity="0"><path d="M0 0H900"/></g>'],
    ['in an inner svg without a width', '<svg width="0"><path d="M0 0H900"/></svg>'],
  ])('%s', (_, hidden) => {
    expect(pathLength(taken(drawing(hidden + seen)))).toBeCloseTo(50, 9);
  });

  test('what is visible in what is hidden is taken', () => {
    const text = drawing(`<g visibility="hidden"><path visibility="visible" d="M0 0H90"/></g>${seen}`);
    expect(pathLength(taken(text))).toBeCloseTo(90, 9);
  });

  test('where nothing is seen its names are said', () => {
    expect(refusal(drawing('<path id="heel" d="M0 0H90" visibility="hidden"/>'))).toBe(
      'no path of the drawing is seen; name one with --id: heel',
    );
  });
});

describe('copies (SVG 2, 5.5)', () => {
  const defs = '<defs><path id="p" d="M0 0H50V20" transform="scale(2)"/></defs>';
  test('a copy stands where it is put, inside the transforms of both', () => {
    expect(boxOf(drawing(`${defs}<use href="#p" x="7" y="9" transform="translate(100)"/>`))).toEqual([
      107, 9, 207, 49,
    ]);
    expect(boxOf(drawing(`${defs}<use xlink:href="#p" id="copy"/>`), 'copy')).toEqual([0, 0, 100, 40]);
  });

  test('a symbol fits its box into the size of the copy', () => {
    // 10 units of the box to 40: four times as large.
    const symbol = '<symbol id="s" viewBox="0 0 10 10"><path d="M0 5H10" stroke="black"/></symbol>';
    expect(boxOf(drawing(`${symbol}<use href="#s" x="5" width="40" height="40"/>`))).toEqual([5, 20, 45, 20]);
  });

  test.each([
    ['<use href="other.svg#x"/>', 'd.svg:2:1: a copy (use) of a shape in another file is not followed'],
    ['<g id="a"><use href="#a"/></g>', 'd.svg:2:11: a copy (use) holds itself, which is not followed'],
  ])('%s', (inside, line) => expect(refusal(drawing(inside))).toContain(line));

  test('copies of copies come to an end', () => {
    const laughs = Array.from(
      { length: 20 },
      (_, i) => `<g id="l${i + 1}">${`<use href="#l${i}"/>`.repeat(10)}</g>`,
    );
    const start = performance.now();
    expect(refusal(drawing(`<defs><g id="l0"/>${laughs.join('')}</defs><use href="#l20"/>`))).toContain(
      'holds too much',
    );
    expect(performance.now() - start).toBeLessThan(60_000);
  });
});

describe('cut shapes', () => {
  const clip = (rest: string): string =>
    `<clipPath id="c">${rest}</clipPath><path d="M10 10H60V30" clip-path="url(#c)"/>`;
  test('a clip path that leaves the whole of it is followed (CSS Masking 1, 3.5)', () => {
    expect(boxOf(drawing(clip('<rect width="100" height="100"/>')))).toEqual([10, 10, 60, 30]);
  });

  test.each([
    [
      clip('<rect width="50" height="100"/>'),
      'the path is cut or changed by a clip path, which is not followed',
    ],
    [clip('<circle r="500"/>'), 'the path is cut or changed by a clip path, which is not followed'],
    ['<g mask="url(#m)"><path d="M0 0H90"/></g>', 'd.svg:2:1: the path is cut or changed by a mask'],
    ['<g filter="url(#f)"><path d="M0 0H90"/></g>', 'd.svg:2:1: the path is cut or changed by a filter'],
    [
      '<svg width="50" height="50"><path d="M0 9H90"/></svg>',
      'd.svg:2:1: the path reaches beyond the inner drawing',
    ],
  ])('%s', (inside, line) => expect(refusal(drawing(inside))).toContain(line));

  test('an inner drawing that lets it reach beyond does not cut it (SVG 2, 3.2)', () => {
    expect(
      boxOf(drawing('<svg width="50" height="50" overflow="visible"><path d="M0 9H90"/></svg>')),
    ).toEqual([0, 9, 90, 9]);
  });

  test('what is cut and is not the longest is no matter', () => {
    expect(pathLength(taken(drawing('<path d="M0 0H50" mask="url(#m)"/><path d="M0 0H90"/>')))).toBeCloseTo(
      90,
      9,
    );
  });
});

describe('what is not followed is refused with its place', () => {
  const p = '<path id="p" d="M0 0H50"/>';
  test.each([
    [
      '<path d="M0 0H50" transform="rotate(9)" transform-origin="10 10"/>',
      'd.svg:2:1: a transform is about a point of its own (transform-origin)',
    ],
    [
      '<style>.a { transform: scale(2) }</style><path class="a" d="M0 0H50"/>',
      'd.svg:2:42: a style turns, moves or scales a part of the drawing',
    ],
    [
      '<style>g > path { display: none }</style><path d="M0 0H50"/>',
      'd.svg:2:1: a style sheet cannot be followed; found "g > path"',
    ],
    [
      '<style>@media print { path { display: none } }</style><path d="M0 0H50"/>',
      'd.svg:2:1: a style sheet cannot be followed',
    ],
    [
      '<style>@import url("a.css");</style><path d="M0 0H50"/>',
      'd.svg:2:1: a style sheet cannot be followed',
    ],
    [
      '<rect style="width: 90px" width="50" height="50"/>',
      'd.svg:2:1: a style turns, moves or scales a part of the drawing',
    ],
    ['<rect width="5em" height="50"/>', 'd.svg:2:1: a length cannot be read; found "5em"'],
    ['<rect width="-5" height="50"/>', 'd.svg:2:1: a width is less than 0; found -5'],
    ['<polygon points="0,0 50,0 50"/>', 'd.svg:2:1: the points of a shape cannot be read'],
    [
      '<path d="M0 0H50" transform="rotate(45deg)"/>',
      'd.svg:2:1: a transform cannot be read; found "rotate(45deg)"',
    ],
    ['<path d="M0 0H50" transform="scale(2 3 4)"/>', 'd.svg:2:1: a transform cannot be read'],
    ['<path d="M0 0H50 L9"/>', 'd.svg:2:1: path data cannot be read'],
    [
      '<path d="M0 0H50"><animate attributeName="d"/></path>',
      'd.svg:2:19: the drawing moves or changes by itself',
    ],
    [
      '<path systemLanguage="en" d="M0 0H50"/>',
      'd.svg:2:1: a part of the drawing is painted for some people only',
    ],
    [
      '<switch><title>a</title><path d="M0 0H50"/></switch>',
      'd.svg:2:1: the first choice of a switch is <title>',
    ],
    [
      '<foreignObject><svg><path d="M0 0H50"/></svg></foreignObject>',
      'd.svg:2:1: a drawing within a foreignObject',
    ],
    [
      '<g fill="none"><path fill="inc" d="M0 0H50"/></g>',
      'd.svg:2:16: the drawing does not say clearly whether this part of it is seen; found "fill: inc"',
    ],
    [
      '<line x2="50" stroke="black" visibility="visibel"/>',
      'd.svg:2:1: the drawing does not say clearly whether this part of it is seen; found "visibility: visibel"',
    ],
    [
      '<g style="display: contents"><path d="M0 0H50"/></g>',
      'd.svg:2:1: the drawing does not say clearly whether this part of it is seen',
    ],
  ])('%s', (inside, line) => {
    expect(refusal(drawing(inside))).toContain(line);
    // Another path that is named is no worse for it, but where what is not followed may concern all.
    if (!/style sheet|by itself/.test(line))
      expect(pathLength(taken(drawing(inside + p), 'p'))).toBeCloseTo(50, 9);
  });

  test('a style that says none stands above the attribute (CSS Transforms 1, 8)', () => {
    expect(boxOf(drawing('<path d="M0 0H50" transform="scale(2)" style="transform: none"/>'))).toEqual([
      0, 0, 50, 0,
    ]);
  });

  test('a style sheet in another file', () => {
    expect(refusal(`<?xml-stylesheet href="a.css"?>${drawing(p)}`)).toContain(
      'takes its styles from another file',
    );
  });

  test('a shape in a symbol has no size of its own', () => {
    expect(refusal(drawing('<symbol><path id="in" d="M0 0H50"/></symbol>'), 'in')).toContain(
      'd.svg:2:1: what stands in a <symbol> has no size of its own',
    );
  });
});

describe('path data (SVG 2, 9.3)', () => {
  test('what follows Z begins where it closed', () => {
    // The closed part is 40 long; the open one begins at (10, 10).
    expect(boxOf(drawing('<path d="M10 10h10v10h-10z l0 90"/>'))).toEqual([10, 10, 10, 100]);
  });

  test('a number with noughts before it is one number', () => {
    expect(boxOf(drawing('<path d="M0 0 L 0070 00.5"/>'))).toEqual([0, 0, 70, 0.5]);
  });

  test('a radius below nought counts without its sign', () => {
    expect(pathLength(taken(drawing('<path d="M0 0 A-30 -30 0 0 1 60 0"/>')))).toBeCloseTo(30 * Math.PI, 9);
  });

  test.each(['M0 0 L 50. 9', 'M0 0,,L50 9', 'M0 0 L 50 9,', 'M,0 0 L50 9'])('%s is refused', (d) => {
    expect(refusal(drawing(`<path d="${d}"/>`))).toMatch(/^d\.svg:2:1: path data /);
  });
});

describe('hostile styles are read in time', () => {
  test.each([
    ['comments', '/*'.repeat(900_000)],
    ['quotes', `a{${'";'.repeat(500_000)}`],
    ['fonts', '@font-face{"'.repeat(150_000)],
    ['no braces', 'x'.repeat(1_800_000)],
    ['rules', '.a{fill:red}'.repeat(100_000)],
  ])('%s', (_, text) => {
    const start = performance.now();
    refusal(drawing(`<style>${text}</style><path class="a" d="M0 0H50"/>`));
    refusal(drawing(`<path style="${text.replaceAll('"', '&quot;')}" d="M0 0H50"/>`));
    expect(performance.now() - start).toBeLessThan(60_000);
  });
});
