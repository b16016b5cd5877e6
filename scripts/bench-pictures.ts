/**
 * How well are templates traced? Every synthetic picture of `tests/trace/pictures`, a line each: what it is, what the
 * program says of it, and how far its outline is off. `node scripts/bench.mjs pictures`; `photos`, `scans` or `spoilt`
 * behind it for those alone, and numbers with commas for some of them.
 */

import { PHOTOS, SCANS, SPOILT } from '../tests/trace/pictures/cases.ts';
import { type Answer, answerTo } from '../tests/trace/pictures/traced.ts';

const ALL = { photos: PHOTOS, scans: SCANS, spoilt: SPOILT };
const [, , , wanted, only] = process.argv;

const mm = (v: number | undefined): string => (v === undefined ? '' : v.toFixed(2)).padStart(5);

const line = (i: number, a: Answer): string => {
  const { one, judged } = a;
  const places = (of: readonly { x: number; y: number }[]): string =>
    of.map((p) => `${p.x.toFixed(0)},${p.y.toFixed(0)}`).join(' ');
  return [
    String(i + 1).padStart(3),
    one.shape.name.padEnd(8),
    one.medium.padEnd(8),
    one.about.padEnd(33),
    `${a.seconds.toFixed(1)} s`,
    a.said.padEnd(8),
    judged ? `${mm(judged.error)} mm at ${places([judged.at]).padEnd(8)}` : '',
    mm(judged?.inset),
    mm(a.expected),
    judged && judged.missed.length > 0 ? `corners missed ${places(judged.missed)}` : '',
    judged && judged.added.length > 0 ? `corners added ${places(judged.added)}` : '',
    a.words,
  ].join(' ');
};

const share = (of: readonly Answer[], ok: (a: Answer) => boolean): string =>
  `${of.filter(ok).length} of ${of.length}`;

for (const [name, cases] of Object.entries(ALL)) {
  if (wanted !== undefined && wanted !== name) continue;
  console.log(
    `\n${name}: shape, medium, picture, processor time, said, error and where, inset, expected error`,
  );
  const answers: Answer[] = [];
  for (const [i, one] of cases.entries()) {
    if (only !== undefined && !only.split(',').includes(String(i + 1))) continue;
    const answer = await answerTo(one);
    answers.push(answer);
    console.log(line(i, answer));
  }
  const accepted = answers.filter((a) => a.said === 'accepted');
  const errors = accepted.map((a) => a.judged!.error);
  console.log(
    [
      `refused ${share(answers, (a) => a.said === 'refused')}, unsure ${share(answers, (a) => a.said === 'unsure')}`,
      `within 0.1 mm ${share(answers, (a) => (a.judged?.error ?? 9) <= 0.1)}, within 0.3 mm ${share(answers, (a) => (a.judged?.error ?? 9) <= 0.3)}`,
      `of those accepted within 0.3 mm ${share(accepted, (a) => a.judged!.error <= 0.3)}, the greatest ${mm(Math.max(0, ...errors)).trim()} mm`,
      `every corner found in ${share(answers, (a) => a.judged?.missed.length === 0)}`,
      `the slowest ${Math.max(...answers.map((a) => a.seconds)).toFixed(1)} s`,
    ].join('\n'),
  );
}
