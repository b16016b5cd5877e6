/** Corners whose halves meet in one smooth curve: by hand, as they are drawn, and nothing that is smooth is left out. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cornerSwag, type Design, designOf, isSmooth, type Ranked } from '../../src/swag/index.ts';
import { fewRuns } from '../support/runs.ts';
import { PROFILES, planOf, search, templateOf } from './fit-helpers.ts';
import { turnsOnMitre } from './laid.ts';
import { NAMES } from './random-parts.ts';

const designsOf = (results: readonly Ranked[]): readonly Design[] =>
  results.map(({ field, fit }) => designOf(field, fit));

/** With the foot of 5 mm the needle's arc is 5 mm larger, and its chord in proportion. */
const arc = (name: string, radius: number, chord: number) =>
  templateOf(
    `units: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [${chord}, 0], rise: ${radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2)} }\n`,
    name,
  );

test('an arc comes to the mitre square to it where its centre lies on it', () => {
  // Needle's radius 170 and chord 85: seen from the centre it spans 2·asin(85/340) = 28.9550°, from 45°, which is the
  // mitre, to 16.0450°, where it starts. Its centre lies 170·sin(16.0450°) = 46.9886 beyond the start line, and the mitre
  // is met 170·√½ − 46.9886 = 73.2196 deep; that is a rise of asin(73.2196/85) = 59.475°.
  const templates = [arc('baluster', 125, 100), arc('bracket', 165, 82.5)];
  const made = 'from: 1, to: crown, side: inside, direction: heel-first';
  const asking = (smooth: string) =>
    search(
      planOf(
        `units: mm\nfoot: { clearance: 5 }\nlayout: { border: { width: 160, inner: 678, from: outer, corners: turn } }\nswag: { ${made}, repeats: 4, gap: 0 }\ncorner: { template: bracket, ${made}${smooth} }`,
      ),
      templates,
    ).results;
  const pointed = designsOf(asking(''));
  expect(turnsOnMitre(pointed[0]!)).toBeGreaterThan(10);
  const smooth = designsOf(asking(', smooth: true'));
  expect(smooth.length).toBeGreaterThan(0);
  const half = (Math.PI / 180) * 0.5 + 1e-7;
  for (const design of smooth) {
    expect(turnsOnMitre(design)).toBeLessThan(1.0001);
    const rise = Math.asin(cornerSwag(design)!.fit.seat.depth / 85);
    expect(Math.abs(rise - Math.asin(73.2196 / 85))).toBeLessThan(half);
  }
});

/**
 * What the search's last step in a corner's rise can add to a cost. It finds the rise at which depths are most alike to
 * some 1e-5 of a radian; there depths hardly change with it, but gaps do: by a corner's chord for each radian, twice.
 */
const BY_SEARCH = 3e-4;

const question = fc.record({
  sides: fc.tuple(fc.integer({ min: 500, max: 1800 }), fc.integer({ min: 500, max: 1800 })),
  width: fc.integer({ min: 100, max: 240 }),
  from: fc.constantFrom('inner' as const, 'outer' as const),
  side: fc.nat({ max: 2 }),
  corner: fc.nat({ max: 2 }),
  more: fc.constantFrom('', ', gap: 0', ', gap: 12', ', depth: at least 60'),
});

test('what is asked to be smooth is drawn so, and nothing that is as good is left out', () => {
  let found = 0;
  let alsoFree = 0;
  fc.assert(
    fc.property(question, ({ sides: [across, up], width, from, side, corner, more }) => {
      const asking = (smooth: boolean): readonly Ranked[] => {
        const plan = planOf(
          `units: mm\nlayout: { border: { width: ${width}, inner: { top: ${across}, right: ${up}, bottom: ${across}, left: ${up} }, from: ${from} } }\nswag: { side: inside${more} }\ncorner: { template: ${NAMES[corner]}, smooth: ${smooth} }`,
        );
        const names = [...new Set([NAMES[side]!, NAMES[corner]!])];
        const named = { ...plan, templates: names, swag: { ...plan.swag, templates: [NAMES[side]!] } };
        return search(
          named,
          names.map((name) => PROFILES[NAMES.indexOf(name)]!),
        ).results;
      };
      const smooth = asking(true);
      for (const design of designsOf(smooth)) expect(turnsOnMitre(design)).toBeLessThan(1.0001);
      const free = asking(false);
      const byChance = free.filter(({ fit }) => isSmooth(cornerSwag(fit)!.seat));
      const least = (all: readonly Ranked[]): number => Math.min(...all.map(({ score }) => score.cost));
      expect(least(smooth)).toBeLessThanOrEqual(least(byChance) + BY_SEARCH);
      if (smooth.length > 0) found++;
      if (byChance.length > 0) alsoFree++;
    }),
    fewRuns(6, 60, 20261130),
  );
  expect(found).toBeGreaterThan(2);
  expect(alsoFree).toBeGreaterThan(0);
});
