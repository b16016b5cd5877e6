/**
 * The long rules: the live area's frame is one, marked on all four sides. The plan's own unit runs along the
 * bottom and the left side, the other along the top and the right, all from the frame's corners, so that a ruler
 * laid along any side tells the scale. A scale wrong by 0.5 % is invisible on an inch and 1 mm over 8 inches.
 */

import { type Box, boxHeight, boxWidth } from '../geometry/index.ts';
import { MM_PER_INCH } from '../length/index.ts';
import type { Rule, Side, Tick } from './sheet-plan.ts';

export type RuleUnit = 'in' | 'mm';

/** Lengths of ticks, mm: whole unit, half, quarter. */
const LONG = 2.6;
const MEDIUM = 1.7;
const SHORT = 1;

export const rulesFor = (live: Box, unit: RuleUnit): Rule[] => {
  const other = unit === 'in' ? 'mm' : 'in';
  return [
    ruleAlong(live, 'bottom', unit),
    ruleAlong(live, 'left', unit),
    ruleAlong(live, 'top', other),
    ruleAlong(live, 'right', other),
  ];
};

const ruleAlong = (live: Box, side: Side, unit: RuleUnit): Rule => {
  const level = side === 'bottom' || side === 'top';
  const room = level ? boxWidth(live) : boxHeight(live);
  const ticks = unit === 'in' ? inchTicks(room) : millimetreTicks(room);
  return {
    side,
    unit,
    zero: {
      x: side === 'right' ? live.maxX : live.minX,
      y: side === 'top' ? live.maxY : live.minY,
    },
    along: level ? { x: 1, y: 0 } : { x: 0, y: 1 },
    inward: {
      x: side === 'left' ? 1 : side === 'right' ? -1 : 0,
      y: side === 'bottom' ? 1 : side === 'top' ? -1 : 0,
    },
    length: ticks.at(-1)?.at ?? 0,
    ticks,
  };
};

/** A last tick this near (mm) to the frame's corner would be one with the frame's other side. */
const CORNER = 0.5;

/** Quarter inches up to the last whole inch; no tick at zero, where the frame's corner is. */
const inchTicks = (room: number): Tick[] => {
  const whole = Math.floor((room - CORNER) / MM_PER_INCH);
  const ticks: Tick[] = [];
  for (let quarter = 1; quarter <= whole * 4; quarter++) {
    const at = (quarter * MM_PER_INCH) / 4;
    if (quarter % 4 !== 0) ticks.push({ at, length: quarter % 2 === 0 ? MEDIUM : SHORT });
    else
      ticks.push({ at, length: LONG, label: quarter === whole * 4 ? `${quarter / 4} in` : `${quarter / 4}` });
  }
  return ticks;
};

/** Every 5 mm up to the last whole centimetre, numbered every 20 mm and at the end. */
const millimetreTicks = (room: number): Tick[] => {
  const whole = Math.floor((room - CORNER) / 10) * 10;
  const ticks: Tick[] = [];
  for (let at = 5; at <= whole; at += 5) {
    const last = at === whole;
    const named = last || (at % 20 === 0 && at < whole - 10);
    const length = at % 10 === 0 ? LONG : SHORT;
    ticks.push(named ? { at, length, label: last ? `${at} mm` : `${at}` } : { at, length });
  }
  return ticks;
};
