/** What `open PLAN` hands to the page: the plan and its templates, and nothing else that a plan may name. */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openedPlan } from '../../src/cli/opened-plan.ts';
import { ProblemError } from '../../src/document/index.ts';
import { emptyFolder, run, testIo } from './run.ts';

const LAYOUT = 'layout: { strip: { length: 36, width: 5 } }\n';
const BALUSTER = readFileSync(join(import.meta.dirname, '../../profiles/baluster.yaml'), 'utf8');

const opened = async (folder: string, file: string): Promise<unknown> =>
  JSON.parse((await openedPlan(testIo(folder).io, file)).text);

const problemsOf = async (folder: string, file: string): Promise<readonly string[]> => {
  try {
    await openedPlan(testIo(folder).io, file);
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.code);
    throw error;
  }
  throw new Error('Nothing was wrong');
};

describe('a plan for the page', () => {
  test('is its own text, with the files of the templates that do not come along', async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'mine'));
    writeFileSync(join(folder, 'mine', 'own.yaml'), BALUSTER);
    const plan = `# hers\ntemplate: [newel, ./own.yaml]\n${LAYOUT}`;
    writeFileSync(join(folder, 'mine', 'quilt.yaml'), plan);
    expect(await opened(folder, 'mine/quilt.yaml')).toEqual({
      plan,
      own: [{ name: './own.yaml', text: BALUSTER }],
      name: 'quilt.yaml',
    });
  });

  test('holds no file that is not a template, whatever the plan calls one', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'secret.yaml'), 'password: 1234\n');
    writeFileSync(join(folder, 'secret.txt'), 'password: 1234\n');
    for (const name of ['./secret.yaml', './secret.txt', '/etc/passwd', '../../../etc/passwd', '.']) {
      writeFileSync(join(folder, 'quilt.yaml'), `template: ${name}\n${LAYOUT}`);
      expect((await problemsOf(folder, 'quilt.yaml')).length).toBeGreaterThan(0);
    }
  });

  test('that is no plan is told as by every command', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'quilt.yaml'), 'template: baluster\n');
    expect(await problemsOf(folder, 'quilt.yaml')).toEqual(['missing-key']);
    expect(await problemsOf(folder, 'none.yaml')).toEqual(['file-enoent']);
  });
});

test('a plan that the page would refuse is refused before it is handed over, and nothing is written', async () => {
  const folder = emptyFolder();
  const plan = `template: newel\n${LAYOUT}`;
  writeFileSync(join(folder, 'long.yaml'), `${plan}# ${'x'.repeat(20_000)}\n`);
  const long = await run(folder, ['open', 'long.yaml', '--save', 'long.html']);
  expect([long.code, long.err]).toEqual([
    1,
    'long.yaml: the page does not open a plan that is so long; expected at most 20000 characters on 1000 lines\n',
  ]);
  expect(existsSync(join(folder, 'long.html'))).toBe(false);
  // As long as the page takes.
  writeFileSync(join(folder, 'most.yaml'), `${plan}#${'x'.repeat(20_000 - plan.length - 1)}`);
  expect(await opened(folder, 'most.yaml')).toMatchObject({ name: 'most.yaml' });
});

test('the page as one file is never written over the plan that goes into it, nor called as something else', async () => {
  const folder = emptyFolder();
  const plan = `template: newel\n${LAYOUT}`;
  writeFileSync(join(folder, 'quilt.html'), plan);
  const over = await run(folder, ['open', 'quilt.html', '--save', './quilt.html']);
  expect([over.code, over.err]).toEqual([
    1,
    './quilt.html: the command reads this file, and would write over it; choose another name with --save\n',
  ]);
  expect(readFileSync(join(folder, 'quilt.html'), 'utf8')).toBe(plan);
  const pdf = await run(folder, ['open', 'quilt.html', '--save', 'quilt.pdf']);
  expect(pdf.code).toBe(2);
  expect(pdf.err).toMatch(/^--save: what is written is HTML; found the ending \.pdf; expected \.html/);
  const bare = await run(folder, ['open', 'quilt.html', '--save', 'quilt']);
  expect([bare.code, bare.err]).toEqual([
    2,
    '--save: a browser opens a page by its ending; found quilt; expected quilt.html\n',
  ]);
  expect((await run(folder, ['open', '--save', ''])).err).toMatch(/^--save: the name of the file is empty/);
});
