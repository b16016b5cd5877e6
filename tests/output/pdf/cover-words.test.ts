/**
 * What a cover tells her to do, read from the PDF sentence by sentence: common practice, no source, where no figure
 * settles it. What the sheets show of it is held against them in printed-words.test.ts.
 */

import { describe, expect, test } from 'vitest';
import { quiltingAlone } from '../../../src/drawing/index.ts';
import { writeSheets } from '../../../src/output/pdf/index.ts';
import { layOut } from '../../../src/pagination/index.ts';
import { swagStrip } from '../../pagination/sample-drawings.ts';
import { openPages, readTexts, WORDS } from './read-back.ts';

const whole = swagStrip(2, 150, 60);

/** All that the cover says, in the order of its two columns. */
const saidOn = async (
  more: { readonly bare?: true; readonly units?: 'in' | 'mm' },
  paper: 'letter' | 'letter-a4' = 'letter',
  measured?: { readonly short: number; readonly long: number },
): Promise<string> => {
  const drawing = more.bare ? quiltingAlone(whole) : whole;
  const pdf = await openPages(
    await writeSheets(drawing, layOut(drawing, { paper, measured }), { ...WORDS, ...more }),
  );
  return (await readTexts(await pdf.getPage(1))).map(({ text }) => text).join(' ');
};

const BARE = { bare: true } as const;

test('how to print, and what it looks like where the printer does not reach', async () => {
  const said = await saidOn({});
  expect(said).toContain('Load Letter paper.');
  expect(said).toContain(
    'In the print window choose “actual size” or 100 %, not “fit” or “shrink”. Look each time: some viewers keep an old setting.',
  );
  expect(said).toContain('Borderless off, one-sided.');
  expect(said).toContain(
    'The thin frame must be whole on every sheet. Where a side is missing, the printer does not reach so far: ask for a wider margin there.',
  );
  expect(await saidOn({}, 'letter-a4')).toContain('paper, whichever you have: the pages fit both.');
});

test('a ruler along two sides of the square, and along the frame for what is small', async () => {
  const said = await saidOn({});
  expect(said).toContain(
    'Lay a ruler along two sides of the check square: 2 in to its sides, 50 mm to the ticks.',
  );
  expect(said).toMatch(
    /Then lay it along the frame, .* on all four sides\. A small error only shows on a long measure\./,
  );
  expect(said).toContain('100 mm reads 94, 96 or 97: the viewer shrank the page. Print again at 100 %.');
  expect(said).toContain(
    'It is off by less, or differently along the two edges of the paper: that is the printer. Give what you measured, the short edge first, and print again: each sheet then says by how much it was corrected. Do not mix the two prints.',
  );
  expect(await saidOn({}, 'letter', { short: 0.99, long: 1.005 })).toContain(
    'that is the printer. This print is corrected already: measure one that is not, and give what that one measured.',
  );
});

test('sheets are taped from the top left, by their crosses, and tried across a join', async () => {
  const said = await saidOn({});
  expect(said).toContain('Lay the sheets out as on the map. Each names its neighbours at its edges.');
  expect(said).toContain(
    'Start at the top left. Lay each cut edge on its neighbour so that the half crosses meet the whole ones. Never go by the edge of the paper.',
  );
  expect(said).toContain('Tape, and check across a join that the lines run on.');
});

test('sheets with nothing on them are checked on the cover, before what is stitched through is loaded', async () => {
  const said = await saidOn(BARE);
  expect(said).toContain(
    'Load Letter paper. Print this page first and check its square; then load what you stitch through, and print the rest in the same way.',
  );
  expect(said).toContain('50 mm reads 47, 48 or 48.5: the viewer shrank the page. Print again at 100 %.');
  expect(said).toContain(
    'Give what you measured, the short edge first, and print again. Do not mix the two prints.',
  );
  expect(said).toContain('Each has its name in the margin over its top left corner.');
  expect(said).toContain(
    'On every sheet cut straight through its crosses, at its left and its top. Leave the right and the bottom uncut.',
  );
});

describe('how true it is, in inches and in millimetres alike', () => {
  const IN = 25.4;
  const FRACTION = String.raw`(\d+(?:\/\d+)?)`;
  const inches = (text: string | undefined): number => {
    const [top, bottom = '1'] = text!.split('/');
    return (Number(top) / Number(bottom)) * IN;
  };

  test.each([
    ['the frame', {}, '(?:6 in|150 mm) on the frame'],
    ['the square', BARE, '(?:the 2 in square|50 mm on the square)'],
  ])('by %s', async (_, bare, what) => {
    const [here, there] = await Promise.all(
      (['in', 'mm'] as const).map((units) => saidOn({ ...bare, units })),
    );
    const first = here!.match(
      new RegExp(
        `exact to better than ${FRACTION} in\\. On paper, when ${what} reads right within ${FRACTION} in, count on about ${FRACTION} in over ${FRACTION} in, and ${FRACTION} to ${FRACTION} in more at each taped join\\. Paper swells and shrinks with the weather\\.`,
      ),
    );
    const N = String.raw`([\d.]+)`;
    const second = there!.match(
      new RegExp(
        `exact to better than ${N} mm\\. On paper, when ${what} reads right within ${N} mm, count on about ${N} mm over ${N} mm, and ${N} to ${N} mm more at each taped join\\. Paper swells and shrinks with the weather\\.`,
      ),
    );
    expect([first?.length, second?.length], `${here}\n${there}`).toEqual([7, 7]);
    for (let i = 1; i < 7; i++) {
      const [a, b] = [inches(first![i]), Number(second![i])];
      // Both are round figures.
      expect(Math.abs(a / b - 1), `${first![i]} in and ${b} mm`).toBeLessThan(0.07);
    }
  });
});
