/**
 * What the program takes at most, measured on a process of its own: processor time (which other work on the machine
 * does not change) and memory. The bounds are those of the table in README.md beside it; what was measured lies at a third
 * to a half of them.
 */

import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { few } from '../../support/runs.ts';
import { type Built, build } from '../build.ts';
import { emptyFolder } from '../run.ts';
import {
  border,
  crowd,
  explodingAnchors,
  farCurves,
  farDrawing,
  longKey,
  packedProfile,
  pathEdge,
  png,
  scallops,
  strip,
  strips,
  strokes,
  svg,
  unevenPoints,
  zigzag,
} from './inputs.ts';
import { watched } from './watched.ts';

interface Bound {
  readonly what: string;
  readonly files: () => Readonly<Record<string, string | Uint8Array>>;
  readonly argv: readonly string[];
  readonly code: 0 | 1 | 2;
  /** One of the lines on stderr. */
  readonly says: string;
  /** Seconds of processor time, and MB. */
  readonly cpu: number;
  readonly megabytes: number;
}

const fine = (kind: string): string =>
  `fills: { swag: { kind: ${kind}, spacing: 1/32 }, background: { kind: ${kind}, spacing: 1/32 } }\n`;

/** Bits that look like noise and are the same each time (xorshift; Marsaglia, J. Statistical Software 8, 2003). */
const noise = (length: number): Uint8Array => {
  const bytes = new Uint8Array(length);
  let state = 2_463_534_242;
  for (let i = 0; i < length; i++) {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    bytes[i] = state & 0xff;
  }
  return bytes;
};

/** Rows of a PNG begin with the number of their filter; 0 is none. */
const unfiltered = (rows: Uint8Array, stride: number): Uint8Array =>
  rows.map((b, i) => (i % stride === 0 ? 0 : b));

const BOUNDS: readonly Bound[] = [
  {
    what: 'a plan whose anchors explode',
    files: () => ({ 'plan.yaml': explodingAnchors() }),
    argv: ['draw', 'plan.yaml'],
    code: 1,
    says: 'plan.yaml: too many values',
    cpu: 4,
    megabytes: 300,
  },
  {
    what: 'a plan with a key of 100,000 letters over a list of 48,000',
    files: () => ({ 'plan.yaml': longKey() }),
    argv: ['draw', 'plan.yaml'],
    code: 1,
    says: 'this key is too long',
    cpu: 4,
    megabytes: 300,
  },
  {
    what: 'a plan of 190,000 commas',
    files: () => ({ 'plan.yaml': `[${','.repeat(190_000)}]` }),
    argv: ['card', 'plan.yaml'],
    code: 1,
    says: 'a comma too many',
    cpu: 6,
    megabytes: 400,
  },
  {
    what: 'the largest search that is made: 60 arcs in a row',
    files: () => ({ 'plan.yaml': border(72, 6, '', './t.yaml'), 't.yaml': scallops(60) }),
    argv: ['fit', 'plan.yaml', '--take', '1'],
    code: 0,
    says: 'the plan with result 1',
    cpu: 20,
    megabytes: 1000,
  },
  {
    what: 'the largest search for a round frame: 35 arcs in a row, all counts',
    files: () => ({
      'plan.yaml': 'template: ./t.yaml\nlayout: { frame: { around: 9 in, clearance: 1/2 in } }\n',
      't.yaml': scallops(35),
    }),
    argv: ['fit', 'plan.yaml', '--take', '1'],
    code: 0,
    says: 'the plan with result 1',
    cpu: 40,
    megabytes: 1000,
  },
  {
    what: 'forty parts on their sheets',
    files: () => ({ 'plan.yaml': strips(40) }),
    argv: ['mockup', 'plan.yaml'],
    code: 0,
    says: '40 parts, 200 sheets of Letter',
    cpu: 20,
    megabytes: 600,
  },
  {
    what: 'forty parts in a hundred places each, on their sheets',
    files: () => ({ 'plan.yaml': crowd(40, 100) }),
    argv: ['mockup', 'plan.yaml'],
    code: 0,
    says: '40 parts, 40 sheets of Letter',
    cpu: 25,
    megabytes: 1000,
  },
  {
    what: 'a picture of four thousand frames with channels',
    files: () => ({
      'plan.yaml': crowd(40, 100, ', channels: { outward: [1/16, 1/16], inward: [1/16, 1/16] }'),
    }),
    argv: ['draw', 'plan.yaml'],
    code: 1,
    says: 'the quilt holds too much for one picture',
    cpu: 10,
    megabytes: 600,
  },
  {
    what: 'a search of 499 sections',
    files: () => ({ 'plan.yaml': border(72, 6, '', './t.yaml'), 't.yaml': zigzag(499) }),
    argv: ['mockup', 'plan.yaml'],
    code: 1,
    says: 'too many sections to try every swag from each to each; found 499 sections',
    cpu: 4,
    megabytes: 300,
  },
  {
    what: 'a gallery of 499 sections at one span',
    files: () => ({ 't.yaml': zigzag(499) }),
    argv: ['template', 'gallery', 't.yaml', '--spans', '12'],
    code: 0,
    says: 'swags are shown, and there are more; name fewer with --spans',
    cpu: 8,
    megabytes: 400,
  },
  {
    what: 'a gallery of 499 sections at spans that none of them has',
    files: () => ({ 't.yaml': zigzag(499) }),
    argv: ['template', 'gallery', 't.yaml', '--spans', '300 in,310 in,320 in'],
    code: 2,
    says: 'no swag at these spans was found in the time that a gallery takes',
    cpu: 12,
    megabytes: 400,
  },
  {
    what: 'an outline of 4,900 sections',
    files: () => ({ 't.yaml': pathEdge(strokes(4900)) }),
    argv: ['template', 't.yaml'],
    code: 0,
    says: 'and 4860 more sections',
    cpu: 10,
    megabytes: 400,
  },
  {
    what: 'a template of 4,500 arcs of a millionth of a millimetre',
    files: () => ({ 't.yaml': pathEdge(`M0 0L50 0a${'1e-6 1e-6 0 001e-6 0 '.repeat(4500)}L150 0`) }),
    argv: ['template', 't.yaml'],
    code: 1,
    says: 'the edge is too finely drawn',
    cpu: 5,
    megabytes: 300,
  },
  {
    what: 'a template of 4,800 lines as fine as an edge may have',
    files: () => ({ 't.yaml': pathEdge(`M0 0L50 0l${'.02 0 .02 1e-3 '.repeat(2400)}L170 0`) }),
    argv: ['template', 't.yaml'],
    code: 0,
    says: '',
    cpu: 10,
    megabytes: 400,
  },
  {
    what: 'a template of 3,000 curves that run off to a kilometre',
    files: () => ({ 't.yaml': pathEdge(farCurves(3000)) }),
    argv: ['template', 't.yaml'],
    code: 1,
    says: 'path data comes to more than 20000 lines and arcs',
    cpu: 5,
    megabytes: 300,
  },
  {
    what: 'a template of 300 measured points that no curve fits',
    files: () => ({ 't.yaml': unevenPoints() }),
    argv: ['template', 't.yaml'],
    code: 1,
    says: 'the points stand too unevenly for a curve',
    cpu: 8,
    megabytes: 400,
  },
  {
    what: 'a drawing of 47,000 curves that run off to a kilometre',
    files: () => ({ 'd.svg': farDrawing() }),
    argv: ['template', 'import', 'd.svg'],
    code: 1,
    says: 'the drawing holds too many curves to look through',
    cpu: 5,
    megabytes: 300,
  },
  {
    what: 'a drawing of 4 million characters in one comment',
    files: () => ({ 'd.svg': svg(`<!--${'-x'.repeat(1_900_000)}--><g/>`) }),
    argv: ['template', 'import', 'd.svg'],
    code: 1,
    says: 'the drawing has no path in it',
    cpu: 4,
    megabytes: 400,
  },
  {
    what: 'a picture of 60 million pixels of noise',
    files: () => ({
      'p.png': png({ width: 7744, height: 7744, bits: 1, rows: unfiltered(noise(7744 * 969), 969) }),
    }),
    argv: ['template', 'trace', 'p.png'],
    code: 1,
    says: 'the picture shows no clear shape',
    cpu: 12,
    megabytes: 1000,
  },
  {
    what: 'a picture whose colours unpack to 100 MB',
    files: () => ({ 'p.png': png({ width: 200, height: 100, before: [packedProfile()] }) }),
    argv: ['template', 'trace', 'p.png'],
    code: 1,
    says: 'the picture is blank',
    cpu: 4,
    megabytes: 300,
  },
  {
    what: 'the largest border, crosshatched a hair apart',
    files: () => ({ 'plan.yaml': border(400, 60, `swag: { repeats: 40 }\n${fine('crosshatch')}`) }),
    argv: ['draw', 'plan.yaml'],
    code: 1,
    says: 'the spacing is too fine for so large an area of crosshatch',
    cpu: 8,
    megabytes: 400,
  },
  {
    what: 'the largest border, feathered a hair apart',
    files: () => ({
      'plan.yaml': border(400, 60, 'fills: { background: { kind: feather, spacing: 1/32 } }\n'),
    }),
    argv: ['draw', 'plan.yaml'],
    code: 1,
    says: 'the spacing is too fine for so large an area of feather',
    cpu: 8,
    megabytes: 400,
  },
  {
    what: 'the thread of a large border, with loops a hair apart',
    files: () => ({ 'plan.yaml': border(100, 24, 'fills: { background: { kind: loops, spacing: 1/8 } }\n') }),
    argv: ['card', 'plan.yaml'],
    code: 1,
    says: 'the spacing is too fine for so large an area of loops',
    cpu: 8,
    megabytes: 400,
  },
  {
    what: 'the longest strip, of 400 swags',
    files: () => ({ 'plan.yaml': strip('400', 'swag: { repeats: 400 }\n') }),
    argv: ['draw', 'plan.yaml'],
    code: 0,
    says: 'a drawing at true size',
    cpu: 12,
    megabytes: 600,
  },
  {
    what: 'a strip of the longest, with 20 channels on each side',
    files: () => ({
      'plan.yaml': strip(
        '400',
        `channels: { outward: [${Array(20).fill('1/32').join()}], inward: [${Array(20).fill('1/32').join()}] }\n`,
      ),
    }),
    argv: ['draw', 'plan.yaml'],
    code: 0,
    says: 'a drawing at true size',
    cpu: 10,
    megabytes: 500,
  },
];

describe('the program takes no more than it says for', () => {
  let built: Built;
  beforeAll(() => {
    built = build();
  }, 120_000);
  afterAll(() => built.remove());

  it.each(few(BOUNDS, ({ cpu }) => cpu <= 6))(
    '$what: $cpu s, $megabytes MB',
    { timeout: 200_000 },
    async ({ files, argv, code, says, cpu, megabytes }) => {
      const folder = emptyFolder();
      for (const [name, content] of Object.entries(files())) {
        mkdirSync(join(folder, dirname(name)), { recursive: true });
        writeFileSync(join(folder, name), content);
      }
      const before = readdirSync(folder).length;
      const ran = await watched(built.bin, folder, argv, { heap: megabytes });
      expect(ran).toMatchObject({ code, signal: null });
      expect(ran.err).toContain(says);
      expect(ran.err).not.toMatch(/mistake of its own|^\s+at .*:\d+/m);
      if (code === 1) expect(ran.lines).toHaveLength(1);
      expect(ran.lines.length).toBeLessThanOrEqual(100);
      expect(readdirSync(folder).length - before).toBe(code === 0 ? 1 : 0);
      expect(ran.cpu).toBeLessThan(cpu);
      expect(ran.megabytes).toBeLessThan(megabytes);
    },
  );
});
