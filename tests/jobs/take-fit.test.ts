/** A chosen fit written back as a plan: read again it gives that design and no other, and the rest of the file stays. */

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { takeFit } from '../../src/jobs/take-fit.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import { choicesOf, kindsIn, type Ranked, type Search, searchPlan } from '../../src/swag/index.ts';
import type { Template } from '../../src/template/index.ts';
import { PROFILES, templateOf } from '../swag/fit-helpers.ts';

/** A template with two flats, two etched lines, and a section whose name is also that of a line. */
const ODD = templateOf(
  `units: in
edge:
  - start: [0, 0]
  - line: { to: [1 1/2, 0] }
  - break: B
  - arc: { to: [4, 1 1/2], rise: 1/2 }
  - break: ledge
  - line: { to: [5, 2] }
alignment:
  - { name: "2", at: 1/4 }
  - { name: B, at: 1/2 }
`,
  'odd',
);

const TEMPLATES = new Map([...PROFILES, ODD].map((t) => [t.name, t]));
const templatesOf = (plan: Plan): readonly Template[] => plan.templates.map((name) => TEMPLATES.get(name)!);

const read = (text: string): Plan => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}\n${JSON.stringify(reading.problems)}`);
  return reading.parts[0].plan;
};

const searched = (plan: Plan): Search => {
  const found = searchPlan(plan, templatesOf(plan));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.search;
};

const taken = (text: string, ranked: Ranked): string =>
  takeFit(text, { plan: read(text), templates: templatesOf(read(text)) }, ranked);

/** All figures of a fit, to be compared to the last bit. */
const figures = ({ field, fit }: Pick<Ranked, 'field' | 'fit'>): object => ({
  choices: choicesOf({ field, fit }),
  template: fit.way.shape.stitching.template.name,
  sides: fit.sides.map(({ run, repeats, seat }) => [run.name, run.length, repeats, seat.pose, seat.gap]),
  corner: 'seat' in fit.corner ? [fit.corner.seat.pose, fit.corner.toCorner, fit.corner.offset] : null,
  beyond: fit.beyond ? figures(fit.beyond) : null,
  others: kindsIn(fit)
    .slice(1)
    .map((kind) => figures({ field, fit: kind })),
});

const PLANS = {
  'a border, everything open': `template: [baluster, finial, newel]
layout:
  border:
    width: 6
    inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }
    margin: 1/2
`,
  'a border from the outer seam': `units: cm
template: [finial, newel]
layout: { border: { width: 16, inner: [90], margin: { inner: 1, outer: 1.2 }, from: outer } }
`.replace('[90]', '{ top: 90, right: 110, bottom: 90.5, left: 110.5 }'),
  'a border with open corners': `template: newel
layout: { border: { width: 5, inner: 40, margin: 3/8, corners: open } }
swag: { repeats: auto, gap: 1/8 }
`,
  'a border with two rows': `template: baluster
layout: { border: { width: 8, inner: 60, margin: 1/4, corners: meet } }
rows:
  - at: 1 # an inch up
    template: [baluster, finial]
    apart: 3/8
`,
  'a strip and a template with odd names': `template: odd
layout: { strip: { length: 40, width: 5, margin: 1/2 } }
swag:
`.replace('swag:\n', ''),
};

/** One result of each kind: different settings, sides, directions, corners. */
const oneOfEach = (results: readonly Ranked[]): readonly (readonly [number, Ranked])[] => {
  const kinds = new Map<string, readonly [number, Ranked]>();
  results.forEach((ranked, i) => {
    const { repeats: _, from: __, to: ___, ...kind } = choicesOf(ranked);
    const key = JSON.stringify([kind, ranked.fit.way.shape.stitching.template.name]);
    if (!kinds.has(key)) kinds.set(key, [i, ranked]);
  });
  return [...kinds.values()];
};

describe('a plan with a chosen fit', () => {
  it.each(Object.entries(PLANS))('gives that design again: %s', (_, text) => {
    const { results } = searched(read(text));
    const chosen = oneOfEach(results);
    const settings = new Set<string>();
    for (const [, ranked] of chosen) {
      const again = taken(text, ranked);
      const found = searched(read(again)).results;
      expect(figures(found[0]!), again).toEqual(figures(ranked));
      settings.add(ranked.fit.way.setting.kind);
      expect(parse(again).rows?.[0].template).toBe(ranked.fit.beyond?.fit.way.shape.stitching.template.name);
      // Nothing is left to decide: what is taken from it is the same text, and names no length for the gap.
      expect(taken(again, found[0]!)).toBe(again);
      expect(parse(again).swag.gap).toSatisfy(
        (gap: unknown) => gap === 0 || gap === 'auto' || /1\/8/.test(String(gap)),
      );
    }
    expect(chosen.length).toBeGreaterThan(3);
    expect(settings.size).toBeGreaterThan(1);
  });

  it('sees all three settings, both ways to lay a line, both flats, both sides and both directions', () => {
    const seen = Object.values(PLANS).flatMap((text) =>
      oneOfEach(searched(read(text)).results).map(([, r]) => choicesOf(r)),
    );
    const values = (key: 'setting' | 'laid' | 'flat' | 'side' | 'direction' | 'corners') =>
      [...new Set(seen.map((c) => c[key]))].filter((v) => v !== undefined).sort();
    expect(values('setting')).toEqual(['alignment-line', 'crown-on-centre', 'flat-on-guide']);
    expect(values('laid')).toContain('square');
    expect(values('flat')).toEqual([1, 2]);
    expect(values('side')).toEqual(['inside', 'outside']);
    expect(values('direction')).toEqual(['crown-first', 'heel-first']);
    expect(values('corners')).toEqual(['across', 'half', 'meet', 'open', 'turn']);
  });

  it('gives two kinds that take turns again, each with its own template and what was asked of it', () => {
    const text = `template: [baluster, finial, newel]
layout: { border: { width: 8, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2 } }
swag:
  side: inside # of both
  alternate:
    - { span: about 9 }
    - template: [newel, finial]
      depth: at least 2
`;
    const { results } = searched(read(text));
    const corners = new Set<string>();
    let apart = 0;
    for (const ranked of results.filter((_, i) => i % 9 === 0)) {
      const again = taken(text, ranked);
      const found = searched(read(again)).results;
      expect(figures(found[0]!), again).toEqual(figures(ranked));
      expect(taken(again, found[0]!)).toBe(again);
      const kinds = kindsIn(ranked.fit).map(({ way }) => way.shape.stitching.template.name);
      const { swag } = parse(again);
      expect(swag.alternate.map((kind: { template: string }) => kind.template)).toEqual(kinds);
      // What was asked stays with its kind, in these words or nearer to what is had.
      expect([swag.side, swag.alternate[1].depth]).toEqual(['inside', 'at least 2']);
      expect(swag.alternate[0].span).toMatch(/^about [\d /]+( in)?$/);
      corners.add(ranked.field.corners);
      if (kinds[0] !== kinds[1]) apart++;
    }
    expect([...corners].sort()).toEqual(['half', 'meet', 'open']);
    expect(apart).toBeGreaterThan(3);
  });

  it('gives again what is all but flat, since what was asked of its depth stays', () => {
    const text =
      'template: newel\nlayout: { border: { width: 5, inner: 40, corners: turn } }\nswag: { depth: at most 1/4 }\n';
    const flat = searched(read(text)).results.filter(({ fit }) =>
      fit.sides.some(({ seat }) => seat.depth < 0.04 * seat.span),
    );
    expect(flat.length).toBeGreaterThan(0);
    for (const ranked of flat.slice(0, 4))
      expect(figures(searched(read(taken(text, ranked))).results[0]!)).toEqual(figures(ranked));
  });

  it('keeps keys, their order, comments and lengths as they are written', () => {
    const text = `# Measured twice, by two of us
title: "Raffle quilt"   # not the final name
paper: A4

layout:   # as it hangs
  border:
    inner: { top: 60 1/8, right: 6', bottom: 1524 mm, left: 72 1/4 }
    width: 5-1/2"
    margin: 0.50
template: [baluster, finial]  # what is in the drawer
swag:
  side: inside
  gap: auto # never wider than it must be
marks: { round: 1/32 }
`.replace("6'", '72');
    const { results } = searched(read(text));
    const chosen = results.find((r) => r.fit.way.shape.stitching.template.name === 'finial')!;
    const again = taken(text, chosen);
    for (const kept of [
      '# Measured twice, by two of us',
      'title: "Raffle quilt"   # not the final name',
      'layout:   # as it hangs',
      '{ top: 60 1/8, right: 72, bottom: 1524 mm, left: 72 1/4 }',
      'width: 5-1/2"',
      'margin: 0.50',
      '  # what is in the drawer',
      'gap: auto # never wider than it must be',
      'marks: { round: 1/32 }',
    ])
      expect(again).toContain(kept);
    expect(Object.keys(parse(again))).toEqual(['title', 'paper', 'layout', 'template', 'swag', 'marks']);
    expect(parse(again)).toMatchObject({ template: 'finial', swag: { side: 'inside' } });
    expect(figures(searched(read(again)).results[0]!)).toEqual(figures(chosen));
  });

  it('keeps titles that look like numbers, and every line that it does not decide, to the byte', () => {
    for (const title of ['007', '1e3', '12345678901234567890', '0x1F', '1.10', '"0o7"', "'7'"]) {
      const kept = `title: ${title}   # ours\r\nmarks:   {round:   0.5 mm}\r\nfoot: { clearance: 0.250 }\r\n`;
      const text = `${kept}template: baluster\r\nlayout:\r\n  strip: {length: 36,width: 5.0 , margin: .25 }`;
      const ranked = searched(read(text)).results[0]!;
      const again = taken(text, ranked);
      expect(again.startsWith(text)).toBe(true);
      expect(again.slice(text.length)).toMatch(/^\r\nswag:\r\n( {2}[a-z]+: .+\r\n)+ {2}[a-z]+: [^\n]+$/);
      expect(figures(searched(read(again)).results[0]!)).toEqual(figures(ranked));
    }
  });

  it('leaves a place as the person named it, where that means one place only', () => {
    const text = `template: finial
layout: { strip: { length: 40, width: 6, margin: 1/2 } }
swag: { from: waist, to: Bud }
`;
    const again = taken(text, searched(read(text)).results[0]!);
    expect(again).toContain('from: waist');
    expect(again).toContain('to: Bud');
  });

  it('copies what an alias stands for, so that nothing else changes with it', () => {
    const text = `template: baluster
layout: { border: { width: &w 6, inner: 50, margin: &m 1/2 } }
swag: { from: &one 1, gap: *m }
`;
    const { results } = searched(read(text));
    const later = results.find((r) => choicesOf(r).from === 1)!;
    const again = taken(text, later);
    // What is not decided still follows what she named.
    expect(again).toContain('from: &one 1, gap: *m');
    expect(figures(searched(read(again)).results[0]!)).toEqual(figures(later));
    const named = text.replace('baluster', '[&mine baluster]').replace('layout', 'title: *mine\nlayout');
    const changed = taken(named, later);
    expect(changed).toMatch(/^template: baluster\ntitle: baluster\n.* margin: 1\/2.*\nswag: .* gap: 1\/2/);
    expect(figures(searched(read(changed)).results[0]!)).toEqual(figures(later));
  });

  it('writes a gap that no rule gives again as a length, and never as less than the swags need', () => {
    const text = `template: baluster
layout: { border: { width: 10, inner: { top: 42, right: 36, bottom: 42, left: 36 }, margin: 1/4, corners: turn } }
`;
    const written = searched(read(text)).results.flatMap((ranked) => {
      const gap = Math.max(...ranked.fit.sides.map((s) => s.seat.gap));
      if (!(gap > 0)) return [];
      const again = /gap: (.*)/.exec(taken(text, ranked))?.[1] ?? '';
      expect(again).not.toBe('0');
      return again.endsWith(' mm') ? [{ gap, said: Number(again.slice(0, -3)) }] : [];
    });
    expect(written.length).toBeGreaterThan(0);
    for (const { gap, said } of written) {
      expect(said).toBeGreaterThanOrEqual(gap - 1e-12);
      expect(said - gap).toBeLessThan(1.1e-6);
    }
  });

  it('keeps JSON as JSON', () => {
    const text = JSON.stringify({
      template: ['baluster', 'newel'],
      layout: { strip: { length: '36', width: 5, margin: '1/4' } },
    });
    const ranked = searched(read(text)).results[1]!;
    const again = taken(text, ranked);
    expect(Object.keys(JSON.parse(again))).toEqual(['template', 'layout', 'swag']);
    expect(figures(searched(read(again)).results[0]!)).toEqual(figures(ranked));
  });
});
