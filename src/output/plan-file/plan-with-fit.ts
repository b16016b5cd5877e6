/**
 * Writes a chosen fit into the text of the plan that it was found with, so that the plan says every choice and
 * gives that design again.
 *
 * The text is changed, not written anew: keys, their order, comments and the way in which lengths are written
 * stay as the person has them (spaces and line breaks inside brackets are set anew). What a value says already
 * is left alone. A plan in JSON stays JSON.
 *
 * The gap is the one choice that is a length, and rounded it would move every mark. So it is said by a rule
 * where one gives it again, `0` or `auto`, which is found out by searching with the new plan; only where
 * neither does is it written as a length, to GAP_DIGITS.
 */

import { type Document, isMap, isNode, isScalar, type Node, parseDocument, visit } from 'yaml';
import { type Plan, readPlan, type Spot } from '../../plan/index.ts';
import { type Choices, choicesOf, type Fit, type Ranked, searchPlan } from '../../swag/index.ts';

export interface TakenFit {
  readonly plan: Plan;
  readonly ranked: Pick<Ranked, 'field' | 'fit'>;
  /** The template as the new plan names it: a name, or a path from where the new plan will lie. */
  readonly template: string;
}

/** `text` is a plan that has been read without a problem. */
export const planWithFit = (text: string, taken: TakenFit): string => {
  let written = text;
  for (const gap of gapsToSay(taken)) {
    written = planSaying(text, taken, gap);
    if (givesAgain(written, taken.ranked.fit)) break;
  }
  return written;
};

/** In the order in which a person would rather read them; undefined leaves what the plan says. */
const gapsToSay = ({ plan, ranked }: TakenFit): readonly (string | number | undefined)[] => {
  const { gap } = plan.swag;
  const widest = Math.max(...ranked.fit.sides.map((s) => s.seat.gap));
  const step = 10 ** -GAP_DIGITS;
  // Never less than it is: swags that bulge need all of it.
  const length = Math.ceil(widest / step) * step;
  const said = gap !== undefined ? [undefined] : widest > 0 ? ['auto'] : [0, 'auto'];
  return [...said, ...(widest > 0 ? [] : [0]), `${length.toFixed(GAP_DIGITS)} mm`];
};

/** Of a millimetre: less than a double loses in working out a fit. */
const GAP_DIGITS = 6;

const givesAgain = (text: string, fit: Fit): boolean => {
  const reading = readPlan(text, 'plan');
  if (!reading.ok) return false;
  const searched = searchPlan(reading.parts[0].plan, [fit.way.shape.stitching.template]);
  const again = searched.ok ? searched.search.results[0]?.fit : undefined;
  return again !== undefined && depthsAndSpans(again) === depthsAndSpans(fit);
};

const depthsAndSpans = ({ sides, corner }: Fit): string =>
  [...sides.map((s) => s.seat), ...(corner ? [corner.seat] : [])]
    .map(({ pose, gap }) => [pose.tilt, pose.halfSpan, pose.depth, gap].join(' '))
    .join('; ');

const planSaying = (
  text: string,
  { plan, ranked, template }: TakenFit,
  gap: string | number | undefined,
): string => {
  const doc = parseDocument(text, { version: '1.2', schema: 'core', merge: false });
  replaceAliases(doc);
  const choices = choicesOf(ranked);
  put(doc, ['template'], template);
  const { swag, layout } = plan;
  const key = layout.kind === 'border' && layout.round === 'block' ? 'frame' : layout.kind;
  if (choices.corners !== undefined) put(doc, ['layout', key, 'corners'], choices.corners);
  if (choices.count !== undefined) put(doc, ['layout', 'frame', 'count'], choices.count);
  if (!says(swag.from, choices.from, ranked)) put(doc, ['swag', 'from'], choices.from);
  if (!says(swag.to, choices.to, ranked)) put(doc, ['swag', 'to'], choices.to);
  put(doc, ['swag', 'setting'], choices.setting);
  putOrDrop(doc, ['swag', 'laid'], choices.laid);
  putOrDrop(doc, ['swag', 'flat'], choices.flat);
  put(doc, ['swag', 'side'], choices.side);
  put(doc, ['swag', 'direction'], choices.direction);
  if (choices.repeats.length > 0 && !sameCounts(swag.repeats, choices.repeats))
    putCounts(doc, choices.repeats);
  if (gap !== undefined) put(doc, ['swag', 'gap'], gap);
  return isJson(text) ? `${JSON.stringify(doc.toJS(), null, 2)}\n` : doc.toString({ lineWidth: 0 });
};

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

type KeyPath = readonly string[];

/** What an alias stands for takes its place, so that a change here changes nothing elsewhere. */
const replaceAliases = (doc: Document.Parsed): void => {
  visit(doc, {
    Alias: (_, alias) => {
      const copy = alias.resolve(doc)?.clone() as Node | undefined;
      if (!copy) return undefined;
      visit(copy, { Node: (_key, node) => void ('anchor' in node && delete node.anchor) });
      return copy;
    },
  });
};

const put = (doc: Document.Parsed, path: KeyPath, value: string | number): void => {
  const parent = path.slice(0, -1);
  // A group that is named and left empty holds nothing that a key could be added to.
  if (parent.length > 0 && !isMap(doc.getIn(parent, true))) doc.setIn(parent, doc.createNode({}));
  const old = doc.getIn(path, true);
  if (isScalar(old)) {
    // The value in its place, so that comments beside it stay.
    if (old.value !== value) old.value = value;
    return;
  }
  const node = doc.createNode(value);
  // A list that becomes one value leaves its comments to it.
  if (isNode(old)) {
    if (old.comment) node.comment = old.comment;
    if (old.commentBefore) node.commentBefore = old.commentBefore;
  }
  doc.setIn(path, node);
};

const putOrDrop = (doc: Document.Parsed, path: KeyPath, value: string | number | undefined): void => {
  if (value !== undefined) put(doc, path, value);
  else if (doc.hasIn(path)) doc.deleteIn(path);
};

/** One number where a person would write one, else one per side on one line. */
const putCounts = (doc: Document.Parsed, repeats: readonly number[]): void => {
  const path = ['swag', 'repeats'];
  const [first] = repeats;
  if (first !== undefined && repeats.every((n) => n === first)) put(doc, path, first);
  else doc.setIn(path, doc.createNode(repeats, { flow: true }));
};

const sameCounts = (written: readonly number[] | undefined, chosen: readonly number[]): boolean =>
  written !== undefined && chosen.every((n, i) => n === (written.length === 1 ? written[0] : written[i]));

/** Whether what the plan says of a place means the chosen one, and for the chosen template nothing else. */
const says = (spot: Spot | undefined, choice: Choices['from'], { fit }: TakenFit['ranked']): boolean => {
  const { sections, template } = fit.way.shape.stitching;
  switch (spot?.kind) {
    case undefined:
      return false;
    case 'section':
      return spot.number === choice;
    case 'heel':
      return choice === 1;
    case 'crown':
      return choice === 'crown';
    case 'named': {
      const same = (name: string | undefined): boolean => name?.toLowerCase() === spot.name.toLowerCase();
      const named = sections.filter((s) => same(s.name));
      const lines = template.alignment.filter((a) => same(a.name));
      if (named.length + lines.length !== 1) return false;
      const number = named[0]?.number;
      if (number === undefined) return same(String(choice));
      return number === (choice === 'crown' ? sections.length : choice);
    }
    default:
      return spot satisfies never;
  }
};
