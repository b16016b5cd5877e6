import { readFileSync } from 'node:fs';
import { type Path, type Point, pieceAt } from '../../src/geometry/index.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import { type Ranked, type Search, searchPlan, seatsOf } from '../../src/swag/index.ts';
import { readTemplate, type Template } from '../../src/template/index.ts';

export const profile = (name: string): Template =>
  templateOf(readFileSync(`profiles/${name}.yaml`, 'utf8'), name);

export const templateOf = (text: string, name: string): Template => {
  const reading = readTemplate(text, `${name}.yaml`);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.template;
};

export const PROFILES = ['baluster', 'finial', 'newel'].map(profile);

export const planOf = (text: string): Plan => {
  const reading = readPlan(`template: baluster\n${text}`, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.problems)}`);
  return reading.parts[0].plan;
};

export const search = (plan: Plan, templates: readonly Template[] = PROFILES): Search => {
  const searched = searchPlan(plan, templates);
  if (!searched.ok) throw new Error(JSON.stringify(searched.problems));
  return searched.search;
};

/** The spread of a fit's depths, from its poses. */
export const spreadOfFit = ({ fit }: Pick<Ranked, 'fit'>): number => {
  const depths = seatsOf(fit).map((s) => s.pose.depth);
  return Math.max(...depths) - Math.min(...depths);
};

/** Points along a path, about `step` mm apart, ends included. */
export const pointsAlong = (path: Path, step = 0.25): Point[] =>
  path.pieces.flatMap((p) => {
    const length =
      p.kind === 'line' ? Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) : Math.abs(p.sweep) * p.radius;
    const n = Math.max(1, Math.ceil(length / step));
    return Array.from({ length: n + 1 }, (_, i) => pieceAt(p, i / n));
  });
