/** `audition --spacing`: what is taken, and what is refused before any of it is made. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder, run } from './run.ts';

const STRIP = 'template: baluster\nlayout: { strip: { length: 36, width: 6, margin: 1/2 } }\n';
const LARGE = 'template: finial\nlayout: { border: { width: 24, inner: 100, margin: 1/2, corners: turn } }\n';

const auditioned = async (plan: string, ...options: readonly string[]) => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'plan.yaml'), plan);
  return run(folder, ['audition', 'plan.yaml', ...options]);
};

const patient = { timeout: 180_000 };

test('a spacing as wide as the message says is taken', patient, async () => {
  const ran = await auditioned(STRIP, '--region', 'swag', '--fills', 'lines', '--spacing', '12', '--json');
  expect(ran.code).toBe(0);
  expect(JSON.parse(ran.out).fills).toMatchObject([{ fill: 'lines', spacing: 304.8 }]);
});

test('where all that is asked for is too fine nothing is made, and the finest is told', patient, async () => {
  const asked = ['--show', 'all', '--region', 'background', '--fills', 'loops', '--spacing', '1/16'];
  const ran = await auditioned(LARGE, ...asked);
  expect(ran).toMatchObject({ code: 1, left: ['plan.yaml'] });
  expect(ran.lines).toEqual([
    expect.stringMatching(
      /^--spacing: the spacing is too fine for so large an area of loops; found 1\/16 in; expected at least /,
    ),
  ]);
});
