/** The part of a plan that is one design, as a job takes it. Its templates are those that come along. */

import type { Part } from '../../src/jobs/part.ts';
import { readPlan } from '../../src/plan/index.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { PROFILES } from '../swag/fit-helpers.ts';

export const partOf = (text: string): Part => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { plan } = reading.parts[0];
  const templates = plan.templates.map((name) => PROFILES.find((t) => t.name === name)!);
  const made = designFromPlan(plan, templates);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return { name: undefined, plan, templates, design: made.design, placed: (problem) => problem };
};
