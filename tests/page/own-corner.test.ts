/** What goes along with a link to a plan whose corners have a template of their own. */

import { expect, test } from 'vitest';
import { templatesOf } from '../../src/page/plan/plan-text.ts';

test('the template of a corner goes along, of a plan’s and of a part’s', () => {
  expect(templatesOf('template: baluster\ncorner: { template: ./mine.yaml }\n')).toEqual([
    'baluster',
    './mine.yaml',
  ]);
  expect(
    templatesOf('template: baluster\nparts: { wreath: { corner: { template: ./hers.yaml } } }\n'),
  ).toEqual(['baluster', './hers.yaml']);
});
