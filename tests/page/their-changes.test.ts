/** What another window does to the shelf: seen here, and no step of this window's own, which undo still takes back. */

import { describe, expect, test } from 'vitest';
import type { OwnTemplate } from '../../src/page/engine/messages.ts';
import { beginning, changed, redone, undone } from '../../src/page/plan/history.ts';
import { renamed } from '../../src/page/plan/own-template.ts';
import { templatesOf } from '../../src/page/plan/plan-text.ts';
import { beside, withOwn, withoutOwn } from '../../src/page/plan/shelf.ts';
import { FIRST_STATE, type State } from '../../src/page/plan/state.ts';
import { followed } from '../../src/page/plan/their-changes.ts';

const own = (name: string, title = name): OwnTemplate => ({
  name: `./${name}.yaml`,
  text: `title: ${title}\n`,
});
const [corbel, newel, urn] = [own('corbel'), own('newel'), own('urn')];

const using = (...templates: readonly string[]): string =>
  FIRST_STATE.plan.replace(/^template: .*$/m, `template: [ ${templates.join(', ')} ]`);
const stateOf = (plan: string, ...there: readonly OwnTemplate[]): State => ({
  ...FIRST_STATE,
  plan,
  own: there,
});
const NONE = new Map<string, string>();

describe('another window', () => {
  test('adds a template: it is there in every step, and undo takes back what was done here', () => {
    const first = stateOf(using('baluster'), corbel);
    const here = changed(beginning(first), withOwn(first, newel) as State);
    const after = followed(here, [corbel, newel, urn], NONE);
    expect(after.now.own).toEqual([corbel, newel, urn]);
    expect(undone(after).now.own).toEqual([corbel, urn]);
    expect(redone(undone(after)).now.own).toEqual([corbel, newel, urn]);
  });

  test('renames one: no step brings the old name back', () => {
    const first = stateOf(using('baluster'), corbel);
    const here = changed(beginning(first), { ...first, plan: using('finial') });
    const bracket = own('corbel', 'Bracket');
    const after = followed(here, [bracket], NONE);
    expect(undone(after).now).toEqual(stateOf(using('baluster'), bracket));
  });

  test('takes one off that no plan here uses: no step brings it back', () => {
    const first = stateOf(using('baluster'), corbel, newel);
    const here = changed(beginning(first), { ...first, plan: using('finial') });
    const after = followed(here, [newel], NONE);
    expect(after.now).toEqual(stateOf(using('finial'), newel));
    expect(undone(after).now).toEqual(stateOf(using('baluster'), newel));
    expect(after.past.length).toBe(1);
  });

  test('takes one off that is used here: that is a step, and undo brings it back with its plan', () => {
    const here = beginning(stateOf(using('baluster', './corbel.yaml'), corbel, newel));
    const after = followed(here, [newel], NONE);
    expect(after.now.own).toEqual([newel]);
    expect(templatesOf(after.now.plan)).toEqual(['baluster']);
    expect(undone(after).now).toEqual(here.now);
  });

  test('takes one off that a step before used: undo to there brings it back', () => {
    const first = stateOf(using('baluster', './corbel.yaml'), corbel, newel);
    const here = changed(beginning(first), { ...first, plan: using('baluster') });
    const after = followed(here, [newel], NONE);
    expect(after.now).toEqual(stateOf(using('baluster'), newel));
    expect(undone(after).now).toEqual(first);
  });

  test('puts one back that it took off: it is there, though this plan is without it', () => {
    const here = beginning(stateOf(using('baluster', './corbel.yaml'), corbel, newel));
    const after = followed(followed(here, [newel], NONE), [corbel, newel], NONE);
    expect(after.now.own).toEqual([corbel, newel]);
    expect(undone(after).now).toEqual(here.now);
  });

  test('changed the same: this window’s has another name, and its plan knows it by that, in every step', () => {
    const first = stateOf(using('./corbel.yaml', 'newel'), corbel);
    const here = changed(beginning(first), renamed(first, './corbel.yaml', 'Mine'));
    const [theirs, mine] = [own('corbel', 'Theirs'), { name: './corbel-2.yaml', text: 'title: Mine\n' }];
    const after = followed(here, [theirs, mine], new Map([['./corbel.yaml', './corbel-2.yaml']]));
    expect(after.now.own).toEqual([theirs, mine]);
    expect(templatesOf(after.now.plan)).toEqual(['./corbel-2.yaml', 'newel']);
    expect(templatesOf(undone(after).now.plan)).toEqual(['./corbel-2.yaml', 'newel']);
    expect(undone(after).now.own.map((t) => t.name)).toEqual(['./corbel.yaml', './corbel-2.yaml']);
  });

  test('is heard though a plan here cannot be read', () => {
    const here = beginning(stateOf('template: [ ./corbel.yaml\n: [', corbel));
    expect(followed(here, [newel], new Map([['./x.yaml', './y.yaml']])).now.own).toEqual([newel]);
  });
});

describe('a plan that comes with templates', () => {
  const there = [corbel, newel];

  test('leaves those that are on the shelf, and brings its own beside them', () => {
    const came = beside(there, stateOf(using('./urn.yaml'), urn));
    expect(came.own).toEqual([corbel, newel, urn]);
    expect(came.plan).toBe(using('./urn.yaml'));
  });

  test('brings another of one name under a free one, once, and means that', () => {
    const other = own('corbel', 'A friend’s corbel');
    const brought = stateOf(
      `${using('finial', './corbel.yaml')}corner: { template: ./corbel.yaml }\n`,
      other,
    );
    const came = beside(there, brought);
    expect(came.own).toEqual([corbel, newel, { name: './corbel-2.yaml', text: other.text }]);
    expect(templatesOf(came.plan)).toEqual(['finial', './corbel-2.yaml']);
    expect(beside(came.own, brought)).toEqual(came);
  });

  test('brings none that is there', () => {
    expect(beside(there, stateOf(using('./corbel.yaml'), corbel)).own).toBe(there);
  });
});

test('a template that is taken off is taken out of corners, rows and kinds, too', () => {
  const plan = `template: [ finial, ./corbel.yaml ]
corner: { template: ./corbel.yaml, from: 2 }
rows: [ { at: 1, marks: as row 1, template: [ ./corbel.yaml, newel ] } ]
swag: { alternate: [ { template: ./corbel.yaml }, { from: 2 } ] }
`;
  const { plan: left } = withoutOwn(stateOf(plan, corbel), './corbel.yaml');
  expect(templatesOf(plan)).toEqual(['finial', './corbel.yaml', 'newel']);
  expect(left).toBe(`template: finial
corner: { from: 2 }
rows: [ { at: 1, marks: as row 1, template: newel } ]
swag: { alternate: [ { template: baluster }, { from: 2 } ] }
`);
});
