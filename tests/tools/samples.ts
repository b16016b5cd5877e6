/** The samples that come along, as drawings: what `mockup` prints of them. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawPlan, SHEET, type StyledDrawing, scopeOf, styled } from '../../src/drawing/index.ts';
import { usualShow } from '../../src/output/mockup/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { readTemplate } from '../../src/template/index.ts';

const root = join(import.meta.dirname, '../..');
export const SAMPLE_FOLDER = join(root, 'samples');
export const SAMPLES: readonly string[] = readdirSync(SAMPLE_FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort();

/** Of templates that come along only: those of the samples do. */
export const sampleDrawing = (name: string): StyledDrawing => {
  const reading = readPlan(readFileSync(join(SAMPLE_FOLDER, name), 'utf8'), name);
  if (!reading.ok) throw new Error(`${name}: ${reading.problems[0]?.message}`);
  const { plan } = reading.parts[0];
  const templates = plan.templates.map((template) => {
    const read = readTemplate(readFileSync(join(root, 'profiles', `${template}.yaml`), 'utf8'), template);
    if (!read.ok) throw new Error(`${template}: ${read.problems[0]?.message}`);
    return read.template;
  });
  const made = designFromPlan(plan, templates);
  if (!made.ok) throw new Error(`${name}: ${made.problems[0]?.message}`);
  const scope = scopeOf(made.design, usualShow(made.design));
  if (!scope.ok) throw new Error(`${name}: nothing to show`);
  return styled(drawPlan(made.design, plan, scope.scope).drawing, SHEET);
};
