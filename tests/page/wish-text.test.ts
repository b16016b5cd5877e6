/** Wishes as the page's fields hold them, against the reader of plans: what fields write means what they say. */

import { expect, test } from 'vitest';
import { withUnits } from '../../src/page/plan/plan-text.ts';
import { meantAs, type WishKind, wishParts, wishWritten } from '../../src/page/plan/wish-text.ts';
import { readPlan } from '../../src/plan/index.ts';

const meaning = (span: string | undefined, units = 'in'): unknown => {
  const asked = span === undefined ? '' : `swag: { span: ${span} }\n`;
  const reading = readPlan(
    `units: ${units}\ntemplate: x\nlayout: { strip: { length: 60 in, width: 6 in } }\n${asked}`,
    'p.yaml',
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts[0].plan.swag.span;
};

const CASES: readonly (readonly [string | undefined, WishKind, string, string, unknown])[] = [
  [undefined, 'any', '', '', undefined],
  ['auto', 'any', '', '', undefined],
  ['9', 'exactly', '9', '', 228.6],
  ['9 1/8 in', 'exactly', '9 1/8 in', '', 231.775],
  ['about 9', 'about', '9', '', { about: 228.6 }],
  ['at least 3 1/2', 'least', '3 1/2', '', { least: 88.9 }],
  ['at most 10 cm', 'most', '10 cm', '', { most: 100 }],
  ['8 to 10', 'between', '8', '10', { least: 203.2, most: 254 }],
];

test.each(CASES)('%s', (text, kind, first, second, means) => {
  expect(wishParts(text)).toEqual({ kind, first, second });
  const written = wishWritten({ kind, first, second });
  expect(written).toBe(text === 'auto' ? undefined : text);
  expect(JSON.stringify(meaning(written))).toBe(JSON.stringify(means));
});

// In the words of a plan's own reader, however they are typed.
test.each<[string, WishKind, string, string]>([
  ['~9', 'about', '9', ''],
  ['9 or so', 'about', '9', ''],
  ['>= 3 1/2', 'least', '3 1/2', ''],
  ['up to 10 cm', 'most', '10 cm', ''],
  ['8–10', 'between', '8', '10'],
  ['nine', 'exactly', '9', ''],
  ['9-1/2', 'exactly', '9-1/2', ''],
  ['wide', 'exactly', 'wide', ''],
])('%s', (text, kind, first, second) => {
  expect(wishParts(text)).toEqual({ kind, first, second });
  const same = wishWritten({ kind, first, second });
  if (text !== 'wide') expect(meaning(same)).toEqual(meaning(`'${text}'`));
});

test.each<[WishKind, string | undefined]>([
  ['any', undefined],
  ['about', 'about 8'],
  ['exactly', '8'],
  ['least', 'at least 8'],
  ['most', 'at most 8'],
  ['between', '8 to 10'],
])('a range that is meant %s keeps its figures', (kind, written) => {
  const usual = { first: '9', second: '11' };
  expect(wishWritten(meantAs(wishParts('8 to 10'), kind, usual))).toBe(written);
});

test('where nothing was asked the usual figures stand', () => {
  const usual = { first: '9', second: '11' };
  expect(wishWritten(meantAs(wishParts(undefined), 'between', usual))).toBe('9 to 11');
  expect(wishWritten(meantAs(wishParts('about 8'), 'between', usual))).toBe('8 to 8');
});

test.each([
  ['about 9', 'cm', 'about 22.86'],
  ['3 to 4', 'mm', '76.2 to 101.6'],
  ['3 to 4 cm', 'cm', '3 to 4'],
  ['at least 3', 'mm', 'at least 76.2'],
  ['9', 'cm', '22.86'],
])('%s in inches is the same in other units', (span, to, written) => {
  const plan = `units: in\ntemplate: x\nlayout: { strip: { length: 60 in, width: 6 in } }\nswag: { span: ${span} }\n`;
  const next = withUnits(plan, 'in', to as 'cm');
  expect(next).toContain(`span: ${written} }`);
  expect(JSON.stringify(meaning(written, to))).toBe(JSON.stringify(meaning(span)));
});
