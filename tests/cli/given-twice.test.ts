/** An option that takes one value is refused where it is given twice; one that gathers values is not. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder, run } from './run.ts';

const folderWith = async (): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(
    join(folder, 'strip.yaml'),
    'template: newel\nlayout: { strip: { length: 60, width: 6 } }\n',
  );
  return folder;
};

test.each([
  [['fit', 'strip.yaml', '--span', 'about 9', '--span', 'about 7'], '--span'],
  [['draw', 'strip.yaml', '-o', 'a.svg', '--output', 'b.svg'], '--output'],
  [['template', 'sheet', '--paper', 'a4', '--paper', 'a4'], '--paper'],
])('%j', async (argv, option) => {
  const ran = await run(await folderWith(), argv);
  expect(ran.code).toBe(2);
  expect(ran.lines).toEqual([
    expect.stringMatching(`${option}: it is given more than once; expected one value`),
  ]);
  expect(ran.left).toEqual(['strip.yaml']);
});

test('what gathers values takes them one after another', async () => {
  const folder = await folderWith();
  const argv = ['draw', 'strip.yaml', '-o', 'a.svg', '--without', 'notes', '--without', 'marks'];
  expect((await run(folder, argv)).code).toBe(0);
});
