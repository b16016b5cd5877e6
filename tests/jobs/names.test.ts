/** What files are called when nobody says. */

import { expect, test } from 'vitest';
import { calledAfter, proposedName } from '../../src/jobs/names.ts';

test.each([
  [{ called: 'raffle', kind: 'mockup' }, 'raffle-mockup.pdf'],
  [{ called: 'raffle', kind: 'card', part: 'Inner border' }, 'raffle-inner-border-card.pdf'],
  [{ called: 'raffle', ending: 'svg' }, 'raffle.svg'],
  [{ called: 'raffle', kind: 'fit-3', ending: 'yaml' }, 'raffle-fit-3.yaml'],
  [{ kind: 'capture-sheet' }, 'capture-sheet.pdf'],
  // The next command would take it for an option.
  [{ called: '--help', kind: 'card' }, 'help-card.pdf'],
  [{ called: '--', kind: 'card' }, 'swags-card.pdf'],
] as const)('%j', (naming, name) => {
  expect(proposedName(naming)).toBe(name);
});

test.each([
  ['My border', 'my-border'],
  ['Léa’s ½″ quilt / 2', 'léa-s-½-quilt-2'],
  ['../../etc', 'etc'],
  ['🧵', 'border'],
])('%s', (title, called) => {
  expect(calledAfter(title)).toBe(called);
});
