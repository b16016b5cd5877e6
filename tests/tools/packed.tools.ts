/** The package as somebody else installs it: packed, put into an empty folder, run, and used from code with its types. */

import { execFileSync } from 'node:child_process';
import { lstatSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'swagwright-packed-'));
const own = join(folder, 'node_modules/swagwright');

const run = (command: string, ...args: readonly string[]): string =>
  execFileSync(command, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

beforeAll(() => {
  execFileSync('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], {
    cwd: root,
    stdio: 'ignore',
  });
  const [tarball] = readdirSync(folder);
  writeFileSync(join(folder, 'package.json'), '{ "private": true, "type": "module" }');
  run('npm', 'install', '--omit=dev', '--prefer-offline', '--no-audit', '--no-fund', `./${tarball}`);
});
afterAll(() => rmSync(folder, { recursive: true }));

const USE = `import { type Plan, readPlan, readTemplate, type Template } from 'swagwright';
const reading = readPlan('', 'plan.yaml');
const template = readTemplate('', 't.yaml');
export const foot = (plan: Plan): number => plan.foot.clearance;
export const title = (t: Template): string => t.title ?? t.name;
if (reading.ok && template.ok) foot(reading.parts[0].plan) + title(template.template).length;
`;

const check = (): string => {
  writeFileSync(join(folder, 'use.ts'), USE);
  const tsc = join(root, 'node_modules/typescript/bin/tsc');
  const options = '--noEmit --strict --skipLibCheck false --module nodenext --target es2023 --lib ES2023,DOM';
  try {
    return run(process.execPath, tsc, ...options.split(' '), '--types', '', 'use.ts');
  } catch (error) {
    return String((error as { stdout: string }).stdout);
  }
};

describe('the packed package', () => {
  it('installs in at most 60 MB', () => {
    const files = readdirSync(join(folder, 'node_modules'), { recursive: true, withFileTypes: true });
    const bytes = files.reduce((sum, file) => sum + lstatSync(join(file.parentPath, file.name)).size, 0);
    expect(bytes).toBeGreaterThan(5e6);
    expect(bytes).toBeLessThan(60e6);
  });

  it('brings the program, which finds its fonts, its templates and its page', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(run('npx', 'swagwright', '--version')).toBe(`${version}\n`);
    const plan = join(own, 'samples/guild-strip.yaml');
    run('npx', 'swagwright', 'mockup', plan, '-o', 'sheets.pdf');
    run('npx', 'swagwright', 'draw', plan, '-o', 'picture.png');
    expect(readFileSync(join(folder, 'sheets.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(join(folder, 'picture.png')).subarray(1, 4).toString()).toBe('PNG');
    expect(readdirSync(join(own, 'dist/page'))).toContain('index.html');
    expect(readdirSync(join(own, 'dist/schema'))).toEqual(['plan.schema.json', 'template.schema.json']);
  });

  it('is a library with types that ask for no other package', () => {
    expect(check()).toBe('');
    const names = "import('swagwright').then((all) => console.log(Object.keys(all).join()))";
    expect(run(process.execPath, '-e', names)).toContain('readPlan');
  });

  it('the worked example of its use from code runs, and gives what the figures say', () => {
    writeFileSync(join(folder, 'example.mjs'), readFileSync(join(own, 'samples/from-code.mjs')));
    const lines = run(process.execPath, 'example.mjs', 'strip.svg').trim().split('\n');
    // A strip of 40 in has five swags of 8 in that touch: a mark every 4 in, and the stop of one starts the next.
    const swags = [1, 2, 3, 4, 5].flatMap((n) => [
      `strip, swag ${n}, start at ${8 * n - 8} in`,
      `strip, swag ${n}, centre at ${8 * n - 4} in`,
      `strip, swag ${n}, stop at ${8 * n} in`,
    ]);
    expect(lines).toEqual([...swags, 'strip, end at 40 in', 'strip.svg: Spindle strip']);
    const svg = readFileSync(join(folder, 'strip.svg'), 'utf8');
    expect(svg.match(/data-half="first"/g)?.length).toBeGreaterThanOrEqual(5);
  });

  it('the check of its types sees a mistake', () => {
    const types = join(own, 'dist/types/plan/plan.d.ts');
    const text = readFileSync(types, 'utf8');
    writeFileSync(types, `import type { z } from 'zod';\n${text}`);
    expect(check()).toContain("'zod'");
    writeFileSync(types, text);
  });
});
