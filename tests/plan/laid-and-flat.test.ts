/** The two keys that say which etched line lies how, and which flat is laid. */

import { describe, expect, it } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

const withSwag = (swag: string) =>
  readPlan(`template: newel\nlayout: { strip: { length: 40, width: 5 } }\nswag: ${swag}\n`, 'plan.yaml');

const swagOf = (swag: string) => {
  const reading = withSwag(swag);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts[0].plan.swag;
};

const problemsOf = (swag: string): readonly string[] => {
  const reading = withSwag(swag);
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

describe('laid and flat', () => {
  it('are left open unless said', () => {
    expect(swagOf('{ side: inside }')).toMatchObject({ laid: undefined, flat: undefined });
    expect(swagOf('{ laid: auto, flat: auto }')).toMatchObject({ laid: undefined, flat: undefined });
    expect(swagOf('{ laid: along }')).toMatchObject({ laid: 'along' });
    expect(swagOf('{ setting: flat-on-guide, flat: 2 }')).toMatchObject({ flat: 2 });
  });

  it.each([
    ['{ laid: across }', /^plan\.yaml:3:15: swag\.laid: .*"across"/],
    ['{ flat: 0 }', /^plan\.yaml:3:15: swag\.flat: /],
    [
      '{ setting: crown-on-centre, laid: square }',
      /^plan\.yaml:3:\d+: swag\.laid: no alignment line is laid in this setting; found setting: crown-on-centre; expected setting: alignment-line$/,
    ],
    [
      '{ setting: alignment-line, flat: 1 }',
      /^plan\.yaml:3:\d+: swag\.flat: no flat is laid in this setting; found setting: alignment-line; expected setting: flat-on-guide$/,
    ],
    [
      '{ laid: square, flat: 1 }',
      /^plan\.yaml:3:\d+: swag\.flat: either an alignment line is laid or a flat, and not both; found laid: square and flat: 1; expected one of them$/,
    ],
  ])('%s is one problem', (swag, line) => {
    expect(problemsOf(swag)).toEqual([expect.stringMatching(line)]);
  });
});

it.each([
  ['laid: square', { kind: 'alignment-line', laid: 'square' }],
  ['laid: along', { kind: 'alignment-line', laid: 'along' }],
  ['flat: 1', { kind: 'flat-on-guide' }],
])('%s asks for the setting that it belongs to', (key, setting) => {
  const { results } = search(planOf(`layout: { strip: { length: 36, width: 6 } }\nswag: { ${key} }`));
  expect(results.length).toBeGreaterThan(0);
  for (const { fit } of results) expect(fit.way.setting).toMatchObject(setting);
});
