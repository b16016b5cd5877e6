/** Pearls: a row of touching circles along a band, stitched in one line there and back. */

import {
  distance,
  type Point,
  pathLength,
  pointAlong,
  probeRegion,
  type Region,
  regionParts,
} from '../geometry/index.ts';
import { type Circle, contactsOf, tourOfCircles } from './contact-tour.ts';
import { checked, type Fill, type FillContext, MOST_ELEMENTS, ofParts } from './fill.ts';
import { BAND_SMOOTHING, spineOf } from './spine.ts';
import { axisOf } from './symmetry.ts';

/** Pearls keep this share of the spacing from the band's edges. */
const EDGE_GAP = 0.08;

/** A pearl is at most as wide as two spacings, and at least as wide as this share of one. */
const MOST_RADIUS = 1;
const LEAST_RADIUS = 0.12;

export const pearls: Fill = checked({
  name: 'pearls',
  about: 'a row of touching circles along a band',
  suits: 'band',
  sewn: 'go along the row on one side of every pearl, and come back on the other side; the needle passes each place where two touch twice',
  crowd: 1,
  takes: [],
  fill: (region, { spacing }, context) => {
    const parts = regionParts(region);
    const rows = parts.map((part) => rowIn(part, spacing, parts.length === 1 ? context : undefined));
    return ofParts(
      rows.map((row) => tourOfCircles(row, contactsOf(row, CONTACT))),
      'band',
      'a pearl',
    );
  },
});

/** Pearls whose gap is below this (mm) touch. */
const CONTACT = 1e-6;

/** Entries of the table along the spine. */
const PLACES = 1500;

const rowIn = (region: Region, spacing: number, context: FillContext | undefined): Circle[] => {
  const gap = EDGE_GAP * spacing;
  const least = LEAST_RADIUS * spacing;
  const spine =
    context?.spine ??
    spineOf(region, Math.min(least, gap), axisOf(region, context), undefined, BAND_SMOOTHING);
  if (!spine) return [];
  const probe = probeRegion(region);
  const length = pathLength(spine);
  // A table along the spine: the room changes so slowly that straight lines between its entries will do.
  const table = Array.from({ length: PLACES + 1 }, (_, i) => {
    const p = pointAlong(spine, (length * i) / PLACES)!;
    return { p, room: probe.depth(p) - gap };
  });
  const between = (s: number): { i: number; t: number } => {
    const x = Math.min(PLACES, Math.max(0, (s / length) * PLACES));
    const i = Math.min(PLACES - 1, Math.floor(x));
    return { i, t: x - i };
  };
  const at = (s: number): Point => {
    const { i, t } = between(s);
    const [a, b] = [table[i]!.p, table[i + 1]!.p];
    return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
  };
  const radius = (s: number): number => {
    const { i, t } = between(s);
    return Math.min(MOST_RADIUS * spacing, table[i]!.room + (table[i + 1]!.room - table[i]!.room) * t);
  };
  if (spine.closed && table.every((e) => e.room >= least)) {
    // Round a ring the last pearl touches the first: one that falls on the first is laid, and left out.
    return fitRow(at, radius, 0, length).slice(0, -1);
  }
  // A place too narrow for the least pearl ends one row and begins another.
  const rows: Circle[] = [];
  let from: number | undefined;
  for (let i = 0; i <= PLACES + 1; i++) {
    const roomy = i <= PLACES && table[i]!.room >= least;
    if (roomy && from === undefined) from = i;
    if (!roomy && from !== undefined) {
      rows.push(...rowBetween(at, radius, (from * length) / PLACES, ((i - 1) * length) / PLACES, least));
      from = undefined;
    }
  }
  return rows;
};

const rowBetween = (
  at: (s: number) => Point,
  radius: (s: number) => number,
  from: number,
  to: number,
  least: number,
): Circle[] => {
  const begin = firstPlace(radius, from, to);
  const back = firstPlace((s) => radius(from + to - s), from, to);
  if (begin === undefined || back === undefined) return [];
  const last = from + to - back;
  if (last <= begin) {
    const s = (begin + last) / 2;
    return radius(s) >= least ? [{ center: at(s), radius: radius(s) }] : [];
  }
  return fitRow(at, radius, begin, last);
};

/** A row from one place to another. */
const fitRow = (
  at: (s: number) => Point,
  radius: (s: number) => number,
  begin: number,
  last: number,
): Circle[] => {
  // As many pearls as fit at full size, and one more, all made smaller together until the last one ends the
  // row.
  const full = lay(at, radius, 1, begin, last, MOST_ELEMENTS);
  const count = full.length + 1;
  let [low, high] = [0.5, 1];
  for (let k = 0; k < 40; k++) {
    const share = (low + high) / 2;
    if (lay(at, radius, share, begin, last, count).length >= count) low = share;
    else high = share;
  }
  return lay(at, radius, low, begin, last, count);
};

/**
 * The first place from an end where the room no longer grows as fast as one goes: past a square end, but not
 * past a long taper.
 */
const firstPlace = (radius: (s: number) => number, from: number, to: number): number | undefined => {
  const step = Math.max((to - from) / 2000, 0.02);
  for (let s = from; s + step <= to; s += step) {
    const r = radius(s);
    // Where a square end's rise has just ended, the full room is a few steps farther on.
    if (radius(s + step) - r < 0.7 * step)
      return radius(s + 4 * step) - radius(s + 3 * step) < 0.05 * step ? s + 3 * step : s;
  }
  return undefined;
};

const lay = (
  at: (s: number) => Point,
  radius: (s: number) => number,
  share: number,
  begin: number,
  last: number,
  most: number,
): Circle[] => {
  const row: Circle[] = [{ center: at(begin), radius: share * radius(begin) }];
  let s = begin;
  while (row.length < most) {
    const before = row.at(-1)!;
    const miss = (u: number): number => distance(at(u), before.center) - before.radius - share * radius(u);
    let low = s;
    let high = s;
    const step = Math.max(before.radius / 2, 0.05);
    do {
      low = high;
      high = Math.min(last, high + step);
    } while (miss(high) < 0 && high < last);
    if (miss(high) < 0) break;
    for (let k = 0; k < 45; k++) {
      const middle = (low + high) / 2;
      if (miss(middle) < 0) low = middle;
      else high = middle;
    }
    s = high;
    const r = distance(at(s), before.center) - before.radius;
    if (!(r > 0)) break;
    row.push({ center: at(s), radius: r });
  }
  return row;
};
