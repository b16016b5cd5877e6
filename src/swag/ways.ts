/** Everything that a plan leaves open about how a half swag is made, as a list of ways to make it. */

import { movePath, turn } from '../geometry/index.ts';
import type { HowMade, Spot } from '../plan/index.ts';
import { type Setting, tiltOf, type Way } from './setting.ts';
import { type Direction, type Shape, shapeOf, type TemplateSide } from './shape.ts';
import { endStops, flatsOf, lineStops, type Stitching, type Stop, startStops } from './stitching.ts';

export const SIDES: readonly TemplateSide[] = ['inside', 'outside'];
const LAID = ['square', 'along'] as const;
export const DIRECTIONS: readonly Direction[] = ['heel-first', 'crown-first'];

/** All ways of one template within what the plan fixes. */
export const waysOf = (stitching: Stitching, { swag }: { readonly swag: HowMade }): readonly Way[] => {
  const sides = swag.side ? [swag.side] : SIDES;
  const directions = swag.direction ? [swag.direction] : DIRECTIONS;
  const ends = stopsFor(swag.to, endStops(stitching), stitching);
  const ways: Way[] = [];
  for (const side of sides) {
    for (const direction of directions) {
      // Settings that start at the same places share their shapes.
      const shapes = new Map<string, Shape | undefined>();
      const shapeFor = (from: Stop, to: Stop): Shape | undefined => {
        const key = `${from.label} ${to.label}`;
        if (!shapes.has(key)) shapes.set(key, shapeOf(stitching, from, to, side, direction));
        return shapes.get(key);
      };
      for (const { setting, starts } of settingsFor(stitching, swag, direction)) {
        // A swag that stops where it comes to the centre line does not care how much edge lies beyond.
        const firstStart = Math.min(...starts.map((s) => s.along));
        const lastEnd = Math.max(...ends.map((s) => s.along));
        const isLongest = (from: Stop, to: Stop): boolean =>
          direction === 'heel-first' ? to.along === lastEnd : from.along === firstStart;
        for (const from of starts) {
          for (const to of ends) {
            const shape = shapeFor(from, to);
            if (!shape) continue;
            const tilt = tiltOf(shape, setting);
            const laid = tilt === undefined ? undefined : movePath(shape.path, turn(tilt));
            ways.push({ shape, setting, tilt, laid, mayStopSooner: isLongest(from, to) });
          }
        }
      }
    }
  }
  return ways;
};

interface SettingWithStarts {
  readonly setting: Setting;
  readonly starts: readonly Stop[];
}

export const settingsFor = (
  stitching: Stitching,
  { setting, from, laid: laidAs, flat: flatNumber }: HowMade,
  direction: Direction,
): readonly SettingWithStarts[] => {
  // How a line or a flat is laid asks for the setting that lays one.
  const wanted =
    setting ?? (laidAs ? 'alignment-line' : flatNumber === undefined ? undefined : 'flat-on-guide');
  const starts = stopsFor(from, startStops(stitching), stitching);
  const all: SettingWithStarts[] = [];
  if (wanted === undefined || wanted === 'crown-on-centre') {
    all.push({ setting: { kind: 'crown-on-centre' }, starts });
  }
  // The etched lines stand near the heel: they set the start only where the heel is at the start mark.
  if ((wanted === undefined || wanted === 'alignment-line') && direction === 'heel-first') {
    for (const stop of lineStops(stitching)) {
      if (!stop.line || (from && !names(from, stop) && !(wanted && startsOn(starts, stop, stitching))))
        continue;
      for (const laid of laidAs ? [laidAs] : LAID) {
        all.push({ setting: { kind: 'alignment-line', line: stop.line, laid }, starts: [stop] });
      }
    }
  }
  if (wanted === undefined || wanted === 'flat-on-guide') {
    for (const flat of flatsOf(stitching)) {
      if (flatNumber !== undefined && flat.number !== flatNumber) continue;
      all.push({ setting: { kind: 'flat-on-guide', flat }, starts });
    }
  }
  return all;
};

/** Whether an etched line lies on a section that the plan starts at: then that start and this setting can both be meant. */
const startsOn = (starts: readonly Stop[], line: Stop, stitching: Stitching): boolean => {
  const section = startStops(stitching).findLast((s) => s.along <= line.along)?.section;
  return starts.some((s) => s.section === section);
};

/** The stops that a plan's spot allows: all of them where it is left open, none where the template has no such place. */
export const stopsFor = (
  spot: Spot | undefined,
  stops: readonly Stop[],
  stitching: Stitching,
): readonly Stop[] => {
  if (!spot) return stops;
  const lines = spot.kind === 'named' ? lineStops(stitching) : [];
  return [...stops, ...lines].filter((stop, i) =>
    i < stops.length ? matches(spot, stop, stitching) : names(spot, stop),
  );
};

const matches = (spot: Spot, stop: Stop, stitching: Stitching): boolean => {
  switch (spot.kind) {
    case 'section':
      return stop.section === spot.number;
    case 'heel':
      return stop.contact === 0;
    case 'crown':
      return stop.section === stitching.sections.length && stop.contact !== 0;
    case 'named':
      return stitching.sections.some((s) => s.number === stop.section && sameName(s.name, spot.name));
    default:
      return spot satisfies never;
  }
};

const names = (spot: Spot, stop: Stop): boolean =>
  spot.kind === 'named' && sameName(stop.line?.name, spot.name);

const sameName = (a: string | undefined, b: string): boolean => a?.toLowerCase() === b.toLowerCase();

/** The names of places that a plan may use for this template, for telling a person who named another. */
export const spotNames = ({ sections, template }: Stitching): readonly string[] => [
  ...sections.map((s) => String(s.number)),
  ...sections.flatMap((s) => (s.name ? [s.name] : [])),
  ...template.alignment.map((a) => a.name),
  'heel',
  'crown',
];

/** Whether any place of the template answers to a spot. */
export const hasSpot = (spot: Spot, stitching: Stitching): boolean =>
  stopsFor(spot, [...startStops(stitching), ...endStops(stitching)], stitching).length > 0;
