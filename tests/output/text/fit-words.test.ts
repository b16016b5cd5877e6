/** What the terminal says of fits, read beside the fits themselves; how a sentence is to read is agreed, no source. */

import { describe, expect, test } from 'vitest';
import { INCH_SIXTEENTH } from '../../../src/length/index.ts';
import { describeDesign } from '../../../src/output/mockup/index.ts';
import { fitTableLines, plainSentence } from '../../../src/output/text/index.ts';
import { designOf, type Ranked } from '../../../src/swag/index.ts';
import { planOf, profile, search } from '../../swag/fit-helpers.ts';

/** Few ways to try. */
const PLAIN = 'setting: crown-on-centre, side: inside, direction: heel-first';

const best = (layout: string, swag = ''): Ranked =>
  search(planOf(`layout: { ${layout} }\nswag: { ${PLAIN}${swag} }\n`), [profile('finial')]).results[0]!;

const STRIP = 'strip: { length: 36, width: 6, margin: 1/4 }';
const BORDER = 'border: { width: 6, inner: 36, margin: 1/2, corners: turn }';
const WREATH = 'frame: { count: 8, around: 9, clearance: 1/2, within: 18 }';
const BLOCK = 'frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 20, corners: open }';

describe('one sentence', () => {
  const gapped = best(STRIP, ', repeats: 3, gap: 1');

  test.each([
    [0.96, 'fills'],
    [0.8, 'fills most of'],
    [0.66, 'fills about two thirds of'],
    [0.5, 'fills about half of'],
    [0.33, 'fills about a third of'],
    [0.1, 'fills little of'],
  ])('of a use of %d: %s', (use, words) => {
    const sentence = plainSentence({ ...gapped, score: { ...gapped.score, use } }, INCH_SIXTEENTH);
    expect(sentence).toMatch(
      new RegExp(
        `^3 swags, [\\d/ ]+ in wide, [\\d/ ]+ in deep, 1 in apart with 3 starts and stops; ${words} the strip$`,
      ),
    );
  });

  test('swags that touch have no starts to tell of, and a frame fills a room', () => {
    expect(plainSentence(best(STRIP, ', repeats: 3, gap: 0'), INCH_SIXTEENTH)).toMatch(
      / in deep, touching; /,
    );
    expect(plainSentence(best(WREATH), INCH_SIXTEENTH)).toMatch(/; fills (?:[a-z ]+ of )?the room$/);
  });
});

describe('under the table', () => {
  const notesOf = (layout: string): string => {
    const first = best(layout);
    const lines = fitTableLines([{ first, like: [] }], { most: 9, style: INCH_SIXTEENTH, width: 100 });
    return lines.slice(lines.findIndex((line) => /^-+$/.test(line)) + 1).join(' ');
  };
  const PLACES =
    '“inside” and “outside” say where the template lies, seen from the swag; “uses” is how much of';
  const TAIL =
    'and are drapes, neither spikes nor ripples; then a plain setting (the template nearly level with the seam, heel first, crown on centre). Very small swags come late.';

  test('of a strip', () => {
    expect(notesOf(STRIP)).toBe(
      `One fits. Lengths are in inches, to 1/16. “wide” is straight from start to stop, “deep” from the line that the swags start on to the crown; ${PLACES} the width between the margins is filled where the swags reach least. Best first: swags that fill the strip count most, then swags that touch ${TAIL}`,
    );
  });

  test('of four sides, whose order is told', () => {
    const notes = notesOf(BORDER);
    expect(notes).toContain(
      ' Of two counts the first is for top and bottom; four are in the order top, right, bottom, left. ',
    );
    expect(notes).toContain(
      `Best first: swags that fill the border count most, then swags that touch, are alike on all sides, have as many on opposite sides and turn the corners, ${TAIL}`,
    );
  });

  test('round a motif, where depth is from the centre', () => {
    expect(notesOf(WREATH)).toContain(
      `“deep” how much farther from the centre or nearer to it the crown is than the start; ${PLACES} the room up to the limit is filled where the swags reach least. Best first: swags that fill the room up to the limit count most (without one, a frame from a fifth to half as wide as its motif’s radius), then swags that touch, six to eight of them, and are drapes, neither spikes nor ripples; then a plain setting. Very small swags come late.`,
    );
  });
});

describe('on the cover', () => {
  const linesOf = (layout: string, swag?: string): readonly string[] => {
    const { field, fit } = best(layout, swag);
    return describeDesign(designOf(field, fit), INCH_SIXTEENTH);
  };

  test('how it is made, and how a corner’s depth is measured', () => {
    const lines = linesOf(BORDER, ', from: heel, to: crown');
    expect(lines[0]).toBe(
      'Finial: heel to crown end, crown on centre, heel first, template inside the swags',
    );
    expect(lines.slice(1, 5).map((line) => line.slice(0, line.indexOf(':')))).toEqual([
      'top',
      'right',
      'bottom',
      'left',
    ]);
    expect(lines.find((line) => /^corners/.test(line))).toMatch(
      /^corners: [\d/ ]+ in deep, square from the start line, not along the mitre$/,
    );
  });

  test('how large a frame is when it is finished', () => {
    // The room given is 18 in, and the motif of 9 in is kept clear by half an inch all round.
    const [size] = linesOf(WREATH).filter((line) => /^finished/.test(line));
    const [, across, mark] = size!.match(/^finished frame: (\d+)(.*) in across, 10 in free inside$/)!;
    expect(Number(across) + (mark === '' ? 0 : 1)).toBeLessThanOrEqual(18);
    // Round 14 by 12 in, half an inch away.
    expect(linesOf(BLOCK).find((line) => /^finished/.test(line))).toMatch(
      /^finished frame: [\d/ ]+ in wide and [\d/ ]+ in high, 15 in by 13 in free inside$/,
    );
  });
});
