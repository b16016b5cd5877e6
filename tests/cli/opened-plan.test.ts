/** What `open PLAN` hands to the page: the plan and its templates, and nothing else that a plan may name. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openedPlan } from '../../src/cli/opened-plan.ts';
import { ProblemError } from '../../src/document/index.ts';
import { emptyFolder, testIo } from './run.ts';

const LAYOUT = 'layout: { strip: { length: 36, width: 5 } }\n';
const BALUSTER = readFileSync(join(import.meta.dirname, '../../profiles/baluster.yaml'), 'utf8');

const opened = async (folder: string, file: string): Promise<unknown> =>
  JSON.parse(await openedPlan(testIo(folder).io, file));

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
