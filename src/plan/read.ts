/** Reads a plan file: keys and lengths first, then what only several keys together can tell. */

import {
  baseName,
  type Checked,
  capital,
  checkDocument,
  keysAt,
  type Problem,
  placeOf,
  quoted,
  readDocument,
  type SourceDocument,
  unitsOf,
  valueAt,
} from '../document/index.ts';
import { INCH_SIXTEENTH, type LengthStyle, MM_HALF, type Units } from '../length/index.ts';
import { placed, type Unplaced } from './corner-places.ts';
import { crossCheck, idleKeys, idleTemplate, sidesApart } from './cross-check.ts';
import { innerSides } from './measured-sides.ts';
import { overlaps, seamsApart } from './neighbours.ts';
import { type PartReading, partIn } from './part-reading.ts';
import type { HowMade, KindChoices, Layout, Plan } from './plan.ts';
import { type PlanFile, planSchema, type QuiltFile, quiltSchema } from './schema.ts';

export type PlanReading =
  | {
      readonly ok: true;
      /** The title of the whole quilt. */
      readonly title: string;
      /** One at least, in the order of the file. */
      readonly parts: readonly [PartReading, ...PartReading[]];
      /** What a person should know though the plan can be made. */
      readonly notes: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Where keys belong that are often written elsewhere. */
const HOMES: ReadonlyMap<string, string> = new Map([
  ...Object.entries({
    'layout.border': ['width', 'inner', 'outer', 'margin', 'corners'],
    'layout.strip': ['length', 'ends'],
    'layout.frame': ['count', 'around', 'block', 'within'],
    layout: ['strip', 'border', 'frame'],
    rows: ['apart'],
    swag: [
      'from',
      'to',
      'setting',
      'laid',
      'flat',
      'side',
      'direction',
      'repeats',
      'gap',
      'span',
      'depth',
      'use',
      'alternate',
    ],
    foot: ['clearance'],
    channels: ['outward', 'inward'],
    fills: ['background', 'between'],
    marks: ['round'],
    'layout.border.inner': ['top', 'right', 'bottom', 'left'],
  }).flatMap(([home, keys]) => keys.map((key) => [key, `under ${home}`] as const)),
  ['swag.corner', 'beside swag: a corner’s swag is a group of its own'],
  // Of a row beyond the first its marks are given.
  ...['span', 'depth', 'use', 'repeats', 'gap'].flatMap((key) =>
    ['rows', 'rows.swag'].map(
      (place) =>
        [`${place}.${key}`, 'under the plan’s own swag: further rows share the marks of the first'] as const,
    ),
  ),
]);

/** Of a quilt with parts. */
const PART_HOMES: ReadonlyMap<string, string> = new Map([
  ...HOMES,
  ...['layout', 'swag', 'corner', 'rows', 'channels', 'fills', 'at', 'turn'].map(
    (key) => [key, 'under parts, in one of them'] as const,
  ),
  ...['title', 'units', 'paper', 'foot', 'stitch', 'marks', 'colours'].map(
    (key) => [key, 'at the top of the file, where it counts for all parts'] as const,
  ),
]);

/** Keys that hold words, whatever they look like. */
const TEXTS: ReadonlySet<string> = new Set(['title', 'template', 'kind', 'fabric', 'middle', 'thread']);

/** Never throws; `text` is the file's content, `fileName` its name as the user gave it. */
export const readPlan = (text: string, fileName: string): PlanReading => {
  const reading = readDocument(text, fileName, TEXTS);
  if (!reading.ok) return reading;
  const { document } = reading;
  const checked = valueAt(document, ['parts']) === undefined ? readOne(document) : readParts(document);
  if (!checked.ok) return checked;
  const { value: plans } = checked;
  const parts = plans.map((plan) => partIn(document, plan));
  const problems = [
    ...parts.flatMap(({ plan, pathOf }) => crossCheck(plan, document, pathOf)),
    ...overlaps(parts),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const seams = seamsApart(parts);
  const apart = parts.map(({ plan, pathOf }) => sidesApart(plan, document, pathOf));
  const [first, ...others] = parts.map((part, i): PartReading => {
    const ofSeams = seams.flatMap(({ of, problem }) => (of.includes(part) ? [problem] : []));
    return { ...part, plan: { ...part.plan, doubts: [...apart[i]!, ...ofSeams].map(inWords) } };
  });
  if (!first) throw new Error('A plan without a design passed its schema');
  return {
    ok: true,
    title: first.plan.part?.quilt ?? first.plan.title,
    parts: [first, ...others],
    notes: [
      ...idleTemplate(plans, document),
      ...parts.flatMap(({ plan, pathOf }, i) => [...apart[i]!, ...idleKeys(plan, document, pathOf)]),
      ...seams.map(({ problem }) => problem),
    ],
  };
};

/** A problem where there is no file to point into. */
const inWords = ({ message, hint }: Problem): string =>
  `${capital([message.replace(/ \(line \d+\)/, ''), ...(hint === undefined ? [] : [hint])].join('; '))}.`;

const readOne = (document: SourceDocument): Checked<readonly Plan[]> => {
  const checked = checkDocument(document, planSchema(unitsOf(document)), HOMES);
  if (!checked.ok) return checked;
  const { value } = checked;
  return { ok: true, value: [planOf(value, value.title ?? baseName(document.fileName), value)] };
};

const readParts = (document: SourceDocument): Checked<readonly Plan[]> => {
  const unread = ['parts', '__proto__'];
  if (valueAt(document, unread) !== undefined)
    return {
      ok: false,
      problems: [
        {
          code: 'wrong-value',
          place: placeOf(document, unread, 'key'),
          key: 'parts',
          message: 'this is no name for a part',
          found: quoted('__proto__'),
        },
      ],
    };
  const checked = checkDocument(document, quiltSchema(unitsOf(document)), PART_HOMES);
  if (!checked.ok) return checked;
  const { parts, template: shared = [], ...file } = checked.value;
  const quilt = file.title ?? baseName(document.fileName);
  const unplaced = keysAt(document, ['parts']).map((name): Unplaced => {
    const { template = shared, at, turn, ...design } = parts[name]!;
    return {
      ...planOf(file, `${quilt}: ${name}`, { ...design, template }),
      part: { name, quilt, places: at, turn: (turn * Math.PI) / 180 },
    };
  });
  return placed(unplaced, document);
};

type SharedKeys = Omit<QuiltFile, 'parts' | 'template'>;
type DesignKeys = Pick<PlanFile, 'template' | 'layout' | 'swag' | 'corner' | 'rows' | 'channels' | 'fills'>;

const planOf = (file: SharedKeys, title: string, design: DesignKeys): Plan => ({
  title,
  units: file.units,
  paper: file.paper,
  foot: file.foot,
  templates: [
    ...design.template,
    ...new Set(
      [...(design.swag.alternate ?? []), ...(design.corner ? [design.corner] : []), ...design.rows]
        .flatMap(({ template }) => template ?? [])
        .filter((t) => !design.template.includes(t)),
    ),
  ],
  layout: layoutOf(design.layout),
  swag: {
    ...kindOf(design.swag, design.template),
    alternate: kindsOf(design),
    use: design.swag.use,
    repeats: design.swag.repeats,
    gap: design.swag.gap,
  },
  corner: design.corner && {
    ...howMade(design.corner, design.corner.template ?? design.template),
    smooth: design.corner.smooth,
  },
  rows: design.rows.map(({ at, apart, template, swag }) => ({
    at,
    apart: apart ?? file.foot.clearance,
    swag: howMade(swag, template ?? design.template),
  })),
  channels: design.channels,
  fills: {
    swag: design.fills.swag,
    background: design.fills.background,
    corner: design.fills.corner,
    between: design.fills.between,
    channels: design.fills.channels,
  },
  stitch: file.stitch,
  marks: { style: file.marks.round ?? USUAL_STYLE[file.units] },
  colours: file.colours,
  doubts: [],
});

const howMade = (swag: PlanFile['rows'][number]['swag'], templates: readonly string[]): HowMade => ({
  templates,
  from: swag.from,
  to: swag.to,
  setting: swag.setting,
  laid: swag.laid,
  flat: swag.flat === 'auto' ? undefined : swag.flat,
  side: swag.side,
  direction: swag.direction,
});

type WrittenKind = NonNullable<PlanFile['swag']['alternate']>[number];

const kindOf = (kind: WrittenKind, templates: readonly string[]): KindChoices => ({
  ...howMade(kind, templates),
  span: kind.span,
  depth: kind.depth,
});

const kindsOf = ({ swag, template }: DesignKeys): Plan['swag']['alternate'] => {
  const { alternate, ...shared } = swag;
  if (!alternate) return undefined;
  const [first, second] = alternate.map((kind) => {
    const own = Object.fromEntries(Object.entries(kind).filter(([, value]) => value !== undefined));
    return kindOf({ ...shared, ...own }, kind.template ?? template);
  });
  return [first!, second!];
};

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
  measured: 'inner',
  margin: { inner: frame.clearance, outer: 0 },
  from: frame.from,
  corners: frame.corners,
  round: 'block',
});

const roundQuilt = ({ inner, outer, ...border }: NonNullable<PlanFile['layout']['border']>): Layout => {
  const written = inner ?? outer;
  if (!written) throw new Error('A border without sides passed its schema');
  return {
    kind: 'border',
    ...border,
    corners: border.corners,
    ...(inner
      ? { inner, measured: 'inner' }
      : { inner: innerSides(written, border.width), measured: 'outer' }),
    round: 'quilt',
  };
};

const layoutOf = ({ strip, border, frame }: PlanFile['layout']): Layout => {
  if (strip) return { kind: 'strip', ...strip };
  if (border) return roundQuilt(border);
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
