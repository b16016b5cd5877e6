/**
 * The folders of src are the picture of how data flows: a file imports from its own folder or from folders to
 * its left, and from another folder only through its index. All but the command line runs in a browser.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../../src');

/** From left to right. The library's entry stands beside the command line: both may see everything. */
const FLOW = [
  'length',
  'document',
  'geometry',
  'trace',
  'template',
  'plan',
  'swag',
  'fill',
  'drawing',
  'pagination',
  'output',
  'jobs',
  'page',
  'cli',
];

interface Import {
  readonly file: string;
  readonly from: string;
}

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((f) => /\.tsx?$/.test(f) && !f.endsWith('.d.ts'))
  .map((f) => f.split(sep).join('/'));

const importsOf = (file: string): Import[] => {
  const text = readFileSync(join(SRC, file), 'utf8');
  const found = text.matchAll(/(?:^|[^.\w])(?:from|import)\s*\(?\s*'([^']+)'/gm);
  return [...found].map((m) => ({ file, from: m[1]! }));
};

const all = files.flatMap(importsOf);
const room = (file: string): string => file.split('/')[0]!;

/** What an import is against the rules for, or undefined. */
const fault = ({ file, from }: Import): string | undefined => {
  const here = room(file);
  if (!file.includes('/')) return undefined;
  if (!from.startsWith('.')) {
    const isNode = from.startsWith('node:') || builtinModules.includes(from);
    if (isNode && here !== 'cli') return `${file} imports ${from}, and would not run in a browser`;
    if (from.startsWith('paper') && here !== 'geometry') return `${file} imports paper; only geometry may`;
    if (from === 'commander' && here !== 'cli') return `${file} imports commander; only cli may`;
    return undefined;
  }
  const target = relative(SRC, resolve(SRC, dirname(file), from))
    .split(sep)
    .join('/');
  const there = room(target);
  if (there === here || !target.includes('/')) return undefined;
  if (FLOW.indexOf(there) > FLOW.indexOf(here)) return `${file} imports from ${there}, to its right`;
  // Of jobs each file is one, and loaded by whoever wants just that.
  if (there !== 'jobs' && !target.endsWith('/index.ts'))
    return `${file} reaches past the index of ${there}: ${from}`;
  return undefined;
};

describe('imports flow one way', () => {
  test('every folder has its place in the flow', () => {
    const rooms = new Set(files.filter((f) => f.includes('/')).map(room));
    expect([...rooms].sort()).toEqual([...FLOW].sort());
  });

  test('no file imports from its right, past an index, or what a browser lacks', () => {
    expect(all.length).toBeGreaterThan(300);
    expect(all.map(fault).filter((f) => f !== undefined)).toEqual([]);
  });

  test('the rules see what they forbid', () => {
    const faults = [
      { file: 'geometry/a.ts', from: '../swag/index.ts' },
      { file: 'swag/a.ts', from: '../geometry/path.ts' },
      { file: 'output/pdf/a.ts', from: 'node:zlib' },
      { file: 'output/pdf/a.ts', from: 'fs' },
      { file: 'fill/a.ts', from: 'paper/dist/paper-core.js' },
      { file: 'drawing/a.ts', from: 'commander' },
      { file: 'page/ui/a.tsx', from: 'node:path' },
    ].map(fault);
    expect(faults).not.toContain(undefined);
    expect(faults.length).toBe(7);
  });

  test('nothing but the command line reads the clock, chance or the process', () => {
    const inner = files.filter((f) => f.includes('/') && room(f) !== 'cli');
    const bad = inner.filter((f) =>
      /\b(Date\.now|new Date\(\s*\)|Math\.random|performance\.now|process\.|globalThis\.process|Buffer\.)/.test(
        readFileSync(join(SRC, f), 'utf8'),
      ),
    );
    expect(inner.length).toBeGreaterThan(60);
    expect(bad).toEqual([]);
  });
});

test('few files tell a layout by its name: the others ask what it is like (plan/layout-kinds.ts)', () => {
  const named = files.filter((file) =>
    /'strip'|'frame'|(?:kind|case|layout).*'border'/.test(readFileSync(join(SRC, file), 'utf8')),
  );
  expect(named.length, named.join(', ')).toBeLessThanOrEqual(15);
});
