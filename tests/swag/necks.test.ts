/** The two halves of a swag that turns a corner keep apart: measured between the halves as they lie on the quilt. */

import { describe, expect, it } from 'vitest';
import { pathLength } from '../../src/geometry/index.ts';
import {
  cornerSwag,
  describeMiss,
  designOf,
  placedChannels,
  placedPath,
  type Ranked,
  smallestChange,
} from '../../src/swag/index.ts';
import { crownPose } from '../../src/swag/pose.ts';
import { straightSeat } from '../../src/swag/seat.ts';
import { PROFILES, planOf, pointsAlong, profile, search } from './fit-helpers.ts';

const PLAN = `layout: { border: { width: 7, inner: { top: 54 3/8, right: 67 1/2, bottom: 54 1/8, left: 67 3/4 }, corners: turn } }
channels: { outward: [1/4], inward: [1/4] }
`;
/** mm: the foot of half an inch. */
const FOOT = 12.7;
/** mm of stitching before the crown in which a point may be narrow: two feet, or a third of a short half. */
const POINT = 2 * FOOT;

/** The least distance (mm) between one half's points, without the crown's own, and the other half's. */
const neckOf = (ranked: Ranked): number => {
  const design = designOf(ranked.field, ranked.fit);
  const corner = design.halves.filter((h) => h.cell === cornerSwag(design)?.cell).slice(0, 8);
  const [first] = corner.filter((h) => h.half === 'first');
  const second = corner.find((h) => h.half === 'second' && h.repeat === first?.repeat);
  const a = pointsAlong(placedPath(first!), 0.5);
  const b = pointsAlong(placedPath(second!), 0.5);
  const short = (points: typeof a): typeof a => {
    const ran = points.map((p, i) =>
      i === 0 ? 0 : Math.hypot(p.x - points[i - 1]!.x, p.y - points[i - 1]!.y),
    );
    const total = ran.reduce((x, y) => x + y, 0);
    const most = total - Math.min(POINT, total / 3) - 0.5;
    let at = 0;
    return points.filter((_, i) => {
      at += ran[i]!;
      return at <= most;
    });
  };
  const [p, q] = [short(a), short(b)];
  return Math.min(...p.map((u) => Math.min(...q.map((v) => Math.hypot(u.x - v.x, u.y - v.y)))));
};

describe('a swag that turns a corner', () => {
  it('is not ranked where its halves start in one place, lie on each other or pinch to less than the foot', () => {
    const { results } = search(planOf(PLAN), PROFILES);
    expect(results.length).toBeGreaterThan(50);
    for (const ranked of results.slice(0, 30)) expect(neckOf(ranked)).toBeGreaterThanOrEqual(FOOT - 0.01);
  });

  it('says so where that is what is in the way, with a change that helps', () => {
    const plan = planOf(
      `layout: { border: { width: 7, inner: 24, corners: turn } }\nfoot: { clearance: 1/2 }\nswag: { from: 1, to: 1, side: inside, direction: heel-first, setting: crown-on-centre }\n`,
    );
    const { results, misses } = search(plan, [profile('newel')]);
    expect(results).toEqual([]);
    const narrow = misses.find((m) => m.misfit.kind === 'narrow-neck')!;
    const { found } = describeMiss(narrow, plan);
    expect(found).toMatch(
      /its two halves come within .* in of each other|its two halves meet before the crown/,
    );
    const change = smallestChange(narrow, plan)!;
    expect(search(change.plan, [profile('newel')]).results.length).toBeGreaterThan(0);
  });

  it('has its channels also where its halves start in one place, in a corner', () => {
    const plan = planOf(
      `${PLAN}swag: { from: heel, to: 2, side: inside, direction: heel-first, setting: crown-on-centre }\n`,
    );
    const { field, fit } = search(plan, [profile('finial')]).results[0]!;
    const { shape } = fit.way;
    /** The outward and the inward channel's length (mm) with the corner's chord at a rise (degrees). */
    const lengths = (rise: number): readonly number[] => {
      const pose = crownPose(shape, shape.chord * Math.cos((rise * Math.PI) / 180))!;
      const toCorner = pose.halfSpan - pose.depth;
      const seat = straightSeat(fit.way, shape, pose, 0, Math.PI / 4);
      const design = designOf(field, { ...fit, corner: { kind: 'turn', seat, toCorner, offset: toCorner } });
      const corner = design.halves.find((h) => h.cell === cornerSwag(design)?.cell)!;
      const channels = placedChannels(design, plan.channels, [corner]).get(corner)!;
      return channels.map((c) => c.paths.reduce((sum, p) => sum + pathLength(p), 0));
    };
    // At 45 degrees the start lies in the corner itself. What is at a distance changes little with a tenth of a degree.
    const apart = lengths(44.9);
    for (const rise of [45, 45 + 1e-8])
      for (const [i, length] of lengths(rise).entries()) {
        expect(length).toBeGreaterThan(25.4);
        expect(Math.abs(length - apart[i]!)).toBeLessThan(0.02 * apart[i]!);
      }
  });

  it('has all its channels', () => {
    const plan = planOf(PLAN);
    const { field, fit } = search(plan, PROFILES).results[0]!;
    const design = designOf(field, fit);
    const corner = design.halves.find((h) => h.cell === cornerSwag(design)?.cell)!;
    for (const c of placedChannels(design, plan.channels, [corner]).get(corner)!)
      expect(c.paths.length, c.side).toBe(1);
  });
});
