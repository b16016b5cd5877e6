/** The samples that come along, as drawings: what `mockup` prints of them. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawPlan, SHEET, type StyledDrawing, scopeOf, styled } from '../../src/drawing/index.ts';
import { usualShow } from '../../src/output/mockup/index.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { readTemplate } from '../../src/template/index.ts';

const root = join(import.meta.dirname, '../..');
export const SAMPLE_FOLDER = join(root, 'samples');
export const SAMPLES: readonly string[] = readdirSync(SAMPLE_FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();

const plansOf = (name: string): readonly Plan[] => {
  const reading = readPlan(readFileSync(join(SAMPLE_FOLDER, name), 'utf8'), name);
  if (!reading.ok) throw new Error(`${name}: ${reading.problems[0]?.message}`);
  return reading.parts.map(({ plan }) => plan);
};

/** Every design of every sample, with the part's name where there are several. */
export const DESIGNS: readonly (readonly [title: string, plan: Plan])[] = SAMPLES.flatMap((name) =>
  plansOf(name).map((plan) => [plan.part ? `${name}, ${plan.part.name}` : name, plan] as const),
);

/** For what serves one part of a plan at a time: the option that names the last one. */
export const lastPart = (name: string): readonly string[] => {
  const part = plansOf(name).at(-1)?.part;
  return part ? ['--part', part.name] : [];
};

/** Of templates that come along only: those of the samples do. */
export const designDrawing = (plan: Plan): StyledDrawing => {
  const templates = plan.templates.map((template) => {
    const read = readTemplate(readFileSync(join(root, 'profiles', `${template}.yaml`), 'utf8'), template);
    if (!read.ok) throw new Error(`${template}: ${read.problems[0]?.message}`);
    return read.template;
  });
  const made = designFromPlan(plan, templates);
  if (!made.ok) throw new Error(`${plan.title}: ${made.problems[0]?.message}`);
  const scope = scopeOf(made.design, usualShow(made.design));
  if (!scope.ok) throw new Error(`${plan.title}: nothing to show`);
  return styled(drawPlan(made.design, plan, scope.scope).drawing, SHEET);
};
