/** A plan with parts on the page: each key is that of the part that is open, and each answer too. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Input } from '../../src/page/engine/messages.ts';
import {
  groupAt,
  keysAt,
  listAt,
  openPart,
  pathIn,
  templatesOf,
  textAt,
  textBesides,
  withUnits,
  withValue,
} from '../../src/page/plan/plan-text.ts';
import { FIRST_STATE, stateFrom, stateText, takenIn, withTaken } from '../../src/page/plan/state.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';

const QUILT = readFileSync(join(import.meta.dirname, '../../samples/lathe-street-quilt.yaml'), 'utf8');

const opened = (part: string | undefined, plan = QUILT): Input => ({ plan, own: [], taken: undefined, part });

const plansOf = (text: string): readonly Plan[] => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.parts.map(({ plan }) => plan);
};

describe('keys of the open part', () => {
  test('are read in it, and those of all at the head of the plan', () => {
    const inner = opened('inner border');
    expect(textAt(inner, ['layout', 'border', 'width'])).toBe('4');
    expect(textAt(opened('outer border'), ['layout', 'border', 'width'])).toBe('6');
    expect(keysAt(opened('wreath'), ['layout'])).toEqual(['frame']);
    expect(groupAt(opened('corner blocks'), ['layout', 'frame'])).toMatchObject({ block: 6 });
    expect(listAt(inner, ['channels', 'inward'])).toEqual(['1/4']);
    expect(listAt(inner, ['channels', 'outward'])).toEqual([]);
    for (const path of [['title'], ['units'], ['paper'], ['foot', 'clearance']])
      expect(textAt(inner, path)).toBe(textAt(QUILT, path));
    expect(textAt(inner, ['title'])).toBe('Lathe Street lap quilt');
  });

  test('its templates are its own, or those of all', () => {
    expect(listAt(opened('wreath'), ['template'])).toEqual(['finial']);
    expect(listAt(opened('inner border'), ['template'])).toEqual(['baluster', 'finial', 'newel']);
    const own = withValue(QUILT, pathIn(opened('inner border'), ['template']), ['newel', './mine.yaml']);
    expect(plansOf(own).map(({ templates }) => templates)).toEqual([
      ['finial'],
      ['finial'],
      ['newel', './mine.yaml'],
      ['baluster', 'finial', 'newel'],
    ]);
    expect(templatesOf(own)).toEqual(['baluster', 'finial', 'newel', './mine.yaml']);
  });

  test.each([
    ['layout', 'border', 'width'],
    ['swag', 'setting'],
    ['channels', 'outward'],
    ['fills', 'background'],
  ])('%s is written in it, and nothing else of the text', (...path) => {
    const text = withValue(QUILT, pathIn(opened('inner border'), path), path[0] === 'fills' ? 'stipple' : 5);
    const from = QUILT.indexOf('  inner border:');
    const to = QUILT.indexOf('  outer border:');
    expect(text.startsWith(QUILT.slice(0, from))).toBe(true);
    expect(text.endsWith(QUILT.slice(to))).toBe(true);
    expect(text).not.toBe(QUILT);
    expect(textAt(opened('inner border', text), path) ?? listAt(opened('inner border', text), path)).toEqual(
      path[0] === 'fills' ? 'stipple' : '5',
    );
    expect(textAt(opened('outer border', text), path)).toBe(textAt(opened('outer border'), path));
  });

  test('of a plan of one design stay where they are', () => {
    expect(pathIn({ ...FIRST_STATE, part: 'wreath' }, ['layout', 'border'])).toEqual(['layout', 'border']);
    expect(openPart(FIRST_STATE)).toBeUndefined();
  });

  test('a part that is not there is the first; one may be called 1', () => {
    expect(openPart(opened('sashing'))).toBe('wreath');
    expect(openPart(opened(undefined))).toBe('wreath');
    const strip = (at: number): string =>
      `{ at: [0, ${at}], layout: { strip: { length: 40, width: 5 } }, swag: { repeats: 4 } }`;
    const plan = `template: baluster\nparts:\n  1: ${strip(0)}\n  2: ${strip(10)}\n`;
    const second = opened('2', plan);
    expect(textAt(second, ['swag', 'repeats'])).toBe('4');
    const freed = withValue(plan, pathIn(second, ['swag', 'repeats']), undefined);
    expect(plansOf(freed).map(({ swag }) => swag.repeats)).toEqual([[4], undefined]);
    const wider = withValue(plan, pathIn(second, ['layout', 'strip', 'width']), 7);
    expect(plansOf(wider).map(({ layout }) => layout.kind === 'strip' && layout.width)).toEqual([127, 177.8]);
  });

  test('what the others are made from changes with them, and not with the open one', () => {
    const now = textBesides(opened('inner border'));
    const change = (part: string, path: readonly string[], value: number): string =>
      textBesides(opened('inner border', withValue(QUILT, pathIn(opened(part), path), value)));
    expect(change('inner border', ['layout', 'border', 'width'], 3)).toBe(now);
    expect(change('outer border', ['layout', 'border', 'width'], 5)).not.toBe(now);
    expect(change('outer border', ['foot', 'clearance'], 0.2)).not.toBe(now);
  });

  test.each(['cm', 'mm'] as const)('in %s every part is as large, and lies where it lay', (units) => {
    const [before, after] = [plansOf(QUILT), plansOf(withUnits(QUILT, 'in', units))];
    expect(after.map(({ layout, part }) => ({ layout, places: part?.places }))).toEqual(
      before.map(({ layout, part }) => ({ layout, places: part?.places })),
    );
    // And back again it is as she wrote it, whatever a part is called.
    const named = QUILT.replace('  corner blocks:', '  repeats:');
    expect(plansOf(withUnits(named, 'in', units))[1]?.part?.places).toEqual(before[1]?.part?.places);
  });
});

describe('what is kept', () => {
  test('is which part is open, and what was taken in each', () => {
    const inner = withTaken({ ...opened('inner border') }, 'newel|a');
    const both = withTaken({ ...inner, part: 'outer border' }, 'newel|b');
    expect(takenIn(both)).toBe('newel|b');
    expect(takenIn({ ...both, part: 'inner border' })).toBe('newel|a');
    expect(takenIn({ ...both, part: 'wreath' })).toBeUndefined();
    expect(stateFrom(stateText(both))).toEqual(both);
    expect(takenIn(withTaken(both, undefined))).toBeUndefined();
    expect(takenIn({ ...withTaken(both, undefined), part: 'inner border' })).toBe('newel|a');
  });

  test('from anywhere: what is no key is left out', () => {
    const odd = { plan: QUILT, part: 7, takenOf: { wreath: 5, 'inner border': 'newel|a' } };
    expect(stateFrom(JSON.stringify(odd))).toEqual({
      ...opened(undefined),
      part: undefined,
      takenOf: { 'inner border': 'newel|a' },
    });
    const many = Object.fromEntries(Array.from({ length: 101 }, (_, i) => [`${i}`, 'x']));
    expect(stateFrom(JSON.stringify({ plan: QUILT, takenOf: many }))?.takenOf).toBeUndefined();
    // Not the keys that every object has.
    const named = { ...opened('toString', QUILT.replace('  wreath:', '  toString:')), takenOf: {} };
    expect(takenIn(named)).toBeUndefined();
  });
});
