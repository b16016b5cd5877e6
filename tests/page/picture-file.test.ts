/** A picture to show from the page is the very file of the command; and while she picks a colour nothing is searched anew. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { workedOut } from '../../src/page/engine/desk.ts';
import type { PictureLook } from '../../src/page/engine/messages.ts';
import { withValues } from '../../src/page/plan/plan-text.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { ask, inputOf } from './ask.ts';

const STRIP = `title: Practice
template: baluster
layout: { strip: { length: 36, width: 5, margin: 1/4 } }
swag: { repeats: 3 }
fills: { swag: lines }
colours: { fabric: "#16324f", thread: "#1a3a5a" }
`;
const QUILT = `title: Practice
template: baluster
parts:
  one: { at: [0, 8], layout: { strip: { length: 36, width: 5, margin: 1/4 } }, swag: { repeats: 3 } }
  two: { layout: { strip: { length: 24, width: 5, margin: 1/4 } }, swag: { repeats: 2 } }
`;

const written = async (plan: string, ...argv: readonly string[]) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), plan);
  const ran = await run(folder, ['draw', 'plan.yaml', ...argv, '-o', 'p.svg']);
  expect(ran.code, ran.err).toBe(0);
  return {
    text: readFileSync(join(folder, 'p.svg'), 'utf8'),
    words: ran.lines.at(-1)!.replace('p.svg: ', ''),
    told: ran.out + ran.err,
  };
};

const made = async (plan: string, look: PictureLook, ofQuilt = false) => {
  const file = await ask({
    kind: 'picture',
    input: inputOf(plan),
    ending: 'svg',
    ofQuilt,
    look,
    fonts: undefined,
  });
  return { ...file, text: new TextDecoder().decode(file.bytes) };
};

describe('the file is the command’s', () => {
  test('in her colours, with what she should know of them', async () => {
    const ours = await made(STRIP, { kind: 'colours', withMarks: false });
    const theirs = await written(STRIP, '--colours');
    expect(ours.text).toBe(theirs.text);
    expect(ours.words).toBe(theirs.words);
    expect(ours.name).toBe('practice-colours.svg');
    expect(ours.notices).toEqual([expect.stringMatching(/^the thread can hardly be told from the fabric/)]);
    expect(theirs.told).toContain(ours.notices[0]);
  });

  test('with marks', async () => {
    const ours = await made(STRIP, { kind: 'colours', withMarks: true });
    expect(ours.text).toBe((await written(STRIP, '--colours', '--without', 'template')).text);
  });

  test('of all parts of a quilt', async () => {
    const ours = await made(QUILT, { kind: 'colours', withMarks: false }, true);
    const theirs = await written(QUILT, '--colours');
    expect(ours.text).toBe(theirs.text);
    expect(ours.words).toBe(theirs.words);
    const one = await made(QUILT, { kind: 'colours', withMarks: false });
    expect(one.name).toBe('practice-one-colours.svg');
    expect(one.text).toBe((await written(QUILT, '--colours', '--part', 'one')).text);
  });

  test('for a projector, but for how its size is set', async () => {
    const ours = await made(STRIP, { kind: 'projector', show: 'repeat', withFills: false });
    const theirs = await written(
      STRIP,
      '--as',
      'projector',
      '--show',
      'repeat',
      '--without',
      'template,way,fill',
    );
    const lines = (text: string) => text.match(/<path[^>]*>/g);
    expect(lines(ours.text)).toEqual(lines(theirs.text));
    expect(ours.text).toContain('The square is 4 in each way, the grid 1 in.');
    expect(ours.text).toContain('Lay a tape on it, both ways, then measure');
    expect(ours.text).not.toContain('Zoom');
    expect(ours.name).toBe('practice-projector.svg');
  });
});

test('a browser that paints no pictures is told in words', async () => {
  const asked = { kind: 'picture', input: inputOf(STRIP), ending: 'png', ofQuilt: false } as const;
  const fonts = { regular: new Uint8Array(), bold: new Uint8Array() };
  await expect(ask({ ...asked, look: { kind: 'colours', withMarks: false }, fonts })).rejects.toThrow(
    /browser cannot paint pictures.*take the drawing \(SVG\)/i,
  );
});

test('another colour is no other search', () => {
  const first = workedOut(inputOf(STRIP));
  const next = workedOut(inputOf(withValues(STRIP, [[['colours', 'thread'], '#ffcc00']])));
  expect(next.results).toBe(first.results);
  expect(next.plan.colours.thread).toBe('#ffcc00');
});
