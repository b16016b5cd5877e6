/**
 * What is the least that a person has to change so that a near miss fits? Every change is tried with the
 * search itself, cheapest first, and only one that really makes it fit is told.
 */

import { formatLength, roundLength, stepOf } from '../length/index.ts';
import {
  cornersFrom,
  type HowMade,
  hasCorners,
  type Plan,
  SIDES,
  type Side,
  type Spot,
  wishText,
} from '../plan/index.ts';
import { type Fit, kindsIn, ownCorner } from './fit.ts';
import { type Change, lessClear, otherCount, otherSize, widerLimit } from './layout-changes.ts';
import type { Miss } from './runs.ts';
import { type Search, searchFits } from './search.ts';
import type { Way } from './setting.ts';
import type { Stop } from './stitching.ts';

/** The first change that makes a near miss fit; undefined where none of them does. */
export const smallestChange = (miss: Miss, plan: Plan): Change | undefined => {
  const base = withWay(plan, miss.way);
  const { stitching } = miss.way.shape;
  const tries = (changed: Plan): Search => searchFits(changed, [stitching]);
  const firstOf = (changes: readonly Change[]): Change | undefined =>
    changes.find((c) => tries(c.plan).results.length > 0);
  return (
    otherCount(base, tries) ??
    firstOf(plainChanges(base, plan, miss)) ??
    roomierGap(base, tries) ??
    lessClear(base, tries) ??
    widerLimit(base, tries) ??
    firstOf(otherWays(base, miss.way)) ??
    otherSize(base, tries)
  );
};

/** A plan that leaves nothing open about how the half swag is made. */
const withWay = (plan: Plan, way: Way): Plan => ({
  ...plan,
  swag: { ...plan.swag, ...madeAs(way) },
});

/** The same of each kind of a fit, and of its corners. */
export const withFit = (plan: Plan, fit: Fit): Plan => {
  const { alternate } = plan.swag;
  const own = ownCorner(fit);
  if (own && plan.corner) return { ...withWay(plan, fit.way), corner: { ...plan.corner, ...madeAs(own) } };
  if (!alternate) return withWay(plan, fit.way);
  const [first, second] = kindsIn(fit).map(({ way }, k) => ({ ...alternate[k]!, ...madeAs(way) }));
  return { ...plan, swag: { ...plan.swag, alternate: [first!, second!] } };
};

const madeAs = ({ shape, setting }: Way): Omit<HowMade, 'templates'> => ({
  from: spotOf(shape.from),
  to: spotOf(shape.to),
  setting: setting.kind,
  laid: setting.kind === 'alignment-line' ? setting.laid : undefined,
  flat: setting.kind === 'flat-on-guide' ? setting.flat.number : undefined,
  side: shape.side,
  direction: shape.direction,
});

const spotOf = (stop: Stop): Spot | undefined =>
  stop.section !== undefined
    ? { kind: 'section', number: stop.section }
    : stop.line && { kind: 'named', name: stop.line.name };

const withSwag = (plan: Plan, swag: Partial<Plan['swag']>): Plan => ({
  ...plan,
  swag: { ...plan.swag, ...swag },
});

/** Other counts, where the plan fixes them: one more or fewer, two, …, and then whatever fits. */
const plainChanges = (base: Plan, plan: Plan, miss: Miss): readonly Change[] => {
  const given = plan.swag.repeats;
  if (!given) return [];
  const changes: Change[] = [];
  const side = SIDES.indexOf(miss.run.name as Side);
  for (let off = 1; off <= MOST_OFF; off++) {
    for (const by of [off, -off]) {
      const was = given.length === 1 ? given[0] : given[side];
      if (typeof was !== 'number' || was + by < 1) continue;
      const repeats = given.map((n, i) => (given.length === 1 || i === side ? was + by : n));
      const where = given.length === 1 ? '' : ` on the ${miss.run.name} side`;
      changes.push({
        text: `${was + by} ${was + by === 1 ? 'repeat' : 'repeats'} instead of ${was}${where}`,
        plan: withSwag(base, { repeats }),
      });
    }
  }
  changes.push({
    text: `repeats: auto instead of ${given.map((n) => wishText(n ?? 'auto', String)).join(', ')}`,
    plan: withSwag(base, { repeats: undefined }),
  });
  return changes;
};

/** A count farther off is another border altogether. */
const MOST_OFF = 4;

/** Where the plan fixes a gap that does not serve: the least that does, rounded up to what a ruler shows. */
const roomierGap = (base: Plan, tries: (plan: Plan) => Search): Change | undefined => {
  const { gap } = base.swag;
  if (typeof gap !== 'number') return undefined;
  const found = tries(withSwag(base, { gap: 'auto' })).results[0];
  if (!found) return undefined;
  const { style } = base.marks;
  const needed = Math.max(...found.fit.sides.map((s) => s.seat.gap));
  const rounded = roundLength(needed + stepOf(style) / 2, style);
  const plan = withSwag(base, { gap: rounded });
  if (tries(plan).results.length > 0)
    return { text: `a gap of ${formatLength(rounded, style)} instead of ${formatLength(gap, style)}`, plan };
  return { text: `gap: auto instead of ${formatLength(gap, style)}`, plan: withSwag(base, { gap: 'auto' }) };
};

/** Other stretches of the edge, the template's other side or end, another setting, other corners. */
const otherWays = (base: Plan, { shape, setting }: Way): readonly Change[] => {
  const changes: Change[] = [];
  const { sections } = shape.stitching;
  const first = shape.from.section;
  const last = shape.to.section;
  const to = (number: number): Spot => ({ kind: 'section', number });
  if (first !== undefined && last !== undefined) {
    for (let n = first + 1; n <= last; n++)
      changes.push({ text: leaveOut(first, n - 1), plan: withSwag(base, { from: to(n) }) });
    for (let n = last - 1; n >= first; n--)
      changes.push({ text: leaveOut(n + 1, last), plan: withSwag(base, { to: to(n) }) });
    for (let n = first - 1; n >= 1; n--)
      changes.push({ text: `start at section ${n}`, plan: withSwag(base, { from: to(n) }) });
    for (let n = last + 1; n <= sections.length; n++)
      changes.push({ text: `end with section ${n}`, plan: withSwag(base, { to: to(n) }) });
  }
  const side = shape.side === 'inside' ? 'outside' : 'inside';
  const direction = shape.direction === 'heel-first' ? 'crown-first' : 'heel-first';
  changes.push({ text: `side: ${side}`, plan: withSwag(base, { side }) });
  if (setting.kind !== 'alignment-line')
    changes.push({ text: `direction: ${direction}`, plan: withSwag(base, { direction }) });
  if (setting.kind !== 'crown-on-centre') {
    const from = shape.from.section === undefined ? undefined : base.swag.from;
    const open = { setting: 'crown-on-centre', laid: undefined, flat: undefined, from } as const;
    changes.push({ text: 'setting: crown-on-centre', plan: withSwag(base, open) });
  }
  const { layout } = base;
  if (hasCorners(layout) && layout.corners)
    for (const corners of cornersFrom(layout.from))
      if (corners !== layout.corners)
        changes.push({ text: `corners: ${corners}`, plan: { ...base, layout: { ...layout, corners } } });
  const { outward } = base.channels;
  for (let n = outward.length - 1; n >= 0; n--)
    changes.push({
      text: n === 0 ? 'no outward channels' : `only ${n} outward ${n === 1 ? 'channel' : 'channels'}`,
      plan: { ...base, channels: { ...base.channels, outward: outward.slice(0, n) } },
    });
  return changes;
};

const leaveOut = (from: number, to: number): string =>
  from === to ? `leave out section ${from}` : `leave out sections ${from} to ${to}`;
