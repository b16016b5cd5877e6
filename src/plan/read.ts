/** Reads a plan file: keys and lengths first, then what only several keys together can tell. */

import {
  baseName,
  checkDocument,
  type KeyPath,
  type Place,
  type Problem,
  placeOf,
  readDocument,
  unitsOf,
} from '../document/index.ts';
import { INCH_SIXTEENTH, type LengthStyle, MM_HALF, type Units } from '../length/index.ts';
import { crossCheck, idleKeys } from './cross-check.ts';
import type { Layout, Plan } from './plan.ts';
import { type PlanFile, planSchema } from './schema.ts';

export type PlanReading =
  | {
      readonly ok: true;
      readonly plan: Plan;
      /** What a person should know though the plan can be made. */
      readonly notes: readonly Problem[];
      /** The place of a key such as `['layout', 'border', 'width']`, or of the nearest thing round it. */
      readonly placeAt: (path: KeyPath) => Place;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Where keys belong that are often written elsewhere. */
const HOMES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'layout.border': ['width', 'inner', 'margin', 'corners'],
    'layout.strip': ['length'],
    'layout.frame': ['count', 'around', 'block', 'within'],
    layout: ['strip', 'border', 'frame'],
    swag: ['from', 'to', 'setting', 'laid', 'flat', 'side', 'direction', 'repeats', 'gap'],
    foot: ['clearance'],
    channels: ['outward', 'inward'],
    fills: ['background'],
    marks: ['round'],
    'layout.border.inner': ['top', 'right', 'bottom', 'left'],
  }).flatMap(([home, keys]) => keys.map((key) => [key, home] as const)),
);

/** Keys that hold words, whatever they look like. */
const TEXTS: ReadonlySet<string> = new Set(['title', 'template', 'kind']);

/** Never throws; `text` is the file's content, `fileName` its name as the user gave it. */
export const readPlan = (text: string, fileName: string): PlanReading => {
  const reading = readDocument(text, fileName, TEXTS);
  if (!reading.ok) return reading;
  const { document } = reading;
  const checked = checkDocument(document, planSchema(unitsOf(document)), HOMES);
  if (!checked.ok) return checked;
  const plan = planOf(checked.value, fileName);
  const problems = crossCheck(plan, document);
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    plan,
    notes: idleKeys(plan, document),
    placeAt: (path) => placeOf(document, path),
  };
};

const planOf = (file: PlanFile, fileName: string): Plan => ({
  title: file.title ?? baseName(fileName),
  units: file.units,
  paper: file.paper,
  foot: file.foot,
  templates: file.template,
  layout: layoutOf(file.layout),
  swag: {
    from: file.swag.from,
    to: file.swag.to,
    setting: file.swag.setting,
    laid: file.swag.laid,
    flat: file.swag.flat === 'auto' ? undefined : file.swag.flat,
    side: file.swag.side,
    direction: file.swag.direction,
    repeats: file.swag.repeats,
    gap: file.swag.gap,
  },
  channels: file.channels,
  fills: {
    swag: file.fills.swag,
    background: file.fills.background,
    corner: file.fills.corner,
    channels: file.fills.channels,
  },
  stitch: file.stitch,
  marks: { style: file.marks.round ?? USUAL_STYLE[file.units] },
});

/** 1/16 in, or half a millimetre. */
const USUAL_STYLE: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTEENTH,
  cm: { unit: 'cm', step: 0.5 },
  mm: MM_HALF,
};

/** A frame round a block is a border round it, as wide as the limit leaves it on the block's longer sides. */
const roundBlock = (
  frame: NonNullable<PlanFile['layout']['frame']>,
  { width, height }: { readonly width: number; readonly height: number },
): Layout => ({
  kind: 'border',
  width: ((frame.within ?? 0) - Math.max(width, height)) / 2,
  inner: { top: width, right: height, bottom: width, left: height },
  margin: { inner: frame.clearance, outer: 0 },
  from: frame.from,
  corners: frame.corners ?? 'turn',
  cornersAreOpen: frame.corners === undefined,
  round: 'block',
});

const layoutOf = ({ strip, border, frame }: PlanFile['layout']): Layout => {
  if (strip) return { kind: 'strip', ...strip };
  if (border)
    return {
      kind: 'border',
      ...border,
      corners: border.corners ?? 'turn',
      cornersAreOpen: border.corners === undefined,
      round: 'quilt',
    };
  if (frame?.block) return roundBlock(frame, frame.block);
  if (frame?.around !== undefined)
    return {
      kind: 'frame',
      count: frame.count === 'auto' ? undefined : frame.count,
      around: frame.around,
      clearance: frame.clearance,
      within: frame.within,
      from: frame.from,
    };
  throw new Error('A plan without a layout passed its schema');
};
