/** An invented drawing of 50,000 arcs over 60 sheets of Letter paper: plumes of four arcs each, all over a rectangle. */

import type { StyledDrawing, StyledPath } from '../../src/drawing/index.ts';
import type { Arc, Point } from '../../src/geometry/index.ts';

export const CURVES = 50_000;
const ARCS_A_PLUME = 4;
const PLUMES = CURVES / ARCS_A_PLUME;

/** mm; with the usual margins and overlap this takes 12 rows of 5 sheets of Letter. */
const WIDTH = 1100;
const HEIGHT = 2100;

/** A small generator with a fixed seed (mulberry32, public domain), so that every run draws the same. */
const chanceFrom = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
};

export const manyCurves = (): StyledDrawing => {
  const chance = chanceFrom(20240611);
  const columns = Math.round(Math.sqrt((PLUMES * WIDTH) / HEIGHT));
  const rows = Math.ceil(PLUMES / columns);
  const items: StyledPath[] = [];
  for (let k = 0; k < PLUMES; k++) {
    const x = 10 + ((k % columns) + chance()) * ((WIDTH - 20) / columns);
    const y = 10 + (Math.floor(k / columns) + chance()) * ((HEIGHT - 20) / rows);
    items.push(plume({ x, y }, 2 * Math.PI * chance(), chance));
  }
  const layers = {
    fill: items,
    border: [],
    channel: [],
    template: [],
    stitch: [],
    marks: [],
    notes: [],
    way: [],
  };
  return { title: 'Fifty thousand curves', layers };
};

/** Arcs of 2 to 8 mm radius, turning by 0.3 to 0.75 rad, each leaving the one before in its direction. */
const plume = (from: Point, heading: number, chance: () => number): StyledPath => {
  const pieces: Arc[] = [];
  let at = from;
  let direction = heading;
  for (let i = 0; i < ARCS_A_PLUME; i++) {
    const radius = 2 + 6 * chance();
    const sweep = (0.3 + 0.45 * chance()) * (chance() < 0.5 ? -1 : 1);
    const start = direction - (Math.sign(sweep) * Math.PI) / 2;
    const center = { x: at.x - radius * Math.cos(start), y: at.y - radius * Math.sin(start) };
    const to = {
      x: center.x + radius * Math.cos(start + sweep),
      y: center.y + radius * Math.sin(start + sweep),
    };
    pieces.push({ kind: 'arc', center, radius, start, sweep, from: at, to });
    at = to;
    direction += sweep;
  }
  return { kind: 'path', path: { pieces, closed: false }, stroke: { width: 0.35, color: '#1f1f1f' } };
};
