/** A quilt in her colours: what is cloth and where, and that no line is lost on it. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contrast, luminance, standingOut } from '../../src/drawing/contrast.ts';
import {
  type ClothArea,
  clothColours,
  clothOf,
  colourDoubts,
  drawDesign,
  fromTheBack,
  inColours,
  scopeOf,
} from '../../src/drawing/index.ts';
import { boxHeight, boxWidth, pathBox, signedArea } from '../../src/geometry/index.ts';
import { partOf } from '../support/part-of.ts';
import { runs } from '../support/runs.ts';

const colour = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);

describe('contrast', () => {
  test('is reckoned as WCAG 2.2 has it', () => {
    // “Contrast ratios can range from 1 to 21”; the weights of the three primaries are the definition's own.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 9);
    expect(contrast('#8a6420', '#8a6420')).toBe(1);
    expect(luminance('#ff0000')).toBeCloseTo(0.2126, 9);
    expect(luminance('#00ff00')).toBeCloseTo(0.7152, 9);
    expect(luminance('#0000ff')).toBeCloseTo(0.0722, 9);
    // By hand: ((118/255 + 0.055)/1.055)^2.4 = 0.18116, and 1.05/0.23116 = 4.542.
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.542, 3);
  });

  test('what stands out does so on any one cloth by 3 to 1, and between any two as far as any colour can', () => {
    fc.assert(
      fc.property(colour, colour, colour, (own, a, b) => {
        expect(contrast(standingOut([own], [a]), a)).toBeGreaterThanOrEqual(3);
        const both = standingOut([own], [a, b]);
        // The fourth root of 21, less what rounding to 255 steps of grey takes.
        for (const cloth of [a, b]) expect(contrast(both, cloth)).toBeGreaterThan(21 ** 0.25 - 0.05);
      }),
      runs(300, 31),
    );
  });

  test('of her own colours the one that stands out best is taken', () => {
    expect(standingOut(['#2c6e6a', '#79e0b0'], ['#ffffff'])).toBe('#2c6e6a');
    expect(standingOut(['#2c6e6a', '#79e0b0'], ['#101018'])).toBe('#79e0b0');
  });
});

describe('her colours', () => {
  test('what she does not say is usual, and the middle as her fabric', () => {
    expect(clothColours({})).toMatchObject({ fabric: '#efe6d6', middle: '#faf6ee', thread: '#1b2a41' });
    expect(clothColours({ fabric: '#102030' })).toMatchObject({ fabric: '#102030', middle: '#102030' });
    expect(clothColours({ thread: '#abcdef' })).toMatchObject({ fabric: '#efe6d6', thread: '#abcdef' });
  });

  test('seams, marks and templates are seen on every cloth', () => {
    fc.assert(
      fc.property(colour, colour, (fabric, middle) => {
        const { seam, mark, template, words } = clothColours({ fabric, middle });
        expect(contrast(words, middle)).toBeGreaterThanOrEqual(4.5);
        for (const line of [seam, mark, template])
          for (const cloth of [fabric, middle]) expect(contrast(line, cloth)).toBeGreaterThan(2);
      }),
      runs(200, 32),
    );
  });

  test('thread that can hardly be told from its cloth is told in words, and no other', () => {
    // #949494 has 3.03 to 1 on white, #969696 2.96.
    const of = (thread: string, middle = '#ffffff') => ({
      ...clothColours({ fabric: '#ffffff', middle, thread }),
    });
    expect(colourDoubts(of('#949494'), true)).toEqual([]);
    expect(colourDoubts(of('#969696'), false)).toEqual([
      'the thread can hardly be told from the fabric in the picture: their contrast is 2.9 to 1, and lines are easy to see from 3 to 1 (WCAG 2.2, 1.4.11)',
    ]);
    expect(colourDoubts(of('#000000', '#111111'), false)).toEqual([]);
    expect(colourDoubts(of('#000000', '#111111'), true)).toEqual([
      expect.stringMatching(/^the thread can hardly be told from the middle .* 1\.1 to 1/),
    ]);
  });
});

const BORDER = (more: string) =>
  `template: baluster\nlayout: { border: { width: 6, inner: { top: 36, right: 48, bottom: 36, left: 48 }, margin: 1/2${more} } }\n`;
const IN = 25.4;

const clothIn = (text: string, show = 'all'): readonly ClothArea[] => {
  const scoped = scopeOf(partOf(text).design, show);
  if (!scoped.ok) throw new Error('nothing shown');
  return clothOf(scoped.design, scoped.scope);
};
const sizes = (areas: readonly ClothArea[]) =>
  areas.map(({ role, loop }) => {
    const box = pathBox(loop);
    return [role, Math.abs(signedArea(loop)) / IN ** 2, boxWidth(box) / IN, boxHeight(box) / IN].map((x) =>
      typeof x === 'number' ? Math.round(x * 1e6) / 1e6 : x,
    );
  });

describe('the cloth', () => {
  test.each(['', ', from: outer', ', corners: open', ', from: outer, corners: across'])(
    'of a border%s is the whole of it, and in it the quilt',
    (more) => {
      expect(sizes(clothIn(BORDER(more)))).toEqual([
        ['fabric', 48 * 60, 48, 60],
        ['middle', 36 * 48, 36, 48],
      ]);
    },
  );

  test('of a frame is its ground, and in it the motif or the block', () => {
    const wreath =
      'template: finial\nlayout: { frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }\n';
    const [motif, ...more] = clothIn(wreath);
    expect(more).toEqual([]);
    expect(motif!.role).toBe('middle');
    expect(boxWidth(pathBox(motif!.loop))).toBeCloseTo(9 * IN, 6);
    const block =
      'template: finial\nlayout: { frame: { block: { width: 12, height: 12 }, clearance: 1/2, within: 24 } }\n';
    expect(sizes(clothIn(block))).toEqual([['middle', 144, 12, 12]]);
  });

  test('a strip, a side or a corner lies on its fabric alone', () => {
    expect(clothIn('template: baluster\nlayout: { strip: { length: 36, width: 5 } }\n')).toEqual([]);
    for (const show of ['top', 'corner', 'repeat']) expect(clothIn(BORDER(''), show)).toEqual([]);
  });

  test('a border in another lies on it, in whichever order they are written', () => {
    const [outer, inner] = [clothIn(BORDER('')), clothIn(BORDER('').replace(/inner: \{.*?\}/, 'inner: 24'))];
    const behind = ['fabric 48', 'middle 36', 'fabric 36', 'middle 24'];
    for (const parts of [
      [outer, inner],
      [inner, outer],
    ])
      expect(sizes(fromTheBack(parts)).map(([role, , width]) => `${role} ${width}`)).toEqual(behind);
  });
});

describe('the picture', () => {
  const { design } = partOf(BORDER(''));
  const scoped = scopeOf(design, 'all');
  const { scope } = scoped.ok ? scoped : { scope: undefined };
  const drawing = drawDesign(design, scope!, { title: 'a' });
  const colours = clothColours({ fabric: '#16324f', middle: '#f4efe6', thread: '#ffcc00' });
  const at = (mm: number) => ({ minX: 0, minY: 0, maxX: mm, maxY: mm / 2 });
  const cloth = clothOf(design, scope!);
  const shown = inColours(drawing, { cloth, colours, box: at(700), without: ['marks', 'notes', 'template'] });
  const all = Object.values(shown.layers).flat();

  test('lies on the fabric, the quilt’s middle on it before all lines, and these are thread or seams', () => {
    expect(shown.ground).toBe('#16324f');
    expect(shown.layers.fill.map((item) => item.kind === 'area' && item.color)).toEqual([
      '#16324f',
      '#f4efe6',
    ]);
    expect(
      new Set(all.flatMap((item) => (item.kind === 'path' ? [`${item.role} ${item.stroke.color}`] : []))),
    ).toEqual(new Set(['stitch #ffcc00', `seam ${colours.seam}`]));
  });

  test('has what helps to sew it only with the marks', () => {
    const withMarks = inColours(drawing, { cloth, colours, box: at(700), without: [] });
    const roles = new Set(withMarks.layers.border.map((item) => item.role));
    expect([...roles].sort()).toEqual(['margin', 'mitre', 'seam', 'startLine']);
    expect(withMarks.layers.marks.length).toBeGreaterThan(0);
  });

  test('has wider lines where it is larger, as wide in what is looked at', () => {
    const widthIn = (mm: number): number => {
      const { layers } = inColours(drawing, { cloth, colours, box: at(mm), without: [] });
      const [first] = layers.stitch;
      return first?.kind === 'path' ? first.stroke.width : 0;
    };
    expect(widthIn(2100)).toBeCloseTo(3 * widthIn(700), 9);
    expect(widthIn(300)).toBe(widthIn(700));
  });
});
