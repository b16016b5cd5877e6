/**
 * Pebbles: circles that touch and do not overlap, small ones in small places, in one line through their
 * contacts.
 */

import { contactsOf, tourOfCircles } from './contact-tour.ts';
import { checked, type Fill, nothing } from './fill.ts';
import { packCircles } from './packing.ts';
import { randomOf } from './random.ts';

/** Radii as shares of the spacing: the largest pebbles are as wide as the spacing, the least three fifths of that. */
export const PEBBLE_RADII = { largest: 0.5, smallest: 0.42, least: 0.3 } as const;

/** Pebbles keep this share of the spacing from the edge: a thread's width or so. */
const EDGE_GAP = 0.06;

/** Circles whose gap is below this (mm) touch. */
const CONTACT = 1e-6;

export const pebbles: Fill = checked({
  name: 'pebbles',
  about: 'touching circles, the largest as wide as the spacing, small ones in small places',
  suits: 'area',
  sewn: 'start at the first pebble and go round it; where another touches, go over to it, round it and all that hang on it, and come back to the same point',
  crowd: 1 / 0.3,
  takes: ['seed'],
  fill: (region, { spacing, seed }) => {
    const circles = packCircles(region, {
      largest: PEBBLE_RADII.largest * spacing,
      smallest: PEBBLE_RADII.smallest * spacing,
      least: PEBBLE_RADII.least * spacing,
      gap: EDGE_GAP * spacing,
      random: randomOf(seed),
    });
    if (circles.length === 0) return nothing('the area is too small for a pebble at this spacing');
    const paths = tourOfCircles(circles, contactsOf(circles, CONTACT));
    return { paths, continuous: paths.length === 1, messages: [] };
  },
});
