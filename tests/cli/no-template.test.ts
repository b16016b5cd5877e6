/** Pictures that are no templates, as people give them to `template trace`. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chance } from '../trace/printed.ts';
import { claiming, picture, rectangle, stating, whole } from './pictures.ts';
import { emptyFolder, run } from './run.ts';

describe('a picture that is no template gets one clear line', () => {
  const random = chance(4);
  const files: readonly (readonly [string, string, Uint8Array])[] = [
    ['empty', 'this is no picture that can be read', new Uint8Array()],
    ['a text', 'this is no picture that can be read', Buffer.from('hello')],
    ['blank', 'the picture is blank', picture(() => {})],
    [
      'two shapes',
      'there are two shapes in this picture',
      picture((c, mm) => {
        c.fillRect(10 * mm, 10 * mm, 40 * mm, 20 * mm);
        c.fillRect(60 * mm, 40 * mm, 40 * mm, 20 * mm);
      }),
    ],
    [
      'off the page',
      'the shape runs off the picture',
      picture((c, mm) => c.fillRect(-9, 20 * mm, 60 * mm, 30 * mm)),
    ],
    [
      'an open line',
      'the line round the template is not closed',
      picture((c, mm) => {
        c.beginPath();
        c.moveTo(20 * mm, 20 * mm);
        c.lineTo(100 * mm, 30 * mm);
        c.lineTo(30 * mm, 60 * mm);
        c.stroke();
      }),
    ],
    [
      'a line all round but for a gap of 8 1/2 mm',
      'the line round the template is not closed, or it is crossed by others; found a gap of 8.',
      picture((c, mm) => {
        c.lineWidth = mm;
        c.beginPath();
        c.moveTo(48 * mm, 20 * mm);
        c.lineTo(20 * mm, 20 * mm);
        c.lineTo(20 * mm, 60 * mm);
        c.lineTo(100 * mm, 60 * mm);
        c.lineTo(100 * mm, 20 * mm);
        c.lineTo(56.5 * mm, 20 * mm);
        c.stroke();
      }),
    ],
    [
      'grass',
      'there is no template in this picture',
      picture((c, mm) => {
        for (let i = 0; i < 30_000; i++)
          c.fillRect(120 * mm * random(), 80 * mm * random(), 2 * random(), 9 * random());
      }),
    ],
    [
      'a disc',
      'no long straight side',
      picture((c, mm) => {
        c.beginPath();
        c.arc(60 * mm, 40 * mm, 25 * mm, 0, 7);
        c.fill();
      }),
    ],
    ['cut short', 'the picture is damaged', whole.subarray(0, whole.length / 2)],
    ['cut short (JPEG)', 'the picture is damaged', picture(rectangle, 'image/jpeg').subarray(0, 3000)],
    [
      '100 megapixels',
      'the picture is too large; found 10000 by 10000 pixels',
      claiming(10_000, 10_000, new Uint8Array(9)),
    ],
    ['absurd', 'the picture is too large', claiming(2 ** 31 - 1, 2 ** 31 - 1, new Uint8Array(9))],
    ['tiny', 'the picture is too small', claiming(3, 3, new Uint8Array(12))],
    ['less than it claims', 'the picture ', claiming(1000, 1000, new Uint8Array(9))],
    ['far more than it claims', 'the picture ', claiming(100, 100, new Uint8Array(60_000_000))],
    [
      'svg as png',
      'this is no picture that can be read',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    ],
  ];

  it.each(files)(
    '%s',
    async (_, line, bytes) => {
      const folder = emptyFolder();
      await writeFile(join(folder, 'a.png'), bytes);
      const start = performance.now();
      const ran = await run(folder, ['template', 'trace', 'a.png', '--dpi', '200']);
      expect(ran.code).toBe(1);
      // Where an outline was found but no edge, the numbered corners are shown as well.
      const said = ran.lines.at(-1)!;
      expect(said.slice(0, 7 + line.length)).toBe(`a.png: ${line}`);
      expect(ran.lines.length).toBe(line.startsWith('no long') ? 2 : 1);
      expect(ran.left).not.toContain('a.yaml');
      expect(performance.now() - start).toBeLessThan(30_000);
    },
    60_000,
  );

  const SAY_SIZE =
    'give what the scanner was set to, such as --dpi 300; a photograph needs the capture sheet, or a ruler in it and --marks';
  // An inch is 0.0254 m; the picture is 120 mm across at 200 dots per inch, so at twenty times as many 6 mm.
  it.each([
    [2 ** 32 - 1, [], `the picture says 109092169 dots per inch, which no scanner has; ${SAY_SIZE}`],
    [39, [], `the picture says 1 dot per inch, which no scanner has; ${SAY_SIZE}`],
    [1, [], `the picture says 0.03 dots per inch, which no scanner has; ${SAY_SIZE}`],
    [
      157_480,
      [],
      `at 4000 dots per inch all of the picture is only 6 mm across; expected at least 20 mm; ${SAY_SIZE}`,
    ],
    [
      2835,
      [],
      `the scan is too coarse; found 72 dots per inch; expected at least 100 dots per inch; 300 is best; if the file says it wrong, ${SAY_SIZE}`,
    ],
    [
      7874,
      ['--marks', '100,100 to 500,100 is 1/64 in'],
      'at 25600 dots per inch all of the picture is only 0.94 mm across; expected at least 20 mm; look where the two marks lie, and how far apart they were said to be',
    ],
    [
      7874,
      ['--marks', '100,100 to 500,100 is 40 in'],
      'the scan is too coarse; found 10 dots per inch; expected at least 100 dots per inch; 300 is best; look where the two marks lie, and how far apart they were said to be',
    ],
  ])(
    'a resolution of %d dots per metre, or by marks (%j), that cannot be is told',
    async (dots, args, line) => {
      const folder = emptyFolder();
      await writeFile(join(folder, 'a.png'), stating(Buffer.from(whole), dots));
      const ran = await run(folder, ['template', 'trace', 'a.png', ...args]);
      expect(ran).toMatchObject({ code: 1, lines: [`a.png: ${line}`], left: ['a.png'] });
      // What cannot be is no reason to doubt what she says.
      const said = await run(folder, [
        'template',
        'trace',
        'a.png',
        '--dpi',
        '200',
        '--heel',
        '1',
        '--crown',
        '2',
      ]);
      expect(said.code).toBe(0);
      expect(said.err).not.toContain('the picture itself says 109');
    },
  );

  it('damage inside a PNG is seen', async () => {
    const folder = emptyFolder();
    const bytes = Buffer.from(whole);
    bytes[bytes.indexOf('IDAT') + 40]! ^= 0xff;
    await writeFile(join(folder, 'a.png'), bytes);
    const ran = await run(folder, ['template', 'trace', 'a.png', '--dpi', '200']);
    expect(ran.lines).toEqual([
      'a.png: the picture is damaged, or not all of it is there; scan or save it again',
    ]);
  });
});
