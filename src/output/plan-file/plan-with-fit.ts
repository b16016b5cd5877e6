/**
 * Writes a chosen fit into the text of the plan that it was found with, so that the plan says every choice and
 * gives that design again.
 *
 * The text is changed, not written anew: keys, their order, comments and the way in which lengths are written
 * stay as the person has them (spaces and line breaks inside brackets are set anew). What a value says already
 * is left alone. A plan in JSON stays JSON. The least gap is written as `auto`, which with all else decided is
 * a rule and no open choice: a length would be rounded, and would move every mark.
 */

import { type Document, isMap, isScalar, type Node, parseDocument, visit } from 'yaml';
import type { Plan, Spot } from '../../plan/index.ts';
import { type Choices, choicesOf, type Ranked } from '../../swag/index.ts';

export interface TakenFit {
  readonly plan: Plan;
  readonly ranked: Pick<Ranked, 'field' | 'fit'>;
  /** The template as the new plan names it: a name, or a path from where the new plan will lie. */
  readonly template: string;
}

/** `text` is a plan that has been read without a problem. */
export const planWithFit = (text: string, { plan, ranked, template }: TakenFit): string => {
  const doc = parseDocument(text, { version: '1.2', schema: 'core', merge: false });
  replaceAliases(doc);
  const choices = choicesOf(ranked);
  put(doc, ['template'], template);
  if (choices.corners !== undefined) put(doc, ['layout', 'border', 'corners'], choices.corners);
  const { swag } = plan;
  if (!says(swag.from, choices.from, ranked)) put(doc, ['swag', 'from'], choices.from);
  if (!says(swag.to, choices.to, ranked)) put(doc, ['swag', 'to'], choices.to);
  put(doc, ['swag', 'setting'], choices.setting);
  putOrDrop(doc, ['swag', 'laid'], choices.laid);
  putOrDrop(doc, ['swag', 'flat'], choices.flat);
  put(doc, ['swag', 'side'], choices.side);
  put(doc, ['swag', 'direction'], choices.direction);
  if (!sameCounts(swag.repeats, choices.repeats)) putCounts(doc, choices.repeats);
  if (swag.gap === undefined) put(doc, ['swag', 'gap'], 'auto');
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
  if (isScalar(old) && old.value === value) return;
  doc.setIn(path, value);
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
      return number === undefined ? same(String(choice)) : number === choice;
    }
    default:
      return spot satisfies never;
  }
};
