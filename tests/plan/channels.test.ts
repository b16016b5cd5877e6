/** How a plan says what channels do at points. */

import { describe, expect, test } from 'vitest';
import { planJsonSchema, readPlan } from '../../src/plan/index.ts';

const planWith = (channels: string) =>
  readPlan(
    `template: baluster\nlayout: { strip: { length: 36, width: 6 } }\nchannels: ${channels}\n`,
    'plan.yaml',
  );

describe('channels at points', () => {
  test.each([
    ['{ outward: [1/4] }', 'round'],
    ['{ outward: [1/4], points: round }', 'round'],
    ['{ outward: [1/4], points: pivot }', 'pivot'],
  ])('%s: %s', (channels, points) => {
    const reading = planWith(channels);
    expect(reading.ok && reading.parts[0].plan.channels).toEqual({ outward: [6.35], inward: [], points });
  });

  test.each([
    ['{ points: pivot }', 1],
    ['{ points: round, outward: [] }', 1],
    ['{ points: pivot, inward: [1/4] }', 0],
    ['{ outward: [] }', 0],
  ])('%s: %s note that they do nothing', (channels, notes) => {
    const reading = planWith(channels);
    expect(reading.ok && reading.notes.map((note) => note.key)).toEqual(Array(notes).fill('channels.points'));
  });

  test('another word is one line, with both that are known', () => {
    const reading = planWith('{ outward: [1/4], points: mitre }');
    if (reading.ok) throw new Error('there is no such word');
    expect(reading.problems).toMatchObject([
      { key: 'channels.points', place: { line: 3 }, found: '"mitre"', expected: 'round or pivot' },
    ]);
  });

  test('editors are told both words', () => {
    expect(JSON.stringify(planJsonSchema())).toContain('"round","pivot"');
  });
});
