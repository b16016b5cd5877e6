/** A fit whose corners have swags of their own, written back: read again it gives that design, and what it does not decide stays. */

import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { takeFit } from '../../src/jobs/take-fit.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import { choicesOf, cornerSwag, ownCorner, type Ranked, seatsOf } from '../../src/swag/index.ts';
import { patience } from '../support/runs.ts';
import { profile, search } from '../swag/fit-helpers.ts';

const read = (text: string): Plan => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}\n${JSON.stringify(reading.problems)}`);
  return reading.parts[0].plan;
};

const TEMPLATES = new Map(['newel', 'finial', 'baluster'].map((name) => [name, profile(name)]));
const templatesOf = (plan: Plan) => plan.templates.map((name) => TEMPLATES.get(name)!);

const searched = (text: string): readonly Ranked[] => {
  const plan = read(text);
  return search(plan, templatesOf(plan)).results;
};

/** To the last bit. */
const figures = ({ field, fit }: Ranked): object => ({
  sides: choicesOf({ field, fit }),
  corner: choicesOf({ field, fit: { ...fit, way: ownCorner(fit)! } }),
  seats: seatsOf(fit).map(({ pose, gap }) => [pose, gap]),
});

const TEXT = `template: newel
layout: { border: { width: 7, inner: 60, margin: 1/2, corners: turn } }
swag: { side: inside, direction: heel-first, repeats: 5 to 8 }
# of another template
corner: { template: [finial, baluster], side: inside }
`;

test(
  'a plan with a chosen fit gives that design again, and says how its corners are made',
  () => {
    const results = searched(TEXT);
    let taken = 0;
    for (const ranked of results.slice(0, 6)) {
      const plan = read(TEXT);
      const again = takeFit(TEXT, { plan, templates: templatesOf(plan) }, ranked);
      expect(figures(searched(again)[0]!), again).toEqual(figures(ranked));
      const template = cornerSwag(ranked.fit)!.seat.shape.stitching.template.name;
      expect(parse(again)).toMatchObject({ template: 'newel', corner: { template, side: 'inside' } });
      expect(again).toContain('# of another template\n');
      taken++;
    }
    expect(taken).toBeGreaterThan(2);
  },
  patience(120_000),
);
