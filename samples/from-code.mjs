/**
 * How to use swagwright from code: a plan and a template as texts, and from them every mark of a strip, the picture at
 * true size, and the marking card. Each step is a function of the step before. Run it where the package is installed:
 *
 *   node from-code.mjs strip.svg
 */

import { writeFile } from 'node:fs/promises';
import {
  describeProblem,
  designFromPlan,
  drawPlan,
  formatLength,
  marksOf,
  readPlan,
  readTemplate,
  SHEET,
  scopeOf,
  styled,
  writeSvg,
} from 'swagwright';

// Invented, as all of the guild's templates are: an edge of two arcs, heel to crown end, the foot on its left.
const TEMPLATE = `title: Spindle
units: in
edge:
  - start: [0, 0]
  - arc: { to: [2, 1/2], rise: 1/4 }
  - arc: { to: [4, 3/2], rise: -1/4 }
`;
const PLAN = `title: Spindle strip
template: spindle
layout: { strip: { length: 40, width: 5, margin: 1/4 } }
swag: { repeats: 5, gap: 0, setting: crown-on-centre }
`;

/** What a step found wrong is data: a problem is a sentence with its place. */
const orStop = (result) => {
  if (result.ok) return result;
  for (const problem of result.problems) console.error(describeProblem(problem));
  process.exit(1);
};

const { parts } = orStop(readPlan(PLAN, 'strip.yaml'));
const [{ plan }] = parts;
const { template } = orStop(readTemplate(TEMPLATE, 'spindle.yaml'));
const { design } = orStop(designFromPlan(plan, [template]));

// All lengths inside are mm; words are made from them at the end.
const say = (mm) => formatLength(mm, plan.marks.style);
for (const { side, marks } of marksOf(design, plan.marks.style))
  for (const { kind, repeat, rounded } of marks)
    console.log([side, ...(repeat ? [`swag ${repeat}`] : []), `${kind} at ${say(rounded)}`].join(', '));

const { scope } = orStop(scopeOf(design, 'all'));
const { drawing } = drawPlan(design, plan, scope);
const [, , file = 'strip.svg'] = process.argv;
await writeFile(file, writeSvg(styled(drawing, SHEET), { description: plan.title }));
console.log(`${file}: ${plan.title}`);
