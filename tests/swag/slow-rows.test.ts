/**
 * Two rows by the fast search against a slow and plain one that lays both point by point: what is valid there is found,
 * and costs what the program's own order says.
 */

import fc from 'fast-check';
import { expect } from 'vitest';
import type { Point } from '../../src/geometry/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import {
  ALIKE,
  crownPose,
  type Field,
  fieldsOf,
  type Seat,
  type Shape,
  scoreOf,
  searchPlan,
  straightSeat,
} from '../../src/swag/index.ts';
import { long, patience, runs } from '../support/runs.ts';
import { PROFILES, pointsAlong } from './fit-helpers.ts';
import { anyPart, CLEARANCE, crownOnCentre, NAMES, partOf } from './random-parts.ts';
import { isSafe, slowWay } from './slow-search.ts';

/** What points may miss of a distance between two paths, mm. */
const PLAY = 0.05;
const question = fc.record({
  near: anyPart,
  far: anyPart,
  from: fc.constantFrom('inner' as const, 'outer' as const),
  width: fc.integer({ min: 150, max: 280 }),
  length: fc.integer({ min: 700, max: 1500 }),
  at: fc.constantFrom(0, 10, 25, 40),
  share: fc.double({ min: 0.3, max: 0.98, noNaN: true }),
});

const laid = (points: readonly Point[], { pose: { tilt } }: Seat, up: number): Point[] => {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  return points.map(({ x, y }) => ({ x: c * x - s * y, y: s * x + c * y + up }));
};

/** Whether two halves keep apart as a plan asks; rows that start on one mark part within an inch. */
const keepApart = (near: readonly Point[], far: readonly Point[], at: number): boolean => {
  const [crown, beyond] = [near.at(-1)!, far.at(-1)!];
  if (beyond.y - crown.y < CLEARANCE + PLAY) return false;
  return near.every((p, i) => {
    if (at === 0 && i === 0) return true;
    const away = Math.min(...far.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
    if (at > 0) return away >= CLEARANCE + PLAY;
    const from = Math.hypot(p.x, p.y);
    // Within the inch along it, straight from the mark, they need only not touch.
    return from > 12 ? away >= 1.5875 + PLAY : from < 1 || away > PLAY;
  });
};

long(
  'two rows that are valid by points are found, and cost what they cost there',
  () => {
    let valid = 0;
    let invalid = 0;
    fc.assert(
      fc.property(question, (q) => {
        const [near, far] = [partOf(q.near), partOf(q.far)];
        if (!near || !far) return;
        const span = q.share * 2 * Math.min(near.shape.chord, far.shape.chord);
        const count = Math.max(1, Math.round(q.length / span));
        const reading = readPlan(
          `units: mm\ntemplate: ${near.template}\nlayout: { border: { width: ${q.width}, inner: ${q.length}, from: ${q.from}, corners: open } }
swag: { ${near.words}, setting: crown-on-centre, gap: 0, repeats: ${count} }
rows: [{ at: ${q.at}, template: ${far.template}, swag: { ${far.words}, setting: crown-on-centre } }]\n`,
          'plan.yaml',
        );
        if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
        const { plan } = reading.parts[0];
        if (plan.layout.kind !== 'border') throw new Error('a border');
        const [field] = fieldsOf(plan.layout);
        const slow = slowCost(near.shape, far.shape, field!, count, q.at);
        const templates = plan.templates.map((name) => PROFILES[NAMES.indexOf(name)]!);
        const found = searchPlan(plan, templates);
        if (!found.ok) throw new Error(JSON.stringify(found.problems));
        if (slow === undefined) {
          invalid++;
          return;
        }
        valid++;
        const [best] = found.search.results;
        if (!best) throw new Error(`nothing found, but the points have a cost of ${slow}`);
        expect(best.score.cost).toBeCloseTo(slow, 9);
      }),
      runs(250, 20261129),
    );
    expect(valid).toBeGreaterThan(8);
    expect(invalid).toBeGreaterThan(8);
  },
  patience(240_000),
);

/** What two rows cost by points; undefined where either is not valid, or they do not keep apart. */
const slowCost = (near: Shape, far: Shape, field: Field, count: number, at: number): number | undefined => {
  const left = at > 0 ? CLEARANCE : 0;
  const h = field.runs[0]!.length / count / 2;
  const seats = ([near, far] as const).map((shape) => {
    const pose = crownPose(shape, h);
    return pose && straightSeat(crownOnCentre(shape), shape, pose, 0);
  });
  const [side, over] = seats;
  if (!side || !over) return undefined;
  const isLaid = (seat: Seat, room: number): boolean => {
    const ground = { lengths: [], corner: 'none', from: field.from, room, gap: 0 } as const;
    return isSafe(slowWay(seat.shape.path, CLEARANCE), Math.atan2(seat.pose.depth, h), ground, false);
  };
  if (!isLaid(side, field.room - left) || !isLaid(over, field.room - at)) return undefined;
  const points = (seat: Seat, up: number): Point[] => laid(pointsAlong(seat.shape.path, 1), seat, up);
  if (!keepApart(points(side, 0), points(over, at), at)) return undefined;
  const costOf = (seat: Seat, up: number, outward: number): number => {
    const raised: Seat = { ...seat, pose: { ...seat.pose, top: seat.pose.top + up } };
    const sides = field.runs.map((run) => ({ run, repeats: count, seat: raised }));
    return scoreOf(
      { way: crownOnCentre(seat.shape), sides, corner: { kind: 'none' }, pattern: ALIKE },
      field,
      outward,
    ).cost;
  };
  return (costOf(side, 0, left) + costOf(over, at, 0)) / 2;
};
