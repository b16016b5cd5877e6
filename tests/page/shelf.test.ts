/** Her own templates: what is done with them leaves a plan and a shelf that can be read. */

import { describe, expect, test } from 'vitest';
import { doubled, renamed } from '../../src/page/plan/own-template.ts';
import { listAt } from '../../src/page/plan/plan-text.ts';
import {
  beside,
  entitled,
  freeName,
  freeTitle,
  isSame,
  otherwiseCalled,
  titlesOf,
  withOwn,
  withoutOwn,
} from '../../src/page/plan/shelf.ts';
import { FIRST_STATE, MOST_OWN, type State, stateFrom, stateText } from '../../src/page/plan/state.ts';
import { readTemplate } from '../../src/template/index.ts';

const CORBEL = `# measured by hand
title: Corbel
units: in
edge:
  - start: [0, 0]
  - arc: { to: [4, 0], rise: 1 }
`;
const file = { name: './corbel.yaml', text: CORBEL };

const stateOf = (...templates: readonly string[]): State => ({
  ...FIRST_STATE,
  plan: FIRST_STATE.plan.replace(/^template: .*$/m, `template: [ ${templates.join(', ')} ]`),
  own: [file],
});

describe('her shelf', () => {
  test('takes one in place of the one of its name, where that stood', () => {
    const other = { name: './other.yaml', text: CORBEL };
    const state = { ...stateOf('newel'), own: [file, other] };
    const changed = withOwn(state, { ...file, text: `${CORBEL}# again\n` });
    expect(changed).not.toBe('full');
    expect((changed as State).own.map((t) => t.name)).toEqual(['./corbel.yaml', './other.yaml']);
  });

  test('is full before it is so full that it could not be read again', () => {
    let state: State | 'full' = { ...FIRST_STATE, own: [] };
    let held = 0;
    while (held < MOST_OWN + 5) {
      const next: State | 'full' = withOwn(state as State, { name: `./t${held}.yaml`, text: CORBEL });
      if (next === 'full') break;
      state = next;
      held++;
    }
    expect(held).toBe(MOST_OWN);
    expect(stateFrom(stateText(state as State))?.own.length).toBe(MOST_OWN);
    // One that is there already can still be changed.
    expect(withOwn(state as State, { name: './t3.yaml', text: '' })).not.toBe('full');
  });

  test('renames the template in its file, whose comments stay, and leaves the name that plans know', () => {
    const { own } = renamed(stateOf('./corbel.yaml'), './corbel.yaml', 'Bracket: long');
    expect(own[0]!.name).toBe('./corbel.yaml');
    expect(own[0]!.text).toContain('# measured by hand');
    const reading = readTemplate(own[0]!.text, 'corbel.yaml');
    expect(reading.ok && reading.template.title).toBe('Bracket: long');
  });

  test('doubles one under a name that is free', () => {
    const once = doubled(file, [file], titlesOf([file]));
    const twice = doubled(file, [file, once], titlesOf([file, once]));
    expect([once.name, twice.name]).toEqual(['./corbel-2.yaml', './corbel-3.yaml']);
    expect(titlesOf([once, twice])).toEqual(['Corbel, copy', 'Corbel, copy 2']);
    expect(freeName([], './corbel.yaml')).toBe('./corbel.yaml');
  });

  test('never holds two of one title: a plan’s template of another’s title takes the next that is free, once', () => {
    expect(freeTitle(['Corbel', 'corbel 2'], 'CORBEL')).toBe('CORBEL 3');
    const other = { name: './theirs.yaml', text: `${CORBEL}# another\n` };
    const brought: State = { ...stateOf('./theirs.yaml'), own: [other] };
    const { own } = beside([file], brought, ['Newel']);
    expect(titlesOf(own)).toEqual(['Corbel', 'Corbel 2']);
    expect(beside(own, brought, ['Newel']).own).toEqual(own);
    const newel = { name: './mine.yaml', text: CORBEL.replace('Corbel', 'newel') };
    const taken = beside([file], { ...stateOf('./mine.yaml'), own: [newel] }, ['Newel']);
    expect(titlesOf(taken.own)).toEqual(['Corbel', 'newel 2']);
    expect(otherwiseCalled('Corbel', 'Corbel 2')).toBe(
      'There is a “Corbel” already: this one is called “Corbel 2”.',
    );
    expect(otherwiseCalled('Corbel', 'Corbel')).toBe('');
    // What is no other template's number, or another template, is not the same.
    expect(isSame(own[1]!, { ...other, text: other.text.replace('Corbel', 'Corbe') })).toBe(false);
    expect(isSame({ ...file, text: entitled(CORBEL, 'Corbel 2') }, other)).toBe(false);
  });

  test('without one leaves it out of the plan, which keeps a template to go on with', () => {
    const beside = withoutOwn(stateOf('newel', './corbel.yaml'), './corbel.yaml');
    expect(listAt(beside.plan, ['template'])).toEqual(['newel']);
    expect(beside.own).toEqual([]);
    const alone = withoutOwn(stateOf('./corbel.yaml'), './corbel.yaml');
    expect(listAt(alone.plan, ['template'])).toEqual(['baluster']);
    const unused = withoutOwn(stateOf('finial', 'newel'), './corbel.yaml');
    expect(unused.plan).toBe(stateOf('finial', 'newel').plan);
  });

  test('also out of the parts that name it', () => {
    const plan = `parts:
  inner: { template: [ ./corbel.yaml, newel ], layout: { strip: { length: 40, width: 6 } } }
  outer: { template: ./corbel.yaml, layout: { strip: { length: 40, width: 6 } } }
`;
    const { plan: left } = withoutOwn({ ...FIRST_STATE, plan, own: [file] }, './corbel.yaml');
    expect(listAt(left, ['parts', 'inner', 'template'])).toEqual(['newel']);
    expect(listAt(left, ['parts', 'outer', 'template'])).toEqual(['baluster']);
  });
});
