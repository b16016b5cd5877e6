/** A template from measured points: her points stay in its file, with what she says of the acrylic. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { templateFromPoints } from '../../src/jobs/points-template.ts';
import { readTemplate } from '../../src/template/index.ts';

/** A flat of 40 mm, a corner, and a slope of 30 mm by 40 mm; its heel is not at the mat's zero. */
const TEXT = `# Measured point by point.
title: Corbel
units: mm
edge:
  points:
    - ["10", "5"]
    - ["50", "5", corner]
    - ["80", "45"]
`;
const made = (said: Parameters<typeof templateFromPoints>[0]['said'], text = TEXT) => {
  const found = templateFromPoints({ fileName: 'corbel.yaml', units: 'mm', text, said });
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('; '));
  return found;
};

describe('a template from points', () => {
  test('of which nothing is said is the file of the points', () => {
    expect(made({}).text).toBe(TEXT);
    expect(made({ breaks: [] }).text).toBe(TEXT);
  });

  test('has its thickness and its etched lines, typed or tapped, beside the points', () => {
    const { text, across, along } = made({
      thickness: 6,
      across: [
        { name: 'A', at: 12 },
        { name: 'B', at: { x: 30.04, y: 0 } },
      ],
      along: [3, { x: 20, y: -3.04 }],
    });
    expect(text).toBe(
      `${TEXT}thickness: 6\nalignment:\n  - { name: A, at: 12 }\n  - { name: B, at: 20 }\nchannelLines: [3, 8]\n`,
    );
    // From the heel, which lies at 10; and from the flat, which lies at 5.
    expect(across).toEqual([12, 20]);
    expect(along).toEqual([3, 8]);
    const reading = readTemplate(text, 'corbel.yaml');
    expect(reading.ok && reading.template).toMatchObject({ thickness: 6, channelLines: [3, 8] });
  });

  test('has no line across beyond its edge', () => {
    const text = 'title: Corbel\nunits: in\nedge:\n  points:\n    - [1, 0]\n    - [3, 0]\n    - [5, 0]\n';
    const across = (at: number) =>
      templateFromPoints({
        fileName: 'corbel.yaml',
        units: 'in',
        text,
        said: { across: [{ name: 'A', at }] },
      });
    expect(across(4 * 25.4).ok).toBe(true);
    const found = across(4.5 * 25.4);
    expect(found.ok || found.problems.map(describeProblem)).toEqual([
      'alignment: line "A" lies beyond the end of the edge; found 4 1/2 in; expected at most 4 in from the heel',
    ]);
  });

  test('has what is tapped as finely as a ruler is read, in inches to 1/64', () => {
    const said = { across: [{ name: 'A', at: { x: 6.55, y: 0 } }], along: [{ x: 25.4, y: -6.55 }] };
    const text =
      'title: Corbel\nunits: in\nedge:\n  points:\n    - ["0", "0"]\n    - ["2", "0"]\n    - ["4", "0"]\n';
    const found = templateFromPoints({ fileName: 'corbel.yaml', units: 'in', text, said });
    // 6.55 mm is 0.2579 in, and 16.5 times 1/64 in: 17 of them are 0.265625 in.
    expect(found.ok && found.text).toBe(
      `${text}alignment:\n  - { name: A, at: 0.265625 }\nchannelLines: [0.265625]\n`,
    );
  });

  test('names its corner and a place on a smooth stretch, and is the same edge', () => {
    const { text, template } = made({
      thickness: 6,
      breaks: [
        { name: 'elbow', at: { x: 50.4, y: 5.3 } },
        { name: 'shoulder', at: { x: 20, y: 5.2 } },
      ],
    });
    expect(template.breaks).toMatchObject([
      { name: 'shoulder', kind: 'mark', at: expect.closeTo(10, 3) },
      { name: 'elbow', kind: 'notch', at: expect.closeTo(40, 3) },
    ]);
    expect(text).toMatch(
      /^# Measured point by point\.\ntitle: Corbel\nunits: mm\nthickness: 6\nedge:\n {2}- start: \[10, 5\]/,
    );
    expect(template.edge.pieces.at(-1)?.to).toEqual({ x: 80, y: 45 });
  });

  test('says what is wrong with a point by its place, and of anything else what it is', () => {
    const twice = templateFromPoints({
      ...{ fileName: 'corbel.yaml', units: 'mm', text: TEXT },
      said: {
        across: [
          { name: 'A', at: 3 },
          { name: 'A', at: 4 },
        ],
      },
    });
    expect(twice.ok).toBe(false);
    if (twice.ok) return;
    expect(twice.edge?.pieces).toHaveLength(2);
    expect(twice.problems[0]?.place).toBeUndefined();
    const bad = templateFromPoints({
      ...{ fileName: 'corbel.yaml', units: 'mm', said: {} },
      text: TEXT.replace('"50", "5"', '"10", "5"'),
    });
    expect(!bad.ok && [bad.edge, bad.problems[0]?.place?.line]).toEqual([undefined, 7]);
  });
});
